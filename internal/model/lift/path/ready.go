package path

import (
	"fmt"
	"slices"

	"duskweight/internal/model/lift"
)

// Ready is the state of the plan sheet, "yes", "not_known" or "no", with the reasons, the first cause first.
//
// "no": a check gives way, a flag of the drive says do not hang, it stalls or does not start, does not come down by
// itself, races on its loads, or fewer than two holds are named. "not_known": none of these, but a check, the way up
// or the way down is not known, or how hot or how fast the motor gets or what the loads stand; or it comes down only
// with a push, one run already overheats the motor, or a load step did not pass. "yes" otherwise.
func Ready(checks []Check, d lift.Drive, h lift.Hoist) (state string, reasons []string) {
	if bad := reasonsAgainst(checks, d, h); len(bad) > 0 {
		return "no", bad
	}
	if open := append(reasonsOpen(checks, d, h), failedSteps(h.Trials.Steps)...); len(open) > 0 {
		return "not_known", open
	}
	return "yes", nil
}

func reasonsAgainst(checks []Check, d lift.Drive, h lift.Hoist) []string {
	var out []string
	for _, c := range sorted(checks) {
		if c.Word == GivesWay {
			out = append(out, "Gives way: "+c.Part+". "+c.Say)
		}
	}
	if d.Raising.Known && (d.Raising.Stalls || !d.Raising.Starts) {
		out = append(out, orElse(d.Raising.Say, "The motor stalls: it does not lift this mass."))
	}
	if d.Lowering.Known {
		switch {
		case d.Lowering.RunsBack == "no":
			out = append(out, orElse(d.Lowering.Say, "It does not come down by itself: it stays stuck."))
		case !d.Lowering.Steady:
			out = append(out, orElse(d.Lowering.Say, "It races: the loads do not hold the speed."))
		case d.Lowering.Short:
			out = append(out, "It races the whole way down: the travel ends before the loads hold its speed.")
		}
	}
	for _, f := range d.Flags {
		if f.Bad && !slices.Contains(out, f.Say) {
			out = append(out, f.Say)
		}
	}
	if n := len(namedHolds(h)); n < 2 && !slices.ContainsFunc(checks, func(c Check) bool { return c.ID == "holds" && c.Word == GivesWay }) {
		out = append(out, holdsSay(n)+" Two that do not depend on each other are needed.")
	}
	return out
}

func reasonsOpen(checks []Check, d lift.Drive, h lift.Hoist) []string {
	var out []string
	for _, c := range sorted(checks) {
		if c.Word == NotKnown {
			out = append(out, capital(c.Part)+". "+c.Say)
		}
	}
	if len(checks) == 0 {
		out = append(out, "Nothing was checked.")
	}
	if !d.Raising.Known {
		out = append(out, "Whether it lifts is not known.")
	}
	switch {
	case !d.Lowering.Known:
		out = append(out, "Whether it comes down by itself is not known.")
	case d.Lowering.RunsBack != "yes":
		out = append(out, "It comes down only with a push: do not count on it until it was tried.")
	}
	if (d.HeatUp.Known && d.HeatUp.TooHot) || (d.HeatDown.Known && d.HeatDown.TooHot) {
		out = append(out, "One run from cold already makes the motor too hot.")
	}
	return append(out, notTold(d, h)...)
}

// notTold are the things beside the checks that nobody told and that the hoist hangs on: what burns out or breaks up in
// the lowering loop lets the mass go.
func notTold(d lift.Drive, h lift.Hoist) []string {
	var out []string
	if len(d.Machine.Contradictions) > 0 {
		out = append(out, "The motor's numbers contradict each other. Measure again: which of them are right is not known.")
	}
	if h.Raise.Feed == "" {
		out = append(out, "What feeds the motor by day is not known.")
	}
	if m := h.Machine; !m.RthWinding.Is || !m.TauWinding.Is || !m.MaxWinding.Is {
		out = append(out, "How hot the motor gets is not known: give its thermal values, or those of a motor of its size.")
	}
	if !h.Machine.MaxSpeed.Is {
		out = append(out, "How fast the motor may turn is not known: look at its sheet.")
	}
	for i, l := range h.Lower.Loads {
		if !l.MaxCurrent.Is {
			out = append(out, fmt.Sprintf("What current load %d stands is not known. A load that burns out lets the mass go.", i+1))
		}
	}
	if h.Machine.I0WithGear != "yes" {
		for i, s := range h.Train.Stages {
			if !s.IdleTorque.Is {
				out = append(out, fmt.Sprintf("What it takes to turn gear stage %d empty is not known. Measure the current without load with the gears on.", i+1))
			}
		}
	}
	return out
}

func sorted(checks []Check) []Check {
	s := slices.Clone(checks)
	Sort(s)
	return s
}

// namedHolds are the named things that hold by themselves; motor, gears, joined wires, lamps and belts are none.
func namedHolds(h lift.Hoist) []lift.Hold {
	var out []lift.Hold
	for _, x := range h.Holds.Holds {
		switch x.Kind {
		case "spring_brake", "ratchet", "rated_prop", "locking_pin", "overspeed_catch":
			out = append(out, x)
		}
	}
	return out
}

func orElse(s, otherwise string) string {
	if s == "" {
		return otherwise
	}
	return s
}

func capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-32) + s[1:]
}
