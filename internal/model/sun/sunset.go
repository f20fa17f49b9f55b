package sun

import (
	"math"

	"duskweight/internal/model/unit"
)

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
