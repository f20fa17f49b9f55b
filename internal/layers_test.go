// Package internal_test holds the rules between packages: who may import whom, what the model keeps its hands off, and
// names that the compiler would silently leave out.
package internal_test

import (
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

const module = "duskweight"

// layer is what a package may import besides the standard library: ours by path below the module (a path ending in /*
// stands for everything below it), others by prefix.
type layer struct{ ours, others []string }

var (
	leaf    = []string{"internal/model/unit", "internal/model/source", "internal/model/reservoir", "internal/model/reason", "internal/model/pipe", "internal/say"}
	front   = []string{"internal/model", "internal/model/*", "internal/say"}
	ofUse   = layer{ours: front}
	ofModel = layer{ours: leaf}
	router  = []string{"github.com/go-chi/chi/v5"}
	pages   = []string{"github.com/go-chi/chi/v5", "github.com/a-h/templ"}
	room    = layer{ours: []string{"internal/*", "web/page", "web/form", "web/typical"}, others: pages} // one subject; no room imports another
	browser = []string{"github.com/chromedp/", "github.com/ledongthuc/pdf"}
)

// layers is the table; a package that is not in it is refused. The key "internal/model/sun" holds for what is below it.
var layers = map[string]layer{
	"migrations":               {},
	"internal/model/unit":      {},
	"internal/model/source":    {},
	"internal/model/pipe":      {ours: []string{"internal/model/unit"}},
	"internal/witness":         {ours: []string{"internal/model/unit", "internal/model/source"}}, // for tests alone
	"internal/say":             {ours: []string{"internal/model/unit"}},
	"internal/model/reservoir": {ours: []string{"internal/model/unit", "internal/say"}},
	"internal/model/reason":    {ours: []string{"internal/model/unit", "internal/model/source", "internal/say"}},
	"internal/model/sun":       ofModel,
	"internal/model/panel":     ofModel,
	"internal/model/load":      ofModel,
	"internal/model/cell":      ofModel,
	"internal/model/lift":      ofModel,
	"internal/model/year":      ofModel,
	"internal/model/cost":      ofModel,
	"internal/model/water":     ofModel,
	"internal/model/trial":     {ours: leaf, others: []string{"gonum.org/v1/gonum"}},
	"internal/model":           {ours: []string{"internal/model/* but search", "internal/say"}},
	"internal/model/search":    {ours: front, others: []string{"golang.org/x/sync"}},
	"internal/catalog":         ofUse,
	"internal/weather":         ofUse,
	"internal/draw":            ofUse,
	"internal/document":        {ours: front},
	// The weather year is a field of the project that the store keeps apart, so it names its type.
	"internal/store": {ours: []string{"internal/document", "internal/model", "internal/model/sun", "internal/say", "migrations"},
		others: []string{"github.com/mattn/go-sqlite3", "github.com/pressly/goose/v3"}},
	// What a form asks for comes from outside; it knows what is wrong with a design (model.Problems) and where a value is from.
	"web/form":        {ours: []string{"web/typical", "internal/document", "internal/model", "internal/model/unit", "internal/model/source", "internal/say"}},
	"web/typical":     {ours: front},
	"web/page":        {ours: []string{"web/form", "web/typical", "internal/*"}, others: append([]string{"github.com/go-echarts/go-echarts/v2", "golang.org/x/net/html", "github.com/tdewolff/minify/v2"}, pages...)},
	"web/cells":       room,
	"web/cheapest":    room,
	"web/compare":     room,
	"web/guide":       {ours: room.ours, others: append([]string{"github.com/yuin/goldmark", "golang.org/x/text"}, pages...)},
	"web/history":     room,
	"web/hoist":       room,
	"web/load":        room,
	"web/overview":    room,
	"web/parts":       room,
	"web/place":       room,
	"web/projects":    room,
	"web/rescue":      room,
	"web/settings":    room,
	"web/sheet":       room,
	"web/shelf":       room,
	"web/sure":        room,
	"web/takes":       room,
	"web/trials":      room,
	"web/variant":     room,
	"web/water":       room,
	"web":             {ours: []string{"web/*", "internal/store"}, others: router},
	"web/browsertest": {others: browser},
	"web/crawl":       {ours: []string{"web/*"}}, // tests alone, of all rooms at once
	"web/formtest":    {ours: []string{"web/form", "internal/model", "internal/model/*"}},
	"web/host":        {},
	"web/webtest":     {ours: []string{"web/*", "web", "internal/*"}, others: append([]string{"golang.org/x/net/html"}, pages...)},
	"cmd/duskweight":  {ours: []string{"web", "internal/store", "internal/document", "internal/model", "internal/model/reason", "internal/model/search", "internal/say"}},
}

// forTests may be imported by any test.
var forTests = append([]string{"pgregory.net/rapid", "github.com/google/go-cmp", "go.uber.org/goleak",
	"github.com/santhosh-tekuri/jsonschema", "gonum.org/v1/gonum", "github.com/a-h/templ", "github.com/go-chi/chi/v5"}, browser...)

// pkg is what go list says of a package.
type pkg struct {
	ImportPath, Dir                              string
	Imports, TestImports, XTestImports           []string
	GoFiles, TestGoFiles, XTestGoFiles, CgoFiles []string
	IgnoredGoFiles                               []string
	Export                                       string
	Standard                                     bool
	Error                                        *struct{ Err string }
}

func (p pkg) path() string { return strings.TrimPrefix(strings.TrimPrefix(p.ImportPath, module), "/") }

func list(t *testing.T, args ...string) []pkg {
	t.Helper()
	cmd := exec.Command("go", append([]string{"list", "-e", "-json"}, args...)...)
	cmd.Dir = ".."
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	var all []pkg
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p pkg
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return all
		} else if err != nil {
			t.Fatal(err)
		}
		all = append(all, p)
	}
}

