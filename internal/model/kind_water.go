package model

import (
	"duskweight/internal/model/cell"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/water"
	"duskweight/internal/say"
)

// waterKind is the row of lifted water.
var waterKind = &Kind{
	Key: "water", Noun: "water", Title: "Lifted water", Look: "water",
	Holds: Holding{"The full tank gives", "Your tank gives", "ρ × g × water × (height − friction in the pipe) × efficiency of the turbine", "Hazen and Williams for the friction; values in use on the page of the water"},
	Idle:  "the water freezes: nothing is pumped, and nothing runs down",
	of: func(s Store) Design {
		if s.Water == nil {
			return nil
		}
		return waterDesign{s.Water}
	},
	Levers: []Lever{
		{What: "water", Name: "water, with its tank", More: "A larger tank", Quarter: "A quarter more water, with its tank", Quantity: unit.BigVolumes,
			Grow: moreWater, Tell: tellWater, Stops: tankStops, Never: neverWater},
		{What: "water_height", Name: "height of the tank", More: "A higher tank", Quarter: "A quarter more height of the tank", Quantity: unit.Heights,
			Grow: higherWater, Tell: tellWaterHeight, Stops: heightStops, Never: neverWater},
	},
	Lines: []cost.As{cost.AsTank, cost.AsLid},
	Doubts: []Doubt{
		{Name: "pump_loss", Say: "What the pump brings up", Low: 0.75, High: 1.25, Change: pumpDoubt},           // a class of small pumps, and wear
		{Name: "turbine_loss", Say: "What the turbine gives back", Low: 0.75, High: 1.25, Change: turbineDoubt}, // the same
	},
}

// WaterKind is the row of lifted water.
func WaterKind() *Kind { return waterKind }

// WaterPath is the path of the water store at place i of a variant.
func WaterPath(i int) string { return waterKind.Path(i) }

// WaterOf is what the store comes to as lifted water; nil for another kind. For the rooms that are about water alone.
func WaterOf(s StoreResult) *WaterResult {
	w, _ := s.Part.(*WaterResult)
	return w
}

// WaterResult is a store of lifted water: its values in use and its checks.
type WaterResult struct {
	Resolved water.Resolved
	Checks   []water.Check
	Frozen   int // hours of the year in which the mean of 24 hours is below freezing

	begun bool
	tank  *reservoir.Reservoir
}

// waterDesign is a store of lifted water as the table sees it.
type waterDesign struct{ *water.Water }

func (w waterDesign) Name() string    { return w.Water.Name }
func (w waterDesign) ForNight() bool  { return true }
func (w waterDesign) Check() Problems { return checkWater(*w.Water) }
func (w waterDesign) Copy() Store     { return Store{Water: new(*w.Water)} }

// Reduce fills the usual efficiencies in.
func (w waterDesign) Reduce(*Env) Part {
	r := w.Resolve()
	return &WaterResult{Resolved: r, Checks: r.Checks()}
}

// checkWater returns the contradictions inside one store of water.
func checkWater(w water.Water) (ps Problems) {
	if h := w.Head; h.Is && h.Val <= 0 {
		ps.Add("head_m", "the tank must be above its turbine: water does not run uphill")
	}
	if l, h := w.Pipe.Length, w.Head; l.Is && h.Is && h.Val > 0 && l.Val < h.Val {
		ps.Tell("pipe.length_m", say.That("the pipe is shorter than the height of %s that it climbs", say.Height(h.Val)))
	}
	return ps
}

// Begin counts the hours of frost under the sky; the water stands outside.
func (w *WaterResult) Begin(g Ground, _ []panel.Light) {
	mean := cell.RunningMean(g.Sky.TAir)
	w.begun, w.tank, w.Frozen = true, w.Resolved.Reduce(mean), 0
	for _, t := range mean {
		if t < water.Freezes {
			w.Frozen++
		}
	}
}

// Reservoir is the same whatever is drawn.
func (w *WaterResult) Reservoir() (*reservoir.Reservoir, string) {
	if !w.begun {
		return nil, w.Resolved.WhyNot.String()
	}
	return w.tank, w.Resolved.WhyNot.String()
}

// Again changes nothing.
func (w *WaterResult) Again(unit.Power) bool { return false }

