package model

import (
	"cmp"
	"fmt"
	"slices"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
)

// finish adds to a variant what follows from its year and its stores: life, facts, verdict, money, readiness.
func (r *VariantResult) finish(g Ground, v Variant) {
	lives := r.ageCells(g, v)
	for _, s := range r.Stores {
		if s.Hoist != nil && s.Hoist.Direct != nil && s.Hoist.Direct.Known {
			s.Hoist.Direct.words()
		}
	}
	for i := range r.Stores {
		r.Stores[i].finish(r)
	}
	r.facts(g)
	if r.YearKnown {
		var wanted, unmet unit.Energy
		for _, n := range r.Year.NightLog {
			wanted += n.Wanted
			unmet += n.Unmet
		}
		if wanted > 0 {
			r.NightShare = 1 - float64(unmet)/float64(wanted)
		}
		r.Verdict = verdict(r.Year.Nights, r.Year.NightsServed, wanted, wanted-unmet)
		if r.Open = r.openPart(len(v.Panels)); r.Open != "" {
			r.Verdict = ""
		}
	}
	var delivered unit.Energy
	nights := 0
	if r.YearKnown {
		delivered, nights = r.Year.Delivered, r.Year.NightsServed
	}
	r.Cost = cost.Reckon(cost.Input{Parts: v.Parts, Terms: g.Project.Money, Delivered: delivered, Nights: nights, Batteries: lives})
	r.underSun()
	r.overLamps(g)
	r.ready()
	r.missing(g)
	r.Headline = headline(r)
}

// ageCells works out life, cautions and the trade's sizing of each battery, and returns the lives for the bill.
func (r *VariantResult) ageCells(g Ground, v Variant) []unit.Known[unit.Duration] {
	var lives []unit.Known[unit.Duration]
	n := 0
	for i := range r.Stores {
		s := &r.Stores[i]
		at := n
		if s.InYear {
			n++
		}
		c := s.Cells
		if c == nil {
			continue
		}
		var life unit.Known[unit.Duration]
		if c.Resolved.WhyNot == "" {
			if s.InYear {
				c.age(g, r, s, at, v.labelPower())
				if y := c.Life.Years; y.Is {
					life = unit.Of(unit.Duration(y.Val) * cell.Year)
				}
			}
			c.Cautions = append(c.Resolved.Cautions(c.Life), g.asCold(*c)...)
			c.Air = c.Resolved.Ventilation()
		}
		lives = append(lives, life)
	}
	return lives
}

// asCold says that a battery counts as standing in the air outside, where the weather matters to it and nobody said so.
func (g Ground) asCold(c CellsResult) []cell.Flag {
	if c.Life.NoFillHours+c.Life.FreezeHours+c.Life.NearFreeze == 0 || g.inRoom(c.Design) {
		return nil
	}
	const counts = "so it counts as cold and as warm as the air outside."
	switch {
	case c.Design.Indoors == "":
		return []cell.Flag{{Path: "place", Say: "Where it stands is not known, " + counts}}
	case indoors[c.Design.Indoors]:
		return []cell.Flag{{Path: "place", Say: "How warm its room is is not known, " + counts + " Say it on the page Place and sun, under Room of the battery."}}
	}
	return nil
}

