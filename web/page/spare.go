package page

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/typical"
)

// The inputs of single parts: they stand on the page of the variant that they are used in and on the shelf.

// RopeForm is every input of one rope.
func RopeForm() []form.Part[lift.Rope] {
	type o = lift.Rope
	return []form.Part[o]{
		form.Word("kind", "Rope", func(o *o) *lift.RopeKind { return &o.Kind }),
		form.Number("diameter_m", "Rope diameter", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.Diameter }),
		form.Number("breaking_load_n", "Breaking load", unit.Loads, func(o *o) *unit.Known[unit.Force] { return &o.BreakingLoad }, form.Hint[o]("printed on the reel; never guessed")),
		form.Word("ending", "Fastening of its ends", func(o *o) *lift.Ending { return &o.Ending }),
		form.Number("knot_factor", "Strength left at the end", unit.Percents, func(o *o) *unit.Known[unit.Ratio] { return &o.KnotFactor }, form.Hint[o]("if empty: the careful value of that ending")),
		form.Number("age_factor", "Strength left with age", unit.Percents, func(o *o) *unit.Known[unit.Ratio] { return &o.AgeFactor }, form.Hint[o]("if empty: the careful value")),
		form.Word("outdoors", "In sun and rain", func(o *o) *unit.Answer { return &o.Outdoors }),
		form.Number("length_m", "Rope at hand", unit.Lengths, func(o *o) *unit.Known[unit.Length] { return &o.Length }),
		form.Number("stiffness_ea_n", "Stiffness EA", unit.Forces, func(o *o) *unit.Known[unit.Force] { return &o.Stiffness }, form.Hint[o]("from a test, if you have one")),
	}
}

// DrumForm is every input of one drum but those of its shaft.
func DrumForm() []form.Part[lift.Drum] {
	type o = lift.Drum
	return []form.Part[o]{
		form.Number("diameter_m", "Drum diameter", unit.Widths, func(o *o) *unit.Known[unit.Length] { return &o.Diameter }),
		form.Number("width_m", "Width between flanges", unit.Widths, func(o *o) *unit.Known[unit.Length] { return &o.Width }),
		form.Number("flange_diameter_m", "Flange diameter", unit.Widths, func(o *o) *unit.Known[unit.Length] { return &o.Flange }),
		form.Number("dead_wraps", "Turns that stay on", unit.Counts, func(o *o) *unit.Known[unit.Count] { return &o.DeadWraps }),
		form.Word("grooved", "Grooved", func(o *o) *unit.Answer { return &o.Grooved }),
		form.Number("fleet_angle_rad", "Side angle of the rope", unit.Angles, func(o *o) *unit.Known[unit.Angle] { return &o.FleetAngle }),
		form.Number("bearing_torque_nm", "Friction of its bearings", unit.Torques, func(o *o) *unit.Known[unit.Torque] { return &o.Friction }),
	}
}

// ShaftForm is every input of a drum's shaft, hub and coupling.
func ShaftForm() []form.Part[lift.Drum] {
	type o = lift.Drum
	return []form.Part[o]{
		form.Number("shaft_diameter_m", "Shaft diameter", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.ShaftDiameter }, form.Hint[o]("a threaded rod counts with its core: M8 {6.5 mm}, M10 {8.2 mm}, M12 {9.9 mm} (ISO 724)")),
		form.Number("shaft_yield_pa", "Shaft: yield strength", unit.Stresses, func(o *o) *unit.Known[unit.Stress] { return &o.ShaftYield }),
		form.Number("shaft_overhang_m", "Rope to the nearest bearing", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.ShaftSpan }),
		form.Number("shaft_bearing_span_m", "Between two bearings", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.BearingSpan }),
		form.Word("hub_fit", "Fastening of the drum to the shaft", func(o *o) *lift.HubFit { return &o.HubFit }),
		form.Number("pin_diameter_m", "Cross pin diameter", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.PinDiameter }),
		form.Number("pin_yield_pa", "Cross pin: yield strength", unit.Stresses, func(o *o) *unit.Known[unit.Stress] { return &o.PinYield }),
		form.Number("key_width_m", "Key: width", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.KeyWidth }, form.Hint[o]("a square key: its side")),
		form.Number("key_length_m", "Key: length", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.KeyLength }),
		form.Number("key_yield_pa", "Key: yield strength", unit.Stresses, func(o *o) *unit.Known[unit.Stress] { return &o.KeyYield }),
		form.Number("set_screw_torque_nm", "Torque the set screw holds", unit.Torques, func(o *o) *unit.Known[unit.Torque] { return &o.SetScrewTorque }),
		form.Word("hub_material", "Material of the hub", func(o *o) *lift.HubMaterial { return &o.HubMaterial }),
		form.Number("hub_outer_diameter_m", "Hub diameter", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.HubOuter }),
		form.Number("hub_strength_pa", "Hub: strength", unit.Stresses, func(o *o) *unit.Known[unit.Stress] { return &o.HubAllow }),
		form.Word("coupling", "Coupling, gear to drum", func(o *o) *lift.Coupling { return &o.Coupling }),
		form.Word("coupling_made_of", "Material of that coupling", func(o *o) *lift.CouplingMaterial { return &o.CouplingMade }),
		form.Word("hub_pressed", "Drum or hub pressed on", func(o *o) *unit.Answer { return &o.HubPressed }),
		form.Number("coupling_torque_nm", "Rated torque of the coupling", unit.Torques, func(o *o) *unit.Known[unit.Torque] { return &o.CouplingRating }),
	}
}

