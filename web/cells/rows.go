package cells

import (
	"fmt"
	"strconv"

	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The figures of the page Battery, each with what stands behind it.

// cellsHow is what stands behind a figure of a battery.
func cellsHow(formula string, from source.Ref, inputs ...page.PairView) page.HowView {
	return page.HowView{Formula: formula, Inputs: inputs, Source: from.String(), Topic: "cells"}
}

// byRun is the source of what the year run counts.
func byRun() source.Ref { return source.Derivation.At("the year run hour by hour") }

func cellsYear(st model.StoreResult, sys unit.System) []page.FigureRow {
	if !st.InYear {
		return []page.FigureRow{{ID: "none", Name: "Year", Value: "not known yet"}}
	}
	y, c := st.Year, model.CellsOf(st)
	r := c.Resolved
	e := func(x unit.Energy) string { return unit.BigEnergies.Format(float64(x), sys) }
	share := func(x float64) string { return unit.Percents.Format(x, sys) }
	return []page.FigureRow{
		{ID: "holds", Name: "Energy from full", Value: page.Known(st.Capacity, unit.Energies, sys), How: cellsHow("capacity · voltage · share for fast drawing · usable share · discharging efficiency", byRun(),
			page.PairView{Name: "capacity on the label", Value: unit.Charges.Format(float64(r.Charge), sys)}, page.PairView{Name: "voltage", Value: unit.Voltages.Format(float64(r.Voltage), sys)}, page.PairView{Name: "usable share", Value: share(r.Depth)}, page.PairView{Name: "discharging", Value: share(r.DrawEff)})},
		{ID: "trip", Name: "You get back", Value: page.Known(st.RoundTrip, unit.Percents, sys), How: cellsHow("charging efficiency · discharging efficiency", source.TypicalCells.Whole(), page.PairView{Name: "charging", Value: share(r.ChargeEff)}, page.PairView{Name: "discharging", Value: share(r.DrawEff)})},
		{ID: "peukert", Name: "Capacity left at the night’s current", Value: share(float64(c.Rated)), How: cellsHow("min(1, (C / (I · H))^(k − 1))", source.Peukert.Whole(),
			page.PairView{Name: "capacity C", Value: unit.Charges.Format(float64(r.Charge), sys)}, page.PairView{Name: "mean current I", Value: unit.Currents.Format(float64(c.Current), sys)}, page.PairView{Name: "time of the label’s discharge H", Value: unit.Hours.Format(float64(r.RatedTime), sys)}, page.PairView{Name: "exponent k", Value: unit.Rounded(r.Peukert, 3)})},
		{ID: "full", Name: "Charges slower from", Value: share(r.Kind.AcceptFrom.Value) + " full", How: cellsHow("charging power falls in a straight line to a twentieth at full", r.Kind.AcceptFrom.Source)},
		{ID: "in", Name: "Put in, a year", Value: e(y.Taken), How: cellsHow("Σ taken at the line, hour by hour", byRun())},
		{ID: "out", Name: "Given back, a year", Value: e(y.Delivered), How: cellsHow("Σ given at the line, hour by hour", byRun())},
		{ID: "lost", Name: "Lost in it, a year", Value: e(y.Loss), How: cellsHow("put in − given back − change of what is stored", byRun())},
		{ID: "cycles", Name: "Full cycles a year", Value: unit.Rounded(y.Cycles, 3), How: cellsHow("drawn in a year / usable capacity", byRun())},
		{ID: "hoursfull", Name: "Hours full", Value: unit.Rounded(y.HoursFull, 3), How: cellsHow("Σ time at full", byRun())},
	}
}

func cellsLife(c *model.CellsResult, sys unit.System) []page.FigureRow {
	l, r := c.Life, c.Resolved
	if !l.Known {
		return []page.FigureRow{{ID: "none", Name: "Life", Value: "not known yet"}}
	}
	years := "very long"
	if y, ok := l.Years.Value(); ok {
		years = unit.Rounded(float64(y), 2) + " years to 80 % of its capacity"
	}
	rows := []page.FigureRow{
		{ID: "years", Name: "Lasts about", Value: years, How: cellsHow("1 / (wear a year by use + wear a year by age);  N(D) = N_ref · (D / D_ref)^(−k)", source.E1049.At("rainflow counting, history that repeats"),
			page.PairView{Name: "cycles N_ref", Value: unit.Rounded(r.CycleLife, 3)}, page.PairView{Name: "at a depth D_ref", Value: unit.Percents.Format(r.CycleDepth, sys)}, page.PairView{Name: "exponent k", Value: unit.Rounded(r.CycleSlope, 3)}, page.PairView{Name: "life on the shelf", Value: unit.Years.Format(float64(r.Calendar), sys)})},
		{ID: "use", Name: "Of the wear, by use", Value: unit.Rounded(100*l.Wear/(l.Wear+l.Shelf+1e-300), 2) + " %", How: cellsHow("Σ 1 / N(D) of all swings of a year / all wear", source.E1049.At("rainflow counting"), page.PairView{Name: "swings counted as full cycles", Value: unit.Rounded(l.FullTurn, 3)})},
		{ID: "deepest", Name: "Deepest discharge of the year", Value: unit.Rounded(100*float64(l.Deepest), 2) + " %", How: cellsHow("1 − lowest state, of the capacity on the label", byRun())},
		{ID: "notfull", Name: "Longest time without being full", Value: form.Lasting(l.NotFull), How: cellsHow("hours on end under 98 % full; lead–acid needs to be full every 14 days", source.CommonPractice.Whole())},
		{ID: "zero", Name: "Hours of frost", Value: strconv.Itoa(l.BelowZero), How: cellsHow("hours in which the mean of the last 24 hours of air is below freezing", byRun())},
		{ID: "nofill", Name: "Hours too cold or hot to charge", Value: strconv.Itoa(l.NoFillHours), How: cellsHow("hours outside the range in which it may be charged", source.TypicalCells.Whole(),
			page.PairView{Name: "coldest charge", Value: unit.Temperatures.Format(float64(r.ChargeMin), sys)}, page.PairView{Name: "warmest charge", Value: unit.Temperatures.Format(float64(r.ChargeMax), sys)})},
	}
	if r.Kind.Lead {
		rows = append(rows, page.FigureRow{ID: "frost", Name: "Hours frozen; hours near it", Value: fmt.Sprintf("%d; %d", l.FreezeHours, l.NearFreeze), How: cellsHow("hours colder than the acid freezes at its charge; within 5 K of it", source.TypicalFreeze.Whole(),
			page.PairView{Name: "freezes when empty at", Value: unit.Temperatures.Format(float64(cell.FreezesAt(0)), sys)}, page.PairView{Name: "half full at", Value: unit.Temperatures.Format(float64(cell.FreezesAt(0.5)), sys)}, page.PairView{Name: "full at", Value: unit.Temperatures.Format(float64(cell.FreezesAt(1)), sys)})})
	}
	return rows
}

// lineRows are the cable and the fuse, as they are and as they should be.
func lineRows(c *model.CellsResult, sys unit.System) []page.FigureRow {
	l, d := c.Line, c.Design
	amps := func(x unit.Current) string { return unit.Currents.Format(float64(x), sys) }
	rows := []page.FigureRow{
		{ID: "most", Name: "Greatest current", Value: amps(l.Most), How: cellsHow("greatest hour of the year, in or out, or the panels in full sun into an empty battery / voltage", byRun(), page.PairView{Name: "voltage", Value: unit.Voltages.Format(float64(c.Resolved.Voltage), sys)},
			page.PairView{Name: "it is a mean over an hour", Value: "a motor that starts draws more for a moment"})},
		{ID: "fuse", Name: "Fuse to use", Value: page.Known(l.FuseTake, unit.Currents, sys), How: cellsHow("the next usual size over 1.25 × the greatest current, for direct current", source.CommonPractice.Whole(), page.PairView{Name: "at least", Value: amps(l.FuseLeast)}, page.PairView{Name: "yours", Value: page.Known(d.Fuse, unit.Currents, sys)})},
		{ID: "area", Name: "Copper to use", Value: page.Known(l.AreaTake, unit.WireAreas, sys), How: cellsHow("smallest standard size that carries the fuse and loses at most 3 % of the voltage", source.IEC60364.Whole(), page.PairView{Name: "length, one way", Value: page.Known(d.CableLength, unit.Lengths, sys)}, page.PairView{Name: "yours", Value: page.Known(d.CableArea, unit.WireAreas, sys)})},
	}
	if !d.CableLength.Is {
		rows[2].Value += ", if it is short"
	}
	if l.Ampacity.Is {
		rows = append(rows, page.FigureRow{ID: "ampacity", Name: "Your cable carries", Value: page.Known(l.Ampacity, unit.Currents, sys), How: cellsHow("by the next smaller standard size, in a house, insulated with PVC", source.IEC60364.Whole())})
	}
	if l.Drop.Is {
		rows = append(rows, page.FigureRow{ID: "drop", Name: "Lost in your cable", Value: unit.Rounded(float64(l.Drop.Val), 2) + " V, " + page.Known(l.DropShare, unit.Percents, sys), How: cellsHow("2 · length · current · ρ / area, copper at 40 °C", source.CopperIEC.Whole(),
			page.PairView{Name: "length, one way", Value: page.Known(d.CableLength, unit.Lengths, sys)}, page.PairView{Name: "area", Value: page.Known(d.CableArea, unit.WireAreas, sys)}, page.PairView{Name: "current", Value: amps(l.Most)})})
	}
	return rows
}

// airRows are the air that carries the hydrogen away; none for cells that make no gas.
func airRows(c *model.CellsResult, sys unit.System) []page.FigureRow {
	a := c.Air
	if a.Boost <= 0 {
		return nil
	}
	q := func(x float64) string { return say.Of(unit.Volumes, x).To(2).Up().In(sys) + " an hour" }
	inputs := []page.PairView{{Name: "cells in a row n", Value: strconv.Itoa(a.Cells)}, {Name: "capacity C", Value: unit.Charges.Format(float64(c.Resolved.Charge), sys)}}
	gas := c.Resolved.Kind.Gas
	with := func(mA float64) []page.PairView {
		return append([]page.PairView{{Name: "gas current I", Value: unit.Rounded(mA, 3) + " mA for each Ah"}}, inputs...)
	}
	from := source.IEC62485.At("section 7")
	return []page.FigureRow{
		{ID: "boost", Name: "While it charges hard", Value: q(a.Boost), How: cellsHow("0.05 · n · I · C / 1\u00a0000", from, with(gas.Boost)...)},
		{ID: "float", Name: "While it is kept full", Value: q(a.Float), How: cellsHow("0.05 · n · I · C / 1\u00a0000", from, with(gas.Float)...)},
		{ID: "opening", Name: "Openings, one low and one high, each", Value: say.Opening(a.Opening).To(2).Up().In(sys), How: cellsHow("28 · m³ an hour while it charges hard", from)},
	}
}

func sizingRows(z cell.Sizing, sys unit.System) []page.FigureRow {
	charge := func(q unit.Charge) string { return unit.Charges.Format(float64(q), sys) }
	num := func(x float64) string { return unit.Rounded(x, 3) }
	from := source.IEEE1013.At("6.3, from memory")
	return []page.FigureRow{
		{ID: "load", Name: "Load of a day", Value: unit.Energies.Format(float64(z.DailyLoad), sys), How: cellsHow("all loads of the year / 365", byRun())},
		{ID: "plain", Name: "Before corrections", Value: charge(z.Unadjusted), How: cellsHow("load of a day · days / voltage", from, page.PairView{Name: "days without sun", Value: num(z.Days)}, page.PairView{Name: "voltage", Value: unit.Voltages.Format(float64(z.Voltage), sys)})},
		{ID: "depth", Name: "With the usable share", Value: charge(z.ByDepth), How: cellsHow("before corrections / usable share", from, page.PairView{Name: "usable share", Value: unit.Percents.Format(z.Depth, sys)})},
		{ID: "age", Name: "With the loss by age", Value: charge(z.ByEndOfLife), How: cellsHow("before corrections / share left at the end of life", from, page.PairView{Name: "share left", Value: unit.Percents.Format(z.EndOfLife, sys)})},
		{ID: "cold", Name: "With the cold", Value: charge(z.AfterCold), How: cellsHow("the larger of the two · factor of the coldest day", from, page.PairView{Name: "factor", Value: num(z.Cold)})},
		{ID: "answer", Name: "With the margin: the trade's answer", Value: charge(z.AfterMargin), How: cellsHow("with the cold · margin", from, page.PairView{Name: "margin", Value: num(z.Margin)})},
	}
}
