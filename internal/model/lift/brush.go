package lift

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// CarbonDrop is the most that carbon brushes lose, both together, as a share of the volts that the motor is made for: three of
// four motors on one dynamometer lose 1.3 to 1.7 V of 12 V, the fourth nothing (curves of 2015, published by their seller).
const CarbonDrop = 0.14

// brushRange fills the drop at the brushes where only a range of it is known: the user's own range, or 0 to CarbonDrop where
// K or R are worked out of a sheet that does not tell the torque with the shaft held. R measured at the bench has the brushes
// in it.
func (w *work) brushRange(k, r worth, i0 worth) {
	m, c := w.h.Machine, &w.d.Machine
	if m.BrushDrop.Is {
		return
	}
	volts, ok := m.SheetVolts.Value()
	if !ok {
		volts, ok = w.h.Raise.Voltage.Value()
	}
	low, high := m.BrushLow.Or(0), m.BrushHigh.Or(CarbonDrop*volts)
	if !m.BrushLow.Is && !m.BrushHigh.Is {
		if _, told := m.stalled(i0); told || k.from != FromSheet && r.from != FromSheet {
			return
		}
		w.caution("machine.brush_drop_v", "What the motor loses at its brushes is not known: carbon brushes lose up to %s of %s. So its current is a range. The torque with the shaft held, from the motor's sheet, tells this loss.", say.Voltage(high), say.Voltage(volts))
	}
	if !ok && !m.BrushHigh.Is || high <= low {
		return
	}
	c.BrushLow, c.BrushHigh = unit.Of(low), unit.Of(high)
}

// WithBrush is the hoist with one drop at the brushes of its motor.
func (h Hoist) WithBrush(drop unit.Voltage) Hoist {
	h.Machine.BrushDrop = unit.Of(drop)
	return h
}
