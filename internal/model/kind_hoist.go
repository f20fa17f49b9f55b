package model

import (
	"slices"

	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/lift/ready"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// hoistKind is the row of lifted masses.
var hoistKind = &Kind{
	Key: "hoist", Noun: "a hoist", Title: "Lifted mass", Look: "mass",
	Stop: "DO NOT HANG", Go: "READY for the load steps", GoWhy: "every part is strong enough or tight", Hold: "Hang nothing",
	of: func(s Store) Design {
		if s.Hoist == nil {
			return nil
		}
		return hoistDesign{s.Hoist}
	},
	Levers: []Lever{
		{What: "mass", Name: "mass, with its gears", More: "A heavier mass", Quarter: "A quarter more mass, with its gears", Quantity: unit.Masses,
			Grow: heavierHoist, Tell: tellMass, Stops: hoistStops, Never: neverHoist},
		{What: "height", Name: "height", More: "A greater height", Quarter: "A quarter more height", Quantity: unit.Heights,
			Grow: higherHoist, Tell: tellHeight, Stops: hoistStops, Never: neverHoist},
	},
	Lines: []cost.As{cost.AsMass, cost.AsContainer, cost.AsRope, cost.AsPulley, cost.AsHanger, cost.AsDrum, cost.AsCoupling, cost.AsGear,
		cost.AsBeam, cost.AsPost, cost.AsBaseWeight, cost.AsBaseBoard, cost.AsHold},
	Doubts: []Doubt{
		{Name: "mass", Say: "The mass that hangs", Low: 1 - byVolume, High: 1 + byVolume, Range: "by how it was weighed", Change: hungMass},
		{Name: "gear_loss", Say: "What the gears lose", Low: 0.70, High: 1.50, Change: gearLoss}, // grease, fit, cold
	},
}

// HoistKind is the row of lifted masses.
func HoistKind() *Kind { return hoistKind }

// HoistPath is the path of the hoist at place i of a variant.
func HoistPath(i int) string { return hoistKind.Path(i) }

// HoistAt is the hoist at place i of a variant, nil where another kind stands there. For the rooms that are about hoists
// alone.
func (v Variant) HoistAt(i int) *lift.Hoist { return v.Stores[i].Hoist }

// WithHoist is the variant with another hoist at place i. Its origins stay.
func (v Variant) WithHoist(i int, h lift.Hoist) Variant {
	v.Stores = slices.Clone(v.Stores)
	v.Stores[i] = Store{Hoist: &h}
	return v
}

// HoistOf is what the store comes to as a hoist; nil for another kind. For the rooms that are about hoists alone.
func HoistOf(s StoreResult) *HoistResult {
	h, _ := s.Part.(*HoistResult)
	return h
}

// HoistResult is a hoist's drive, checks and hazards.
type HoistResult struct {
	Design  lift.Hoist
	Drive   lift.Drive   // fed by panels straight: as in full sun
	Brush   *BrushEnds   // nil where the drop at the motor's brushes is one number
	Direct  *Direct      // nil unless the panels feed the motor straight
	Checks  []path.Check // sorted: what breaks first stands first
	Hazards path.Hazards
	Ready   reason.Word     // of its store; from Ground.Hoist as far as the hoist alone decides
	Because []reason.Reason // as Ready

	usual   ready.Usual  // what motor and gears may be instead of usual values
	weighed []lift.Piece // what hangs, as far as somebody weighed it
	tank    *reservoir.Reservoir
	whyNot  string // why there is no reservoir
}

// hoistDesign is a hoist as the table sees it.
type hoistDesign struct{ *lift.Hoist }

func (h hoistDesign) Name() string    { return h.Hoist.Name }
func (h hoistDesign) ForNight() bool  { return true }
func (h hoistDesign) Check() Problems { return checkHoist(*h.Hoist) }

func (h hoistDesign) Copy() Store {
	own := *h.Hoist
	own.Mass, own.Train.Stages = slices.Clone(own.Mass), slices.Clone(own.Train.Stages)
	return Store{Hoist: &own}
}

// Reduce computes the hoist whole, but for what the panels on its motor do.
func (h hoistDesign) Reduce(env *Env) Part {
	design, gaveWay := env.Variant.labelled(env.At)
	r := reduceHoist(design, env.Variant, env.Fed)
	r.tellLabel(gaveWay)
	r.weighed = env.Variant.weighed(env.At)
	r.usual = env.Variant.motorEnds(env.At, r.Design, r.Drive.Machine.K)
	env.Fed = env.Fed || design.Raise.Feed == lift.FeedPanel
	return r
}

// Begin runs a hoist on the panels through the year and makes it a store that fills beside the line.
func (r *HoistResult) Begin(g Ground, lights []panel.Light) {
	if r.Direct == nil || !r.Direct.Known {
		return
	}
	r.Direct.year(lights, g.Sky.TAir)
	if r.tank = r.Direct.store(r.Design, r.Drive); r.tank != nil {
		r.whyNot = ""
	}
}

// Reservoir is the same whatever is drawn.
func (r *HoistResult) Reservoir() (*reservoir.Reservoir, string) { return r.tank, r.whyNot }

// Again changes nothing.
func (r *HoistResult) Again(unit.Power) bool { return false }

// Reference is the hoist's own load.
func (r *HoistResult) Reference() unit.Power { return r.tank.DrawMax }

// Beside is the panels straight on the motor.
func (r *HoistResult) Beside() Beside {
	if r.Direct == nil || r.tank == nil || r.tank.Own == nil {
		return nil
	}
	return r.Direct.Source
}

// Take keeps what was judged.
func (r *HoistResult) Take(j StoreReadiness) { r.Ready, r.Because = j.Ready, j.Because }

// Missing is what the drive and the checks wait for.
func (r *HoistResult) Missing(at string) (ms []Missing) {
	for _, m := range r.Drive.Missing {
		ms = append(ms, Missing{Join(at, m.Path), say.Words(m.Wants)})
	}
	if r.Direct != nil {
		ms = append(ms, r.Direct.Missing...)
	}
	for _, c := range r.Checks {
		for _, p := range c.Missing {
			ms = append(ms, Missing{Join(at, p), say.That("the check of: %s", c.Part)})
		}
	}
	return ms
}

// Open is a hoist whose drive cannot be told. One whose mass and travel are known gives m·g·h at the most: under a tenth of
// a night that decides nothing.
func (r *HoistResult) Open(need unit.Energy) bool {
	if r.whyNot != lift.NotEnough {
		return false
	}
	most, ok := r.Drive.RaiseEnergyMech.Value()
	return !ok || float64(most)*max(1, float64(r.Design.Units.Or(1))) >= energyForPart*float64(need)
}

// First is the first of its checks, which stand sorted.
func (r *HoistResult) First() (path.Check, bool) {
	if len(r.Checks) == 0 {
		return path.Check{}, false
	}
	return r.Checks[0], true
}

// Uncharged is nothing: no air keeps a mass from rising.
func (r *HoistResult) Uncharged() int { return 0 }

// Left is all: a hoist lifts as much in its last year.
func (r *HoistResult) Left(float64) float64 { return 1 }

// Lives is nothing that the bill replaces by itself.
func (r *HoistResult) Lives() []cost.Lifetime { return nil }

// Needs are the parts of the hoist.
func (r *HoistResult) Needs(at string) []Need { return hoistNeeds(*r, at) }

// Shared is nothing.
func (r *HoistResult) Shared() []Need { return nil }

// Answer is the key hoist.
func (r *HoistResult) Answer(a *StoreAnswer) { a.Hoist = new(r.answer()) }

// Hoist computes the lifted mass at place i of a variant as Evaluate does, without the year of the line and what that and
// the night's lamps say of it, judged by the rules of a hoist alone: what its pictures and the search of the shelf need. Nil
// where another store stands there.
func (g Ground) Hoist(v Variant, i int) *HoistResult {
	r := HoistOf(reduce(v)[i])
	if r == nil {
		return nil
	}
	defer r.judgeAlone(v, i, g.On)
	if r.Direct == nil || !r.Direct.Known {
		return r
	}
	if g.Sky != nil {
		if h := g.harvest(v); len(h.problems) == 0 {
			r.Begin(g, h.lights)
		}
	}
	r.Direct.words()
	return r
}

// reduceHoist computes a hoist of a variant; fed is set where the panels feed another motor already.
func reduceHoist(design lift.Hoist, v Variant, fed bool) *HoistResult {
	h := bySupply(design)
	d := lift.Compute(h)
	var direct *Direct
	switch {
	case h.Raise.Feed == lift.FeedPanel:
		if direct = directOf(v, h, d, fed); direct.Known {
			d = lift.Compute(direct.inFullSun(h))
		} else {
			d.Flags = append(d.Flags, lift.Flag{Path: "raise.feed", Bad: direct.Clash, Say: say.That("The panel is to feed this motor straight, but %s.", direct.WhyNot)})
		}
	case h.Raise.Feed != "" && v.Controller.Kind == panel.ControllerDirect:
		d.Flags = append(d.Flags, lift.Flag{Path: "raise.feed", Bad: true, Say: say.That("These panels have no controller, so nothing reaches the line and nothing lifts. Say that the panel feeds the motor, or add a controller.")})
	}
	checks := path.Checks(h, d)
	path.Sort(checks)
	hr := &HoistResult{Design: design, Drive: d, Brush: brushEnds(h, d), Direct: direct, Checks: checks, Hazards: path.HazardsOf(h, d), tank: d.Reservoir, whyNot: d.WhyNot}
	return hr
}

// BrushEnds is the drive with the least and with the greatest drop at the motor's brushes, where only a range of it is known.
type BrushEnds struct{ Low, High lift.Drive }

func brushEnds(h lift.Hoist, d lift.Drive) *BrushEnds {
	m := d.Machine
	if !m.BrushHigh.Is || h.Raise.Feed == lift.FeedPanel {
		return nil
	}
	return &BrushEnds{lift.Compute(h.WithBrush(m.BrushLow.Val)), lift.Compute(h.WithBrush(m.BrushHigh.Val))}
}

// bySupply is a hoist as its supply leaves it: panels straight on the motor set voltage and current, whatever was typed for
// another supply.
func bySupply(h lift.Hoist) lift.Hoist {
	if h.Raise.Feed == lift.FeedPanel {
		h.Raise.Voltage, h.Raise.CurrentLimit = unit.Known[unit.Voltage]{}, unit.Known[unit.Current]{}
	}
	return h
}
