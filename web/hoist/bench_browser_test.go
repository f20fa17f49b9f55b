package hoist_test

import (
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/lift"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// What the page Lifted mass may ask of a reader at first sight, of the worked example and of a hoist that is empty: few
// fields, the drawing within the first screen, the whole page in two, no scrolling sideways on a phone, and no more than
// 14 KB to load. The measures are our own judgement.
func TestBrowserBenchBudgets(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	blank := catalog.Sample()
	blank.Variants[0].Stores[0].Hoist = &lift.Hoist{}
	p, vs := webtest.Create(t, s, "example", catalog.Sample())
	q, us := webtest.Create(t, s, "blank", blank)
	// An empty hoist lists every part as not known: 24 rows that a begun one folds.
	tallest := map[string][2]float64{"example": {1536, 3400}, "blank": {2200, 4200}}
	for name, at := range map[string]string{"example": page.StoreURL(p.ID, vs[0].ID, 0, "hoist"), "blank": page.StoreURL(q.ID, us[0].ID, 0, "hoist")} {
		packed := len(webtest.Packed(s.Handler(), at))
		tab := b.Open(t, browsertest.Look{Width: 1366, Height: 768, Still: true})
		tab.Go(base + at)
		fields := tab.Number(`[...document.querySelectorAll("main input, main select, main textarea")].filter(e => e.type !== "hidden" && e.checkVisibility() && e.getBoundingClientRect().top < 768).length`)
		edge := tab.Number(`document.querySelector(".side-view").getBoundingClientRect().bottom + scrollY`)
		high := tab.Number(`document.documentElement.scrollHeight`)
		phone := b.Open(t, browsertest.Look{Width: 360, Height: 800, Still: true})
		phone.Go(base + at)
		tall := phone.Number(`document.documentElement.scrollHeight`)
		narrow := b.Open(t, browsertest.Look{Width: 320, Height: 700, Still: true})
		narrow.Go(base + at)
		over := narrow.Number(`document.documentElement.scrollWidth - innerWidth`)
		small := narrow.Number(`[...document.querySelectorAll(".parts-rows a")].filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 44).length`)
		t.Logf("%s: %d bytes packed, %v fields in sight, drawing to %.0f px, page %.0f px, at 360 px %.0f px", name, packed, fields, edge, high, tall)
		for _, m := range []struct {
			what     string
			is, most float64
		}{
			{"bytes packed", float64(packed), 14 * 1024}, {"fields in sight", fields, 8}, {"lower edge of the drawing", edge, 768}, {"height of the page", high, tallest[name][0]},
			{"height at 360 px", tall, tallest[name][1]}, {"sideways at 320 px", over, 0}, {"rows of the list under 44 px", small, 0},
		} {
			if m.is > m.most {
				t.Errorf("%s: %s %.0f, at most %.0f", name, m.what, m.is, m.most)
			}
		}
	}
}
