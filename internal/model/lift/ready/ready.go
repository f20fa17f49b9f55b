// Package ready holds the rules of readiness that look at one hoist alone, one file a subject. A rule is a small function
// from a hoist, with what it was computed to, to the reasons against hanging it; Rules lists them in the order of the rule
// book. What is not known is tried at its worst and at its best: bad at best is "no", bad only at worst is "not_known".
//
// Left out: fatigue; everything electrical beside the motor, which package model judges with the rest of the variant.
package ready

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
)

// Case is what the rules look at. Checks and Hazards are those of the drive.
type Case struct {
	Hoist   lift.Hoist
	Drive   lift.Drive
	Checks  []path.Check
	Hazards path.Hazards
	On      reason.Day // the day that proofs are looked at; empty is not known, and then no proof counts
}

// Rule is one rule with the name that the table of rules gives it.
type Rule struct {
	Name string
	Look func(Case) []reason.Reason // paths inside the hoist
}

// Rules are the rules of a hoist in the order of the rule book.
func Rules() []Rule {
	return []Rule{
		{"checks", checks},
		{"lift", lifts},
		{"ratings", ratings},
		{"motor_unknown", motorUnknown},
		{"shock", shock},
		{"motor_hot", motorHot},
		{"motor_mixed", motorMixed},
		{"step_failed", failedSteps},
	}
}

// Look asks some rules in turn.
func Look(rules []Rule, c Case) []reason.Reason {
	var out []reason.Reason
	for _, r := range rules {
		out = append(out, r.Look(c)...)
	}
	return out
}
