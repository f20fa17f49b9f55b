package path

import (
	"cmp"
	"math"
	"slices"
)

// Sort puts what breaks first at the top: gives way, not known, tight, holds; by use inside each, the largest first.
// A check that gives way without a finite use (nothing is there to bear the load) comes before all others.
func Sort(checks []Check) {
	slices.SortStableFunc(checks, func(a, b Check) int {
		if c := cmp.Compare(rank(a.Word), rank(b.Word)); c != 0 {
			return c
		}
		return cmp.Compare(weightOf(b), weightOf(a))
	})
}

func rank(w Word) int {
	switch w {
	case GivesWay:
		return 0
	case NotKnown:
		return 1
	case Tight:
		return 2
	}
	return 3
}

func weightOf(c Check) float64 {
	switch {
	case c.Use.Is:
		return float64(c.Use.Val)
	case c.Word == GivesWay:
		return math.Inf(1)
	}
	return -1
}
