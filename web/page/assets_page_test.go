package page_test

import (
	"bytes"
	"compress/gzip"
	"io"
	"net/http"
	"regexp"
	"strings"
	"testing"

	"duskweight/web/webtest"
)

func TestAssetsByHashOnly(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	for _, path := range []string{"/static", "/static/", "/static/app.css", "/static/echarts.min.js", "/static/../web/static.go", "/static/%2e%2e/routes.go", "/static/app.000000000000.css"} {
		if w := webtest.Ask(h, "GET", path, nil); w.Code != http.StatusNotFound {
			t.Errorf("%s: %d, want 404", path, w.Code)
		}
	}
	for name, a := range s.Assets.ByName {
		w := webtest.Ask(h, "GET", a.Url, nil, "Accept-Encoding", "gzip, deflate, br")
		if w.Code != http.StatusOK || !strings.Contains(w.Header().Get("Cache-Control"), "immutable") || w.Header().Get("Content-Encoding") != "gzip" {
			t.Errorf("%s: %d %v", name, w.Code, w.Header())
			continue
		}
		z, err := gzip.NewReader(w.Body)
		if err != nil {
			t.Fatal(err)
		}
		if got, err := io.ReadAll(z); err != nil || !bytes.Equal(got, a.Body) {
			t.Errorf("%s does not unpack to itself: %v", name, err)
		}
		if w := webtest.Ask(h, "GET", a.Url, nil); !bytes.Equal(w.Body.Bytes(), a.Body) || w.Header().Get("Content-Encoding") != "" {
			t.Errorf("%s without gzip is not itself", name)
		}
	}
}

// Sizes: everything but the chart library together at most 40 KB packed, the library at most 400 KB.
func TestAssetSizes(t *testing.T) {
	s := webtest.NewSite(t)
	sum := 0
	for name, a := range s.Assets.ByName {
		n := len(a.Gzip())
		switch {
		case strings.HasPrefix(name, "echarts.min"):
			if n > 400_000 {
				t.Errorf("the chart library is %d bytes packed", n)
			}
		case strings.HasSuffix(name, ".txt"): // the licence: kept, not loaded
		default:
			sum += n
		}
	}
	if sum > 40_000 {
		t.Errorf("the pages' own files are %d bytes packed", sum)
	}
}

// The policy refuses style attributes and inline scripts, so no template may have them; and nothing is loaded from
// elsewhere.
func TestPagesKeepThePolicy(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	bad := regexp.MustCompile(`(?i)\sstyle=|\son[a-z]+=|javascript:|(src|href)="(https?:)?//|<script(?:>| [^>]*>)[^<]`)
	data := regexp.MustCompile(`(?s)<script[^>]*type="application/json"[^>]*>.*?</script>`)
	for _, route := range webtest.EveryRoute(t, h) {
		if route[0] != "GET" || strings.HasPrefix(route[1], "/static") {
			continue
		}
		body := data.ReplaceAllString(webtest.Ask(h, "GET", route[1], nil).Body.String(), "")
		if found := bad.FindString(body); found != "" && strings.HasPrefix(strings.TrimSpace(body), "<!doctype") {
			t.Errorf("%s: %q", route[1], found)
		}
	}
}
