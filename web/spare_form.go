package web

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// The inputs of single parts of a hoist: they stand on its own page and on the shelf.

// ropeForm is every input of one rope.
func ropeForm() []part[lift.Rope] {
	type o = lift.Rope
	return []part[o]{
		word("kind", "Rope", func(o *o) *string { return &o.Kind }),
		number("diameter_m", "Rope diameter", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.Diameter }),
		number("breaking_load_n", "Breaking load", unit.Loads, func(o *o) *unit.Known[unit.Force] { return &o.BreakingLoad }, hint[o]("printed on the reel; never guessed")),
		word("ending", "Ends", func(o *o) *string { return &o.Ending }),
		number("knot_factor", "Strength left at the end", unit.Percents, func(o *o) *unit.Known[unit.Ratio] { return &o.KnotFactor }, hint[o]("empty: the careful value of that ending")),
		number("age_factor", "Strength left with age", unit.Percents, func(o *o) *unit.Known[unit.Ratio] { return &o.AgeFactor }, hint[o]("empty: the careful value")),
		word("outdoors", "In sun and rain", func(o *o) *string { return &o.Outdoors }),
		number("length_m", "Rope at hand", unit.Lengths, func(o *o) *unit.Known[unit.Length] { return &o.Length }),
		number("stiffness_ea_n", "Stiffness EA", unit.Forces, func(o *o) *unit.Known[unit.Force] { return &o.Stiffness }, hint[o]("from a test, if you have one")),
	}
}

// drumForm is every input of one drum but those of its shaft.
func drumForm() []part[lift.Drum] {
	type o = lift.Drum
	return []part[o]{
		number("diameter_m", "Drum diameter", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.Diameter }),
		number("width_m", "Width between flanges", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.Width }),
		number("flange_diameter_m", "Flange diameter", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.Flange }),
		number("dead_wraps", "Turns that stay on", unit.Counts, func(o *o) *unit.Known[unit.Count] { return &o.DeadWraps }),
		word("grooved", "Grooved", func(o *o) *string { return &o.Grooved }),
		number("fleet_angle_rad", "Side angle of the rope", unit.Angles, func(o *o) *unit.Known[unit.Angle] { return &o.FleetAngle }),
		number("bearing_torque_nm", "Friction of its bearings", unit.Torques, func(o *o) *unit.Known[unit.Torque] { return &o.Friction }),
	}
}

// shaftForm is every input of a drum's shaft, hub and coupling.
func shaftForm() []part[lift.Drum] {
	type o = lift.Drum
	return []part[o]{
		number("shaft_diameter_m", "Shaft diameter", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.ShaftDiameter }, hint[o]("a threaded rod counts with its core: M8 6.5 mm, M10 8.2 mm, M12 9.9 mm (ISO 724)")),
		number("shaft_yield_pa", "Shaft: yield strength", unit.Stresses, func(o *o) *unit.Known[unit.Stress] { return &o.ShaftYield }),
		number("shaft_overhang_m", "Rope to the nearest bearing", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.ShaftSpan }),
		number("shaft_bearing_span_m", "Between two bearings", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.BearingSpan }),
		word("hub_fit", "Drum sits on the shaft by", func(o *o) *string { return &o.HubFit }),
		number("pin_diameter_m", "Cross pin diameter", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.PinDiameter }),
		number("pin_yield_pa", "Cross pin: yield strength", unit.Stresses, func(o *o) *unit.Known[unit.Stress] { return &o.PinYield }),
		number("key_width_m", "Key: width", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.KeyWidth }, hint[o]("a square key: its side")),
		number("key_length_m", "Key: length", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.KeyLength }),
		number("key_yield_pa", "Key: yield strength", unit.Stresses, func(o *o) *unit.Known[unit.Stress] { return &o.KeyYield }),
		number("set_screw_torque_nm", "Torque the set screw holds", unit.Torques, func(o *o) *unit.Known[unit.Torque] { return &o.SetScrewTorque }),
		word("hub_material", "Hub made of", func(o *o) *string { return &o.HubMaterial }),
		number("hub_outer_diameter_m", "Hub diameter", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.HubOuter }),
		number("hub_strength_pa", "Hub: strength", unit.Stresses, func(o *o) *unit.Known[unit.Stress] { return &o.HubAllow }),
		word("coupling", "Coupling between gear and drum", func(o *o) *string { return &o.NoCoupling }),
		number("coupling_torque_nm", "Rated torque of the coupling", unit.Torques, func(o *o) *unit.Known[unit.Torque] { return &o.CouplingRating }),
	}
}