// age reads the settled year's state of one battery; at is its place among the stores of the year.
func (c *CellsResult) age(g Ground, r *VariantResult, s *StoreResult, at int, label unit.Power) {
	t := g.cellsOf(c.Design)
	c.Line = c.Resolved.Line(max(most(r.Year.Hourly, at, c.Resolved.Voltage), r.fill(s, c.Resolved.Voltage, label)))
	c.Life = c.Resolved.Age(r.Year.Hourly.State[at], s.Reservoir.Capacity, t)
	c.Sizing, c.SizingSet = c.Resolved.TradeSizing(r.Year.Load/load.DaysInYear, t)
	if c.SizingSet && r.Year.Nights > 0 {
		c.Differ = c.Sizing.Differ(c.Resolved, float64(r.Year.NightsServed)/float64(r.Year.Nights), c.Life.NoFillHours)
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

// finish reports capacity and round trip of one store at its reference draw: for a hoist its own load, for cells the
// mean night load.
func (s *StoreResult) finish(r *VariantResult) {
	if s.Reservoir == nil {
		return
	}
	at := s.Reservoir.DrawMax
	if s.Kind == "cells" && s.Cells.Current > 0 {
		at = min(at, unit.Power(float64(s.Cells.Current)*float64(s.Cells.Resolved.Voltage)))
	}
	if at <= 0 {
		return
	}
	s.Capacity = unit.Of(s.Reservoir.Drawn(at))
	s.RoundTrip = unit.Of(unit.Ratio(s.Reservoir.RoundTrip(at)))
}

// facts works out the plain answers.
func (r *VariantResult) facts(g Ground) {
	f := &r.Facts
	if g.Sky != nil {
		r.nightFacts(g)
	}
	if r.YearKnown {
		r.surplus()
	}
	aux, cells := 0, 0
	for _, s := range r.Stores {
		switch {
		case s.Kind == "cells":
			cells++
			if !s.Cells.Design.ForNight() {
				aux++
			}
			if s.Capacity.Is {
				f.CellsHold = unit.Of(f.CellsHold.Val + s.Capacity.Val)
			}
		case s.Hoist != nil && !f.OneLiftOut.Is:
			r.liftFacts(s.Hoist)
			r.noMass(g, s)
		}
	}
	f.CellsForAux = cells > 0 && aux == cells
}

func (r *VariantResult) nightFacts(g Ground) {
	f := &r.Facts
	f.NightAppliances = unit.Of(g.Load.MeanNight)
	standing, nights, longest := r.StandingPower, float64(g.Load.Nights), 0
	if !r.YearKnown {
		standing = g.Load.StandingPower
	}
	hours, lit := nightHours(g.Load)
	for _, n := range hours {
		longest = max(longest, n)
	}
	all := 0
	for _, n := range hours {
		all += n
	}
	if nights == 0 {
		return
	}
	f.NightStanding = unit.Of(unit.Energy(float64(standing) * 3600 * float64(all) / nights))
	f.NightLongest = unit.Of(g.Load.MaxNight + unit.Energy(float64(standing)*3600*float64(longest)))
	if lit > 0 {
		f.LampPower = unit.Of(unit.Power(float64(g.Load.MeanNight) * nights / (lit * 3600)))
	}
}

// nightHours counts the night hours of each night, and the hours of the year in which appliances are wanted at night.
func nightHours(l load.Year) (byNight map[int]int, lit float64) {
	byNight = map[int]int{}
	for h, n := range l.NightOf {
		if n < 0 {
			continue
		}
		byNight[n]++
		if l.Essential[h]+l.Nice[h] > 0 {
			lit++
		}
	}
	return byNight, lit
}

// surplus is the sun left over after all loads, before any store.
func (r *VariantResult) surplus() {
	f := &r.Facts
	if len(r.Bus.Arrays) == 0 {
		return // without a panel it is not known how much sun there will be
	}
	f.SurplusDay = unit.Of((r.Year.Spilled + r.Year.Taken) / load.DaysInYear)
	worst := -1.0
	for m, day := range r.Year.Typical {
		sum := 0.0
		for _, c := range day {
			sum += float64(c.Surplus()) * 3600
		}
		if worst < 0 || sum < worst {
			worst, f.SurplusMonth = sum, m+1
		}
	}
	f.SurplusWorst = unit.Of(unit.Energy(worst))
}

// underSun says of each hoist on the line whether the panels ever give what lifting takes: it is shown with the power of
// its supply, and no store feeds another.
func (r *VariantResult) underSun() {
	if !r.YearKnown || len(r.Bus.Arrays) == 0 {
		return
	}
	sun := unit.Power(slices.Max(r.Bus.Power))
	watts := func(p unit.Power) string { return unit.Powers.Format(float64(p), unit.Metric) }
	for i := range r.Stores {
		h, tank := r.Stores[i].Hoist, r.Stores[i].Reservoir
		if h == nil || tank == nil || tank.Own != nil || sun >= tank.FillMax {
			continue
		}
		f := lift.Flag{Path: "raise.feed", Say: fmt.Sprintf("At full speed lifting takes %s. Your panels bring at most %s to the line in a usual year, so it lifts more slowly than told here.", watts(tank.FillMax), watts(sun))}
		if sun < tank.FillThreshold {
			f.Bad, h.Ready = true, "no"
			f.Say = fmt.Sprintf("It never lifts under this sun: lifting wants %s on the line, and your panels bring at most %s in a usual year. More gears, a lower voltage or more panels are needed.", watts(tank.FillThreshold), watts(sun))
		}
		h.Drive.Flags = append(h.Drive.Flags, f)
		if f.Bad {
			h.Reasons = append(h.Reasons, f.Say)
		}
	}
}

// overfed is how many times the power of all lamps a hoist may give before the page warns: an own judgement.
const overfed = 1.5

// overLamps says of each hoist whether it gives more power on its way down than all lamps of a night take together: what
// hangs on the motor has to take all of it.
func (r *VariantResult) overLamps(g Ground) {
	most := g.Load.MostAtNight()
	for i := range r.Stores {
		h := r.Stores[i].Hoist
		if h == nil || most <= 0 {
			continue
		}
		if lo := h.Drive.Lowering; lo.Known && lo.Steady && !lo.Short && lo.RunsBack != "no" && float64(lo.Power) > overfed*most {
			h.Drive.Flags = append(h.Drive.Flags, lift.Flag{Path: "lower.loads", Say: fmt.Sprintf("On its way down it gives %s for %s, and all lamps of a night take %s. What hangs on the motor must take all of it: lamps for less burn out.",
				unit.Powers.Format(float64(lo.Power), unit.Metric), Lasting(lo.Time), unit.Powers.Format(most, unit.Metric))})
		}
	}
}

func (r *VariantResult) liftFacts(h *HoistResult) {
	d, f := h.Drive, &r.Facts
	if d.Lowering.Known {
		f.OneLiftOut = unit.Of(max(0, d.Lowering.EnergyOut))
		if d.Lowering.RunsBack == "no" || !d.Lowering.Steady || d.Lowering.Short {
			f.OneLiftOut = unit.Of[unit.Energy](0)
		}
	}
	if d.Raising.Known {
		f.OneLiftIn = unit.Of(d.Raising.EnergyIn)
		if d.Raising.Stalls || !d.Raising.Starts {
			f.OneLiftIn, f.OneLiftOut = unit.Known[unit.Energy]{}, unit.Of[unit.Energy](0)
		}
	}
	f.fillLift(d.Mass, h.Design.Travel)
	if need, ok := f.nightNeed(); ok {
		f.NightBattery = unit.Of(batteryFor(need))
	}
}

// drawnDaily is what a store that comes down at no less than least gives away in a mean day, J, if it covers whatever the sun
// does not: in each such hour least, or more where more is asked.
func (r *VariantResult) drawnDaily(g Ground, least float64) (sum float64) {
	if !r.YearKnown || least <= 0 {
		return 0
	}
	for h, sun := range r.Bus.Power {
		if lacks := g.Load.Essential[h] + g.Load.Nice[h] + float64(r.StandingPower) - sun; lacks > 0 {
			sum += max(lacks, least) * 3600
		}
	}
	return sum / load.DaysInYear
}

// noMass says why no mass or height carries the night with this drive: it gives less power than the night asks for, however
// large it is; or the sun left over in a mean day does not fill it.
func (r *VariantResult) noMass(g Ground, s StoreResult) {
	f := &r.Facts
	need, ok := f.nightNeed()
	if !ok || s.Reservoir == nil || !f.OneLiftOut.Is || f.OneLiftOut.Val <= 0 || !f.OneLiftIn.Is {
		return
	}
	watts := func(p float64) string { return unit.Powers.Format(p, unit.Metric) }
	asked := g.Load.MostAtNight() + float64(r.StandingPower)
	fill := max(float64(need), r.drawnDaily(g, float64(s.Reservoir.DrawMin))) * float64(f.OneLiftIn.Val) / float64(f.OneLiftOut.Val)
	switch {
	case float64(s.Reservoir.DrawMax) < asked:
		f.NoMass = fmt.Sprintf("this drive gives %s however large it is; the night asks for up to %s", watts(float64(s.Reservoir.DrawMax)), watts(asked))
	case f.SurplusDay.Is && fill > float64(f.SurplusDay.Val):
		f.NoMass = fmt.Sprintf("lifting that takes %s a day, and the sun leaves over %s", unit.Energies.Format(fill, unit.Metric), unit.Energies.Format(float64(f.SurplusDay.Val), unit.Metric))
	}
}

// ready is the worst of the stores': a hoist's own word, and for a battery whether it can be computed and may be used so:
// where it stands, its management board, what its cells are, its cable and fuse.
func (r *VariantResult) ready() {
	rank := map[string]int{"yes": 0, "not_known": 1, "no": 2}
	r.Ready = "yes"
	worse := func(word string, why ...string) {
		if rank[word] > rank[r.Ready] {
			r.Ready = word
		}
		r.Reasons = append(r.Reasons, why...)
	}
	for _, s := range r.Stores {
		switch {
		case s.Hoist != nil:
			worse(s.Hoist.Ready, s.Hoist.Reasons...)
		case s.WhyNot != "":
			worse("not_known", s.WhyNot)
		case s.Cells != nil:
			for _, f := range slices.Concat(s.Cells.Cautions, s.Cells.Line.Flags) {
				switch {
				case f.Bad:
					worse("no", f.Say)
				case f.Open:
					worse("not_known", f.Say)
				}
			}
			for _, m := range s.Cells.unprotected() {
				worse("not_known", m.Wants)
			}
		}
	}
	if len(r.Stores) == 0 {
		worse("not_known", "There is no store in this variant yet")
	}
}

// unprotected is what is not known of the fuse close to a battery and of the cable that it protects.
func (c CellsResult) unprotected() (ms []Missing) {
	if !c.Design.Fuse.Is {
		ms = append(ms, Missing{"fuse_a", "Which fuse stands close to the battery"})
	}
	if !c.Design.CableArea.Is {
		ms = append(ms, Missing{"cable_area_m2", "How thick the battery’s cable is"})
	}
	return ms
}

// missing gathers what is still missing, hoists first, each path inside the variant.
func (r *VariantResult) missing(g Ground) {
	for i, s := range r.Stores {
		switch {
		case s.Hoist != nil:
			for _, m := range s.Hoist.Drive.Missing {
				r.Missing = append(r.Missing, Missing{StorePath(i, "hoist") + "." + m.Path, m.Wants})
			}
			if s.Hoist.Direct != nil {
				r.Missing = append(r.Missing, s.Hoist.Direct.Missing...)
			}
			for _, c := range s.Hoist.Checks {
				for _, p := range c.Missing {
					r.Missing = append(r.Missing, Missing{StorePath(i, "hoist") + "." + p, "the check of: " + c.Part})
				}
			}
		case s.Cells != nil:
			for _, m := range s.Cells.Resolved.Missing {
				if m.Path == "standing_w" { // none of its own is the usual case
					continue
				}
				r.Missing = append(r.Missing, Missing{StorePath(i, "cells") + "." + m.Path, m.Wants})
			}
			for _, f := range s.Cells.Cautions {
				if f.Open {
					r.Missing = append(r.Missing, Missing{StorePath(i, "cells") + "." + f.Path, "whether the battery may be used so"})
				}
			}
			for _, m := range s.Cells.unprotected() {
				r.Missing = append(r.Missing, Missing{StorePath(i, "cells") + "." + m.Path, "whether the battery may be used so"})
			}
		}
	}
	for _, m := range g.Load.Missing {
		r.Missing = append(r.Missing, Missing{"load." + m.Path, m.Wants})
	}
	r.Missing = firstOfEach(r.Missing)
}

// firstOfEach keeps, for each path, the first thing that misses it, and gathers the rest of the names.
func firstOfEach(ms []Missing) []Missing {
	slices.SortStableFunc(ms, func(a, b Missing) int { return cmp.Compare(a.Path, b.Path) })
	return slices.CompactFunc(ms, func(a, b Missing) bool { return a.Path == b.Path })
}
