package model

import (
	"math"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
)

// Result is everything a document comes to.
type Result struct {
	Ground   Ground
	Variants []VariantResult
}

// VariantResult is everything a variant comes to. Figures of the year hold only where YearKnown.
type VariantResult struct {
	Name      string
	YearKnown bool
	WhyNoYear string // in plain words, without a full stop

	Plane unit.Known[unit.Irradiation] // on the panels, mean over their power
	Bus   *panel.Bus                   // nil where the year is not known
	Year  year.Result

	StandingPower unit.Power // project, variant, controller and stores together

	Verdict    string // a word of the closed list, or "" where nothing is wanted, or the year or what a store gives is not known
	Open       string // why there is no verdict although the year is known, in plain words, without a full stop; or ""
	NightShare float64
	Headline   []string
	Facts      Facts

	Stores  []StoreResult
	Cost    cost.Result
	Ready   string // "yes", "not_known", "no"
	Reasons []string
	Missing []Missing
}

// StoreResult is one store of a variant; Hoist or Cells is set as in the design.
type StoreResult struct {
	Name      string
	Kind      string // "cells" or "hoist"
	Reservoir *reservoir.Reservoir
	WhyNot    string         // why there is no reservoir
	Year      year.StoreYear // zero without a reservoir
	InYear    bool           // it took part in the year
	Capacity  unit.Known[unit.Energy]
	RoundTrip unit.Known[unit.Ratio]
	Hoist     *HoistResult
	Cells     *CellsResult
}

// HoistResult is a hoist's drive, checks and hazards.
type HoistResult struct {
	Design  lift.Hoist
	Drive   lift.Drive   // fed by panels straight: as in full sun
	Direct  *Direct      // nil unless the panels feed the motor straight
	Checks  []path.Check // sorted: what breaks first stands first
	Hazards path.Hazards
	Ready   string
	Reasons []string
}

// CellsResult is a battery: its values in use, its life and its cautions.
type CellsResult struct {
	Design    cell.Bank
	Resolved  cell.Resolved
	Current   unit.Current // mean in the hours of drawing, for Peukert
	Rated     unit.Ratio   // f_P
	Life      cell.Life
	Sizing    cell.Sizing // the trade's, where SizingSet
	SizingSet bool
	Differ    []string // how the trade's sizing stands to this battery, and why
	Cautions  []cell.Flag
	Line      cell.Line        // its cable and fuse, where the year is known
	Air       cell.Ventilation // zero for cells that make no gas
}

// Missing is an input that is not known, by its path in the variant, and what it would let be computed.
type Missing struct {
	Path  string
	Wants string
}

// Evaluate computes a whole document. The document must have passed Check.
func Evaluate(doc Document) Result {
	g := Prepare(doc.Project)
	r := Result{Ground: g, Variants: make([]VariantResult, len(doc.Variants))}
	for i, v := range doc.Variants {
		r.Variants[i] = g.Evaluate(v)
	}
	return r
}

// Evaluate computes one variant on prepared ground.
func (g Ground) Evaluate(v Variant) VariantResult {
	r := VariantResult{Name: v.Name, Stores: reduce(v)}
	g.year(v, &r)
	r.finish(g, v)
	return r
}

// reduce computes what each store is without a year: hoists whole, cells up to their typical values.
func reduce(v Variant) []StoreResult {
	out := make([]StoreResult, len(v.Stores))
	fed := false // the panels feed one motor
	for i, s := range v.Stores {
		if s.Hoist != nil {
			h, gaveWay := v.labelled(i)
			out[i] = reduceHoist(h, v, fed)
			out[i].Hoist.tellLabel(gaveWay)
			out[i].Hoist.onlyTypical(v.typicalReason(i))
			fed = fed || s.Hoist.Raise.Feed == "panel"
		} else if s.Cells != nil {
			out[i] = StoreResult{Name: s.Cells.Name, Kind: "cells", Cells: &CellsResult{Design: *s.Cells, Resolved: s.Cells.Resolve()}}
			out[i].WhyNot = out[i].Cells.Resolved.WhyNot
		}
	}
	return out
}

