package lift

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// warm is the worked hoist on some loads with a motor that heats as one body.
func warm(loads ...DCLoad) Hoist {
	h := with(loads...)
	h.Machine.RthWinding, h.Machine.TauWinding = known[unit.ThermalResistance](8), known[unit.Duration](600)
	h.Machine.RthCase, h.Machine.TauCase = unit.Known[unit.ThermalResistance]{}, unit.Known[unit.Duration]{}
	return h
}

// A trip against what it must add up to, and against laws. It lasts as long as lift, hold and way down together and ends where
// it began. Newton and Ohm: on a resistor R_L the speed rises as v*·(1 − e^(−t/τ)), τ = J_t·(R + R_L)/K². Kirchhoff: all the way
// down K·ω = U + I·R. Newton's law of cooling: while it holds, the winding's warmth over the air falls as e^(−t/τ).
func TestTrip(t *testing.T) {
	const ohm = 5
	h := warm(resistor(ohm))
	w := compute(h)
	d := w.d
	beats := CourseOf(h).Trip()
	if len(beats) == 0 || len(beats) > MostBeats {
		t.Fatalf("%d moments", len(beats))
	}
	by := map[Phase][]Beat{}
	for i, b := range beats {
		if i > 0 && b.Time < beats[i-1].Time {
			t.Fatalf("moment %d goes back in time", i)
		}
		by[b.Phase] = append(by[b.Phase], b)
	}
	up, hold, down := by[PhaseUp], by[PhaseHold], by[PhaseDown]
	last := func(b []Beat) Beat { return b[len(b)-1] }
	near := func(what string, got, want, within float64) {
		t.Helper()
		if math.Abs(got-want) > within*math.Abs(want) {
			t.Errorf("%s: %.9g, want %.9g", what, got, want)
		}
	}
	near("the lift, s", float64(last(up).Time), float64(d.Raising.Time), 1e-9)
	near("all, s", float64(last(down).Time), float64(d.Raising.Time+TripHold+d.Lowering.Time), 1e-9)
	near("the top, m", float64(last(up).Height), float64(h.Travel.Val), 1e-12)
	if last(down).Height != 0 || up[0].Height != 0 || down[0].Speed != 0 || hold[0].Speed != 0 {
		t.Error("it does not begin and end at rest below")
	}
	near("the winding after the lift, °C", float64(last(up).Winding.Val), float64(d.HeatUp.Winding), 1e-9)
	air := float64(h.Lower.Ambient.Or(25))
	near("the winding after the hold, K", float64(last(hold).Winding.Val)-air, (float64(last(up).Winding.Val)-air)*math.Exp(-float64(TripHold)/600), 1e-9)

	gear := w.gearing(w.fullest())
	jt := w.j + w.moving()/(gear*gear)
	tau := jt * (w.r + ohm) / (w.kk * w.kk)
	begin := down[0].Time
	for _, b := range down {
		v := float64(d.Lowering.Speed) * -math.Expm1(-float64(b.Time-begin)/tau)
		if math.Abs(float64(b.Speed)-v) > 1e-9*float64(d.Lowering.Speed) {
			t.Fatalf("%.6g m/s after %.6g s, want %.6g", float64(b.Speed), float64(b.Time-begin), v)
		}
		if b.Speed > 0 {
			near("K·ω, V", float64(b.Volts)+float64(b.Current)*w.r, w.kk*gear*float64(b.Speed), 1e-9)
		}
	}
}

// What does not lift, does not come down at a steady speed, or is not known has no trip; without thermal values it has one
// without a winding. Over several layers of rope the sums still hold.
func TestTripsThatAreNone(t *testing.T) {
	stalls := warm(resistor(5))
	stalls.Raise.Voltage = known[unit.Voltage](1)
	for name, h := range map[string]Hoist{"empty": {}, "stalls": stalls, "races": warm(converter(10)), "no loads": warm()} {
		if CourseOf(h).Trip() != nil {
			t.Errorf("%s: there is a trip", name)
		}
	}
	cold := warm(resistor(5))
	cold.Machine.TauWinding = unit.Known[unit.Duration]{}
	if b := CourseOf(cold).Trip(); len(b) == 0 || b[0].Winding.Is {
		t.Error("a winding that cannot be told is told")
	}
	layered := warm(resistor(5))
	layered.Drum.Width = known[unit.Length](0.03)
	d := Compute(layered)
	b := CourseOf(layered).Trip()
	if d.Winding.Layers < 2 || len(b) == 0 || len(b) > MostBeats {
		t.Fatalf("%d layers, %d moments", d.Winding.Layers, len(b))
	}
	if got, want := float64(b[len(b)-1].Time), float64(d.Raising.Time+TripHold+d.Lowering.Time); math.Abs(got-want) > 1e-9*want {
		t.Errorf("over %d layers %v s, want %v", d.Winding.Layers, got, want)
	}
}
