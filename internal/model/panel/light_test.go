package panel

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// Two panels of 100 W in 400 and 600 W/m² and one of 300 W in 200 and 0, an hour each: 1,000 and 200 W·h/m², so
// (200·1000 + 300·200)/500 = 520 W·h/m² = 1.872 MJ/m². An array of unknown power counts nothing.
func TestMeanLight(t *testing.T) {
	arrays := []Array{{Count: unit.Of[unit.Count](2), Power: unit.Of[unit.Power](100)}, {Count: unit.Of[unit.Count](1), Power: unit.Of[unit.Power](300)}, {}}
	got := MeanLight(arrays, []Light{{Plane: []float64{400, 600}}, {Plane: []float64{200, 0}}, {Plane: []float64{900, 900}}})
	if !got.Is || math.Abs(float64(got.Val)-1.872e6) > 1e-3 {
		t.Errorf("%v, want 1.872 MJ/m²", got)
	}
	if got := MeanLight(arrays[2:], []Light{{}}); got.Is {
		t.Errorf("%v without a power", got)
	}
}
