package sun

import (
	"math"

	"duskweight/internal/model/unit"
)

// described is what a sky in words stands for. The numbers are means over the starter climates (catalog), put into
// groups by the clearness of their year, irradiation on the flat over irradiation outside the atmosphere: desert from
// 0.64, dry from 0.60, mixed from 0.50, cloudy from 0.44, very cloudy below. Rough: a place may differ by a fifth.
type described struct {
	clearness float64 // mean of the year
	swing     float64 // summer half above, winter half below, outside the tropics
	daily     float64 // highest less lowest temperature of a day, K
}

// Desert: Port Hedland, Albuquerque. Dry: Perth, Cape Town, New Delhi, Kalgoorlie, Lisbon (swing without New Delhi and
// its monsoon). Mixed: sixteen from Honolulu to Boston. Cloudy: Luxembourg, Seattle, Stockholm, Shanghai, London,
// Jyväskylä (swing without Shanghai and its summer rain). Very cloudy: Sand Point alone.
var skies = map[DescribedSky]described{
	DescribedDesert:     {clearness: 0.66, swing: 0.02, daily: 13.2},
	DescribedDry:        {clearness: 0.63, swing: 0.07, daily: 9.8},
	DescribedMixed:      {clearness: 0.54, swing: 0.02, daily: 8.6},
	DescribedCloudy:     {clearness: 0.47, swing: 0.10, daily: 7.3},
	DescribedVeryCloudy: {clearness: 0.37, swing: 0, daily: 3.6},
}

// Temperature from the latitude φ: seaWarm − seaCool·sin²φ − lapse·height, with a yearly swing of yearSwing·|sin φ|,
// warmest on about 22 July (north) or 20 January. Least squares over the thirty starter climates; their yearly means
// scatter round it by 2.6 K.
const (
	seaWarm   = 29.7
	seaCool   = 32.1
	yearSwing = 12.9
	warmest   = 6.2    // months after the middle of January
	lapse     = 0.0065 // K/m, that of the standard atmosphere (ISO 2533)
	tropic    = 23.45 * unit.Degree
)

// veryClear is the most that a month of a described sky may have of what its ceilings allow: far from the equator in
// winter even a desert's air is thick. Our own judgement.
const veryClear = 0.9

// describe returns twelve means for a sky in words. They are rough and are marked so.
func describe(g *Geometry, words described, height unit.Length) Monthly {
	outside, most := monthsOf(g, height)
	lat := float64(g.Latitude)
	swing := words.swing
	if math.Abs(lat) <= float64(tropic) {
		swing = 0
	}
	// clearest at midsummer; the year's mean, weighted by the light outside, stays the described one
	var season [12]float64
	sum, weighted := 0.0, 0.0
	for i := range season {
		season[i] = math.Copysign(1, lat) * math.Cos(2*math.Pi*(float64(i)-5)/12)
		sum += outside[i]
		weighted += outside[i] * season[i]
	}
	if sum > 0 {
		weighted /= sum
	}
	mean := seaWarm - seaCool*math.Pow(math.Sin(lat), 2) - lapse*float64(height)
	var m Monthly
	for i, days := range monthLength {
		k := words.clearness + swing*(season[i]-weighted)
		m.GHI[i] = unit.Irradiation(min(k*outside[i], veryClear*most[i]) / float64(days))
		t := mean + yearSwing*math.Sin(lat)*math.Cos(2*math.Pi*(float64(i)-warmest)/12)
		m.TMean[i] = unit.Celsius(t)
		m.TMax[i] = unit.Celsius(t + words.daily/2)
		m.TMin[i] = unit.Celsius(t - words.daily/2)
	}
	return m
}

// monthsOf returns the irradiation of each month outside the atmosphere and the most that its ceilings allow, J/m².
func monthsOf(g *Geometry, height unit.Length) (outside, most [12]float64) {
	air := clearSkies * thinAir(height)
	hour := 0
	for i, days := range monthLength {
		for range days * 24 {
			outside[i] += g.Extra[hour] * 3600
			most[i] += air * float64(ClearSky(g.Up[hour])) * g.Lit[hour] * 3600
			hour++
		}
	}
	return outside, most
}