// Reference is what the turbine gives.
func (w *WaterResult) Reference() unit.Power { return w.tank.DrawMax }

// Beside is nothing: the line feeds the pump.
func (w *WaterResult) Beside() Beside { return nil }

// Finish has nothing to add: what the year says of water, the reservoir says.
func (w *WaterResult) Finish(YearView) {}

// Take keeps nothing: the store has it.
func (w *WaterResult) Take(StoreReadiness) {}

// Missing is what the store waits for.
func (w *WaterResult) Missing(at string) (ms []Missing) {
	for _, m := range w.Resolved.Missing {
		ms = append(ms, Missing{Join(at, m.Path), say.Words(m.Wants)})
	}
	return ms
}

// Open is a store of which too little is known. One whose water and height are known gives ρ·g·V·h at the most: under a tenth
// of a night that decides nothing.
func (w *WaterResult) Open(need unit.Energy) bool {
	if w.Resolved.Known() {
		return false
	}
	return w.Resolved.Stored <= 0 || float64(w.Resolved.Stored) >= energyForPart*float64(need)
}

// First is nothing: its checks are no load path.
func (w *WaterResult) First() (path.Check, bool) { return path.Check{}, false }

// Uncharged is the hours of frost.
func (w *WaterResult) Uncharged() int { return w.Frozen }

// Left is all: water lifts as much in its last year.
func (w *WaterResult) Left(float64) float64 { return 1 }

// Lives is nothing that the bill replaces by itself.
func (w *WaterResult) Lives() []cost.Lifetime { return nil }

// Facts adds nothing: Holds of the row names what it gives.
func (w *WaterResult) Facts(*Facts, YearView) {}

// Needs are tank, pump, turbine and pipe, and the lid.
func (w *WaterResult) Needs(at string) []Need {
	d, pressure := w.Resolved.Design, unit.Known[unit.Ratio]{}
	if p, ok := w.Resolved.Pressure(water.WaveOther); ok {
		pressure = unit.Of(unit.Ratio(p))
	}
	tank := Need{As: cost.AsTank, Name: orElse(d.Name, "Tank"), Of: cost.OfStore, Count: 1,
		Want: []Want{{Least: ratio(d.Volume), Unit: unit.CubicMetres, Where: say.Words("on its label")}}}
	pump := Need{As: cost.AsPump, Name: "Pump", Of: cost.OfStore, Count: 1, Look: say.Words("made for the height, not only for the flow"),
		Want: []Want{{Least: ratio(d.Pump.Rated), Unit: unit.Watts, Where: say.Words("on its label")}}}
	turbine := Need{As: cost.AsTurbine, Name: "Turbine with generator", Of: cost.OfStore, Count: 1, Look: say.Words("with a valve that closes slowly"),
		Want: []Want{{Least: known(w.Resolved.Gives, w.Resolved.Gives > 0), Unit: unit.Watts, Where: say.Words("on its label")}}}
	pipe := Need{As: cost.AsPipe, Name: "Pipe", Of: cost.OfStore, Count: 1, Look: say.Words("for pressure, such as PN 10"),
		Want:  []Want{{Least: pressure, Unit: unit.Pascals, Where: say.Words("printed on the pipe"), Stated: ratio(d.Pipe.Rated)}},
		Sizes: []Size{{Name: "length", Value: ratio(d.Pipe.Length), Unit: unit.Metres}, {Name: "inner diameter", Value: ratio(d.Pipe.Inner), Unit: unit.Metres}}}
	lid := Need{As: cost.AsLid, Name: "Lids or fences for both waters", Of: cost.OfSafety, Count: 1, Look: say.Words("that a child cannot open")}
	return []Need{tank, pump, turbine, pipe, lid}
}

// Shared is nothing.
func (w *WaterResult) Shared() []Need { return nil }

// Wires is the pump on the line, which counts with the power on its label, and what the electronics use.
func (w *WaterResult) Wires() Wires {
	return Wires{Standing: w.Resolved.Design.Standby.Or(0), Lifting: w.Resolved.Design.Pump.Rated.Or(0)}
}

// Peak is nothing: water does not carry the line.
func (w *WaterResult) Peak(Ground, PeakBank) []LineCheck { return nil }

// Answer is the key water.
func (w *WaterResult) Answer(a *StoreAnswer) { a.Water = new(w.answer()) }
