package path

import (
	"math"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// A beam of which neither mass nor section is known adds nothing of its own; one of 20 kg adds its weight.
func TestBeamOfItsOwn(t *testing.T) {
	h := whole()
	h.Structure.Beam.OwnMass = of[unit.Mass](20)
	t.Run("known", func(t *testing.T) { isWeight(t, h, 20*unit.G) })
	b := &h.Structure.Beam
	b.OwnMass.Is, b.Width.Is = false, false
	t.Run("no section", func(t *testing.T) { isWeight(t, h, 0) })
	b.Width.Is, b.Class = true, "wood from the barn"
	t.Run("no class", func(t *testing.T) { isWeight(t, h, 0) })
	b.Class, b.Span.Is = "C24", false
	t.Run("no span", func(t *testing.T) { isWeight(t, h, 0) })
}

func isWeight(t *testing.T, h lift.Hoist, want float64) {
	t.Helper()
	if got := (&loads{h: h}).beamWeight(); math.Abs(got-want) > 1e-9 {
		t.Errorf("%v N, want %v N", got, want)
	}
}
