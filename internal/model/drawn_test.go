package model_test

import (
	"math"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
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
			if model.CellsOf(s) == nil || !s.InYear {
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
			volts := float64(model.CellsOf(s).Resolved.Voltage)
			if got, want := float64(model.CellsOf(s).Current), joules/(hours*3600)/volts; math.Abs(got-want) > 1e-9*want {
				t.Errorf("%s: %.9g A, and the year draws %.9g A", v.Name, got, want)
			}
			if got := float64(model.CellsOf(s).Current) * volts; got > most {
				t.Errorf("%s: %.3g W out of a battery, and the line asks for %.3g W at most", v.Name, got, most)
			}
		}
	}
	if seen < 2 {
		t.Fatalf("%d batteries seen", seen)
	}
}

// A battery of iron phosphate, which is not charged below 0 °C, in a place whose Januaries stay below: the answer says for
// how many hours, and that it counts as standing outside until somebody says where it stands and how warm it is there.
func TestColdBatteryIsTold(t *testing.T) {
	place, ok := catalog.Climate("Denver, Colorado")
	if !ok {
		t.Fatal("no such climate")
	}
	doc := catalog.Start(catalog.Answers{Name: "Garage", Place: place, HeavyName: "Sand", Mass: 120, Height: 2.6, Lamps: 3, LampPower: 6, Hours: 5 * unit.Hour, Seed: 1})
	told := func() (headline, cautions string, nights int) {
		r := model.Evaluate(doc, "").Variants[1]
		for _, c := range model.CellsOf(r.Stores[0]).Cautions {
			cautions += c.Say.String() + "\n"
		}
		return say.Join(r.Headline...).String(), cautions, r.Year.NightsServed
	}
	headline, cautions, outside := told()
	if !strings.Contains(headline, "too cold or too hot to charge") || !strings.Contains(cautions, "The place of the battery is not known, so it counts as cold") {
		t.Errorf("%s\n%s", headline, cautions)
	}
	doc.Variants[1].Stores[0].Cells.Indoors = "own_room"
	if _, cautions, nights := told(); !strings.Contains(cautions, "How warm its room is is not known") || nights != outside {
		t.Errorf("indoors, with no room: %d nights, outside %d\n%s", nights, outside, cautions)
	}
	doc.Project.Place.Indoor = &sun.Indoor{Mean: 14, Swing: 8, Warmest: 7}
	if headline, cautions, nights := told(); strings.Contains(headline+cautions, "too cold") || nights <= outside {
		t.Errorf("in a room of 6 to 22 °C: %d nights, outside %d: %s\n%s", nights, outside, headline, cautions)
	}
}
