package catalog

import (
	"math"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// alike compares rows with those of a table that was written down before the catalog: of the list of typical values that the
// project began with, and of the published tables that the rows name.
func alike(t *testing.T, what string, got, want []float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%s: %d numbers, want %d", what, len(got), len(want))
		return
	}
	for i := range got {
		if math.Abs(got[i]-want[i]) > 1e-9*math.Abs(want[i]) {
			t.Errorf("%s, number %d: %g, want %g", what, i+1, got[i], want[i])
		}
	}
}

// Motors by size: V, turns a minute without load, gear, mV·s/rad, Ω, A without load, kg·m², winding to case and on to air in K/W,
// their times in s, A all day, °C at most (155 for class F, 90 unmarked). The two of read sheets are Pittman 14203 and maxon RE 65.
func TestTypicalMotors(t *testing.T) {
	want := [][]float64{
		{3, 12000, 1, 2.2, 0.9, 0.20, 6e-8, 15, 35, 5, 200, 0.6, 90}, {6, 9500, 1, 5.8, 2.0, 0.12, 3e-7, 12, 25, 8, 300, 0.5, 90}, {12, 10000, 1, 11, 2.2, 0.20, 1.7e-6, 8, 12, 12, 500, 1.4, 90},
		{12, 6000, 1, 18, 0.30, 1.0, 1.6e-5, 3.5, 5, 20, 700, 5, 90}, {12, 45, 60, 37, 0.40, 2.5, 3e-5, 2, 4, 30, 900, 6, 90}, {12, 3460, 1, 32.7, 0.346, 0.34, 2.1e-5, 8.1, 0, 900, 0, 4.6, 155},
		{48, 3670, 1, 123, 0.365, 0.29, 1.34e-4, 1.85, 1.3, 123, 1060, 6.8, 125}, {24, 3300, 1, 68, 0.17, 1.8, 2.5e-4, 0.6, 1.2, 60, 1500, 13, 90}, {48, 3000, 1, 150, 0.25, 1.6, 6e-4, 0.4, 0.9, 80, 1800, 13, 90},
		{130, 5500, 1, 220, 1.1, 0.6, 1.5e-3, 0.3, 0.5, 120, 2400, 8, 90},
	}
	all := Motors()
	for i, w := range want {
		m := all[i]
		alike(t, m.Name, []float64{float64(m.Voltage), math.Round(float64(m.NoLoad) * 30 / math.Pi), float64(m.Gear), float64(m.K) * 1000, float64(m.R), float64(m.I0), float64(m.J), float64(m.RthWinding), float64(m.RthCase),
			float64(m.TauWinding), float64(m.TauCase), float64(m.MaxCurrent), float64(m.MaxWinding)}, w)
	}
	// Of a wheel hub the row has the middle of what is met: K 0.6 to 1.3 V·s/rad, 0.03 to 0.06 kg·m² at the wheel.
	hub := all[len(all)-1]
	alike(t, hub.Name, []float64{float64(hub.R), float64(hub.J), float64(hub.RthWinding), float64(hub.RthCase), float64(hub.TauWinding), float64(hub.TauCase), float64(hub.MaxCurrent)}, []float64{0.25, 0.045, 0.3, 0.4, 60, 1500, 10})
	if hub.K < 0.6 || hub.K > 1.3 || len(all) != len(want)+1 {
		t.Errorf("%d motors, the hub with %g V·s/rad", len(all), hub.K)
	}
	if math.Abs(float64(wiperWorm)-0.475) > 0.006 { // the middle of 0.40 to 0.55
		t.Errorf("the worm of a wiper has %g", wiperWorm)
	}
}

