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

// Target is what has to be reached: this share of the nights; see Aim.
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

// quest is a search for one design.
type quest struct {
	ctx context.Context
	g   model.Ground
	v   model.Variant
	now model.VariantResult // the answer of the design as it is
	aim Aim
}

// met reports whether a variant on the ground reaches the aim in the years that are tried.
func (q *quest) met(g model.Ground, v model.Variant) bool {
	return q.aim.met(q.ctx, g, v, g.Run(v))
}

// sure is met in all years.
func (q *quest) sure(g model.Ground, v model.Variant) bool {
	return q.aim.sure(q.ctx, g, v, g.Run(v))
}

// WhatItTakes searches the smallest size of each store and the smallest panels, and the largest load, each alone, for the aim
// on the real model. now is the answer of the design as it is. It stops when the context ends.
func WhatItTakes(ctx context.Context, g model.Ground, v model.Variant, now model.VariantResult) ([]Take, Aim, error) {
	if g.Sky == nil {
		return nil, Aim{}, nil
	}
	aim, have := aimOf(ctx, g, v, now)
	q := &quest{ctx: ctx, g: g, v: v, now: now, aim: aim}
	type way struct {
		what string
		take func(*quest, bool) Take
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
		return takes, q.aim, nil
	}
	var group *errgroup.Group
	group, q.ctx = errgroup.WithContext(ctx)
	group.SetLimit(2)
	for i, way := range ways {
		group.Go(func() error {
			takes[i] = way.take(q, have)
			return q.ctx.Err()
		})
	}
	if err := group.Wait(); err != nil {
		return nil, q.aim, err
	}
	return takes, q.aim, nil
}

// openNow is what has to be known of a design before it can be asked what it would take.
func openNow(now model.VariantResult) say.Sentence {
	if !now.YearKnown {
		return now.WhyNoYear
	}
	return now.Open
}

// share is how many of the nights are full in the last year of the batteries, 0 to 1.
func share(r model.VariantResult) float64 {
	if !r.YearKnown || r.Year.Nights == 0 {
		return 0
	}
	return float64(r.Last.NightsFull) / float64(r.Last.Nights)
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

// enough steps on from a factor that the years that are tried ask for until all years reach the aim, by 2 % a step and at
// most by a half. Most often the first is enough.
func enough(ctx context.Context, factor, step float64, sure func(factor float64) bool) (float64, bool) {
	for range 20 {
		if ctx.Err() != nil {
			break
		}
		if sure(factor) {
			return factor, true
		}
		factor *= step
	}
	return factor, false
}

// find fills in a take whose design grows with the factor; have says that the design as it is reaches the aim.
func (q *quest) find(what string, have bool, grown func(factor float64) model.Variant) (Take, model.VariantResult) {
	t := Take{What: what}
	if have {
		t.Have, t.Found, t.Factor = true, true, 1
		return t, q.now
	}
	t.Factor, t.Found = smallest(q.ctx, func(f float64) bool { return q.met(q.g, grown(f)) })
	if t.Found {
		t.Factor, t.Found = enough(q.ctx, t.Factor, 1.02, func(f float64) bool { return q.sure(q.g, grown(f)) })
	}
	return t, q.g.Evaluate(grown(t.Factor))
}

func byPanels(q *quest, have bool) Take {
	t, _ := q.find("panels", have, func(f float64) model.Variant { return wider(q.v, f) })
	if !t.Found {
		t.WhyNot = say.That("more panels alone do not carry the night: the stores are too small")
		return t
	}
	t.Power = unit.Of(labelPower(q.v) * unit.Power(t.Factor))
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
func byLoad(q *quest, have bool) Take {
	t := Take{What: "load", Have: have}
	served := func(f float64) bool { return q.met(q.g.Scaled(f), q.v) }
	low, high := 0.0, 1.0
	if have {
		for low = 1; served(2 * low); low *= 2 {
			if low > most || q.ctx.Err() != nil {
				break
			}
		}
		high = 2 * low
	}
	for range 40 {
		if q.ctx.Err() != nil || high-low < 0.005*high {
			break
		}
		if middle := (low + high) / 2; served(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	if low >= 1e-4 {
		low, t.Found = enough(q.ctx, low, 1/1.02, func(f float64) bool { return q.sure(q.g.Scaled(f), q.v) })
	}
	if t.Factor = low; !t.Found {
		t.WhyNot = say.That("no lamp at all can be carried through the nights: what is always on uses everything")
		return t
	}
	t.Load = unit.Of(unit.Energy(low) * q.g.Load.MeanNight)
	return t
}
