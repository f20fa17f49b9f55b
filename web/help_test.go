package web

import (
	"go/ast"
	"go/parser"
	"go/token"
	"html"
	"net/http"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/catalog"
)

// A term is linked where it is first used, and nowhere inside another control, a heading, a script or a picture.
func TestTermsAreLinked(t *testing.T) {
	l := newLexicon([]term{
		{Word: "side angle of the rope", ID: "w-side", Meaning: `how "askew" it runs`, forms: []string{"side angle of the rope", "fleet angle"}},
		{Word: "rotor", ID: "w-rotor", Meaning: "what turns", forms: []string{"rotor", "armature"}},
	})
	side := func(text string) string {
		return `<a class="term" href="/help/words#w-side" title="how &#34;askew&#34; it runs">` + text + `</a>`
	}
	rotor := func(text string) string {
		return `<a class="term" href="/help/words#w-rotor" title="what turns">` + text + `</a>`
	}
	for _, c := range []struct{ in, want string }{
		{`<p>The Fleet angle, again the fleet angle.</p>`, `<p>The ` + side("Fleet angle") + `, again the fleet angle.</p>`},
		{`<p>Two rotors.</p>`, `<p>Two ` + rotor("rotors") + `.</p>`},
		{`<p>Side angle of the rope and side angle</p>`, `<p>` + side("Side angle of the rope") + ` and side angle</p>`},
		{`<p>A rotorcraft, my fleet angles</p>`, `<p>A rotorcraft, my ` + side("fleet angles") + `</p>`},
		{`<li><a href="/">rotor</a> <button>rotor</button> <b>rotor</b></li>`, `<li><a href="/">rotor</a> <button>rotor</button> <b>` + rotor("rotor") + `</b></li>`},
		{`<h2>rotor</h2><script>"<p>rotor</p>"</script>`, `<h2>rotor</h2><script>"<p>rotor</p>"</script>`},
		{`<p title="rotor">x</p>`, `<p title="rotor">x</p>`},
		{`<details><p>rotor</p></details><details><p>rotor</p></details><p>rotor</p>`, `<details><p>` + rotor("rotor") + `</p></details><details><p>rotor</p></details><p>` + rotor("rotor") + `</p>`},
		{`<p>rotor</p><div class="x" id="results"><p>rotor</p></div>`, `<p>` + rotor("rotor") + `</p><div class="x" id="results"><p>` + rotor("rotor") + `</p></div>`},
	} {
		if got := string(l.link([]byte(c.in), true)); got != c.want {
			t.Errorf("%s\n gives %s\n want  %s", c.in, got, c.want)
		}
		if got := string(l.link([]byte(c.in), false)); got != c.in {
			t.Errorf("outside of main: %s", got)
		}
	}
}

var termLinks = regexp.MustCompile(`<a class="term" href="/help/words#([^"]*)" title="[^"]+">`)

// At least sixty terms are linked on the pages, each to a row that exists, each once on a page outside of what is folded
// away.
func TestTermsOfPages(t *testing.T) {
	s := newSite(t)
	p, vs := create(t, s, "sample", catalog.Sample())
	pages := append(pagesOf(p, vs), "/", "/start", "/settings", "/help")
	for _, topic := range guideTopics {
		pages = append(pages, "/help/"+topic)
	}
	words := ask(s.Handler(), "GET", "/help/words", nil).Body.String()
	linked := map[string]bool{}
	for _, page := range pages {
		body := ask(s.Handler(), "GET", page, nil).Body.String()
		for _, m := range termLinks.FindAllStringSubmatch(body, -1) {
			linked[m[1]] = true
			if !strings.Contains(words, `id="`+m[1]+`"`) {
				t.Errorf("%s: no row %s", page, m[1])
			}
		}
	}
	if len(linked) < 60 {
		t.Errorf("%d terms are linked somewhere, want at least 60", len(linked))
	}
}