// Gear stages at full load: efficiency, torque to turn them empty as a share of the rated one, first push over running.
func TestTypicalStages(t *testing.T) {
	for name, w := range map[string][]float64{
		"Metal spur wheels on ball bearings": {0.97, 0.94, 0.98, 0.01, 1.3}, "Planetary, metal": {0.95, 0.95, 0.95, 0.02, 1.3}, "Planetary in a small gear motor": {0.90, 0.90, 0.90, 0.05, 1.5},
		"Planetary, moulded plastic": {0.85, 0.85, 0.85, 0.05, 1.6}, "Printed spur wheels, greased": {0.88, 0.80, 0.93, 0.04, 1.6}, "Printed strain wave": {0.55, 0.48, 0.60, 0.08, 1.8}, "Printed cycloid": {0.70, 0.65, 0.75, 0.08, 1.8},
		"Worm with one start, lead 3 to 5°": {0.50, 0.40, 0.60, 0.04, 1.5}, "Worm with 2 to 4 starts, lead 10 to 20°": {0.76, 0.70, 0.82, 0.04, 1.5}, "Toothed belt": {0.97, 0.93, 0.97, 0.02, 1.2},
		"V-belt": {0.92, 0.92, 0.92, 0.04, 1.2}, "Round belt": {0.85, 0.85, 0.85, 0.06, 1.2}, "Roller or bicycle chain, clean": {0.97, 0.92, 0.97, 0.01, 1.2}, "Bevel wheels": {0.95, 0.95, 0.95, 0.02, 1.3},
	} {
		found := false
		for _, s := range Stages() {
			if s.Name == name {
				found = true
				alike(t, name, []float64{float64(s.Efficiency), float64(s.Low), float64(s.High), float64(s.Idle), float64(s.Breakaway)}, w)
			}
		}
		if !found {
			t.Errorf("no %s", name)
		}
	}
}

// Loads on the way down: V at nothing and Ω of one, V lost at a diode, A of one.
func TestTypicalLamps(t *testing.T) {
	want := [][]float64{{2.75, 0.7, 0, 0.35}, {2.8, 13, 0, 0.02}, {8.1, 195, 0, 0.02}, {16.2, 280, 0, 0}, {14, 0.3, 0, 0}, {12.8, 0.035, 0.4, 0}, {13.3, 0.035, 0.4, 0}}
	for i, l := range Lamps() {
		alike(t, l.Name, []float64{float64(l.Threshold), float64(l.Slope), float64(l.Diode), float64(l.Rated)}, want[i])
	}
}

// Ropes: kN at 6, 8, 10, 12 and 16 mm, or of the sizes that the table has.
func TestRopesOfTheTables(t *testing.T) {
	for name, w := range map[string][]float64{
		"Polypropylene, three strands":           {5.0, 7.6, 10.8, 16.8, 24.8},
		"Polyester on polyolefin, three strands": {5.34, 8.3, 12.0, 19.6, 23.1, 27.1, 37.4},
		"Polyester, three strands":               {5.85, 9.1, 12.9, 22.6, 28.6, 34.8, 49.8}, "Nylon, three strands": {6.61, 10.2, 14.4, 25.2, 32.0, 39.6, 56.8},
		"Polyester, inch sizes": {16.5, 28.5, 44}, "Nylon, inch sizes": {7.3, 16.5, 28.5, 46}, "Wire 6×7, fibre core": {21.2, 37.6, 58.8, 84.6, 150}, "Wire 6×19, fibre core": {24.4, 54.3, 95.2},
		"Nylon, three strands, by the standard":         {0.2 * 36, 0.2 * 64, 0.2 * 100, 0.2 * 144, 0.2 * 256}, // 0.20 d² kN, d in mm
		"Polypropylene, three strands, by the standard": {5.0, 9.0, 14.0, 20.2, 35.8},                          // 0.14 d²
		"Polyester, three strands, by the standard":     {5.6, 9.9, 15.5, 22.3, 39.7},                          // 0.155 d²
	} {
		var got []float64
		for _, r := range Ropes() {
			if r.Name == name {
				got = append(got, math.Round(float64(r.BreakingLoad)*1e-3*1e6)/1e6)
			}
		}
		alike(t, name, got, w)
	}
	var sizes []float64
	for _, r := range Ropes() {
		if r.Name == "Wire 6×7, fibre core" || r.Name == "Wire 6×19, fibre core" || r.Name == "Nylon, inch sizes" || r.Name == "Nylon, three strands" {
			sizes = append(sizes, math.Round(float64(r.Diameter)*1e6)/1e3)
		}
	}
	alike(t, "diameters, mm", sizes, []float64{6, 8, 10, 12, 14, 16, 18, 6.35, 9.525, 12.7, 15.875, 6, 8, 10, 12, 16, 6.4, 9.5, 13})
}

