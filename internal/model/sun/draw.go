package sun

import (
	"fmt"
	"math"
)

// Sky draws the plan year of a seed: an average year, in which every month has its mean light and its mean temperature.
// No real year is like it; Fill draws those. The same seed gives the same year to the last digit.
func (c *Climate) Sky(seed uint64) *Sky {
	s := c.Blank()
	s.Made = fmt.Sprintf("hours made from twelve monthly means, seed %d", seed)
	var r round
	c.round(seed, calm, &r)
	var k, t [Days]float64
	for i := range c.months {
		m := &c.months[i]
		for d := m.first; d < m.past; d++ {
			k[d], t[d] = m.curve.at(r.z[d]), r.warm[d]*c.warmth.spread[i]
		}
		c.balance(m, &k)
		level(t[m.first:m.past])
	}
	c.write(s, &k, &t)
	return s
}

// Blank returns a sky with room for the hours of a year.
func (c *Climate) Blank() *Sky {
	return &Sky{GHI: make([]float64, Hours), DHI: make([]float64, Hours), TAir: make([]float64, Hours), Geometry: c.geometry, Remarks: c.Remarks}
}

// Made draws year j of a seed as Fill does, into a sky of its own.
func (c *Climate) Made(seed uint64, j int) *Sky {
	s := c.Blank()
	s.Made = fmt.Sprintf("made year %d from twelve monthly means, seed %d", j+1, seed)
	c.Fill(s, seed, j)
	return s
}

// Fill draws made year j of a seed into the columns of a sky made by Blank or Sky, without allocating. No month is held at its mean:
// over many years months and years spread as real ones do.
func (c *Climate) Fill(s *Sky, seed uint64, j int) {
	var k, t [Days]float64
	c.days(seed, j, &k, &t)
	c.write(s, &k, &t)
}

// days draws made year j of a seed: each day's clearness, and how far its temperature is from the mean of its date, K.
func (c *Climate) days(seed uint64, j int, k, t *[Days]float64) {
	var r round
	c.round(Seed(seed, j), wandering, &r)
	curves := &c.curves()[j%len(doubts)]
	for i := range c.months {
		m := &c.months[i]
		for d := m.first; d < m.past; d++ {
			if c.geometry.Day[d] > 0 && m.target > 0 {
				k[d] = min(curves[i].at(r.z[d]), c.most[d]/c.geometry.Day[d])
			}
			t[d] = r.warm[d] * c.warmth.spread[i]
		}
	}
}

// write fills the hours from each day's clearness and deviation of temperature.
func (c *Climate) write(s *Sky, k, t *[Days]float64) {
	ghi, dhi, air := s.GHI[:Hours], s.DHI[:Hours], s.TAir[:Hours]
	for i := range c.months {
		m := &c.months[i]
		for d := m.first; d < m.past; d++ {
			c.hours(d, k[d], ghi, dhi)
			ratio := 1.0
			if m.target > 0 && c.geometry.Day[d] > 0 {
				ratio = k[d] / m.target
			}
			c.warmth.hours(d, i, t[d], ratio, air)
		}
	}
}

// level takes the mean off the values.
func level(v []float64) {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	for i := range v {
		v[i] -= sum / float64(len(v))
	}
}

// round is a year's chance, day by day: the normal score of the clearness, and the deviation of the temperature in
// spreads of its month.
type round struct{ z, warm [Days]float64 }

// slow is the share of the scores' variance that lasts: for weeks, and for the whole year.
type slow struct{ month, year float64 }

// A made year wanders: shares fitted to the spread of months and years of the reference years. The plan year is calm.
var calm, wandering = slow{}, slow{month: 0.015, year: 0.008}

// round draws a year's chance in a fixed order of the generator: the whole year, fourteen mid-months, then for each
// day its score and its own warmth.
func (c *Climate) round(seed uint64, share slow, r *round) {
	g := generator(seed)
	whole := g.normal()
	var weeks [14]float64
	for i := range weeks {
		weeks[i] = g.normal()
	}
	days, months, year := math.Sqrt(1-share.month-share.year), math.Sqrt(share.month), math.Sqrt(share.year)
	keep := math.Sqrt(1 - warmLag*warmLag)
	before, dayBefore, warm := 0.0, 0.0, 0.0
	for i := range c.months {
		tie := c.warmth.tie[i]
		free := math.Sqrt(1 - tie*tie)
		for d := c.months[i].first; d < c.months[i].past; d++ {
			n, own := g.normal(), g.normal()
			x := c.memory.next(d, before, dayBefore, n)
			before, dayBefore = x, before
			m := &c.between[d]
			r.z[d] = days*x + months*(m.early*weeks[m.number]+m.late*weeks[m.number+1]) + year*whole
			fresh := tie*n + free*own
			if warm = warmLag*warm + keep*fresh; d == 0 {
				warm = fresh
			}
			r.warm[d] = warm
		}
	}
}

// weights are those of the two mid-months between which a day lies; their squares add up to 1.
type weights struct {
	number      int
	early, late float64
}

func weightsOf(d int) weights {
	i, f := midMonths(d)
	length := math.Hypot(1-f, f)
	return weights{i, (1 - f) / length, f / length}
}
