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

// Case is what the rules look at: a hoist as it was designed, and with all that hangs as light and as heavy as its weighing
// allows.
type Case struct {
	Hoist        lift.Hoist
	Plan         Work // as designed; its flags hold what the year says of it, too
	Light, Heavy Work
	High         *[2]Work // Light and Heavy with the greatest drop at the motor's brushes; nil where one drop is known. Light and Heavy have the least one then
	Hazards      path.Hazards
	On           reason.Day // the day that proofs are looked at; empty is not known, and then no proof counts
	usual        [][2]Work  // Light and Heavy with each motor that may be there instead of usual values
	hub          bool       // which are those of a direct-drive wheel hub
}

// Work is what a hoist with one mass comes to.
type Work struct {
	Hoist  lift.Hoist
	Drive  lift.Drive
	Checks []path.Check
}

// New makes a case of a hoist and what it was computed to.
func New(h lift.Hoist, d lift.Drive, checks []path.Check, z path.Hazards, on reason.Day) Case {
	c := Case{Hoist: h, Plan: Work{h, d, checks}, Hazards: z, On: on}
	low, high := h, h
	if d.Machine.BrushHigh.Is {
		low, high = h.WithBrush(d.Machine.BrushLow.Val), h.WithBrush(d.Machine.BrushHigh.Val)
		c.High = &[2]Work{worked(weighed(high, -1)), worked(weighed(high, 1))}
	}
	c.Light, c.Heavy = worked(weighed(low, -1)), worked(weighed(low, 1))
	return c
}

func worked(h lift.Hoist) Work {
	d := lift.Compute(h)
	return Work{h, d, path.Checks(h, d)}
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
		{"hub_and_coupling", hubAndCoupling},
		{"lift", lifts},
		{"ratings", ratings},
		{"load_unknown", loadUnknown},
		{"motor_unknown", motorUnknown},
		{"shock", shock},
		{"holds_count", holdsCount},
		{"holds_drum", holdsDrum},
		{"holds_independent", holdsIndependent},
		{"holds_auto", holdsAuto},
		{"overspeed", overspeed},
		{"free_drum", freeDrum},
		{"brake_power", brakePower},
		{"shunt", shunt},
		{"geometry", geometry},
		{"contradiction", contradictions},
		{"bracing", bracing},
		{"people_ride", peopleRide},
		{"people_near", peopleNear},
		{"people_below", peopleBelow},
		{"floor_below", floorBelow},
		{"keep_out", keepOut},
		{"owner", owner},
		{"helper", helper},
		{"self_start", selfStart},
		{"way_down", wayDown},
		{"motor_hot", motorHot},
		{"motor_mixed", motorMixed},
		{"label_gear", labelGear},
		{"step_failed", failedSteps},
		{"stayed", stayed},
	}
}
