package catalog_test

import (
	"math"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
)

// Rope of one make breaks at a load that goes with its section: the load over the square of the diameter falls by less than a
// third down a table, and is of the order of its fibre: the standards print 0.155 kN/mm² for polyester (ISO 1141), 0.20 for polyamide
// (ISO 1140) and 0.14 for polypropylene (ISO 1346), each ± 10 %; makers' tables lie up to a third beside them. Wire rope of
// grade 1770 has 0.332·1.77 kN/mm² (API 9A), strand of 7×19 a third more.
func TestRopeGoesWithItsSection(t *testing.T) {
	of := map[lift.RopeKind]float64{lift.RopePolyester: 0.155, lift.RopeNylon: 0.20, lift.RopePolypropylene: 0.14, lift.RopeWire: 0.332 * 1.77}
	least, most := map[string]float64{}, map[string]float64{}
	was := catalog.Rope{}
	for _, r := range catalog.Ropes() {
		d := float64(r.Diameter) * 1000
		c := float64(r.BreakingLoad) / 1000 / (d * d)
		if want, ok := of[r.Kind]; ok && (c < 0.67*want || c > 1.33*want) && r.Kind != lift.RopeWire {
			t.Errorf("%s of %.3g mm: %.3f kN/mm², %s has about %.3f", r.Name, d, c, r.Kind, want)
		} else if r.Kind == lift.RopeWire && (c < 0.9*want || c > 1.33*want) {
			t.Errorf("%s of %.3g mm: %.3f kN/mm²", r.Name, d, c)
		}
		if r.Name == was.Name && (r.Diameter <= was.Diameter || r.BreakingLoad <= was.BreakingLoad || float64(r.Diameter) > 1.55*float64(was.Diameter)) {
			t.Errorf("%s: %.3g mm and %v N follow %v and %v", r.Name, d, r.BreakingLoad, was.Diameter, was.BreakingLoad)
		}
		if l, ok := least[r.Name]; !ok || c < l {
			least[r.Name] = c
		}
		most[r.Name], was = max(most[r.Name], c), r
	}
	for name, l := range least {
		if most[name] > 1.5*l {
			t.Errorf("%s: from %.3f to %.3f kN/mm²", name, l, most[name])
		}
	}
}

// Eye bolts carry by the section of their thread: 36.6, 58.0, 84.3, 157, 245 and 353 mm² from M8 to M24 (ISO 898-1, table 4), with
// 3.8 to 5.2 kg on each mm²; two strands at 45° leave about 1/√2 of it. Shackles carry by the square of their bow: 11 to 13 kg/mm².
func TestHardwareGoesWithItsSection(t *testing.T) {
	for i, area := range []float64{36.6, 58.0, 84.3, 157, 245, 353} {
		e := catalog.Eyebolts()[i]
		if c := float64(e.Straight) / unit.G / area; c < 3.8 || c > 5.2 {
			t.Errorf("%s: %.2f kg/mm²", e.Size, c)
		}
		if share := float64(e.At45 / e.Straight); math.Abs(share-math.Sqrt2/2) > 0.04 {
			t.Errorf("%s: %.3f of it at 45°", e.Size, share)
		}
	}
	for _, s := range catalog.Shackles() {
		d := float64(s.Diameter) * 1000
		if c := float64(s.Straight) / unit.G / (d * d); c < 10.8 || c > 13.2 {
			t.Errorf("%s: %.2f kg/mm²", s.Size, c)
		}
	}
	if catalog.ShackleAt90 >= catalog.ShackleAt45 || catalog.ShackleAt45 >= 1 {
		t.Error("a shackle does not lose when it is pulled from the side")
	}
}

// A pulley passes on less than it gets; a larger one, and one on rolling bearings, passes on more.
func TestPulleysPassOnLess(t *testing.T) {
	was := catalog.Pulley{}
	for _, p := range catalog.Pulleys() {
		if p.Efficiency <= 0.5 || p.Efficiency >= 1 {
			t.Errorf("%s: %v", p.Name, p.Efficiency)
		}
		if was.Diameter > 0 && p.Diameter > 0 && (p.Diameter <= was.Diameter || p.Efficiency <= was.Efficiency) {
			t.Errorf("%s is larger than %s and passes on %v, not more than %v", p.Name, was.Name, p.Efficiency, was.Efficiency)
		}
		was = p
	}
}

