package lift

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// The CIM motor on a dynamometer (curve of 2015-11-04 of its seller): 12 V, 5,330 turns a minute and 2.7 A without load,
// 131.055 A and 2.42 N·m with the shaft held. By hand K = 2.42/128.355 = 0.018854 V·s/rad, R = 0.018854·558.156/128.355 =
// 81.99 mΩ, V_b = 12 − 131.055·0.08199 = 1.255 V.
func TestStallTorqueTellsTheBrushes(t *testing.T) {
	m := Machine{I0: unit.Of(unit.Current(2.7)), SheetVolts: unit.Of(unit.Voltage(12)), SheetSpeed: unit.Of(unit.AngularSpeed(558.156295)),
		SheetStall: unit.Of(unit.Current(131.055)), SheetTorque: unit.Of(unit.Torque(2.42))}
	s, ok := FromStall(12, 2.42, 131.055, 2.7, 558.156295)
	c := Compute(Hoist{Machine: m}).Machine
	if !ok || math.Abs(float64(s.K)-0.018854) > 1e-6 {
		t.Errorf("K of the sheet: %v", s.K)
	}
	for _, x := range []struct {
		what           string
		got, want, off float64
	}{{"K", float64(c.K.Val), 0.018854, 1e-6}, {"R", float64(c.R.Val), 0.08199, 5e-6}, {"brushes", float64(c.BrushDrop), 1.255, 1e-3}} {
		if math.Abs(x.got-x.want) > x.off {
			t.Errorf("%s: %v, want %v", x.what, x.got, x.want)
		}
	}
	if len(c.Contradictions) > 0 {
		t.Errorf("one sheet contradicts itself: %v", c.Contradictions)
	}
	// With 3 N·m the brushes would add voltage: K is 0.02337 by torque and (12 − 2.7·0.09156)/558.156 = 0.02106 by speed.
	m.SheetTorque = unit.Of(unit.Torque(3))
	if c := Compute(Hoist{Machine: m}).Machine; len(c.Contradictions) != 1 || c.BrushDrop != 0 {
		t.Errorf("torque and speed of two motors: brushes %v, %v", c.BrushDrop, c.Contradictions)
	}
	// A range that the user gives counts at its middle, and a drop that the user gives before it.
	m.BrushLow, m.BrushHigh = unit.Of(unit.Voltage(1)), unit.Of(unit.Voltage(2))
	if c := Compute(Hoist{Machine: m}).Machine; c.BrushDrop != 1.5 {
		t.Errorf("between 1 and 2 V: %v", c.BrushDrop)
	}
	m.BrushDrop = unit.Of(unit.Voltage(0.8))
	if c := Compute(Hoist{Machine: m}).Machine; c.BrushDrop != 0.8 {
		t.Errorf("given: %v", c.BrushDrop)
	}
}
