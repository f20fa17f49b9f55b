package ready

import (
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// A hold holds a mass that moves: a spring brake anywhere, a ratchet or an overspeed catch on the drum, a load arrester on a
// rope of its own. A ratchet or a catch elsewhere, motor, gears, wires, lamps and belts hold nothing; prop and pin hold what
// stands.

// counts tells at best and at worst whether a hold counts as one: an answer that is missing makes the two differ.
func counts(x lift.Hold) (best, worst bool) {
	switch x.Kind {
	case lift.HoldSpringBrake, lift.HoldLoadArrester:
		return true, true
	case lift.HoldRatchet, lift.HoldOverspeedCatch:
		return x.OnDrum != unit.No, x.OnDrum == unit.Yes
	}
	return false, false
}

// drum tells the same of a hold that acts on the drum.
func onDrum(x lift.Hold) (best, worst bool) {
	best, worst = counts(x)
	if x.Kind == lift.HoldLoadArrester {
		return false, false
	}
	return best && x.OnDrum != unit.No, worst && x.OnDrum == unit.Yes
}

// tally counts the holds for which a question is answered yes, at best and at worst.
func (c Case) tally(of func(lift.Hold) (best, worst bool)) (best, worst int) {
	for _, x := range c.Hoist.Holds.Holds {
		b, w := of(x)
		if b {
			best++
		}
		if w {
			worst++
		}
	}
	return best, worst
}

// at is the path of a field of a hold of which the answer is missing; the list of holds where none is.
func (c Case) openHold(field string, is func(lift.Hold) bool) string {
	for i, x := range c.Hoist.Holds.Holds {
		if is(x) {
			return fmt.Sprintf("holds.holds[%d].%s", i, field)
		}
	}
	return "holds.holds"
}

func offDrumOpen(x lift.Hold) bool {
	return x.OnDrum == "" && (x.Kind == lift.HoldRatchet || x.Kind == lift.HoldOverspeedCatch || x.Kind == lift.HoldSpringBrake)
}

// few reports whether fewer than two holds are named: then the other rules of holds say nothing yet.
func (c Case) few() bool {
	best, _ := c.tally(counts)
	return best < 2
}

// holdsCount is fewer than two holds of a moving mass, or none among them a brake or a ratchet.
func holdsCount(c Case) []reason.Reason {
	best, worst := c.tally(counts)
	stops := func(x lift.Hold) (b, w bool) {
		b, w = counts(x)
		own := x.Kind == lift.HoldSpringBrake || x.Kind == lift.HoldRatchet
		return b && own, w && own
	}
	bestStop, worstStop := c.tally(stops)
	w := reason.Tried(best < 2 || bestStop < 1, worst < 2 || worstStop < 1)
	if w == reason.Yes {
		return nil
	}
	text := say.That("Only %s of the named holds can stop a moving mass, and two are needed. A prop and a pin hold only a mass at rest. Motor, gears, wires and lamps are no hold.", best)
	switch {
	case best == 0:
		text = say.That("No hold is named that can stop a moving mass, and two are needed. A prop and a pin hold only a mass at rest. Motor, gears, wires and lamps are no hold.")
	case w == reason.NotKnown:
		text = say.That("Whether two things hold a mass that moves is not known: a ratchet or a catch counts only on the drum.")
	case best >= 2:
		text = say.That("Neither a brake nor a ratchet is among the holds.")
	}
	return []reason.Reason{{ID: "holds_count", Word: w, Path: c.openHold("on_drum", offDrumOpen), Clears: answerOr(w), Say: text,
		Mend:   say.That("Use a spring brake, and a ratchet or a catch on the drum."),
		Source: source.Platforms.At("primary and secondary brake")}}
}

// holdsDrum is no hold on the drum itself.
func holdsDrum(c Case) []reason.Reason {
	best, worst := c.tally(onDrum)
	w := reason.Tried(best < 1, worst < 1)
	if w == reason.Yes || c.few() {
		return nil
	}
	return []reason.Reason{{ID: "holds_drum", Word: w, Path: c.openHold("on_drum", offDrumOpen), Clears: answerOr(w),
		Say:    say.That("Nothing holds the drum itself: if a gear or a pin breaks, the mass falls."),
		Mend:   say.That("Put one hold on the drum's own flange."),
		Source: source.Platforms.At("brakes that act on the drum")}}
}

// holdsIndependent is fewer than two holds that share no part.
func holdsIndependent(c Case) []reason.Reason {
	best, worst := c.tally(func(x lift.Hold) (bool, bool) {
		b, w := counts(x)
		return b && x.Independent != unit.No, w && x.Independent == unit.Yes
	})
	w := reason.Tried(best < 2, worst < 2)
	if w == reason.Yes || c.few() {
		return nil
	}
	text := say.That("The holds share a part: one break loses both.")
	if w == reason.NotKnown {
		text = say.That("Whether two holds share a part is not known: if that part breaks, both holds are lost.")
	}
	return []reason.Reason{{ID: "holds_independent", Word: w, Clears: answerOr(w), Say: text,
		Path: c.openHold("independent", func(x lift.Hold) bool {
			b, _ := counts(x)
			return b && x.Independent != unit.Yes
		}),
		Mend:   say.That("Give each its own pawl, spring and bolts."),
		Source: source.Platforms.At("independent brakes")}}
}

// holdsAuto is no spring brake that sets by itself when power goes or a held lever is let go.
func holdsAuto(c Case) []reason.Reason {
	best, worst := c.tally(func(x lift.Hold) (bool, bool) {
		own := x.Sets == lift.SetsPowerOff || x.Sets == lift.SetsLeverReleased
		return x.Kind == lift.HoldSpringBrake && (own || x.Sets == ""), x.Kind == lift.HoldSpringBrake && own
	})
	w := reason.Tried(best < 1, worst < 1)
	if w == reason.Yes || c.few() {
		return nil
	}
	text := say.That("No brake closes by itself when the power goes.")
	if w == reason.NotKnown {
		text = say.That("Whether the brake sets by itself when power goes is not known.")
	}
	return []reason.Reason{{ID: "holds_auto", Word: w, Clears: answerOr(w), Say: text,
		Path:   c.openHold("sets", func(x lift.Hold) bool { return x.Kind == lift.HoldSpringBrake && x.Sets != lift.SetsPowerOff }),
		Mend:   say.That("Use a spring brake that power or a held lever opens."),
		Source: source.Platforms.At("brakes that set when power fails")}}
}
