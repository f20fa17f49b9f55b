package model_test

import (
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
)

// A day after the day of judgement is refused at its own field, in every kind of record; that day itself and a date in words
// are not.
func TestDaysThatHaveNotCome(t *testing.T) {
	h := lift.Hoist{}
	h.Trials.Proofs = []lift.Proof{{Date: "2026-11-28"}, {Date: "2026-11-29"}}
	h.Trials.Failures = []lift.Failure{{Date: "2030-01-01"}, {Date: "next spring"}}
	h.Trials.Steps.S50.Date = "2026-12-01"
	v := model.Variant{Name: "Yard", Stores: []model.Store{{Hoist: &h}}}
	late := map[string]bool{}
	for _, p := range model.CheckVariantOn(v, "2026-11-28")[len(model.CheckVariant(v)):] {
		late[p.Path] = true
	}
	for _, path := range []string{"proofs[1]", "failures[0]", "steps.at_50"} {
		if !late["stores[0].hoist.trials."+path+".date"] {
			t.Errorf("%s is not refused: %v", path, late)
		}
	}
	if len(late) != 3 {
		t.Errorf("refused: %v", late)
	}
	if n := len(model.CheckVariantOn(v, "")); n != len(model.CheckVariant(v)) {
		t.Errorf("refused though the day is not known")
	}
}
