package sun

import (
	"math"

	"duskweight/internal/model/unit"
)

// ClearSky returns the global irradiance on the flat under a clear sky at the sea, for the cosine of the sun's zenith
// angle: source.Haurwitz, 1098 cos z · e^(−0.059/cos z). (Some prints have 0.057: 0.2 % more with the sun overhead.)
func ClearSky(cosZenith float64) unit.Irradiance {
	if cosZenith <= 0 {
		return 0
	}
	return unit.Irradiance(1098 * cosZenith * math.Exp(-0.059/cosZenith))
}

// thinAir returns how much clearer the clear sky is at a height above the sea: the ratio of 0.75 + 2·10⁻⁵ z to its value
// at the sea (source.FAO56.At("eq. 37")).
func thinAir(height unit.Length) float64 {
	return max(0.9, (0.75+2e-5*float64(height))/0.75)
}

// DiffuseOfDay returns the diffuse share of a day's global irradiation with clearness k; sunset is the hour angle of
// sunset: source.Erbs.At("eq. 10"), as in source.DuffieBeckman.At("eq. 2.11.1").
func DiffuseOfDay(k float64, sunset unit.Angle) float64 {
	if sunset <= 81.4*unit.Degree {
		if k < 0.715 {
			return 1 + k*(-0.2727+k*(2.4495+k*(-11.9514+k*9.3879)))
		}
		return 0.143
	}
	if k < 0.722 {
		return 1 + k*(0.2832+k*(-2.5557+k*0.8448))
	}
	return 0.175
}

// DiffuseOfHour returns the diffuse share of an hour's global irradiation with clearness k:
// source.Erbs.At("eq. 1"), as in source.DuffieBeckman.At("eq. 2.10.1").
func DiffuseOfHour(k float64) float64 {
	switch {
	case k <= 0.22:
		return 1 - 0.09*k
	case k <= 0.80:
		return 0.9511 + k*(-0.1604+k*(4.388+k*(-16.638+k*12.336)))
	}
	return 0.165
}

// bulge is how much more of a day's light than of its diffuse light falls at noon: a + b·cos ω at hour angle ω
// (source.CollaresPereira, as in source.DuffieBeckman.At("eq. 2.13.2")).
type bulge struct{ a, b float64 }

// bulgeOf returns a and b of a day whose sun sets at an hour angle (source.DuffieBeckman.At("eq. 2.13.2b, c")).
func bulgeOf(sunset float64) bulge {
	s := math.Sin(sunset - math.Pi/3)
	return bulge{0.409 + 0.5016*s, 0.6609 - 0.4767*s}
}

// at is never below 0.
func (n bulge) at(w float64) float64 { return max(0, n.a+n.b*math.Cos(w)) }
