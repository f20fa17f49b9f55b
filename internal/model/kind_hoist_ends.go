package model

import (
	"fmt"
	"slices"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/ready"
	"duskweight/internal/model/unit"
)

// What a usual value of the motor's side stands for (from memory): a direct-drive wheel hub has a machine constant of 0.6 to
// 1.3 V·s/rad and an iron drag of 0.3 to 1 N·m; what other motors and gears take without load is off by up to 0.3 of it.
const (
	hubLeast, hubMost         unit.MachineConstant = 0.6, 1.3
	hubDragLeast, hubDragMost unit.Torque          = 0.3, 1
	usualDrag                                      = 0.3
)

// motorEnds are hoists like this one at place i of a variant, as its motor and gears may be instead, where usual values stand
// there that nobody confirmed: at each end of what a wheel hub may be, or with the least and the most that is taken without
// load. None where no such value is a usual one.
func (v Variant) motorEnds(i int, h lift.Hoist, k unit.Known[unit.MachineConstant]) ready.Usual {
	typical := func(path string) bool { return v.Origins[Join(HoistPath(i), path)].Kind == OriginTypical }
	m := h.Machine
	ofK, ofI0 := m.K.Is && typical("machine.k_vs_rad"), m.I0.Is && typical("machine.i0_a")
	var idle []int
	for n, s := range h.Train.Stages {
		if s.IdleTorque.Is && m.I0WithGear != unit.Yes && typical(fmt.Sprintf("train.stages[%d].idle_torque_nm", n)) {
			idle = append(idle, n)
		}
	}
	u := ready.Usual{Hub: k.Is && k.Val >= hubLeast && (ofK || ofI0)}
	if !u.Hub && !ofI0 && len(idle) == 0 {
		return u
	}
	constants := []unit.MachineConstant{k.Val}
	if u.Hub && ofK {
		constants = []unit.MachineConstant{hubLeast, hubMost}
	}
	for _, constant := range constants {
		for _, side := range []float64{-1, 1} {
			w := h
			if u.Hub && ofK {
				w.Machine.K = unit.Of(constant)
			}
			switch {
			case ofI0 && u.Hub && side < 0:
				w.Machine.I0 = unit.Of(lift.DragCurrent(hubDragLeast, constant))
			case ofI0 && u.Hub:
				w.Machine.I0 = unit.Of(lift.DragCurrent(hubDragMost, constant))
			case ofI0:
				w.Machine.I0.Val *= unit.Current(1 + side*usualDrag)
			}
			w.Train.Stages = slices.Clone(h.Train.Stages)
			for _, n := range idle {
				w.Train.Stages[n].IdleTorque.Val *= unit.Torque(1 + side*usualDrag)
			}
			u.Hoists = append(u.Hoists, w)
		}
	}
	return u
}

// weighed is what hangs on the hoist at place i. A usual mass counts as a guess, whatever is said of a scale or a label: nobody
// weighed that one.
func (v Variant) weighed(i int) []lift.Piece {
	all := slices.Clone(v.HoistAt(i).Mass)
	for n, p := range all {
		usual := v.Origins[Join(HoistPath(i), fmt.Sprintf("mass[%d].mass_kg", n))].Kind == OriginTypical
		if usual && (p.Weighed == lift.ByScale || p.Weighed == lift.ByLabel) {
			all[n].Weighed = lift.ByGuess
		}
	}
	return all
}
