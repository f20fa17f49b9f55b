package model_test

import (
	"math"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// 500 Wh at 5 m, reckoned in another language: 1.8 MJ/(9.80665·5·0.55) = 66 745 kg; 1.8 MJ/(998.2·9.80665·5·0.4) = 91.94 m³;
// 1.8 MJ/(0.8·12.8 V) = 175 781 C, 48.8 Ah. The sides by hand: 66.7 t of granite of 2650 kg/m³ are 25.2 m³, 2.93 m each way;
// 91.94 m³ are 4.51 m; 625 Wh on the label of a battery with 102 Wh in a litre are 6.1 litres, 0.183 m.
func TestRocksWaterOrCells(t *testing.T) {
	w := model.Weigh(500*unit.WattHour, 5)
	rock, water, battery := w.Sides()
	for _, c := range []struct {
		what           string
		got, want, tol float64
	}{
		{"rock", float64(w.Rock), 66745.0612, 1e-6}, {"water", float64(w.Water), 91.9399511, 1e-6}, {"charge", float64(w.Charge), 175781.25, 1e-9},
		{"side of the rock", float64(rock), 2.93, 2e-3}, {"side of the water", float64(water), 4.51, 2e-3}, {"side of the battery", float64(battery), 0.183, 2e-3}, // hand calculation to three digits
	} {
		if math.Abs(c.got-c.want) > c.tol*c.want {
			t.Errorf("%s %g, want %g", c.what, c.got, c.want)
		}
	}
}