// Hardware: eye bolts of DIN 580 in kg along the shank and at 45°, shackles in t (rigging tables), pulleys, density in kg/m³,
// timber of EN 338 in MPa and kg/m³, steel of EN 10025-2 in MPa.
func TestHardwareOfTheTables(t *testing.T) {
	var bolts, shackles, pulleys, dense, wood, steel []float64
	for _, e := range Eyebolts() {
		bolts = append(bolts, float64(e.Straight)/unit.G, float64(e.At45)/unit.G)
	}
	for _, s := range Shackles() {
		shackles = append(shackles, math.Round(float64(s.Diameter)/0.0254*16), float64(s.Straight)/unit.G/1000)
	}
	for _, p := range Pulleys() {
		pulleys = append(pulleys, float64(p.Efficiency), math.Round(float64(p.Diameter)*1000))
	}
	for _, m := range Materials() {
		dense = append(dense, float64(m.Low), float64(m.High))
	}
	for _, w := range TimberClasses() {
		wood = append(wood, float64(w.Bend)/1e6, float64(w.Dense))
	}
	for _, s := range Steels() {
		steel = append(steel, float64(s.Yield)/1e6)
	}
	alike(t, "eye bolts M8 to M24", bolts, []float64{140, 100, 230, 170, 340, 240, 700, 500, 1200, 860, 1800, 1290})
	alike(t, "shackles, sixteenths of an inch and t", shackles, []float64{4, 0.5, 5, 0.75, 6, 1, 8, 2, 10, 3.25})
	alike(t, "pulleys", pulleys, []float64{0.82, 25, 0.87, 50, 0.92, 100, 0.53, 0, 0.98, 0, 0.96, 0, 0.917, 0, 0.95, 0})
	alike(t, "densities", dense, []float64{1520, 1680, 1520, 1520, 1920, 1920, 1600, 1600, 2400, 2400, 1920, 1920, 1520, 1520, 7208, 7208, 1000, 1000, 7850, 7850, 2700, 2700})
	alike(t, "timber", wood, []float64{14, 350, 16, 370, 18, 380, 20, 400, 22, 410, 24, 420, 27, 430, 30, 460, 24, 580, 30, 640, 40, 660, 24, 420})
	alike(t, "steel", steel, []float64{235, 275, 355})
	alike(t, "shackles from the side", []float64{ShackleAt45, ShackleAt90}, []float64{0.7, 0.5})
}

// The first plan by hand. Its battery holds two nights of the lamps and of 0.4 W that idle, at a usable depth of 0.8 and 12.8 V,
// in the next capacity that is sold: lamps of 10 W for 4 h make 40 + 9.6 = 49.6 Wh, 9.69 Ah, so 12 Ah.
func TestFirstBattery(t *testing.T) {
	for _, c := range []struct{ watts, hours, ah float64 }{
		{10, 4, 12}, {5.2, 4, 6}, {5.4, 4, 12}, {12.9, 4, 12}, {13.1, 4, 20}, {23.1, 4, 20}, {23.3, 4, 30}, {35.9, 4, 30}, {36.1, 4, 50}, {61.5, 4, 50}, {61.7, 4, 100}, {125.5, 4, 100}, {125.7, 4, 200},
		{253.5, 4, 200}, {253.7, 4, 300}, {381.5, 4, 300}, {381.7, 4, 500}, {637.5, 4, 500}, {637.7, 4, 1000}, {1277.5, 4, 1000}, {1277.7, 4, 2000}, {2557.5, 4, 2000}, {2557.7, 4, 5000}, {9000, 4, 5000},
		{5, 0, 20}, {5, 16, 20}, {5, 17, 20}, {5.9, 0, 30}, // the whole night counts as 16 h: 80 + 9.6 Wh are 17.5 Ah
	} {
		v := startBattery(Answers{Lamps: 1, LampPower: unit.Power(c.watts), Hours: unit.Duration(c.hours) * unit.Hour})
		b := v.Stores[0].Cells
		if got := float64(b.Capacity.Val) / 3600; got != c.ah || b.Voltage.Val != 12.8 || b.Kind != cell.LFP || !b.Capacity.Is || !b.Voltage.Is {
			t.Errorf("%g W for %g h: %g Ah of %g V, want %g", c.watts, c.hours, got, b.Voltage.Val, c.ah)
		}
	}
}

