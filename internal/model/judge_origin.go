package model

import (
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/say"
)

// typicalValues are the values of a hoist that are usual elsewhere and not yet the builder's own. A plan that rests on one
// is not ready: the sheet is for the thing that hangs, and what is usual does not hang there.
func typicalValues(j judgement) []reason.Reason {
	var out []reason.Reason
	for i, s := range j.result.Stores {
		if HoistOf(s) == nil {
			continue
		}
		paths := j.variant.typicalPaths(i)
		if len(paths) == 0 {
			continue
		}
		text := say.That("One typical value counts as if it were true of your hoist.")
		if n := len(paths); n > 1 {
			text = say.That("%s typical values count as if they were true of your hoist.", n)
		}
		out = append(out, reason.Reason{ID: "typical", Word: reason.NotKnown, Path: paths[0], Clears: reason.Answer, Say: text,
			Mend: say.That("Confirm them on its page, or type your own."), Source: source.Judgement.Whole()})
	}
	return out
}

// measuredDiffers is a last lift or a last way down far beside the plan.
func measuredDiffers(j judgement) []reason.Reason {
	var out []reason.Reason
	for i, s := range j.result.Stores {
		h := HoistOf(s)
		if h == nil {
			continue
		}
		for _, text := range doubts(bySupply(h.Design)) {
			out = append(out, reason.Reason{ID: "measured_differs", Word: reason.NotKnown, Path: Join(HoistPath(i), "trials"), Clears: reason.Change,
				Say: say.That("%s", text), Source: source.Judgement.Whole()})
		}
	}
	return out
}
