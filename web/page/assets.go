package page

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"mime"
	"net/http"
	"path"
	"strconv"
	"strings"
	"sync"

	"github.com/tdewolff/minify/v2"
	"github.com/tdewolff/minify/v2/css"
	"github.com/tdewolff/minify/v2/js"
)

// asset is one file that the pages use. Its address holds a hash of its bytes, so a browser may keep it for ever.
type asset struct {
	Url  string
	kind string
	Body []byte
	Gzip func() []byte // packed on first use; nil where packing does not help
}

// assets holds every file of web/static by its plain name and by its address.
type assets struct {
	ByName map[string]*asset
	byURL  map[string]*asset
}

// readAssets reads the embedded files. Licence texts are not served by name, only kept in the program.
func readAssets(files fs.FS) (*assets, error) {
	a := &assets{ByName: map[string]*asset{}, byURL: map[string]*asset{}}
	err := fs.WalkDir(files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		body, err := fs.ReadFile(files, name)
		if err != nil {
			return err
		}
		if body, err = tight(name, body); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		one := newAsset(name, body)
		a.ByName[path.Base(name)] = one
		a.byURL[one.Url] = one
		return nil
	})
	if err != nil {
		return nil, fmt.Errorf("read the pages' own files: %w", err)
	}
	return a, nil
}

// tight returns one of our own style sheets or scripts without its comments and spaces. The chart library comes so already.
func tight(name string, body []byte) ([]byte, error) {
	m := minify.New()
	switch {
	case path.Ext(name) == ".css":
		m.AddFunc("css", css.Minify)
		return m.Bytes("css", body)
	case path.Ext(name) == ".js" && !strings.Contains(name, ".min."):
		m.AddFunc("js", js.Minify)
		return m.Bytes("js", body)
	}
	return body, nil
}

func newAsset(name string, body []byte) *asset {
	sum := sha256.Sum256(body)
	ext := path.Ext(name)
	stem := strings.TrimSuffix(path.Base(name), ext)
	return &asset{
		Url:  "/static/" + stem + "." + hex.EncodeToString(sum[:4]) + ext,
		kind: kindOf(ext),
		Body: body,
		Gzip: sync.OnceValue(func() []byte { return pack(body) }),
	}
}

// kindOf gives the media type without asking the operating system, whose tables differ.
func kindOf(ext string) string {
	switch ext {
	case ".css":
		return "text/css; charset=utf-8"
	case ".js":
		return "text/javascript; charset=utf-8"
	case ".svg":
		return "image/svg+xml; charset=utf-8"
	case ".txt":
		return "text/plain; charset=utf-8"
	}
	if kind := mime.TypeByExtension(ext); kind != "" {
		return kind
	}
	return "application/octet-stream"
}

func pack(body []byte) []byte {
	var b bytes.Buffer
	z, _ := gzip.NewWriterLevel(&b, gzip.BestCompression)
	_, _ = z.Write(body) // a bytes.Buffer does not fail
	_ = z.Close()
	return b.Bytes()
}

// url gives the address of a file of web/static. A name that is not there is a mistake of the caller.
func (a *assets) url(name string) string {
	one, ok := a.ByName[name]
	if !ok {
		panic("web: no file " + name + " in web/static")
	}
	return one.Url
}

// serve answers /static/…: only exact addresses with their hash; no folder, no plain name.
func (s *Site) ServeAsset(w http.ResponseWriter, r *http.Request) error {
	one, ok := s.Assets.byURL[r.URL.Path]
	if !ok {
		return ErrNotFound
	}
	h := w.Header()
	h.Set("Content-Type", one.kind)
	h.Set("Cache-Control", "public, max-age=31536000, immutable")
	h.Set("Vary", "Accept-Encoding")
	body := one.Body
	if takesGzip(r.Header.Get("Accept-Encoding")) {
		h.Set("Content-Encoding", "gzip")
		body = one.Gzip()
	}
	h.Set("Content-Length", strconv.Itoa(len(body)))
	if r.Method != http.MethodHead {
		_, _ = w.Write(body) // a browser that left is no failure of ours
	}
	return nil
}

// takesGzip reads an Accept-Encoding header as far as browsers use it.
func takesGzip(accept string) bool {
	for part := range strings.SplitSeq(accept, ",") {
		name, weight, _ := strings.Cut(strings.ReplaceAll(part, " ", ""), ";q=")
		if name == "gzip" {
			q, err := strconv.ParseFloat(weight, 64)
			return weight == "" || err == nil && q > 0
		}
	}
	return false
}
