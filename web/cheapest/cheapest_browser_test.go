package cheapest_test

import (
	"strings"
	"testing"

	"duskweight/web/browsertest"
	"duskweight/web/webtest"
)

// The page Cheapest variant: without scripts its button gives the answer, with a plan that becomes a variant by its own; with the
// answer, on the narrowest phone, in the dark, the page has no fault, nothing leaves its sides and the letters of the picture have
// 10 px or more; on paper it is one sheet with the best plan and its cost.
func TestBrowserCheapestEverywhere(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	at := base + cabin(t, s) + "/cheapest"
	tab := b.Open(t, browsertest.Look{Width: 320, Height: 640, Dark: true, Still: true, NoScripts: true})
	tab.Go(at)
	tab.Follow(`[name="run"]`)
	if text := tab.Text("h1"); !strings.Contains(text, "cost least with") {
		t.Fatalf("the button leads to %q", text)
	}
	tab.Look(browsertest.Look{Width: 320, Height: 640, Dark: true, Still: true})
	tab.Go(at)
	tab.Clean()
	least := tab.Number(`Math.min(...[...document.querySelectorAll(".front-narrow text")].map(e => parseFloat(e.getAttribute("font-size")) * document.querySelector(".front-narrow").getBoundingClientRect().width / document.querySelector(".front-narrow").viewBox.baseVal.width))`)
	if over := tab.Sideways(); over > 0 || !(least >= 10) {
		t.Errorf("%d px too wide, the smallest letters of the picture %.1f px", over, least)
	}
	paper := tab.Print()
	for _, want := range []string{"cost least with", "The best plan is", "Against today", "How this is worked out"} {
		if !paper.Says(want) {
			t.Errorf("%q is not on paper", want)
		}
	}
	if paper.Pages != 1 || paper.Says("Make it a variant") {
		t.Errorf("%d sheets: %s", paper.Pages, paper.Text)
	}
	tab.Look(browsertest.Look{Width: 320, Height: 640, NoScripts: true})
	tab.Go(at)
	tab.Follow("#many-results .primary")
	if made := webtest.Stored(t, s, 2).Value; !strings.Contains(tab.Text("body"), made.Name) {
		t.Errorf("the new variant %q is not the page that opens", made.Name)
	}
}
