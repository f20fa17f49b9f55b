package lift

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// Two motors on one dynamometer, rows of best efficiency of their curves (CIM 2015-11-04, BAG 2015-12-07, published by their
// seller): a sheet without the torque with the shaft held leaves the drop at the brushes open, and the measured current lies
// between the ends of the range, within two hundredths. Taken as none the drop makes that of the first 9 % too small.
func TestDynamometerWithinTheRange(t *testing.T) {
	for _, c := range []struct {
		name                          string
		turns, free, stall, torque, a float64
		carbon                        bool
	}{
		{"CIM", 5330, 2.7, 131.055, 0.31369, 19.386, true},
		{"BAG", 13177.689, 1.8, 52.619, 0.06896, 9.931, false},
	} {
		h := worked()
		h.Machine = Machine{I0: unit.Of(unit.Current(c.free)), SheetVolts: unit.Of(unit.Voltage(12)),
			SheetSpeed: unit.Of(unit.AngularSpeed(c.turns) * unit.RevPerMinute), SheetStall: unit.Of(unit.Current(c.stall))}
		m := Compute(h).Machine
		if m.BrushDrop != 0 || m.BrushLow != unit.Of(unit.Voltage(0)) || math.Abs(float64(m.BrushHigh.Val)-1.68) > 1e-12 {
			t.Fatalf("%s: drop %v, %v to %v, want 0 to 0.14·12 V", c.name, m.BrushDrop, m.BrushLow, m.BrushHigh)
		}
		current := func(drop unit.Voltage) float64 {
			k := Compute(h.WithBrush(drop)).Machine.K.Val
			return float64(MotorCurrent(unit.Torque(c.torque), k, unit.Current(c.free)))
		}
		low, high := current(0), current(m.BrushHigh.Val)
		if c.a < 0.98*low || c.a > 1.02*high {
			t.Errorf("%s: measured %.4g A, told %.4g to %.4g", c.name, c.a, low, high)
		}
		if short := 1 - low/c.a; c.carbon != (short > 0.05) {
			t.Errorf("%s: without a drop %.3g of the current is missing", c.name, short)
		}
	}
}

// Where the drop is one number it is no range: given, told by the torque with the shaft held, or inside a resistance that was
// measured; a range that the user gives stands, and an end that is not given is none, or 0.14 of the label's volts.
func TestBrushRange(t *testing.T) {
	sheet := func(change func(*Machine)) Constants {
		m := Machine{I0: unit.Of(unit.Current(2.7)), SheetVolts: unit.Of(unit.Voltage(12)), SheetSpeed: unit.Of(unit.AngularSpeed(558.156)), SheetStall: unit.Of(unit.Current(131.055))}
		change(&m)
		return Compute(Hoist{Machine: m}).Machine
	}
	v := func(x float64) unit.Known[unit.Voltage] { return unit.Of(unit.Voltage(x)) }
	none := unit.Known[unit.Voltage]{}
	for _, c := range []struct {
		what      string
		change    func(*Machine)
		low, high unit.Known[unit.Voltage]
	}{
		{"open", func(*Machine) {}, v(0), v(1.68)},
		{"given", func(m *Machine) { m.BrushDrop = v(0) }, none, none},
		{"told by the torque", func(m *Machine) { m.SheetTorque = unit.Of(unit.Torque(2.42)) }, none, none},
		{"torque behind a gearbox", func(m *Machine) {
			m.SheetTorque, m.SheetGear = unit.Of(unit.Torque(2.42)), unit.Of(unit.Ratio(2))
		}, v(0), v(1.68)},
		{"K and R by bench or hand", func(m *Machine) {
			m.K, m.R = unit.Of(unit.MachineConstant(0.0189)), unit.Of(unit.Resistance(0.09))
		}, none, none},
		{"R by hand, K by the sheet", func(m *Machine) { m.R = unit.Of(unit.Resistance(0.09)) }, v(0), v(1.68)},
		{"given range", func(m *Machine) { m.BrushLow, m.BrushHigh = v(1), v(1.5) }, v(1), v(1.5)},
		{"given least", func(m *Machine) { m.BrushLow = v(1) }, v(1), v(1.68)},
		{"given greatest", func(m *Machine) { m.BrushHigh = v(1.5) }, v(0), v(1.5)},
	} {
		if m := sheet(c.change); m.BrushLow.Is != c.low.Is || m.BrushHigh.Is != c.high.Is || math.Abs(float64(m.BrushLow.Val-c.low.Val)) > 1e-12 || math.Abs(float64(m.BrushHigh.Val-c.high.Val)) > 1e-12 {
			t.Errorf("%s: %v to %v, want %v to %v", c.what, m.BrushLow, m.BrushHigh, c.low, c.high)
		}
	}
}
