package ready

import (
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// trips tells at best and at worst whether a hold catches a drum that turns free: a catch on the drum, a load arrester, or
// a brake on the drum that sets by speed.
func trips(x lift.Hold) (best, worst bool) {
	switch x.Kind {
	case lift.HoldLoadArrester:
		return true, true
	case lift.HoldOverspeedCatch:
		return x.OnDrum != unit.No && x.Trips != unit.No, x.OnDrum == unit.Yes && x.Trips == unit.Yes
	case lift.HoldSpringBrake:
		return x.OnDrum != unit.No && x.Trips != unit.No, x.OnDrum == unit.Yes && x.Trips == unit.Yes
	}
	return false, false
}

// overspeed is no device that catches a drum that turns free, and no closed fall zone in its place.
func overspeed(c Case) []reason.Reason {
	if c.few() {
		return nil
	}
	best, worst := c.tally(trips)
	zone, why := c.fallZone()
	w := reason.Tried(best < 1, worst < 1)
	w = better(zone, w)
	if w == reason.Yes {
		return nil
	}
	r := reason.Reason{ID: "overspeed", Word: w, Clears: answerOr(w), Source: source.Platforms.At("overspeed device"),
		Path: c.openHold("trips", func(x lift.Hold) bool {
			b, worst := trips(x)
			return b && !worst
		}),
		Say:  say.That("If a gear breaks on the way down, nothing catches the mass: it falls and hits at %s.", say.Speed(fallSpeed(c.Hoist))),
		Mend: say.That("Use a catch on the drum that locks by speed, or a speed trip on the drum's brake.")}
	if w == reason.NotKnown {
		r.Say = say.That("If a gear breaks on the way down, whether anything catches the mass is not known.")
		if why != "" && best < 1 {
			r.Path, r.Say = why, say.That("If a gear breaks on the way down, the mass falls, and whether the place where it falls is closed is not known.")
		}
	}
	return []reason.Reason{r}
}

func better(a, b reason.Word) reason.Word {
	if a.Worse(b) {
		return b
	}
	return a
}

func fallSpeed(h lift.Hoist) unit.Speed { return unit.Speed(path.FallSpeed(float64(h.Travel.Or(0)))) }

// What a slipping brake may let the mass fall (our own judgement): a metre, and a third of the travel.
const (
	mostFall      = 1.0
	mostFallShare = 1.0 / 3
)

// freeDrum asks whether a device catches a free drum in time: a brake stops the mass within a metre and a third of the
// travel, a catch withstands the pull, and the rope keeps twice the pull. It says nothing while no device is named.
func freeDrum(c Case) []reason.Reason {
	best, _ := c.tally(trips)
	if best < 1 || c.few() {
		return nil
	}
	if zone, _ := c.fallZone(); zone == reason.Yes {
		return nil
	}
	if planned := inTime(c.Plan); len(planned) > 0 && planned[0].Word == reason.No {
		return planned
	}
	return withGuess(guess(inTime(c.Heavy)), c)
}

// inTime is the best of the devices that catch a free drum with one mass. It says nothing of a brake of which nobody said
// that it trips: that is overspeed.
func inTime(w Work) []reason.Reason {
	var best reason.Reason
	for _, k := range path.Catches(w.Hoist, w.Drive) {
		r := caught(w, k)
		if best.Word == "" || best.Word.Worse(r.Word) {
			best = r
		}
	}
	if best.Word == "" || best.Word == reason.Yes {
		return nil
	}
	best.ID, best.Source = "free_drum", source.Derivation.At("free fall until the drum is caught")
	return []reason.Reason{best}
}

// caught judges one device; the word Yes stands for a device that catches in time.
func caught(w Work, k path.Catch) reason.Reason {
	x := w.Hoist.Holds.Holds[k.At]
	at := func(field string) string { return fmt.Sprintf("holds.holds[%d].%s", k.At, field) }
	if len(k.Missing) > 0 {
		return reason.Reason{Word: reason.NotKnown, Path: k.Missing[0], Clears: reason.Answer,
			Say:  say.That("How far the mass falls until it is caught, and how hard, is not known."),
			Mend: say.That("Give the speed at which the device acts, and how soon or within what way it grips.")}
	}
	r := reason.Reason{Word: reason.Yes, Path: at("trips_at_m_s"), Clears: reason.Change,
		Mend: say.That("Let it act at a lower speed or sooner, or use a softer rope.")}
	late := func(s say.Sentence) { r.Word, r.Say = reason.No, s }
	down := w.Drive.Lowering
	left, okLeft := path.RopeLeft(w.Hoist, w.Drive)
	n := float64(w.Hoist.Reeving.RopeParts.Or(1))
	switch {
	case down.Known && x.TripsAt.Val <= down.Fastest():
		late(say.That("It would act at %s already, and the mass comes down at %s.", say.Speed(x.TripsAt.Val), say.Speed(down.Fastest())))
	case !k.Holds:
		late(say.That("The brake does not stop a mass that falls: it slips on."))
	case k.Kind == lift.HoldSpringBrake && float64(k.Fall) > min(mostFall, mostFallShare*float64(w.Hoist.Travel.Or(0))):
		late(say.That("The brake catches too late: the mass falls %s.", say.Distance(k.Fall)))
	case k.Kind == lift.HoldOverspeedCatch && x.Torque.Is && x.Torque.Val < k.Torque:
		r.Path = at("torque_nm")
		late(say.That("The catch must withstand %s at the drum when it locks, and it withstands %s.", say.Torque(k.Torque).Up(), say.Torque(x.Torque.Val).Down()))
	case k.Kind == lift.HoldLoadArrester && x.Force.Is && 2*x.Force.Val < k.Pull:
		r.Path = at("force_n")
		late(say.That("The arrester is pulled with %s when it locks; twice its working load is less.", say.Force(k.Pull)))
	case k.Kind != lift.HoldLoadArrester && okLeft && 2*float64(k.Pull)/n > float64(left):
		late(say.That("The mass falls %s, and when it is caught the rope is pulled with %s: too much for it.", say.Distance(k.Fall), say.Force(unit.Force(float64(k.Pull)/n))))
	case k.Kind == lift.HoldOverspeedCatch && !x.Torque.Is:
		return reason.Reason{Word: reason.NotKnown, Path: at("torque_nm"), Clears: reason.Answer, Say: say.That("What torque the catch withstands is not known.")}
	case k.Kind == lift.HoldLoadArrester && !x.Force.Is:
		return reason.Reason{Word: reason.NotKnown, Path: at("force_n"), Clears: reason.Answer, Say: say.That("What the load arrester withstands is not known.")}
	case k.Kind == lift.HoldOverspeedCatch && tooSlow(w, x):
		return reason.Reason{Word: reason.NotKnown, Path: at("trip_how"), Clears: reason.Answer,
			Say:  say.That("At %s a pawl that the drum's own turning throws cannot tell a free drum from a still one: whether the catch locks is not known.", say.Speed(x.TripsAt.Val)),
			Mend: say.That("Use a rated catch, or a pawl thrown by a governor or by a geared wheel that turns faster.")}
	}
	return r
}

// tooSlow reports whether a catch trips below the speed at which a plain pawl is thrown, and may be a plain pawl.
func tooSlow(w Work, x lift.Hold) bool {
	r, ok := w.Drive.Winding.RadiusLast.Value()
	surface := float64(x.TripsAt.Val) * float64(w.Hoist.Reeving.RopeParts.Or(1))
	return (x.TripHow == "" || x.TripHow == lift.TripPlainPawl) && ok && surface < float64(path.Turning(r))
}
