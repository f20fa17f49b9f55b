package reservoir

import (
	"math"
	"math/rand/v2"
	"testing"

	"duskweight/internal/model/unit"
)

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-12*math.Max(1, math.Abs(want)) {
		t.Errorf("%s = %.15g, want %.15g", what, got, want)
	}
}

// By hand: 6 kJ that fall with 1.5·3 + 1 = 5.5 W give 3 W for 6000/5.5 s; in, 100 W raise 0.5·100 − 20 = 30 W.
func TestByHand(t *testing.T) {
	r := Reservoir{Capacity: 6000, FillMax: 100, FillGain: 0.5, FillLoss: 20, DrawMin: 2, DrawMax: 4, DrawGain: 1.5, DrawLoss: 1}
	near(t, "given at 3 W", float64(r.Drawn(3)), 6000/5.5*3)
	near(t, "given at 9 W, which is 4", float64(r.Drawn(9)), 6000/7.0*4)
	near(t, "given at 1 W, drawn at 2", float64(r.Drawn(1)), 6000/4.0*1)
	near(t, "round trip at 3 W", r.RoundTrip(3), 3/5.5*30/100)
	near(t, "nothing asked", float64(r.Drawn(0)), 0)
	near(t, "nothing asked, round trip", r.RoundTrip(0), 0)
	r.FillLoss = 60
	near(t, "would not rise", r.RoundTrip(3), 0)
}

// Without any loss what comes back is what went in.
func TestLossless(t *testing.T) {
	r := Reservoir{Capacity: 1e6, FillMax: 50, FillGain: 1, DrawMax: 70, DrawGain: 1}
	near(t, "given", float64(r.Drawn(10)), 1e6)
	near(t, "round trip", r.RoundTrip(10), 1)
}

// A store that passes Fault never gives back more than went in, and less capacity never gives more.
func TestNeverMadeFromNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	passed := 0
	for range 20000 {
		s := Reservoir{
			Capacity: unit.Energy(1e6 * r.Float64()), FillMax: unit.Power(100 * r.Float64()), FillGain: 1.3 * r.Float64(),
			FillLoss: unit.Power(50 * r.Float64() * float64(r.IntN(2))), DrawMin: unit.Power(10 * r.Float64() * float64(r.IntN(2))),
			DrawMax: unit.Power(100 * r.Float64()), DrawGain: 0.5 + r.Float64(), DrawLoss: unit.Power(10 * r.Float64() * float64(r.IntN(2))),
		}
		if s.Fault() != "" {
			continue
		}
		passed++
		y := unit.Power(150 * r.Float64())
		if got := s.RoundTrip(y); !(got >= 0 && got <= 1+1e-12) {
			t.Fatalf("%+v gives back %g of what went in", s, got)
		}
		if got := s.Drawn(y); float64(got) > float64(s.Capacity)*(1+1e-12) {
			t.Fatalf("%+v gives %g", s, got)
		}
		less := s
		less.Capacity *= unit.Energy(r.Float64())
		if less.Drawn(y) > s.Drawn(y) {
			t.Fatalf("less capacity gives more: %+v", s)
		}
	}
	if passed < 1000 {
		t.Errorf("only %d stores passed", passed)
	}
}

func TestFault(t *testing.T) {
	good := Reservoir{Capacity: 1, FillMax: 1, FillGain: 0.9, DrawMax: 1, DrawGain: 1.1}
	if good.Fault() != "" {
		t.Error(good.Fault())
	}
	for what, spoil := range map[string]func(*Reservoir){
		"not a number":    func(r *Reservoir) { r.Leak = math.NaN() },
		"below zero":      func(r *Reservoir) { r.Capacity = -1 },
		"infinite":        func(r *Reservoir) { r.FillCap = unit.Energy(math.Inf(1)) },
		"gains going in":  func(r *Reservoir) { r.FillGain = 1.01 },
		"gains going out": func(r *Reservoir) { r.DrawGain = 0.9 },
	} {
		r := good
		spoil(&r)
		if r.Fault() == "" {
			t.Errorf("%s passes", what)
		}
	}
}
