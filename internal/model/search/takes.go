// Package search asks the model many times: what it would take, how it moves, which parts fit, how sure it is. It is the
// one place where work runs side by side; the model itself stays pure.
package search

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"golang.org/x/sync/errgroup"

	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Target is what has to be reached: this share of the nights with light.
const Target = 0.95

// Take is one way to reach the target: one quantity changed alone.
type Take struct {
	What   string                  // "mass", "height", "battery", "panels", "load", "comes down"
	Found  bool                    // the target is reached at Factor
	Have   bool                    // it is reached already
	Factor float64                 // of what the design has, when Found
	Mass   unit.Known[unit.Mass]   // what it comes to, for mass
	Height unit.Known[unit.Length] // for height
	Charge unit.Known[unit.Charge] // for the battery
	Power  unit.Known[unit.Power]  // for the panels
	Load   unit.Known[unit.Energy] // for the load: the greatest mean night that is served
	Grows  []string                // what must grow along, in words
	Breaks string                  // the part that would give way first with it; empty when none does
	WhyNot string                  // why it cannot be found
	Open   string                  // what has to be known first; then nothing was searched
}

// most is the largest factor that is tried: a million times is an answer too, past it there is none.
const most = 1e6

// WhatItTakes searches the smallest mass, height, battery and panels, and the largest load, each alone, for the target
// on the real model. now is the answer of the design as it is. It stops when the context ends.
func WhatItTakes(ctx context.Context, g model.Ground, v model.Variant, now model.VariantResult) ([]Take, error) {
	if g.Sky == nil {
		return nil, nil
	}
	type way struct {
		what string
		take func(context.Context, model.Ground, model.Variant, model.VariantResult) Take
	}
	ways := []way{{"panels", byPanels}, {"load", byLoad}}
	if slices.ContainsFunc(v.Stores, func(s model.Store) bool { return s.Hoist != nil }) {
		ways = append([]way{{"mass", byMass}, {"height", byHeight}}, ways...)
	}
	if slices.ContainsFunc(v.Stores, func(s model.Store) bool { return s.Cells != nil }) {
		ways = append(ways, way{"battery", byBattery})
	}
	takes := make([]Take, len(ways))
	if open := openNow(now); open != "" {
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
func openNow(now model.VariantResult) string {
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

func byMass(ctx context.Context, g model.Ground, v model.Variant, now model.VariantResult) Take {
	t, at := find(ctx, g, now, "mass", func(f float64) model.Variant { return Heavier(v, f) })
	return hoistTake(t, at, g, now)
}

func byHeight(ctx context.Context, g model.Ground, v model.Variant, now model.VariantResult) Take {
	t, at := find(ctx, g, now, "height", func(f float64) model.Variant { return higher(v, f) })
	return hoistTake(t, at, g, now)
}

// hoistTake says what the grown hoist comes to and which part would give way.
func hoistTake(t Take, at model.VariantResult, g model.Ground, now model.VariantResult) Take {
	if !t.Found {
		if t.WhyNot = whyNoHoist(now, g); t.WhyNot == "" {
			t.Open = "too little is known of this hoist"
		}
		return t
	}
	for _, s := range at.Stores {
		if s.Hoist == nil {
			continue
		}
		d := s.Hoist.Drive
		t.Mass, t.Height = d.Mass, s.Hoist.Design.Travel
		if len(s.Hoist.Checks) > 0 && s.Hoist.Ready == "no" {
			t.Breaks = s.Hoist.Checks[0].Part
		}
		if t.What == "mass" && !t.Have {
			t.Grows = []string{"the gear ratio, to " + unit.Rounded(float64(d.Ratio.Val), 3) + " : 1, for the same motor",
				fmt.Sprintf("rope, pulleys, hook, beam, posts and base weights, %s times as strong", unit.Rounded(t.Factor, 2))}
		}
		if t.What == "height" && !t.Have {
			t.Grows = []string{"the frame, the rope and the room on the drum", "the circle in which nobody may be"}
		}
		break
	}
	return t
}

// whyNoHoist says what keeps any mass or height from carrying the night: the hoist does not work at all, gives less
// power than the lamps ask for at once, or is not filled. It is empty where too little is known of the hoist.
func whyNoHoist(now model.VariantResult, g model.Ground) string {
	asked := g.Load.MostAtNight() + float64(now.StandingPower)
	for _, s := range now.Stores {
		switch {
		case s.Hoist == nil:
		case s.WhyNot == lift.NotEnough:
			return ""
		case s.Reservoir == nil:
			return "this hoist gives nothing back. " + strings.TrimSuffix(s.WhyNot, ".")
		case float64(s.Reservoir.DrawMax) < asked:
			return fmt.Sprintf("this hoist gives %s W however large it is, and the night asks for up to %s W at once", unit.Rounded(float64(s.Reservoir.DrawMax), 2), unit.Rounded(asked, 2))
		}
	}
	return "even a million times as much does not carry the night: the sun left over does not fill it"
}

// Heavier returns the variant with the mass of its first hoist times f and the gear ratio grown along, so that the same
// motor lifts and holds the same current: the first stage takes the whole of it.
func Heavier(v model.Variant, f float64) model.Variant {
	return withHoist(v, func(h *lift.Hoist) {
		h.Mass = slices.Clone(h.Mass)
		for i := range h.Mass {
			h.Mass[i].Mass.Val *= unit.Mass(f)
		}
		h.Train.Stages = slices.Clone(h.Train.Stages)
		for i := range h.Train.Stages {
			s := &h.Train.Stages[i]
			if s.Ratio.Is || s.SunTeeth.Is && s.RingTeeth.Is {
				if !s.Ratio.Is {
					s.Ratio = unit.Of(lift.PlanetaryRatio(s.SunTeeth.Val, s.RingTeeth.Val))
				}
				s.SunTeeth, s.PlanetTeeth, s.RingTeeth = unit.Known[unit.Count]{}, unit.Known[unit.Count]{}, unit.Known[unit.Count]{}
				s.Ratio.Val *= unit.Ratio(f)
				return
			}
		}
	})
}

func higher(v model.Variant, f float64) model.Variant {
	return withHoist(v, func(h *lift.Hoist) { h.Travel.Val *= unit.Length(f) })
}

// withHoist copies a variant and changes its first hoist.
func withHoist(v model.Variant, change func(*lift.Hoist)) model.Variant {
	v.Stores = slices.Clone(v.Stores)
	for i, s := range v.Stores {
		if s.Hoist != nil {
			h := *s.Hoist
			change(&h)
			v.Stores[i].Hoist = &h
			break
		}
	}
	return v
}

func byBattery(ctx context.Context, g model.Ground, v model.Variant, now model.VariantResult) Take {
	t, _ := find(ctx, g, now, "battery", func(f float64) model.Variant { return larger(v, f) })
	if !t.Found {
		t.WhyNot = "even a million times as much does not carry the night: the panels do not fill it"
		return t
	}
	t.Charge = chargeOf(*larger(v, t.Factor).Stores[batteryOf(v)].Cells)
	return t
}

// chargeOf is the capacity of all strings of a bank together.
func chargeOf(b cell.Bank) unit.Known[unit.Charge] {
	all := b.Capacity
	all.Val *= unit.Charge(b.Parallel.Or(1))
	return all
}

// batteryOf is the place of the battery that grows: the first for the night, else the first; −1 for none.
func batteryOf(v model.Variant) int {
	first := -1
	for i, s := range v.Stores {
		switch {
		case s.Cells == nil:
		case s.Cells.ForNight():
			return i
		case first < 0:
			first = i
		}
	}
	return first
}

// larger returns the variant with the capacity of its battery times f.
func larger(v model.Variant, f float64) model.Variant {
	if i := batteryOf(v); i >= 0 {
		v.Stores = slices.Clone(v.Stores)
		b := *v.Stores[i].Cells
		b.Capacity.Val *= unit.Charge(f)
		v.Stores[i].Cells = &b
	}
	return v
}

func byPanels(ctx context.Context, g model.Ground, v model.Variant, now model.VariantResult) Take {
	t, _ := find(ctx, g, now, "panels", func(f float64) model.Variant { return wider(v, f) })
	if !t.Found {
		t.WhyNot = "more panels alone do not carry the night: the stores are too small"
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
		t.WhyNot = "no lamp at all can be carried through the nights: what uses power all the time takes everything"
		return t
	}
	t.Found = true
	t.Load = unit.Of(unit.Energy(low) * g.Load.MeanNight)
	return t
}
