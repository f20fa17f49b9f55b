package lift

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// A descent against exact solutions. On a resistor the speed rises as ω*·(1 − e^(−t/τ)), τ = J_t·(R + R_L)/K². On a
// constant voltage it falls freely until K·ω = U, then the rest of the way with τ = J_t·R/K².
func TestDescentIsExact(t *testing.T) {
	for _, c := range []struct {
		name   string
		load   DCLoad
		within float64
	}{
		{"resistor", resistor(5), 1e-9},
		{"constant voltage", DCLoad{Kind: "cell", Threshold: known[unit.Voltage](9), Slope: known[unit.Resistance](0)}, 3e-3}, // Simpson's rule over the bend
		{"row of lamps", row12(8, 2), 3e-3},
	} {
		h := with(c.load)
		w := compute(h)
		d := w.d
		k, r, star := w.kk, w.r, float64(d.Lowering.Current)
		gear := w.gearing(w.fullest())
		jt := float64(h.Machine.J.Val) + 80*float64(d.QDown.Val*d.Backward.Val)/(gear*gear)
		u0, loop := float64(c.load.Threshold.Val), r+float64(c.load.Slope.Val+c.load.Resistance.Val)
		free, tau := u0/k*jt/(k*star), jt*loop/(k*k)
		moments := CourseOf(h).Descent(300)
		if len(moments) != 300 {
			t.Fatalf("%s: %d moments", c.name, len(moments))
		}
		for i, m := range moments[:299] {
			over := float64(m.Rotor) - u0/k
			want := float64(m.Rotor) * jt / (k * star)
			if over > 0 {
				want = free - tau*math.Log1p(-over/(star*loop/k))
			}
			if off := math.Abs(float64(m.Time) - want); off > c.within*(free+tau) {
				t.Fatalf("%s: moment %d at %.6g rad/s after %.9g s, want %.9g", c.name, i, float64(m.Rotor), float64(m.Time), want)
			}
		}
		end := moments[299]
		if end.Speed != d.Lowering.Speed || end.Volts != d.Lowering.Voltage || end.Power != d.Lowering.SteadyPower {
			t.Errorf("%s: ends with %+v", c.name, end)
		}
		near := moments[298]
		if math.Abs(float64(near.Rotor/d.Lowering.Rotor)-0.999) > 1e-4 {
			t.Errorf("%s: the last but one stands at %.4f of the speed", c.name, float64(near.Rotor/d.Lowering.Rotor))
		}
	}
	if CourseOf(with(converter(10))).Descent(100) != nil || CourseOf(Hoist{}).Descent(100) != nil {
		t.Error("a descent where there is no steady one")
	}
}

// A governed converter takes nothing until its speed is there, so the way to it is even: t = ω·J_t/(K·I*).
func TestGovernedDescent(t *testing.T) {
	h := with(DCLoad{Kind: "governed", Speed: known[unit.AngularSpeed](300), Efficiency: known[unit.Ratio](0.9)})
	w := compute(h)
	if !w.d.Lowering.Steady {
		t.Fatal(w.d.Lowering.Say)
	}
	gear := w.gearing(w.fullest())
	jt := w.j + w.moving()/(gear*gear)
	for _, m := range CourseOf(h).Descent(50)[:49] {
		if want := float64(m.Rotor) * jt / (w.kk * float64(w.d.Lowering.Current)); math.Abs(float64(m.Time)-want) > 1e-6*want {
			t.Fatalf("%.9g s, want %.9g", float64(m.Time), want)
		}
	}
}

// Terminals share what the rotor makes: U + R·I(U) = K·ω − V_b for whatever hangs there, at the highest such voltage.
func TestTerminals(t *testing.T) {
	for _, loads := range [][]DCLoad{{resistor(5)}, {row12(8, 2), resistor(20)}, {converter(5), resistor(20)}, {converter(5), row12(6, 1)}} {
		c := CourseOf(with(loads...))
		for e := 0.5; e < 30; e += 0.5 {
			u, i := c.terminal(e / c.w.kk)
			if math.Abs(u+c.w.r*i-e) > 1e-9*e {
				t.Errorf("%s at %g V: %g V and %g A", loads[0].Kind, e, u, i)
			}
			if math.Abs(taken(c.loads, u)-i) > 1e-9 && math.Abs(taken(withoutPower(c.loads), u)-i) > 1e-9 {
				t.Errorf("%s at %g V: %g A are not what the loads take", loads[0].Kind, e, i)
			}
		}
	}
}

// Runs and rests: the first run ends at the rise of one run from cold, and with the rest that is told ever so many end
// just under the allowed temperature; one body and two.
func TestWarmths(t *testing.T) {
	h := worked()
	h.Machine.RthWinding, h.Machine.TauWinding, h.Machine.MaxWinding = known[unit.ThermalResistance](3), known[unit.Duration](500), known[unit.Celsius](120)
	h.Lower.Ambient = known[unit.Celsius](25)
	two := h
	two.Machine.RthWinding, two.Machine.TauWinding = known[unit.ThermalResistance](1), known[unit.Duration](40)
	two.Machine.RthCase, two.Machine.TauCase = known[unit.ThermalResistance](2), known[unit.Duration](900)
	for name, h := range map[string]Hoist{"one body": h, "two bodies": two} {
		w := compute(h)
		const i, run, allowed = 9.0, 120.0, 75.0 // 120 − 25 − 20
		body, _ := w.thermal(i, 200)
		rest, ok := body.rest(run, allowed).Value()
		if !ok || rest <= 0 {
			t.Fatalf("%s: rest %v", name, rest)
		}
		c := CourseOf(h)
		first := c.Warmths(i, 200, run, rest, 1, 7)
		if got := float64(first[7].Winding) - 25; math.Abs(got-body.rise(run)) > 1e-9 || math.Abs(float64(first[7].Time)-run) > 1e-9 {
			t.Errorf("%s: one run rises %.9f K, want %.9f", name, got, body.rise(run))
		}
		long := c.Warmths(i, 200, run, rest, 400, 3)
		if got := float64(long[len(long)-1].Winding) - 25; math.Abs(got-allowed) > 1e-3 {
			t.Errorf("%s: ever so many runs end at %.6f K, allowed %g", name, got, allowed)
		}
	}
	if CourseOf(worked()).Warmths(3, 100, 10, 0, 3, 3) != nil {
		t.Error("a temperature without thermal values")
	}
}

// No design makes the lines panic or give a number that is none.
func TestCourseOfAnything(t *testing.T) {
	for seed := range uint64(400) {
		h := newDice(seed).hoist()
		c := CourseOf(h)
		last := -1.0
		for _, m := range c.Descent(40) {
			if !finite(float64(m.Time), float64(m.Speed), float64(m.Volts), float64(m.Power)) || float64(m.Time) < last || m.Power < 0 {
				t.Fatalf("seed %d: %+v", seed, m)
			}
			last = float64(m.Time)
		}
		for _, x := range c.Warmths(3, 100, 100, 50, 3, 5) {
			if !finite(float64(x.Winding)) {
				t.Fatalf("seed %d: %+v", seed, x)
			}
		}
	}
}