// reduceHoist computes a hoist of a variant; fed is set where the panels feed another motor already.
func reduceHoist(design lift.Hoist, v Variant, fed bool) StoreResult {
	h := bySupply(design)
	d := lift.Compute(h)
	var direct *Direct
	switch {
	case h.Raise.Feed == "panel":
		if direct = directOf(v, h, d, fed); direct.Known {
			d = lift.Compute(direct.inFullSun(h))
		} else {
			d.Flags = append(d.Flags, lift.Flag{Path: "raise.feed", Bad: direct.Clash, Say: "The panel is to feed this motor straight, but " + direct.WhyNot + "."})
		}
	case h.Raise.Feed != "" && v.Controller.Kind == "direct":
		d.Flags = append(d.Flags, lift.Flag{Path: "raise.feed", Bad: true, Say: "These panels have no controller, so nothing reaches the line and nothing lifts. Say that the panel feeds the motor, or take a controller."})
	}
	checks := path.Checks(h, d)
	path.Sort(checks)
	hr := &HoistResult{Design: design, Drive: d, Direct: direct, Checks: checks, Hazards: path.HazardsOf(h, d)}
	hr.Ready, hr.Reasons = path.Ready(checks, d, h)
	if doubt := doubts(h); len(doubt) > 0 && hr.Ready != "no" {
		hr.Ready, hr.Reasons = "not_known", append(doubt, hr.Reasons...)
	}
	return StoreResult{Name: h.Name, Kind: "hoist", Reservoir: d.Reservoir, WhyNot: d.WhyNot, Hoist: hr}
}

// bySupply is a hoist as its supply leaves it: panels straight on the motor set voltage and current, whatever was typed for
// another supply.
func bySupply(h lift.Hoist) lift.Hoist {
	if h.Raise.Feed == "panel" {
		h.Raise.Voltage, h.Raise.CurrentLimit = unit.Known[unit.Voltage]{}, unit.Known[unit.Current]{}
	}
	return h
}

// year runs the settled year, if the place is known and the panels can be computed.
func (g Ground) year(v Variant, r *VariantResult) {
	if g.Sky == nil {
		r.WhyNoYear = "the place is not known"
		if len(g.WhyNot) > 0 {
			r.WhyNoYear = g.WhyNot[0].Say
		}
		return
	}
	lights := g.lights(v)
	bus, plane, problems := g.bus(v, lights)
	if len(problems) > 0 {
		r.WhyNoYear = problems[0].Say
		for _, p := range problems {
			r.Missing = append(r.Missing, Missing{p.Path, p.Say})
		}
		return
	}
	r.Bus, r.Plane, r.YearKnown = bus, plane, true
	for i := range r.Stores {
		r.Stores[i].straight(lights, g.Sky.TAir)
	}
	variant, missing := load.StandingPower(v.Standing)
	for _, m := range missing {
		r.Missing = append(r.Missing, Missing{m.Path, m.Wants})
	}
	standing := variant + v.Controller.Standing()
	in := year.Input{Bus: bus.Power, Standing: plus(g.Load.Standing, float64(standing)), Essential: g.Load.Essential, Nice: g.Load.Nice, Night: g.Load.NightOf, Keep: true}
	r.StandingPower = g.Load.StandingPower + standing
	g.settle(in, r)
}

// settle runs the year with the cells' share for fast drawing (Peukert, rated form) fixed in two rounds: the mean
// current of the drawing hours starts from the night's load over the voltage, and each run gives the next.
func (g Ground) settle(in year.Input, r *VariantResult) {
	const rounds = 2
	for i := range r.Stores {
		if c := r.Stores[i].Cells; c != nil && c.Resolved.WhyNot == "" {
			c.Current = g.nightCurrent(c.Resolved.Voltage)
		}
	}
	draft := year.Begin(in)
	for round := range rounds + 1 {
		stores, at := g.reservoirs(r)
		draft.Settle(stores)
		if changed := drawingCurrents(r, draft, at); !changed || round == rounds {
			break
		}
	}
	r.Year = draft.Result()
	n := 0
	for i := range r.Stores {
		s := &r.Stores[i]
		if s.Reservoir == nil {
			continue
		}
		s.Year, s.InYear = r.Year.Stores[n], true
		r.StandingPower += s.Reservoir.Standing
		n++
	}
}

// reservoirs puts the stores that can be reduced into the input and returns, for each, its place in r.Stores.
func (g Ground) reservoirs(r *VariantResult) (stores []reservoir.Reservoir, at []int) {
	for i := range r.Stores {
		s := &r.Stores[i]
		if c := s.Cells; c != nil && c.Resolved.WhyNot == "" {
			c.Rated = c.Resolved.Rated(c.Current)
			if was := s.Reservoir; was == nil {
				s.Reservoir = c.Resolved.Reduce(g.cellsOf(c.Design), c.Current)
			} else { // the cold hours do not depend on the current
				s.Reservoir = c.Resolved.Reduce(cell.Temperature{}, c.Current)
				s.Reservoir.NoFill, s.Reservoir.Locked = was.NoFill, was.Locked
			}
		}
		if s.Reservoir != nil {
			stores = append(stores, *s.Reservoir)
			at = append(at, i)
		}
	}
	return stores, at
}