// What motors are: the winding cools slower through the case than to it, the heat of the current that they stand all day is
// what the winding bears at 25 °C of air (R·I²·(R_winding + R_case), copper warmer by 0.39 % a kelvin; the rows from memory say
// ± 30 % of that current), and the time in which
// they come up to speed, J·R/K², lies between 2 and 40 ms: that of small brushed motors in makers' sheets.
func TestMotorsAreMotors(t *testing.T) {
	for _, m := range catalog.Motors() {
		if tau := float64(m.J) * float64(m.R) / (float64(m.K) * float64(m.K)); tau < 2e-3 || tau > 40e-3 {
			t.Errorf("%s: comes up to speed in %.4f s", m.Name, tau)
		}
		rise := float64(m.MaxWinding) - 25
		if hot := (1 + 0.0039*rise) * float64(m.R) * float64(m.MaxCurrent) * float64(m.MaxCurrent) * float64(m.RthWinding+m.RthCase); hot > 1.3*1.3*rise || hot < 0.2*rise {
			t.Errorf("%s: %.0f K over the air with its current of all day, %.0f K are allowed", m.Name, hot, rise)
		}
		if m.RthCase > 0 && (m.TauCase < 5*m.TauWinding || m.RthCase < 0.5*m.RthWinding || m.RthCase > 4*m.RthWinding) {
			t.Errorf("%s: case %v K/W in %v s, winding %v K/W in %v s", m.Name, m.RthCase, m.TauCase, m.RthWinding, m.TauWinding)
		}
	}
}

// Friction wastes at rest what it wastes running, and more; idle torque is a small share of what a stage carries; what lies in the
// middle of a range is near it.
func TestStagesWaste(t *testing.T) {
	for _, s := range catalog.Stages() {
		if s.Low <= 0.3 || s.High >= 1 || s.Breakaway < 1.1 || s.Breakaway > 2 || s.Idle <= 0 || s.Idle > 0.1 {
			t.Errorf("%+v", s)
		}
	}
}

// Densities: nothing that a maker hangs is lighter than water or heavier than steel, and timber of a higher class is denser and
// stronger within its own sort. The class is named by its strength in MPa (EN 338).
func TestMaterialsByTheirDensity(t *testing.T) {
	for _, m := range catalog.Materials() {
		if m.Low < 1000 || m.High > 7900 || m.Low > m.High || m.High > 1.2*m.Low {
			t.Errorf("%s: %v to %v kg/m³", m.Name, m.Low, m.High)
		}
	}
	was := catalog.Timber{}
	for _, w := range catalog.TimberClasses() {
		digits := 0
		for _, r := range w.Class {
			if r >= '0' && r <= '9' {
				digits = 10*digits + int(r-'0')
			}
		}
		if math.Abs(float64(w.Bend)/1e6-float64(digits)) > 1e-9 {
			t.Errorf("%s bears %v", w.Class, w.Bend)
		}
		if w.Class[0] == 'D' != (w.Dense > 500) || w.Dense < 340 || w.Dense > 700 {
			t.Errorf("%s has %v kg/m³", w.Class, w.Dense)
		}
		if was.Class != "" && was.Class[0] == w.Class[0] && (w.Bend <= was.Bend || w.Dense <= was.Dense) {
			t.Errorf("%s follows %s", w.Class, was.Class)
		}
		was = w
	}
}

