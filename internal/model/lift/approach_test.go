package lift

import (
	"math"
	"testing"
)

// mean is that of f from 0 to 1 by Simpson's rule with a thousand steps.
func mean(f func(s float64) float64) float64 {
	const n = 1000
	sum := f(0) + f(1)
	for i := 1; i < n; i++ {
		sum += f(float64(i)/n) * float64(2+2*(i%2))
	}
	return sum / 3 / n
}

// The functions of a speed that comes near its end are held against the integrals that they stand for, on both sides of where a
// series takes over, and below where digits would be lost: φ_1 is the mean of e^(−s·y), φ_2 that of (1 − s)·e^(−s·y), and the last
// the mean of (s·φ_1(s·y))².
func TestApproachAgainstIntegrals(t *testing.T) {
	for _, y := range []float64{-3, -0.51, -0.49, -1e-3, -2e-9, -1e-10, 0, 1e-10, 2e-9, 1e-3, 0.1, 0.3, 0.49, 0.51, 1, 2, 5} {
		exp := func(s float64) float64 { return math.Exp(-s * y) }
		for what, c := range map[string][2]float64{
			"first":  {first(y), mean(exp)},
			"second": {second(y), mean(func(s float64) float64 { return (1 - s) * exp(s) })},
			"square": {square(y), mean(func(s float64) float64 { // s·φ_1(s·y) is (1 − e^(−s·y))/y, or s(1 − s·y/2) for a small y
				if math.Abs(y) < 1e-6 {
					return math.Pow(s*(1-s*y/2), 2)
				}
				return math.Pow(math.Expm1(-s*y)/y, 2)
			})},
		} {
			if math.Abs(c[0]/c[1]-1) > 1e-11 {
				t.Errorf("%s(%g) = %.15g, its integral %.15g", what, y, c[0], c[1])
			}
		}
	}
	// −ln(1 − x)/x is the mean of 1/(1 − s·x).
	for _, x := range []float64{-2, -0.3, -1e-8, -1e-10, 0, 1e-10, 1e-8, 0.3, 0.6} {
		if got, want := logOver(x), mean(func(s float64) float64 { return 1 / (1 - s*x) }); math.Abs(got/want-1) > 1e-10 {
			t.Errorf("logOver(%g) = %.15g, its integral %.15g", x, got, want)
		}
	}
}
