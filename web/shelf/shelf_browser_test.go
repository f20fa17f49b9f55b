package shelf_test

import (
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// What the page Parts shelf may ask of a reader at first sight, of the worked example (12 parts) and of an empty shelf: no
// field, a page and a half on a desktop, no scrolling sideways on a phone, 10 KB to load. What fits in the worked example has the
// band of its hoist above all that, and may be a little higher. The measures are our own judgement.
func TestBrowserShelfBudgets(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	blank := catalog.Sample()
	blank.Project.Shelf = model.Shelf{}
	p, vs := webtest.Create(t, s, "example", catalog.Sample())
	q, _ := webtest.Create(t, s, "blank", blank)
	shelf := page.ProjectURL(p.ID) + "/shelf"
	highest := map[string]float64{"example": 1100, "blank": 1100, "what fits": 1300}
	for name, at := range map[string]string{"example": shelf, "blank": page.ProjectURL(q.ID) + "/shelf", "what fits": shelf + "/fits?v=" + page.Itoa(int(vs[0].ID))} {
		packed := len(webtest.Packed(s.Handler(), at))
		tab := b.Open(t, browsertest.Look{Width: 1366, Height: 768, Still: true})
		tab.Go(base + at)
		const seen = `[...document.querySelectorAll("main input, main select, main textarea")].filter(e => e.type !== "hidden" && e.checkVisibility()).length`
		fields := tab.Number(seen)
		high := tab.Number(`document.documentElement.scrollHeight`)
		tab.Shot("shelf-" + name)
		phone := b.Open(t, browsertest.Look{Width: 360, Height: 800, Still: true})
		phone.Go(base + at)
		tall := phone.Number(`document.documentElement.scrollHeight`)
		phone.Shot("shelf-phone-" + name)
		narrow := b.Open(t, browsertest.Look{Width: 320, Height: 700, Still: true})
		narrow.Go(base + at)
		over := narrow.Number(`document.documentElement.scrollWidth - innerWidth`)
		small := narrow.Number(`[...document.querySelectorAll(".plank a, .plank summary, .five button")].filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 44).length`)
		t.Logf("%s: %d bytes packed, %v fields in sight, page %.0f px, at 360 px %.0f px", name, packed, fields, high, tall)
		for _, m := range []struct {
			what     string
			is, most float64
		}{
			{"bytes packed", float64(packed), 10 * 1024}, {"fields in sight", fields, 0}, {"height of the page", high, highest[name]},
			{"height at 360 px", tall, 3500}, {"sideways at 320 px", over, 0}, {"what is touched under 44 px", small, 0},
		} {
			if m.is > m.most {
				t.Errorf("%s: %s %.0f, at most %.0f", name, m.what, m.is, m.most)
			}
		}
	}
	// a tile opens the card of its part, and Add that of a new one
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 768, Still: true})
	tab.Go(base + shelf + "?part=drums%5B1%5D")
	if got := tab.Text("#card-title"); got != "Thin drum" {
		t.Errorf("the card is that of %q", got)
	}
	if n := tab.Number(`document.querySelectorAll("#card [name^='shelf.motors'], #card [name^='shelf.drums[0]']").length`); n != 0 {
		t.Errorf("%v fields of other parts on the card", n)
	}
}
