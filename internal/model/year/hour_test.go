package year

import (
	"math"
	"testing"

	"duskweight/internal/model/reservoir"
)

// near fails when got and want differ by more than rounding.
func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) {
		t.Errorf("%s = %.12g, want %.12g", what, got, want)
	}
}

// taken offers one hour and returns the joules taken, delivered asks and returns the joules delivered.
func (s *store) taken(offer float64) float64 {
	s.over([]float64{offer}, 0, trace{})
	return s.sum.taken
}

func (s *store) delivered(ask float64) float64 {
	s.over([]float64{-ask}, 0, trace{})
	return s.sum.delivered
}

// One hour of filling, by hand.
func TestFillHour(t *testing.T) {
	cells := reservoir.Reservoir{Capacity: 360e3, FillMax: 100, FillGain: 0.9}
	hoist := reservoir.Reservoir{Capacity: 6e3, FillThreshold: 60, FillMax: 100, FillGain: 0.5, FillLoss: 20}
	relay := reservoir.Reservoir{Capacity: 6e3, FillThreshold: 100, FillMax: 100, FillStep: true, FillGain: 0.5, FillLoss: 20}
	carried := relay
	carried.FillThreshold = 0
	stuck := reservoir.Reservoir{Capacity: 6e3, FillMax: 100, FillGain: 0.5, FillLoss: 50}
	frost := cells
	frost.NoFill = []bool{true}
	capped := cells
	capped.FillCap = 45e3
	for _, c := range []struct {
		say                    string
		r                      reservoir.Reservoir
		x, offer, taken, after float64
	}{
		// 40 W · 3600 s = 144 kJ; 0.9 of it goes in
		{"part of the power", cells, 0, 40, 144e3, 129.6e3},
		// 100 W of the 500 offered: 360 kJ, 324 kJ in
		{"no more than it takes", cells, 0, 500, 360e3, 324e3},
		// 9 kJ are missing: 9000/0.9 = 10 kJ taken in 100 s
		{"full inside the hour", cells, 351e3, 100, 10e3, 360e3},
		{"full already", cells, 360e3, 100, 0, 360e3},
		{"under the threshold", hoist, 0, 59, 0, 0},
		// rises with 0.5·60 − 20 = 10 W: 6 kJ take 600 s, 60 W · 600 s = 36 kJ
		{"at the threshold", hoist, 0, 60, 36e3, 6e3},
		// rises with 0.5·100 − 20 = 30 W: 6 kJ take 200 s, 100 W · 200 s = 20 kJ
		{"above its power", hoist, 0, 1000, 20e3, 6e3},
		{"relay, too little", relay, 0, 99, 0, 0},
		{"relay", relay, 0, 150, 20e3, 6e3},
		// 5 W · 3600 s = 18 kJ run 100 W for 180 s: 30 W · 180 s = 5.4 kJ
		{"relay, the line carried by a store before it", carried, 0, 5, 18e3, 5.4e3},
		{"would not rise", stuck, 0, 80, 0, 0},
		{"too cold", frost, 0, 100, 0, 0},
		// 45 kJ in take 50 kJ
		{"no more a day", capped, 0, 100, 50e3, 45e3},
		{"no capacity", reservoir.Reservoir{FillMax: 100, FillGain: 1}, 0, 100, 0, 0},
		{"no gain", reservoir.Reservoir{Capacity: 1e3, FillMax: 100}, 0, 100, 0, 0},
	} {
		s := ready(c.r)
		s.x = c.x
		near(t, c.say+": taken", s.taken(c.offer), c.taken)
		near(t, c.say+": state", s.x, c.after)
	}
}

// One hour of drawing, by hand.
func TestDrawHour(t *testing.T) {
	cells := reservoir.Reservoir{Capacity: 360e3, DrawMax: 50, DrawGain: 1.25}
	hoist := reservoir.Reservoir{Capacity: 6e3, DrawMin: 2, DrawMax: 4, DrawGain: 1.5, DrawLoss: 1}
	locked := cells
	locked.Locked = []float64{0.25}
	allLocked := cells
	allLocked.Locked = []float64{1.5}
	for _, c := range []struct {
		say                      string
		r                        reservoir.Reservoir
		x, ask, delivered, after float64
	}{
		// 20 W · 3600 s = 72 kJ cost 90 kJ
		{"as asked", cells, 360e3, 20, 72e3, 270e3},
		{"no more than it gives", cells, 360e3, 80, 180e3, 135e3},
		// 45 kJ left give 36 kJ at 20 W, in 1800 s
		{"empty inside the hour", cells, 45e3, 20, 36e3, 0},
		{"nothing asked", cells, 45e3, 0, 0, 45e3},
		// falls with 1.5·3 + 1 = 5.5 W: 6 kJ last 1090.9 s at 3 W
		{"hoist", hoist, 6e3, 3, 3 * 6e3 / 5.5, 0},
		// the least it can give is 2 W: falls with 4 W, 6 kJ last 1500 s, of which 1 W is wanted
		{"least draw", hoist, 6e3, 1, 1500, 0},
		// a quarter stays: 360 − 90 = 270 kJ could be drawn, 90 kJ are
		{"locked, enough", locked, 360e3, 20, 72e3, 270e3},
		// 9 kJ above the lock give 7.2 kJ
		{"locked, not enough", locked, 99e3, 20, 7.2e3, 90e3},
		{"under the lock", locked, 80e3, 20, 0, 80e3},
		{"all locked", allLocked, 360e3, 20, 0, 360e3},
		{"would not fall", reservoir.Reservoir{Capacity: 1e3, DrawMax: 5}, 1e3, 5, 0, 1e3},
	} {
		s := ready(c.r)
		s.x = c.x
		near(t, c.say+": delivered", s.delivered(c.ask), c.delivered)
		near(t, c.say+": state", s.x, c.after)
	}
}

