package guide

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"duskweight/web/page"
)

// A term is linked where it is first used, and nowhere inside another control, a heading, a script or a picture.
func TestTermsAreLinked(t *testing.T) {
	l := page.NewLexicon([]page.Term{
		{Word: "side angle of the rope", ID: "w-side", Meaning: `how "askew" it runs`, Forms: []string{"side angle of the rope", "fleet angle"}},
		{Word: "rotor", ID: "w-rotor", Meaning: "what turns", Forms: []string{"rotor", "armature"}},
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
		if got := string(l.Link([]byte(c.in), true)); got != c.want {
			t.Errorf("%s\n gives %s\n want  %s", c.in, got, c.want)
		}
		if got := string(l.Link([]byte(c.in), false)); got != c.in {
			t.Errorf("outside of main: %s", got)
		}
	}
}

var TermLinks = regexp.MustCompile(`<a class="term" href="/help/words#([^"]*)" title="[^"]+">`)

// Every work that the model names stands on the page Sources.
func TestGuideNamesEverySource(t *testing.T) {
	page, err := Files.ReadFile("sources.md")
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("../../internal/model/source/*.go")
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

func BenchmarkTermLinks(b *testing.B) {
	g, words, err := readGuide()
	if err != nil {
		b.Fatal(err)
	}
	page := []byte("<main>" + g.pages[4].HTML + "</main>")
	b.SetBytes(int64(len(page)))
	for b.Loop() {
		words.Link(page, false)
	}
}

// Words that the pages, the sheet and the lists of parts use, and that a maker may not know: each has a row of its own, and every
// row says its meaning in whole sentences.
func TestGlossary(t *testing.T) {
	text, err := Files.ReadFile("words.md")
	if err != nil {
		t.Fatal(err)
	}
	rows := map[string]page.Term{}
	for _, term := range page.ReadGlossary(string(text)) {
		rows[term.Word] = term
		if m := term.Meaning; strings.ToUpper(m[:1]) != m[:1] || !strings.HasSuffix(m, ".") {
			t.Errorf("%s: not in sentences: %s", term.Word, m)
		}
	}
	for _, word := range []string{"splice", "thimble", "swaged", "keeper", "tag line", "isolator", "dead weight", "cantilever", "glaze", "lead angle", "strain wave",
		"pulse width", "limit switch", "sling", "essential", "break before make", "earth and neutral", "duty cycle", "surge", "inverter", "string of panels"} {
		if len(strings.Fields(rows[word].Meaning)) < 5 {
			t.Errorf("%s: not in the glossary", word)
		}
	}
}
