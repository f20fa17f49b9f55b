package overview_test

import (
	"fmt"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// The overview, its class mode before and after a guess, the page In motion and a refused number, for everyone: no finding of
// the checks, nothing sideways, no complaint, at 1366 px in light and at 320 px in the dark.
func TestBrowserForEveryone(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	at := page.ProjectURL(p.ID)
	for _, look := range []browsertest.Look{{Width: 1366, Height: 900, Still: true}, {Width: 320, Height: 700, Dark: true, Still: true}} {
		tab := b.Open(t, look)
		check := func(what string) {
			for _, f := range tab.Axe() {
				t.Errorf("%d px, %s: %v", look.Width, what, f)
			}
			if wide := tab.Sideways(); wide > 0 {
				t.Errorf("%d px, %s: %d px sideways", look.Width, what, wide)
			}
		}
		for _, page := range []string{at, at + "?class=1", at + "?class=1&guess=40", page.StoreURL(p.ID, vs[0].ID, 0, "motion")} {
			tab.Go(base + page)
			check(page)
		}
		tab.Go(base + at)
		tab.String(`(() => { const f = document.querySelector("form[data-try]"); f.querySelector("input[inputmode=decimal]").value = "a b c"; HTMLFormElement.prototype.submit.call(f); return ""; })()`)
		tab.Wait(`document.title.startsWith("Error: ") && document.querySelector(".summary a") && document.readyState === "complete"`)
		check("a refused number")
		for _, c := range tab.Complaints("422") {
			t.Errorf("%d px: console: %s", look.Width, fmt.Sprint(c))
		}
	}
}
