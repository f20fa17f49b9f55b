package path

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Told is a value of a check as every page and every sentence tells it: a force as the weight of a mass.
func Told(a unit.Amount) say.Amount { return amountOf(a.Val, a.In) }

// Allowed is what the part of a check may carry with the factor that it needs: its capacity over that factor. Use is the demand
// over this. Told, it is rounded down.
func (c Check) Allowed() unit.Amount {
	if c.Capacity.Is && c.Wanted > 0 {
		return unit.Amount{Val: c.Capacity.Val / float64(c.Wanted), In: c.Capacity.In, Is: true}
	}
	return unit.Amount{}
}

// amountOf is a value of a check as a maker reads it: a force as the weight of a mass.
func amountOf(x float64, u unit.Measure) say.Amount {
	switch u {
	case unit.Newtons:
		return say.Weight(unit.Force(x))
	case unit.Pascals:
		return say.Stress(unit.Stress(x))
	case unit.Metres:
		return say.Length(unit.Length(x))
	case unit.Radians:
		return say.Angle(unit.Angle(x))
	case unit.NewtonMetres:
		return say.Torque(unit.Torque(x))
	}
	return say.Times(unit.Ratio(x))
}

// heavy is a force that must be carried, as the mass whose weight it is, rounded up: the number to look for in the shop.
func heavy(newtons float64) say.Amount { return say.Weight(unit.Force(newtons)).Up() }

// turnedWith is a torque that must be carried, rounded up.
func turnedWith(newtonMetres float64) say.Amount { return say.Torque(unit.Torque(newtonMetres)).Up() }

// verbs of a line: what the part does, what its limit is called behind the limit's value, and how much of it is allowed.
type verbs struct{ does, limit, allowed string }

var (
	pulls    = verbs{"The rope is pulled with", "allowed", "%s is allowed"}
	carries  = verbs{"It carries", "allowed", "%s is allowed"}
	bends    = verbs{"It is stressed to", "allowed", "%s is allowed"}
	turns    = verbs{"It is turned with", "allowed", "%s is allowed"}
	sags     = verbs{"It sags", "allowed", "%s is allowed"}
	measures = verbs{"It needs", "there is", "there is %s"}
	lifts    = verbs{"The rope pulls the base up with", "allowed", "%s is allowed"}
	slides   = verbs{"The rope pulls it along with", "allowed", "%s is allowed"}
	tips     = verbs{"The rope tips it with", "allowed", "%s is allowed"}
	winds    = verbs{"The rope needs", "there is room for", "there is room for %s"}
	leads    = verbs{"It is", "allowed", "%s is allowed"}
	must     = verbs{"It must hold", "allowed", "%s is allowed"}
	leans    = verbs{"The rope pulls it sideways with", "it is braced for", "it is braced for %s"}
)

// of turns stress into words that fit the unit: a length sags, a force or a torque is carried.
func (v verbs) of(u unit.Measure) verbs {
	switch {
	case v == bends && u == unit.Metres:
		return sags
	case (v == bends || v == carries) && u == unit.Newtons:
		return carries
	case v == bends && u == unit.NewtonMetres:
		return turns
	case v == carries && u == unit.Pascals:
		return bends
	}
	return v
}

// remedy is what to do about a line: always what is worth doing or knowing whatever its answer, and change what to change
// once it gives way.
type remedy struct{ always, change say.Sentence }

func always(words string, values ...any) remedy { return remedy{always: say.That(words, values...)} }

func change(words string, values ...any) remedy { return remedy{change: say.That(words, values...)} }

// and puts another remedy behind r.
func (r remedy) and(next remedy) remedy {
	if !r.change.IsZero() {
		return remedy{r.always, say.Join(r.change, next.always, next.change)}
	}
	return remedy{say.Join(r.always, next.always), next.change}
}

// now is the remedy of a line that gives way.
func (r remedy) now() say.Sentence { return say.Join(r.always, r.change) }

// tell writes the one plain sentence of a check that has been decided, with what would mend it.
func tell(c *Check, v verbs, mend remedy) {
	if c.Word == GivesWay {
		mend = mendOf(c.Case).and(mend)
	}
	switch c.Word {
	case NotKnown:
		c.Say = notKnownSay(c.Missing, mend)
	case GivesWay:
		c.Say = say.Join(overSay(c, v), mend.now())
	case Tight:
		c.Say = say.Join(heldSay(c, v), say.That("It is strong enough, but with little to spare."))
	case Holds:
		c.Say = heldSay(c, v)
	}
}

func overSay(c *Check, v verbs) say.Sentence {
	v = v.of(c.Demand.In)
	d, k, w := float64(c.Demand.Val), float64(c.Capacity.Val), float64(c.Wanted)
	if k <= 0 {
		return say.That("%s %s (%s), and nothing there carries that.", v.does, amountOf(d, c.Demand.In), c.Case)
	}
	return say.That("%s %s (%s). That is %s times the %s %s.", v.does, amountOf(d, c.Demand.In), c.Case, say.Times(c.Use.Val).To(2).Up(),
		amountOf(k/w, c.Demand.In).Down(), v.limit)
}

func heldSay(c *Check, v verbs) say.Sentence {
	if !c.Demand.Is || v == (verbs{}) {
		return say.Sentence{}
	}
	v = v.of(c.Demand.In)
	allowed := amountOf(float64(c.Capacity.Val)/max(float64(c.Wanted), 1e-9), c.Demand.In).Down()
	return say.That("%s %s (%s); %s.", v.does, amountOf(float64(c.Demand.Val), c.Demand.In), c.Case, say.That(v.allowed, allowed))
}

// notKnownSay says that a check is open. What would mend a part that gives way is not yet asked for.
func notKnownSay(missing []string, mend remedy) say.Sentence {
	first := say.That("Not known.")
	switch n := len(missing); {
	case n == 1:
		first = say.That("Not known: one input is missing.")
	case n > 1:
		first = say.That("Not known: %s inputs are missing.", n)
	}
	if mend.change.IsZero() {
		return say.Join(first, mend.always)
	}
	return say.Join(first, mend.always, say.That("If it gives way: %s", mend.change.Lower()))
}
