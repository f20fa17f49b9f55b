package model_test

import (
	"math"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
)

// The current that a battery is rated at is what it really gives: the energy that left it at the line, by the hours in
// which it gave any and its voltage (E = P·t, I = P/V), and never above what the line asks for in its greatest hour.
func TestDrawingCurrentIsTheYears(t *testing.T) {
	d := catalog.Sample()
	g, seen := model.Prepare(d.Project), 0
	for _, v := range d.Variants {
		r := g.Evaluate(v)
		n := -1
		for _, s := range r.Stores {
			if s.InYear {
				n++
			}
			if s.Cells == nil || !s.InYear {
				continue
			}
			seen++
			joules, hours, most := 0.0, 0.0, 0.0
			for h, e := range r.Year.Hourly.Delivered[n] {
				if e > 0 {
					joules += e
					hours++
				}
				most = max(most, g.Load.Essential[h]+g.Load.Nice[h]+float64(r.StandingPower))
			}
			volts := float64(s.Cells.Resolved.Voltage)
			if got, want := float64(s.Cells.Current), joules/(hours*3600)/volts; math.Abs(got-want) > 1e-9*want {
				t.Errorf("%s: %.9g A, and the year draws %.9g A", v.Name, got, want)
			}
			if got := float64(s.Cells.Current) * volts; got > most {
				t.Errorf("%s: %.3g W out of a battery, and the line asks for %.3g W at most", v.Name, got, most)
			}
		}
	}
	if seen < 2 {
		t.Fatalf("%d batteries seen", seen)
	}
}
