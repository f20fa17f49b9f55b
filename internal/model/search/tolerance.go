package search

import (
	"math"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// Tolerance is how far the truth may lie from what was typed: a factor between Low and High, most likely 1.
type Tolerance struct {
	Name      string // the stream of its draws
	Low, High float64

	project func(*model.Project, float64) (there bool) // changes what all variants share; nil for nothing
	variant func(*model.Variant, float64) (there bool) // changes what a variant has; nil for nothing
}

// Tolerances are the inputs that are drawn. Their ranges are common practice and our own judgement, and the guide says so:
// real parts of these kinds differ by about so much from their labels, and real use from what was thought.
func Tolerances() []Tolerance {
	return []Tolerance{
		{"sun", 0.93, 1.07, nil, panelPower},           // years differ, and means were measured in other ones; counts as more from the panels, so that every kind of sky takes it
		{"panels", 0.90, 1.03, nil, panelPower},        // label, ageing, connectors
		{"lamps", 0.80, 1.25, lampPower, nil},          // how long they are really on, and what they really take
		{"idle", 0.80, 1.50, sharedIdle, ownIdle},      // rarely measured, and rarely less
		{"capacity", 0.80, 1.05, nil, capacity},        // label and ageing
		{"battery_loss", 0.94, 1.03, nil, batteryLoss}, // wires, connectors, age
		{"mass", 1 - byVolume, 1 + byVolume, nil, hungMass},
		{"gear_loss", 0.70, 1.50, nil, gearLoss}, // grease, fit, cold
	}
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

// drawn is a project and its variants in draw j: the weather year j of the seed, and every tolerance's factor, the same
// for all variants. What it is made from stays as it was.
func drawn(p model.Project, vs []model.Variant, j int) (model.Project, []model.Variant) {
	seed := p.Seed
	p.Seed = sun.Seed(seed, j)
	p.Load.Appliances, p.Load.Standing = slices.Clone(p.Load.Appliances), slices.Clone(p.Load.Standing)
	out := make([]model.Variant, len(vs))
	for i, v := range vs {
		out[i] = detached(v)
	}
	for _, t := range Tolerances() {
		f := t.Factor(seed, j)
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
		if b := v.Stores[i].Cells; b != nil {
			v.Stores[i].Cells = new(*b)
		}
		if h := v.Stores[i].Hoist; h != nil {
			own := *h
			own.Mass, own.Train.Stages = slices.Clone(h.Mass), slices.Clone(h.Train.Stages)
			v.Stores[i].Hoist = &own
		}
	}
	return v
}

// scale multiplies what is known and says whether it is.
func scale[T unit.Number](k *unit.Known[T], f float64) bool {
	k.Val = T(float64(k.Val) * f)
	return k.Is
}

func panelPower(v *model.Variant, f float64) (there bool) {
	for i := range v.Panels {
		a := &v.Panels[i]
		there = scale(&a.Power, f) || there
		if a.Sheet != nil {
			brighter(a.Sheet, f)
		}
	}
	return there
}

// brighter gives more current at the same voltages, as more light does.
func brighter(s *panel.Sheet, f float64) {
	scale(&s.Isc, f)
	scale(&s.Imp, f)
}

func lampPower(p *model.Project, f float64) (there bool) {
	for i := range p.Load.Appliances {
		there = scale(&p.Load.Appliances[i].Power, f) || there
	}
	return there
}

func sharedIdle(p *model.Project, f float64) (there bool) {
	for i := range p.Load.Standing {
		there = scale(&p.Load.Standing[i].Power, f) || there
	}
	return scale(&p.Load.Inverter.Idle, f) && p.Load.Inverter.Present == "yes" || there
}

func ownIdle(v *model.Variant, f float64) (there bool) {
	for i := range v.Standing {
		there = scale(&v.Standing[i].Power, f) || there
	}
	return scale(&v.Controller.Night, f) || there
}

// banks calls do for every battery of a variant that can be computed.
func banks(v *model.Variant, do func(*cell.Bank, cell.Resolved)) (there bool) {
	for _, s := range v.Stores {
		if s.Cells != nil {
			if r := s.Cells.Resolve(); r.WhyNot == "" {
				do(s.Cells, r)
				there = true
			}
		}
	}
	return there
}

func capacity(v *model.Variant, f float64) bool {
	return banks(v, func(b *cell.Bank, _ cell.Resolved) { scale(&b.Capacity, f) })
}

// batteryLoss changes what comes out of what went in, both ways alike.
func batteryLoss(v *model.Variant, f float64) bool {
	return banks(v, func(b *cell.Bank, r cell.Resolved) {
		way := math.Sqrt(f)
		b.ChargeEff, b.DrawEff = unit.Of(unit.Ratio(min(1, r.ChargeEff*way))), unit.Of(unit.Ratio(min(1, r.DrawEff*way)))
	})
}

// byVolume is how far a mass reckoned from its volume may be off: ± 10 %.
const byVolume = 0.10

// offBy is how far a mass may be off by the way it was weighed.
var offBy = map[string]float64{"scale": 0.01, "label": 0.03, "volume": byVolume, "guess": 0.25, "": byVolume}

func hungMass(v *model.Variant, f float64) (there bool) {
	for _, s := range v.Stores {
		if s.Hoist == nil {
			continue
		}
		for i := range s.Hoist.Mass {
			m := &s.Hoist.Mass[i]
			there = scale(&m.Mass, 1+(f-1)*offBy[m.Weighed]/byVolume) || there
		}
	}
	return there
}

// gearLoss makes more or less of what the stages lose.
func gearLoss(v *model.Variant, f float64) (there bool) {
	less := func(k *unit.Known[unit.Ratio]) {
		if e, ok := k.Value(); ok {
			k.Val, there = unit.Ratio(max(0.01, 1-(1-float64(e))*f)), true
		}
	}
	for _, s := range v.Stores {
		if s.Hoist == nil {
			continue
		}
		for i := range s.Hoist.Train.Stages {
			g := &s.Hoist.Train.Stages[i]
			less(&g.Efficiency)
			less(&g.MeshEff)
			there = scale(&g.Friction, f) || there
		}
	}
	return there
}
