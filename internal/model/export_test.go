package model

import "duskweight/internal/model/reason"

// RuleNames are the names of all rules.
func RuleNames() []string {
	var out []string
	for _, r := range rules() {
		out = append(out, r.name)
	}
	return out
}

// JudgeWithout judges as Judge does, without the rule of one name.
func JudgeWithout(name string, g Ground, v Variant, r *VariantResult, on reason.Day) Readiness {
	var some []rule
	for _, one := range rules() {
		if one.name != name {
			some = append(some, one)
		}
	}
	return judgeBy(some, judgementOf(g, v, r, on))
}
