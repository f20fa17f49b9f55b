package lift

import (
	"math"
	"testing"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// A winding that settles. RE 65 at its nominal 6.8 A in 25 °C, by hand: copper 6.8²·0.365 = 16.88 W,
// x = 0.00393·3.15·16.88 = 0.2089; copper alone (3.15·16.88)/(1 − x) = 67.2 K, 92 °C; with 12.7 W of friction in the
// case (53.16 + 1.3·12.7)/(1 − x) = 88.1 K, 113 °C, under the sheet's 125. The 14203 at its continuous torque of
// 0.15 N·m: I = 0.15/0.0327 + 0.3364 = 4.92 A, listed 155 °C at 8.1 K/W; the sheet's own friction of the running rotor is
// not known to better than 6 %.
func TestSettledHeat(t *testing.T) {
	q := newTwoBody(6.8, 0.365, 12.7, 25, 1.85, 123, 1.3, 1060)
	hot, ok := q.settled()
	cold := newTwoBody(6.8, 0.365, 0, 25, 1.85, 123, 1.3, 1060)
	alone, _ := cold.settled()
	i := float64(MotorCurrent(0.15, 0.0327, 0.3364))
	// speed at 12 V with the hot winding of 0.52 Ω: ω = (12 − 4.92·0.52)/0.0327 = 289 rad/s; friction 0.011·289 + 1.2e-5·289² = 4.18 W
	warmer, settles := Body{Rth: 8.1, Tau: 900, Ambient: 25}.heating(unit.Current(i), 0.3459, 4.18).settled()
	check(t, []row{
		{"heat of copper and friction, °C", 25 + hot, 113, 0.005, sheetRE65.At("by hand")},
		{"heat of copper alone, °C", 25 + alone, 92, 0.005, sheetRE65.At("by hand")},
		{"winding at its continuous torque, °C", 25 + warmer, 155, 0.06, sheetPittman.At("maximum winding temperature")},
	})
	if !ok || !settles {
		t.Error("they settle")
	}
}

// march integrates the heating by small steps of Runge and Kutta: another way to the closed forms.
func march(f func(th [2]float64) [2]float64, th [2]float64, t float64) [2]float64 {
	const n = 20000
	h := t / n
	at := func(a, b [2]float64, s float64) [2]float64 { return [2]float64{a[0] + s*b[0], a[1] + s*b[1]} }
	for range n {
		k1 := f(th)
		k2 := f(at(th, k1, h/2))
		k3 := f(at(th, k2, h/2))
		k4 := f(at(th, k3, h))
		for j := range th {
			th[j] += h / 6 * (k1[j] + 2*k2[j] + 2*k3[j] + k4[j])
		}
	}
	return th
}

func TestHeatingByMarching(t *testing.T) {
	// one body: τ·dθ/dt = R_th·(P_c·(1 + α(T_a − 25)) + α·I²·R·θ + P_f) − θ, for x under, at and over 1
	for _, i := range []float64{5, 9.2, 14} {
		b := Body{Rth: 3, Tau: 400, Ambient: 10}
		copper := i * i
		want := march(func(th [2]float64) [2]float64 {
			return [2]float64{(3*(copper*(1+Alpha*(10-25))+4+Alpha*copper*th[0]) - th[0]) / 400}
		}, [2]float64{}, 700)
		check(t, []row{{"one body", b.heating(unit.Current(i), 1, 4).rise(700), want[0], 1e-9, source.Derivation.At("marching")}})
		if run := b.heating(unit.Current(i), 1, 4).until(want[0]); math.Abs(float64(run.Val)-700) > 1e-4 {
			t.Errorf("it runs %g s, want 700", float64(run.Val))
		}
	}
	exact := math.Sqrt(1 / (Alpha * 3)) // x = 1: R_th·P_a·t/τ
	check(t, []row{{"x = 1", Body{Rth: 3, Tau: 400, Ambient: 25}.heating(unit.Current(exact), 1, 0).rise(700), 3 * exact * exact * 700 / 400, 1e-12, source.Derivation.Whole()}})
	// two bodies
	q := newTwoBody(8, 0.5, 6, 30, 2, 50, 1.5, 900)
	c1, c2 := 50/2.0, 900/1.5
	want := march(func(th [2]float64) [2]float64 {
		p := 32 * (1 + Alpha*(30+th[0]-25))
		return [2]float64{(p - (th[0]-th[1])/2) / c1, ((th[0]-th[1])/2 + 6 - th[1]/1.5) / c2}
	}, [2]float64{}, 1234)
	got := q.on.after(1234, [2]float64{}, [2]float64{q.p1, q.p2})
	check(t, []row{{"winding", got[0], want[0], 1e-9, source.Derivation.At("marching")}, {"case", got[1], want[1], 1e-9, source.Derivation.At("marching")}})
}

// With a case that is kept cold two bodies are one.
func TestTwoBodiesAreOne(t *testing.T) {
	q := newTwoBody(6, 0.4, 0, 25, 2, 60, 1e-9, 1e-6)
	b := Body{Rth: 2, Tau: 60, Ambient: 25}
	check(t, []row{{"one", q.rise(45), b.heating(6, 0.4, 0).rise(45), 1e-6, source.Derivation.Whole()}})
}

// Ever so many runs with the rest that was found: the peak creeps up to the allowed rise and never over it.
func TestRestsHold(t *testing.T) {
	const allowed, run = 60.0, 60.0
	q := newTwoBody(8, 0.5, 6, 25, 2, 50, 1.5, 900)
	b := Body{Rth: 3.5, Tau: 500, Ambient: 25}
	h := b.heating(14, 0.5, 6)
	for name, body := range map[string]thermal{"one body": h, "two bodies": q} {
		rest, ok := body.rest(run, allowed).Value()
		if !ok || rest <= 0 {
			t.Fatalf("%s: no rest found", name)
		}
		var th [2]float64
		peak := 0.0
		for range 3000 {
			if name == "two bodies" {
				th = q.on.after(run, th, [2]float64{q.p1, q.p2})
				peak = math.Max(peak, th[0])
				th = q.off.after(float64(rest), th, [2]float64{})
				continue
			}
			th[0] = th[0]*math.Exp(-(1-h.x)*run/h.tau) + h.rise(run)
			peak = math.Max(peak, th[0])
			th[0] *= math.Exp(-float64(rest) / h.tau)
		}
		if peak > allowed*(1+1e-9) || peak < allowed*0.999 {
			t.Errorf("%s: after ever so many runs %.6f K, allowed %g", name, peak, allowed)
		}
	}
}

// What never settles may still be lifted for a while; a motor past its allowed rise in one run is too hot.
func TestHotMotor(t *testing.T) {
	h := worked()
	h.Machine.RthWinding, h.Machine.TauWinding, h.Machine.MaxWinding = known[unit.ThermalResistance](30), known[unit.Duration](60), known[unit.Celsius](90)
	h.Mass[0].Mass = known[unit.Mass](160) // 10.5 A: x = 0.00393·30·10.5²·0.346 = 4.5
	d := Compute(h)
	if !d.HeatUp.Known || d.HeatUp.Settles || !d.HeatUp.TooHot || d.HeatUp.Rest.Is || !d.HeatUp.Run.Is {
		t.Errorf("%+v", d.HeatUp)
	}
	if d.Reservoir == nil || d.Reservoir.FillCap <= 0 || d.Reservoir.FillCap >= 86400/unit.Energy(d.Raising.Time)*d.Reservoir.Capacity {
		t.Error("a motor that gets too hot must cap what is lifted a day")
	}
	if !mentions(d, "too much for the motor") {
		t.Error("not said")
	}
}
