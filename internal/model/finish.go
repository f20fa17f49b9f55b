package model

import (
	"cmp"
	"slices"

	"duskweight/internal/model/cost"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// finish adds to a variant what follows from its year and its stores: life, facts, verdict, money, readiness.
func (r *VariantResult) finish(g Ground, v Variant) {
	views := r.views(g, v)
	for _, y := range views {
		y.Store.Part.Finish(y)
		y.Store.finish()
	}
	r.facts(g, views)
	if r.YearKnown {
		r.verdict(len(v.Panels))
		r.withhold(g.Project.Load)
	}
	r.Cost = g.cost(r, v.Parts)
	r.Peak.check(g, v)
	r.Wiring = g.wiring(v, r.Stores)
	r.judge(g, v)
	r.missing(g)
	r.Headline = headline(r)
}

// cost reckons what a list of parts comes to over the years, beside what the finished year of the variant delivers.
func (g Ground) cost(r *VariantResult, parts []cost.Part) cost.Result {
	var delivered unit.Energy
	nights, fuel := 0, unit.Of(unit.Money(0))
	if r.YearKnown {
		delivered, nights = r.Year.Delivered+r.Year.Backup.Direct, r.Year.NightsServed
		fuel = r.backup.Cost(r.Year.Backup)
	}
	var lives []cost.Lifetime
	for _, s := range r.Stores {
		lives = append(lives, s.Part.Lives()...)
	}
	return cost.Reckon(cost.Input{Parts: parts, Terms: g.Project.Money, Delivered: delivered, Nights: nights, Fuel: fuel.Val, FuelOpen: !fuel.Is, Batteries: lives})
}

// Priced returns the result of a variant with another list of parts, at the prices and terms of this ground. Nothing but its
// cost follows from them, so no year is run again.
func (g Ground) Priced(r VariantResult, parts []cost.Part) VariantResult {
	r.Cost = g.cost(&r, parts)
	return r
}

// views is what each store reads of the variant's year, in the order of the stores.
func (r *VariantResult) views(g Ground, v Variant) []YearView {
	views := make([]YearView, len(r.Stores))
	n := 0
	for i := range r.Stores {
		s := &r.Stores[i]
		views[i] = YearView{Ground: g, Variant: v, Result: r, Store: s, At: n}
		if s.InYear {
			n++
		}
	}
	return views
}

// finish reports capacity and round trip of one store at its reference draw.
func (s *StoreResult) finish() {
	if s.Reservoir == nil {
		return
	}
	at := min(s.Reservoir.DrawMax, s.Part.Reference())
	if at <= 0 {
		return
	}
	s.Capacity = unit.Of(s.Reservoir.Drawn(at))
	s.RoundTrip = unit.Of(unit.Ratio(s.Reservoir.RoundTrip(at)))
}

// facts works out the plain answers.
func (r *VariantResult) facts(g Ground, views []YearView) {
	if g.Sky != nil {
		r.nightFacts(g)
	}
	if r.YearKnown {
		r.surplus()
	}
	for _, y := range views {
		y.Store.Part.Facts(&r.Facts, y)
	}
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
	f.SurplusDay = unit.Of((r.Year.Spilled + r.Year.Taken - (r.Year.Backup.Energy - r.Year.Backup.Direct)) / load.DaysInYear)
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

// missing gathers what is still missing, store by store, each path inside the variant.
func (r *VariantResult) missing(g Ground) {
	for i, s := range r.Stores {
		r.Missing = append(r.Missing, s.Part.Missing(s.Kind.Path(i))...)
	}
	r.Missing = append(r.Missing, missingBackup(r.backup)...)
	for _, m := range g.Load.Missing {
		r.Missing = append(r.Missing, Missing{"load." + m.Path, say.Words(m.Wants)})
	}
	r.Missing = firstOfEach(r.Missing)
}

// firstOfEach keeps, for each path, the first thing that misses it, and gathers the rest of the names.
func firstOfEach(ms []Missing) []Missing {
	slices.SortStableFunc(ms, func(a, b Missing) int { return cmp.Compare(a.Path, b.Path) })
	return slices.CompactFunc(ms, func(a, b Missing) bool { return a.Path == b.Path })
}
