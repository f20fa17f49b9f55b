package sun

import (
	"fmt"
	"math"
	"testing"
)

// Three places by the clearness of their year, worked out in another program: ρ1, φ1, φ2, e to the digits printed.
func TestMemoryOfPlaces(t *testing.T) {
	for _, row := range []struct{ k, lag, one, two, fresh float64 }{
		{.44, .2940, .27451, .06629, .95370},
		{.52, .3820, .36184, .05278, .92287},
		{.675, .5525, .57557, -.04175, .83279},
	} {
		m := memoryOf(usualLag(row.k))
		for what, v := range map[string][2]float64{"ρ1": {m.first, row.lag}, "φ1": {m.one, row.one}, "φ2": {m.two, row.two}, "e": {m.fresh, row.fresh}} {
			near(t, fmt.Sprint(row.k, ": ", what), v[0], v[1], 0.5001e-5)
		}
	}
	near(t, "the least", usualLag(0.2), 0.20, 0)
	near(t, "the most", usualLag(0.8), 0.60, 0)
}

// The law of a chain of second order (Yule and Walker): ρ1 = φ1/(1 − φ2), and what is fresh keeps the variance at 1. It
// holds for every lag that a place may have, and the chain dies out: both roots of x² − φ1 x − φ2 lie inside 1.
func TestMemoryOfAnyLag(t *testing.T) {
	for lag := -0.9; lag <= 0.951; lag += 0.05 {
		m := memoryOf(lag)
		second := m.one*lag + m.two
		near(t, fmt.Sprint(lag, ": ρ1"), m.one/(1-m.two), lag, 1e-12)
		near(t, fmt.Sprint(lag, ": variance"), m.one*lag+m.two*second+m.fresh*m.fresh, 1, 1e-12)
		if !(math.Abs(m.two) < 1 && m.one+m.two < 1 && m.two-m.one < 1 && m.fresh > 0) {
			t.Errorf("lag %v: %+v", lag, m)
		}
	}
}
