package water_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// small is the narrowest phone, in the dark.
var small = browsertest.Look{Width: 320, Height: 640, Dark: true, Still: true}

// The page Lifted water of a tank on a tower: on the narrowest phone, in the dark, it has no fault, nothing leaves its sides, and
// the drawing of a tank that is higher than wide is seen whole; on paper stand plan, reasons, drawing and the last row of the year;
// without scripts a lid that is saved takes away the danger of drowning.
func TestBrowserWaterEverywhere(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, vs := webtest.Create(t, s, "pond", webtest.Pond(catalog.Cabin()))
	at := base + page.StoreURL(p.ID, vs[0].ID, 0, "water")
	tab := b.Open(t, small)
	tab.Go(at)
	tab.Clean()
	if over, hidden := tab.Sideways(), tab.Number(`(e => e.scrollWidth - e.clientWidth)(document.querySelector("#drawing .scroll"))`); over > 0 || hidden > 0 {
		t.Errorf("%d px too wide, of the drawing %g px are hidden", over, hidden)
	}
	paper := tab.Print()
	for _, want := range []string{p.Value.Name, vs[0].Value.Name, "Children drown in open water", "pump and turbine", "Hours of frost"} {
		if !paper.Says(want) {
			t.Errorf("%q is not on paper", want)
		}
	}
	if paper.Pages > 2 || strings.Contains(paper.Text, "\nhow\n") || paper.Says("Save") {
		t.Errorf("%d sheets: %s", paper.Pages, paper.Text)
	}
	look := small
	look.NoScripts = true
	tab.Look(look)
	tab.Go(at)
	if !strings.Contains(tab.Text("#answer"), "The water is open.") {
		t.Error("the answer does not say that the water is open")
	}
	tab.String(`(document.querySelector("[name='` + model.WaterPath(0) + `.covered']").value = "yes", "")`)
	tab.Follow(".form .primary")
	if text := tab.Text("#answer"); strings.Contains(text, "The water is open.") || !strings.Contains(text, "Nobody has signed") {
		t.Errorf("after a lid: %s", text)
	}
}

// The page Rocks, water or cells: on the narrowest phone, in the dark, it has no fault, nothing leaves its sides and the picture is
// seen whole, in letters of 10 px or more, however unlike the three are; on paper stand the project, the picture and the last
// sentence; without scripts 500 Wh at 5 m come to 67 t of rock, and a word in the place of a number stays where it was typed, with
// what is wrong beside it.
func TestBrowserRocksEverywhere(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	p, _ := webtest.Create(t, s, "sample", catalog.Sample())
	at := base + page.ProjectURL(p.ID) + "/rocks"
	tab := b.Open(t, small)
	for _, query := range []string{"?energy=2&height=50", "?energy=500000&height=1", ""} {
		tab.Go(at + query)
		hidden := tab.Number(`(e => e.scrollWidth - e.clientWidth)(document.querySelector("#rocks .scroll"))`)
		out := tab.Number(`(() => { const g = document.querySelector("#rocks svg"), s = g.getBoundingClientRect();
			return Math.max(...[...g.querySelectorAll("rect, text, circle")].map(e => e.getBoundingClientRect()).map(r => Math.max(s.left - r.left, r.right - s.right, s.top - r.top, r.bottom - s.bottom))) })()`)
		least := tab.Number(`(e => 14 * e.getBoundingClientRect().width / e.viewBox.baseVal.width)(document.querySelector("#rocks svg"))`)
		if over := tab.Sideways(); over > 0 || hidden > 0 || out > 1 || least < 10 {
			t.Errorf("%q: %d px too wide, of the picture %g px are hidden and %g px outside, letters of %.1f px", query, over, hidden, out, least)
		}
	}
	tab.Clean()
	paper := tab.Print()
	for _, want := range []string{p.Value.Name, "a person", "battery", "Why not water?"} {
		if !paper.Says(want) {
			t.Errorf("%q is not on paper", want)
		}
	}
	if paper.Pages != 1 || paper.Least < 9 {
		t.Errorf("%d sheets, the smallest letters %.1f points", paper.Pages, paper.Least)
	}
	look := small
	look.NoScripts = true
	tab.Look(look)
	tab.Go(at)
	tab.Type("#energy", "500")
	tab.Follow(".plate button")
	if text := tab.Text(".verdict"); !strings.Contains(text, "67 t of rock") {
		t.Errorf("500 Wh: %s", text)
	}
	tab.Type("#height", "high")
	tab.Follow(".plate button")
	if tab.Value("#height") != "high" || !strings.Contains(tab.Text("#height-problem"), "Until then 5\u00a0m counts") || !strings.Contains(tab.Text(".verdict"), "67 t of rock") {
		t.Errorf("a word: %q, %q", tab.Value("#height"), tab.Text(".plate"))
	}
}
