// Package search asks the model many times: what it would take, how it moves, which parts fit, how sure it is. It is the
// one place where work runs side by side; the model itself stays pure.
package search

import (
	"context"
	"slices"

	"golang.org/x/sync/errgroup"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Target is what has to be reached: this share of the nights with light.
const Target = model.NightsForWhole

// Take is one way to reach the target: one quantity changed alone.
type Take struct {
	What        string                  // that of a model.Lever, "panels", "load" or "comes down"
	Found       bool                    // the target is reached at Factor
	Have        bool                    // it is reached already
	Factor      float64                 // of what the design has, when Found
	Lever       *model.Lever            // nil for panels and load
	model.Grown                         // what the store comes to, for a lever
	Power       unit.Known[unit.Power]  // for the panels
	Load        unit.Known[unit.Energy] // for the load: the greatest mean night that is served
	WhyNot      say.Sentence            // why it cannot be found
	Open        say.Sentence            // what has to be known first; then nothing was searched
}

// most is the largest factor that is tried: a million times is an answer too, past it there is none.
const most = 1e6

// WhatItTakes searches the smallest size of each store and the smallest panels, and the largest load, each alone, for the target
// on the real model. now is the answer of the design as it is. It stops when the context ends.
func WhatItTakes(ctx context.Context, g model.Ground, v model.Variant, now model.VariantResult) ([]Take, error) {
	if g.Sky == nil {
		return nil, nil
	}
	type way struct {
		what string
		take func(context.Context, model.Ground, model.Variant, model.VariantResult) Take
	}
	var ways []way
	add := func(sizes []size) {
		for _, s := range sizes {
			ways = append(ways, way{s.What, s.take})
		}
	}
	early, late := sizes(v)
	add(early)
	ways = append(ways, way{"panels", byPanels}, way{"load", byLoad})
	add(late)
	takes := make([]Take, len(ways))
	if open := openNow(now); !open.IsZero() {
		for i, way := range ways {
			takes[i] = Take{What: way.what, Open: open}
		}
		return takes, nil
	}
	group, ctx := errgroup.WithContext(ctx)
	group.SetLimit(2)
	for i, way := range ways {
		group.Go(func() error {
			takes[i] = way.take(ctx, g, v, now)
			return ctx.Err()
		})
	}
	if err := group.Wait(); err != nil {
		return nil, err
	}
	return takes, nil
}

// openNow is what has to be known of a design before it can be asked what it would take.
func openNow(now model.VariantResult) say.Sentence {
	if !now.YearKnown {
		return now.WhyNoYear
	}
	return now.Open
}

// share is how many of the nights have light, 0 to 1; 1 when nothing is asked.
func share(r model.VariantResult) float64 {
	if !r.YearKnown || r.Year.Nights == 0 {
		return 0
	}
	return float64(r.Year.NightsServed) / float64(r.Year.Nights)
}

// smallest searches the smallest factor from 1 up at which the target is reached: doubling, then halving the bracket to
// half a percent. reach must not fall with the factor but for small steps.
func smallest(ctx context.Context, reach func(factor float64) bool) (factor float64, found bool) {
	low, high := 1.0, 2.0
	for ; !reach(high); low, high = high, 2*high {
		if high >= most || ctx.Err() != nil {
			return 0, false
		}
	}
	for high/low > 1.005 && ctx.Err() == nil {
		if middle := (low + high) / 2; reach(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return high, true
}

// find fills in a take whose design grows with the factor, from the answer now.
func find(ctx context.Context, g model.Ground, now model.VariantResult, what string, grown func(factor float64) model.Variant) (Take, model.VariantResult) {
	t := Take{What: what}
	if share(now) >= Target {
		t.Have, t.Found, t.Factor = true, true, 1
		return t, now
	}
	var at model.VariantResult
	t.Factor, t.Found = smallest(ctx, func(f float64) bool {
		r := g.Evaluate(grown(f))
		if share(r) < Target {
			return false
		}
		at = r
		return true
	})
	return t, at
}

func byPanels(ctx context.Context, g model.Ground, v model.Variant, now model.VariantResult) Take {
	t, _ := find(ctx, g, now, "panels", func(f float64) model.Variant { return wider(v, f) })
	if !t.Found {
		t.WhyNot = say.That("more panels alone do not carry the night: the stores are too small")
		return t
	}
	t.Power = unit.Of(labelPower(v) * unit.Power(t.Factor))
	return t
}

// labelPower is the power on the labels of all panels; those not known count as none.
func labelPower(v model.Variant) (power unit.Power) {
	for _, a := range v.Panels {
		power += a.Nominal().Or(0)
	}
	return power
}

// wider returns the variant with all its panels times f, and its controller with them.
func wider(v model.Variant, f float64) model.Variant {
	v.Panels = slices.Clone(v.Panels)
	for i := range v.Panels {
		v.Panels[i].Power.Val *= unit.Power(f)
		if s := v.Panels[i].Sheet; s != nil { // more strings side by side: more current, the same voltage
			wide := *s
			wide.Isc.Val *= unit.Current(f)
			wide.Imp.Val *= unit.Current(f)
			v.Panels[i].Sheet = &wide
		}
	}
	v.Controller.Power.Val *= unit.Power(f)
	return v
}

// byLoad searches the largest load that is served: every lamp and device times the same factor.
func byLoad(ctx context.Context, g model.Ground, v model.Variant, now model.VariantResult) Take {
	t := Take{What: "load"}
	served := func(f float64) bool { return share(g.Scaled(f).Evaluate(v)) >= Target }
	t.Have = share(now) >= Target
	low, high := 0.0, 1.0
	if t.Have {
		for low = 1; served(2 * low); low *= 2 {
			if low > most || ctx.Err() != nil {
				break
			}
		}
		high = 2 * low
	}
	for range 40 {
		if ctx.Err() != nil || high-low < 0.005*high {
			break
		}
		if middle := (low + high) / 2; served(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	if t.Factor = low; low < 1e-4 {
		t.WhyNot = say.That("no lamp at all can be carried through the nights: what uses power all the time takes everything")
		return t
	}
	t.Found = true
	t.Load = unit.Of(unit.Energy(low) * g.Load.MeanNight)
	return t
}
