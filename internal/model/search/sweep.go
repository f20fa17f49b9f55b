package search

import (
	"context"
	"slices"

	"golang.org/x/sync/errgroup"

	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
)

// Factors are what panel and store are multiplied by in a sweep: half octaves, from a half to eight.
func Factors() []float64 {
	return []float64{0.5, 0.7, 1, 1.4, 2, 2.8, 4, 5.7, 8}
}

// Sweep is the year of a variant with its panels and its store multiplied by each pair of Factors. Cells stands by store,
// then by panel.
type Sweep struct {
	Store string // what is multiplied, that of a model.Lever: "battery" or "mass"; empty where there is no store or no year

	Lever *model.Lever // of the store
	Look  string       // that of its kind

	// As designed: what the factors multiply.
	Power unit.Power
	Size  unit.Known[unit.Ratio] // of the store, SI

	Cells [][]SweepCell
	Best  *SweepCell // the cheapest that meets Target; nil where none does or a part of panels or store has no price
}

// SweepCell is one pair.
type SweepCell struct {
	Panel, Size  float64 // factors
	Nights, Of   int     // full, that count
	Cost         unit.Known[unit.Money]
	Meets, Today bool
}

// SweepOf tries every pair, two at a time; the same numbers for any order. Panels grow with their controller. The first
// battery for the night grows, or where there is none the mass with its gears. Prices of the parts of panels and stores
// grow in proportion.
func SweepOf(ctx context.Context, g model.Ground, v model.Variant) (Sweep, error) {
	now := g.Evaluate(v)
	s := sweepOf(v, now)
	if !now.YearKnown || now.Year.Nights == 0 || s.Store == "" || len(v.Panels) == 0 {
		return Sweep{}, nil
	}
	factors := Factors()
	s.Cells = make([][]SweepCell, len(factors))
	group, ctx := errgroup.WithContext(ctx)
	group.SetLimit(2)
	for i, times := range factors {
		s.Cells[i] = make([]SweepCell, len(factors))
		group.Go(func() error {
			for j, panels := range factors {
				if ctx.Err() != nil {
					return ctx.Err()
				}
				r := g.Run(Grown(wider(v, panels), s.Store, times))
				s.Cells[i][j] = SweepCell{Panel: panels, Size: times, Nights: r.Last.NightsFull, Of: r.Last.Nights,
					Cost: priceOf(v, panels, times), Meets: share(r) >= Target, Today: panels == 1 && times == 1}
			}
			return nil
		})
	}
	if err := group.Wait(); err != nil {
		return Sweep{}, err
	}
	s.Best = cheapest(s.Cells)
	return s, nil
}

// sweepOf says what grows: the first size of the first kind that has a store for the night.
func sweepOf(v model.Variant, now model.VariantResult) Sweep {
	s := Sweep{Power: labelPower(v)}
	for _, k := range model.Kinds() {
		i := growing(v, k)
		if i < 0 || !v.Stores[i].Design().ForNight() {
			continue
		}
		l := &k.Levers[0]
		s.Store, s.Lever, s.Look, s.Size = l.What, l, k.Look, l.Tell(now.Stores[i].Part, 1).Size
		return s
	}
	return s
}

// priceOf is the capital of all parts, those of panels and of stores in proportion; not known while one has no price, or
// no part of the panels or of the stores is on the list.
func priceOf(v model.Variant, panels, size float64) unit.Known[unit.Money] {
	listed := func(of cost.PartOf) bool {
		return slices.ContainsFunc(v.Parts, func(p cost.Part) bool { return p.Of == of })
	}
	if !listed(cost.OfPanel) || !listed(cost.OfStore) {
		return unit.Known[unit.Money]{}
	}
	sum := unit.Money(0)
	for _, p := range v.Parts {
		price, ok := p.Price.Value()
		if !ok {
			return unit.Known[unit.Money]{}
		}
		f := 1.0
		switch p.Of {
		case cost.OfPanel:
			f = panels
		case cost.OfStore:
			f = size
		}
		sum += price * unit.Money(float64(p.Count.Or(1))*f)
	}
	return unit.Of(sum)
}

func cheapest(cells [][]SweepCell) *SweepCell {
	var best *SweepCell
	for i := range cells {
		for j := range cells[i] {
			if c := &cells[i][j]; c.Meets && c.Cost.Is && (best == nil || c.Cost.Val < best.Cost.Val) {
				best = c
			}
		}
	}
	return best
}