// nightCurrent is the current that the mean night load draws at a voltage.
func (g Ground) nightCurrent(v unit.Voltage) unit.Current {
	hours := 0
	for _, n := range g.Load.NightOf {
		if n >= 0 {
			hours++
		}
	}
	if hours == 0 || v <= 0 {
		return 0
	}
	nights := float64(g.Load.Nights)
	w := float64(g.Load.MeanNight+g.Load.StandingNight) * nights / (float64(hours) * 3600)
	return unit.Current(w / float64(v))
}

// drawingCurrents takes the mean current of the hours in which each battery was drawn from the year that was run, and
// reports whether the share that it allows changed.
func drawingCurrents(r *VariantResult, draft *year.Draft, at []int) bool {
	changed := false
	for n, i := range at {
		c := r.Stores[i].Cells
		if c == nil {
			continue
		}
		drawn, ok := draft.MeanDraw(n).Value()
		if !ok {
			continue
		}
		was := c.Rated
		c.Current = unit.Current(float64(drawn) / float64(c.Resolved.Voltage))
		changed = changed || c.Resolved.Rated(c.Current) != was
	}
	return changed
}

// Hoist computes the lifted mass at place i of a variant as Evaluate does, without the year of the line and what that and
// the night's lamps say of it: what its pictures need. Nil where another store stands there.
func (g Ground) Hoist(v Variant, i int) *HoistResult {
	s := reduce(v)[i]
	if s.Hoist == nil || s.Hoist.Direct == nil || !s.Hoist.Direct.Known {
		return s.Hoist
	}
	if g.Sky != nil {
		lights := g.lights(v)
		if _, _, problems := g.bus(v, lights); len(problems) == 0 {
			s.straight(lights, g.Sky.TAir)
		}
	}
	s.Hoist.Direct.words()
	return s.Hoist
}

// straight runs a hoist on the panels through the year and makes it a store that fills beside the line.
func (s *StoreResult) straight(lights []panel.Light, air []float64) {
	if s.Hoist == nil || s.Hoist.Direct == nil || !s.Hoist.Direct.Known {
		return
	}
	s.Hoist.Direct.year(lights, air)
	if s.Reservoir = s.Hoist.Direct.store(s.Hoist.Design, s.Hoist.Drive); s.Reservoir != nil {
		s.WhyNot = ""
	}
}

// lights computes the light on each array; an array whose place is not known gets none, and BusPower names it.
func (g Ground) lights(v Variant) []panel.Light {
	lights := make([]panel.Light, len(v.Panels))
	for i, a := range v.Panels {
		if !a.Tilt.Is || !a.Azimuth.Is {
			continue
		}
		p := sun.PlaneOf(g.Sky.Geometry, g.Project.Place, sun.Face{Tilt: a.Tilt.Val, Azimuth: a.Azimuth.Val, Shade: a.Shade})
		l := p.Light(g.Sky)
		lights[i] = panel.Light{Plane: l.Plane, Cells: l.Cells}
	}
	return lights
}

// bus computes the power at the line, and the light on the panels as a mean over their power.
func (g Ground) bus(v Variant, lights []panel.Light) (*panel.Bus, unit.Known[unit.Irradiation], Problems) {
	var weighted, power float64
	for i, a := range v.Panels {
		w := float64(a.Nominal().Or(0))
		weighted += w * total(lights[i].Plane)
		power += w
	}
	b, problems := panel.BusPower(v.Panels, v.Controller, lights, g.Sky.TAir)
	if len(problems) > 0 {
		var ps Problems
		for _, p := range problems {
			ps.Add(p.Path, p.Say)
		}
		return nil, unit.Known[unit.Irradiation]{}, ps
	}
	if power == 0 {
		return b, unit.Known[unit.Irradiation]{}, nil
	}
	return b, unit.Of(unit.Irradiation(weighted / power * 3600)), nil
}

func total(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum
}

func plus(v []float64, w float64) []float64 {
	out := make([]float64, len(v))
	for i, x := range v {
		out[i] = x + w
	}
	return out
}

// cosTurn is the cosine of a part of a turn.
func cosTurn(x float64) float64 { return math.Cos(2 * math.Pi * x) }
