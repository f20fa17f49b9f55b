package search

import (
	"duskweight/internal/model"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
)

// worker is the room of one goroutine.
type worker struct {
	*bench
	sky    *sun.Sky
	lights [][]panel.Light // by field and array
	bus    [][]float64     // by field
	space  year.Workspace
	stores []reservoir.Reservoir

	weather bool // is noted
}

func (b *bench) worker() *worker {
	w := &worker{bench: b, sky: b.ground.Sky}
	if b.climate != nil {
		w.sky = b.climate.Sky(b.seed)
	}
	hours := len(w.sky.TAir)
	for _, f := range b.fields {
		lights := make([]panel.Light, len(f.planes))
		for i := range lights {
			lights[i] = panel.Light{Plane: make([]float64, hours), Cells: make([]float64, hours)}
		}
		w.lights = append(w.lights, lights)
		w.bus = append(w.bus, make([]float64, hours))
	}
	return w
}

// year runs weather year j for all variants.
func (w *worker) year(j int) []outcome {
	if w.climate != nil {
		w.climate.Fill(w.sky, w.seed, j)
	}
	for i, f := range w.fields {
		for k, p := range f.planes {
			p.Fill(w.sky, sun.Light(w.lights[i][k]))
		}
		f.plant.Fill(w.lights[i], w.sky.TAir, w.bus[i])
	}
	out := make([]outcome, len(w.plans))
	if w.weather {
		w.skies(out)
	}
	for _, group := range w.groups {
		p := w.plans[group[0]]
		if len(group) == 1 {
			out[group[0]].Brief = w.alone(p)
			continue
		}
		w.stores = w.stores[:0]
		for _, i := range group {
			w.stores = append(w.stores, w.plans[i].stores...)
		}
		for k, b := range w.space.Sweep(nil, w.bus[p.field], p.demand, w.stores) {
			out[group[k]].Brief = b
		}
	}
	return out
}

// skies notes the light of the year that is filled in.
func (w *worker) skies(out []outcome) {
	months := w.sky.Months()
	for i, p := range w.plans {
		if p.demand != nil {
			out[i].sky = Weather{w.fileYear(), months, w.plane(p.field)}
		}
	}
}

// fileYear is the year of the weather file whose own hours are run.
func (w *worker) fileYear() (none unit.Known[unit.Count]) {
	if p := w.ground.Project; w.climate == nil && p.Place.Sky == sun.SkyFile && p.Weather != nil {
		return p.Weather.Year
	}
	return none
}

// plane returns the light of the year on a field's panels, mean over their power; 0 without a panel.
func (w *worker) plane(field int) unit.Irradiation {
	return panel.MeanLight(w.fields[field].of.Panels, w.lights[field]).Or(0)
}

// alone runs the year of one plan whose sun is already filled in.
func (w *worker) alone(p plan) year.Brief {
	w.stores = append(w.stores[:0], p.stores...)
	for k, own := range p.beside {
		if own != nil {
			w.stores[k].Own = own(w.lights[p.field], w.sky.TAir)
		}
	}
	return w.space.Quick(w.bus[p.field], p.demand, w.stores)
}

// draw works out all variants anew in weather year j with every input as draw j has it. A store that gives nothing back
// then, a hoist that no longer lifts, gives nothing in that year.
func (w *worker) draw(j int) []outcome {
	p, variants := drawn(w.ground.Project, w.variants, j)
	g := model.PrepareMade(p, j)
	out := make([]outcome, len(variants))
	for i, v := range variants {
		if w.plans[i].demand == nil {
			continue
		}
		r := g.Evaluate(v)
		y := &r.Year
		if w.weather {
			out[i].sky = Weather{Months: g.Sky.Months(), Plane: r.Plane.Or(0)}
		}
		out[i].Brief = year.Brief{Settled: y.Settled, Unmet: y.Unmet, NightsFull: y.NightsFull(), NightsServed: y.NightsServed, NightShare: y.NightShare(),
			Gaps: y.Gaps(), LongestOutage: y.LongestOutage.Hours, ServedShare: float64(y.ServedShare.Or(0))}
	}
	return out
}
