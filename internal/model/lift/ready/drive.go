package ready

import (
	"fmt"
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/say"
)

// checks are the lines of the load path that give way or are not known. What is not known since a fall or a shock is
// said once, by shock.
func checks(c Case) []reason.Reason {
	var out []reason.Reason
	for _, k := range c.Checks {
		r := reason.Reason{ID: k.ID, Path: first(k.Missing), Use: k.Use, Source: k.Source}
		switch {
		case k.Word == path.GivesWay:
			r.Word, r.Clears, r.Say = reason.No, reason.Change, say.That("Gives way: %s. %s", k.Part, k.Say)
		case k.Word == path.NotKnown && !shaken(k):
			r.Word, r.Clears, r.Say = reason.NotKnown, reason.Answer, say.That("%s. %s", capital(k.Part), k.Say)
		default:
			continue
		}
		out = append(out, r)
	}
	if len(c.Checks) == 0 {
		out = append(out, open("not_computed", "", say.That("Nothing was checked.")))
	}
	return out
}

// shaken reports whether a line waits for a look after a fall or a shock.
func shaken(k path.Check) bool {
	for _, p := range k.Missing {
		if strings.HasPrefix(p, "trials.failures[") {
			return true
		}
	}
	return false
}

// lifts are the reasons of the drive: it stalls, does not come down, races, needs a push, or cannot be computed.
func lifts(c Case) []reason.Reason {
	var out []reason.Reason
	up, down := c.Drive.Raising, c.Drive.Lowering
	if up.Known && (up.Stalls || !up.Starts) {
		out = append(out, no("lift_stalls", "raise.voltage_v", orElse(up.Say, "The motor stalls: it does not lift this mass.")))
	}
	switch {
	case !down.Known:
		out = append(out, open("stays_up", "lower.loads", say.That("Whether it comes down by itself is not known.")))
	case down.RunsBack == "no":
		out = append(out, no("stays_up", "train.stages", orElse(down.Say, "It does not come down by itself: it stays stuck.")))
	case !down.Steady:
		out = append(out, no("races", "lower.loads", orElse(down.Say, "It races: the loads do not hold the speed.")))
	case down.Short:
		out = append(out, no("races", "lower.loads", "It races the whole way down: the travel ends before the loads hold its speed."))
	case down.RunsBack != "yes":
		out = append(out, open("needs_push", "train.stages", say.That("It comes down only with a push: do not count on it until it was tried.")))
	}
	if !up.Known {
		out = append(out, open("lift_stalls", "raise.voltage_v", say.That("Whether it lifts is not known.")))
	}
	if c.Hoist.Raise.Feed == "" {
		out = append(out, open("lift_stalls", "raise.feed", say.That("What feeds the motor by day is not known.")))
	}
	if c.Hoist.Machine.I0WithGear != "yes" {
		for i, s := range c.Hoist.Train.Stages {
			if !s.IdleTorque.Is {
				out = append(out, open("stays_up", fmt.Sprintf("train.stages[%d].idle_torque_nm", i),
					say.That("What it takes to turn gear stage %s empty is not known. Measure the current without load with the gears on.", i+1)))
			}
		}
	}
	return out
}

// ratings are what the drive says against hanging it, and loads whose rating nobody gave.
func ratings(c Case) []reason.Reason {
	var out []reason.Reason
	told := map[string]bool{c.Drive.Raising.Say: true, c.Drive.Lowering.Say: true}
	for _, f := range c.Drive.Flags {
		if f.Bad && !told[f.Say] {
			told[f.Say] = true
			out = append(out, no(flagID(f), f.Path, f.Say))
		}
	}
	for i, l := range c.Hoist.Lower.Loads {
		if !l.MaxCurrent.Is {
			out = append(out, open("load_unknown", fmt.Sprintf("lower.loads[%d].rated_current_a", i),
				say.That("What current load %s withstands is not known. A load that burns out lets the mass go.", i+1)))
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

// motorUnknown are the values of the motor that decide whether it burns out or breaks up while the mass hangs on it.
func motorUnknown(c Case) []reason.Reason {
	var out []reason.Reason
	m := c.Hoist.Machine
	if !m.RthWinding.Is || !m.TauWinding.Is || !m.MaxWinding.Is {
		out = append(out, open("motor_unknown", "machine.rth_winding_k_w", say.That("How hot the motor gets is not known: give its thermal values, or those of a motor of its size.")))
	}
	if !m.MaxSpeed.Is {
		out = append(out, open("motor_unknown", "machine.max_speed_rad_s", say.That("How fast the motor may turn is not known: look at its sheet.")))
	}
	return out
}

// no is a reason that a change of the plan clears.
func no(id, path, text string) reason.Reason {
	return reason.Reason{ID: id, Word: reason.No, Path: path, Say: say.That("%s", text), Clears: reason.Change, Source: source.Derivation.Whole()}
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
