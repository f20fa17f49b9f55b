package search

import (
	"cmp"
	"context"
	"reflect"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/panel"
)

// Aim is what a search has to reach: in 9 of 10 made years Target of the nights are full; or where there are no made years,
// and where a year takes long, light in Target of the nights of the average year.
type Aim struct {
	Made  int // years on which what is found is confirmed; 0: the average year alone
	Tried int // of these, the first ones, on which is searched

	bench *bench      // of the design as it is
	bus   [][]float64 // its power at the line in the years that are tried
	order []int       // of the years, the poorest for the design first: there it is soonest seen what is not enough
}

// fewYears is on how many made years is searched: the tenth part below is then told by the four poorest.
const fewYears = 40

// aimOf is the aim of a search in a project, for a variant whose own year is r; have says that the variant reaches it.
func aimOf(ctx context.Context, g model.Ground, v model.Variant, r model.VariantResult) (a Aim, have bool) {
	b := &bench{ground: g, seed: g.Project.Seed, variants: []model.Variant{v}}
	if b.prepare(); b.climate == nil {
		return Aim{}, share(r) >= Target
	}
	b.plans = []plan{b.planOf(v, r)}
	for _, beside := range b.plans[0].beside {
		if beside != nil {
			return Aim{}, share(r) >= Target
		}
	}
	n := g.Project.MadeYears()
	a = Aim{Made: n, Tried: min(fewYears, n), bench: b}
	if b.plans[0].demand == nil {
		return a, false
	}
	return a, a.look(ctx)
}

// look runs all years of the design as it is, keeps what the search needs of them, and reports whether they reach the aim.
func (a *Aim) look(ctx context.Context) bool {
	w, nights := a.bench.worker(), make([]float64, a.Made)
	p := a.bench.plans[0]
	for j := range nights {
		if ctx.Err() != nil {
			return false
		}
		w.fill(j, func(int) *panel.Plant { return w.fields[0].plant })
		nights[j] = float64(w.alone(p).NightsFull)
		a.order = append(a.order, j)
		if j < a.Tried {
			a.bus = append(a.bus, slices.Clone(w.bus[0]))
		}
	}
	slices.SortStableFunc(a.order, func(i, j int) int { return cmp.Compare(nights[i], nights[j]) })
	slices.Sort(nights)
	return Quantile(nights, bad) >= Target*float64(a.bench.ground.Load.Nights)
}

// met reports whether a variant on ground g, whose own year is r, reaches the aim in the years that are tried.
func (a Aim) met(ctx context.Context, g model.Ground, v model.Variant, r model.VariantResult) bool {
	return a.in(ctx, a.Tried, g, v, r)
}

// sure is met in all years.
func (a Aim) sure(ctx context.Context, g model.Ground, v model.Variant, r model.VariantResult) bool {
	return a.in(ctx, a.Made, g, v, r)
}

// in reports whether a variant reaches the aim in the first n years. It stops as soon as too many have failed.
func (a Aim) in(ctx context.Context, n int, g model.Ground, v model.Variant, r model.VariantResult) bool {
	if a.bench == nil {
		return share(r) >= Target
	}
	one, same := a.bench.like(g, v)
	p := one.planOf(v, r)
	if p.demand == nil || g.Load.Nights == 0 {
		return false
	}
	w := one.worker()
	least := Target * float64(g.Load.Nights)
	var nights []float64
	failed := 0
	for _, j := range a.order {
		if j >= n {
			continue
		}
		bus := w.bus[0]
		if same && j < len(a.bus) {
			bus = a.bus[j]
		} else {
			w.fill(j, func(int) *panel.Plant { return w.fields[0].plant })
		}
		full := float64(w.space.Quick(bus, p.demand, p.stores).NightsFull)
		if nights = append(nights, full); full < least {
			failed++
		}
		if failed > int(bad*float64(n-1))+1 || ctx.Err() != nil {
			return false
		}
	}
	if len(nights) < n { // the search was stopped while it looked at the design as it is
		return false
	}
	slices.Sort(nights)
	return Quantile(nights, bad) >= least
}

// like is a bench for one variant that differs from this one's in its stores, its load and the power of its panels alone; same
// reports whether the panels are the same.
func (b *bench) like(g model.Ground, v model.Variant) (one *bench, same bool) {
	f := b.fields[0]
	if same = reflect.DeepEqual(f.of.Panels, v.Panels) && reflect.DeepEqual(f.of.Controller, v.Controller); !same {
		f.of = v
		f.plant, _ = panel.PrepareBrighter(v.Panels, v.Controller)
	}
	return &bench{ground: g, climate: b.climate, seed: b.seed, variants: []model.Variant{v}, fields: []field{f}}, same
}
