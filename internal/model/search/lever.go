package search

import (
	"cmp"
	"context"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// Step is by how much each thing is changed to see what it does: a quarter more; for the load a fifth less, which is the
// same to a store.
const Step = 1.25

// Lever is one thing changed by Step alone, and what that does to the year.
type Lever struct {
	What   string      // that of a model.Lever, "panels" or "load"
	Say    string      // that of a model.Lever, "A quarter more mass"; empty for the others
	Nights int         // full nights that it adds to the year; below zero where it takes some away
	Energy unit.Energy // that is missing less over the year
}

// Levers are the year's answers to each change, the one with most effect first: by nights, then by energy, then in the
// order mass, height, battery, panels, load. now is the answer of the design as it is. Nothing where its year
// is not known.
func Levers(ctx context.Context, g model.Ground, v model.Variant, now model.VariantResult) ([]Lever, error) {
	if !now.YearKnown {
		return nil, nil
	}
	var out []Lever
	try := func(what, say string, g model.Ground, w model.Variant) {
		then := g.Run(w)
		if ctx.Err() != nil || !then.YearKnown {
			return
		}
		out = append(out, Lever{what, say, then.Last.NightsFull - now.Last.NightsFull, now.Last.Unmet - then.Last.Unmet})
	}
	early, late := sizes(v)
	for _, s := range slices.Concat(early, late) {
		try(s.What, s.Quarter, g, s.grown(v, Step))
	}
	if len(v.Panels) > 0 {
		try("panels", "", g, wider(v, Step))
	}
	try("load", "", g.Scaled(1/Step), v)
	slices.SortStableFunc(out, func(a, b Lever) int {
		return cmp.Or(cmp.Compare(b.Nights, a.Nights), cmp.Compare(b.Energy, a.Energy))
	})
	return out, ctx.Err()
}
