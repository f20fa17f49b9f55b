package sun

import (
	"fmt"
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Climate is twelve monthly means made ready to draw years from. It holds everything that the seed does not change, so
// that a year costs little more than its 365 draws. Nothing in it changes.
type Climate struct {
	geometry *Geometry
	months   [12]month
	lag      float64

	most    [Days]float64 // most irradiation of a day on the flat, J/m²: its hours' ceilings together
	sunrise [Days]int     // first and past-the-last lit hour of each day, hours of the year
	sunset  [Days]int
	ceiling []float64 // [8760] no hour's mean is above this, W/m²
	share   []float64 // [8760] of the day's irradiation, 1/s: global
	spread  []float64 // [8760] the same, diffuse
	tAir    []float64 // [8760] °C

	Remarks []say.Sentence // what was changed in the means, for the page
}

// month is one month's clearness.
type month struct {
	first, past int // days of the year
	outside     float64
	target      float64 // mean clearness of the month
	curve       distribution
	stretch     float64 // the month's own spread over the curve's
	limit       float64 // clearest a day may be drawn, the clear sky of the day apart
}

// clearSkies is how far an hour may be above the clear-sky formula: light from the edges of clouds, very clean air, and
// what the formula misses.
const clearSkies = 1.1

// typicalLag is the lag-one correlation of the daily clearness: source.Graham, the number from memory.
const typicalLag = 0.29

// NewClimate reads the twelve means of a place. height is above the sea.
func NewClimate(g *Geometry, m Monthly, height unit.Length) (*Climate, Problems) {
	c := &Climate{geometry: g, lag: min(max(float64(m.KTLag1.Or(typicalLag)), -0.99), 0.99)}
	columns := make([]float64, 4*Hours)
	for i, column := range []*[]float64{&c.ceiling, &c.share, &c.spread, &c.tAir} {
		*column = columns[i*Hours : (i+1)*Hours : (i+1)*Hours]
	}
	air := clearSkies * thinAir(height)
	for d := range Days {
		c.day(d, air)
	}
	var ps Problems
	first := 0
	for i, days := range monthLength {
		ps = append(ps, c.month(i, first, first+days, m)...)
		c.temperatures(i, first, first+days, m)
		first += days
	}
	if len(ps) > 0 {
		return nil, ps
	}
	return c, nil
}

// day computes ceilings and shares of the hours of day d. The shares are those of source.CollaresPereira and
// source.LiuJordan, made to add up to 1 exactly.
func (c *Climate) day(d int, air float64) {
	g := c.geometry
	noon := bulgeOf(g.Sunset[d])
	c.sunrise[d], c.sunset[d] = d*24, d*24
	sum := 0.0
	for h := d * 24; h < d*24+24; h++ {
		if g.Extra[h] <= 0 {
			continue
		}
		if c.sunset[d] == d*24 {
			c.sunrise[d] = h
		}
		c.sunset[d] = h + 1
		c.ceiling[h] = air * float64(ClearSky(g.Up[h])) * g.Lit[h]
		c.most[d] += c.ceiling[h] * 3600
		c.spread[h] = g.Extra[h] / g.Day[d]
		c.share[h] = noon.at(g.HourAngle[h]) * g.Extra[h]
		sum += c.share[h] * 3600
	}
	for h := c.sunrise[d]; h < c.sunset[d]; h++ {
		if sum > 0 {
			c.share[h] /= sum
		} else { // a first glimpse of the sun at the pole: no noon yet to bulge at
			c.share[h] = c.spread[h]
		}
	}
}

// tinySun is a mean day so dark (0.2 kWh/m²) that twilight and the bending of light near the horizon, which the model
// leaves out, may be more than the sun above it: our own judgement.
const tinySun = 0.2 * 3.6e6

// month prepares the clearness of month i, days first … past−1.
func (c *Climate) month(i, first, past int, m Monthly) Problems {
	mo := month{first: first, past: past}
	days := float64(past - first)
	sky := 0.0
	for d := first; d < past; d++ {
		mo.outside += c.geometry.Day[d]
		sky += c.most[d]
	}
	wanted := float64(m.GHI[i]) * days
	if wanted > sky {
		if wanted-sky > tinySun*days {
			return Problems{{fmt.Sprintf("monthly.ghi_j_m2_day[%d]", i), say.That(
				"%s: %s a day is more than the sun gives here, even with a clear sky all month (%s). Look at the number, the latitude and its sign, and the height above the sea",
				monthName[i], say.Sun(unit.Irradiation(wanted/days)), say.Sun(unit.Irradiation(sky/days)))}}
		}
		c.Remarks = append(c.Remarks, say.That("%s: the sun hardly rises; %s a day counts as %s.",
			monthName[i], say.Sun(unit.Irradiation(wanted/days)), say.Sun(unit.Irradiation(sky/days))))
		wanted = sky
	}
	if mo.outside > 0 {
		mo.target = wanted / mo.outside
	}
	mo.curve = distributionOf(mo.target)
	mo.stretch = 1
	if m.KTSd != nil && mo.curve.spread > 0 {
		mo.stretch = max(0, m.KTSd[i]) / mo.curve.spread
	}
	// a month nearly as bright as its ceiling needs every day at it: no limit but the clear sky's
	mo.limit = mo.curve.most
	reach := 0.0
	for d := first; d < past; d++ {
		reach += min(mo.curve.most*c.geometry.Day[d], c.most[d])
	}
	if reach < wanted {
		mo.limit = math.Inf(1)
	}
	c.months[i] = mo
	return nil
}

// temperatures gives each hour the month's mean and daily range: T̄ + (T_max − T_min)/2·cos(2π(t − 15)/24), warmest at
// three in the afternoon. Common practice.
func (c *Climate) temperatures(i, first, past int, m Monthly) {
	half := float64(m.TMax[i]-m.TMin[i]) / 2
	for d := first; d < past; d++ {
		for k := range 24 {
			c.tAir[d*24+k] = float64(m.TMean[i]) + half*math.Cos(2*math.Pi*(float64(k)+0.5-15)/24)
		}
	}
}

var monthName = [12]string{"January", "February", "March", "April", "May", "June",
	"July", "August", "September", "October", "November", "December"}
