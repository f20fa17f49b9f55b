package ready

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Usual are hoists like that of a case, as its motor and gears may be instead of the usual values that stand there.
type Usual struct {
	Hub    bool // the motor is a direct-drive wheel hub
	Hoists []lift.Hoist
}

// Among returns the case with what its motor may be instead. Each of them is tried as light and as heavy as the mass may be, by
// the rules about how it moves and how warm it gets.
func (c Case) Among(u Usual) Case {
	c.hub, c.usual = u.Hub, nil
	for _, h := range u.Hoists {
		var two [2]Work
		for n, side := range []float64{-1, 1} {
			w := weighed(h, side)
			two[n] = Work{Hoist: w, Drive: lift.Compute(w)}
		}
		c.usual = append(c.usual, two)
	}
	return c
}

// moving asks a rule about how it moves of all that spread does, and of what the motor may be instead: what forbids all forbids,
// what forbids some of them is not known.
func (c Case) moving(look func(Work) []reason.Reason) []reason.Reason {
	out := c.spread(look)
	for _, two := range c.usual {
		out = both(out, ends(look(two[0]), look(two[1])), c.byMotor)
	}
	return out
}

// byMotor is a reason that another motor of the kind gives another word.
func (c Case) byMotor(r reason.Reason, other reason.Word) reason.Reason {
	if (r.Word == reason.No) == (other == reason.No) {
		return r
	}
	r.Word, r.Clears, r.Use = reason.NotKnown, reason.Answer, unit.Known[unit.Ratio]{}
	r.Mend = say.That("What motor and gears use without load is a usual value, and that value decides here. Measure the motor's current without load, with the gears on.")
	if c.hub {
		r.Mend = say.That("Wheel hubs differ by twice and more, and it decides here. Measure the volts that this one makes at a known speed, and its current without load.")
	}
	return r
}
