package model

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Words of a check of line and wiring, as those of the load path.
const (
	GivesWay = "gives_way"
	Tight    = "tight"
	Holds    = "holds"
	NotKnown = "not_known"
)

// LineCheck is one check of the line, its peak or its wiring: what is asked, what is there, and the one over the other.
type LineCheck struct {
	ID       string
	Path     string // of the field that decides; inside the variant, or behind "load."
	Quantity unit.Quantity
	Demand   float64
	Capacity float64 // where Use is known
	Use      unit.Known[unit.Ratio]
	Word     string
	Say      say.Sentence
}

// lineCheck is a check of demand against capacity, both in the quantity's SI: tight above nearly, gives way above 1.
func lineCheck(id, path string, q unit.Quantity, demand, capacity, nearly float64) LineCheck {
	c := LineCheck{ID: id, Path: path, Quantity: q, Demand: demand, Capacity: capacity, Word: Holds}
	if capacity <= 0 {
		c.Word = NotKnown
		return c
	}
	use := demand / capacity
	c.Use = unit.Of(unit.Ratio(use))
	switch {
	case use > 1:
		c.Word = GivesWay
	case use > nearly:
		c.Word = Tight
	}
	return c
}

// usualNearly is the use above which a check is tight; of a fuse it is fuseNearly, for its rating should be 1.25 times its
// current (common practice).
const (
	usualNearly = 0.9
	fuseNearly  = 0.8
)
