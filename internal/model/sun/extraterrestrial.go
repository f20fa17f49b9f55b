package sun

import (
	"math"

	"duskweight/internal/model/unit"
)

// Eccentricity returns (mean distance / distance)² of the sun on day n of the year, 1 … 365:
// source.DuffieBeckman.At("eq. 1.4.1a").
func Eccentricity(n int) float64 {
	return 1 + 0.033*math.Cos(2*math.Pi*float64(n)/365)
}

// SunsetHourAngle returns the hour angle at which the centre of the sun sets on a flat horizon, 0 (polar night) to π
// (polar day): source.DuffieBeckman.At("eq. 1.6.10").
func SunsetHourAngle(latitude, declination unit.Angle) unit.Angle {
	// −tan φ tan δ, written so that the poles need no infinity
	sinL, cosL := math.Sincos(float64(latitude))
	sinD, cosD := math.Sincos(float64(declination))
	s, c := -sinL*sinD, cosL*cosD
	switch {
	case s >= c:
		return 0
	case s <= -c:
		return math.Pi
	}
	return unit.Angle(math.Acos(s / c))
}

// Extraterrestrial returns the irradiation of a day on the flat outside the atmosphere; constant is the solar constant
// and nearness (mean distance / distance)²: source.DuffieBeckman.At("eq. 1.10.3"), source.FAO56.At("eq. 21").
func Extraterrestrial(latitude, declination unit.Angle, constant unit.Irradiance, nearness float64) unit.Irradiation {
	ws := SunsetHourAngle(latitude, declination)
	return ExtraterrestrialBetween(latitude, declination, constant, nearness, -ws, ws)
}

// ExtraterrestrialBetween returns the irradiation on the flat outside the atmosphere between two hour angles, both
// while the sun is up: source.DuffieBeckman.At("eq. 1.10.4").
func ExtraterrestrialBetween(latitude, declination unit.Angle, constant unit.Irradiance, nearness float64, from, to unit.Angle) unit.Irradiation {
	sinL, cosL := math.Sincos(float64(latitude))
	sinD, cosD := math.Sincos(float64(declination))
	w1, w2 := float64(from), float64(to)
	return unit.Irradiation(43200 / math.Pi * float64(constant) * nearness *
		(cosL*cosD*(math.Sin(w2)-math.Sin(w1)) + (w2-w1)*sinL*sinD))
}
