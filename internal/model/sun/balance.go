package sun

import "math"

// balance holds the days of a month between the darkest and the clearest and scales them until their mean, weighted by
// the light outside, is the month's: {scale, clamp} until it holds to 1e-12.
func (c *Climate) balance(m *month, k *[Days]float64) {
	if m.target <= 0 {
		clear(k[m.first:m.past])
		return
	}
	outside := c.geometry.Day[m.first:m.past]
	kk := k[m.first:m.past]
	var most [31]float64
	for i, o := range outside {
		if o > 0 {
			most[i] = min(m.limit, c.most[m.first+i]/o)
		}
	}
	least := min(m.curve.lo, m.target)
	factor := 1.0
	for range 300 {
		sum := 0.0
		for i, o := range outside {
			kk[i] = min(max(kk[i]*factor, least), most[i])
			sum += kk[i] * o
		}
		if sum <= 0 {
			return
		}
		factor = m.target * m.outside / sum
		if math.Abs(factor-1) <= 1e-13 {
			return
		}
	}
	settle(kk, outside, most[:], least, m.target*m.outside)
}

// settle moves what is still missing after the scaling, where nearly every day stands at a limit, in proportion to the
// room that each day has.
func settle(k, outside, most []float64, least, wanted float64) {
	sum, up, down := 0.0, 0.0, 0.0
	for i, o := range outside {
		sum += k[i] * o
		up += max(0, most[i]-k[i]) * o
		down += max(0, k[i]-least) * o
	}
	missing := wanted - sum
	for i := range outside {
		switch {
		case missing > 0 && up > 0:
			k[i] += max(0, most[i]-k[i]) * min(1, missing/up)
		case missing < 0 && down > 0:
			k[i] -= max(0, k[i]-least) * min(1, -missing/down)
		}
	}
}
