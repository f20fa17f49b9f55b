package search

import (
	"math"
	"slices"
)

// Quantile returns the p-quantile, 0 to 1, of values in rising order, source.HyndmanFan.At("definition 7"): with
// h = (n − 1)p and j = ⌊h⌋, x_j + (h − j)(x_{j+1} − x_j), counted from 0. At least one value.
func Quantile(sorted []float64, p float64) float64 {
	h := float64(len(sorted)-1) * p
	j := int(math.Floor(h))
	if j+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	return sorted[j] + (h-float64(j))*(sorted[j+1]-sorted[j])
}

// SpreadOf returns the spread of values of which little is bad; at least one.
func SpreadOf(values []float64) Spread {
	v := slices.Sorted(slices.Values(values))
	return Spread{v[0], Quantile(v, bad), Quantile(v, usual), Quantile(v, good), v[len(v)-1]}
}

// turned is the spread of something of which much is bad.
func (s Spread) turned() Spread {
	return Spread{Worst: s.Best, Bad: s.Good, Usual: s.Usual, Good: s.Bad, Best: s.Worst}
}

// Versus is how often one variant has more full nights than another in the same years: More + Same + Less = Years.
type Versus struct{ More, Same, Less, Years int }

// pairs compares every variant with every other, year by year.
func pairs(cs []Certain) [][]Versus {
	out := make([][]Versus, len(cs))
	for a := range cs {
		out[a] = make([]Versus, len(cs))
		for b := range cs {
			if a != b && len(cs[a].Nights) == len(cs[b].Nights) {
				out[a][b] = versus(cs[a].Nights, cs[b].Nights)
			}
		}
	}
	return out
}

func versus(a, b []float64) Versus {
	v := Versus{Years: len(a)}
	for j := range a {
		switch {
		case a[j] > b[j]:
			v.More++
		case a[j] < b[j]:
			v.Less++
		default:
			v.Same++
		}
	}
	return v
}

// Chance is P(more), strict: years with as many on both sides count for neither.
func (v Versus) Chance() float64 { return float64(v.More) / float64(v.Years) }

// Error is the standard error of the chance, √(p(1 − p)/n); 0 where it was so in all years or in none, which is not
// certainty: see Bound.
func (v Versus) Error() float64 {
	p := v.Chance()
	return math.Sqrt(p * (1 - p) / float64(v.Years))
}

// Bound is how far the true chance may still be from 0 or 1 when it was so in none or all of n years, 3/n
// (source.Hanley.At("rule of three"): 95 of 100 times it is nearer).
func (v Versus) Bound() float64 { return min(1, 3/float64(v.Years)) }

// Places is how many digits behind the point of the chance in percent its standard error allows: the digit in which the
// error begins is the last one printed. 0 at least; −1 where even the ones say nothing.
func (v Versus) Places() int {
	e := v.Error()
	if e <= 0 {
		return 0
	}
	return -int(math.Floor(math.Log10(100 * e)))
}
