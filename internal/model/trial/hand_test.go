package trial

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"duskweight/internal/say"
)

// A straight line through four points, by the formulas of every book on it: slope S_xy/S_xx, scatter s² of what is left
// over n − 2, variance of the slope s²/S_xx, of the intercept s²·(1/n + x̄²/S_xx), and between them −x̄·s²/S_xx.
func TestLineByHand(t *testing.T) {
	xs, ys := []float64{1, 2, 3, 4}, []float64{1.1, 1.9, 3.2, 3.8}
	var rows [][]float64
	for _, x := range xs {
		rows = append(rows, []float64{1, x})
	}
	s := linear(rows, ys)
	// x̄ = 2.5, ȳ = 2.5, S_xx = 5, S_xy = 1.5·1.4 + 0.5·0.6 + 0.5·0.7 + 1.5·1.3 = 4.7: slope 0.94, intercept 0.15.
	near(t, "slope", s.beta[1], 0.94, 1e-12)
	near(t, "intercept", s.beta[0], 0.15, 1e-12)
	// left over 0.01, −0.13, 0.23, −0.11: squares 0.0001 + 0.0169 + 0.0529 + 0.0121 = 0.082, s² = 0.041
	near(t, "squares", s.rss, 0.082, 1e-11)
	near(t, "variance of the slope", s.cov.At(1, 1), 0.041/5, 1e-11)
	near(t, "variance of the intercept", s.cov.At(0, 0), 0.041*(0.25+6.25/5), 1e-11)
	near(t, "between them", s.cov.At(0, 1), -2.5*0.041/5, 1e-11)
	near(t, "and the other way", s.cov.At(1, 0), s.cov.At(0, 1), 1e-12)
	if s := linear(rows[:2], ys[:2]); !s.ok || s.cov != nil {
		t.Error("two points are a line, and say nothing of its error")
	}
	if s := linear(rows[:1], ys[:1]); s.ok {
		t.Error("one point is a line")
	}
	if s := linear([][]float64{{1, 2}, {2, 4}, {3, 6}}, []float64{1, 2, 3}); s.ok {
		t.Error("two columns alike are told apart")
	}
}

// A smallest mass that moved and a greatest that stayed bound the threshold: their middle, with the scatter of an even
// distribution, its width over √12. The mass that moved alone has no error.
func TestThresholdByHand(t *testing.T) {
	v := Threshold(12, 9, true)
	near(t, "middle", v.Val, 10.5, 1e-12)
	near(t, "error", v.Err, 3/math.Sqrt(12), 1e-12)
	if v = Threshold(9, 12, true); math.Abs(v.Err-3/math.Sqrt(12)) > 1e-12 || !v.Sure {
		t.Errorf("the other way round: %+v", v)
	}
	if v = Threshold(12, 9, false); v.Val != 12 || v.Sure || v.Err != 0 {
		t.Errorf("one alone: %+v", v)
	}
}

// One stage: x·(1 − b·(1 − back)) = b·idle, so b = x/D with D = x·(1 − back) + idle; ∂b/∂back = x²/D², ∂b/∂idle = −x/D²,
// ∂b/∂x = idle/D². Errors go together by the law of propagation with the covariance of back and idle.
func TestFirstPushErrorByHand(t *testing.T) {
	const back, idle, x, ex = 0.7, 0.02, 0.06, 0.003
	cov := [2][2]float64{{4e-4, -3e-6}, {-3e-6, 9e-6}}
	g := Gears{Back: Value{back, 0.02, true}, Idle: Value{idle, 0.003, true}, KnowBack: true, Known: true, cov: cov}
	got, ok := g.FirstPush(Value{x, ex, true}, []float64{1})
	if !ok || !got.Sure {
		t.Fatalf("%+v %v", got, ok)
	}
	d := x*(1-back) + idle
	near(t, "b", got.Val, x/d, 1e-9)
	byBack, byIdle, byX := x*x/d/d, -x/d/d, idle/d/d
	near(t, "its error", got.Err, math.Sqrt(byBack*byBack*cov[0][0]+2*byBack*byIdle*cov[0][1]+byIdle*byIdle*cov[1][1]+byX*byX*ex*ex), 1e-5) // slopes by differences of a ten-thousandth
	// Without idle torque b = 1/(1 − back), whatever x: only back counts, ∂b/∂back = 1/(1 − back)².
	g.Idle.Val = 0
	got, ok = g.FirstPush(Value{x, ex, true}, []float64{1})
	if !ok {
		t.Fatal("no b without idle torque")
	}
	near(t, "b without idle torque", got.Val, 1/0.3, 1e-9)
	near(t, "its error", got.Err, 0.02/0.09, 1e-5)
	// Two stages of half each: x·(1 − b·(1 − √back))² = b·idle.
	g.Idle.Val = idle
	got, ok = g.FirstPush(Value{Val: x}, []float64{0.5, 0.5})
	if !ok || got.Sure || got.Err != 0 {
		t.Fatalf("two stages: %+v %v", got, ok)
	}
	near(t, "two stages", x*math.Pow(1-got.Val*(1-math.Sqrt(back)), 2), got.Val*idle, 1e-9)
	for what, bad := range map[string]Gears{
		"back is not known": {Idle: g.Idle, Known: true, Back: g.Back}, "idle is not known": {Back: g.Back, KnowBack: true},
		"absurd": {Back: g.Back, KnowBack: true, Known: true, Idle: g.Idle, Absurd: say.Words("so")},
	} {
		if _, ok := bad.FirstPush(Value{Val: x}, []float64{1}); ok {
			t.Errorf("%s, and b is told", what)
		}
	}
	if _, ok := g.FirstPush(Value{Val: 0}, []float64{1}); ok {
		t.Error("no threshold, and b is told")
	}
	// A load so small that it would move with a fifth of the losses: there is no such b. Gears without loss and without idle
	// torque are never held: none either.
	if _, ok := firstPush(0.7, 1, 0.1, []float64{1}); ok {
		t.Error("b under a fifth")
	}
	if _, ok := firstPush(1, 0, 0.1, []float64{1}); ok {
		t.Error("gears without loss are held")
	}
}

