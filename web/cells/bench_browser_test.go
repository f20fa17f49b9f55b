package cells_test

import (
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/web/browsertest"
	"duskweight/web/webtest"
)

// What the page Battery may ask of a reader at first sight, of the worked example and of a battery that is empty: at most four
// fields, the drawing within the first screen, the whole page in two screens, no scrolling sideways on a phone, signs of 26 px
// there, and no more than 14 KB to load. The measures are our own judgement.
func TestBrowserBatteryBudgets(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	for name, change := range map[string]func(*model.Document){"example": nil, "empty": func(d *model.Document) { d.Variants[1].Stores[0].Cells = &cell.Bank{} }} {
		at := battery(t, s, name, change)
		packed := len(webtest.Packed(s.Handler(), at))
		tab := b.Open(t, browsertest.Look{Width: 1366, Height: 768, Still: true})
		tab.Go(base + at)
		fields := tab.Number(`[...document.querySelectorAll("main input, main select, main textarea")].filter(e => e.type !== "hidden" && e.checkVisibility() && e.getBoundingClientRect().top < 768).length`)
		edge := tab.Number(`document.querySelector("#drawing").getBoundingClientRect().bottom + scrollY`)
		high := tab.Number(`document.documentElement.scrollHeight`)
		phone := b.Open(t, browsertest.Look{Width: 360, Height: 800, Still: true})
		phone.Go(base + at)
		tall := phone.Number(`document.documentElement.scrollHeight`)
		sign := phone.Number(`Math.min(...[...document.querySelectorAll("#drawing .mk circle")].map(e => e.getBoundingClientRect().width))`)
		narrow := b.Open(t, browsertest.Look{Width: 320, Height: 700, Still: true})
		narrow.Go(base + at)
		over := narrow.Number(`document.documentElement.scrollWidth - innerWidth`)
		small := narrow.Number(`[...document.querySelectorAll(".parts-rows a")].filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 44).length`)
		t.Logf("%s: %d bytes packed, %v fields in sight, drawing to %.0f px, page %.0f px, at 360 px %.0f px, signs %.1f px", name, packed, fields, edge, high, tall, sign)
		for _, m := range []struct {
			what     string
			is, most float64
		}{
			{"bytes packed", float64(packed), 14 * 1024}, {"fields in sight", fields, 4}, {"lower edge of the drawing", edge, 768}, {"height of the page", high, 1536},
			{"height at 360 px", tall, 2700}, {"sideways at 320 px", over, 0}, {"rows of the list under 44 px", small, 0}, {"a sign of 26 px, less its own size", 26 - sign, 0},
		} {
			if m.is > m.most {
				t.Errorf("%s: %s %.1f, at most %.0f", name, m.what, m.is, m.most)
			}
		}
	}
}

// The page has no fault that the rules of accessibility find, and nothing leaves its sides: the worked example on a wide screen
// and on narrow ones, in light and in the dark, with a card of panels, and a battery that is empty.
func TestBrowserBatteryIsForEveryone(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	example := battery(t, s, "example", nil)
	empty := battery(t, s, "empty", func(d *model.Document) { d.Variants[1].Stores[0].Cells = &cell.Bank{} })
	for _, one := range []struct {
		at    string
		width int
		dark  bool
	}{{example, 1366, false}, {example + "?part=panels&show=flow&week=1", 1366, true}, {example, 360, true}, {example + "?part=battery&more=1&show=numbers", 320, false}, {empty, 320, true}} {
		tab := b.Open(t, browsertest.Look{Width: one.width, Height: 800, Dark: one.dark, Still: true})
		tab.Go(base + one.at)
		for _, f := range tab.Axe() {
			t.Errorf("%s at %d px: %v", one.at, one.width, f)
		}
		if wide := tab.Sideways(); wide > 0 {
			t.Errorf("%s at %d px: %d px of sideways scroll", one.at, one.width, wide)
		}
	}
}
