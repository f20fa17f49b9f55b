package search

import (
	"math"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
)

// A draw is the whole plan with every input as drawn, worked out from its beginning: the sun, the load, the fit of the
// sheets and all rounds of the year. The short way comes to the same nights, and to the same shares but for rounding.
func TestDrawIsEvaluate(t *testing.T) {
	for name, change := range map[string]func(*model.Document){
		"as it is":    func(*model.Document) {},
		"pulse width": func(d *model.Document) { d.Variants[1].Controller.Kind = panel.ControllerPulseWidth },
		"inverter": func(d *model.Document) { // its losses follow the load, so the load is in no proportion
			d.Project.Load.Inverter = load.Inverter{Present: unit.Yes, Rated: unit.Of(unit.Power(300)), Idle: unit.Of(unit.Power(2))}
			for i := range d.Project.Load.Appliances {
				d.Project.Load.Appliances[i].Supply = load.SupplyInverter
			}
		},
	} {
		doc := catalog.Sample()
		change(&doc)
		b := newBench(doc.Project, doc.Variants)
		w := b.worker()
		for j := range 4 {
			got := w.draw(j)
			p, variants := drawn(doc.Project, doc.Variants, j)
			g := model.PrepareMade(p, j)
			for i, v := range variants {
				if b.plans[i].demand == nil {
					continue
				}
				wholeIs(t, name, got[i].Brief, g.Evaluate(v).Last)
			}
		}
	}
}

// wholeIs fails where a short year is not the whole one.
func wholeIs(t *testing.T, name string, got, want year.Brief) {
	t.Helper()
	near := func(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(1, math.Abs(b)) } // sums in another order
	if got.NightsFull != want.NightsFull || got.NightsServed != want.NightsServed || got.Settled != want.Settled ||
		got.LongestOutage != want.LongestOutage || got.Gaps != want.Gaps || !near(got.NightShare, want.NightShare) ||
		!near(float64(got.Unmet), float64(want.Unmet)) || !near(got.ServedShare, want.ServedShare) {
		t.Errorf("%s: short %+v, whole %+v", name, got, want)
	}
}
