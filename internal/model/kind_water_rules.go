package model

import (
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/water"
	"duskweight/internal/say"
)

// Rules are those of a store of water: that it can be computed and has water below, and what of it may hurt somebody.
func (w *WaterResult) Rules(j judgement, i int) []rule {
	out := []rule{
		{"not_computed", func(j judgement) []reason.Reason { return w.open(j.result.Stores[i].WhyNot) }},
		{"lower_water", func(judgement) []reason.Reason { return lowerWater(w.Resolved.Design.Lower) }},
	}
	for _, c := range w.Checks {
		out = append(out, rule{c.ID, func(judgement) []reason.Reason { return waterCheck(c) }})
	}
	return out
}

// open is a store that cannot be computed: its reason leads to the first input that is missing, or to the water below that it lacks.
func (w *WaterResult) open(whyNot string) []reason.Reason {
	out := bankOpen(whyNot)
	for i := range out {
		out[i].Path = "lower_water"
		if len(w.Resolved.Missing) > 0 && w.Resolved.Design.Lower != water.LowerNone {
			out[i].Path = w.Resolved.Missing[0].Path
		}
	}
	return out
}

// waterCheck is a check of the water that does not hold.
func waterCheck(c water.Check) []reason.Reason {
	if c.Word == reason.Yes {
		return nil
	}
	r := reason.Reason{ID: c.ID, Word: c.Word, Path: c.Path, Say: c.Say, Mend: c.Mend, Clears: c.Clears, Source: c.Source}
	if c.Word == reason.No {
		r.Use = c.Use
	}
	return []reason.Reason{r}
}

// lowerWater is a store of which nobody said where the pump finds its water.
func lowerWater(l water.Lower) []reason.Reason {
	if l != "" {
		return nil // none is said by not_computed
	}
	return []reason.Reason{ask("lower_water", "lower_water", source.Derivation.Whole(), say.That("Where the pump gets its water is not known. A pump that runs dry breaks."), say.That("Say whether a tank or a stream is below."))}
}
