package cell

import (
	"math"

	"duskweight/internal/model/unit"
)

// Rated returns f_P, the share of the label's capacity that can be drawn at a mean current, by Peukert's law in its
// rated form: f_P = min(1, (C_H/(I·H))^(k−1)), source.Peukert. It is a limit and not a loss: what stays in the cells
// comes out at a smaller current. 1 for no current.
func (r Resolved) Rated(mean unit.Current) unit.Ratio {
	return RatedShare(r.Charge, r.RatedTime, r.Peukert, mean)
}

// RatedShare is f_P of a capacity c that holds for a discharge over the time h, with exponent k, at current i.
func RatedShare(c unit.Charge, h unit.Duration, k float64, i unit.Current) unit.Ratio {
	if i <= 0 || c <= 0 || h <= 0 {
		return 1
	}
	return unit.Ratio(math.Min(1, math.Pow(float64(c)/(float64(i)*float64(h)), k-1)))
}

// MeanCurrent returns the mean current of the hours in which something is drawn, from the power drawn hour by hour at
// the line. 0 when nothing is drawn.
func (r Resolved) MeanCurrent(drawn []float64) unit.Current {
	var sum float64
	n := 0
	for _, p := range drawn {
		if p > 0 {
			sum += p
			n++
		}
	}
	if n == 0 || r.Voltage == 0 {
		return 0
	}
	return unit.Current(sum / float64(n) / float64(r.Voltage))
}