// Its panel faces the midday sun, ten degrees steeper than the latitude, in steps of five from 15 to 75.
func TestFirstPanel(t *testing.T) {
	for lat, want := range map[float64][2]float64{0: {15, 180}, 4: {15, 180}, 8: {20, 180}, 49: {60, 180}, -34: {45, 0}, 62: {70, 180}, 64: {75, 180}, 80: {75, 180}, -1: {15, 0}} {
		p := startPanels(Answers{Place: sun.Place{Latitude: unit.Of(unit.Angle(lat) * unit.Degree)}}, marks{model.Origins{}})[0]
		alike(t, "tilt and azimuth", []float64{p.Tilt.Val.Degrees(), p.Azimuth.Val.Degrees(), float64(p.Count.Val), float64(p.Power.Val)}, []float64{want[0], want[1], 1, 100})
	}
}

// Its rope by the weight that hangs, at each border: 6 mm up to 30 kg, 24 mm up to 1,500 kg, 32 mm over it.
func TestFirstRope(t *testing.T) {
	for m, mm := range map[unit.Mass]float64{30: 6, 31: 8, 80: 8, 81: 10, 150: 10, 151: 14, 300: 14, 301: 18, 600: 18, 601: 24, 1500: 24, 1501: 32} {
		alike(t, "rope", []float64{math.Round(float64(ropeFor(m))*1e6) / 1e3}, []float64{mm})
	}
}

// Its drive by hand, for 100 kg over 2 m and lamps that draw 1 A at 12.5 V. The drum of 8 × 10 mm takes 100·9.80665/0.87·0.045 =
// 50.72 N·m up and gives 38.39 N·m down. The motor of 12 V may lift with 0.0327·(0.75·4.6 − 0.34) = 0.1017 N·m, 498.8 times less;
// to give 1 A it feels 0.0327·1.34 = 0.04382 N·m, 876.2 times less. Over four stages of 0.95, and 2 − 1/0.95 back, that is 612.4
// and 705.8: over 5⁴ = 625, so it takes a fifth, with 644.6 and 668.6, and 0.95⁵ = 0.774 in whole percents.
func TestFirstDrive(t *testing.T) {
	h := startHoist(Answers{Mass: 100, Height: 2, Lamps: 1, LampPower: 12.5}, marks{model.Origins{}})
	g := h.Train.Stages[0]
	alike(t, "the drive", []float64{float64(h.Machine.K.Val), float64(h.Raise.Voltage.Val), math.Round(float64(h.Rope.Diameter.Val)*1e6) / 1e3, math.Round(float64(h.Drum.Diameter.Val)*1e6) / 1e3, float64(g.InStages.Val), float64(g.Ratio.Val), float64(g.Efficiency.Val),
		float64(h.Reeving.Efficiency.Val), float64(h.Drum.DeadWraps.Val), float64(h.Raise.DriveEff.Val)}, []float64{0.0327, 12, 10, 80, 5, 668.6, 0.77, 0.87, 3, 0.92})
	// The three motors are rows of the table of typical ones.
	for i, row := range []int{5, 7, 8} {
		m, r := startMotors[i], Motors()[row]
		alike(t, m.name, []float64{m.volts, m.k, m.r, m.i0, m.j, m.icont, m.rth, m.rthCase, m.tau, m.tauCase, m.tmax},
			[]float64{float64(r.Voltage), float64(r.K), float64(r.R), float64(r.I0), float64(r.J), float64(r.MaxCurrent), float64(r.RthWinding), float64(r.RthCase), float64(r.TauWinding), float64(r.TauCase), float64(r.MaxWinding)})
	}
	if l := h.Lower.Loads[0]; l.Kind != lift.LoadString || l.Threshold.Val != 11 || l.Slope.Val != 1.5 { // 1 A from 11 V to 12.5 V
		t.Errorf("rows of lamps: %+v", l)
	}
}
