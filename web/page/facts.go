package page

import (
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"fmt"
)

// FactsOf prints the four large figures beside a verdict: what a night needs, what the sun leaves over, what the store
// gives, what it would take.
func FactsOf(r model.VariantResult, sys unit.System) []FactView {
	f := r.Facts
	facts := []FactView{nightFact(f, sys), surplusFact(f, r, sys)}
	if f.Lifts {
		facts = append(facts, liftFact(f, sys), takesFact(f, sys))
	} else {
		facts = append(facts, holdsFact(r, sys), nightsFact(r))
	}
	return facts
}

// Worked prints an energy that the model works out of what a maker guessed and measured: with two digits, which is what such
// inputs support (our own judgement), on whatever page. What it was made of stands behind "how" with three.
func Worked(k unit.Known[unit.Energy], sys unit.System) string {
	if v, ok := k.Value(); ok {
		return unit.Energies.FormatTo(float64(v), sys, workedDigits, unit.Nearest)
	}
	return "not known"
}

// workedDigits is how many digits a result has in a heading, a bar or a sentence.
const workedDigits = 2

func EnergyOr(k unit.Known[unit.Energy], sys unit.System) string { return Known(k, unit.Energies, sys) }

func nightFact(f model.Facts, sys unit.System) FactView {
	v := FactView{ID: "night", Label: "A night needs", Value: "not known"}
	if !f.NightAppliances.Is {
		v.Note = "the place is not known"
		return v
	}
	all := f.NightAppliances.Val + f.NightStanding.Or(0)
	v.Value = Worked(unit.Of(all), sys)
	v.Note = Worked(f.NightStanding, sys) + " of it for things that use power all the time"
	if f.NightStanding.Val > f.NightAppliances.Val {
		v.Note += ": more than for all lamps and devices"
	}
	v.How = &HowView{Formula: "mean over all nights of Σ power × hours on in night hours, and standing power × night hours", Topic: "night",
		Inputs: []PairView{{"lamps and devices", EnergyOr(f.NightAppliances, sys)}, {"all the time", EnergyOr(f.NightStanding, sys)}, {"longest night", EnergyOr(f.NightLongest, sys)}},
		Source: "summed over the 8\u00a0760 hours of the year; night: sun lower than 0.833° under the horizon"}
	return v
}

func surplusFact(f model.Facts, r model.VariantResult, sys unit.System) FactView {
	v := FactView{ID: "surplus", Label: "Sun left over", Value: Worked(f.SurplusDay, sys)}
	if !f.SurplusDay.Is {
		return v
	}
	v.Note = "a mean day; in " + form.MonthNames[f.SurplusMonth-1] + " " + Worked(f.SurplusWorst, sys)
	v.How = &HowView{Formula: "Σ max(0, sun at the line − all loads) / 365", Topic: "sun",
		Inputs: []PairView{{"sun at the line, a year", unit.BigEnergies.Format(float64(r.Year.Bus), sys)}, {"used at once", unit.BigEnergies.Format(float64(r.Year.Direct), sys)},
			{"put into stores", unit.BigEnergies.Format(float64(r.Year.Taken), sys)}, {"not used", unit.BigEnergies.Format(float64(r.Year.Spilled), sys)}},
		Source: "run hour by hour over a year"}
	return v
}

func liftFact(f model.Facts, sys unit.System) FactView {
	v := FactView{ID: "lift", Label: "One full lift gives back", Value: Worked(f.OneLiftOut, sys)}
	in, out := f.OneLiftIn, f.OneLiftOut
	if in.Is && out.Is && in.Val > 0 {
		v.Note = "of " + Worked(in, sys) + " put in, " + unit.Percents.FormatTo(float64(out.Val/unit.Energy(in.Val)), sys, workedDigits, unit.Nearest)
	}
	if !out.Is {
		v.Note = "the missing inputs are listed under “Still missing”"
	}
	if f.LiftMinutes.Is {
		v.Note += "; your lamps use that in " + form.Lasting(f.LiftMinutes.Val)
	}
	v.How = &HowView{Formula: "out = Σ over the layers of (U·I·η − P) × time;  in = Σ (V·I/η + P) × time", Topic: "hoist",
		Inputs: []PairView{{"put in", EnergyOr(in, sys)}, {"given back", EnergyOr(out, sys)}, {"mean power of your lamps", Known(f.LampPower, unit.Powers, sys)}},
		Source: "direct-current machine, gears and rope as in the guide"}
	return v
}

func takesFact(f model.Facts, sys unit.System) FactView {
	v := FactView{ID: "takes", Label: "To last the night", Value: "not known"}
	if !f.MassForNight.Is {
		if f.OneLiftOut.Is && f.OneLiftOut.Val <= 0 {
			v.Value, v.Note = "no mass", "this drive gives nothing back"
		}
		if !f.OneLiftOut.Is {
			v.Note = "the energy of one lift is not known"
		}
		return v
	}
	v.Value = Tonnes(f.MassForNight.Val, sys)
	v.Note = "at this height, and everything that holds it must grow too"
	if !f.NoMass.IsZero() {
		v.Value, v.Note = "no mass", "by energy alone "+v.Value+". But "+f.NoMass.In(sys)+"."
	}
	if f.NightBattery.Is {
		if f.NoMass.IsZero() {
			v.Note += "."
		}
		v.Note += " For one mean night: a 12.8 V battery of " + unit.Charges.Format(float64(f.NightBattery.Val), sys)
	}
	v.How = &HowView{Formula: "mass × what a night needs / what one lift gives;  battery = energy / (0.8 × 12.8 V)", Topic: "hoist",
		Inputs: []PairView{{"mass, by energy alone", Known(f.MassForNight, unit.Masses.Fine(), sys)}, {"times one lift", Known(f.TimesMore, unit.Ratios, sys)}, {"or, with this mass, a height of", Known(f.HeightFor, unit.Heights, sys)},
			{"the battery that equals one lift", Known(f.SameBattery, unit.Charges, sys)}},
		Source: "by energy alone; base weights, beam, rope and gears must grow with the mass"}
	return v
}

func Tonnes(m unit.Mass, sys unit.System) string {
	if sys == unit.Metric && m >= 10000 {
		return unit.Rounded(float64(m)/1000, workedDigits) + " t"
	}
	return unit.Masses.FormatTo(float64(m), sys, workedDigits, unit.Nearest)
}

func holdsFact(r model.VariantResult, sys unit.System) FactView {
	k, gives := r.Holds()
	return FactView{ID: k.Key, Label: k.Holds.Say, Value: Worked(gives, sys), Note: "from a full charge, at the night's load",
		How: &HowView{Formula: k.Holds.Formula, Topic: k.Key, Source: k.Holds.Source}}
}

func nightsFact(r model.VariantResult) FactView {
	v := FactView{ID: "nights", Label: "Full nights", Value: "not known"}
	if r.YearKnown && r.Open.IsZero() {
		v.Value = unit.Rounded(float64(r.Last.NightsFull), 3) + " of " + unit.Rounded(float64(r.Last.Nights), 3)
		v.Note = "longest time without: " + Counted(r.Last.LongestOutage, "hour") + " of essential load"
		if w := r.Worn; len(w) == 3 {
			v.Note += fmt.Sprintf("; the battery new: %d, half-way: %d, in its last year: %d", w[0].NightsFull, w[1].NightsFull, w[2].NightsFull)
		}
		v.How = &HowView{Formula: "a night is full when at most 1 % of what it needs is missing, with batteries in the last year of their life", Topic: "night", Source: "the year run hour by hour"}
	}
	return v
}
