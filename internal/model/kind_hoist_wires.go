package model

import (
	"fmt"

	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
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
	w.Devices = r.devices()
	if r.onLine() {
		w.Checks = []LineCheck{r.wireCheck(), r.switchCheck()}
	}
	return w
}

// wireCheck is the current of the held motor in the wires that feed it. Which current wires carry is known between two ends:
// within them the answer is not known.
func (r *HoistResult) wireCheck() LineCheck {
	const path = "raise.wire_area_m2"
	amps, known := r.supplyCurrent()
	area, ok := r.Design.Raise.WireArea.Value()
	if !ok {
		return LineCheck{ID: "motor_cable", Path: path, Quantity: unit.Currents, Demand: float64(amps), Word: NotKnown, Say: say.That("How thick the wires between line and motor are is not known.")}
	}
	least, most := cell.AmpacityEnds(area)
	carries := least
	if amps > most {
		carries = most
	}
	c := lineCheck("motor_cable", path, unit.Currents, float64(amps), float64(carries), 1)
	c.Say = say.That("The wires to the motor carry %s, and up to %s flow.", say.Current(carries).Down(), say.Current(amps))
	if !known {
		c.Say = say.That("The wires to the motor carry %s, and how much flows is not known.", say.Current(least).Down())
	}
	if !known || amps > least && amps <= most {
		c.Word, c.Use = NotKnown, unit.Known[unit.Ratio]{}
	}
	return c
}

// brighter is how far the current of panels stands above that on their sheet, beside bright clouds (IEC 62548, from memory; as
// for their strings).
const brighter = 1.25

// switchCheck is the current that the motor's switch must break: that of the held motor, or where the panels feed it straight
// all that they give.
func (r *HoistResult) switchCheck() LineCheck {
	if r.onPanels() {
		return r.panelSwitchCheck()
	}
	amps, known := r.supplyCurrent()
	c := lineCheck("contacts", "raise.switch_a", unit.Currents, float64(amps), float64(r.Design.Raise.Switch.Or(0)), 1)
	c.Say = say.That("The switch must break the current of the held motor, %s of direct current.", say.Current(amps))
	if !known {
		c.Word, c.Use = NotKnown, unit.Known[unit.Ratio]{}
		c.Say = say.That("The switch must break the current of the held motor, and how much that is is not known.")
	}
	return c
}

// panelSwitchCheck is the current of all panels in bright sun, which the switch between them and the motor must break: they
// cannot be switched off by day, and their arc does not go out by itself.
func (r *HoistResult) panelSwitchCheck() LineCheck {
	amps := brighter * r.Direct.Short
	c := lineCheck("contacts", "raise.switch_a", unit.Currents, float64(amps), float64(r.Design.Raise.Switch.Or(0)), 1)
	c.Say = say.That("The switch must break the current of the panels in bright sun, %s of direct current.", say.Current(amps))
	if !r.Direct.Known {
		c.Word, c.Use = NotKnown, unit.Known[unit.Ratio]{}
		c.Say = say.That("The switch must break the current of the panels, and how much that is is not known.")
	}
	return c
}

// onPanels reports whether the panels feed the motor straight.
func (r *HoistResult) onPanels() bool {
	return r.Design.Raise.Feed == lift.FeedPanel && r.Direct != nil
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

// devices are fuse, wires and switch of a motor that the line feeds, its supply, and what brakes it: coil, lamps, and the
// resistor or clamp that is wired for good.
func (r *HoistResult) devices() (out []Device) {
	raise, lower := r.Design.Raise, r.Design.Lower
	rated := func(k unit.Known[unit.Current]) say.Sentence {
		if !k.Is {
			return say.Sentence{}
		}
		return say.That("%s", say.Current(k.Val))
	}
	if r.onLine() {
		area := say.Sentence{}
		if raise.WireArea.Is {
			area = say.That("%s", say.WireArea(raise.WireArea.Val))
		}
		out = append(out, device(MotorFuse, rated(raise.Fuse), ids("fuse"), "raise.fuse_a"), device(MotorCable, area, ids("cable"), "raise.wire_area_m2"),
			device(MotorSwitch, rated(raise.Switch), ids("contacts"), "raise.switch_a"))
	}
	if r.onPanels() {
		out = append(out, device(MotorSwitch, rated(raise.Switch), ids("contacts"), "raise.switch_a"))
	}
	if raise.Voltage.Is {
		out = append(out, device(MotorSupply, say.That("%s", say.Voltage(raise.Voltage.Val)), ids("volts_feed", "volts_touch"), "raise.voltage_v"))
	}
	if r.brakeHasCoil() {
		coil := say.Sentence{}
		if raise.Auxiliary.Is {
			coil = say.That("%s", say.Power(raise.Auxiliary.Val))
		}
		out = append(out, device(BrakeCoil, coil, ids("brake_power"), "raise.auxiliary_w", "lower.auxiliary_w"))
	}
	lamps := device(MotorLamps, say.Sentence{}, ids("volts_touch"), "lower.loads")
	if lo := r.Drive.Lowering; lo.Known {
		lamps.Rating = say.That("%s", say.Voltage(lo.Voltage))
	}
	shunt, clamped := device(Shunt, say.Sentence{}, ids("shunt"), "lower.loads"), false
	for _, l := range lower.Loads {
		clamped = clamped || l.Kind == lift.LoadClamp && l.Threshold.Is
		if l.Permanent == unit.Yes && (l.Kind == lift.LoadResistor || l.Kind == lift.LoadClamp) {
			shunt.Rating = say.That("%s", l.Kind)
		}
	}
	if r.Drive.Lowering.Known || clamped {
		out = append(out, lamps)
	}
	return append(out, shunt)
}

// brakeHasCoil reports whether a coil may hold the spring brake open: nobody says that a hand or a latch does.
func (r *HoistResult) brakeHasCoil() bool {
	h := r.Design.Holds
	if h.BrakeRelease != "" && h.BrakeRelease != lift.ReleaseCoil {
		return false
	}
	for _, x := range h.Holds {
		if x.Kind == lift.HoldSpringBrake {
			return true
		}
	}
	return false
}
