package path

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// handBreadth is the least room that must stay free above twice the stop distance, m.
const handBreadth = 0.1

// The lines of a missed upper stop.
const (
	roomAbove = "the room above the upper stop"
	stallRope = "the rope, if the mass runs past the upper stop"
	stallBase = "the base, if the mass runs past the upper stop"
)

// SlackFactor is the pull of a mass m caught by a rope of stiffness k after s metres of slack, as a multiple of its
// weight: 1 + √(1 + 2·s·k/(m·g)). 2 for no slack at all.
func SlackFactor(s, k, m float64) float64 { return 1 + math.Sqrt(1+2*s*k/(m*unit.G)) }

// StopFactor is the pull when a mass sinking at v is stopped dead by a brake, rope and beam of stiffness k giving way:
// 1 + (v/g)·√(k/m).
func StopFactor(v, k, m float64) float64 { return 1 + v/unit.G*math.Sqrt(k/m) }

// weakest is the rope's strength where it is least: its bends or its ending, aged, N.
func (t *loads) weakest() (float64, []string) {
	mbs, ok := t.h.Rope.BreakingLoad.Value()
	var miss []string
	if !ok {
		miss = append(miss, "rope.breaking_load_n")
	}
	share, okS := t.knot()
	if !okS {
		miss = append(miss, "rope.ending")
		share = 0.9 // the best there is: enough for "gives way" only
	}
	for j := range t.up {
		r, _ := t.bend(j)
		share = math.Min(share, BendShare(r))
	}
	age, _ := t.age()
	return float64(mbs) * share * age, miss
}

// eventLine begins a line that sets the rope against an event, wanted 2 on breaking.
func (t *loads) eventLine(id, part, formula string, src source.Ref) (*line, float64, bool) {
	l := newLine(id, part, formula, src)
	l.miss(t.missing...)
	cap, miss := t.weakest()
	l.miss(miss...)
	l.in("the rope where it is weakest", cap, unit.Newtons)
	return l, cap, t.h.Rope.BreakingLoad.Is && t.known()
}

// overhoistChecks: the room above the upper stop, and the rope when the stop is missed.
func overhoistChecks(t *loads) []*Check {
	return append([]*Check{t.roomCheck(), t.stallCheck()}, t.liftedBaseCheck()...)
}

// roomCheck: twice the stop distance v·t + v²/(2a), the rotor's inertia included, and a hand's breadth.
func (t *loads) roomCheck() *Check {
	l := newLine("overhoist", roomAbove, "2·(v·t + v²/(2·a)) + 0.1 m ≤ room above", source.CommonPractice.At("stop distance twice, and a hand's breadth")).of("holds.room_above_m")
	room, ok := t.h.Holds.RoomAbove.Value()
	if !ok {
		l.miss("holds.room_above_m")
	}
	s, okS := t.d.Overtravel.Value()
	if !okS {
		if !t.h.Holds.BrakeDelay.Is {
			l.miss("holds.brake_delay_s")
		}
		l.miss("")
		s = 0
	}
	l.in("stop distance", float64(s), unit.Metres)
	if ok {
		l.add("stopping at the top", unit.Metres, 2*float64(s)+handBreadth, float64(room), 1, 1)
	}
	c := l.verdict()
	tell(c, measures, change("Set the upper stop lower, or make the brake set sooner."))
	return c
}

// stallCheck: the stalled motor's pull through the train, and the swing of its rotor, v·√(k·J·c²), on the rope.
func (t *loads) stallCheck() *Check {
	l, cap, ok := t.eventLine("overhoist", stallRope, "2·(F_stall + v·√(k·J·c²)/n) ≤ strength left", source.Juvinall.At("impact"))
	l.of("rope.breaking_load_n")
	f, swing, miss := t.stalled()
	l.miss(miss...)
	if ok && t.d.StallRopePull.Is {
		l.in("pull of the stalled motor", f, unit.Newtons)
		l.in("swing of the rotor", swing, unit.Newtons)
		l.add("upper stop missed", unit.Newtons, f+swing, cap, 2, 2.5)
	}
	c := l.verdict()
	tell(c, pulls, always("Limit the current while lifting, and set two upper stops."))
	return c
}

