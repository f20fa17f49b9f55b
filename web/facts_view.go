package web

import (
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// factsOf prints the four large figures beside a verdict: what a night needs, what the sun leaves over, what the store
// gives, what it would take.
func factsOf(r model.VariantResult, sys unit.System) []factView {
	f := r.Facts
	facts := []factView{nightFact(f, sys), surplusFact(f, r, sys)}
	if f.OneLiftOut.Is || hasHoist(r) {
		facts = append(facts, liftFact(f, sys), takesFact(f, sys))
	} else {
		facts = append(facts, cellsFact(f, sys), nightsFact(r))
	}
	return facts
}

func hasHoist(r model.VariantResult) bool {
	for _, s := range r.Stores {
		if s.Hoist != nil {
			return true
		}
	}
	return false
}

func energyOr(k unit.Known[unit.Energy], sys unit.System) string { return known(k, unit.Energies, sys) }

func nightFact(f model.Facts, sys unit.System) factView {
	v := factView{ID: "night", Label: "A night needs", Value: "not known"}
	if !f.NightAppliances.Is {
		v.Note = "the place is not known"
		return v
	}
	all := f.NightAppliances.Val + f.NightStanding.Or(0)
	v.Value = unit.Energies.Format(float64(all), sys)
	v.Note = energyOr(f.NightStanding, sys) + " of it for things that use power all the time"
	if f.NightStanding.Val > f.NightAppliances.Val {
		v.Note += ": more than for all lamps and devices"
	}
	v.How = &howView{Formula: "mean over all nights of Σ power × hours on in night hours, and standing power × night hours", Topic: "night",
		Inputs: []pairView{{"lamps and devices", energyOr(f.NightAppliances, sys)}, {"all the time", energyOr(f.NightStanding, sys)}, {"longest night", energyOr(f.NightLongest, sys)}},
		Source: "summed over the 8760 hours of the year; night: sun lower than 0.833° under the horizon"}
	return v
}

func surplusFact(f model.Facts, r model.VariantResult, sys unit.System) factView {
	v := factView{ID: "surplus", Label: "Sun left over", Value: energyOr(f.SurplusDay, sys)}
	if !f.SurplusDay.Is {
		return v
	}
	v.Note = "a mean day; in " + monthNames[f.SurplusMonth-1] + " " + energyOr(f.SurplusWorst, sys)
	v.How = &howView{Formula: "Σ max(0, sun at the line − all loads) / 365", Topic: "sun",
		Inputs: []pairView{{"sun at the line, a year", unit.BigEnergies.Format(float64(r.Year.Bus), sys)}, {"used at once", unit.BigEnergies.Format(float64(r.Year.Direct), sys)},
			{"put into stores", unit.BigEnergies.Format(float64(r.Year.Taken), sys)}, {"not used", unit.BigEnergies.Format(float64(r.Year.Spilled), sys)}},
		Source: "run hour by hour over a year"}
	return v
}

func liftFact(f model.Facts, sys unit.System) factView {
	v := factView{ID: "lift", Label: "One full lift gives back", Value: energyOr(f.OneLiftOut, sys)}
	in, out := f.OneLiftIn, f.OneLiftOut
	if in.Is && out.Is && in.Val > 0 {
		v.Note = "of " + energyOr(in, sys) + " put in, " + unit.Percents.Format(float64(out.Val/unit.Energy(in.Val)), sys)
	}
	if !out.Is {
		v.Note = "the missing inputs stand under “Still missing”"
	}
	if f.LiftMinutes.Is {
		v.Note += "; your lamps use that in " + model.Lasting(f.LiftMinutes.Val)
	}
	v.How = &howView{Formula: "out = Σ over the layers of (U·I·η − P) × time;  in = Σ (V·I/η + P) × time", Topic: "hoist",
		Inputs: []pairView{{"put in", energyOr(in, sys)}, {"given back", energyOr(out, sys)}, {"mean power of your lamps", known(f.LampPower, unit.Powers, sys)}},
		Source: "direct-current machine, gears and rope as in the guide"}
	return v
}

func takesFact(f model.Facts, sys unit.System) factView {
	v := factView{ID: "takes", Label: "To last the night", Value: "not known"}
	if !f.MassForNight.Is {
		if f.OneLiftOut.Is && f.OneLiftOut.Val <= 0 {
			v.Value, v.Note = "no mass", "this drive gives nothing back"
		}
		if !f.OneLiftOut.Is {
			v.Note = "what one lift gives is not known"
		}
		return v
	}
	v.Value = tonnes(f.MassForNight.Val, sys)
	v.Note = "at this height, and all that holds it grown along"
	if f.NoMass != "" {
		v.Value, v.Note = "no mass", "in proportion "+v.Value+". But "+retell(f.NoMass, sys)+"."
	}
	if f.NightBattery.Is {
		if f.NoMass == "" {
			v.Note += "."
		}
		v.Note += " For one mean night: a 12.8 V battery of " + unit.Charges.Format(float64(f.NightBattery.Val), sys)
	}
	v.How = &howView{Formula: "mass × what a night needs / what one lift gives;  battery = energy / (0.8 × 12.8 V)", Topic: "hoist",
		Inputs: []pairView{{"mass in proportion", known(f.MassForNight, unit.Masses, sys)}, {"times one lift", known(f.TimesMore, unit.Ratios, sys)}, {"or, with this mass, a height of", known(f.HeightFor, unit.Lengths, sys)},
			{"the battery that equals one lift", known(f.SameBattery, unit.Charges, sys)}},
		Source: "in proportion; base weights, beam, rope and gears must grow with the mass"}
	return v
}

func tonnes(m unit.Mass, sys unit.System) string {
	if sys == unit.Metric && m >= 10000 {
		return unit.Rounded(float64(m)/1000, 2) + " t"
	}
	return unit.Masses.Format(float64(m), sys)
}

func cellsFact(f model.Facts, sys unit.System) factView {
	return factView{ID: "cells", Label: "The battery holds", Value: energyOr(f.CellsHold, sys), Note: "from full, at the night's load",
		How: &howView{Formula: "capacity × voltage × usable share × share for fast drawing × discharging efficiency", Topic: "cells", Source: "Peukert in the rated form; values of the kind on the battery's own page"}}
}

func nightsFact(r model.VariantResult) factView {
	v := factView{ID: "nights", Label: "Nights with light", Value: "not known"}
	if r.YearKnown && r.Open == "" {
		v.Value = unit.Rounded(float64(r.Year.NightsServed), 3) + " of " + unit.Rounded(float64(r.Year.Nights), 3)
		v.Note = "longest time without: " + unit.Rounded(float64(r.Year.LongestOutage.Hours), 3) + " hours of essential load"
		v.How = &howView{Formula: "a night counts when nothing the appliances wanted is missing", Topic: "night", Source: "settled year, run hour by hour"}
	}
	return v
}
