package web

import (
	"fmt"
	"strconv"

	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// The figures of the page Battery, each with what stands behind it.

// cellsHow is what stands behind a figure of a battery.
func cellsHow(formula string, from source.Ref, inputs ...pairView) howView {
	return howView{Formula: formula, Inputs: inputs, Source: from.String(), Topic: "cells"}
}

// byRun is the source of what the year run counts.
func byRun() source.Ref { return source.Derivation.At("settled year, run hour by hour") }

func cellsYear(st model.StoreResult, sys unit.System) []figureRow {
	if !st.InYear {
		return []figureRow{{ID: "none", Name: "Year", Value: "not known yet"}}
	}
	y, c, r := st.Year, st.Cells, st.Cells.Resolved
	e := func(x unit.Energy) string { return unit.BigEnergies.Format(float64(x), sys) }
	share := func(x float64) string { return unit.Percents.Format(x, sys) }
	return []figureRow{
		{"holds", "Gives from full", known(st.Capacity, unit.Energies, sys), cellsHow("capacity · voltage · share for fast drawing · usable share · discharging efficiency", byRun(),
			pairView{"capacity on the label", unit.Charges.Format(float64(r.Charge), sys)}, pairView{"voltage", unit.Voltages.Format(float64(r.Voltage), sys)}, pairView{"usable share", share(r.Depth)}, pairView{"discharging", share(r.DrawEff)})},
		{"trip", "Of what goes in comes back", known(st.RoundTrip, unit.Percents, sys), cellsHow("charging efficiency · discharging efficiency", source.TypicalCells.Whole(), pairView{"charging", share(r.ChargeEff)}, pairView{"discharging", share(r.DrawEff)})},
		{"peukert", "Share left for drawing as fast as the night does", share(float64(c.Rated)), cellsHow("min(1, (C / (I · H))^(k − 1))", source.Peukert.Whole(),
			pairView{"capacity C", unit.Charges.Format(float64(r.Charge), sys)}, pairView{"mean current I", unit.Currents.Format(float64(c.Current), sys)}, pairView{"label holds for H", unit.Hours.Format(float64(r.RatedTime), sys)}, pairView{"exponent k", unit.Rounded(r.Peukert, 3)})},
		{"full", "Charges slower from", share(r.Kind.AcceptFrom.Value) + " full", cellsHow("charging power falls in a straight line to a twentieth at full", r.Kind.AcceptFrom.Source)},
		{"in", "Put in, a year", e(y.Taken), cellsHow("Σ taken at the line, hour by hour", byRun())},
		{"out", "Given back, a year", e(y.Delivered), cellsHow("Σ given at the line, hour by hour", byRun())},
		{"lost", "Lost in it, a year", e(y.Loss), cellsHow("put in − given back − change of what is stored", byRun())},
		{"cycles", "Full cycles a year", unit.Rounded(y.Cycles, 3), cellsHow("drawn in a year / usable capacity", byRun())},
		{"hoursfull", "Hours full", unit.Rounded(y.HoursFull, 3), cellsHow("Σ time at full", byRun())},
	}
}

func cellsLife(c *model.CellsResult, sys unit.System) []figureRow {
	l, r := c.Life, c.Resolved
	if !l.Known {
		return []figureRow{{ID: "none", Name: "Life", Value: "not known yet"}}
	}
	years := "very long"
	if y, ok := l.Years.Value(); ok {
		years = unit.Rounded(float64(y), 2) + " years to 80 % of its capacity"
	}
	rows := []figureRow{
		{"years", "Lasts about", years, cellsHow("1 / (wear a year by use + wear a year by age);  N(D) = N_ref · (D / D_ref)^(−k)", source.E1049.At("rainflow counting, history that repeats"),
			pairView{"cycles N_ref", unit.Rounded(r.CycleLife, 3)}, pairView{"at a depth D_ref", unit.Percents.Format(r.CycleDepth, sys)}, pairView{"exponent k", unit.Rounded(r.CycleSlope, 3)}, pairView{"life on the shelf", unit.Years.Format(float64(r.Calendar), sys)})},
		{"use", "Of the wear, by use", unit.Rounded(100*l.Wear/(l.Wear+l.Shelf+1e-300), 2) + " %", cellsHow("Σ 1 / N(D) of all swings of a year / all wear", source.E1049.At("rainflow counting"), pairView{"swings counted as full cycles", unit.Rounded(l.FullTurn, 3)})},
		{"deepest", "Deepest discharge of the year", unit.Rounded(100*float64(l.Deepest), 2) + " %", cellsHow("1 − lowest state, of the capacity on the label", byRun())},
		{"notfull", "Longest time without being full", model.Lasting(l.NotFull), cellsHow("hours on end under 98 % full; lead–acid wants to be full every 14 days", source.CommonPractice.Whole())},
		{"zero", "Hours of frost", strconv.Itoa(l.BelowZero), cellsHow("hours in which the mean of the last 24 hours of air is below freezing", byRun())},
		{"nofill", "Hours too cold or hot to charge", strconv.Itoa(l.NoFillHours), cellsHow("hours outside the range in which it may be charged", source.TypicalCells.Whole(),
			pairView{"coldest charge", unit.Temperatures.Format(float64(r.ChargeMin), sys)}, pairView{"warmest charge", unit.Temperatures.Format(float64(r.ChargeMax), sys)})},
	}
	if r.Kind.Lead {
		rows = append(rows, figureRow{"frost", "Hours frozen; hours near it", fmt.Sprintf("%d; %d", l.FreezeHours, l.NearFreeze), cellsHow("hours colder than the acid freezes at its charge; within 5 K of it", source.TypicalFreeze.Whole(),
			pairView{"freezes when empty at", unit.Temperatures.Format(float64(cell.FreezesAt(0)), sys)}, pairView{"half full at", unit.Temperatures.Format(float64(cell.FreezesAt(0.5)), sys)}, pairView{"full at", unit.Temperatures.Format(float64(cell.FreezesAt(1)), sys)})})
	}
	return rows
}

// lineRows are the cable and the fuse, as they are and as they should be.
func lineRows(c *model.CellsResult, sys unit.System) []figureRow {
	l, d := c.Line, c.Design
	amps := func(x unit.Current) string { return unit.Currents.Format(float64(x), sys) }
	rows := []figureRow{
		{"most", "Greatest current", amps(l.Most), cellsHow("greatest hour of the year, in or out, or the panels in full sun into an empty battery / voltage", byRun(), pairView{"voltage", unit.Voltages.Format(float64(c.Resolved.Voltage), sys)},
			pairView{"it is a mean over an hour", "a motor that starts takes more for a moment"})},
		{"fuse", "Fuse to take", known(l.FuseTake, unit.Currents, sys), cellsHow("the next usual size over 1.25 × the greatest current, for direct current", source.CommonPractice.Whole(), pairView{"at least", amps(l.FuseLeast)}, pairView{"yours", known(d.Fuse, unit.Currents, sys)})},
		{"area", "Copper to take", known(l.AreaTake, unit.SmallAreas, sys), cellsHow("smallest standard size that carries the fuse and loses at most 3 % of the voltage", source.IEC60364.Whole(), pairView{"length, one way", known(d.CableLength, unit.Lengths, sys)}, pairView{"yours", known(d.CableArea, unit.SmallAreas, sys)})},
	}
	if !d.CableLength.Is {
		rows[2].Value += ", if it is short"
	}
	if l.Ampacity.Is {
		rows = append(rows, figureRow{"ampacity", "Your cable carries", known(l.Ampacity, unit.Currents, sys), cellsHow("by the next smaller standard size, in a house, insulated with PVC", source.IEC60364.Whole())})
	}
	if l.Drop.Is {
		rows = append(rows, figureRow{"drop", "Lost in your cable", unit.Rounded(float64(l.Drop.Val), 2) + " V, " + known(l.DropShare, unit.Percents, sys), cellsHow("2 · length · current · ρ / area, copper at 40 °C", source.CopperIEC.Whole(),
			pairView{"length, one way", known(d.CableLength, unit.Lengths, sys)}, pairView{"area", known(d.CableArea, unit.SmallAreas, sys)}, pairView{"current", amps(l.Most)})})
	}
	return rows
}

// airRows are the air that carries the hydrogen away; none for cells that make no gas.
func airRows(c *model.CellsResult, sys unit.System) []figureRow {
	a := c.Air
	if a.Boost <= 0 {
		return nil
	}
	q := func(x float64) string { return retell(unit.Rounded(x, 2)+" m³ an hour", sys) }
	inputs := []pairView{{"cells in a row n", strconv.Itoa(a.Cells)}, {"capacity C", unit.Charges.Format(float64(c.Resolved.Charge), sys)}}
	gas := c.Resolved.Kind.Gas
	with := func(mA float64) []pairView {
		return append([]pairView{{"gas current I", unit.Rounded(mA, 3) + " mA for each Ah"}}, inputs...)
	}
	from := source.IEC62485.At("section 7")
	return []figureRow{
		{"boost", "While it charges hard", q(a.Boost), cellsHow("0.05 · n · I · C / 1000", from, with(gas.Boost)...)},
		{"float", "While it is kept full", q(a.Float), cellsHow("0.05 · n · I · C / 1000", from, with(gas.Float)...)},
		{"opening", "Openings, one low and one high, each", retell(unit.Rounded(float64(a.Opening)*1e4, 2)+" cm²", sys), cellsHow("28 · m³ an hour while it charges hard", from)},
	}
}

func sizingRows(z cell.Sizing, sys unit.System) []figureRow {
	charge := func(q unit.Charge) string { return unit.Charges.Format(float64(q), sys) }
	num := func(x float64) string { return unit.Rounded(x, 3) }
	from := source.IEEE1013.At("6.3, from memory")
	return []figureRow{
		{"load", "Load of a day", unit.Energies.Format(float64(z.DailyLoad), sys), cellsHow("all loads of the year / 365", byRun())},
		{"plain", "Before corrections", charge(z.Unadjusted), cellsHow("load of a day · days / voltage", from, pairView{"days without sun", num(z.Days)}, pairView{"voltage", unit.Voltages.Format(float64(z.Voltage), sys)})},
		{"depth", "With the usable share", charge(z.ByDepth), cellsHow("before corrections / usable share", from, pairView{"usable share", unit.Percents.Format(z.Depth, sys)})},
		{"age", "With what age takes", charge(z.ByEndOfLife), cellsHow("before corrections / share left at the end of life", from, pairView{"share left", unit.Percents.Format(z.EndOfLife, sys)})},
		{"cold", "With the cold", charge(z.AfterCold), cellsHow("the larger of the two · factor of the coldest day", from, pairView{"factor", num(z.Cold)})},
		{"answer", "With the margin: the trade's answer", charge(z.AfterMargin), cellsHow("with the cold · margin", from, pairView{"margin", num(z.Margin)})},
	}
}
