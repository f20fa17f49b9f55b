package ready

import (
	"slices"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// offBy is how far a mass may be off by the way it was weighed, as a share (our own judgement). A mass reckoned from its
// volume is off by more where it can get wet.
func offBy(weighed lift.Weighing, wet bool) float64 {
	switch weighed {
	case lift.ByScale:
		return 0.02
	case lift.ByLabel:
		return 0.05
	case lift.ByVolume:
		if !wet {
			return 0.10
		}
	}
	return 0.25
}

// weighed is the hoist with all that hangs as heavy (side 1) or as light (side −1) as its weighing allows.
func weighed(h lift.Hoist, side float64) lift.Hoist {
	h.Mass = slices.Clone(h.Mass)
	for i := range h.Mass {
		m := &h.Mass[i]
		m.Mass.Val = unit.Mass(float64(m.Mass.Val) * (1 + side*offBy(m.Weighed, h.Site.Outdoors != unit.No)))
	}
	return h
}

// Heaviest is the greatest mass that may hang, kg; not known where a piece is.
func (c Case) heaviest() (unit.Mass, bool) { return c.Heavy.Drive.Mass.Value() }

// spread asks a rule of the light and the heavy hoist, with the least and the greatest drop at the brushes where that is not
// known: what forbids all forbids, what forbids some of them is not known.
func (c Case) spread(look func(Work) []reason.Reason) []reason.Reason {
	out := ends(look(c.Light), look(c.Heavy))
	if c.High != nil {
		out = both(out, ends(look(c.High[0]), look(c.High[1])), byBrush)
	}
	return withGuess(out, c)
}

// key is what two reasons have in common that say the same of two hoists.
func key(r reason.Reason) string { return r.ID + "\x00" + r.Path }

// ends are the reasons of the light and of the heavy hoist together.
func ends(light, heavy []reason.Reason) []reason.Reason {
	at := map[string]reason.Word{}
	for _, r := range light {
		at[key(r)] = reason.Worst(at[key(r)], r.Word)
	}
	var out []reason.Reason
	seen := map[string]bool{}
	for _, r := range heavy {
		seen[key(r)] = true
		out = append(out, between(r, r.Word, at[key(r)]))
	}
	for _, r := range light {
		if !seen[key(r)] {
			out = append(out, between(r, r.Word, ""))
		}
	}
	return out
}

// both are the reasons of two hoists together, where by tells what a word becomes that the other one does not share.
func both(least, greatest []reason.Reason, by func(reason.Reason, reason.Word) reason.Reason) []reason.Reason {
	words := map[string]reason.Word{}
	for _, r := range greatest {
		words[key(r)] = r.Word
	}
	var out []reason.Reason
	for _, r := range least {
		out = append(out, by(r, words[key(r)]))
		delete(words, key(r))
	}
	for _, r := range greatest {
		if _, only := words[key(r)]; only {
			out = append(out, by(r, reason.Yes))
		}
	}
	return out
}

// byBrush is a reason that the other drop at the brushes gives another word.
func byBrush(r reason.Reason, other reason.Word) reason.Reason {
	if (r.Word == reason.No) == (other == reason.No) {
		return r
	}
	r.Word, r.Clears, r.Use = reason.NotKnown, reason.Answer, unit.Known[unit.Ratio]{}
	r.Mend = say.That("Type the torque with the shaft held, from the motor's sheet, or the drop at its brushes: it decides.")
	return r
}

// weighIt mends a reason that only one end of the mass forbids.
var weighIt = say.That("Weigh mass and container on a scale: the result decides.")

// between is a reason by its words at both ends; none at one end is yes.
func between(r reason.Reason, a, b reason.Word) reason.Reason {
	if a == reason.No && b != reason.No {
		r.Word, r.Clears, r.Use = reason.NotKnown, reason.Answer, unit.Known[unit.Ratio]{}
		r.Mend = weighIt
	}
	return r
}

// guess makes a reason that only one end of the mass forbids one that is not known.
func guess(reasons []reason.Reason) []reason.Reason {
	for i, r := range reasons {
		reasons[i] = between(r, r.Word, reason.Yes)
	}
	return reasons
}

// guessed marks a reason that only a better weighing clears.
func guessed(r reason.Reason) bool {
	return r.Word == reason.NotKnown && r.Mend.Is(weighIt)
}

// withGuess adds mass_guess where the weighing decides one of the reasons.
func withGuess(out []reason.Reason, c Case) []reason.Reason {
	if !slices.ContainsFunc(out, guessed) {
		return out
	}
	most, _ := c.heaviest()
	path := "mass"
	return append(out, reason.Reason{ID: "mass_guess", Word: reason.NotKnown, Path: path, Clears: reason.Answer,
		Say:  say.That("All that hangs together may weigh %s, and then a part is not strong enough, or the mass does not move as it must.", say.Mass(most)),
		Mend: say.That("Weigh it."), Source: source.Judgement.At("how far a weighing is off")})
}