// home returns the row of the table that holds for a package.
func home(path string) (string, bool) {
	for p := path; p != "."; p = filepath.Dir(p) {
		if _, ok := layers[p]; ok {
			return p, p == path || p != "internal/model" && p != "web"
		}
	}
	return "", false
}

func (l layer) allows(from, imported string) bool {
	ours, isOurs := strings.CutPrefix(imported, module+"/")
	if !isOurs {
		return slices.ContainsFunc(l.others, func(o string) bool {
			return imported == o || strings.HasPrefix(imported, strings.TrimSuffix(o, "/")+"/")
		})
	}
	if a, _ := home(ours); a == from {
		return true // parts of one room
	}
	return slices.ContainsFunc(l.ours, func(o string) bool {
		o, but := strings.CutSuffix(o, " but search")
		if but && strings.HasPrefix(ours, "internal/model/search") {
			return false
		}
		below, all := strings.CutSuffix(o, "/*")
		return ours == o || all && strings.HasPrefix(ours, below+"/")
	})
}

func isStandard(path string) bool {
	first, _, _ := strings.Cut(path, "/")
	return first != module && !strings.Contains(first, ".")
}

// Who may import whom.
func TestLayers(t *testing.T) {
	for _, p := range list(t, "./...") {
		if p.path() == "internal" {
			continue
		}
		row, ok := home(p.path())
		if !ok {
			t.Errorf("%s stands in no row of the table", p.path())
			continue
		}
		l := layers[row]
		for _, i := range p.Imports {
			if !isStandard(i) && !l.allows(row, i) {
				t.Errorf("%s imports %s", p.path(), i)
			}
		}
		// A test may start from the sample project and name the parts of the model; siblings do not meet in tests either.
		beside := []string{"web/browsertest", "internal/witness"}
		if strings.HasPrefix(row, "web") { // a whole site, asked from outside
			beside = append(beside, "web", "web/webtest", "web/formtest", "web/page", "web/form", "web/typical", "internal/document", "internal/draw", "internal/store", "internal/weather")
		}
		if row == "internal/model" || !strings.HasPrefix(row, "internal/model/") || row == "internal/model/search" {
			beside = append(beside, "internal/catalog", "internal/model", "internal/model/*", "internal/document")
		}
		withTests := layer{ours: append(beside, l.ours...), others: append(slices.Clone(l.others), forTests...)}
		for _, i := range slices.Concat(p.TestImports, p.XTestImports) {
			if !isStandard(i) && !withTests.allows(row, i) {
				t.Errorf("%s imports %s in a test", p.path(), i)
			}
		}
	}
}

// A row allows no library that none of its packages imports.
func TestLibrariesAreUsed(t *testing.T) {
	imports := map[string][]string{} // by row
	for _, p := range list(t, "./...") {
		row, _ := home(p.path())
		imports[row] = append(imports[row], p.Imports...)
	}
	for row, l := range layers {
		for _, o := range l.others {
			if !slices.ContainsFunc(imports[row], func(i string) bool { return layer{others: []string{o}}.allows(row, i) }) {
				t.Errorf("%s may import %s, and does not", row, o)
			}
		}
	}
}

