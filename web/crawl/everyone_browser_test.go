package crawl_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// Every page of projects at the edges on the narrowest screen, which is also 1280 px at 400 %: blank in light, full to the
// brim in forced colours, names without end in the dark, and each form with something that it refuses, in light or in the dark
// by turns. In the short form the blank and the endless project share the pages between them: each page is seen full and in one
// of the two.
func TestBrowserPagesAtTheEdges(t *testing.T) {
	t.Parallel()
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	docs := pageDocuments(t)
	long := os.Getenv("DUSKWEIGHT_TORTURE") != ""
	dark, forced := browsertest.Phone, browsertest.Phone
	dark.Dark, forced.Forced, forced.Still = true, true, true
	for _, one := range []struct {
		name    string
		look    browsertest.Look
		refused int // of two pages, the one whose form is refused; -1 for none
	}{{"blank stores", browsertest.Phone, 0}, {"huge", forced, -1}, {"one long word", dark, 1}} {
		p, vs := webtest.Create(t, s, one.name, docs[one.name])
		tab := b.Open(t, one.look)
		look := func(page, state string) {
			for _, f := range tab.Axe() {
				t.Errorf("%s, %s%s: %v", one.name, page, state, f)
			}
			if wide := tab.Sideways(); wide > 0 {
				t.Errorf("%s, %s%s: %d px of sideways scroll", one.name, page, state, wide)
			}
			tab.Shot(strings.ReplaceAll(one.name+page+state, "/", "-"))
		}
		for i, page := range webtest.PagesOf(p, vs[len(vs)-1:]) {
			if !long && one.refused >= 0 && i%2 != one.refused {
				continue
			}
			tab.Go(base + page)
			look(page, "")
			if i%2 != one.refused || tab.Number(`document.querySelectorAll("form[data-try] input[inputmode=decimal]").length`) == 0 {
				continue
			}
			tab.String(`(() => { const f = document.querySelector("form[data-try]"); f.querySelector("input[inputmode=decimal]").value = "a b c"; HTMLFormElement.prototype.submit.call(f); return ""; })()`)
			tab.Wait(`document.title.startsWith("Error: ") && document.querySelector(".summary a") && document.readyState === "complete"`)
			look(page, " refused")
		}
		for _, c := range tab.Complaints("422") {
			t.Errorf("%s: console: %+v", one.name, c)
		}
	}
}

// With the Tab key alone: every control of a page that can be seen is reached once, in the order in which the page reads,
// each shows that it has the focus, and nothing holds it.
func TestBrowserKeyboard(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	at := page.VariantURL(p.ID, vs[0].ID)
	for _, look := range []browsertest.Look{{Width: 1366, Height: 768}, browsertest.Phone} {
		tab := b.Open(t, look)
		for _, page := range []string{"/", "/start", "/settings", "/help", page.ProjectURL(p.ID), page.ProjectURL(p.ID) + "/place", page.ProjectURL(p.ID) + "/load", page.ProjectURL(p.ID) + "/compare", at, at + "/hoist/0", at + "/sheet"} {
			tab.Go(base + page)
			want := int(tab.Number(`(() => {
				window.wanted = [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex='0']")]
					.filter(e => !e.disabled && e.type !== "hidden" && e.tabIndex >= 0 && e.checkVisibility() && (e.type !== "radio" || e.checked || !document.querySelector("input[type=radio][name='" + e.name + "']:checked")));
				window.reached = []; window.unmarked = []; window.marked = new Set();
				document.addEventListener("focusin", e => {
					window.reached.push(e.target);
					const css = getComputedStyle(e.target);
					if (css.outlineStyle === "none" || css.outlineWidth === "0px") window.unmarked.push(e.target);
					else window.marked.add(e.target); // where the focus comes back into the window, the mark may follow a moment later
				});
				return window.wanted.length; })()`))
			for done := 0; done < want+40; done += 20 {
				tab.Press(strings.Repeat("\t", 20))
			}
			missed := tab.String(`window.wanted.filter(e => e.isConnected && !window.reached.includes(e)).map(e => e.outerHTML.slice(0, 90)).slice(0, 5).join("\n")`)
			if missed != "" {
				t.Errorf("%d px, %s: never reached:\n%s", look.Width, page, missed)
			}
			if bare := tab.String(`[...new Set(window.unmarked)].filter(e => !window.marked.has(e)).map(e => e.outerHTML.slice(0, 90)).slice(0, 5).join("\n")`); bare != "" {
				t.Errorf("%d px, %s: no mark of the focus on:\n%s", look.Width, page, bare)
			}
			back := tab.String(`(() => { const first = [...new Set(window.reached)].filter(e => e.isConnected && window.wanted.includes(e)); let up = 0, was = null;
				for (const e of first) { const y = e.getBoundingClientRect().top + scrollY; if (innerWidth < 640 && was !== null && y < was - 200 && getComputedStyle(e).position !== "absolute") up++; was = y; }
				return String(up); })()`)
			if back != "0" {
				t.Errorf("%d px, %s: the focus jumps up %s times", look.Width, page, back)
			}
		}
	}
}

// The names of the pages that a project has are told apart in the title, and each page has exactly one first heading.
func TestTitles(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	titles := map[string]string{}
	for _, page := range webtest.PagesOf(p, vs[:1]) {
		body := webtest.Ask(s.Handler(), "GET", page, nil).Body.String()
		_, rest, _ := strings.Cut(body, "<title>")
		title, _, _ := strings.Cut(rest, "</title>")
		if n := strings.Count(body, "<h1"); n != 1 {
			t.Errorf("%s: %d first headings", page, n)
		}
		if other, taken := titles[title]; taken && !slices.Contains([]string{page, other}, strings.TrimSuffix(page, "?paper=letter")) {
			t.Errorf("%s and %s are both titled %q", page, other, title)
		}
		titles[title] = page
		if !strings.HasSuffix(title, "– Duskweight") {
			t.Errorf("%s: %q", page, title)
		}
	}
}
