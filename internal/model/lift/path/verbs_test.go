package path

import (
	"testing"

	"duskweight/internal/model/unit"
)

// A word fits its unit: a length sags, a force is carried, a torque turns, a stress stresses. What has no word of its own for a
// unit keeps the one it has.
func TestVerbsFitTheirUnits(t *testing.T) {
	for _, c := range []struct {
		v, want verbs
		u       unit.Measure
	}{
		{bends, sags, unit.Metres}, {bends, carries, unit.Newtons}, {bends, turns, unit.NewtonMetres}, {bends, bends, unit.Pascals},
		{carries, carries, unit.Newtons}, {carries, bends, unit.Pascals}, {carries, carries, unit.Metres},
		{pulls, pulls, unit.Newtons}, {pulls, pulls, unit.Metres}, {must, must, unit.NewtonMetres},
	} {
		if got := c.v.of(c.u); got != c.want {
			t.Errorf("%q in %v: %q, want %q", c.v.does, c.u, got.does, c.want.does)
		}
	}
}
