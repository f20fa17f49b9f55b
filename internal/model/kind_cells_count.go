package model

import (
	"duskweight/internal/model/cell"
	"duskweight/internal/model/unit"
)

// A bank as it is bought: in equal blocks, a whole string at once.

func blocks(s Store) (n, step int) {
	step = int(s.Cells.Series.Or(1))
	return step * int(s.Cells.Parallel.Or(1)), step
}

func withBlocks(s Store, n int) Store {
	b := *s.Cells
	b.Parallel = unit.Of(unit.Count(n / int(b.Series.Or(1))))
	return Store{Cells: &b}
}

// longestLife is how long cells of the kind last at the most.
func longestLife(p Part) (none unit.Known[unit.Duration]) {
	c := p.(*CellsResult)
	if c.Resolved.WhyNot != "" {
		return none
	}
	return unit.Of(unit.Duration(c.Resolved.Kind.Ages.Cap) * cell.Year)
}
