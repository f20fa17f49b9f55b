package search

import (
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
	draft  year.Draft
	stores []reservoir.Reservoir

	weather bool // is noted
}

func (b *bench) worker() *worker {
	w := &worker{bench: b, sky: b.ground.Sky}
	if b.climate != nil {
		w.sky = b.climate.Blank()
	}
	hours := len(w.sky.TAir)
	for _, f := range b.fields {
		lights := make([]panel.Light, len(f.planes))
		for i := range lights {
			lights[i] = panel.Light{Plane: make([]float64, hours), Cells: make([]float64, hours), Snow: f.planes[i].SnowRoom()}
		}
		w.lights = append(w.lights, lights)
		w.bus = append(w.bus, make([]float64, hours))
	}
	return w
}

// fill fills in weather year j, and the light and the power of the fields as plants have it.
func (w *worker) fill(j int, plant func(field int) *panel.Plant) {
	if w.climate != nil {
		w.climate.Fill(w.sky, w.seed, j)
	}
	for i, f := range w.fields {
		for k, p := range f.planes {
			p.Fill(w.sky, sun.Light(w.lights[i][k]))
		}
		plant(i).Fill(w.lights[i], w.sky.TAir, w.bus[i])
	}
}

// year runs weather year j for all variants.
func (w *worker) year(j int) []outcome {
	w.fill(j, func(i int) *panel.Plant { return w.fields[i].plant })
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
