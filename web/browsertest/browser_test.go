package browsertest

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; form-action 'self'"

// page wraps a body into a page that the checker finds nothing wrong with.
func page(body string) string {
	return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Test</title>` +
		`<link rel="icon" href="data:,"><link rel="stylesheet" href="/s.css"><script src="/s.js" defer></script></head><body><main><h1>Test</h1>` + body + `</main></body></html>`
}

func serve(t *testing.T, pages map[string]string) *httptest.Server {
	t.Helper()
	s := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Security-Policy", policy)
		body, ok := pages[r.URL.Path]
		switch {
		case r.URL.Path == "/s.css":
			w.Header().Set("Content-Type", "text/css")
			fmt.Fprint(w, `@media (prefers-color-scheme:dark){body{background:#111;color:#eee}} @media (forced-colors:active){h1{letter-spacing:7px}}
				@page{size:A4;margin:15mm} .next{break-before:page} .wide{width:900px}`)
		case r.URL.Path == "/s.js":
			w.Header().Set("Content-Type", "text/javascript")
			fmt.Fprint(w, `document.documentElement.dataset.ran="yes"`)
		case ok:
			w.Header().Set("Content-Type", "text/html; charset=utf-8")
			fmt.Fprint(w, page(body))
		default:
			http.NotFound(w, r)
		}
	}))
	t.Cleanup(s.Close)
	return s
}

// Each thing that is looked for is found where it is and only there.
func TestBrowserFinds(t *testing.T) {
	b := Start(t)
	s := serve(t, map[string]string{
		"/good":    `<p>All is well.</p><form action="/good"><label>Mass <input name="m"></label><button>Go</button></form>`,
		"/policy":  `<p style="color:red">Inline style.</p>`,
		"/axe":     `<input name="nameless"><p><a href="/good"></a></p>`,
		"/outside": `<img alt="" src="http://outside.example/x.png">`,
		"/thrown":  `<script src="/missing.js"></script>`,
		"/wide":    `<div class="wide">wide</div>`,
		"/paper":   `<p>First sheet 2.8 m</p><p class="next">Second sheet</p>`,
	})

	t.Run("good", func(t *testing.T) {
		tab := b.Open(t, Look{})
		tab.Go(s.URL + "/good")
		tab.Clean()
		if tab.Sideways() != 0 || len(tab.Requests()) < 3 {
			t.Errorf("sideways %d, requests %q", tab.Sideways(), tab.Requests())
		}
		tab.Type("input", "12,5")
		if got := tab.Value("input"); got != "12,5" {
			t.Errorf("typed %q", got)
		}
		tab.Follow("button")
		if got := tab.URL(); !strings.HasSuffix(got, "/good?m=12%2C5") {
			t.Errorf("followed to %s", got)
		}
		tab.Wait(`document.documentElement.dataset.ran === "yes"`)
		tab.Click("input")
		if got, err := chromedp.Run(tab.Context(), chromedp.Evaluate[string]("document.activeElement.name")); got != "m" {
			t.Errorf("clicked into %q (%v)", got, err)
		}
	})
	t.Run("policy", func(t *testing.T) {
		tab := b.Open(t, Look{})
		tab.Go(s.URL + "/policy")
		if c := tab.Complaints(); len(c) != 1 || !c[0].Policy {
			t.Errorf("complaints: %+v", c)
		}
	})
	t.Run("axe", func(t *testing.T) {
		tab := b.Open(t, Look{})
		tab.Go(s.URL + "/axe")
		var ids []string
		for _, f := range tab.Axe() {
			ids = append(ids, f.ID)
		}
		if !slices.Contains(ids, "label") || !slices.Contains(ids, "link-name") {
			t.Errorf("findings: %v", ids)
		}
	})
	t.Run("outside", func(t *testing.T) {
		tab := b.Open(t, Look{})
		tab.Go(s.URL + "/outside")
		if out := tab.Outside(); !slices.Equal(out, []string{"http://outside.example/x.png"}) {
			t.Errorf("outside: %q", out)
		}
	})
	t.Run("console", func(t *testing.T) {
		tab := b.Open(t, Look{})
		tab.Go(s.URL + "/thrown")
		if c := tab.Complaints(); len(c) == 0 {
			t.Error("a missing script is not complained about")
		}
		if c := tab.Complaints("404", "MIME type"); len(c) != 0 {
			t.Errorf("allowed and yet complained about: %+v", c)
		}
	})
	t.Run("looks", func(t *testing.T) {
		tab := b.Open(t, Look{Width: 320, Height: 640, Dark: true, Forced: false, NoScripts: true})
		tab.Go(s.URL + "/wide")
		if tab.Sideways() < 500 {
			t.Errorf("sideways %d", tab.Sideways())
		}
		if got := tab.Number("innerWidth"); got != 320 {
			t.Errorf("width %v", got)
		}
		if got := tab.String("getComputedStyle(document.body).backgroundColor"); got != "rgb(17, 17, 17)" {
			t.Errorf("dark ground is %s", got)
		}
		if got := tab.String("document.documentElement.dataset.ran || 'no'"); got != "no" {
			t.Error("scripts ran")
		}
		tab.Look(Look{Forced: true})
		tab.Go(s.URL + "/good")
		if got := tab.String("getComputedStyle(document.querySelector('h1')).letterSpacing"); got != "7px" {
			t.Errorf("forced colours: %s", got)
		}
	})
	t.Run("paper", func(t *testing.T) {
		tab := b.Open(t, Look{})
		tab.Go(s.URL + "/paper")
		sheet := tab.Print()
		if sheet.Pages != 2 || int(sheet.Size[0][0]) != 594 && int(sheet.Size[0][0]) != 595 {
			t.Errorf("pages %d, size %v", sheet.Pages, sheet.Size)
		}
		if !sheet.Says("First sheet 2.8 m") || !sheet.Says("Second sheet") || sheet.Says("Third sheet") {
			t.Errorf("text: %q", sheet.Text)
		}
		if w := tab.PrintOn(chromedp.PaperLetter).Size[0][0]; int(w+0.5) != 612 {
			t.Errorf("Letter is %v points wide", w)
		}
		dir := filepath.Join(t.TempDir(), "shots")
		t.Setenv("DUSKWEIGHT_SHOTS", dir)
		tab.Shot("one page")
		sheet.Keep(t, "one page")
		for _, name := range []string{"one-page.png", "one-page.pdf"} {
			if info, err := os.Stat(filepath.Join(dir, name)); err != nil || info.Size() < 500 {
				t.Errorf("%s: %v", name, err)
			}
		}
	})
}
