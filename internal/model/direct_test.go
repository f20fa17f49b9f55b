package model

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// sheetPanel is one panel without losses whose cells stay at the air's temperature (nominal temperature of 20 °C at
// 800 W/m² and 20 °C air: no warming).
func sheetPanel(isc, voc, imp, vmp, alpha, beta float64) panel.Array {
	none := unit.Of(unit.Ratio(0))
	return panel.Array{Name: "roof", Count: unit.Of(unit.Count(1)), Power: unit.Of(unit.Power(imp * vmp)), Soiling: none, Mismatch: none, Wiring: none,
		Tilt: unit.Of(unit.Angle(0.5)), Azimuth: unit.Of(unit.Angle(math.Pi)), Cell: "nominal", NOCT: unit.Of(unit.Celsius(20)),
		Sheet: &panel.Sheet{Isc: unit.Of(unit.Current(isc)), Voc: unit.Of(unit.Voltage(voc)), Imp: unit.Of(unit.Current(imp)), Vmp: unit.Of(unit.Voltage(vmp)),
			Alpha: unit.Of(unit.PerKelvin(alpha)), Beta: unit.Of(unit.PerKelvin(beta))}}
}

func sunlit(t *testing.T, a panel.Array) *panel.Sunlit {
	t.Helper()
	s, ps := panel.NewStraight([]panel.Array{a})
	if len(ps) > 0 {
		t.Fatal(ps)
	}
	return s.Sunlit()
}

