package ready

import (
	"fmt"
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// lifts are the reasons of the drive: it stalls, does not come down, races, needs a push, or cannot be computed.
func lifts(c Case) []reason.Reason {
	out := c.moving(moves)
	h := c.Hoist
	if h.Raise.Feed == "" {
		out = append(out, open("lift_stalls", "raise.feed", say.That("What feeds the motor by day is not known.")))
	}
	if h.Machine.I0WithGear != unit.Yes {
		for i, s := range h.Train.Stages {
			if !s.IdleTorque.Is {
				out = append(out, open("stays_up", fmt.Sprintf("train.stages[%d].idle_torque_nm", i),
					say.That("The torque that turns gear stage %s empty is not known. Measure the current without load with the gears on.", i+1)))
			}
		}
	}
	return out
}

// moves is what one mass does on its way up and down.
func moves(w Work) []reason.Reason {
	var out []reason.Reason
	up, down := w.Drive.Raising, w.Drive.Lowering
	switch {
	case !up.Known:
		out = append(out, open("lift_stalls", "raise.voltage_v", say.That("Whether the hoist lifts is not known.")))
	case up.Gearless: // label_gear says it
	case up.Stalls || !up.Starts:
		out = append(out, no("lift_stalls", "raise.voltage_v", up.Say.Or(say.That("The motor stalls: it does not lift this mass."))))
	}
	switch {
	case !down.Known:
		out = append(out, open("stays_up", "lower.loads", say.That("Whether the mass comes down by itself is not known.")))
	case down.RunsBack == lift.DownNo:
		out = append(out, no("stays_up", "train.stages", down.Say.Or(say.That("It does not come down by itself: it stays stuck."))))
	case !down.Steady:
		out = append(out, no("races", "lower.loads", down.Say.Or(say.That("The mass runs away: the loads do not hold its speed."))))
	case down.Short:
		out = append(out, no("races", "lower.loads", say.That("The mass runs away all the way down: the travel ends before the loads hold its speed.")))
	case down.RunsBack != lift.DownYes:
		out = append(out, open("needs_push", "train.stages", say.That("The mass comes down only with a push: do not count on that until you have tried it.")))
	}
	return out
}

// ratings are what the drive says against hanging it, and what year and panels say of the plan.
func ratings(c Case) []reason.Reason {
	told := map[string]bool{}
	out := c.moving(func(w Work) []reason.Reason { return flags(w.Drive) })
	for _, r := range out {
		told[r.ID+r.Path] = true
	}
	for _, r := range flags(c.Plan.Drive) {
		if (r.ID == "never_lifts" || r.Path == "raise.feed") && !told[r.ID+r.Path] {
			out = append(out, r)
		}
	}
	return out
}

// flags are the bad flags of a drive that moves does not say already.
func flags(d lift.Drive) []reason.Reason {
	var out []reason.Reason
	for _, f := range d.Flags {
		if f.Bad && !f.Say.Is(d.Raising.Say) && !f.Say.Is(d.Lowering.Say) {
			out = append(out, no(flagID(f), f.Path, f.Say))
		}
	}
	return out
}

// flagID is the id of a flag of the drive.
func flagID(f lift.Flag) string {
	switch {
	case f.ID != "":
		return f.ID
	case strings.HasPrefix(f.Path, "raise."):
		return "lift_stalls"
	}
	return "load_rating"
}

// loadUnknown are loads on the motor whose rating nobody gave.
func loadUnknown(c Case) []reason.Reason {
	var out []reason.Reason
	for i, l := range c.Hoist.Lower.Loads {
		if !l.MaxCurrent.Is {
			out = append(out, open("load_unknown", fmt.Sprintf("lower.loads[%d].rated_current_a", i),
				say.That("What current load %s withstands is not known. When a load burns out, the mass runs away.", i+1)))
		}
	}
	return out
}

// motorUnknown are the values of the motor that decide whether it burns out or breaks up while the mass hangs on it.
func motorUnknown(c Case) []reason.Reason {
	var out []reason.Reason
	m := c.Hoist.Machine
	for _, x := range []struct {
		is   bool
		path string
	}{{m.RthWinding.Is, "machine.rth_winding_k_w"}, {m.TauWinding.Is, "machine.tau_winding_s"}} {
		if !x.is {
			out = append(out, open("motor_unknown", x.path, say.That("How hot the motor gets is not known: give its thermal values, or those of a motor of its size.")))
			break
		}
	}
	if most, _ := m.MostSpeed(); !most.Is {
		out = append(out, open("motor_unknown", "machine.max_speed_rad_s", say.That("How fast the motor may turn is not known. Look at its sheet, or give its label: volts, and speed without load.")))
	}
	return out
}

// brakePower is a coil that holds the brake open and takes no power here.
func brakePower(c Case) []reason.Reason {
	h := c.Hoist.Holds
	if h.BrakeRelease != "" && h.BrakeRelease != lift.ReleaseCoil {
		return nil
	}
	brake := false
	for _, x := range h.Holds {
		brake = brake || x.Kind == lift.HoldSpringBrake
	}
	none := func(p unit.Known[unit.Power]) bool { return !p.Is || p.Val == 0 }
	path := "lower.auxiliary_w"
	if none(c.Hoist.Raise.Auxiliary) {
		path = "raise.auxiliary_w"
	}
	if !brake || !none(c.Hoist.Raise.Auxiliary) && !none(c.Hoist.Lower.Auxiliary) {
		return nil
	}
	return []reason.Reason{{ID: "brake_power", Word: reason.NotKnown, Path: path, Clears: reason.Answer,
		Say:    say.That("A coil holds the spring brake open while the mass moves, and its power is 0 here."),
		Mend:   say.That("Give the watts of the coil, up and down, or choose that the brake is held open by hand."),
		Source: source.Derivation.Whole()}}
}

// shunt is a resistor or clamp wired to the motor for good: whatever opens then, the mass does not run away. The list of
// loads counts, whatever was answered beside it.
func shunt(c Case) []reason.Reason {
	best, worst := false, false
	path := "lower.loads"
	for i, l := range c.Hoist.Lower.Loads {
		if l.Kind != lift.LoadResistor && l.Kind != lift.LoadClamp {
			continue
		}
		worst = worst || l.Permanent == unit.Yes
		best = best || l.Permanent != unit.No
		if l.Permanent == "" {
			path = fmt.Sprintf("lower.loads[%d].permanent", i)
		}
	}
	w := reason.Tried(!best, !worst)
	if w == reason.Yes {
		return nil
	}
	return []reason.Reason{{ID: "shunt", Word: w, Path: path, Clears: answerOr(w),
		Say:    say.That("If the motor's circuit breaks anywhere, the mass runs away. No resistor or clamp is wired permanently to the motor."),
		Mend:   say.That("Wire one straight to the motor, with no fuse, switch or plug, and enter it in the list of loads."),
		Source: source.Derivation.Whole()}}
}

// answerOr is what clears a reason of this word: an answer, or a change of the plan.
func answerOr(w reason.Word) reason.Clears {
	if w == reason.NotKnown {
		return reason.Answer
	}
	return reason.Change
}

// no is a reason that a change of the plan clears.
func no(id, path string, s say.Sentence) reason.Reason {
	return reason.Reason{ID: id, Word: reason.No, Path: path, Say: s, Clears: reason.Change, Source: source.Derivation.Whole()}
}

// open is a reason that an answer clears.
func open(id, path string, s say.Sentence) reason.Reason {
	return reason.Reason{ID: id, Word: reason.NotKnown, Path: path, Say: s, Clears: reason.Answer, Source: source.Derivation.Whole()}
}

func first(list []string) string {
	if len(list) == 0 {
		return ""
	}
	return list[0]
}

func capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-32) + s[1:]
}
