package water

import (
	"duskweight/internal/model/pipe"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Missing is an input that is not known: its path in the design, and what waits for it.
type Missing struct{ Path, Wants string }

// Resolved is a design with its efficiencies filled in, and what follows from it without a year. The figures are zero where
// WhyNot says why there is no store.
type Resolved struct {
	Design  Water
	Missing []Missing

	Stored      unit.Energy // X = ρ·g·V·h
	PumpEff     unit.Ratio
	PumpSize    *Size // where its efficiency is the usual one of this class
	PumpFlow    unit.Flow
	PumpLost    unit.Length // height lost along the pipe while it fills
	FillTime    unit.Duration
	TurbineEff  unit.Ratio
	TurbineSize *Size
	TurbineLost unit.Length
	Net         unit.Length // h_n, what is left of the height at the turbine
	Gives       unit.Power  // P_d at the line
	Least       unit.Power  // P_dmin: it cannot give less
	EmptyTime   unit.Duration
	LeakADay    unit.Known[unit.Ratio] // share of the volume that dries up in a day; not known without a surface

	WhyNot say.Sentence
	known  bool // whatever is not given, it gives nothing
}

const (
	// drySpeed is how far an open surface sinks by evaporation, m/s: 4 mm a day (our own judgement; a dry summer is worse).
	drySpeed = 0.004 / 86400
	// Freezes is the temperature below which the water freezes, °C.
	Freezes = 0
	// throttled is how far down a valve can go, as a share of the full power (our own judgement).
	throttled = 0.3
)

// Resolve fills a design in. A design with too little in it has WhyNot.
func (w Water) Resolve() Resolved {
	r := Resolved{Design: w}
	need := func(known bool, path, wants string) {
		if !known {
			r.Missing = append(r.Missing, Missing{path, wants})
		}
	}
	need(w.Volume.Is, "volume_m3", "the energy that the water holds")
	need(w.Head.Is, "head_m", "the energy that the water holds")
	need(w.Pump.Rated.Is, "pump.rated_w", "how fast the tank fills")
	need(w.Turbine.Flow.Is, "turbine.flow_m3_s", "the power that the turbine gives")
	need(w.Pipe.Length.Is, "pipe.length_m", "what the pipe loses")
	need(w.Pipe.Inner.Is, "pipe.inner_m", "what the pipe loses")
	if w.Volume.Is && w.Head.Is {
		r.Stored = Stored(w.Volume.Val, w.Head.Val)
	}
	switch {
	case w.Lower == LowerNone:
		r.known = true
		r.WhyNot = say.Words("There is no water below, so the pump has nothing to lift. A second tank below catches what runs down, and the pump lifts it again.")
		return r
	case len(r.Missing) > 0:
		r.WhyNot = say.That("This water store is not computed yet: %s is missing.", say.Words(words[r.Missing[0].Path]))
		return r
	}
	r.fills()
	r.gives()
	r.dries()
	return r
}

// Known reports whether enough is known to say what the store gives, nothing included.
func (r Resolved) Known() bool { return r.WhyNot.IsZero() || r.known }

// words name what a store cannot be computed without.
var words = map[string]string{
	"volume_m3": "how much water it holds", "head_m": "how high the tank is above the turbine", "pump.rated_w": "the power of the pump",
	"turbine.flow_m3_s": "the flow through the turbine", "pipe.length_m": "the length of the pipe", "pipe.inner_m": "the inner diameter of the pipe",
}

// Stored is the energy of a volume of water at a height, ρ·g·V·h.
func Stored(v unit.Volume, head unit.Length) unit.Energy {
	return unit.Energy(float64(pipe.Density) * unit.G * float64(v) * float64(head))
}

// fills works out the pump: its efficiency, its flow against the friction, and how long it fills.
func (r *Resolved) fills() {
	w := r.Design
	eta, ok := w.Pump.Efficiency.Value()
	if !ok {
		r.PumpSize = new(PumpSize(w.Pump.Rated.Val))
		eta = r.PumpSize.Usual
	}
	r.PumpEff = eta
	r.PumpFlow = PumpFlow(w.Pump.Rated.Val, eta, w.Head.Val, w.Pipe.Length.Val, w.Pipe.Inner.Val)
	r.PumpLost = pipe.Friction(r.PumpFlow, w.Pipe.Length.Val, w.Pipe.Inner.Val)
	if r.PumpFlow > 0 {
		r.FillTime = unit.Duration(float64(w.Volume.Val) / float64(r.PumpFlow))
	}
}

// gives works out the turbine: what friction leaves of the height, and the power that comes of it.
func (r *Resolved) gives() {
	w, q := r.Design, r.Design.Turbine.Flow.Val
	r.TurbineLost = pipe.Friction(q, w.Pipe.Length.Val, w.Pipe.Inner.Val)
	r.Net = w.Head.Val - r.TurbineLost
	r.EmptyTime = unit.Duration(float64(w.Volume.Val) / float64(q))
	if r.Net <= 0 {
		r.known = true
		r.WhyNot = say.That("Friction in the pipe uses all of the height at %s. Use a thicker pipe, or let less water through.", say.Of(unit.Flows, float64(q)))
		return
	}
	hydraulic := unit.Power(float64(pipe.Density) * unit.G * float64(q) * float64(r.Net))
	eta, ok := w.Turbine.Efficiency.Value()
	if !ok {
		r.TurbineSize = new(TurbineSize(hydraulic))
		eta = r.TurbineSize.Usual
	}
	r.TurbineEff, r.Gives = eta, hydraulic*unit.Power(eta)
	r.Least = r.Gives
	if w.Turbine.Kind == Valve {
		r.Least = throttled * r.Gives
	}
}

// dries works out what evaporates of an open tank. A tank of which nobody says that it is covered counts as open.
func (r *Resolved) dries() {
	w := r.Design
	switch {
	case w.Covered == unit.Yes:
		r.LeakADay = unit.Of[unit.Ratio](0)
	case w.Surface.Is:
		r.LeakADay = unit.Of(unit.Ratio(drySpeed * 86400 * float64(w.Surface.Val) / float64(w.Volume.Val)))
	default:
		r.Missing = append(r.Missing, Missing{"surface_m2", "what dries up of the open tank"})
	}
}
