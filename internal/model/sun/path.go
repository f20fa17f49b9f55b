package sun

import (
	"math"

	"duskweight/internal/model/unit"
)

// Direction is where something stands in the sky: clockwise from north, 0 to 2π, and how high over the flat.
type Direction struct{ Azimuth, Altitude unit.Angle }

// Path returns where the sun stands on a day of the typical year, 0 for 1 January, in n even steps of its hour angle from its
// rise over a flat horizon to its setting; nothing on a day without sun. The declination is that of noon, which over a day moves
// it by 0.2° at most: source.DuffieBeckman.At("eq. 1.6.5").
func (g *Geometry) Path(day, n int) []Direction {
	noon := ephemerisAt(Julian(TypicalYear, 1, day+1, 12-float64(g.UTCOffset)/3600))
	half := float64(SunsetHourAngle(g.Latitude, unit.Angle(noon.declination)))
	if half == 0 || n < 1 {
		return nil
	}
	p := pole{}
	p.sinL, p.cosL = math.Sincos(float64(g.Latitude))
	sinD, cosD := math.Sincos(noon.declination)
	out := make([]Direction, 0, n+1)
	for i := range n + 1 {
		sinW, cosW := math.Sincos(half * (2*float64(i)/float64(n) - 1))
		east, north, up := p.toSun(sinD, cosD, sinW, cosW)
		azimuth := math.Atan2(east, north)
		if azimuth < 0 {
			azimuth += 2 * math.Pi
		}
		out = append(out, Direction{unit.Angle(azimuth), unit.Angle(math.Atan2(up, math.Hypot(east, north)))})
	}
	return out
}

// Outline returns the height of the shading outline of a place by direction, in a straight line between its points all the way
// round; 0 everywhere where it has none.
func (p Place) Outline() func(azimuth unit.Angle) unit.Angle {
	s := newSkyline(p.Horizon)
	return func(azimuth unit.Angle) unit.Angle { return unit.Angle(s.altitude(float64(azimuth))) }
}
