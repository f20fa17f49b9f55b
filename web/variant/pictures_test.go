package variant

import (
	"math"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
	"duskweight/web/page"
)

// The sample's pictures: every one has a title, a sentence and its numbers, no attribute that the policy refuses, and no
// identifier twice on the page.
func TestPictures(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	for _, variant := range doc.Variants {
		r := g.Evaluate(variant)
		ids := map[string]bool{}
		pictures := picturesOf(nil, g, r, 5, "/page", unit.Metric)
		if want := 3 + len(variant.Stores); len(pictures) < want { // day, flow, nights, and each store
			t.Errorf("%s: %d pictures, want at least %d", variant.Name, len(pictures), want)
		}
		for _, p := range pictures {
			if p.ID == "" || p.Title == "" || p.Say == "" || len(p.Rows) == 0 || !strings.HasPrefix(p.SVG, "<svg") || strings.Contains(p.SVG, "style=") || ids[p.ID] {
				t.Errorf("%s: %q", variant.Name, p.ID)
			}
			ids[p.ID] = true
			for _, row := range p.Rows {
				if len(row) != len(p.Head) {
					t.Errorf("%s, %s: a row of %d under a head of %d", variant.Name, p.ID, len(row), len(p.Head))
				}
				for _, cell := range row {
					if cell == "" {
						t.Errorf("%s, %s: a blank cell in %v", variant.Name, p.ID, row)
					}
				}
			}
		}
	}
}

// The worst week holds what the year says of it, and a "week" of the whole year holds the year.
func TestWeekHoldsTheYear(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	near := func(what string, got []float64, want unit.Energy) {
		t.Helper()
		if d := page.Sum(got)*3600 - float64(want); math.Abs(d) > 1e-9*float64(want) { // sums in another order
			t.Errorf("%s: %g J, want %g", what, page.Sum(got)*3600, float64(want))
		}
	}
	for _, variant := range doc.Variants {
		r := g.Evaluate(variant)
		near(variant.Name+": missing in the worst week", page.WeekOf(g, r).Missing, r.Year.WorstWeek.Unmet)
		r.Year.WorstWeek = year.Span{From: 4000, Hours: 8760}
		w := page.WeekOf(g, r)
		near(variant.Name+": wanted", w.Load, r.Year.Load)
		near(variant.Name+": sun", w.Sun, r.Year.Bus)
		near(variant.Name+": missing", w.Missing, r.Year.Unmet)
	}
}

// The parts of the flow add up to the sun of the year: what was taken came out, was lost or is still there.
func TestFlowCloses(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	for _, variant := range doc.Variants {
		y := g.Evaluate(variant).Year
		sum := y.Spilled
		for _, part := range []unit.Energy{y.Essential.Direct, y.Essential.Delivered, y.Nice.Direct, y.Nice.Delivered, y.Standing.Direct, y.Standing.Delivered, y.StoreStanding.Direct, y.StoreStanding.Delivered} {
			sum += part
		}
		for _, s := range y.Stores {
			sum += s.Loss + s.Change
		}
		if d := float64(sum-y.Bus) / float64(y.Bus); d > 1e-9 || d < -1e-9 { // sums of 8760 hours in another order
			t.Errorf("%s: off by %g of the sun", variant.Name, d)
		}
	}
}
