package panel

import (
	"math"

	"duskweight/internal/model/unit"
)

// Diode is a panel's one-diode circuit at 1000 W/m² and 25 °C, and how it moves with light and temperature.
type Diode struct {
	Curve         // at 1000 W/m² and 25 °C
	Alpha float64 // change of the light current, A/K
}

// Constants of source.DeSoto: reference conditions, Boltzmann's constant, silicon's band gap and its change.
const (
	referenceLight = 1000.0         // W/m²
	referenceTemp  = 298.15         // K
	boltzmann      = 8.617333262e-5 // eV/K (2019 SI)
	bandGap        = 1.121          // eV at 25 °C, source.DeSoto.At("eq. 10"): silicon
	bandGapSlope   = -0.0002677     // 1/K, source.DeSoto.At("eq. 10"): silicon
)

// At returns the curve in light g with cells at temperature t; below −100 °C it stays as it is there.
func (d Diode) At(g unit.Irradiance, t unit.Celsius) Curve {
	kelvin := max(float64(t), -100) + 273.15
	light := max(float64(g), 0) / referenceLight
	ratio := kelvin / referenceTemp
	gap := bandGap * (1 + bandGapSlope*(kelvin-referenceTemp))
	return Curve{
		IL: max(0, light*(d.IL+d.Alpha*(kelvin-referenceTemp))), // source.DeSoto.At("eq. 8")
		I0: d.I0 * ratio * ratio * ratio *
			math.Exp(bandGap/(boltzmann*referenceTemp)-gap/(boltzmann*kelvin)), // source.DeSoto.At("eq. 9")
		Rs:   d.Rs,
		Leak: d.Leak * light, // source.DeSoto.At("eq. 12")
		A:    d.A * ratio,    // source.DeSoto.At("eq. 2")
	}
}
