package panel

import (
	"fmt"
	"testing"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/witness"
)

func TestCellTemperatureAgainstTable(t *testing.T) {
	windy := witness.Table(t, "panel", "warmth of a panel by light, air and wind", " °C", source.Faiman.Whole().String())
	sheet := witness.Table(t, "panel", "warmth of a panel by its data sheet", " °C", source.Ross.Whole().String())
	for _, row := range published(t, "panel_celltemp.csv") {
		v := func(name string) float64 { return number(t, row[name]) }
		g, air, wind := unit.Irradiance(v("G")), unit.Celsius(v("Ta")), unit.Speed(v("wind"))
		name := fmt.Sprintf("%v W/m² %v °C %v m/s", g, air, wind)
		near(t, name+" Faiman", float64(Faiman(g, air, wind, 25, 6.84)), v("faiman_25_6p84"), 1e-4)
		near(t, name+" nominal", float64(Nominal(g, air, 45)), v("ross_noct45"), 1e-4)
		windy.See(v("faiman_25_6p84"), float64(Faiman(g, air, wind, 25, 6.84)))
		sheet.See(v("ross_noct45"), float64(Nominal(g, air, 45)))
	}
	// three more, from other values: 900 W/m², 20 °C, 5 m/s with U0 22, U1 6; 1000 W/m², 30 °C with NOCT 50
	near(t, "Faiman 22, 6", float64(Faiman(900, 20, 5, 22, 6)), 37.308, 5e-4)
	near(t, "nominal 50", float64(Nominal(1000, 30, 50)), 67.5, 1e-9)
	// the array takes the same two
	near(t, "array, Faiman", 20+900*Array{Cell: "faiman", Wind: unit.Of(unit.Speed(5))}.warming(), 35.2027, 1e-4)
	near(t, "array, nominal", 20+800*Array{Cell: "nominal"}.warming(), 45, 1e-9)
}
