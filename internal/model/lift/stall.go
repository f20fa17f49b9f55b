package lift

import "duskweight/internal/model/unit"

// Stalled is what a sheet tells that gives torque and current with the shaft held beside the speed and the current without
// load.
type Stalled struct {
	K     unit.MachineConstant
	R     unit.Resistance
	Brush unit.Voltage // below 0 where the numbers do not belong together
}

// FromStall works a motor out of its sheet: K = T_s/(I_s − I_0), R = K·ω_0/(I_s − I_0), V_b = V − I_s·R. They follow from
// V − V_b = K·ω_0 + I_0·R without load, V − V_b = I_s·R with the shaft held, and T_s = K·(I_s − I_0). False where the
// current with the shaft held is not above the one without load.
func FromStall(volts unit.Voltage, torque unit.Torque, stall, free unit.Current, speed unit.AngularSpeed) (Stalled, bool) {
	over := float64(stall - free)
	if over <= 0 {
		return Stalled{}, false
	}
	k := float64(torque) / over
	r := k * float64(speed) / over
	return Stalled{unit.MachineConstant(k), unit.Resistance(r), unit.Voltage(float64(volts) - float64(stall)*r)}, true
}

// stalled is that of the machine's own sheet. Torque and speed behind a gearbox hold its losses too and are left out.
func (m Machine) stalled(i0 worth) (Stalled, bool) {
	if !m.SheetVolts.Is || !m.SheetTorque.Is || !m.SheetStall.Is || !m.SheetSpeed.Is || i0.from == "" || m.SheetGear.Or(1) > 1 {
		return Stalled{}, false
	}
	return FromStall(m.SheetVolts.Val, m.SheetTorque.Val, m.SheetStall.Val, unit.Current(i0.value), m.SheetSpeed.Val)
}

// brush is the drop at the brushes: the user's own, the middle of the range that the user gives, what the sheet's torque with
// the shaft held leaves for it, or none.
func (m Machine) brush(i0 worth) unit.Voltage {
	if v, ok := m.BrushDrop.Value(); ok {
		return v
	}
	if m.BrushLow.Is && m.BrushHigh.Is {
		return (m.BrushLow.Val + m.BrushHigh.Val) / 2
	}
	if s, ok := m.stalled(i0); ok {
		return max(0, s.Brush)
	}
	return 0
}
