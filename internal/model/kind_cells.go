package model

import (
	"math"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// cellsKind is the row of batteries.
var cellsKind = &Kind{
	Key: "cells", Noun: "cells", Title: "Battery", Look: "cells",
	Holds: Holding{"The battery holds", "Your battery holds", "capacity × voltage × usable share × share for fast drawing × discharging efficiency", "Peukert in the rated form; values of the kind on the battery's own page"},
	Idle:  "the battery is too cold or too hot to charge", Stands: "place",
	of: func(s Store) Design {
		if s.Cells == nil {
			return nil
		}
		return bankDesign{s.Cells}
	},
	Levers: []Lever{{What: "battery", Name: "battery", More: "A larger battery", Quarter: "A quarter more battery", Quantity: unit.Charges, Late: true,
		Grow: largerBank, Tell: tellBank, Stops: noBankStops,
		Never: "even a million times as much does not carry the night: the panels do not fill it"}},
	Counted: &Counted{One: "battery", Many: "batteries", Blocks: blocks, With: withBlocks}, Lines: []cost.As{cost.AsBattery}, Lasts: longestLife,
	Doubts: []Doubt{
		{Name: "capacity", Say: "What the battery holds", Low: 0.80, High: 1.05, Change: lessCapacity},         // label and ageing
		{Name: "battery_loss", Say: "What the battery gives back", Low: 0.94, High: 1.03, Change: batteryLoss}, // wires, connectors, age
	},
}

// CellsKind is the row of batteries.
func CellsKind() *Kind { return cellsKind }

// CellsPath is the path of the battery at place i of a variant.
func CellsPath(i int) string { return cellsKind.Path(i) }

// CellsOf is what the store comes to as a battery; nil for another kind. For the rooms that are about batteries alone.
func CellsOf(s StoreResult) *CellsResult {
	c, _ := s.Part.(*CellsResult)
	return c
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
	Differ    []say.Sentence // how the trade's sizing stands to this battery, and why
	Cautions  []cell.Flag
	Line      cell.Line        // its cable and fuse, where the year is known
	Air       cell.Ventilation // zero for cells that make no gas

	begun bool
	warm  cell.Temperature
	tank  *reservoir.Reservoir
}

// bankDesign is a battery as the table sees it.
type bankDesign struct{ *cell.Bank }

func (b bankDesign) Name() string    { return b.Bank.Name }
func (b bankDesign) Check() Problems { return nil }
func (b bankDesign) Copy() Store     { return Store{Cells: new(*b.Bank)} }

// Reduce fills the bank up with its kind's typical values.
func (b bankDesign) Reduce(*Env) Part { return &CellsResult{Design: *b.Bank, Resolved: b.Resolve()} }

// Begin takes the temperature where the battery is, and the night's load over its voltage as the first current.
func (c *CellsResult) Begin(g Ground, _ []panel.Light) {
	if c.Resolved.WhyNot == "" {
		c.begun, c.warm, c.Current = true, g.cellsOf(c.Design), g.nightCurrent(c.Resolved.Voltage)
	}
}

// Reservoir reduces the bank for the current that is known by then. The cold hours do not depend on it.
func (c *CellsResult) Reservoir() (*reservoir.Reservoir, string) {
	if !c.begun {
		return nil, c.Resolved.WhyNot
	}
	c.Rated = c.Resolved.Rated(c.Current)
	if was := c.tank; was == nil {
		c.tank = c.Resolved.Reduce(c.warm, c.Current)
	} else {
		c.tank = c.Resolved.Reduce(cell.Temperature{}, c.Current)
		c.tank.NoFill, c.tank.Locked = was.NoFill, was.Locked
	}
	if c.tank != nil {
		c.tank.Aside = !c.Design.ForNight()
	}
	return c.tank, ""
}

// Again takes the mean draw as the current for Peukert.
func (c *CellsResult) Again(draw unit.Power) bool {
	was := c.Rated
	c.Current = unit.Current(float64(draw) / float64(c.Resolved.Voltage))
	return c.Resolved.Rated(c.Current) != was
}

// Reference is the mean draw of the year.
func (c *CellsResult) Reference() unit.Power {
	if c.Current <= 0 {
		return c.tank.DrawMax
	}
	return unit.Power(float64(c.Current) * float64(c.Resolved.Voltage))
}

// Beside is nothing: a battery fills from the line.
func (c *CellsResult) Beside() Beside { return nil }

// Take keeps nothing: the store has it.
func (c *CellsResult) Take(StoreReadiness) {}

// unprotected is what is not known of the fuse close to a battery and of the cable that it protects.
func (c *CellsResult) unprotected() (ms []Missing) {
	if !c.Design.Fuse.Is {
		ms = append(ms, Missing{"fuse_a", say.Words("Which fuse is close to the battery")})
	}
	if !c.Design.CableArea.Is {
		ms = append(ms, Missing{"cable_area_m2", say.Words("The thickness of the battery’s cable")})
	}
	return ms
}

// Missing is what its capacity and its use wait for.
func (c *CellsResult) Missing(at string) (ms []Missing) {
	for _, m := range c.Resolved.Missing {
		if m.Path == "standing_w" { // none of its own is the usual case
			continue
		}
		ms = append(ms, Missing{Join(at, m.Path), say.Words(m.Wants)})
	}
	use := say.Words("whether the battery may be used like this")
	for _, f := range c.Cautions {
		if f.Open {
			ms = append(ms, Missing{Join(at, f.Path), use})
		}
	}
	for _, m := range c.unprotected() {
		ms = append(ms, Missing{Join(at, m.Path), use})
	}
	return ms
}

// Left is what cells of the kind lose; of a battery that cannot be computed nothing is said.
func (c *CellsResult) Left(part float64) float64 {
	if c.Resolved.WhyNot != "" {
		return 1
	}
	return c.Resolved.Left(part)
}

// Open is a battery that cannot be computed.
func (c *CellsResult) Open(unit.Energy) bool { return c.Resolved.WhyNot != "" }

// First is nothing: its cautions are no checks.
func (c *CellsResult) First() (path.Check, bool) { return path.Check{}, false }

// Uncharged is the hours in which a battery for the night is too cold or too hot to charge.
func (c *CellsResult) Uncharged() int {
	if !c.Design.ForNight() {
		return 0
	}
	return c.Life.NoFillHours
}

// Facts adds what the battery holds.
func (c *CellsResult) Facts(f *Facts, y YearView) {
	f.CellsForAux = !c.Design.ForNight() && (f.banks == 0 || f.CellsForAux)
	f.banks++
	if y.Store.Capacity.Is {
		f.CellsHold = unit.Of(f.CellsHold.Val + y.Store.Capacity.Val)
	}
}

// Lives is how long the battery lasts.
func (c *CellsResult) Lives() []cost.Lifetime {
	return []cost.Lifetime{{Low: inYears(c.Life.YearsLow), Usual: inYears(c.Life.Years), High: inYears(c.Life.YearsHigh)}}
}

func inYears(y unit.Known[unit.Ratio]) (life unit.Known[unit.Duration]) {
	if y.Is {
		life = unit.Of(unit.Duration(y.Val) * cell.Year)
	}
	return life
}

// Needs are the battery, its fuse and its cable.
func (c *CellsResult) Needs(at string) []Need { return cellNeeds(*c, at) }

// Shared are what one of serves all batteries.
func (c *CellsResult) Shared() []Need {
	out := []Need{{As: cost.AsSmokeAlarm, Name: "Smoke alarm beside the battery", Of: cost.OfSafety, Count: 1}}
	if c.Resolved.Kind.Lead {
		out = append(out, Need{As: cost.AsGoggles, Name: "Goggles and water for 15 minutes", Of: cost.OfSafety, Count: 1, Look: say.Words("against acid")})
	}
	return out
}

// Answer is nothing: a battery has no key of its own in the answer.
func (c *CellsResult) Answer(a *StoreAnswer) {
	if l := c.Life; l.Known {
		a.Life = &LifeAnswer{l.YearsLow, l.Years, l.YearsHigh, unit.Ratio(l.Shelf), unit.Ratio(l.Wear), unit.Ratio(l.Sulphation), l.Capped}
	}
}

func largerBank(s Store, f float64) Store {
	b := *s.Cells
	b.Capacity.Val *= unit.Charge(f)
	return Store{Cells: &b}
}

// tellBank is the capacity of all strings together.
func tellBank(p Part, _ float64) Grown {
	b := p.(*CellsResult).Design
	all := b.Capacity
	all.Val *= unit.Charge(b.Parallel.Or(1))
	return Grown{Size: ratio(all)}
}

func noBankStops(StoreResult, unit.Power) (why, open say.Sentence) { return why, open }

func lessCapacity(s Store, f float64) bool {
	return s.Cells.Resolve().WhyNot == "" && s.Cells.Capacity.Times(f)
}

// batteryLoss changes what comes out of what went in, both ways alike.
func batteryLoss(s Store, f float64) bool {
	b, r := s.Cells, s.Cells.Resolve()
	if r.WhyNot != "" {
		return false
	}
	way := math.Sqrt(f)
	b.ChargeEff, b.DrawEff = unit.Of(unit.Ratio(min(1, r.ChargeEff*way))), unit.Of(unit.Ratio(min(1, r.DrawEff*way)))
	return true
}
