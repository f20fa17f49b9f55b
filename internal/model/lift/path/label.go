package path

import (
	"slices"
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Label is what must stand on a part so that no check of it gives way: the one number to look for in a shop. A rating that
// depends on how the part is fastened (an eye bolt pulled at an angle) has that allowed for.
type Label struct {
	ID      string // of the check that asks for it
	Part    string // as the check calls it
	Path    string // of the value inside the hoist
	Least   unit.Known[unit.Ratio]
	Unit    unit.Measure
	Missing []string
	Stated  unit.Known[unit.Ratio] // what the design says stands on it
	Open    bool                   // it stays not known whatever the label says: how it is fastened is asked for
	None    bool                   // no label is enough: how it is fastened must change first
}

// Labels works out the labels of a hoist's bought parts, in the order of the load: container, eye of the mass, rope,
// pulleys, what holds the top pulley, base weights, coupling, gearboxes, holds. The strengths that the design already
// has play no part: each is tried at two large values, and because every capacity is a straight line over the label,
//
//	capacity = a + b·label,  least = (wanted·demand − a)/b,
//
// the greatest over the load cases is exact. Holds that are not named yet, up to two, are asked for as a brake and a
// ratchet.
func Labels(h lift.Hoist, d lift.Drive) []Label {
	one, two := rated(h, probe), rated(h, 2*probe)
	a, b := Checks(one, d), Checks(two, d)
	var out []Label
	add := func(l Label, pick func(Check) bool) {
		for i, c := range a {
			if i < len(b) && pick(c) {
				l.from(c, b[i])
			}
		}
		if l.Part != "" {
			out = append(out, l)
		}
	}
	id := func(ids ...string) func(Check) bool { return func(c Check) bool { return slices.Contains(ids, c.ID) } }
	switch h.Container.Kind {
	case "", lift.ContainerNoneOneBlock, lift.ContainerHomeSewn:
	default:
		add(Label{ID: "container", Path: "container.working_load_n", Unit: unit.Newtons, Stated: stated(h.Container.Rating)}, id("container"))
	}
	add(Label{ID: "rope", Path: "rope.breaking_load_n", Unit: unit.Newtons, Stated: stated(h.Rope.BreakingLoad)}, id("rope", "knot"))
	out = append(out, pulleyLabels(a, b, h)...)
	add(Label{ID: "hanger", Path: "structure.hanger_working_load_n", Unit: unit.Newtons, Stated: stated(h.Structure.HangerRating)}, id("hanger"))
	if h.Base.Where != lift.BaseOnWall {
		add(Label{ID: "base_uplift", Path: "base.mass_kg", Unit: unit.Kilograms, Stated: fastened(h)}, id("base_uplift", "base_sliding", "base_overturning"))
	}
	if h.Drum.Coupling == lift.CouplingYes {
		add(Label{ID: "coupling", Path: "drum.coupling_torque_nm", Unit: unit.NewtonMetres, Stated: stated(h.Drum.CouplingRating)}, id("coupling"))
	}
	for i, s := range h.Train.Stages {
		if s.Kind == lift.StageBox || s.Rated.Is {
			name := stageName(i, one.Train.Stages[i])
			add(Label{ID: "gear_tooth", Path: at("train.stages", i, "rated_torque_nm"), Unit: unit.NewtonMetres, Stated: stated(s.Rated)},
				func(c Check) bool { return c.ID == "gear_tooth" && c.Part == name && c.Demand.In == unit.NewtonMetres })
		}
	}
	return append(out, holdLabels(a, b, one, h)...)
}

func stated[T unit.Number](k unit.Known[T]) unit.Known[unit.Ratio] {
	return unit.Known[unit.Ratio]{Val: unit.Ratio(k.Val), Is: k.Is}
}

// fastened is the mass of the base that nobody can take away.
func fastened(h lift.Hoist) unit.Known[unit.Ratio] {
	m, is, miss := (&loads{h: h}).ballast()
	return unit.Known[unit.Ratio]{Val: unit.Ratio(m), Is: is && len(miss) == 0}
}

// probe is the label that is tried: so large that nothing is clamped at it.
const probe = 1e9

// rated is the hoist with every label at x.
func rated(h lift.Hoist, x float64) lift.Hoist {
	h.Rope.BreakingLoad = unit.Of(unit.Force(x))
	h.Structure.HangerRating = unit.Of(unit.Force(x))
	h.Container.Rating, h.Container.EyeRating = unit.Of(unit.Force(x)), unit.Of(unit.Force(x))
	h.Base.Mass, h.Base.WeightsFixed = unit.Of(unit.Mass(x)), unit.Yes
	h.Drum.CouplingRating = unit.Of(unit.Torque(x))
	n, k := int(h.Reeving.RopeParts.Or(0)), int(h.Reeving.LeadSheaves.Or(0))
	h.Reeving.Sheaves = slices.Clone(h.Reeving.Sheaves)
	for len(h.Reeving.Sheaves) < n+k-1 && len(h.Reeving.Sheaves) < 24 {
		h.Reeving.Sheaves = append(h.Reeving.Sheaves, lift.Sheave{})
	}
	for i := range h.Reeving.Sheaves {
		h.Reeving.Sheaves[i].Rating, h.Reeving.Sheaves[i].RatingOf = unit.Of(unit.Force(x)), lift.RatingHookLoad
		h.Reeving.Sheaves[i].Fixing = unit.Of(unit.Force(x))
	}
	h.Train.Stages = slices.Clone(h.Train.Stages)
	for i := range h.Train.Stages {
		h.Train.Stages[i].Rated = unit.Of(unit.Torque(x))
	}
	h.Holds.Holds = heldBy(h, x)
	return h
}

// heldBy are the named holds that hold, and what is asked for besides until there are two, each at x.
func heldBy(h lift.Hoist, x float64) []lift.Hold {
	out := namedHolds(h)
	for _, kind := range []lift.HoldKind{lift.HoldSpringBrake, lift.HoldRatchet} {
		if len(out) < 2 && !slices.ContainsFunc(out, func(o lift.Hold) bool { return o.Kind == kind }) {
			out = append(out, lift.Hold{Kind: kind, OnDrum: unit.Yes})
		}
	}
	for i, o := range out {
		if o.Kind == lift.HoldRatedProp || o.Kind == lift.HoldLockingPin {
			out[i].Torque, out[i].Force = unit.Known[unit.Torque]{}, unit.Of(unit.Force(x))
		} else {
			out[i].Torque, out[i].Force = unit.Of(unit.Torque(x)), unit.Known[unit.Force]{}
		}
	}
	return out
}

func pulleyLabels(a, b []Check, h lift.Hoist) []Label {
	var out []Label
	k := int(h.Reeving.LeadSheaves.Or(0))
	next := 0 // pulleys behind the drum, in turn
	for i, c := range a {
		if c.ID != "head_sheave" && c.ID != "redirect_sheave" || i >= len(b) {
			continue
		}
		fixing := strings.HasPrefix(c.Part, fixingPrefix) // stands behind its pulley
		j := k
		if c.ID == "redirect_sheave" {
			if !fixing {
				next++
			}
			if next == k {
				next++
			}
			j = next
		}
		l := pulleyLabel(c.ID, j, fixing, h)
		l.from(c, b[i])
		out = append(out, l)
	}
	return out
}

// pulleyLabel is the label of pulley j, or of what holds it.
func pulleyLabel(id string, j int, fixing bool, h lift.Hoist) Label {
	l := Label{ID: id, Unit: unit.Newtons, Path: "reeving.lead_sheaves"}
	if j < 1 {
		return l
	}
	var s lift.Sheave
	if j <= len(h.Reeving.Sheaves) {
		s = h.Reeving.Sheaves[j-1]
	}
	if fixing {
		l.ID, l.Path, l.Stated = "fixing", at("reeving.sheaves", j-1, "fixing_working_load_n"), stated(s.Fixing)
		return l
	}
	l.Path, l.Stated = at("reeving.sheaves", j-1, "working_load_n"), stated(s.Rating)
	if s.RatingOf == lift.RatingRopePull {
		l.Stated.Val *= 2
	}
	return l
}

func holdLabels(a, b []Check, h, design lift.Hoist) []Label {
	named := namedHolds(design)
	var out []Label
	n := 0
	for i, c := range a {
		if c.ID != "holds" || c.Part == TwoHolds || i >= len(b) || n >= len(h.Holds.Holds) {
			continue
		}
		l := Label{ID: "holds", Unit: unit.NewtonMetres, Path: at("holds.holds", n, "torque_nm")}
		if kind := h.Holds.Holds[n].Kind; kind == lift.HoldRatedProp || kind == lift.HoldLockingPin {
			l.Unit, l.Path = unit.Newtons, at("holds.holds", n, "force_n")
		}
		if n < len(named) {
			l.Stated = stated(named[n].Torque)
			if l.Unit == unit.Newtons {
				l.Stated = stated(named[n].Force)
			}
		}
		l.from(c, b[i])
		out = append(out, l)
		n++
	}
	return out
}

// from takes the least label of one check, tried at probe and at twice that.
func (l *Label) from(one, two Check) {
	if l.Part == "" {
		l.Part = one.Part
	}
	for _, m := range one.Missing {
		if !contains(l.Missing, m) {
			l.Missing = append(l.Missing, m)
		}
	}
	l.Open = l.Open || one.Word == NotKnown && len(one.Missing) == 0
	for i, c := range one.Cases {
		if i >= len(two.Cases) {
			break
		}
		slope := (two.Cases[i].Capacity.Val - c.Capacity.Val) / probe
		want := float64(c.Wanted) * c.Demand.Val
		if slope <= 0 {
			l.None = l.None || c.Capacity.Val <= 0 && c.Demand.Val > 0
			continue // another thing than the label
		}
		least := (want - (c.Capacity.Val - slope*probe)) / slope
		if finite(least) && least > float64(l.Least.Val) {
			l.Least = unit.Of(unit.Ratio(least))
		}
	}
}
