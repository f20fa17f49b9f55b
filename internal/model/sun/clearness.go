package sun

import (
	"math"

	"duskweight/internal/model/unit"
)

// curve is how the daily clearness K (irradiation over irradiation outside the atmosphere) of one month spreads round
// its mean: K(z) = lo + (hi − lo)/(1 + e^(−μ − σz)) for z from N(0, 1), the logit-normal distribution (source.Johnson,
// system S_B). For 288 months of 24 places it is nearer to the real days than the cut exponential of source.HollandsHuget
// (root mean square of nine quantiles 0.0224 against 0.0234), and it can be U-shaped, as real months of two kinds of day are.
type curve struct{ lo, hi, mu, sigma float64 }

// darkest is the clearness of the darkest day of a curve, fitted to the same months.
const darkest = 0.02

// clearest returns the clearest day of a month with mean clearness k at a height above the sea. Fitted to the same months.
func clearest(k float64, height unit.Length) float64 {
	return max(k+0.03, min(max(0.66+0.18*k, 0.60), 0.80)*thinAir(height))
}

// spreadOf returns the usual standard deviation of the daily clearness of a month with mean clearness k between lo and
// hi, at a latitude and with a mean air temperature: days differ less near the equator and where it is warm. Fitted to
// the same months; single places lie 17 % beside it.
func spreadOf(k, lo, hi float64, latitude unit.Angle, air unit.Celsius) float64 {
	lat := math.Abs(latitude.Degrees())
	fit := -0.57 + 0.0097*min(lat, 35) - 0.0076*max(lat-35, 0) - 0.031*max(float64(air), 10)
	return math.Sqrt((k-lo)*(hi-k)) * math.Exp(fit)
}

// MixOneYear turns the spread and the lag-one correlation that one typical year has, of a place with mean clearness k and
// mean air temperature by month, into those of many years: one year's values are mixed half and half with the usual ones,
// the spreads by their product, and its lag is raised by the 0.06 that a month of thirty days hides, (1 + 3ρ)/n.
func MixOneYear(k, sd [12]float64, lag float64, air [12]unit.Celsius, latitude unit.Angle, height unit.Length) (mixed [12]float64, mixedLag float64) {
	year := 0.0
	for i, mean := range k {
		mixed[i], year = sd[i], year+mean/12
		if lo, hi := darkest, clearest(mean, height); mean > lo {
			mixed[i] = math.Sqrt(longRun*sd[i]*spreadOf(mean, lo, hi, latitude, air[i])) / longRun
		}
	}
	return mixed, (lag + 0.06 + usualLag(year)) / 2
}

// widest is the most that a spread may have of √((K̄ − lo)(hi − K̄)), which days of two kinds only, lo and hi, have.
const widest = 0.95

// curveOf returns the curve between lo and hi with this mean and standard deviation. A spread beyond widest counts as
// widest. lo < mean < hi.
func curveOf(mean, spread, lo, hi float64) curve {
	c := curve{lo: lo, hi: hi, mu: math.Log((mean - lo) / (hi - mean))}
	spread = min(spread, widest*math.Sqrt((mean-lo)*(hi-mean)))
	if spread <= 1e-9 {
		return c
	}
	// Newton's way inside a bracket: the spread rises with σ while μ holds the mean
	low, high := 0.0, 64.0
	c.sigma = spread * (hi - lo) / ((mean - lo) * (hi - mean)) // exact for small spreads
	for range 100 {
		c.centre(mean)
		have, slope := c.spreadAt(mean)
		if have > spread {
			high = c.sigma
		} else {
			low = c.sigma
		}
		next := c.sigma + (spread-have)/slope
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		if math.Abs(next-c.sigma) <= 1e-13*high {
			break
		}
		c.sigma = next
	}
	c.centre(mean)
	return c
}

// at returns the clearness of a day whose normal score is z.
func (c *curve) at(z float64) float64 { return c.lo + (c.hi-c.lo)/(1+math.Exp(-c.mu-c.sigma*z)) }

