package search

import (
	"math"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// Tolerance is how far the truth may lie from what was typed: a factor between Low and High, most likely 1.
type Tolerance struct {
	Name      string // the stream of its draws
	Say       string // that of a model.Doubt; empty for the others
	Range     string // the same
	Low, High float64

	project func(*model.Project, float64) (there bool) // changes what all variants share; nil for nothing
	variant func(*model.Variant, float64) (there bool) // changes what a variant has; nil for nothing
}

// The tolerances of the load: what lamps and devices take, and what uses power all the time.
const ofLamps, ofIdle = "lamps", "idle"

// Tolerances are the inputs that are drawn. Their ranges are common practice and our own judgement, and the guide says so:
// real parts of these kinds differ by about so much from their labels, and real use from what was thought.
func Tolerances() []Tolerance {
	out := []Tolerance{
		{Name: "sun", Low: 0.95, High: 1.05, variant: panelPower},                    // the twelve means are not known better; years differ by themselves. Counts as more from the panels, so that every kind of sky takes it
		{Name: "panels", Low: 0.90, High: 1.03, variant: panelPower},                 // label, ageing, connectors
		{Name: ofLamps, Low: 0.80, High: 1.25, project: lampPower},                   // how long they are really on, and what they really take
		{Name: ofIdle, Low: 0.80, High: 1.50, project: sharedIdle, variant: ownIdle}, // rarely measured, and rarely less
	}
	for _, k := range model.Kinds() {
		for _, d := range k.Doubts {
			out = append(out, Tolerance{Name: d.Name, Say: d.Say, Range: d.Range, Low: d.Low, High: d.High, variant: func(v *model.Variant, f float64) (there bool) {
				for _, s := range v.Stores {
					there = k.Is(s) && d.Change(s, f) || there
				}
				return there
			}})
		}
	}
	return out
}

// Factor returns what a tolerance comes to in draw j of a seed.
func (t Tolerance) Factor(seed uint64, j int) float64 {
	return Triangular(sun.Uniform(seed, t.Name, j), t.Low, t.High)
}

// Triangular returns the value below which the share u of a triangular distribution from a to b with its top at 1 lies:
// a + √(u (b − a)(1 − a)) for u below (1 − a)/(b − a), b − √((1 − u)(b − a)(b − 1)) above
// (source.LawKelton.At("triangular, inverse transform")).
func Triangular(u, a, b float64) float64 {
	if u < (1-a)/(b-a) {
		return a + math.Sqrt(u*(b-a)*(1-a))
	}
	return b - math.Sqrt((1-u)*(b-a)*(b-1))
}

// drawn is a project and its variants in draw j: every tolerance's factor, the same for all variants. What it is made from stays as it was.
func drawn(p model.Project, vs []model.Variant, j int) (model.Project, []model.Variant) {
	p.Load.Appliances, p.Load.Standing = slices.Clone(p.Load.Appliances), slices.Clone(p.Load.Standing)
	out := make([]model.Variant, len(vs))
	for i, v := range vs {
		out[i] = detached(v)
	}
	for _, t := range Tolerances() {
		f := t.Factor(p.Seed, j)
		if t.project != nil {
			t.project(&p, f)
		}
		for i := range out {
			if t.variant != nil {
				t.variant(&out[i], f)
			}
		}
	}
	return p, out
}

// loadFactors returns by how much draw j multiplies the power of the appliances, and of all that uses power all the time.
func loadFactors(seed uint64, j int) (use, idle float64) {
	use, idle = 1, 1
	for _, t := range Tolerances() {
		switch t.Name {
		case ofLamps:
			use = t.Factor(seed, j)
		case ofIdle:
			idle = t.Factor(seed, j)
		}
	}
	return use, idle
}

// touches reports whether a project with this variant has the input at all.
func (t Tolerance) touches(p model.Project, v model.Variant) bool {
	p.Load.Appliances, p.Load.Standing = slices.Clone(p.Load.Appliances), slices.Clone(p.Load.Standing)
	v = detached(v)
	return t.project != nil && t.project(&p, 1) || t.variant != nil && t.variant(&v, 1)
}

// detached is a variant whose panels, stores and standing draws are its own.
func detached(v model.Variant) model.Variant {
	v.Panels, v.Stores, v.Standing = slices.Clone(v.Panels), slices.Clone(v.Stores), slices.Clone(v.Standing)
	for i := range v.Panels {
		if s := v.Panels[i].Sheet; s != nil {
			v.Panels[i].Sheet = new(*s)
		}
	}
	for i := range v.Stores {
		if d := v.Stores[i].Design(); d != nil {
			v.Stores[i] = d.Copy()
		}
	}
	return v
}

func panelPower(v *model.Variant, f float64) (there bool) {
	for i := range v.Panels {
		a := &v.Panels[i]
		there = a.Power.Times(f) || there
		if a.Sheet != nil {
			brighter(a.Sheet, f)
		}
	}
	return there
}

// brighter gives more current at the same voltages, as more light does.
func brighter(s *panel.Sheet, f float64) {
	s.Isc.Times(f)
	s.Imp.Times(f)
}

func lampPower(p *model.Project, f float64) (there bool) {
	for i := range p.Load.Appliances {
		there = p.Load.Appliances[i].Power.Times(f) || there
	}
	return there
}

func sharedIdle(p *model.Project, f float64) (there bool) {
	for i := range p.Load.Standing {
		there = p.Load.Standing[i].Power.Times(f) || there
	}
	return p.Load.Inverter.Idle.Times(f) && p.Load.Inverter.Present == unit.Yes || there
}

func ownIdle(v *model.Variant, f float64) (there bool) {
	for i := range v.Standing {
		there = v.Standing[i].Power.Times(f) || there
	}
	return v.Controller.Night.Times(f) || there
}
