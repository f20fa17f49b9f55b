package ready

import (
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// checks are the lines of the load path that give way at the lightest, or at the heaviest only, or are not known. What is not
// known since a fall or a shock is said once, by shock; how many holds there are, by the rules of holds.
func checks(c Case) []reason.Reason {
	if len(c.Heavy.Checks) == 0 {
		return []reason.Reason{open("not_computed", "", say.That("Nothing was checked."))}
	}
	light, plan := map[string]path.Word{}, map[string]path.Check{}
	for _, k := range c.Light.Checks {
		light[k.ID+k.Part] = k.Word
	}
	for _, k := range c.Plan.Checks {
		plan[k.ID+k.Part] = k
	}
	var out []reason.Reason
	for _, k := range c.Heavy.Checks {
		if shaken(k) || k.ID == "holds" && k.Part == path.TwoHolds {
			continue
		}
		if p := plan[k.ID+k.Part]; p.Word == path.GivesWay && k.Word == path.GivesWay {
			k = p // it gives way as it is planned: the figures are those of its line
		}
		r := reason.Reason{ID: k.ID, Path: decides(k), Of: k.About(), Use: k.Use, Source: k.Source}
		switch {
		case k.Word == path.GivesWay:
			r.Word, r.Clears, r.Head = reason.No, reason.Change, say.That("Gives way: %s", k.Part)
			r.Say = say.That("%s. %s", r.Head, k.Say)
			other := reason.No
			if light[k.ID+k.Part] != path.GivesWay {
				other = reason.Yes
			}
			out = append(out, c.tooHeavy(between(r, reason.No, other), k))
		case k.Word == path.NotKnown:
			r.Use = unit.Known[unit.Ratio]{}
			r.Word, r.Head = reason.NotKnown, say.That("%s", capital(k.Part))
			name := k.Part
			if strings.Contains(name, ",") {
				name += "," // "the teeth of stage 1, counted from the motor, is not known"
			}
			r.Say = say.That("The check of %s is %s", name, k.Say.Lower())
			r.Clears, r.Mend = clearing(c, k)
			out = append(out, c.proved(k, r)...)
		}
	}
	return withGuess(out, c)
}

// tooHeavy says of a line that gives way only at the most that may hang that it is the weighing which decides.
func (c Case) tooHeavy(r reason.Reason, k path.Check) reason.Reason {
	most, ok := c.heaviest()
	if !ok || !guessed(r) {
		return r
	}
	r.Head = say.That("At %s this gives way: %s", say.Mass(most), k.Part)
	r.Say = say.That("All that hangs may weigh %s: weigh it first. %s. %s", say.Mass(most), r.Head, k.Say)
	return r
}

// clearing says what clears a line that is not known: an answer, or where a strength is missing a rating, a proof or a person.
func clearing(c Case, k path.Check) (reason.Clears, say.Sentence) {
	strength := len(k.Missing) == 0
	for _, p := range k.Missing {
		if p == "structure.rests_on_confirmed" {
			return reason.Person, say.That("A qualified person must look at it.")
		}
		if isStrength(p) {
			strength = true
		}
	}
	switch {
	case !strength || k.ID == "slack" || k.ID == "stops" || k.ID == "overhoist" || k.ID == "brake_catch":
		return reason.Answer, say.Sentence{}
	case provable(c.Hoist, k.ID):
		return reason.Proof, say.That("Buy a rated one, or prove it by test. It stays not known until then.")
	case k.ID == "rope" || k.ID == "knot" || k.ID == "container":
		return reason.RatedPart, say.That("Buy a rated one: no test clears it.")
	}
	return reason.Answer, say.Sentence{}
}

// isStrength reports whether a path holds what a part withstands.
func isStrength(p string) bool {
	for _, end := range []string{"working_load_n", "breaking_load_n", "strength_pa", "yield_pa", "rated_torque_nm", "coupling_torque_nm", ".class", "proof_pa", ".torque_nm", ".force_n", "friction", "side_pull_n"} {
		if strings.HasSuffix(p, end) {
			return true
		}
	}
	return false
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

// hubAndCoupling are a drum pressed on a printed hub, which cracks, and a printed coupling, which slips and breaks.
func hubAndCoupling(c Case) []reason.Reason {
	var out []reason.Reason
	d := c.Hoist.Drum
	if d.HubMaterial == lift.HubPrinted && d.HubPressed != unit.No {
		r := reason.Reason{ID: "drum_hub", Word: reason.Tried(d.HubPressed == unit.Yes, true), Path: "drum.hub_pressed", Clears: reason.Change,
			Say:    say.That("A printed hub cracks when it is pressed on, or later."),
			Mend:   say.That("Pin it and clamp it."),
			Source: source.Judgement.Whole()}
		if r.Word == reason.NotKnown {
			r.Say, r.Clears = say.That("Whether the printed hub is pressed on is not known: it cracks when it is pressed on, or later."), reason.Answer
		}
		out = append(out, r)
	}
	if d.Coupling == lift.CouplingYes && d.CouplingMade == lift.CouplingPrinted {
		out = append(out, c.prove("coupling", reason.Reason{ID: "coupling", Word: reason.NotKnown, Path: "drum.coupling_made_of", Clears: reason.Proof,
			Say:    say.That("A printed coupling slips and breaks."),
			Mend:   say.That("Use one of metal, or prove it by test."),
			Source: source.Judgement.Whole()})...)
	}
	return out
}
