package model

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/trial"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// adopt writes what the records determine into a copy of the design. The loss of the whole train is shared out over its
// stages as it was, so that one that locks stays the worst.
func (m *Measured) adopt(h lift.Hoist, d lift.Drive, up, back [][]float64) {
	m.Design.Train.Stages = slices.Clone(h.Train.Stages)
	if m.Gears.Absurd.IsZero() && len(up) > 0 {
		m.adoptGears(up, back, d)
		m.adoptIdle(h, d)
	}
	if m.KnowPush && m.Gears.Absurd.IsZero() {
		m.change("train.breakaway", "First push", ratioOf(h.Train.Breakaway), m.FirstPush)
		m.Design.Train.Breakaway = unit.Of(unit.Ratio(m.FirstPush.Val))
	}
	if m.Warmth.Known {
		m.adoptWarmth(h)
	}
}

func (m *Measured) change(path, what string, was unit.Known[unit.Ratio], is trial.Value) {
	m.Changes = append(m.Changes, MeasuredChange{path, what, was, is})
}

func ratioOf[T ~float64](k unit.Known[T]) unit.Known[unit.Ratio] {
	return unit.Known[unit.Ratio]{Val: unit.Ratio(k.Val), Is: k.Is}
}

func (m *Measured) adoptGears(up, back [][]float64, d lift.Drive) {
	g := m.Gears
	if g.KnowUp {
		m.change("train.stages[0].efficiency", "Gears, lifting", d.Forward, g.Up)
	}
	if g.KnowBack {
		m.change("train.stages[0].backward_efficiency", "Gears, coming down", d.Backward, g.Back)
	}
	for i := range up {
		s := &m.Design.Train.Stages[i]
		if g.KnowUp {
			s.Efficiency = unit.Of(unit.Ratio(math.Pow(g.Up.Val, lossOf(up[i]))))
		}
		if g.KnowBack {
			s.Backward = unit.Of(unit.Ratio(math.Pow(g.Back.Val, lossOf(back[i]))))
		}
	}
}

func lossOf(shares []float64) (sum float64) {
	for _, one := range shares {
		sum += one
	}
	return sum
}

// adoptIdle books the torque with nothing on the rope: the motor's own friction K·I_0 stays where it is, and the rest is
// the idle torque of the first stage. Where the current without load was measured with the gears on, or is more than
// all that was found, it becomes that current.
func (m *Measured) adoptIdle(h lift.Hoist, d lift.Drive) {
	if !m.Gears.Known {
		return
	}
	k, own, all := float64(d.Machine.K.Val), d.Machine.K.Val*unit.MachineConstant(d.Machine.I0.Val), m.Gears.Idle.Val
	was := unit.Known[unit.Ratio]{}
	if d.Machine.I0.Is {
		was = unit.Of(unit.Ratio(own))
		for i, s := range h.Train.Stages {
			if i > 0 || h.Machine.I0WithGear == unit.Yes {
				break // those of later stages reach the motor divided by the ratio
			}
			was.Val += unit.Ratio(s.IdleTorque.Or(0))
		}
	}
	m.change("train.stages[0].idle_torque_nm", "Motor and gears with nothing on the rope", was, m.Gears.Idle)
	for i := range m.Design.Train.Stages {
		m.Design.Train.Stages[i].IdleTorque = unit.Of[unit.Torque](0)
	}
	if h.Machine.I0WithGear != unit.Yes && d.Machine.I0.Is && all >= float64(own) {
		m.Design.Train.Stages[0].IdleTorque = unit.Of(unit.Torque(all - float64(own)))
		return
	}
	m.Design.Machine.I0, m.Design.Machine.K, m.Design.Machine.R = unit.Of(unit.Current(all/k)), d.Machine.K, d.Machine.R
}

// adoptWarmth takes the motor as one body where its winding was measured, and the way from case to air where the case
// was and the way from winding to case is known. The case alone says nothing of the winding, which is hotter.
func (m *Measured) adoptWarmth(h lift.Hoist) {
	to, w := &m.Design.Machine, m.Warmth
	rth, tau := unit.Of(unit.ThermalResistance(w.Rth.Val)), unit.Of(unit.Duration(w.Tau.Val))
	switch {
	case h.Trials.WarmAt == lift.WarmWinding:
		m.change("machine.rth_winding_k_w", "Heat of the motor, winding to air", ratioOf(h.Machine.RthWinding), w.Rth)
		m.change("machine.tau_winding_s", "Its time constant", ratioOf(h.Machine.TauWinding), w.Tau)
		to.RthWinding, to.TauWinding = rth, tau
		to.RthCase, to.TauCase = unit.Known[unit.ThermalResistance]{}, unit.Known[unit.Duration]{}
	case h.Machine.RthWinding.Is && h.Machine.RthCase.Is:
		m.change("machine.rth_case_k_w", "Heat of the motor, case to air", ratioOf(h.Machine.RthCase), w.Rth)
		m.change("machine.tau_case_s", "Its time constant", ratioOf(h.Machine.TauCase), w.Tau)
		to.RthCase, to.TauCase = rth, tau
	default:
		m.Lack = append(m.Lack, say.Words("The case's temperature alone is not put into the plan: the winding inside is hotter. Measure the winding, or give winding to case."))
	}
}

// Measured fits the records of the hoist at that place of the variant, as it is computed: a typical value that the motor's
// label replaces does not count.
func (v Variant) Measured(i int) Measured {
	h, _ := v.labelled(i)
	return MeasuredOf(h)
}

// AsMeasured is the variant with the measured values in its i-th store, under a name of its own, each value marked as
// measured. False where the records change nothing.
func AsMeasured(v Variant, i int) (Variant, bool) {
	m := v.Measured(i)
	if len(m.Changes) == 0 {
		return v, false
	}
	out := v.WithHoist(i, m.Design)
	out.Origins = Origins{}
	for path, o := range v.Origins {
		out.Origins[path] = o
	}
	from := fmt.Sprintf("%d lifts and %d ways down tried", len(v.HoistAt(i).Trials.Raises), len(v.HoistAt(i).Trials.Lowers))
	for _, path := range m.paths() {
		out.Origins[Join(HoistPath(i), path)] = Origin{Kind: OriginMeasured, Source: from}
	}
	out.Name = FitName(v.Name, ", as measured")
	return out, true
}

// paths are those of every value that the records set, all stages of the train among them.
func (m Measured) paths() []string {
	var out []string
	for _, c := range m.Changes {
		rest, ok := strings.CutPrefix(c.Path, "train.stages[0].")
		if !ok {
			out = append(out, c.Path)
			continue
		}
		for i := range m.Design.Train.Stages {
			out = append(out, fmt.Sprintf("train.stages[%d].%s", i, rest))
		}
	}
	return out
}
