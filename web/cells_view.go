package web

import (
	"strconv"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// cellsView is the answer of one battery, ready to print.
type cellsView struct {
	Headline string
	More     []string
	Facts    []factView
	Flags    []flagView
	Year     []pairView
	Life     []pairView
	Sizing   []pairView
	Differ   []string
	Typical  []typicalView
	Missing  []linkView
}

// typicalView is one value taken from the kind of cells.
type typicalView struct {
	Link          linkView
	Value, Source string
}

func cellsViewOf(r model.VariantResult, i int, sys unit.System, labels map[string]string, page string) cellsView {
	r = retold(r, sys)
	st := r.Stores[i]
	c := st.Cells
	v := cellsView{Facts: factsOf(r, sys)}
	v.Headline, v.More = headlineOf(r)
	for _, f := range c.Cautions {
		v.Flags = append(v.Flags, flagView{Say: f.Say, Bad: f.Bad})
	}
	if st.WhyNot != "" {
		v.Flags = append([]flagView{{Say: st.WhyNot}}, v.Flags...)
	}
	at := storePath(i, "cells")
	v.Year, v.Life = cellsYear(st, sys), cellsLife(c)
	if c.SizingSet {
		z := c.Sizing
		charge := func(q unit.Charge) string { return unit.Charges.Format(float64(q), sys) }
		v.Sizing = []pairView{{"Load of a day", unit.Energies.Format(float64(z.DailyLoad), sys)}, {"Days without sun", unit.Rounded(z.Days, 3)}, {"Before corrections", charge(z.Unadjusted)},
			{"With the usable share", charge(z.ByDepth)}, {"With what age takes", charge(z.ByEndOfLife)}, {"With the cold", charge(z.AfterCold)}, {"With the margin: the trade's answer", charge(z.AfterMargin)}}
		v.Differ = c.Differ
	}
	for _, t := range c.Resolved.Typical {
		v.Typical = append(v.Typical, typicalView{fieldLink(at+"."+t.Path, labels, page), cellsValue(t.Path, t.Value, sys), t.Source.String()})
	}
	for _, m := range r.Missing {
		if model.Within(m.Path, at) {
			l := fieldLink(m.Path, labels, page)
			l.Text += ": " + m.Wants
			v.Missing = append(v.Missing, l)
		}
	}
	return v
}

func cellsYear(st model.StoreResult, sys unit.System) []pairView {
	if !st.InYear {
		return []pairView{{"Year", "not known yet"}}
	}
	y := st.Year
	e := func(x unit.Energy) string { return unit.BigEnergies.Format(float64(x), sys) }
	return []pairView{{"Gives from full", known(st.Capacity, unit.Energies, sys)}, {"Of what goes in comes back", known(st.RoundTrip, unit.Percents, sys)},
		{"Put in, a year", e(y.Taken)}, {"Given back, a year", e(y.Delivered)}, {"Lost in it, a year", e(y.Loss)}, {"Full cycles a year", unit.Rounded(y.Cycles, 3)},
		{"Hours full", unit.Rounded(y.HoursFull, 3)}, {"Share left for drawing as fast as the night does", unit.Percents.Format(float64(st.Cells.Rated), sys)}}
}

func cellsLife(c *model.CellsResult) []pairView {
	if !c.Life.Known {
		return []pairView{{"Life", "not known yet"}}
	}
	years := "very long"
	if y, ok := c.Life.Years.Value(); ok {
		years = unit.Rounded(float64(y), 2) + " years to 80 % of its capacity"
	}
	return []pairView{{"Lasts about", years}, {"Of the wear, by use", unit.Rounded(100*c.Life.Wear/(c.Life.Wear+c.Life.Shelf+1e-300), 2) + " %"}, {"Deepest discharge of the year", unit.Rounded(100*float64(c.Life.Deepest), 2) + " %"},
		{"Hours of frost", strconv.Itoa(c.Life.BelowZero)}, {"Hours too cold or hot to charge", strconv.Itoa(c.Life.NoFillHours)}}
}

// cellsValue prints a typical value in the unit of its field.
func cellsValue(path string, v float64, sys unit.System) string {
	switch path {
	case "usable_depth", "round_trip", "charge_efficiency", "discharge_efficiency", "leak_per_month", "cycle_life_depth":
		return unit.Percents.Format(v, sys)
	case "charge_min_c", "charge_max_c":
		return unit.Temperatures.Format(v, sys)
	case "calendar_life_s":
		return unit.Years.Format(v, sys)
	case "rated_time_s":
		return unit.Hours.Format(v, sys)
	case "charge_rate_per_h", "draw_rate_per_h":
		return unit.PerHours.Format(v, sys)
	case "standing_w":
		return unit.Powers.Format(v, sys)
	}
	return unit.Rounded(v, 3)
}
