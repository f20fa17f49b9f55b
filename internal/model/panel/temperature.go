package panel

import "duskweight/internal/model/unit"

// Typical values of a panel, used where the design does not know better.
const (
	typicalGamma    unit.PerKelvin    = -0.004 // crystalline silicon; common practice
	typicalSoiling  unit.Ratio        = 0.03   // common practice
	typicalMismatch unit.Ratio        = 0.02   // common practice
	typicalWiring   unit.Ratio        = 0.02   // common practice
	typicalU0       unit.HeatLoss     = 25     // source.Faiman.At("table 2")
	typicalU1       unit.HeatLossWind = 6.84   // source.Faiman.At("table 2")
	typicalWind     unit.Speed        = 1      // nominal conditions: source.IEC61215
	typicalNOCT     unit.Celsius      = 45     // common practice
)

// Faiman returns the temperature of the cells in light g and wind w: T_a + G/(U0 + U1·w), source.Faiman.At("eq. 1").
func Faiman(g unit.Irradiance, air unit.Celsius, w unit.Speed, u0 unit.HeatLoss, u1 unit.HeatLossWind) unit.Celsius {
	return air + unit.Celsius(float64(g)/(float64(u0)+float64(u1)*float64(w)))
}

// Nominal returns the temperature of the cells from their nominal operating temperature, which holds at 800 W/m² and
// 20 °C: T_a + (NOCT − 20)/800·G, source.Ross.
func Nominal(g unit.Irradiance, air, noct unit.Celsius) unit.Celsius {
	return air + (noct-20)/800*unit.Celsius(g)
}

// warming returns the kelvins above the air for each W/m².
func (a Array) warming() float64 {
	if a.Cell == CellNominal {
		return float64(Nominal(1, 0, a.NOCT.Or(typicalNOCT)))
	}
	return float64(Faiman(1, 0, a.Wind.Or(typicalWind), a.U0.Or(typicalU0), a.U1.Or(typicalU1)))
}
