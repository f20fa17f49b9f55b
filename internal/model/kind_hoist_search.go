package model

import (
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// What grows of a hoist, what that needs, and how far its inputs may be off.

const neverHoist = "even a million times as much does not carry the night, because the sun left over does not fill it"

// heavierHoist has f times the mass and the gear ratio grown along, so that the same motor lifts and holds the same
// current: the first stage takes the whole of it.
func heavierHoist(s Store, f float64) Store {
	s = hoistDesign{s.Hoist}.Copy()
	h := s.Hoist
	for i := range h.Mass {
		h.Mass[i].Mass.Val *= unit.Mass(f)
	}
	for i := range h.Train.Stages {
		g := &h.Train.Stages[i]
		if g.Ratio.Is || g.SunTeeth.Is && g.RingTeeth.Is {
			if !g.Ratio.Is {
				g.Ratio = unit.Of(lift.PlanetaryRatio(g.SunTeeth.Val, g.RingTeeth.Val))
			}
			g.SunTeeth, g.PlanetTeeth, g.RingTeeth = unit.Known[unit.Count]{}, unit.Known[unit.Count]{}, unit.Known[unit.Count]{}
			g.Ratio.Val *= unit.Ratio(f)
			break
		}
	}
	return s
}

func higherHoist(s Store, f float64) Store {
	s = hoistDesign{s.Hoist}.Copy()
	s.Hoist.Travel.Val *= unit.Length(f)
	return s
}

func tellMass(p Part, f float64) Grown {
	g := tellHoist(p, ratio(p.(*HoistResult).Drive.Mass))
	if f != 1 {
		g.Grows = []say.Sentence{say.That("the gear ratio, to %s : 1, for the same motor", say.Times(p.(*HoistResult).Drive.Ratio.Val)),
			say.That("all parts from rope to base weights, %s times as strong", say.Times(unit.Ratio(f)).To(2).Up())}
	}
	return g
}

func tellHeight(p Part, f float64) Grown {
	g := tellHoist(p, ratio(p.(*HoistResult).Design.Travel))
	if f != 1 {
		g.Grows = []say.Sentence{say.That("the frame, the rope and the room on the drum"), say.That("the circle in which nobody may be")}
	}
	return g
}

// tellHoist is a size, and which part would give way.
func tellHoist(p Part, size unit.Known[unit.Ratio]) Grown {
	h := p.(*HoistResult)
	g := Grown{Size: size}
	if len(h.Checks) > 0 && h.Ready == reason.No {
		g.Breaks = h.Checks[0].Part
	}
	return g
}

// hoistStops says what keeps any mass or height from carrying the night: the hoist does not work at all, or gives less power
// than the lamps ask for at once.
func hoistStops(s StoreResult, asked unit.Power) (why, open say.Sentence) {
	switch {
	case s.WhyNot == lift.NotEnough:
		return why, say.Words("too little is known of this hoist")
	case s.Reservoir == nil:
		return say.That("this hoist gives nothing back. %s", strings.TrimSuffix(s.WhyNot, ".")), open
	case s.Reservoir.DrawMax < asked:
		return say.That("this hoist gives only %s with any mass, and the night needs up to %s at once", say.Power(s.Reservoir.DrawMax).To(2), say.Power(asked).To(2)), open
	}
	return why, open
}

// byVolume is how far a mass reckoned from its volume may be off: ± 10 %.
const byVolume = 0.10

// offBy is how far a mass may be off by the way it was weighed.
var offBy = map[lift.Weighing]float64{lift.ByScale: 0.01, lift.ByLabel: 0.03, lift.ByVolume: byVolume, lift.ByGuess: 0.25, "": byVolume}

func hungMass(s Store, f float64) (there bool) {
	for i := range s.Hoist.Mass {
		m := &s.Hoist.Mass[i]
		there = m.Mass.Times(1+(f-1)*offBy[m.Weighed]/byVolume) || there
	}
	return there
}

// gearLoss makes more or less of what the stages lose.
func gearLoss(s Store, f float64) (there bool) {
	less := func(k *unit.Known[unit.Ratio]) {
		if e, ok := k.Value(); ok {
			k.Val, there = unit.Ratio(max(0.01, 1-(1-float64(e))*f)), true
		}
	}
	for i := range s.Hoist.Train.Stages {
		g := &s.Hoist.Train.Stages[i]
		less(&g.Efficiency)
		less(&g.MeshEff)
		there = g.Friction.Times(f) || there
	}
	return there
}