// machineForm is every input of one motor but those of the bench.
func machineForm() []part[lift.Machine] {
	type o = lift.Machine
	return []part[o]{
		text("name", "Motor", func(o *o) *string { return &o.Name }),
		folded("From the label", "Voltage, speed and current of its label give the constants below. A plate that tells watts at full load is worked out on the page Know your motor.",
			number("sheet_voltage_v", "Voltage on the label", unit.Voltages, func(o *o) *unit.Known[unit.Voltage] { return &o.SheetVolts }),
			number("sheet_no_load_speed_rad_s", "Speed without load", unit.RotationSpeeds, func(o *o) *unit.Known[unit.AngularSpeed] { return &o.SheetSpeed }, hint[o]("turning freely; beside watts a label often names the slower speed under load")),
			number("sheet_stall_current_a", "Current with the shaft held", unit.Currents, func(o *o) *unit.Known[unit.Current] { return &o.SheetStall }),
			number("sheet_gear_ratio", "Gearbox before that speed", unit.GearRatios, func(o *o) *unit.Known[unit.Ratio] { return &o.SheetGear })),
		number("k_vs_rad", "Constant K", unit.MachineConstants, func(o *o) *unit.Known[unit.MachineConstant] { return &o.K }, hint[o]("or give the label's numbers above")),
		number("r_ohm", "Winding resistance", unit.Resistances, func(o *o) *unit.Known[unit.Resistance] { return &o.R }),
		number("i0_a", "Current without load", unit.Currents, func(o *o) *unit.Known[unit.Current] { return &o.I0 }),
		word("i0_measured_with_gear", "Measured with the gears on", func(o *o) *string { return &o.I0WithGear }),
		number("continuous_current_a", "Current it stands all day", unit.Currents, func(o *o) *unit.Known[unit.Current] { return &o.MaxCurrent }),
		number("max_speed_rad_s", "Highest speed", unit.RotationSpeeds, func(o *o) *unit.Known[unit.AngularSpeed] { return &o.MaxSpeed }),
		folded("Heat and inertia", "",
			number("j_kg_m2", "Inertia of the rotor", unit.Inertias, func(o *o) *unit.Known[unit.Inertia] { return &o.J }),
			number("brush_drop_v", "Drop at the brushes", unit.Voltages, func(o *o) *unit.Known[unit.Voltage] { return &o.BrushDrop }),
			number("max_winding_c", "Highest winding temperature", unit.Temperatures, func(o *o) *unit.Known[unit.Celsius] { return &o.MaxWinding }),
			number("rth_winding_k_w", "Thermal resistance, winding", unit.ThermalResistances, func(o *o) *unit.Known[unit.ThermalResistance] { return &o.RthWinding }),
			number("rth_case_k_w", "Thermal resistance, case", unit.ThermalResistances, func(o *o) *unit.Known[unit.ThermalResistance] { return &o.RthCase }),
			number("tau_winding_s", "Time constant, winding", unit.Durations, func(o *o) *unit.Known[unit.Duration] { return &o.TauWinding }),
			number("tau_case_s", "Time constant, case", unit.Durations, func(o *o) *unit.Known[unit.Duration] { return &o.TauCase })),
	}
}

// stageForm is every input of one gear stage.
func stageForm() []part[lift.Stage] {
	type s = lift.Stage
	return []part[s]{
		word("kind", "Kind", func(s *s) *string { return &s.Kind }),
		number("ratio", "Ratio to 1", unit.GearRatios, func(s *s) *unit.Known[unit.Ratio] { return &s.Ratio }, usualBy(unit.GearRatios, stageRatio)),
		number("efficiency", "Efficiency", unit.Percents, func(s *s) *unit.Known[unit.Ratio] { return &s.Efficiency }, usualBy(unit.Percents, stageEfficiency)),
		folded("More of this stage", "",
			number("idle_torque_nm", "Torque to turn it empty", unit.SmallTorques, func(s *s) *unit.Known[unit.Torque] { return &s.IdleTorque }),
			number("backward_efficiency", "Efficiency backwards", unit.Percents, func(s *s) *unit.Known[unit.Ratio] { return &s.Backward }),
			number("stages_inside", "Stages inside the box", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.InStages }),
			number("rated_torque_nm", "Rated torque at its output", unit.Torques, func(s *s) *unit.Known[unit.Torque] { return &s.Rated }, hint[s]("from the label of a bought gear; never guessed"))),
		folded("Teeth of a planetary stage", "",
			number("sun_teeth", "Sun teeth", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.SunTeeth }),
			number("planet_teeth", "Planet teeth", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.PlanetTeeth }),
			number("ring_teeth", "Ring teeth", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.RingTeeth }),
			number("planets", "Planets", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.Planets }),
			number("mesh_efficiency", "Efficiency, carrier held", unit.Percents, func(s *s) *unit.Known[unit.Ratio] { return &s.MeshEff })),
		folded("Worm", "",
			number("lead_angle_rad", "Worm: lead angle", unit.Angles, func(s *s) *unit.Known[unit.Angle] { return &s.LeadAngle }),
			number("friction", "Worm: friction", unit.Ratios, func(s *s) *unit.Known[unit.Ratio] { return &s.Friction }),
			number("pressure_angle_rad", "Worm: pressure angle", unit.Angles, func(s *s) *unit.Known[unit.Angle] { return &s.PressureAngle })),
		folded("The tooth that carries most", "",
			number("tooth.module_m", "Tooth: module", unit.SmallLengths, func(s *s) *unit.Known[unit.Length] { return &s.Tooth.Module }),
			number("tooth.teeth", "Tooth: teeth of the wheel", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.Tooth.Teeth }),
			number("tooth.face_width_m", "Tooth: face width", unit.SmallLengths, func(s *s) *unit.Known[unit.Length] { return &s.Tooth.FaceWidth }),
			number("tooth.meshes_sharing", "Tooth: meshes that share", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.Tooth.Meshes }),
			word("tooth.material", "Tooth: material", func(s *s) *string { return &s.Tooth.Material }),
			number("tooth.strength_pa", "Tooth: strength of it", unit.Stresses, func(s *s) *unit.Known[unit.Stress] { return &s.Tooth.Strength }),
			word("tooth.layers", "Tooth: print layers", func(s *s) *string { return &s.Tooth.Layers })),
	}
}
