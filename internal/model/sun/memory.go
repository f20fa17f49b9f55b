package sun

import "math"

// memory is how a day's score x goes on from those of the two days before: x ← φ1 x₁ + φ2 x₂ + e·N(0, 1), a chain of
// second order (source.BoxJenkins.At("Yule–Walker equations")); first is its lag-one correlation.
type memory struct{ first, one, two, fresh float64 }

// usualLag returns the lag-one correlation of the daily scores of a place by the mean clearness of its
// months. Fitted to 27 places, which lie 0.10 beside it.
func usualLag(k float64) float64 { return min(max(0.36+1.1*(k-0.5), 0.20), 0.60) }

// memoryOf returns the chain with a lag-one correlation ρ1. Real days two apart have ρ2 = ρ1/2, fitted to the same
// places. Far outside the fit, above 0.77 and below −0.43, no chain or a nearly endless one has that: ρ2 is then midway
// between the least that a chain can have, 2ρ1² − 1, and that of a chain of first order, ρ1² (our own judgement).
func memoryOf(lag float64) memory {
	second := max(0.5*lag, 1.5*lag*lag-0.5)
	m := memory{first: lag, one: lag * (1 - second) / (1 - lag*lag), two: (second - lag*lag) / (1 - lag*lag)}
	m.fresh = math.Sqrt(1 - m.one*lag - m.two*second)
	return m
}

// next returns the score of day d from those of the two days before and a fresh number from N(0, 1).
func (m memory) next(d int, before, dayBefore, n float64) float64 {
	switch d {
	case 0:
		return n
	case 1:
		return m.first*before + math.Sqrt(1-m.first*m.first)*n
	}
	return m.one*before + m.two*dayBefore + m.fresh*n
}
