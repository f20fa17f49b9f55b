package sun

import (
	"fmt"
	"math"

	"duskweight/internal/model/unit"
)

// Sky draws the year of a seed: the same seed gives the same year to the last digit.
func (c *Climate) Sky(seed uint64) *Sky {
	s := &Sky{GHI: make([]float64, Hours), DHI: make([]float64, Hours), TAir: c.tAir, Geometry: c.geometry, Remarks: c.Remarks}
	s.Made = fmt.Sprintf("hours made from twelve monthly means, seed %d", seed)
	c.Fill(s, seed)
	return s
}

// Fill draws the year of a seed into the columns of a sky made by Sky, without allocating.
func (c *Climate) Fill(s *Sky, seed uint64) {
	var k [Days]float64
	c.clearness(seed, &k)
	for d := range Days {
		c.hours(d, k[d], s.GHI[:Hours], s.DHI[:Hours])
	}
}

// clearness draws the year's daily clearness: one Gaussian chain z through the year, z ← φ z + √(1 − φ²)·N(0, 1), the
// first z from N(0, 1); u = Φ(z) is the share of the month's days that are darker (source.Graham).
func (c *Climate) clearness(seed uint64, k *[Days]float64) {
	g := generator(seed)
	z := g.normal()
	fresh := math.Sqrt(1 - c.lag*c.lag)
	for i := range c.months {
		m := &c.months[i]
		for d := m.first; d < m.past; d++ {
			if d > 0 {
				z = c.lag*z + fresh*g.normal()
			}
			k[d] = m.target + (m.curve.at(normalCDF(z))-m.target)*m.stretch
		}
		c.balance(m, k)
	}
}

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
	least := min(leastClearness, m.target)
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

// hours writes the hours of day d with clearness k: global by r_t, diffuse by Erbs and r_d, no hour above its ceiling;
// what is cut off goes to the other hours of the day, in proportion to their room.
func (c *Climate) hours(d int, k float64, ghi, dhi []float64) {
	from, to := c.sunrise[d], c.sunset[d]
	day := k * c.geometry.Day[d]
	diffuse := day * min(1, DiffuseOfDay(k, unit.Angle(c.geometry.Sunset[d])))
	over, room := 0.0, 0.0
	for h := from; h < to; h++ {
		i := day * c.share[h]
		if i > c.ceiling[h] {
			over += i - c.ceiling[h]
			i = c.ceiling[h]
		}
		room += c.ceiling[h] - i
		ghi[h] = i
	}
	raise := 0.0
	if over > 0 && room > 0 {
		raise = min(1, over/room)
	}
	for h := from; h < to; h++ {
		if raise > 0 {
			ghi[h] += raise * (c.ceiling[h] - ghi[h])
		}
		dhi[h] = min(ghi[h], diffuse*c.spread[h])
	}
}
