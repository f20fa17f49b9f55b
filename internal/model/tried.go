package model

import (
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/year"
)

// What a search asks of a variant whose panels' light and power it knows already.

// Harvest returns the light on each array of a variant and what panels and controller bring to the line in the ground's year, or
// what stands against it. They are shared: read only. The ground must have a sky.
func (g Ground) Harvest(v Variant) ([]panel.Light, *panel.Bus, Problems) {
	h := g.harvest(v)
	return h.lights, h.bus, h.problems
}

// Tanks returns the reservoirs of a variant in the last year of its batteries, which are drawn with the current of the mean
// night, and the load of its year. beside says that one of them has a source of its own in the light on the panels.
func (g Ground) Tanks(v Variant, lights []panel.Light) (stores []reservoir.Reservoir, load year.Input, beside bool) {
	r := VariantResult{Stores: reduce(v)}
	load = g.input(v, &r, lights, nil)
	r.reservoirs()
	stores, _ = r.aged(1)
	for _, s := range r.Stores {
		beside = beside || s.Reservoir != nil && s.Part.Beside() != nil
	}
	return stores, load, beside
}

// Tried is Evaluate as far as nights, lives and money go, with this light on the arrays of the variant and this power at its
// line. The nights are those of the last year of the batteries.
func (g Ground) Tried(draft *year.Draft, v Variant, lights []panel.Light, bus *panel.Bus) VariantResult {
	r := VariantResult{Name: v.Name, backup: v.Backup, Stores: reduce(v), Bus: bus, YearKnown: true}
	in := g.input(v, &r, lights, bus.Power)
	draft.Begin(in)
	g.settle(draft, &r)
	r.account(draft)
	r.Last = r.Year.Brief()
	if stores, ages := r.aged(1); ages {
		in.Keep, in.Brief = false, true
		last := year.Begin(in)
		last.Settle(stores)
		r.Last = last.Brief()
	}
	for _, y := range r.views(g, v) {
		y.Store.Part.Finish(y)
	}
	r.Cost = g.cost(&r, v.Parts)
	r.Year.Hourly = nil // it stands in the room of the draft
	return r
}