// A first plan by hand. Two lamps of 5 W for four hours and what idles by day and night, 0.4 W: 40 + 9.6 = 49.6 Wh a night; two of
// them out of four fifths of an iron-phosphate battery of 12.8 V are 9.7 Ah: the next that is sold has 12 Ah. A panel at 50° of
// latitude stands at 60°, and looks to the equator; near the equator it stands at 15°, so that rain washes it, and it is never
// steeper than 75°.
func TestFirstPlanByHand(t *testing.T) {
	at, ok := catalog.Climate("Luxembourg")
	if !ok {
		t.Fatal("the climate is gone")
	}
	plan := func(latitude float64, lamps unit.Count, watts unit.Power, hours unit.Duration) model.Document {
		at.Latitude = unit.Of(unit.Angle(latitude) * unit.Degree)
		return catalog.Start(catalog.Answers{Place: at, HeavyName: "Sand", Mass: 40, Height: 2, Lamps: lamps, LampPower: watts, Hours: hours})
	}
	for _, c := range []struct {
		lamps unit.Count
		watts unit.Power
		hours unit.Duration
		ah    float64
	}{
		{2, 5, 4 * unit.Hour, 12},
		{1, 5, 4 * unit.Hour, 6},        // 29.6 Wh: 5.8 Ah
		{1, 5, 5 * unit.Hour, 12},       // 34.6 Wh: 6.8 Ah
		{1, 5, 0, 20},                   // the whole night is 16 h: 89.6 Wh, 17.5 Ah
		{1, 5, 16 * unit.Hour, 20},      // the same
		{1, 5, 20 * unit.Hour, 20},      // no night is longer
		{10, 5, 10 * unit.Hour, 100},    // 509.6 Wh: 99.5 Ah
		{20, 50, 10 * unit.Hour, 2000},  // 10,009.6 Wh: 1,955 Ah
		{20, 500, 16 * unit.Hour, 5000}, // more than is sold: the largest
	} {
		doc := plan(50, c.lamps, c.watts, c.hours)
		if bank := doc.Variants[1].Stores[0].Cells; math.Abs(float64(bank.Capacity.Val)/3600-c.ah) > 1e-9 || bank.Voltage.Val != 12.8 {
			t.Errorf("%v of %v W for %v h: %v Ah", c.lamps, c.watts, float64(c.hours)/3600, float64(bank.Capacity.Val)/3600)
		}
		lamps := doc.Project.Load.Appliances[0]
		all := c.hours <= 0 || c.hours >= 24*unit.Hour
		if all != (lamps.From == lamps.To && lamps.From.Is) || all == lamps.FromDusk.Is || lamps.AfterDusk != unit.Yes || lamps.Supply != load.SupplyDc {
			t.Errorf("for %v h: %+v", float64(c.hours)/3600, lamps)
		}
	}
	for latitude, want := range map[float64][2]float64{50: {60, 180}, 0: {15, 180}, 3: {15, 180}, 7: {15, 180}, 13: {25, 180}, -34: {45, 0}, 64: {75, 180}, -80: {75, 0}} {
		p := plan(latitude, 1, 5, unit.Hour).Variants[0].Panels[0]
		if math.Abs(p.Tilt.Val.Degrees()-want[0]) > 1e-9 || math.Abs(p.Azimuth.Val.Degrees()-want[1]) > 1e-9 {
			t.Errorf("at %g°: %g° steep, to %g°", latitude, p.Tilt.Val.Degrees(), p.Azimuth.Val.Degrees())
		}
	}
}

// Rope that a builder would reach for has 6 times the strength of what it holds and more, up to 34 times, of polyester at 0.155 kN/mm², and is
// never thinner under more.
func TestFirstRopeIsThickEnough(t *testing.T) {
	at, _ := catalog.Climate("Luxembourg")
	was := 0.0
	for _, kg := range []unit.Mass{5, 30, 30.1, 80, 80.1, 150, 150.1, 300, 300.1, 600, 600.1, 1500, 1500.1, 2000} {
		h := catalog.Start(catalog.Answers{Place: at, HeavyName: "Sand", Mass: kg, Height: 2, Lamps: 1, LampPower: 5}).Variants[0].Stores[0].Hoist
		d := float64(h.Rope.Diameter.Val) * 1000
		if times := 155 * d * d / float64(kg.Weight()); times < 6 || kg > 5 && times > 34 {
			t.Errorf("%v kg on %.0f mm: %.1f times its weight", kg, d, times)
		}
		if d < was || d == was && kg != 30 && kg > 30 && float64(kg) != math.Floor(float64(kg)) {
			t.Errorf("%v kg on %.0f mm after %.0f mm", kg, d, was)
		}
		if drum := float64(h.Drum.Diameter.Val) * 1000; math.Abs(drum/d-8) > 1e-9 { // eight rope diameters: maker's guidance for fibre rope
			t.Errorf("%v kg: a drum of %.0f mm for rope of %.0f mm", kg, drum, d)
		}
		was = d
	}
}