// The table can refuse.
func TestLayersCanFail(t *testing.T) {
	for _, c := range []struct {
		from, imported string
		want           bool
	}{
		{"internal/model/sun", "duskweight/internal/model/unit", true},
		{"internal/model/sun", "duskweight/internal/model/panel", false},
		{"internal/model/lift", "duskweight/internal/model/lift/path", true},
		{"internal/model/unit", "gonum.org/v1/gonum/stat", false},
		{"internal/model", "duskweight/internal/model/lift/path", true},
		{"internal/model", "duskweight/internal/model/search", false},
		{"internal/store", "duskweight/web", false},
		{"cmd/duskweight", "duskweight/internal/catalog", false},
		{"web", "github.com/mattn/go-sqlite3", false},
		{"web", "github.com/go-chi/chi/v5/middleware", true},
		{"web", "duskweight/web/hoist", true},
		{"web/hoist", "duskweight/web/page", true},
		{"web/hoist", "duskweight/web/cells", false},
		{"web/hoist", "duskweight/web", false},
		{"web/page", "duskweight/web/hoist", false},
		{"web/form", "duskweight/web/page", false},
		{"web/form", "duskweight/internal/store", false},
	} {
		if got := layers[c.from].allows(c.from, c.imported); got != c.want {
			t.Errorf("%s importing %s: %v", c.from, c.imported, got)
		}
	}
}

// impure is what the model keeps its hands off.
var impure = []string{"os", "net", "log", "database", "embed", "syscall", "plugin", "math/rand", "crypto/rand", "testing", "unsafe"}

// clock finds calls that make an answer depend on when or where it is computed.
var clock = regexp.MustCompile(`\btime\.(Now|Since|Until|After|AfterFunc|Sleep|Tick|NewTimer|NewTicker|Local|LoadLocation)\b` +
	`|\brand\.(Int|Int32|Int64|Uint32|Uint64|IntN|Int32N|Int64N|N|Float32|Float64|NormFloat64|ExpFloat64|Perm|Shuffle)\(` +
	`|\bruntime\.(NumCPU|GOMAXPROCS|Caller)\b`)

// The model is pure.
func TestModelIsPure(t *testing.T) {
	for _, p := range list(t, "./internal/model/...") {
		for _, i := range p.Imports {
			for _, no := range impure {
				if i != "math/rand/v2" && (i == no || strings.HasPrefix(i, no+"/")) {
					t.Errorf("%s imports %s", p.path(), i)
				}
			}
		}
		if strings.HasPrefix(p.path(), "internal/model/search") {
			continue
		}
		for _, f := range p.GoFiles {
			text, err := os.ReadFile(filepath.Join(p.Dir, f))
			if err != nil {
				t.Fatal(err)
			}
			if found := clock.FindString(string(text)); found != "" {
				t.Errorf("%s/%s calls %s", p.path(), f, found)
			}
		}
	}
}

// No file name makes the compiler leave it out on this or another machine.
func TestFileNames(t *testing.T) {
	out, err := exec.Command("go", "tool", "dist", "list").Output()
	if err != nil {
		t.Fatal(err)
	}
	systems := append(strings.Fields(strings.ReplaceAll(string(out), "/", " ")), "unix", "arm64be", "amd64p32", "ppc", "riscv", "sparc", "nacl", "zos")
	vague := []string{"util", "utils", "common", "helper", "helpers", "types", "misc"}
	for _, p := range list(t, "./...") {
		for _, f := range slices.Concat(p.GoFiles, p.TestGoFiles, p.XTestGoFiles, p.CgoFiles, p.IgnoredGoFiles) {
			name := strings.TrimSuffix(strings.TrimSuffix(f, ".go"), "_test")
			parts := strings.Split(name, "_")
			if len(parts) > 1 && slices.Contains(systems, parts[len(parts)-1]) && !meant(t, p.Dir, parts[0]) {
				t.Errorf("%s/%s: %s is the name of a system, so the file is left out elsewhere", p.path(), f, parts[len(parts)-1])
			}
			if slices.Contains(vague, name) || slices.Contains(vague, filepath.Base(p.path())) {
				t.Errorf("%s/%s: the name says nothing", p.path(), f)
			}
		}
		for _, f := range p.IgnoredGoFiles {
			stem, _, _ := strings.Cut(strings.TrimSuffix(f, ".go"), "_")
			if !meant(t, p.Dir, stem) {
				t.Errorf("%s/%s is not compiled", p.path(), f)
			}
		}
	}
}

// meant reports whether a file for one system is meant so: one of the files that share its first word says for which
// systems it is with a build line.
func meant(t *testing.T, dir, stem string) bool {
	files, err := filepath.Glob(filepath.Join(dir, stem+"*.go"))
	if err != nil {
		t.Fatal(err)
	}
	return slices.ContainsFunc(files, func(file string) bool {
		text, err := os.ReadFile(file)
		return err == nil && strings.Contains(string(text), "//go:build ")
	})
}
