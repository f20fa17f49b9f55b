package draw

import (
	"math"

	"duskweight/internal/model/unit"
)

// axis brings values to the paper, straight or by their logarithm.
type axis struct {
	lo, hi float64 // of the values
	a, b   float64 // of the paper
	log    bool
}

func (x axis) at(v float64) float64 {
	lo, hi := x.lo, x.hi
	if x.log {
		lo, hi, v = math.Log10(lo), math.Log10(hi), math.Log10(v)
	}
	return x.a + (v-lo)/(hi-lo)*(x.b-x.a)
}

// value is what stands at a place of the paper.
func (x axis) value(p float64) float64 {
	t := (p - x.a) / (x.b - x.a)
	if x.log {
		return x.lo * math.Pow(x.hi/x.lo, t)
	}
	return x.lo + t*(x.hi-x.lo)
}

// decades returns the powers of ten within the axis.
func (x axis) decades() []float64 {
	var out []float64
	for e := math.Ceil(math.Log10(x.lo) - 1e-9); e <= math.Log10(x.hi)+1e-9 && len(out) < 20; e++ {
		out = append(out, math.Pow(10, e))
	}
	return out
}

// ticks returns about n round values within a straight axis.
func (x axis) ticks(n int) []float64 {
	step := niceStep((x.hi - x.lo) / float64(n))
	var out []float64
	for v := math.Ceil(x.lo/step-1e-9) * step; v <= x.hi+1e-9*step && len(out) < 40; v += step {
		out = append(out, v)
	}
	return out
}

// niceStep is the round step of at least s: 1, 2 or 5 times a power of ten.
func niceStep(s float64) float64 {
	if !(s > 0) || math.IsInf(s, 0) {
		return 1
	}
	p := math.Pow(10, math.Floor(math.Log10(s)))
	for _, m := range []float64{1, 2, 5} {
		if s <= m*p*(1+1e-9) {
			return m * p
		}
	}
	return 10 * p
}

// tick writes a value at an axis, never with an exponent: from ten million up and under a thousandth in three digits, thousands apart.
func tick(v float64) string {
	if a := math.Abs(v); a > 0 && (a >= 1e7 || a < 1e-3) {
		return unit.Rounded(v, 3)
	}
	return unit.Rounded(math.Round(v*1e6)/1e6, 12)
}
