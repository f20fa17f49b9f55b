package sun

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// A quarter of a great circle from the pole to the equator is π/2·R, whatever the longitude; one minute of arc along the
// equator is a nautical mile, 1852 m, within a fifth of a percent of the mean radius; the antipode is π·R away.
func TestApart(t *testing.T) {
	for _, c := range []struct{ lat1, lon1, lat2, lon2, want, tol float64 }{
		{math.Pi / 2, 0.3, 0, 2, math.Pi / 2 * 6371e3, 1e-6},
		{0, 1, 0, 1 + math.Pi/180/60, 1852, 0.002 * 1852},
		{0.5, 0, -0.5, math.Pi, math.Pi * 6371e3, 1},
	} {
		if got := Apart(unit.Angle(c.lat1), unit.Angle(c.lon1), unit.Angle(c.lat2), unit.Angle(c.lon2)); math.Abs(float64(got)-c.want) > c.tol {
			t.Errorf("%+v: %g", c, float64(got))
		}
	}
}
