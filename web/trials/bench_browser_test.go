package trials_test

import (
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/browsertest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// What the page Tests and repairs may ask of a reader at first sight, with lifts and ways down written down. The measures are
// our own judgement.
func TestBrowserTrialsBudgets(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	doc := readyPlan(t)
	i := firstHoist(doc)
	tr := &doc.Variants[0].Stores[i].Hoist.Trials
	for _, kg := range []unit.Mass{60, 120} {
		amps := unit.Of(unit.Current(0.1 + 0.0187*float64(kg)))
		tr.Raises = append(tr.Raises, lift.RaiseTrial{Mass: unit.Of(kg), Voltage: unit.Of[unit.Voltage](24), Current: amps, Travel: unit.Of[unit.Length](2), Time: unit.Of[unit.Duration](80)})
		tr.Lowers = append(tr.Lowers, lift.LowerTrial{Mass: unit.Of(kg), Voltage: unit.Of[unit.Voltage](10), Current: unit.Of(unit.Current(0.0085*float64(kg) - 0.33)), Travel: unit.Of[unit.Length](2), Time: unit.Of[unit.Duration](140)})
	}
	p, vs := webtest.Create(t, s, "ready", doc)
	at := page.StoreURL(p.ID, vs[0].ID, i, "trials")
	packed := float64(len(webtest.Packed(s.Handler(), at)))
	desk := b.Open(t, browsertest.Look{Width: 1366, Height: 768, Still: true})
	desk.Go(base + at)
	fields := desk.Number(`[...document.querySelectorAll("main input, main select, main textarea")].filter(e => e.type !== "hidden" && e.checkVisibility()).length`)
	high := desk.Number(`document.documentElement.scrollHeight`)
	phone := b.Open(t, browsertest.Look{Width: 360, Height: 800, Still: true})
	phone.Go(base + at)
	tall := phone.Number(`document.documentElement.scrollHeight`)
	narrow := b.Open(t, browsertest.Look{Width: 320, Height: 700, Still: true})
	narrow.Go(base + at)
	t.Logf("%v bytes packed, %v fields in sight, %v px at 1366, %v at 360", packed, fields, high, tall)
	for _, m := range []struct {
		what     string
		is, most float64
	}{{"bytes packed", packed, 10 * 1024}, {"fields in sight", fields, 5}, {"height at 1366 px", high, 1250}, {"height at 360 px", tall, 3500}, {"sideways at 320 px", float64(narrow.Sideways()), 0}} {
		if m.is > m.most {
			t.Errorf("%s %.0f, at most %.0f", m.what, m.is, m.most)
		}
	}
}

// The record form is one page of A4 and of Letter in every state. Its boxes are 13 × 13 mm at least and its ticks 7.5 mm, for a
// pencil and gloves (our own judgement).
func TestBrowserRecordForm(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	tab := b.Open(t, browsertest.Look{Width: 711, Height: 1100, Print: true}) // 188 mm of 96 px an inch
	const smallest = `(() => { const mm = 96 / 25.4, boxes = [...document.querySelectorAll(".boxes td")].filter(e => e.closest("tbody")), ticks = [...document.querySelectorAll(".tick")];
		const least = (list) => Math.min(1000, ...list.map(e => e.getBoundingClientRect()).map(r => Math.min(r.width, r.height))) / mm;
		return least(boxes) < 12.9 ? least(boxes) : least(ticks) < 7.5 ? least(ticks) : 0 })()`
	seen := map[string]bool{}
	for _, plan := range webtest.UnsafePlans(t) {
		i := firstHoist(plan.Doc)
		if i < 0 || seen[plan.Ready] {
			continue
		}
		seen[plan.Ready] = true
		p, vs := webtest.Create(t, s, plan.ID, plan.Doc)
		for paper, height := range map[string]float64{"a4": 841.9, "letter": 792} {
			tab.Go(base + page.StoreURL(p.ID, vs[0].ID, i, "trials") + "/record?paper=" + paper)
			sheet := tab.Print()
			sheet.Keep(t, "record-"+plan.Ready+"-"+paper)
			if sheet.Pages != 1 || sheet.Size[0][1] < height-1 || sheet.Size[0][1] > height+1 {
				t.Errorf("%s on %s: %d pages of %v", plan.ID, paper, sheet.Pages, sheet.Size)
			}
			if !sheet.Says("Second adult who saw it") || !sheet.Says("look at each") {
				t.Errorf("%s on %s: something is cut off", plan.ID, paper)
			}
			if least := tab.Number(smallest); least != 0 {
				t.Errorf("%s on %s: a box of %.1f mm", plan.ID, paper, least)
			}
		}
	}
	if len(seen) < 4 {
		t.Errorf("states seen: %v", seen)
	}
}

// What was saved while typing on a card is no other window's work: the button of the load step beside it still saves.
func TestBrowserStepAfterTyping(t *testing.T) {
	b := browsertest.Start(t)
	s, base := webtest.Serve(t)
	doc := readyPlan(t)
	i := firstHoist(doc)
	doc.Variants[0].Stores[i].Hoist.Trials.Raises = make([]lift.RaiseTrial, 1)
	p, vs := webtest.Create(t, s, "ready", doc)
	at := page.StoreURL(p.ID, vs[0].ID, i, "trials")
	tab := b.Open(t, browsertest.Look{Width: 1366, Height: 900, Still: true})
	tab.Go(base + at + "?part=raises")
	tab.Type(`[name$="raises[0].mass_kg"]`, "60\t")
	tab.Wait(`document.querySelector("[data-saved]").textContent.startsWith("Saved")`)
	tab.Follow(`.rung-ask .primary`)
	tr := webtest.Stored(t, s, vs[0].ID).Value.Stores[i].Hoist.Trials
	if tr.Steps.S50.Done != unit.Yes || tr.Raises[0].Mass != unit.Of[unit.Mass](60) {
		t.Errorf("stored: %+v %+v at %s", tr.Steps.S50, tr.Raises, tab.URL())
	}
}
