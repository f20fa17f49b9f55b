package search

import (
	"duskweight/internal/model"
	"duskweight/internal/model/panel"
)

// draw works out all variants anew in weather year j with every input as draw j has it. A store that gives nothing back
// then, a hoist that no longer lifts, gives nothing in that year.
func (w *worker) draw(j int) []outcome {
	if w.climate == nil && len(w.ground.Project.Files()) > 1 {
		return w.drawFile(j)
	}
	p, variants := drawn(w.ground.Project, w.variants, j)
	w.fill(j, func(i int) *panel.Plant {
		of := variants[w.fields[i].variant]
		plant, _ := panel.PrepareBrighter(of.Panels, of.Controller) // it was ready before
		return plant
	})
	out := make([]outcome, len(variants))
	if w.weather {
		w.skies(out)
	}
	use, idle := loadFactors(p.Seed, j)
	g := w.ground.Drawn(p, w.sky, use, idle)
	for i, v := range variants {
		if plan := w.plans[i]; plan.demand != nil {
			out[i].Brief = g.Brief(&w.draft, v, w.lights[plan.field], w.bus[plan.field])
		}
	}
	return out
}

// drawFile is draw where weather files come in turn, each over a way of the sun of its own.
func (w *worker) drawFile(j int) []outcome {
	p, variants := drawn(w.ground.Project, w.variants, j)
	g := model.PrepareMade(p, j)
	out := make([]outcome, len(variants))
	for i, v := range variants {
		if w.plans[i].demand == nil {
			continue
		}
		r := g.Run(v)
		if w.weather {
			out[i].sky = Weather{Months: g.Sky.Months(), Plane: r.Plane.Or(0)}
		}
		out[i].Brief = r.Last
	}
	return out
}
