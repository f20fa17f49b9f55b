package model

import (
	"testing"

	"duskweight/internal/model/unit"
)

// Only the cable behind a fuse is protected: nothing is said up to 0.2 m, and where the distance is not known or more the
// caution stands.
func TestFuseNearTheBattery(t *testing.T) {
	for _, c := range []struct {
		d    unit.Known[unit.Length]
		tell bool
	}{{unit.Of(unit.Length(0.2)), false}, {unit.Of(unit.Length(0)), false}, {unit.Of(unit.Length(0.21)), true}, {unit.Known[unit.Length]{}, true}} {
		f, tell := cautionNear(c.d)
		if tell != c.tell || tell && (f.Bad || f.Open || f.Path != "fuse_distance_m") {
			t.Errorf("%v: %v %+v", c.d, tell, f)
		}
	}
}
