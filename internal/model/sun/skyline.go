package sun

import (
	"cmp"
	"math"
	"slices"
)

// skyline is a horizon sorted by direction.
type skyline []Horizon

func newSkyline(points []Horizon) skyline {
	s := slices.Clone(points)
	slices.SortStableFunc(s, func(a, b Horizon) int {
		return cmp.Compare(a.Azimuth, b.Azimuth)
	})
	return s
}

// altitude returns the height of the skyline in a direction, in a straight line between its points, all the way round.
func (s skyline) altitude(azimuth float64) float64 {
	if len(s) == 0 {
		return 0
	}
	after := 0
	for after < len(s) && float64(s[after].Azimuth) < azimuth {
		after++
	}
	right := s[after%len(s)]
	left := s[(after+len(s)-1)%len(s)]
	width := math.Mod(float64(right.Azimuth-left.Azimuth)+2*math.Pi, 2*math.Pi)
	if width == 0 {
		return float64(right.Altitude)
	}
	share := math.Mod(azimuth-float64(left.Azimuth)+2*math.Pi, 2*math.Pi) / width
	return float64(left.Altitude) + min(share, 1)*float64(right.Altitude-left.Altitude)
}

// behind tells that the sun's centre stands below the skyline.
func (s skyline) behind(east, north, up float64) bool {
	if len(s) == 0 {
		return false
	}
	azimuth := math.Atan2(east, north)
	if azimuth < 0 {
		azimuth += 2 * math.Pi
	}
	return math.Atan2(up, math.Hypot(east, north)) < s.altitude(azimuth)
}

// hides returns the share of an even sky's light on a plane with this normal that comes from below the skyline:
// (1/π)∫∫ max(0, cos θ) cos h dh da, by the middle of cells of 2° of direction and a twelfth of the skyline's height.
func (s skyline) hides(east, north, up float64) float64 {
	if len(s) == 0 {
		return 0
	}
	const around, steps = 180, 12
	sum := 0.0
	for i := range around {
		azimuth := (float64(i) + 0.5) * 2 * math.Pi / around
		sinA, cosA := math.Sincos(azimuth)
		dh := s.altitude(azimuth) / steps
		for j := range steps {
			sinH, cosH := math.Sincos((float64(j) + 0.5) * dh)
			if c := cosH*(east*sinA+north*cosA) + up*sinH; c > 0 {
				sum += c * cosH * dh
			}
		}
	}
	return sum * 2 * math.Pi / around / math.Pi
}
