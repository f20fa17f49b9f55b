package hoist

import (
	"slices"

	"duskweight/web/page"
)

// largeFigures are the rows of a tab that a builder looks for first, in this order.
var largeFigures = []string{
	"Lifts", "Time for one lift", "Current", "Energy for one lift",
	"Comes down by itself", "Time for one way down", "Power at the lamps", "Energy at the lamps",
	"Winding after one lift", "Must rest between", "Winding after one way down", "Times in a row, from cold",
}

// mostFigures is how many figures stand large on a tab.
const mostFigures = 4

// largest picks the figures of a tab that stand large; the first rows where none of those is there.
func largest(rows []page.PairView) []page.PairView {
	var out []page.PairView
	for _, name := range largeFigures {
		if i := slices.IndexFunc(rows, func(r page.PairView) bool { return r.Name == name }); i >= 0 && len(out) < mostFigures {
			out = append(out, rows[i])
		}
	}
	if len(out) == 0 {
		return rows[:min(len(rows), mostFigures)]
	}
	return out
}

// mild counts the flags that are only said.
func mild(flags []page.FlagView) int {
	n := 0
	for _, f := range flags {
		if !f.Bad {
			n++
		}
	}
	return n
}