// centre sets μ so that the mean over z is as given.
func (c *curve) centre(mean float64) {
	low, high := -80.0-8*c.sigma, 80.0+8*c.sigma
	for range 100 {
		have, slope := 0.0, 0.0
		for i, w := range &scores.weight {
			p := 1 / (1 + math.Exp(-c.mu-c.sigma*scoreAt(i)))
			have += w * p
			slope += w * p * (1 - p)
		}
		off := c.lo + (c.hi-c.lo)*have - mean
		if math.Abs(off) <= 1e-15 {
			return
		}
		if off > 0 {
			high = c.mu
		} else {
			low = c.mu
		}
		next := c.mu - off/((c.hi-c.lo)*slope)
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		if next == c.mu {
			return
		}
		c.mu = next
	}
}

// under returns the curve whose days have this mean and spread where none can be clearer than a ceiling: the clear sky of
// a dark winter cuts the brightest days off, which would make the month darker and more even than it is. Where the ceiling
// is at the mean or below nothing helps; where days of two kinds alone would spread so far, the spread is what it can be.
func (c curve) under(ceiling, mean, spread float64) curve {
	if ceiling >= c.hi || ceiling <= mean || c.lo >= mean || c.sigma <= 0 {
		return c
	}
	spread = min(spread, widest*math.Sqrt((mean-c.lo)*(ceiling-mean)))
	low, high := c.sigma, 64.0
	for range 60 {
		have := c.raise(ceiling, mean)
		if math.Abs(have-spread) <= 1e-9 {
			break
		}
		if have > spread {
			high = c.sigma
		} else {
			low = c.sigma
		}
		next := c.sigma * spread / have
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		c.sigma = next
	}
	c.raise(ceiling, mean)
	return c
}

// raise sets μ so that the mean of the days under a ceiling is as given, and returns their standard deviation.
func (c *curve) raise(ceiling, mean float64) (spread float64) {
	low, high := c.mu-30, c.mu+30
	for range 100 {
		have, square, slope := 0.0, 0.0, 0.0
		for i, w := range &scores.weight {
			k := c.at(scoreAt(i))
			if k < ceiling {
				slope += w * (k - c.lo) * (c.hi - k) / (c.hi - c.lo)
			}
			k = min(k, ceiling)
			have += w * k
			square += w * k * k
		}
		spread = math.Sqrt(max(0, square-have*have))
		off := have - mean
		if math.Abs(off) <= 1e-14 {
			break
		}
		if off > 0 {
			high = c.mu
		} else {
			low = c.mu
		}
		next := c.mu - off/slope
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		c.mu = next
	}
	return spread
}

// spreadAt returns the standard deviation of the curve, whose mean is given, and how fast it rises with σ while μ holds
// the mean: dμ/dσ = −E[zK′]/E[K′].
func (c *curve) spreadAt(mean float64) (spread, slope float64) {
	variance, up, turn, co, coz := 0.0, 0.0, 0.0, 0.0, 0.0
	for i, w := range &scores.weight {
		z := scoreAt(i)
		p := 1 / (1 + math.Exp(-c.mu-c.sigma*z))
		off := c.lo + (c.hi-c.lo)*p - mean
		steep := w * (c.hi - c.lo) * p * (1 - p)
		variance += w * off * off
		up += steep
		turn += z * steep
		co += off * steep
		coz += off * z * steep
	}
	spread = math.Sqrt(variance)
	return spread, (coz - turn/up*co) / spread
}

// scores are the normal scores −5, −4.95 … 5 on which a curve's mean and spread are taken, with their share of the days.
var scores = newScores()

type scoreGrid struct{ weight [201]float64 }

func scoreAt(i int) float64 { return float64(i-100) / 20 }

func newScores() (g scoreGrid) {
	sum := 0.0
	for i := range g.weight {
		g.weight[i] = math.Exp(-scoreAt(i) * scoreAt(i) / 2)
		sum += g.weight[i]
	}
	for i := range g.weight {
		g.weight[i] /= sum
	}
	return g
}
