package catalog

import (
	"reflect"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Motor is a brushed permanent-magnet motor by size, at 25 °C: a start where nothing is measured yet.
type Motor struct {
	From
	Name       string
	Voltage    unit.Voltage
	NoLoad     unit.AngularSpeed // of the rotor; of the output shaft where Gear is not 1
	Gear       unit.Ratio        // built in; 1 is none
	K          unit.MachineConstant
	R          unit.Resistance
	I0         unit.Current
	J          unit.Inertia
	RthWinding unit.ThermalResistance // to the case; to the air where RthCase is 0
	RthCase    unit.ThermalResistance // to the air
	TauWinding unit.Duration
	TauCase    unit.Duration // 0: not given
	MaxCurrent unit.Current  // all day
	MaxWinding unit.Celsius
}

// Take fills the motor with the row's values. A label that was typed stays: it tells which motor it is, and the row fills
// what it leaves open. Without one the row is another motor, and the readings of the one that stood there go. K, R and the
// currents are those of the rotor; a built-in gear is a gear stage of its own.
func (m Motor) Take(into *lift.Machine) Taken {
	old := *into
	*into = lift.Machine{Name: m.Name, SheetVolts: old.SheetVolts, SheetSpeed: old.SheetSpeed, SheetStall: old.SheetStall, SheetTorque: old.SheetTorque, SheetGear: old.SheetGear}
	t := Taken{Gone: lost(old, *into)}
	copied(&t, &into.K, unit.Of(m.K), "machine.k_vs_rad")
	copied(&t, &into.R, unit.Of(m.R), "machine.r_ohm")
	copied(&t, &into.I0, unit.Of(m.I0), "machine.i0_a")
	copied(&t, &into.J, unit.Of(m.J), "machine.j_kg_m2")
	copied(&t, &into.MaxCurrent, unit.Of(m.MaxCurrent), "machine.continuous_current_a")
	copied(&t, &into.MaxWinding, unit.Of(m.MaxWinding), "machine.max_winding_c")
	copied(&t, &into.RthWinding, unit.Of(m.RthWinding), "machine.rth_winding_k_w")
	copied(&t, &into.TauWinding, unit.Of(m.TauWinding), "machine.tau_winding_s")
	if m.RthCase > 0 {
		copied(&t, &into.RthCase, unit.Of(m.RthCase), "machine.rth_case_k_w")
	}
	if m.TauCase > 0 {
		copied(&t, &into.TauCase, unit.Of(m.TauCase), "machine.tau_case_s")
	}
	return t
}

// lost are the paths of the fields of a motor that another one left empty.
func lost(old, now lift.Machine) (gone []string) {
	a, b := reflect.ValueOf(old), reflect.ValueOf(now)
	for i := range a.NumField() {
		if !a.Field(i).IsZero() && b.Field(i).IsZero() {
			gone = append(gone, "machine."+model.Key(a.Type().Field(i)))
		}
	}
	return gone
}

// takeHoist takes the motor with the gear that is built into it, as the first stage of the train. The gear of a geared
// motor of this catalog that stood there before goes with that motor.
func (m Motor) takeHoist(h *lift.Hoist) Taken {
	var gear Taken
	for _, old := range Motors() {
		if old.Name == h.Machine.Name && old.Gear > 1 && builtIn(h, old.Gear) {
			h.Train.Stages = append([]lift.Stage{}, h.Train.Stages[1:]...)
			gear.Stages--
			break
		}
	}
	if m.Gear > 1 && !builtIn(h, m.Gear) {
		worm := lift.Stage{Kind: lift.StageWorm, Ratio: unit.Of(m.Gear), Efficiency: unit.Of(wiperWorm)}
		h.Train.Stages = append([]lift.Stage{worm}, h.Train.Stages...)
		gear.Stages++
		for _, field := range []string{"kind", "ratio", "efficiency"} {
			gear.Copied = append(gear.Copied, "train.stages[0]."+field)
		}
	}
	t := m.Take(&h.Machine)
	t.add(gear)
	return t
}

// builtIn reports whether the first stage is a worm of that ratio.
func builtIn(h *lift.Hoist, ratio unit.Ratio) bool {
	return len(h.Train.Stages) > 0 && h.Train.Stages[0].Kind == lift.StageWorm && h.Train.Stages[0].Ratio == unit.Of(ratio)
}

// wiperWorm is the forward efficiency of the worm in a wiper motor, the middle of 0.40 to 0.55 (from memory).
const wiperWorm unit.Ratio = 0.47

// unmarked is the winding temperature to stop at where the class is not marked (from memory); class F is 155 °C.
const unmarked unit.Celsius = 90

// Motors returns typical motors, small first.
func Motors() []Motor {
	rpm := func(v float64) unit.AngularSpeed { return unit.AngularSpeed(v) * unit.RevPerMinute }
	size := func(note string) From { return typicalOf("a motor of this size", note) }
	sheet := func(what string) From { return From{Source: "a maker's data sheet of a " + what + " motor, read"} }
	hub := "The values are for the direct-current side of its bridge. The motor needs a low ratio, 5 to 20. Hubs differ: K from 0.6 to 1.3 V·s/rad, and the iron drags with {0.3 N·m} to {1 N·m}. The row has the middle of both. Under a light mass that drag decides: measure it."
	worm := "45 turns a minute is the speed after its worm of 60 to 1, which becomes the first gear stage. It lifts, but rarely runs back: it will seldom give anything at night."
	return []Motor{
		{size("You get back under 60 % of the energy put in."), "20 mm toy motor, 3 V", 3, rpm(12000), 1, 2.2e-3, 0.9, 0.20, 6e-8, 15, 35, 5, 200, 0.6, unmarked},
		{size(""), "24 to 28 mm motor, 6 V", 6, rpm(9500), 1, 5.8e-3, 2.0, 0.12, 3e-7, 12, 25, 8, 300, 0.5, unmarked},
		{size("The motor inside gear motors of {37 mm}; speed without load and stall current read on a data sheet."), "36 mm can, 12 V", 12, rpm(10000), 1, 11e-3, 2.2, 0.20, 1.7e-6, 8, 12, 12, 500, 1.4, unmarked},
		{size("Carbon brushes: 1.2 to 2 V are lost at them."), "42 to 45 mm can, 12 V", 12, rpm(6000), 1, 18e-3, 0.30, 1.0, 1.6e-5, 3.5, 5, 20, 700, 5, unmarked},
		{size(worm), "Car wiper motor, 12 V, with its worm", 12, rpm(45), 60, 37e-3, 0.40, 2.5, 3e-5, 2, 4, 30, 900, 6, unmarked},
		{sheet("57 mm servo-type"), "57 mm servo-type motor, 12 V", 12, rpm(3460), 1, 32.7e-3, 0.346, 0.34, 2.1e-5, 8.1, 0, 900, 0, 4.6, 155},
		{sheet("65 mm, 48 V"), "65 mm motor, 48 V", 48, rpm(3670), 1, 123e-3, 0.365, 0.29, 1.34e-4, 1.85, 1.3, 123, 1060, 6.8, 125},
		{size(""), "Scooter motor, 250 W, 24 V", 24, rpm(3300), 1, 68e-3, 0.17, 1.8, 2.5e-4, 0.6, 1.2, 60, 1500, 13, unmarked},
		{size(""), "Motor of 500 W, 48 V", 48, rpm(3000), 1, 150e-3, 0.25, 1.6, 6e-4, 0.4, 0.9, 80, 1800, 13, unmarked},
		{size("When this motor turns fast, it gives more than 60 V: a shock can kill."), "Treadmill motor, 1.5 kW, 130 V", 130, rpm(5500), 1, 220e-3, 1.1, 0.6, 1.5e-3, 0.3, 0.5, 120, 2400, 8, unmarked},
		{size(hub), "Direct-drive wheel hub, 36 V", 36, rpm(380), 1, 0.9, 0.25, 0.7, 0.045, 0.3, 0.4, 60, 1500, 10, unmarked},
	}
}
