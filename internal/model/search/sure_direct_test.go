package search_test

import (
	"math"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/search"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// straightOnPanels is a place and a hoist whose motor hangs straight on a 96 W panel: 60 kg on 4 m, two lamps of 1 W.
func straightOnPanels() (model.Project, model.Variant) {
	one := unit.Of(unit.Count(1))
	m := sun.Monthly{}
	for i := range 12 {
		m.GHI[i] = unit.Irradiation(2.5 * 3.6e6)
		m.TMean[i], m.TMin[i], m.TMax[i] = 10, 5, 15
	}
	p := model.Project{Name: "straight", Seed: 3, Place: sun.Place{Latitude: unit.Of(40 * unit.Degree), Longitude: unit.Of(0 * unit.Degree), Sky: "monthly", Monthly: &m},
		Load: load.Load{Appliances: []load.Appliance{{Name: "lamp", Power: unit.Of(unit.Power(1)), Count: unit.Of(unit.Count(2)), From: unit.Of(20 * unit.Hour), To: unit.Of(20*unit.Hour + 600), Priority: "essential", Supply: "dc", Purpose: "light"}}}}
	h := lift.Hoist{Name: "stone", Mass: []lift.Piece{{Mass: unit.Of(unit.Mass(60))}}, Travel: unit.Of(unit.Length(4)),
		Rope:    lift.Rope{Diameter: unit.Of(8 * unit.Millimetre)},
		Reeving: lift.Reeving{RopeParts: one, LeadSheaves: one, Efficiency: unit.Of(unit.Ratio(0.95))},
		Drum:    lift.Drum{Diameter: unit.Of(80 * unit.Millimetre), Width: unit.Of(300 * unit.Millimetre)},
		Train:   lift.Train{Stages: []lift.Stage{{Kind: "box", Ratio: unit.Of(unit.Ratio(150)), Efficiency: unit.Of(unit.Ratio(0.85)), IdleTorque: unit.Of(unit.Torque(0))}}, Breakaway: unit.Of(unit.Ratio(1.5))},
		Machine: lift.Machine{K: unit.Of(unit.MachineConstant(0.08)), R: unit.Of(unit.Resistance(0.6)), I0: unit.Of(unit.Current(0.2)), J: unit.Of(unit.Inertia(1e-4))},
		Raise:   lift.Raise{Feed: "panel"},
		Lower:   lift.Lower{Loads: []lift.DCLoad{{Kind: "string", Threshold: unit.Of(unit.Voltage(9)), Slope: unit.Of(unit.Resistance(1))}}, Auxiliary: unit.Of(unit.Power(0)), Ambient: unit.Of(unit.Celsius(20)), Shunt: "yes"},
	}
	a := panel.Array{Power: unit.Of(unit.Power(96)), Count: one, Tilt: unit.Of(40 * unit.Degree), Azimuth: unit.Of(180 * unit.Degree),
		Sheet: &panel.Sheet{Isc: unit.Of(unit.Current(5.9)), Voc: unit.Of(unit.Voltage(21.6)), Imp: unit.Of(unit.Current(5.5)), Vmp: unit.Of(unit.Voltage(17.5))}}
	return p, model.Variant{Name: "straight", Panels: []panel.Array{a}, Controller: panel.Controller{Kind: "direct"}, Stores: []model.Store{{Hoist: &h}}}
}

// A motor straight on the panels lifts in each year what that year's sun lets it lift: every year is that of the
// project in that made year, by the page's own way.
func TestEachYearsOwnSunOnTheMotor(t *testing.T) {
	p, v := straightOnPanels()
	s, err := search.Years(t.Context(), p, []model.Variant{v}, 5, 2, nil)
	if err != nil {
		t.Fatal(err)
	}
	c, differ := s.Variants[0], false
	for j := range 5 {
		r := model.PrepareMade(p, j).Evaluate(v)
		if r.Stores[0].Reservoir == nil || r.Stores[0].Reservoir.Own == nil {
			t.Fatalf("no hoist on the panels: %s", r.Stores[0].WhyNot)
		}
		if c.Nights[j] != float64(r.Year.NightsServed) || c.Outage[j] != float64(r.Year.LongestOutage.Hours) ||
			math.Abs(c.Served[j]-float64(r.Year.ServedShare.Val)) > 1e-12 { // two ways of adding up the same year
			t.Errorf("year %d: %v nights, %v h, %v; by its page %d, %d, %v", j, c.Nights[j], c.Outage[j], c.Served[j],
				r.Year.NightsServed, r.Year.LongestOutage.Hours, r.Year.ServedShare.Val)
		}
		differ = differ || c.Served[j] != c.Served[0]
	}
	if !differ {
		t.Errorf("five years and one number, %v: they prove nothing", c.Served[0])
	}
}

func BenchmarkYearsStraight(b *testing.B) {
	p, v := straightOnPanels()
	for b.Loop() {
		if _, err := search.Years(b.Context(), p, []model.Variant{v}, 100, 2, nil); err != nil {
			b.Fatal(err)
		}
	}
}