// The search finds passages by their words, by the word of the trade, and shows where they stand; it stands without
// scripts, and text of a stranger stays text.
func TestGuideSearch(t *testing.T) {
	s := newSite(t)
	for _, c := range []struct{ asked, url, marked string }{
		{"sheave", "/help/words#w-pulley", "sheave"},
		{"Peukert", "/help/cells", "Peukert"},
		{"first push", "/help/words#w-first-push", "first"},
		{"step-down converter", "/help/hoist#the-panel-straight-on-the-motor", "step-down"},
		{"children fence", "/help/safety#mechanical", "fence"},
		{"rainflow", "/help/formulas#battery", "rainflow"},
	} {
		w := ask(s.Handler(), "GET", "/help?q="+strings.ReplaceAll(c.asked, " ", "+"), nil)
		body := w.Body.String()
		if w.Code != http.StatusOK || !strings.Contains(body, `href="`+c.url+`"`) || !strings.Contains(strings.ToLower(body), "<mark>"+strings.ToLower(c.marked)+"</mark>") {
			t.Errorf("%q: %d, not found at %s", c.asked, w.Code, c.url)
		}
	}
	body := ask(s.Handler(), "GET", "/help?q=%3Cscript%3Ealert(1)%3C%2Fscript%3E", nil).Body.String()
	if strings.Contains(body, "<script>alert") || !strings.Contains(body, "Nothing found") {
		t.Error("text of a stranger")
	}
	for _, q := range []string{"%00", "a", "....", strings.Repeat("rope+", 100), "%C4%B0stanbul", "%ff%fe", "''", "s"} {
		if w := ask(s.Handler(), "GET", "/help?q="+q, nil); w.Code != http.StatusOK {
			t.Errorf("%s: %d", q, w.Code)
		}
	}
	// the place that a result leads to is on its page
	for _, m := range regexp.MustCompile(`href="(/help/[a-z]+)#([^"]+)"`).FindAllStringSubmatch(ask(s.Handler(), "GET", "/help?q=the", nil).Body.String(), -1) {
		if !strings.Contains(ask(s.Handler(), "GET", m[1], nil).Body.String(), `id="`+m[2]+`"`) {
			t.Errorf("%s has no place %s", m[1], m[2])
		}
	}
}

// Every work that the model names stands on the page Sources.
func TestGuideNamesEverySource(t *testing.T) {
	page, err := guideFiles.ReadFile("guide/sources.md")
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("../internal/model/source/*.go")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	n := 0
	for _, file := range files {
		tree, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(tree, func(node ast.Node) bool {
			lit, ok := node.(*ast.CompositeLit)
			if !ok || len(lit.Elts) != 2 {
				return true
			}
			text, ok := lit.Elts[1].(*ast.BasicLit)
			if !ok || filepath.Base(file) == "source.go" { // the marks for what has no work behind it
				return true
			}
			title, err := strconv.Unquote(text.Value)
			if err != nil {
				t.Fatal(err)
			}
			n++
			if !strings.Contains(string(page), title) {
				t.Errorf("the guide does not name %s", title)
			}
			return true
		})
	}
	if n < 60 {
		t.Errorf("only %d works were looked for", n)
	}
}

// What is behind "how" leads to a page of the guide that exists.
func TestHowLeadsToTheGuide(t *testing.T) {
	s := newSite(t)
	p, vs := create(t, s, "sample", catalog.Sample())
	for _, page := range pagesOf(p, vs) {
		for _, m := range regexp.MustCompile(`href="(/help/[a-z]+)[#"]`).FindAllStringSubmatch(ask(s.Handler(), "GET", page, nil).Body.String(), -1) {
			if w := ask(s.Handler(), "GET", html.UnescapeString(m[1]), nil); w.Code != http.StatusOK {
				t.Errorf("%s leads to %s: %d", page, m[1], w.Code)
			}
		}
	}
}

func BenchmarkTermLinks(b *testing.B) {
	g, words, err := readGuide()
	if err != nil {
		b.Fatal(err)
	}
	page := []byte("<main>" + g.pages[4].HTML + "</main>")
	b.SetBytes(int64(len(page)))
	for b.Loop() {
		words.link(page, false)
	}
}