// MachineForm is every input of one motor but those of the bench.
func MachineForm() []form.Part[lift.Machine] {
	type o = lift.Machine
	return []form.Part[o]{
		form.Text("name", "Motor", func(o *o) *string { return &o.Name }),
		form.Folded("From the label", "Voltage, speed and current of its label give the constants below. A plate that tells watts at full load is worked out on the page Know your motor.",
			form.Number("sheet_voltage_v", "Voltage on the label", unit.Voltages, func(o *o) *unit.Known[unit.Voltage] { return &o.SheetVolts }),
			form.Number("sheet_no_load_speed_rad_s", "Speed without load", unit.RotationSpeeds, func(o *o) *unit.Known[unit.AngularSpeed] { return &o.SheetSpeed }, form.Hint[o]("turning freely; beside watts a label often names the slower speed under load")),
			form.Number("sheet_stall_current_a", "Current with the shaft held", unit.Currents, func(o *o) *unit.Known[unit.Current] { return &o.SheetStall }),
			form.Number("sheet_stall_torque_nm", "Torque with the shaft held", unit.Torques, func(o *o) *unit.Known[unit.Torque] { return &o.SheetTorque }, form.Hint[o]("with it the sheet tells what the brushes lose")),
			form.Number("sheet_gear_ratio", "Gearbox before that speed", unit.GearRatios, func(o *o) *unit.Known[unit.Ratio] { return &o.SheetGear })),
		form.Number("k_vs_rad", "Constant K", unit.MachineConstants, func(o *o) *unit.Known[unit.MachineConstant] { return &o.K }, form.Hint[o]("or give the label's numbers above")),
		form.Number("r_ohm", "Winding resistance", unit.Resistances, func(o *o) *unit.Known[unit.Resistance] { return &o.R }),
		form.Number("i0_a", "Current without load", unit.Currents, func(o *o) *unit.Known[unit.Current] { return &o.I0 }),
		form.Word("i0_measured_with_gear", "Measured with the gears on", func(o *o) *unit.Answer { return &o.I0WithGear }),
		form.Number("continuous_current_a", "Current it withstands all day", unit.Currents, func(o *o) *unit.Known[unit.Current] { return &o.MaxCurrent }),
		form.Number("max_speed_rad_s", "Highest speed", unit.RotationSpeeds, func(o *o) *unit.Known[unit.AngularSpeed] { return &o.MaxSpeed }),
		form.Folded("Heat and inertia", "",
			form.Number("j_kg_m2", "Inertia of the rotor", unit.Inertias, func(o *o) *unit.Known[unit.Inertia] { return &o.J }, form.Hint[o]("from its data sheet; if you do not know it, give the mass and the diameter below")),
			form.Number("mass_kg", "Mass of the motor", unit.Masses, func(o *o) *unit.Known[unit.Mass] { return &o.Mass }, form.Hint[o]("on a scale, without the gearbox")),
			form.Number("diameter_m", "Diameter of the motor", unit.SmallLengths, func(o *o) *unit.Known[unit.Length] { return &o.Diameter }),
			form.Word("shell_turns", "Outer shell turns with the shaft", func(o *o) *unit.Answer { return &o.ShellTurns }),
			form.Number("brush_drop_v", "Drop at the brushes", unit.Voltages, func(o *o) *unit.Known[unit.Voltage] { return &o.BrushDrop }),
			form.Number("brush_drop_low_v", "Or a range of it: least", unit.Voltages, func(o *o) *unit.Known[unit.Voltage] { return &o.BrushLow }),
			form.Number("brush_drop_high_v", "Or a range of it: greatest", unit.Voltages, func(o *o) *unit.Known[unit.Voltage] { return &o.BrushHigh }),
			form.Number("max_winding_c", "Highest winding temperature", unit.Temperatures, func(o *o) *unit.Known[unit.Celsius] { return &o.MaxWinding }),
			form.Number("rth_winding_k_w", "Thermal resistance, winding", unit.ThermalResistances, func(o *o) *unit.Known[unit.ThermalResistance] { return &o.RthWinding }),
			form.Number("rth_case_k_w", "Thermal resistance, case", unit.ThermalResistances, func(o *o) *unit.Known[unit.ThermalResistance] { return &o.RthCase }),
			form.Number("tau_winding_s", "Time constant, winding", unit.Durations, func(o *o) *unit.Known[unit.Duration] { return &o.TauWinding }),
			form.Number("tau_case_s", "Time constant, case", unit.Durations, func(o *o) *unit.Known[unit.Duration] { return &o.TauCase })),
	}
}