// Efficiencies up to 1 are believed, one over it is not; idle torque of nothing is believed, under it is not.
func TestAbsurdOnEitherSide(t *testing.T) {
	for _, c := range []struct {
		up, back, idle float64
		absurd         bool
	}{{1, 1, 0, false}, {1.001, 1, 0, true}, {1, 1.001, 0, true}, {0.8, 0.7, -0.001, true}, {0.8, 0.7, 0.001, false}, {0.8, 0, 0, true}, {0, 0.7, 0, true}} {
		g := Gears{Up: Value{Val: c.up}, Back: Value{Val: c.back}, Idle: Value{Val: c.idle}, KnowUp: true, KnowBack: true, Known: true}
		if g.judge(); g.Absurd.IsZero() == c.absurd {
			t.Errorf("%+v: %q", c, g.Absurd)
		}
	}
	// The error of η from that of 1/η: |dη| = η²·|d(1/η)|.
	s := solution{beta: []float64{0.02, 1.25}, cov: mat.NewDense(2, 2, []float64{1e-6, 0, 0, 4e-4}), ok: true}
	var g Gears
	g.read(s, true, false)
	near(t, "η", g.Up.Val, 0.8, 1e-12)
	near(t, "its error", g.Up.Err, 0.64*0.02, 1e-12)
}

// Two masses that differ by a fifth tell losses from idle torque, a little less do not.
func TestApartOnEitherSide(t *testing.T) {
	if apart([]Torques{{0.1, 0}, {0.1199, 0}}) || !apart([]Torques{{0.1, 0}, {0.1201, 0}}) || apart([]Torques{{0.1, 0}}) {
		t.Error("masses a fifth apart are the border")
	}
}

// A motor at rest in the end, by hand: 4 A through 0.8 Ω are 12.8 W at 25 °C; the rest of 12 V less 1 V of brushes less
// 3.2 V, 7.8 V, times 0.3 A are 2.34 W. In air of 20 °C with 2.5 K/W: θ = 2.5·(12.8·(1 + 0.00393·(20 + θ − 25)) + 2.34), so
// θ·(1 − 0.12576) = 2.5·(12.8·0.98035 + 2.34) = 37.2212 and θ = 42.5755 K. Off, it cools by half in ln 2 time constants.
func TestForetellByHand(t *testing.T) {
	m := Motor{K: 0.05, R: 0.8, I0: 0.3, Brush: 1, Alpha: 0.00393}
	const tau = 900.0
	got := foretell(m, []Reading{{0, 20, 20, 0, 0}, {1e6, 0, 20, 4, 12}, {1e6 + tau*math.Ln2, 0, 20, 0, 12}}, 2.5, tau)
	near(t, "in the end", got[0], 20+42.5755, 1e-6)
	near(t, "cooled by half", got[1], 20+42.5755/2, 1e-6)
	// From 25 °C with 25 W at 0.4 %/K and 10 K/W each kelvin makes as much heat as it loses: it rises evenly, 250 K in a time
	// constant, 25 K in a tenth.
	got = foretell(Motor{R: 1, Alpha: 0.004}, []Reading{{0, 25, 25, 0, 0}, {tau / 10, 0, 25, 5, 5}}, 10, tau)
	near(t, "runs away evenly", got[0], 50, 1e-9)
	// A second run, whose clock begins anew, begins where it was read.
	got = foretell(m, []Reading{{0, 20, 20, 0, 0}, {60, 0, 20, 0, 0}, {0, 80, 20, 0, 0}, {tau * math.Ln2, 0, 20, 0, 0}}, 2.5, tau)
	near(t, "the second run", got[1], 50, 1e-9)
	// A voltage that its winding alone uses up turns nothing.
	got = foretell(m, []Reading{{0, 20, 20, 0, 0}, {1e6, 0, 20, 4, 4}}, 2.5, tau)
	near(t, "held fast", got[0]-20, 2.5*12.8*0.98035/(1-0.12576), 1e-6)
}

// Three readings after the first are enough, two are not; a motor that never ran tells nothing.
func TestEnoughReadings(t *testing.T) {
	m := Motor{K: 0.05, R: 0.8, Alpha: 0.00393}
	rs := []Reading{{0, 20, 20, 0, 0}}
	for i := range 3 {
		at := 600 * float64(i+1)
		rs = append(rs, Reading{at, 0, 20, 4, 12})
	}
	for i, warm := range foretell(m, rs, 2.5, 900) {
		rs[i+1].Warm = warm
	}
	if w := FitWarmth(m, rs); !w.Known {
		t.Errorf("three readings: %+v", w)
	} else {
		near(t, "R_th", w.Rth.Val, 2.5, 1e-4)
		near(t, "τ", w.Tau.Val, 900, 1e-4)
	}
	if w := FitWarmth(m, rs[:3]); w.Known || len(w.Lack) != 1 || w.Lack[0].String() != "At least three readings after the first are needed; there are 2." {
		t.Errorf("two readings: %+v", w)
	}
}
