package model

import (
	"slices"

	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/lift/ready"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// aboutHolds are the ids of the judge's reasons that decide the line of the holds.
var aboutHolds = []string{"holds_count", "holds_drum", "holds_independent"}

// Lines are the checks of the load path as a page lists them. The line of the two holds counts what the judge counts, and
// has the judge's word: a prop or a pin is no hold of a mass that moves. Where it does not hold it stands first.
func (h *HoistResult) Lines() []path.Check {
	out := slices.Clone(h.Checks)
	i := slices.IndexFunc(out, func(c path.Check) bool { return c.ID == "holds" && c.Part == path.TwoHolds })
	if i < 0 {
		return out
	}
	line := h.holdsLine(out[i])
	out[i] = line
	if line.Word == path.GivesWay || line.Word == path.NotKnown {
		out = slices.Insert(slices.Delete(out, i, i+1), 0, line)
	}
	return out
}

// holdsLine is the line of the two holds as the judge sees them.
func (h *HoistResult) holdsLine(c path.Check) path.Check {
	n, own, had := ready.Counted(h.Design), c.Say, c.Word
	c.Formula, c.Cases, c.Word = "holds of a mass that moves ≥ 2, sharing no part, one of them on the drum", nil, path.Holds
	c.Capacity.Is, c.Capacity.Val = true, float64(n)
	c.Say = say.That("%s hold a mass that moves.", say.Plural(n, "thing", "things"))
	if c.Use = (unit.Known[unit.Ratio]{}); n > 0 {
		c.Use = unit.Of(unit.Ratio(float64(c.Wanted) / float64(n)))
	}
	for _, b := range h.Because {
		if !slices.Contains(aboutHolds, b.ID) {
			continue
		}
		word := path.NotKnown
		if b.Word == reason.No {
			word = path.GivesWay
		}
		if c.Say = b.Text(); had == word { // with props and pins it does not hold either: its own sentence says what to name
			c.Say = own
		}
		c.Word = word
		break // the worst stands first
	}
	return c
}

// FallZone is the word of its closed fall zone: whether a mass that may fall does so where nobody can be.
func (h *HoistResult) FallZone() reason.Word { return h.readyCase("").FallZone() }

// LoadTests are the tests that would clear what is not known of parts that nobody rates, in the order of the reasons, for each
// part one for each material.
func (h *HoistResult) LoadTests() []ready.Test {
	var out []ready.Test
	c, seen := h.readyCase(""), map[string]bool{}
	for _, r := range h.Because {
		if r.Word == reason.NotKnown && r.Clears == reason.Proof && !seen[r.ID] {
			seen[r.ID] = true
			out = append(out, c.Tests(r.ID)...)
		}
	}
	return out
}