func within(t *testing.T, what string, got, want, by float64) {
	t.Helper()
	if !(math.Abs(got-want) <= by*math.Abs(want)) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

// A motor that starts at 4.64 A on a panel of 5.9 A short-circuit current starts at 1000·4.64/5.9 = 786.4 W/m², where its
// voltage at rest is small beside the panel's (source.Appelbaum). The panel's current does not move with temperature.
func TestStartLight(t *testing.T) {
	x := sunlit(t, sheetPanel(5.9, 21.6, 5.5, 17.5, 0, -0.0033))
	m := &motor{k: 0.05, loop: 0.1}
	got := lightFor(x, straightOn{x, m}, 4.64)
	within(t, "start", float64(got.Val), 786.4, 0.002) // the tolerance of the rule: the panel leaks a little
	if g := lightFor(x, straightOn{x, m}, 9); g.Is {
		t.Errorf("9 A of a panel with 5.9 A at %v", g)
	}
	// a motor whose winding needs more than the panel's voltage never turns, however bright it is
	if g := lightFor(x, straightOn{x, &motor{k: 0.05, loop: 10}}, 4.64); g.Is {
		t.Errorf("46 V from a panel of 21.6 V at %v", g)
	}
}

// The 96-cell panel of the table: at half its short-circuit current, 2.549885 A, it stands at 54.786127 V. With R = 2 Ω,
// V_b = 1 V and K = 0.1 V·s/rad the rotor turns at (54.786127 − 1 − 5.099770)/0.1 = 486.8636 rad/s; with 2000 rad a metre
// the mass rises at 0.2434318 m/s and takes 54.786127·2.549885 = 139.6983 W.
func TestOperatingPoint(t *testing.T) {
	x := sunlit(t, sheetPanel(5.0997701, 59.400651, 4.6898062, 46.902632, 0.00089, -0.004077))
	x.SetEven(1000, 25)
	m := &motor{k: 0.1, loop: 2, vb: 1, layers: []lift.Climb{{Share: 1, Current: 2.549885, RotorPerMetre: 2000}}}
	speed, power := m.climb(straightOn{x, m})
	within(t, "speed", speed, 0.2434318, 5e-4) // the circuit is fitted to the sheet, its bend to a few parts in ten thousand
	within(t, "power", power, 139.6983, 5e-4)
	// two layers of half the travel each: the times add up, so the speed is the harmonic mean 2/(1/v + 2/v) = 2v/3
	m.layers = []lift.Climb{{Share: 0.5, Current: 2.549885, RotorPerMetre: 2000}, {Share: 0.5, Current: 2.549885, RotorPerMetre: 4000}}
	two, same := m.climb(straightOn{x, m})
	within(t, "two layers", two, speed*2/3, 1e-12)
	within(t, "power in two layers", same, power, 1e-12)
	// held, the panel gives nearly its short-circuit current: 1 + 2·5.09 V lie far left of its bend
	within(t, "standing", float64(m.standing(x)), 5.09, 0.005)
	// through a converter of 0.9 all of the best point's 219.96 W comes: U = 0.9·219.96/2.549885 = 77.6 V, but it only
	// steps down: 46.902632 V, so 46.902632·2.549885/0.9 W are taken
	step := &stepDown{motor: m, efficiency: 0.9}
	step.under(x)
	u, taken, ok := step.volts(2.549885)
	within(t, "converter, volts", u, 46.902632, 1e-4)
	within(t, "converter, watts", taken, 132.8841, 1e-4)
	if !ok || step.gives(20) || !step.gives(8) { // 8 A·(1 + 16) V = 136 W of 198 W; 20 A·41 V = 820 W
		t.Error("converter")
	}
}

// Without friction and resistance every watt of the panel lifts: m·g·v = U·I, and with either it is less.
func TestNothingLostNothingMade(t *testing.T) {
	x := sunlit(t, sheetPanel(5.9, 21.6, 5.5, 17.5, 0.0005, -0.0033))
	const k, c, weight = 0.05, 3000.0, 600.0
	free := &motor{k: k, layers: []lift.Climb{{Share: 1, Current: weight / (c * k), RotorPerMetre: c}}, weight: weight}
	lossy := &motor{k: k, loop: 0.5, vb: 0.8, layers: []lift.Climb{{Share: 1, Current: weight/(c*k)*1.2 + 0.2, RotorPerMetre: c}}, weight: weight}
	for g := 900.0; g <= 1300; g += 50 {
		x.SetEven(unit.Irradiance(g), 10)
		v, p := free.climb(straightOn{x, free})
		within(t, "free", weight*v, p, 1e-12)
		if v, p := lossy.climb(straightOn{x, lossy}); !(v > 0 && weight*v < p) {
			t.Errorf("%v W/m²: %v W lift, %v W taken", g, weight*v, p)
		}
	}
}

// levels gives whatever its level is.
type levels struct{ at float64 }

func (l *levels) gives(i float64) bool                            { return l.at >= i }
func (l *levels) volts(i float64) (volts, taken float64, ok bool) { return 12, 12 * i, true }

// It starts at the first push and goes on down to the light that just runs it, not beyond; the dark stops it.
func TestStartsLaterThanItStalls(t *testing.T) {
	m := &motor{k: 1, run: 2, start: 3, layers: []lift.Climb{{Share: 1, Current: 2, RotorPerMetre: 1}}}
	l := &levels{}
	steps := []float64{0, 2.5, 3, 2.5, 2, 1.9, 2.5, 3.5, -1, 2.5}
	speed, _ := m.through(len(steps), func(h int) feed {
		if l.at = steps[h]; l.at < 0 {
			return nil
		}
		return l
	})
	for h, want := range []bool{false, false, true, true, true, false, false, true, false, false} {
		if (speed[h] > 0) != want {
			t.Errorf("step %d at %v: turns %v", h, steps[h], speed[h] > 0)
		}
	}
}

// plainHoist is a hoist that a panel of about 5 A drives.
func plainHoist() lift.Hoist {
	one := unit.Of(unit.Count(1))
	return lift.Hoist{Name: "stone", Mass: []lift.Piece{{Mass: unit.Of(unit.Mass(60))}}, Travel: unit.Of(unit.Length(4)),
		Rope:    lift.Rope{Diameter: unit.Of(8 * unit.Millimetre)},
		Reeving: lift.Reeving{RopeParts: one, LeadSheaves: one, Efficiency: unit.Of(unit.Ratio(0.95))},
		Drum:    lift.Drum{Diameter: unit.Of(80 * unit.Millimetre), Width: unit.Of(300 * unit.Millimetre)},
		Train:   lift.Train{Stages: []lift.Stage{{Kind: "box", Ratio: unit.Of(unit.Ratio(150)), Efficiency: unit.Of(unit.Ratio(0.85)), IdleTorque: unit.Of(unit.Torque(0))}}, Breakaway: unit.Of(unit.Ratio(1.5))},
		Machine: lift.Machine{K: unit.Of(unit.MachineConstant(0.08)), R: unit.Of(unit.Resistance(0.6)), I0: unit.Of(unit.Current(0.2)), J: unit.Of(unit.Inertia(1e-4))},
		Raise:   lift.Raise{Feed: "panel"},
		Lower:   lift.Lower{Loads: []lift.DCLoad{{Kind: "string", Threshold: unit.Of(unit.Voltage(9)), Slope: unit.Of(unit.Resistance(1))}}, Auxiliary: unit.Of(unit.Power(0)), Ambient: unit.Of(unit.Celsius(20)), Shunt: "yes"},
	}
}

func directVariant() Variant {
	h := plainHoist()
	return Variant{Name: "straight", Panels: []panel.Array{sheetPanel(5.9, 21.6, 5.5, 17.5, 0.0005, -0.0033)},
		Controller: panel.Controller{Kind: "direct"}, Stores: []Store{{Hoist: &h}}}
}

// sunny is a place of a made year: enough for a panel.
func sunny(t *testing.T) Ground {
	t.Helper()
	m := sun.Monthly{}
	for i := range 12 {
		m.GHI[i] = unit.Irradiation(5 * 3.6e6)
		m.TMean[i], m.TMin[i], m.TMax[i] = 20, 14, 26
	}
	g := Prepare(Project{Name: "sunny", Seed: 3, Place: sun.Place{Latitude: unit.Of(20 * unit.Degree), Longitude: unit.Of(0 * unit.Degree), Sky: "monthly", Monthly: &m},
		Load: load.Load{Appliances: []load.Appliance{{Name: "lamp", Power: unit.Of(unit.Power(4)), Count: unit.Of(unit.Count(1)), From: unit.Of(18 * unit.Hour), To: unit.Of(22 * unit.Hour), Priority: "essential", Supply: "dc", Purpose: "light"}}}})
	if g.Sky == nil {
		t.Fatal(g.WhyNot)
	}
	return g
}

// The hoist on its panels is a store of the year: what its panel gave while it rose, what came of it, and every joule of
// it in the balances. Without a sky the lights are still told.
func TestDirectInTheYear(t *testing.T) {
	g, v := sunny(t), directVariant()
	r := g.Evaluate(v)
	s := r.Stores[0]
	d := HoistOf(s).Direct
	if d == nil || !d.Known || d.Year == nil || !s.InYear || s.Reservoir.Own == nil {
		t.Fatalf("%+v %+v", d, s)
	}
	if !d.StartLight.Is || d.StartLight.Val <= d.StallLight.Val || d.Converter.StartLight.Val >= d.StartLight.Val {
		t.Errorf("starts %v, stalls %v, converter %v", d.StartLight, d.StallLight, d.Converter.StartLight)
	}
	within(t, "rule of thumb", float64(d.Rule), float64(d.StartLight.Val), 0.03) // warm cells and the leak lie between
	y := r.Year
	within(t, "bus", float64(y.Bus), float64(y.Direct+y.Taken+y.Spilled), 1e-9)
	within(t, "own", float64(y.Own), float64(y.Bus), 1e-12)
	within(t, "store", float64(s.Year.Taken), float64(s.Year.Change+s.Year.Delivered+s.Year.Loss), 1e-9)
	if s.Year.Taken <= 0 || !(s.RoundTrip.Val > 0 && s.RoundTrip.Val < 1) || s.Year.Filled > y.Own {
		t.Errorf("%+v %v", s.Year, s.RoundTrip)
	}
	gain := 0.0
	for m, h := range d.Year.Months {
		gain += float64(h) * float64(monthDays[m])
	}
	within(t, "months", gain, 365*float64(d.Year.HeightDay), 1e-9)
	// in full sun it stands on the page as fed by that voltage
	if ra := HoistOf(s).Drive.Raising; !ra.Known || ra.Stalls || math.Abs(float64(ra.Speed/d.Points[4].Speed)-1) > 1e-6 {
		t.Errorf("%+v, want %+v", ra, d.Points[4])
	}
	a := r.answer().Stores[0].Hoist.Direct
	if a == nil || a.StartLight != d.StartLight || !a.HeightDay.Is || len(a.Points) != 5 || a.Say.IsZero() {
		t.Errorf("%+v", a)
	}
	dark := Ground{}.Evaluate(v).Stores[0]
	if HoistOf(dark).Direct.StartLight != d.StartLight || HoistOf(dark).Direct.Year != nil || dark.Reservoir != nil {
		t.Errorf("%+v", HoistOf(dark).Direct)
	}
}

// What is not there is said, by its path, and is never a zero.
func TestDirectNotKnown(t *testing.T) {
	g := sunny(t)
	for why, f := range map[string]func(*Variant){
		"panels[0].sheet.voc_v": func(v *Variant) { v.Panels[0].Sheet = nil },
		"controller.kind":       func(v *Variant) { v.Controller.Kind = "tracking" },
		"panels":                func(v *Variant) { v.Panels = nil },
	} {
		v := directVariant()
		f(&v)
		r := g.Evaluate(v)
		d := HoistOf(r.Stores[0]).Direct
		if d == nil || d.Known || d.WhyNot.IsZero() || len(d.Missing) == 0 || d.Missing[0].Path != why || r.Stores[0].Reservoir != nil {
			t.Errorf("%s: %+v", why, d)
		}
		if a := r.answer().Stores[0].Hoist.Direct; a == nil || a.StartLight.Is || a.Say.IsZero() {
			t.Errorf("%s: %+v", why, a)
		}
	}
	v := directVariant()
	second := plainHoist()
	v.Stores = append(v.Stores, Store{Hoist: &second})
	r := g.Evaluate(v)
	if !HoistOf(r.Stores[0]).Direct.Known || HoistOf(r.Stores[1]).Direct.Known {
		t.Error("two motors on the same panels")
	}
	v = directVariant()
	v.Stores[0].Hoist.Mass[0].Mass = unit.Of(unit.Mass(400)) // more than the panel's current lifts
	r = g.Evaluate(v)
	if s := r.Stores[0]; HoistOf(s).Direct.StartLight.Is || s.Reservoir != nil || !HoistOf(s).Drive.Raising.Stalls || HoistOf(s).Ready != "no" {
		t.Errorf("%+v", HoistOf(s).Direct)
	}
}

// Whatever the design, the answer has no number that is none, nothing is made, and every balance closes.
func TestDirectOfAnything(t *testing.T) {
	g := sunny(t)
	for seed := range uint64(25) {
		r := rand.New(rand.NewPCG(seed, 5))
		v := directVariant()
		h := v.Stores[0].Hoist
		any := func(x float64) float64 { return x * math.Pow(10, 3*r.Float64()-1.5) }
		h.Mass[0].Mass = unit.Of(unit.Mass(any(60)))
		h.Train.Stages[0].Ratio = unit.Of(unit.Ratio(1 + any(150)))
		h.Machine.K, h.Machine.R, h.Machine.I0 = unit.Of(unit.MachineConstant(any(0.08))), unit.Of(unit.Resistance(any(0.6))), unit.Of(unit.Current(any(0.2)))
		h.Drum.Width = unit.Of(unit.Length(any(0.1)))
		h.Machine.RthWinding, h.Machine.TauWinding, h.Machine.MaxWinding = unit.Of(unit.ThermalResistance(any(3))), unit.Of(unit.Duration(any(600))), unit.Of(unit.Celsius(110))
		if r.IntN(3) == 0 {
			v.Panels = append(v.Panels, v.Panels[0])
			v.Panels[1].Azimuth = unit.Of(unit.Angle(2))
		}
		out := g.Evaluate(v)
		if _, err := json.Marshal(out.answer()); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if s := out.Stores[0]; s.Reservoir != nil {
			if fault := s.Reservoir.Fault(); fault != "" {
				t.Errorf("seed %d: %s", seed, fault)
			}
			y := out.Year
			within(t, "bus", float64(y.Bus), float64(y.Direct+y.Taken+y.Spilled), 1e-9)
			if float64(s.Year.FillLoss) < -1e-9*float64(s.Year.Taken) {
				t.Errorf("seed %d: energy is made: %+v", seed, s.Year)
			}
		}
	}
}
