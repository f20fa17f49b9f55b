package sun

import (
	"fmt"
	"math"
	"sync"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Climate is twelve monthly means made ready to draw years from. It holds everything that the seed does not change, so
// that a year costs little more than its draws. Nothing in it changes.
type Climate struct {
	geometry *Geometry
	months   [12]month
	memory   memory
	warmth   *warmth
	between  [Days]weights
	curves   func() *[len(doubts)][12]curve // of made years, by the doubt of the year; made when they are first asked for

	most    [Days]float64 // most irradiation of a day on the flat, J/m²: its hours' ceilings together
	sunrise [Days]int     // first and past-the-last lit hour of each day, hours of the year
	sunset  [Days]int
	ceiling []float64 // [8760] no hour's mean is above this, W/m²
	share   []float64 // [8760] of the day's irradiation, 1/s: global
	spread  []float64 // [8760] the same, diffuse

	Remarks []say.Sentence // what was changed in the means, for the page
}

// month is one month's clearness.
type month struct {
	first, past int // days of the year
	outside     float64
	target      float64 // mean clearness of the month
	sky         float64 // most irradiation under a clear sky, J/m²
	deviation   float64 // its standard deviation over many years
	own         bool    // the deviation is the place's own, so that there is no doubt about it
	curve       curve
	limit       float64 // clearest a day of the plan year may be, the clear sky of the day apart
}

// clearSkies is how far an hour may be above the clear-sky formula: light from the edges of clouds, very clean air, and
// what the formula misses.
const clearSkies = 1.1

// doubts are how many times the doubt about the spread of the days one made year after the other has it wider or
// narrower, as the logarithm: five near equal parts of N(0, 1), their order that of the years.
var doubts = [...]float64{-1.4, -0.7, 0, 0.7, 1.4}

// How far the usual spread of the days may lie beside the place's own, standard deviation of the logarithm: from the 17 %
// by which single places lie beside the fit; our own judgement. A place's own spread leaves no doubt.
const (
	doubtOfMeans     = 0.15
	doubtOfDescribed = 0.25
)

// longRun is the spread of the days round their long-run mean over that within single months: 0.169 over 0.163 at the
// reference years.
const longRun = 1.05

// NewClimate reads the twelve means of a place. height is above the sea.
func NewClimate(g *Geometry, m Monthly, height unit.Length) (*Climate, Problems) {
	return newClimate(g, m, height, doubtOfMeans)
}

func newClimate(g *Geometry, m Monthly, height unit.Length, doubt float64) (*Climate, Problems) {
	c := &Climate{geometry: g, warmth: newWarmth(m)}
	columns := make([]float64, 3*Hours)
	for i, column := range []*[]float64{&c.ceiling, &c.share, &c.spread} {
		*column = columns[i*Hours : (i+1)*Hours : (i+1)*Hours]
	}
	air := clearSkies * thinAir(height)
	for d := range Days {
		c.day(d, air)
		c.between[d] = weightsOf(d)
	}
	var ps Problems
	first := 0
	for i, days := range monthLength {
		ps = append(ps, c.month(i, first, first+days, m, height)...)
		first += days
	}
	if len(ps) > 0 {
		return nil, ps
	}
	c.curves = sync.OnceValue(func() *[len(doubts)][12]curve { return c.widened(doubt) })
	c.memory = memoryOf(min(max(float64(m.KTLag1.Or(unit.Ratio(usualLag(c.yearly())))), -0.95), 0.95))
	return c, nil
}

// Usual returns what the spread of the days within single months, and the resemblance of a day to the day before, usually are
// for the means of a place known by months; not known where they are not.
func Usual(p Place) (sd [12]unit.Known[unit.Ratio], lag unit.Known[unit.Ratio]) {
	if p.Sky != SkyMonthly || p.Monthly == nil {
		return sd, lag
	}
	m := *p.Monthly
	m.KTSd = [12]unit.Known[unit.Ratio]{}
	p.Monthly = &m
	_, c, ps := ClimateOf(p, nil)
	if len(ps) > 0 {
		return sd, lag
	}
	for i, mo := range c.months {
		if mo.target > 0 {
			sd[i] = unit.Of(unit.Ratio(mo.deviation / longRun))
		}
	}
	return sd, unit.Of(unit.Ratio(usualLag(c.yearly())))
}

// yearly returns the mean clearness of the months that have light.
func (c *Climate) yearly() float64 {
	sum, lit := 0.0, 0.0
	for _, m := range c.months {
		if m.target > 0 {
			sum += m.target
			lit++
		}
	}
	return sum / max(lit, 1)
}

// widened returns the months' curves with each of the doubts, under the clear sky.
func (c *Climate) widened(doubt float64) *[len(doubts)][12]curve {
	var out [len(doubts)][12]curve
	for j, g := range doubts {
		for i, m := range c.months {
			if m.target <= 0 {
				continue
			}
			spread := m.deviation
			if !m.own {
				spread *= math.Exp(doubt * g)
			}
			out[j][i] = m.curve
			if spread != m.deviation {
				out[j][i] = curveOf(m.target, spread, m.curve.lo, m.curve.hi)
			}
			out[j][i] = out[j][i].under(m.sky/m.outside, m.target, spread)
		}
	}
	return &out
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
func (c *Climate) month(i, first, past int, m Monthly, height unit.Length) Problems {
	mo := month{first: first, past: past}
	days := float64(past - first)
	sky := 0.0
	for d := first; d < past; d++ {
		mo.outside += c.geometry.Day[d]
		sky += c.most[d]
	}
	mo.sky = sky
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
	if mo.target > 0 {
		// a month darker than twice the darkest day has darker days still
		lo, hi := min(darkest, mo.target/2), clearest(mo.target, height)
		mo.deviation = spreadOf(mo.target, lo, hi, c.geometry.Latitude, m.TMean[i])
		if own, ok := m.KTSd[i].Value(); ok {
			mo.deviation, mo.own = longRun*max(0, float64(own)), true
		}
		mo.curve = curveOf(mo.target, mo.deviation, lo, hi)
	}
	// a month nearly as bright as its ceiling needs every day at it: no limit but the clear sky's
	mo.limit = mo.curve.hi
	reach := 0.0
	for d := first; d < past; d++ {
		reach += min(mo.curve.hi*c.geometry.Day[d], c.most[d])
	}
	if reach < wanted {
		mo.limit = math.Inf(1)
	}
	c.months[i] = mo
	return nil
}

var monthName = [12]string{"January", "February", "March", "April", "May", "June",
	"July", "August", "September", "October", "November", "December"}