// StageForm is every input of one gear stage.
func StageForm() []form.Part[lift.Stage] {
	type s = lift.Stage
	return []form.Part[s]{
		form.Word("kind", "Kind", func(s *s) *lift.StageKind { return &s.Kind }),
		form.Number("ratio", "Ratio to 1", unit.GearRatios, func(s *s) *unit.Known[unit.Ratio] { return &s.Ratio }, form.UsualBy(unit.GearRatios, typical.StageRatio)),
		form.Number("efficiency", "Efficiency", unit.Percents, func(s *s) *unit.Known[unit.Ratio] { return &s.Efficiency }, form.UsualBy(unit.Percents, typical.StageEfficiency)),
		form.Folded("More of this stage", "",
			form.Number("idle_torque_nm", "Torque to turn it empty", unit.SmallTorques, func(s *s) *unit.Known[unit.Torque] { return &s.IdleTorque }),
			form.Number("backward_efficiency", "Efficiency backwards", unit.Percents, func(s *s) *unit.Known[unit.Ratio] { return &s.Backward }),
			form.Number("stages_inside", "Stages inside the box", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.InStages }),
			form.Number("rated_torque_nm", "Rated torque at its output", unit.Torques, func(s *s) *unit.Known[unit.Torque] { return &s.Rated }, form.Hint[s]("from the label of a bought gear; never guessed"))),
		form.Folded("Teeth of a planetary stage", "",
			form.Number("sun_teeth", "Sun teeth", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.SunTeeth }),
			form.Number("planet_teeth", "Planet teeth", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.PlanetTeeth }),
			form.Number("ring_teeth", "Ring teeth", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.RingTeeth }),
			form.Number("planets", "Planets", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.Planets }),
			form.Number("mesh_efficiency", "Efficiency, carrier held", unit.Percents, func(s *s) *unit.Known[unit.Ratio] { return &s.MeshEff })),
		form.Folded("Worm", "",
			form.Number("lead_angle_rad", "Worm: lead angle", unit.Angles, func(s *s) *unit.Known[unit.Angle] { return &s.LeadAngle }),
			form.Number("friction", "Worm: friction", unit.Ratios, func(s *s) *unit.Known[unit.Ratio] { return &s.Friction }),
			form.Number("pressure_angle_rad", "Worm: pressure angle", unit.Angles, func(s *s) *unit.Known[unit.Angle] { return &s.PressureAngle })),
		form.Folded("The tooth that carries most", "",
			form.Number("tooth.module_m", "Tooth: module", unit.SmallLengths, func(s *s) *unit.Known[unit.Length] { return &s.Tooth.Module }),
			form.Number("tooth.teeth", "Tooth: teeth of the wheel", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.Tooth.Teeth }),
			form.Number("tooth.face_width_m", "Tooth: face width", unit.SmallLengths, func(s *s) *unit.Known[unit.Length] { return &s.Tooth.FaceWidth }),
			form.Number("tooth.meshes_sharing", "Tooth: meshes that share", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.Tooth.Meshes }),
			form.Word("tooth.material", "Tooth: material", func(s *s) *lift.ToothMaterial { return &s.Tooth.Material }),
			form.Number("tooth.strength_pa", "Tooth: strength of it", unit.Stresses, func(s *s) *unit.Known[unit.Stress] { return &s.Tooth.Strength }),
			form.Word("tooth.layers", "Tooth: print layers", func(s *s) *lift.PrintLayers { return &s.Tooth.Layers })),
	}
}

// PanelSheetForm is what a panel's data sheet says.
func PanelSheetForm() []form.Part[panel.Sheet] {
	type s = panel.Sheet
	return []form.Part[s]{
		form.Number("voc_v", "Voltage, open", unit.Voltages, func(s *s) *unit.Known[unit.Voltage] { return &s.Voc }, form.Hint[s]("Voc")),
		form.Number("isc_a", "Current, wires joined", unit.Currents, func(s *s) *unit.Known[unit.Current] { return &s.Isc }, form.Hint[s]("Isc")),
		form.Number("vmp_v", "Voltage, best point", unit.Voltages, func(s *s) *unit.Known[unit.Voltage] { return &s.Vmp }, form.Hint[s]("Vmp")),
		form.Number("imp_a", "Current, best point", unit.Currents, func(s *s) *unit.Known[unit.Current] { return &s.Imp }, form.Hint[s]("Imp")),
		form.Number("alpha_isc_per_k", "Current with temperature", unit.PerKelvins, func(s *s) *unit.Known[unit.PerKelvin] { return &s.Alpha }, form.Hint[s]("above zero")),
		form.Number("beta_voc_per_k", "Voltage with temperature", unit.PerKelvins, func(s *s) *unit.Known[unit.PerKelvin] { return &s.Beta }, form.Hint[s]("below zero")),
		form.Number("cells_in_series", "Cells in a row", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.Cells }),
		form.Number("panels_in_series", "Panels in a row", unit.Counts, func(s *s) *unit.Known[unit.Count] { return &s.Series }),
		form.Number("max_fuse_a", "Largest series fuse", unit.Currents, func(s *s) *unit.Known[unit.Current] { return &s.Fuse }),
	}
}
