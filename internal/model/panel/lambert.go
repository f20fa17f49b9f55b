package panel

import "math"

// lambert returns W₀(e^l), the solution of w + ln w = l: the log form, which does not overflow where e^l would (cells in
// long strings). Source: source.Corless.At("eq. 1.5"); Newton's steps on w + ln w − l are our own derivation.
func lambert(l float64) float64 {
	switch {
	case l < -36: // w = e^l to the last digit
		return math.Exp(l)
	case math.IsInf(l, 1) || math.IsNaN(l):
		return l
	}
	w := 1.0
	if l > 1 {
		w = l - math.Log(l)
	} else if l < 0 {
		w = math.Exp(l) / (1 + math.Exp(l))
	}
	for range 20 {
		next := w * (1 + l - math.Log(w)) / (1 + w)
		if math.Abs(next-w) <= 1e-15*next {
			return next
		}
		w = next
	}
	return w
}
