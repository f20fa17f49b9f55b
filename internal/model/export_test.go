package model

import (
	"slices"

	"duskweight/internal/model/reason"
)

// RuleNames are the names of all rules of a variant with a store of each kind.
func RuleNames() []string {
	var out []string
	for _, all := range [][]rule{rules(), (&HoistResult{}).Rules(judgement{}, 0), (&CellsResult{}).Rules(judgement{result: &VariantResult{Stores: make([]StoreResult, 1)}}, 0)} {
		for _, r := range all {
			out = append(out, r.name)
		}
	}
	return out
}

// JudgeWithout judges a variant as Judge does, with one rule switched off.
func JudgeWithout(name string, g Ground, v Variant, r *VariantResult, on reason.Day) Readiness {
	j := judgement{g, v, r, on}
	return judgeBy(slices.DeleteFunc(allRules(j), func(r rule) bool { return r.name == name }), j)
}
