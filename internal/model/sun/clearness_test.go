package sun

import (
	"fmt"
	"math"
	"testing"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// curveAt is the usual curve of a month: mean clearness, latitude in degrees, mean air temperature, height.
func curveAt(mean, lat, air, height float64) (c curve, spread float64) {
	c.lo, c.hi = darkest, clearest(mean, unit.Length(height))
	spread = spreadOf(mean, c.lo, c.hi, deg(lat), unit.Celsius(air))
	return curveOf(mean, spread, c.lo, c.hi), spread
}

// Four months worked out in another program (four digits printed): a mixed one and a dark one at 52° north, a warm one
// near the equator, a bright one of a steppe 300 m up.
func TestCurveOfClearness(t *testing.T) {
	for _, row := range []struct{ mean, lat, air, height, hi, spread, mu, sigma, below, middle, above float64 }{
		{.47, 52, 15, 0, .7446, .1541, .6145, 1.0994, .2961, .4902, .6340},
		{.28, 52, 4, 0, .7104, .1712, -.6873, 1.3936, .0966, .2510, .4823},
		{.47, 7, 27, 0, .7446, .0921, .5316, .5772, .3740, .4764, .5648},
		{.70, 33, 30, 300, .7923, .0770, 2.3158, .9569, .6344, .7229, .7641},
	} {
		c, spread := curveAt(row.mean, row.lat, row.air, row.height)
		for what, v := range map[string][2]float64{"hi": {c.hi, row.hi}, "spread": {spread, row.spread}, "μ": {c.mu, row.mu}, "σ": {c.sigma, row.sigma},
			"K(−1)": {c.at(-1), row.below}, "K(0)": {c.at(0), row.middle}, "K(1)": {c.at(1), row.above}} {
			near(t, fmt.Sprint(row.mean, " at ", row.lat, ": ", what), v[0], v[1], 0.5001e-4)
		}
	}
}

// The law that the curve is made for: over the scores its mean is the month's to 1e-12 and its spread the given one; it
// rises with the score and stays between its ends. No month makes nonsense, and a spread that no days can have counts as
// the widest.
func TestCurveEverywhere(t *testing.T) {
	for mean := 0.025; mean <= 0.95; mean += 0.025 {
		for _, spread := range []float64{0, 1e-4, 0.01, 0.05, 0.1, 0.2, 0.3, 0.5} {
			lo, hi := darkest, clearest(mean, 2000)
			c := curveOf(mean, spread, lo, hi)
			sum, square, last := 0.0, 0.0, lo
			for i, w := range &scores.weight {
				k := c.at(scoreAt(i))
				if !(k >= last && k <= hi) {
					t.Fatalf("mean %v, spread %v: %v after %v", mean, spread, k, last)
				}
				sum, square, last = sum+w*k, square+w*(k-mean)*(k-mean), k
			}
			what := fmt.Sprint("mean ", mean, ", spread ", spread)
			near(t, what+": mean", sum, mean, 1e-12)
			near(t, what+": spread", math.Sqrt(square), min(spread, widest*math.Sqrt((mean-lo)*(hi-mean))), 1e-9)
		}
	}
}

// diffuseShareOfHour returns r_d, an hour's share of a day's diffuse irradiation; w is the hour angle of its middle:
// source.LiuJordan, as in source.DuffieBeckman.At("eq. 2.13.4"). The climate takes the same from its geometry.
func diffuseShareOfHour(w, sunset unit.Angle) float64 {
	ws := float64(sunset)
	return max(0, math.Pi/24*(math.Cos(float64(w))-math.Cos(ws))/(math.Sin(ws)-ws*math.Cos(ws)))
}

// shareOfHour returns r_t, an hour's share of a day's global irradiation, with the climate's own bulge. The shares of a
// day add up to 1 within 2 %.
func shareOfHour(w, sunset unit.Angle) float64 {
	return bulgeOf(float64(sunset)).at(float64(w)) * diffuseShareOfHour(w, sunset)
}

// Examples of Duffie & Beckman, with the book's declination where one is needed.
func TestDiffuseAndHoursOfDuffieBeckman(t *testing.T) {
	ws := func(lat float64, n int) unit.Angle { return SunsetHourAngle(deg(lat), cooper(n)) }
	book(t, "share of sky light in a day", DiffuseOfDay(0.692, ws(38.6, 246)), 0.253, 0.002, source.DuffieBeckman.At("ex. 2.11.1"))
	book(t, "share of a day’s light from 8 to 9, Melbourne, January", shareOfHour(deg(-52.5), ws(-38, 17)), 0.0759, 0.002, source.DuffieBeckman.At("ex. 2.13.1"))
	book(t, "share of a day’s light from 13 to 14, Madison, August", shareOfHour(deg(22.5), ws(43, 235)), 0.1177, 0.001, source.DuffieBeckman.At("ex. 2.13.2"))
	book(t, "share of a day’s light in one hour", shareOfHour(deg(-22.5), ws(43, 162)), 0.1085, 0.0005, source.DuffieBeckman.At("ex. 2.13.3"))
	book(t, "share of a day’s sky light in one hour", diffuseShareOfHour(deg(-22.5), ws(43, 162)), 0.1015, 0.0005, source.DuffieBeckman.At("ex. 2.13.3"))
	// at the middles of whole hours, where the shortest day still has nine of them
	for _, lat := range []float64{-45, -35, 0, 40, 45} {
		for n := 15; n < 365; n += 30 {
			s, d := 0.0, 0.0
			for w := -172.5; w < 180; w += 15 {
				if math.Abs(w) < ws(lat, n).Degrees() {
					s += shareOfHour(deg(w), ws(lat, n))
					d += diffuseShareOfHour(deg(w), ws(lat, n))
				}
			}
			near(t, fmt.Sprint("Σ r_t at ", lat, " day ", n), s, 1, 0.02)
			near(t, fmt.Sprint("Σ r_d at ", lat, " day ", n), d, 1, 0.02)
		}
	}
	// the clear sky a little above the sea: source.FAO56.At("ex. 18, p. 115"): 100 m, Ra 41.09: (0.75 + 2e-5·100)·41.09 = 30.90
	book(t, "light of a clear day at 100 m, MJ/m²", 0.75*thinAir(100)*41.09, 30.90, 0.01, source.FAO56.At("ex. 18"))
}

// A curve cut off by a clear sky has the mean and the spread that it was asked for, summed here over a grid five times as
// fine; where the two kinds of day, darkest and clear, cannot spread so far, it keeps its mean.
func TestCurveUnderAClearSky(t *testing.T) {
	for _, x := range []struct{ mean, spread, hi, ceiling float64 }{{0.2638, 0.1682, 0.7075, 0.6244}, {0.2638, 0.1954, 0.7075, 0.6244}, {0.15, 0.11, 0.687, 0.35}, {0.3, 0.25, 0.714, 0.32}} {
		c := curveOf(x.mean, x.spread, darkest, x.hi).under(x.ceiling, x.mean, x.spread)
		sum, first, second := 0.0, 0.0, 0.0
		for z := -5.0; z <= 5; z += 0.01 {
			w, k := math.Exp(-z*z/2), min(c.at(z), x.ceiling)
			sum, first, second = sum+w, first+w*k, second+w*k*k
		}
		mean := first / sum
		near(t, fmt.Sprint("mean under ", x.ceiling), mean, x.mean, 2e-4)
		most := widest * math.Sqrt((x.mean-darkest)*(x.ceiling-x.mean))
		near(t, fmt.Sprint("spread under ", x.ceiling), math.Sqrt(second/sum-mean*mean), min(x.spread, most), 5e-4)
	}
}
