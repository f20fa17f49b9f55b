package model

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// What grows of a store of water, what that needs, and how far its inputs may be off.

const neverWater = "even a million times as much does not carry the night, because the sun left over does not fill it"

// moreWater has f times the water, with as much more surface.
func moreWater(s Store, f float64) Store {
	s = waterDesign{s.Water}.Copy()
	s.Water.Volume.Times(f)
	s.Water.Surface.Times(f)
	return s
}

// higherWater stands f times as high, at the end of as much more pipe.
func higherWater(s Store, f float64) Store {
	s = waterDesign{s.Water}.Copy()
	s.Water.Head.Times(f)
	s.Water.Pipe.Length.Times(f)
	return s
}

func tellWater(p Part, f float64) Grown {
	g := Grown{Size: ratio(p.(*WaterResult).Resolved.Design.Volume)}
	if f != 1 {
		g.Grows = []say.Sentence{say.That("both tanks"), say.That("what carries the upper one")}
	}
	return g
}

func tellWaterHeight(p Part, f float64) Grown {
	g := Grown{Size: ratio(p.(*WaterResult).Resolved.Design.Head)}
	if f != 1 {
		g.Grows = []say.Sentence{say.That("the pipe"), say.That("the pressure in it")}
	}
	return g
}

// heightStops says what keeps any height from carrying the night: there is no store.
func heightStops(s StoreResult, _ unit.Power) (why, open say.Sentence) {
	w := s.Part.(*WaterResult)
	switch {
	case !w.Resolved.Known():
		return why, say.Words("too little is known of this water store")
	case s.Reservoir == nil:
		return say.That("this water store gives nothing. %s", w.Resolved.WhyNot), open
	}
	return why, open
}

// tankStops is heightStops, and a turbine that is too weak for what the night asks for at once, however much water there is.
func tankStops(s StoreResult, asked unit.Power) (why, open say.Sentence) {
	if why, open = heightStops(s, asked); !why.IsZero() || !open.IsZero() {
		return why, open
	}
	if s.Reservoir.DrawMax < asked {
		return say.That("this turbine gives only %s with any tank, and the night needs up to %s at once", say.Power(s.Reservoir.DrawMax).To(2), say.Power(asked).To(2)), open
	}
	return why, open
}

// pumpDoubt changes what the pump brings up of what it uses; never to more than all.
func pumpDoubt(s Store, f float64) bool {
	r := s.Water.Resolve()
	if r.WhyNot.IsZero() {
		s.Water.Pump.Efficiency = unit.Of(min(1, r.PumpEff*unit.Ratio(f)))
	}
	return r.WhyNot.IsZero()
}

// turbineDoubt changes what the turbine gives back.
func turbineDoubt(s Store, f float64) bool {
	r := s.Water.Resolve()
	if r.WhyNot.IsZero() {
		s.Water.Turbine.Efficiency = unit.Of(min(1, r.TurbineEff*unit.Ratio(f)))
	}
	return r.WhyNot.IsZero()
}
