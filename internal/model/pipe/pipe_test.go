package pipe

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// Friction in feet of water for 100 feet of Schedule 40 plastic pipe with C = 150, from Exhibit I of the Illinois
// Administrative Code, title 77, part 906. Inner diameters of Schedule 40: 1.049, 1.380, 2.067, 3.068 and 4.026 in (ASTM
// D1785). The table has two decimals and comes from an exponent of 1.85 instead of 1.852: 3 % and half of its last digit.
func TestFrictionOfPublishedTable(t *testing.T) {
	const gallon = 231 * 0.0254 * 0.0254 * 0.0254 / 60 // m³/s for each US gallon a minute
	for _, c := range []struct{ inches, gpm, feet float64 }{
		{1.049, 5, 1.52}, {1.049, 10, 5.50}, {1.380, 20, 5.23}, {2.067, 20, 0.74}, {2.067, 50, 3.98}, {3.068, 60, 0.81}, {3.068, 100, 2.09}, {4.026, 100, 0.55},
	} {
		got := float64(Friction(unit.Flow(c.gpm*gallon), 100*unit.Foot, unit.Length(c.inches)*unit.Inch)) / float64(unit.Foot)
		if math.Abs(got-c.feet) > 0.03*c.feet+0.005 {
			t.Errorf("%g gpm in %g in: %.3f ft in 100 ft, the table has %g", c.gpm, c.inches, got, c.feet)
		}
	}
	if Friction(0, 10, 0.05) != 0 {
		t.Error("water that stands still has friction")
	}
}
