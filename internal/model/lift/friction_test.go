package lift

import (
	"testing"

	"duskweight/internal/model/unit"
)

// The low values on concrete that Pallett and others measured (2002), timber with our own reserve: dry 0.4, wet 0.3. What was
// measured on the spot goes before them, and on soil none is published.
func TestGrip(t *testing.T) {
	for _, c := range []struct {
		under    Underside
		ground   Ground
		outdoors unit.Answer
		measured unit.Known[unit.Ratio]
		want     unit.Known[unit.Ratio]
	}{
		{UndersideSteel, GroundConcreteSlab, unit.No, unit.Known[unit.Ratio]{}, unit.Of[unit.Ratio](0.1)},
		{UndersideConcrete, GroundConcreteSlab, unit.Yes, unit.Known[unit.Ratio]{}, unit.Of[unit.Ratio](0.4)},
		{UndersideTimber, GroundConcreteSlab, unit.No, unit.Known[unit.Ratio]{}, unit.Of[unit.Ratio](0.4)},
		{UndersideTimber, GroundConcreteSlab, "", unit.Known[unit.Ratio]{}, unit.Of[unit.Ratio](0.3)},
		{UndersideRubber, GroundConcreteSlab, unit.No, unit.Known[unit.Ratio]{}, unit.Known[unit.Ratio]{}},
		{UndersideSteel, GroundGravel, unit.No, unit.Known[unit.Ratio]{}, unit.Known[unit.Ratio]{}},
		{"", GroundConcreteSlab, unit.No, unit.Known[unit.Ratio]{}, unit.Known[unit.Ratio]{}},
		{UndersideSteel, GroundConcreteSlab, unit.No, unit.Of[unit.Ratio](0.35), unit.Of[unit.Ratio](0.35)},
	} {
		h := Hoist{Base: Base{Underside: c.under, Ground: c.ground, Friction: c.measured}, Site: Site{Outdoors: c.outdoors}}
		if got := h.Grip(); got != c.want {
			t.Errorf("%s on %s, outdoors %q: %+v, want %+v", c.under, c.ground, c.outdoors, got, c.want)
		}
	}
}
