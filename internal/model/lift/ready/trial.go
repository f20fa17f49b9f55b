package ready

import (
	"strings"

	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// shock is said after a fall or a shock, until every part of the load path was looked at: it forbids even the first step.
func shock(c Case) []reason.Reason {
	at := ""
	var parts []string
	for _, k := range c.Heavy.Checks {
		if shaken(k) {
			parts = append(parts, k.Part)
			for _, p := range k.Missing {
				if at == "" && strings.HasPrefix(p, "trials.failures[") {
					at = p
				}
			}
		}
	}
	if len(parts) == 0 {
		return nil
	}
	return []reason.Reason{{ID: "shock", Word: reason.NotKnown, Path: at, Clears: reason.Answer, Forbids: true,
		Say:    say.That("The mass fell or jerked, and these parts were not looked at since: %s.", strings.Join(parts, ", ")),
		Mend:   say.That("Look at each of them, then say what you found under Tests and repairs."),
		Source: source.CommonPractice.At("after a fall or a shock")}}
}

// failedSteps are the load steps that did not pass.
func failedSteps(c Case) []reason.Reason {
	var out []reason.Reason
	for _, s := range c.Hoist.Trials.Steps.Named() {
		if s.Step.Done == unit.No {
			out = append(out, reason.Reason{ID: "step_failed", Word: reason.No, Path: "trials.steps." + s.Key + ".done", Clears: reason.Change,
				Say:    say.That("The load step %s did not pass.", s.Name),
				Mend:   say.That("Find out what moved, slipped or got hot, mend it, and load it anew from the smallest step."),
				Source: source.CommonPractice.Whole()})
		}
	}
	return out
}

// stayed are masses that did not come down in a trial although the plan says that this one does: what was seen counts.
func stayed(c Case) []reason.Reason {
	least, ok := c.Light.Drive.Mass.Value()
	l := c.Hoist.Trials.Least
	var out []reason.Reason
	add := func(id, path string, m unit.Mass, s string) {
		out = append(out, reason.Reason{ID: id, Word: reason.NotKnown, Path: path, Clears: reason.Change, Source: source.Derivation.Whole(),
			Say:  say.That(s, say.Mass(m), say.Mass(least)),
			Mend: say.That("Find out what holds it, or correct the reading.")})
	}
	if l.PushStays.Is && ok && l.PushStays.Val >= least {
		add("stays_up", "trials.least.push_stays_kg", l.PushStays.Val, "A mass of %s stayed where it was although it was pushed, and this one may weigh only %s.")
	}
	if l.AloneStays.Is && ok && l.AloneStays.Val >= least {
		add("needs_push", "trials.least.alone_stays_kg", l.AloneStays.Val, "A mass of %s did not come down by itself, and this one may weigh only %s.")
	}
	return out
}
