package sun

import (
	"math"

	"duskweight/internal/model/unit"
)

// The closed formulas of the light outside the atmosphere: another way to what the geometry sums hour by hour.

// eccentricity returns (mean distance / distance)² of the sun on day n of the year, 1 … 365:
// source.DuffieBeckman.At("eq. 1.4.1a").
func eccentricity(n int) float64 {
	return 1 + 0.033*math.Cos(2*math.Pi*float64(n)/365)
}

// extraterrestrial returns the irradiation of a day on the flat outside the atmosphere; constant is the solar constant
// and nearness (mean distance / distance)²: source.DuffieBeckman.At("eq. 1.10.3"), source.FAO56.At("eq. 21").
func extraterrestrial(latitude, declination unit.Angle, constant unit.Irradiance, nearness float64) unit.Irradiation {
	ws := SunsetHourAngle(latitude, declination)
	return extraterrestrialBetween(latitude, declination, constant, nearness, -ws, ws)
}

// extraterrestrialBetween returns the irradiation on the flat outside the atmosphere between two hour angles, both
// while the sun is up: source.DuffieBeckman.At("eq. 1.10.4").
func extraterrestrialBetween(latitude, declination unit.Angle, constant unit.Irradiance, nearness float64, from, to unit.Angle) unit.Irradiation {
	sinL, cosL := math.Sincos(float64(latitude))
	sinD, cosD := math.Sincos(float64(declination))
	w1, w2 := float64(from), float64(to)
	return unit.Irradiation(43200 / math.Pi * float64(constant) * nearness *
		(cosL*cosD*(math.Sin(w2)-math.Sin(w1)) + (w2-w1)*sinL*sinD))
}