// liftedBaseCheck: the stalled motor pulls the base up with the same force.
func (t *loads) liftedBaseCheck() []*Check {
	if !t.lifted() || !t.d.StallRopePull.Is || !t.known() || t.up[0] <= 0 {
		return nil
	}
	l, mb, up, _, okB := t.baseLine("overhoist", stallBase, "F_stall + v·√(k·J·c²)/n ≤ m_b·g", "equilibrium of the base")
	f, swing, miss := t.stalled()
	l.miss(miss...)
	if okB {
		l.in("pull of the stalled motor", f, unit.Newtons)
		l.in("swing of the rotor", swing, unit.Newtons)
		l.add("upper stop missed", unit.Newtons, up*(f+swing)/t.up[0], mb*unit.G, 1, 1.25)
	}
	c := l.verdict()
	tell(c, lifts, always("Limit the current while lifting, add weight, and set two upper stops."))
	return []*Check{c}
}

// slackChecks: with a slack switch the mass may fall by the stop distance, without one by more than anyone can tell: a
// hand's breadth is looked at, and what holds it then is still not known.
func slackChecks(t *loads) []*Check {
	l, cap, ok := t.eventLine("slack", "the rope, if it goes slack and then catches the mass", "2·T·(1 + √(1 + 2·s·k/(m·g))) ≤ strength left", source.Juvinall.At("suddenly applied load and impact"))
	mend := always("Fit a switch that stops the drum when the rope goes slack.")
	s := 0.0
	switch t.h.Holds.SlackSwitch {
	case unit.Yes:
		if o, is := t.d.Overtravel.Value(); is {
			s = float64(o)
		} else {
			l.miss("holds.brake_delay_s")
		}
		mend = change("Use a longer or softer rope, a stronger one, or make the drum stop sooner.")
	case unit.No:
		s = handBreadth
		l.miss("")
	default:
		l.miss("holds.slack_switch")
	}
	k, miss := t.stiffness(true)
	l.miss(miss...)
	if ok && t.m > 0 {
		x := 2.0
		if len(miss) == 0 {
			x = SlackFactor(s, k, t.m)
		}
		l.in("slack at the mass", s, unit.Metres)
		l.in("stiffness of rope and beam", k, unit.NewtonsAMetre)
		l.in("times its weight", x, unit.Pieces)
		l.add("slack caught", unit.Newtons, x*t.m*unit.G/float64(t.n), cap, 2, 2.5)
	}
	c := l.verdict()
	tell(c, pulls, mend)
	return []*Check{c}
}

// brakeCatchChecks: the brake or catch on the drum sets while the mass runs away, at the speed of the let-go after the
// brake's delay. Left out where nothing is named that would catch it.
func brakeCatchChecks(t *loads) []*Check {
	catches := false
	for _, x := range namedHolds(t.h) {
		catches = catches || x.Kind == lift.HoldSpringBrake || x.Kind == lift.HoldRatchet || x.Kind == lift.HoldOverspeedCatch
	}
	if !catches {
		return nil
	}
	l, cap, ok := t.eventLine("brake_catch", "the rope, if the brake catches a mass that runs away", "2·T·(1 + (v/g)·√(k/m)) ≤ strength left", source.Juvinall.At("impact"))
	pull, caught := t.caught()
	if caught {
		l.c.Formula = "2·T ≤ strength left, T from a free fall until the catch has locked"
	}
	v, okV := t.d.LetGo.BrakeSpeed.Value()
	if !okV && !caught {
		if !t.h.Holds.BrakeDelay.Is {
			l.miss("holds.brake_delay_s")
		}
		l.miss("")
	}
	k, miss := t.stiffness(true)
	l.miss(miss...)
	if ok && t.m > 0 {
		x := 1.0
		if okV && len(miss) == 0 {
			x = StopFactor(math.Abs(float64(v)), k, t.m)
		}
		if caught {
			x = pull / t.weight()
		} else {
			l.in("speed when the brake sets", float64(v), unit.MetresASecond)
		}
		l.in("stiffness of rope and beam", k, unit.NewtonsAMetre)
		l.in("times its weight", x, unit.Pieces)
		l.add("brake catches", unit.Newtons, x*t.m*unit.G/float64(t.n), cap, 2, 2.5)
	}
	c := l.verdict()
	tell(c, pulls, change("Make the brake set sooner, add a permanent resistor, or use a softer or stronger rope."))
	return []*Check{c}
}
