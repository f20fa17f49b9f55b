package model

import (
	"slices"

	"duskweight/internal/model/reason"
)

// RuleNames are the names of all rules.
func RuleNames() []string {
	var out []string
	for _, r := range rules() {
		out = append(out, r.name)
	}
	return out
}

// JudgeWithout judges a variant as Judge does, with one rule switched off.
func JudgeWithout(name string, g Ground, v Variant, r *VariantResult, on reason.Day) Readiness {
	return judgeBy(slices.DeleteFunc(rules(), func(r rule) bool { return r.name == name }), judgementOf(g, v, r, on))
}
