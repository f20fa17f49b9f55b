package lift

import (
	"slices"

	"duskweight/internal/model/unit"
)

// Hangs is the sum of the pieces that hang; not known where one is not known or nothing is listed.
func (h Hoist) Hangs() unit.Known[unit.Mass] {
	sum := unit.Mass(0)
	for _, p := range h.Mass {
		m, ok := p.Mass.Value()
		if !ok {
			return unit.Known[unit.Mass]{}
		}
		sum += m
	}
	if sum <= 0 {
		return unit.Known[unit.Mass]{}
	}
	return unit.Of(sum)
}

// Hanging returns the hoist with m hanging: all pieces are scaled together, and without pieces that are known it is one
// piece. A piece that was weighed weighs something else now, so how it was weighed is open again.
func (h Hoist) Hanging(m unit.Mass) Hoist {
	was, known := h.Hangs().Value()
	if !known {
		name := ""
		if len(h.Mass) > 0 {
			name = h.Mass[0].Name
		}
		h.Mass = []Piece{{Name: name, Mass: unit.Of(m)}}
		return h
	}
	h.Mass = slices.Clone(h.Mass)
	for i := range h.Mass {
		h.Mass[i].Mass.Val *= m / was
		h.Mass[i].Weighed = ""
	}
	if len(h.Mass) == 1 {
		h.Mass[0].Mass.Val = m
	}
	return h
}
