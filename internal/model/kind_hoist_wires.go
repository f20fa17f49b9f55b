package model

import (
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// usualStepDown is the efficiency of a step-down drive where nobody gave it, as its input current needs it: the low end of
// 0.90 to 0.94 (from memory).
const usualStepDown = 0.9

// Wires is what the hoist uses in the moment in which its motor starts, V·I_av/η_D and its brake, and the voltages of its
// motor's wires.
func (r *HoistResult) Wires() Wires {
	raise := r.Design.Raise
	w := Wires{Brake: max(raise.Auxiliary.Or(0), r.Design.Lower.Auxiliary.Or(0)), OwnPanels: raise.Feed == lift.FeedPanel}
	if i, ok := r.supplyCurrent(); ok {
		w.Lifting = unit.Power(raise.Voltage.Val)*unit.Power(i)/unit.Power(driveEfficiency(raise)) + raise.Auxiliary.Or(0)
	}
	w.Lives = []live{{"raise.voltage_v", "The motor's supply", raise.Voltage.Or(0)}}
	if lo := r.Drive.Lowering; lo.Known {
		w.Lives = append(w.Lives, live{"lower.loads", "The lamps on the motor", lo.Voltage})
	}
	for k, l := range r.Design.Lower.Loads {
		if l.Kind == lift.LoadClamp {
			w.Lives = append(w.Lives, live{fmt.Sprintf("lower.loads[%d].threshold_v", k), "The clamp on the motor", l.Threshold.Or(0)})
		}
	}
	return w
}

// onLine reports whether the line feeds the motor.
func (r *HoistResult) onLine() bool {
	f := r.Design.Raise.Feed
	return f == lift.FeedDrive || f == lift.FeedRelay
}

// supplyCurrent is I_av, the most current that the supply drives through the motor: its limit, or what wires and winding let
// through with the shaft held. False where the line does not feed the motor or neither is known.
func (r *HoistResult) supplyCurrent() (unit.Current, bool) {
	raise := r.Design.Raise
	if raise.Feed == lift.FeedPanel || raise.Feed == "" || !raise.Voltage.Is {
		return 0, false
	}
	m := r.Drive.Machine
	if !m.R.Is {
		return raise.CurrentLimit.Val, raise.CurrentLimit.Is
	}
	return lift.Available(raise.Voltage.Val, m.BrushDrop, m.R.Val+raise.WireR.Or(0), raise.CurrentLimit), true
}

// driveEfficiency is η_D of a supply: 1 for a relay that nobody measured, a low usual one for a drive.
func driveEfficiency(r lift.Raise) unit.Ratio {
	if r.Feed == lift.FeedRelay {
		return r.DriveEff.Or(1)
	}
	return r.DriveEff.Or(usualStepDown)
}

// Peak is nothing: a hoist does not carry the line.
func (r *HoistResult) Peak(Ground, PeakBank) []LineCheck { return nil }