// Leak comes first and is e^(−leak·H): a leak that halves in an hour leaves half.
func TestLeakHour(t *testing.T) {
	s := ready(reservoir.Reservoir{Capacity: 1000, Leak: math.Ln2 / 3600})
	s.x = 1000
	s.over([]float64{0}, 1, trace{})
	near(t, "state", s.x, 500)
	near(t, "leaked", s.sum.leaked, 500)
}

// Filling along a falling acceptance is the exact solution: many small straight steps come to the same, and closer
// with smaller ones.
func TestFallingAgainstSmallSteps(t *testing.T) {
	for _, c := range []struct{ from, end, x, offer, loss float64 }{
		{0.8, 0.05, 0.5, 200, 0},   // at full power, then along the line
		{0.8, 0.05, 0.7, 60, 0},    // kink where the line crosses the offer
		{0.8, 0.05, 0.9, 200, 0},   // on the line from the start
		{0.95, 0.05, 0.93, 200, 3}, // with idle loss, to full
		{0.5, 0, 0.9, 200, 0},      // never full
		{0.5, 0.2, 0.9, 200, 40},   // stops where it no longer rises
		{0.8, 0.05, 0.2, 5, 0},     // never on the line
	} {
		r := reservoir.Reservoir{Capacity: 360e3, FillMax: 100, FillGain: 0.9, FillLoss: 0,
			AcceptFrom: c.from, AcceptEnd: c.end}
		s := ready(r)
		s.bf = c.loss
		s.x = c.x * 360e3
		taken := s.taken(c.offer)

		const n = 360000
		x, sum := c.x*360e3, 0.0
		for range n {
			u := math.Min(c.offer, 100)
			if y := x / 360e3; y > c.from {
				u = math.Min(u, 100*(1-(1-c.end)*(y-c.from)/(1-c.from)))
			}
			rate := 0.9*u - c.loss
			if rate <= 1e-9 || x >= 360e3 {
				break
			}
			x += rate * hour / n
			sum += u * hour / n
		}
		// Euler's error with n steps is about rate·H/n ≈ 1 J of 360 kJ.
		if math.Abs(s.x-x) > 2 {
			t.Errorf("%+v: state %.3f, small steps %.3f", c, s.x, x)
		}
		if math.Abs(taken-sum) > 2+1e-5*sum {
			t.Errorf("%+v: taken %.3f, small steps %.3f", c, taken, sum)
		}
	}
}

// No more goes in a day than the cap, however it comes, and the next day begins anew.
func TestCapOfADay(t *testing.T) {
	s := ready(reservoir.Reservoir{Capacity: 360e3, FillMax: 100, FillGain: 1, DrawMax: 100, DrawGain: 1, FillCap: 45e3})
	net := make([]float64, 26)
	net[0], net[1], net[2], net[3], net[24] = 10, -5, 10, 10, 10
	s.over(net, 0, trace{})
	// 36 kJ, of which 18 are drawn again; then 9 kJ are left of the cap, and nothing; on the next day 36 kJ.
	near(t, "state", s.x, 36e3-18e3+9e3+36e3)
	near(t, "left over in the third hour", net[2], 10-9e3/3600)
	near(t, "left over in the fourth hour", net[3], 10)
}

// The series agrees with the library's logarithm to the last digits on both sides of its border.
func TestLogarithm(t *testing.T) {
	for _, z := range []float64{1e-12, 1e-6, 1e-3, 0.00999, 0.01001, 0.5, 30} {
		if got, want := log1pOver(z), math.Log1p(z)/z; math.Abs(got-want) > 3e-14*want {
			t.Errorf("ln(1 + %g)/%g = %.17g, want %.17g", z, z, got, want)
		}
	}
	if log1pOver(0) != 1 {
		t.Error("the limit at 0 is 1")
	}
}
