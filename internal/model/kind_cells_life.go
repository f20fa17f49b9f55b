package model

import (
	"slices"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
	"duskweight/internal/say"
)

// Finish works out life, cautions and the trade's sizing of a battery.
func (c *CellsResult) Finish(y YearView) {
	if c.Resolved.WhyNot != "" {
		return
	}
	if y.Store.InYear {
		c.age(y)
	}
	c.Cautions = append(c.Resolved.Cautions(c.Life), y.Ground.asCold(*c)...)
	if f, tell := cautionNear(c.Design.FuseFrom); tell {
		c.Cautions = append(c.Cautions, f)
	}
	c.Air = c.Resolved.Ventilation()
}

// asCold says that a battery counts as standing in the air outside, where the weather matters to it and nobody said so.
func (g Ground) asCold(c CellsResult) []cell.Flag {
	if c.Life.NoFillHours+c.Life.FreezeHours+c.Life.NearFreeze == 0 || g.inRoom(c.Design) {
		return nil
	}
	switch {
	case c.Design.Indoors == "":
		return []cell.Flag{{Path: "place", Say: say.That("The place of the battery is not known, so it counts as cold and as warm as the air outside.")}}
	case indoors[c.Design.Indoors]:
		return []cell.Flag{{Path: "place", Say: say.That("How warm its room is is not known, so it counts as cold and as warm as the air outside. Say it on the page Place and sun, under Room of the battery.")}}
	}
	return nil
}

// age reads the settled year's state of the battery.
func (c *CellsResult) age(y YearView) {
	r, g := y.Result, y.Ground
	t, hourly := g.cellsOf(c.Design), r.Year.Hourly
	c.Line = c.Resolved.Line(max(r.Peak.of(y.Store), most(hourly, y.At, c.Resolved.Voltage), r.fill(y.Store, c.Resolved.Voltage, y.Variant.labelPower())))
	c.Life = c.Resolved.Age(hourly.State[y.At], hourly.Delivered[y.At], y.Store.Reservoir.Capacity, t)
	c.Sizing, c.SizingSet = c.Resolved.TradeSizing(r.Year.Load/load.DaysInYear, t)
	if c.SizingSet && r.Year.Nights > 0 {
		c.Differ = c.Sizing.Differ(c.Resolved, carries(r.Last.Nights, r.Last.NightsFull), c.Life.NoFillHours)
	}
}

// most is the greatest current of an hour of the year, in or out, at the nominal voltage.
func most(y *year.Hourly, at int, v unit.Voltage) unit.Current {
	if v <= 0 {
		return 0
	}
	j := max(slices.Max(y.Taken[at]), slices.Max(y.Delivered[at]))
	return unit.Current(j / 3600 / float64(v))
}

// labelPower is the power on the labels of all panels, as far as it is known.
func (v Variant) labelPower() (sum unit.Power) {
	for _, a := range v.Panels {
		sum += a.Nominal().Or(0)
	}
	return sum
}

// fill is the current with which the panels fill an empty battery in full sun: the greater of their label's power and of what
// they bring in the best hour, as far as the battery takes it.
func (r *VariantResult) fill(s *StoreResult, v unit.Voltage, label unit.Power) unit.Current {
	if v <= 0 || len(r.Bus.Power) == 0 {
		return 0
	}
	sun := max(slices.Max(r.Bus.Power), float64(label))
	return unit.Current(min(sun, float64(s.Reservoir.FillMax)) / float64(v))
}
