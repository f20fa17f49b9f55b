package path

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// holdsChecks: two named holds that do not depend on each other, one of them on the drum, each for 125 % of the load or
// more. Motor, gears, joined wires, lamps and belts are none. One line counts them, and each has a line of its own.
func holdsChecks(t *loads) []*Check {
	named := namedHolds(t.h)
	l := newLine("holds", TwoHolds, "holds named ≥ 2, one of them on the drum", source.Platforms.At("primary and secondary brake"))
	l.add("holds that do not depend on each other", unit.Pieces, 1, float64(len(named)), 2, 2)
	mend := always("Name two, one of them on the drum: a spring-set brake and a ratchet, for example. Motor, gears, joined wires and lamps hold nothing.")
	drum := onDrum(named)
	switch {
	case len(named) >= 2 && drum == "no":
		l.add("holds on the drum", unit.Pieces, 1, 0, 1, 1)
		mend = always("One of them must act on the drum itself, with nothing printed, no belt and no set screw between.")
	case len(named) >= 2 && drum == "":
		for i, x := range t.h.Holds.Holds {
			if x.OnDrum == "" {
				l.miss(at("holds.holds", i, "on_drum"))
			}
		}
		mend = always("Say which of them acts on the drum itself.")
	}
	c := l.verdict()
	tell(c, verbs{}, mend)
	countSay(c, holdsSay(len(named)), mend)
	out := []*Check{c}
	for i, x := range t.h.Holds.Holds {
		if h := t.holdCheck(i, x); h != nil {
			out = append(out, h)
		}
	}
	return out
}

// onDrum is "yes" when one acts on the drum, "no" when all are said not to, "" otherwise.
func onDrum(holds []lift.Hold) string {
	all := true
	for _, x := range holds {
		if x.OnDrum == unit.Yes {
			return "yes"
		}
		all = all && x.OnDrum == unit.No
	}
	if all {
		return "no"
	}
	return ""
}

// countSay replaces the numbers of a counted line by words.
func countSay(c *Check, said say.Sentence, mend remedy) {
	switch c.Word {
	case GivesWay:
		c.Say = say.Join(said, mend.now())
	case Holds, Tight:
		c.Say = said
	}
}

func holdsSay(n int) say.Sentence {
	if n < 2 {
		return say.That("%s named that holds the mass.", countWords(n))
	}
	return say.That("%s named that hold the mass.", countWords(n))
}

func countWords(n int) say.Sentence {
	switch n {
	case 0:
		return say.That("Nothing is")
	case 1:
		return say.That("Only one thing is")
	case 2:
		return say.That("Two things are")
	}
	return say.That("%s things are", n)
}

func holdName(kind lift.HoldKind) string {
	switch kind {
	case lift.HoldSpringBrake:
		return "the spring-set brake"
	case lift.HoldRatchet:
		return "the ratchet"
	case lift.HoldRatedProp:
		return "the rated prop"
	case lift.HoldLockingPin:
		return "the locking pin"
	case lift.HoldOverspeedCatch:
		return "the overspeed catch"
	case lift.HoldLoadArrester:
		return "the load arrester"
	}
	return ""
}

// holdCheck sets one hold's torque at the drum, or the load it holds directly, against the greatest static torque or
// load: 125 % is wanted.
func (t *loads) holdCheck(i int, x lift.Hold) *Check {
	name := holdName(x.Kind)
	if name == "" {
		return nil
	}
	l := newLine("holds", name, "holding torque ≥ 1.25 · torque at the drum, or holding force ≥ 1.25·m·g", source.Platforms.At("125 % of capacity")).of(rowOf("holds.holds", i))
	q, okQ := x.Torque.Value()
	f, okF := x.Force.Value()
	torque, okT := t.d.DrumTorqueUp.Value()
	switch {
	case okQ && okT:
		l.in("torque at the drum, raising", float64(torque), unit.NewtonMetres)
		l.add("at rest", unit.NewtonMetres, float64(torque), float64(q), 1.25, 1.25)
	case okF && t.m > 0:
		l.in("weight of the mass", t.weight(), unit.Newtons)
		l.add("at rest", unit.Newtons, t.weight(), float64(f), 1.25, 1.25)
	case okQ || (okF && t.m == 0):
		l.miss(t.missing...)
		if !t.h.Drum.Diameter.Is {
			l.miss("drum.diameter_m")
		}
		l.miss("")
	case x.Kind == lift.HoldRatedProp || x.Kind == lift.HoldLockingPin || x.Kind == lift.HoldLoadArrester:
		l.miss(at("holds.holds", i, "force_n"))
	default:
		l.miss(at("holds.holds", i, "torque_nm"))
	}
	c := l.verdict()
	tell(c, must, always("It must hold 125 % of the load. Test it with a dead weight, close to the ground."))
	return c
}

// stopsChecks: two upper stops, the second by a path of its own. Limit switches and a mechanical stop count; a timer, a
// mark on the rope and a limit on the current do not end the travel by themselves.
func stopsChecks(t *loads) []*Check {
	counted, own, open := 0, 0, []string(nil)
	for i, s := range t.h.Holds.UpperStops {
		switch s.Kind {
		case lift.StopLimitSwitch, lift.StopSecondLimitSwitch, lift.StopMechanical:
			counted++
			switch s.Path {
			case unit.Yes:
				own++
			case "":
				open = append(open, at("holds.upper_stops", i, "own_path"))
			}
		}
	}
	independent := own
	if counted > own {
		independent++
	}
	l := newLine("stops", "the two upper stops", "independent upper stops ≥ 2", source.CommonPractice.At("working and ultimate limits"))
	mend := always("Name two; the second must cut the power by a path of its own. A timer, a rope mark or a current limit does not count.")
	if independent < 2 && counted >= 2 && len(open) > 0 {
		l.miss(open...)
		independent = 2
		mend = always("Answer whether each stop cuts the power by a path of its own.")
	}
	l.add("upper stops that do not depend on each other", unit.Pieces, 1, float64(independent), 2, 2)
	c := l.verdict()
	tell(c, verbs{}, mend)
	said := say.That("%s named that stops the mass at the top by itself.", countWords(independent))
	if independent >= 2 {
		said = say.That("%s named that stop the mass at the top.", countWords(independent))
	}
	countSay(c, said, mend)
	return []*Check{c}
}

// TwoHolds is the part of the line that counts the holds.
const TwoHolds = "the two holds"
