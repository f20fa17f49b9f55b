package web

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// hoistForm is every input of one hoist. What a first plan needs stands open; what only the careful give is folded.
func hoistForm() []part[lift.Hoist] {
	type h = lift.Hoist
	return []part[h]{
		inBrief(heading("Weight and travel", "",
			text("name", "Name", func(h *h) *string { return &h.Name }),
			rows("mass", "What hangs", "piece", 40, func(h *h) *[]lift.Piece { return &h.Mass }, lift.Piece{},
				text("name", "What", func(p *lift.Piece) *string { return &p.Name }),
				number("mass_kg", "Mass", unit.Masses, func(p *lift.Piece) *unit.Known[unit.Mass] { return &p.Mass }),
				word("weighed", "Weighed by", func(p *lift.Piece) *string { return &p.Weighed })),
			number("travel_m", "Travel", unit.Lengths, func(h *h) *unit.Known[unit.Length] { return &h.Travel }, hint[h]("upper stop to lower stop")),
			number("units", "Hoists of this kind", unit.Counts, func(h *h) *unit.Known[unit.Count] { return &h.Units }),
		), massAndTravel),
		telling(folded("Rope and pulleys", "", ropeInputs()...), "rope.kind", "rope.diameter_m", "rope.breaking_load_n|breaks at %s"),
		telling(folded("Drum", "", drumInputs()...), "drum.diameter_m|%s across"),
		telling(folded("Gears", "", trainInputs()...), "train.stages"),
		telling(folded("Motor", "", motorInputs()...), "machine.name", "machine.sheet_voltage_v", "machine.sheet_no_load_speed_rad_s"),
		folded("What feeds it by day", "", raiseInputs()...),
		telling(folded("What it drives at night", "", lowerInputs()...), "lower.loads"),
		telling(folded("What carries it", "", structureInputs()...), "structure.hanger_kind", "structure.hanger_working_load_n|for %s", "structure.beam.kind|%s"),
		telling(folded("Weight that keeps the drive down", "", baseInputs()...), "base.mass_kg", "base.where"),
		telling(folded("Holds and stops", "Motor, gears, joined wires and lamps hold nothing.", holdInputs()...), "holds.holds", "holds.upper_stops"),
		telling(folded("Drum shaft, hub and coupling", "Needed for the checks of these parts.", shaftInputs()...), "drum.shaft_diameter_m|shaft %s"),
		telling(folded("What holds the mass together", "", containerInputs()...), "container.kind", "container.working_load_n|for %s"),
		telling(folded("Round the hoist", "Asked once. What you do not answer counts as the worse answer.", siteInputs()...), "site.owner|structure: %s"),
		telling(folded("Motor: measured at the bench", "", benchInputs()...), "machine.bench_resistance", "machine.bench_no_load", "machine.bench_driven"),
	}
}

// massAndTravel tells what hangs and how far it moves.
func massAndTravel(h *lift.Hoist, sys unit.System) string {
	var all unit.Mass
	for _, p := range h.Mass {
		m, ok := p.Mass.Value()
		if !ok {
			return manyOf(len(h.Mass), "piece")
		}
		all += m
	}
	if travel, ok := h.Travel.Value(); ok && len(h.Mass) > 0 {
		return unit.Masses.Format(float64(all), sys) + ", " + unit.Lengths.Format(float64(travel), sys)
	}
	return ""
}

func ropeInputs() []part[lift.Hoist] {
	type h = lift.Hoist
	return append(within("rope", func(h *h) *lift.Rope { return &h.Rope }, ropeForm()...),
		number("reeving.rope_parts", "Ropes that carry the mass", unit.Counts, func(h *h) *unit.Known[unit.Count] { return &h.Reeving.RopeParts }, hint[h]("count them at the mass")),
		number("reeving.lead_sheaves", "Pulleys between mass and drum", unit.Counts, func(h *h) *unit.Known[unit.Count] { return &h.Reeving.LeadSheaves }, hint[h]("the top one too")),
		number("reeving.sheave_efficiency", "Efficiency of a pulley", unit.Percents, func(h *h) *unit.Known[unit.Ratio] { return &h.Reeving.Efficiency }),
		word("reeving.dead_end", "Far end of the rope", func(h *h) *string { return &h.Reeving.DeadEnd }),
		rows("reeving.sheaves", "Single pulleys, from the drum", "pulley", 24, func(h *h) *[]lift.Sheave { return &h.Reeving.Sheaves }, lift.Sheave{},
			text("name", "Where", func(s *lift.Sheave) *string { return &s.Name }),
			number("efficiency", "Efficiency", unit.Percents, func(s *lift.Sheave) *unit.Known[unit.Ratio] { return &s.Efficiency }),
			number("diameter_m", "Diameter", unit.SmallLengths, func(s *lift.Sheave) *unit.Known[unit.Length] { return &s.Diameter }),
			number("working_load_n", "Load on its label", unit.Loads, func(s *lift.Sheave) *unit.Known[unit.Force] { return &s.Rating }),
			word("rating_of", "The label means", func(s *lift.Sheave) *string { return &s.RatingOf }),
			number("angle_rad", "Angle between its ropes", unit.Angles, func(s *lift.Sheave) *unit.Known[unit.Angle] { return &s.Angle }),
			word("on_base", "On the drive's base", func(s *lift.Sheave) *string { return &s.OnBase }),
			number("fixing_working_load_n", "What holds it bears", unit.Loads, func(s *lift.Sheave) *unit.Known[unit.Force] { return &s.Fixing })))
}

func drumInputs() []part[lift.Hoist] {
	return within("drum", func(h *lift.Hoist) *lift.Drum { return &h.Drum }, drumForm()...)
}

func trainInputs() []part[lift.Hoist] {
	type h = lift.Hoist
	type s = lift.Stage
	return []part[h]{
		rows("train.stages", "Stages, the first at the motor", "stage", 20, func(h *h) *[]s { return &h.Train.Stages }, s{}, stageForm()...),
		number("train.breakaway", "First push", unit.Ratios, func(h *h) *unit.Known[unit.Ratio] { return &h.Train.Breakaway }),
		word("train.case_screws", "All case screws in place", func(h *h) *string { return &h.Train.CaseScrews }),
		folded("Case screws", "",
			number("train.case_screw_diameter_m", "Screw size", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Train.CaseScrewSize }),
			number("train.case_screw_count", "How many", unit.Counts, func(h *h) *unit.Known[unit.Count] { return &h.Train.CaseScrewCount }),
			number("train.case_screw_circle_m", "Circle they stand on", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Train.CaseScrewCircle }),
			number("train.case_screw_proof_pa", "Proof strength", unit.Stresses, func(h *h) *unit.Known[unit.Stress] { return &h.Train.CaseScrewProof })),
	}
}

func motorInputs() []part[lift.Hoist] {
	return within("machine", func(h *lift.Hoist) *lift.Machine { return &h.Machine }, machineForm()...)
}

func benchInputs() []part[lift.Hoist] {
	type h = lift.Hoist
	type b = lift.Bench
	volts := func() part[b] {
		return number("voltage_v", "Volts", unit.Voltages, func(b *b) *unit.Known[unit.Voltage] { return &b.Voltage })
	}
	amps := func() part[b] {
		return number("current_a", "Amperes", unit.Currents, func(b *b) *unit.Known[unit.Current] { return &b.Current })
	}
	return []part[h]{
		rows("machine.bench_resistance", "Shaft held: volts and amperes", "reading", 20, func(h *h) *[]b { return &h.Machine.BenchR }, b{}, volts(), amps()),
		rows("machine.bench_no_load", "Turning freely", "reading", 20, func(h *h) *[]b { return &h.Machine.BenchI0 }, b{}, volts(), amps()),
		rows("machine.bench_driven", "Turned by a drill, wires open", "reading", 20, func(h *h) *[]b { return &h.Machine.BenchK }, b{}, volts(),
			number("speed_rad_s", "Speed", unit.RotationSpeeds, func(b *b) *unit.Known[unit.AngularSpeed] { return &b.Speed })),
	}
}

func raiseInputs() []part[lift.Hoist] {
	type h = lift.Hoist
	return []part[h]{
		word("raise.feed", "Fed by", func(h *h) *string { return &h.Raise.Feed }),
		number("raise.voltage_v", "Supply voltage", unit.Voltages, func(h *h) *unit.Known[unit.Voltage] { return &h.Raise.Voltage }),
		number("raise.current_limit_a", "Most current it gives", unit.Currents, func(h *h) *unit.Known[unit.Current] { return &h.Raise.CurrentLimit }),
		number("raise.wire_ohm", "Resistance of the wires", unit.Resistances, func(h *h) *unit.Known[unit.Resistance] { return &h.Raise.WireR }),
		number("raise.drive_efficiency", "Efficiency of the drive", unit.Percents, func(h *h) *unit.Known[unit.Ratio] { return &h.Raise.DriveEff }),
		number("raise.auxiliary_w", "Brake coil while lifting", unit.Powers, func(h *h) *unit.Known[unit.Power] { return &h.Raise.Auxiliary }),
	}
}

func lowerInputs() []part[lift.Hoist] {
	type h = lift.Hoist
	type l = lift.DCLoad
	return []part[h]{
		rows("lower.loads", "On the motor's wires", "load", 20, func(h *h) *[]l { return &h.Lower.Loads }, l{},
			word("kind", "Kind", func(l *l) *string { return &l.Kind }),
			text("name", "Name", func(l *l) *string { return &l.Name }),
			number("threshold_v", "Begins at", unit.Voltages, func(l *l) *unit.Known[unit.Voltage] { return &l.Threshold }, usualBy(unit.Voltages, loadBegins)),
			number("slope_ohm", "Slope", unit.Resistances, func(l *l) *unit.Known[unit.Resistance] { return &l.Slope }, usualBy(unit.Resistances, loadSlope)),
			number("resistance_ohm", "Resistance", unit.Resistances, func(l *l) *unit.Known[unit.Resistance] { return &l.Resistance }),
			number("power_w", "Constant power", unit.Powers, func(l *l) *unit.Known[unit.Power] { return &l.Power }),
			number("rated_current_a", "Rated current", unit.Currents, func(l *l) *unit.Known[unit.Current] { return &l.MaxCurrent }),
			word("permanent", "Wired for good", func(l *l) *string { return &l.Permanent }),
			folded("More of this load", "",
				number("diode_v", "Diode in front", unit.Voltages, func(l *l) *unit.Known[unit.Voltage] { return &l.Diode }),
				number("set_speed_rad_s", "Speed it keeps", unit.RotationSpeeds, func(l *l) *unit.Known[unit.AngularSpeed] { return &l.Speed }),
				number("efficiency", "Share that reaches the lamps", unit.Percents, func(l *l) *unit.Known[unit.Ratio] { return &l.Efficiency }),
				number("min_voltage_v", "Least voltage", unit.Voltages, func(l *l) *unit.Known[unit.Voltage] { return &l.MinVoltage }),
				number("max_voltage_v", "Most voltage", unit.Voltages, func(l *l) *unit.Known[unit.Voltage] { return &l.MaxVoltage }))),
		number("lower.auxiliary_w", "Brake coil while lowering", unit.Powers, func(h *h) *unit.Known[unit.Power] { return &h.Lower.Auxiliary }),
		number("lower.ambient_c", "Air round the motor", unit.Temperatures, func(h *h) *unit.Known[unit.Celsius] { return &h.Lower.Ambient }),
		word("lower.shunt", "Resistor or clamp straight on the motor", func(h *h) *string { return &h.Lower.Shunt }),
	}
}

func structureInputs() []part[lift.Hoist] {
	type h = lift.Hoist
	type p = lift.Post
	return []part[h]{
		word("structure.hanger_kind", "Holds the top pulley", func(h *h) *string { return &h.Structure.HangerKind }),
		number("structure.hanger_working_load_n", "Hook or eye: working load", unit.Loads, func(h *h) *unit.Known[unit.Force] { return &h.Structure.HangerRating }, hint[h]("printed on it; never guessed")),
		word("structure.hanger_fixing", "How it is fastened", func(h *h) *string { return &h.Structure.HangerFixing }),
		number("structure.hanger_washer_m", "Washer on the wood", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Washer }),
		number("structure.hanger_angle_rad", "Angle of the pull", unit.Angles, func(h *h) *unit.Known[unit.Angle] { return &h.Structure.HangerAngle }),
		number("structure.lead_line_angle_rad", "Angle between the two ropes at the top", unit.Angles, func(h *h) *unit.Known[unit.Angle] { return &h.Structure.LeadAngle }),
		number("structure.side_pull_n", "Frame braced sideways for", unit.Loads, func(h *h) *unit.Known[unit.Force] { return &h.Structure.SidePull }),
		number("structure.head_height_m", "Height of the top pulley", unit.Lengths, func(h *h) *unit.Known[unit.Length] { return &h.Structure.HeadHeight }),
		word("structure.rests_on", "Beam rests on", func(h *h) *string { return &h.Structure.RestsOn }),
		word("structure.rests_on_confirmed", "Confirmed by a qualified person", func(h *h) *string { return &h.Structure.RestsOnOK }),
		folded("Beam", "", beamInputs()...),
		folded("Posts", "",
			rows("structure.posts", "Posts", "post", 12, func(h *h) *[]p { return &h.Structure.Posts }, p{},
				word("kind", "Kind", func(p *p) *string { return &p.Kind }),
				word("class", "Class", func(p *p) *string { return &p.Class }),
				number("width_m", "Smaller side", unit.SmallLengths, func(p *p) *unit.Known[unit.Length] { return &p.Width }),
				number("depth_m", "Larger side", unit.SmallLengths, func(p *p) *unit.Known[unit.Length] { return &p.Depth }),
				number("wall_m", "Wall", unit.SmallLengths, func(p *p) *unit.Known[unit.Length] { return &p.Wall }),
				number("yield_pa", "Yield strength", unit.Stresses, func(p *p) *unit.Known[unit.Stress] { return &p.Yield }),
				number("height_m", "Height", unit.Lengths, func(p *p) *unit.Known[unit.Length] { return &p.Height }),
				word("fixing", "Ends", func(p *p) *string { return &p.Fixing }),
				number("lean_rad", "Leans from upright", unit.Angles, func(p *p) *unit.Known[unit.Angle] { return &p.Lean }),
				word("foot_tied", "Foot tied to the others", func(p *p) *string { return &p.Tied }),
				number("load_share", "Share of the load", unit.Percents, func(p *p) *unit.Known[unit.Ratio] { return &p.Share }),
				number("foot_area_m2", "Area of its foot", unit.Areas, func(p *p) *unit.Known[unit.Area] { return &p.FootArea }),
				word("soil", "Stands on", func(p *p) *string { return &p.Soil }))),
	}
}

func beamInputs() []part[lift.Hoist] {
	type h = lift.Hoist
	return []part[h]{
		word("structure.beam.kind", "Kind", func(h *h) *string { return &h.Structure.Beam.Kind }),
		word("structure.beam.class", "Timber class", func(h *h) *string { return &h.Structure.Beam.Class }),
		number("structure.beam.width_m", "Width", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Beam.Width }),
		number("structure.beam.depth_m", "Depth, standing", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Beam.Depth }),
		number("structure.beam.wall_m", "Wall", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Beam.Wall }),
		number("structure.beam.yield_pa", "Yield strength", unit.Stresses, func(h *h) *unit.Known[unit.Stress] { return &h.Structure.Beam.Yield }),
		number("structure.beam.span_m", "Span", unit.Lengths, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Beam.Span }),
		word("structure.beam.support", "Held", func(h *h) *string { return &h.Structure.Beam.Support }),
		number("structure.beam.load_from_support_m", "Pulley from the nearer support", unit.Lengths, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Beam.From }),
		number("structure.beam.bearing_length_m", "Length it lies on", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Beam.Bearing }),
		number("structure.beam.hole_m", "Largest hole", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Beam.Hole }),
		number("structure.beam.own_mass_kg", "Its own mass", unit.Masses, func(h *h) *unit.Known[unit.Mass] { return &h.Structure.Beam.OwnMass }),
	}
}

func baseInputs() []part[lift.Hoist] {
	type h = lift.Hoist
	return []part[h]{
		word("base.where", "Drive stands", func(h *h) *string { return &h.Base.Where }),
		number("base.mass_kg", "Mass of base, drive and weights", unit.Masses, func(h *h) *unit.Known[unit.Mass] { return &h.Base.Mass }),
		word("base.weights_fixed", "Weights fastened", func(h *h) *string { return &h.Base.ChildProof }),
		number("base.loose_mass_kg", "Of it loose", unit.Masses, func(h *h) *unit.Known[unit.Mass] { return &h.Base.LoosePart }),
		number("base.rope_angle_rad", "Rope leaves it, from straight up", unit.Angles, func(h *h) *unit.Known[unit.Angle] { return &h.Base.RopeAngle }),
		folded("Sliding, tipping, board and ground", "",
			number("base.width_m", "Width along the pull", unit.Lengths, func(h *h) *unit.Known[unit.Length] { return &h.Base.Width }),
			number("base.pull_height_m", "Height of the pull", unit.Lengths, func(h *h) *unit.Known[unit.Length] { return &h.Base.PullHeight }),
			number("base.pull_offset_m", "Pull from the middle", unit.Lengths, func(h *h) *unit.Known[unit.Length] { return &h.Base.PullOffset }),
			number("base.friction", "Friction on the ground", unit.Ratios, func(h *h) *unit.Known[unit.Ratio] { return &h.Base.Friction }),
			word("base.ground", "Ground", func(h *h) *string { return &h.Base.Ground }),
			number("base.board.thickness_m", "Board: thickness", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Base.Board.Thickness }),
			number("base.board.width_m", "Board: width", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Base.Board.Width }),
			number("base.board.arm_m", "Board: drum to nearest weight", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Base.Board.Arm }),
			number("base.board.bending_strength_pa", "Board: bending strength", unit.Stresses, func(h *h) *unit.Known[unit.Stress] { return &h.Base.Board.Strength })),
	}
}

func shaftInputs() []part[lift.Hoist] {
	return within("drum", func(h *lift.Hoist) *lift.Drum { return &h.Drum }, shaftForm()...)
}

func containerInputs() []part[lift.Hoist] {
	type h = lift.Hoist
	return []part[h]{
		word("container.kind", "Held by", func(h *h) *string { return &h.Container.Kind }),
		number("container.working_load_n", "Bag or cage: working load", unit.Loads, func(h *h) *unit.Known[unit.Force] { return &h.Container.Rating }),
		number("container.safety_factor", "Safety factor on its label", unit.Ratios, func(h *h) *unit.Known[unit.Ratio] { return &h.Container.Factor }),
		number("container.in_use_s", "In use for", unit.Years, func(h *h) *unit.Known[unit.Duration] { return &h.Container.Age }),
		number("container.eye_working_load_n", "Eye on the mass: working load", unit.Loads, func(h *h) *unit.Known[unit.Force] { return &h.Container.EyeRating }),
	}
}

func holdInputs() []part[lift.Hoist] {
	type h = lift.Hoist
	return []part[h]{
		rows("holds.holds", "What holds the mass", "hold", 10, func(h *h) *[]lift.Hold { return &h.Holds.Holds }, lift.Hold{},
			word("kind", "Kind", func(o *lift.Hold) *string { return &o.Kind }),
			word("on_drum", "Acts on the drum", func(o *lift.Hold) *string { return &o.OnDrum }),
			number("torque_nm", "Holds at the drum a torque of", unit.Torques, func(o *lift.Hold) *unit.Known[unit.Torque] { return &o.Torque }),
			number("force_n", "Or a load of", unit.Loads, func(o *lift.Hold) *unit.Known[unit.Force] { return &o.Force })),
		rows("holds.upper_stops", "What stops it at the top", "stop", 10, func(h *h) *[]lift.Stop { return &h.Holds.UpperStops }, lift.Stop{},
			word("kind", "Kind", func(o *lift.Stop) *string { return &o.Kind }),
			word("own_path", "Cuts power by its own path", func(o *lift.Stop) *string { return &o.Path })),
		word("holds.slack_switch", "Slack-rope switch", func(h *h) *string { return &h.Holds.SlackSwitch }),
		number("holds.brake_delay_s", "Time until the brake sets", unit.Durations, func(h *h) *unit.Known[unit.Duration] { return &h.Holds.BrakeDelay }),
		number("holds.room_above_m", "Room above the upper stop", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Holds.RoomAbove }),
		folded("Factor for jerks", "",
			number("holds.dynamic_factor", "Your own factor", unit.Ratios, func(h *h) *unit.Known[unit.Ratio] { return &h.Holds.Factor }),
			word("holds.hoist_class", "Hoisting class", func(h *h) *string { return &h.Holds.Class })),
	}
}

func siteInputs() []part[lift.Hoist] {
	type h = lift.Hoist
	return []part[h]{
		word("site.outdoors", "Outdoors", func(h *h) *string { return &h.Site.Outdoors }),
		word("site.earthquake", "Earthquakes", func(h *h) *string { return &h.Site.Earthquake }),
		word("site.children", "Children or animals near", func(h *h) *string { return &h.Site.Children }),
		word("site.owner", "Whose structure", func(h *h) *string { return &h.Site.Carries }),
		word("site.lives_below", "Someone lives below or behind", func(h *h) *string { return &h.Site.Below }),
		word("site.helper", "Someone can come to help", func(h *h) *string { return &h.Site.Helper }),
		word("site.self_start", "Can start by itself", func(h *h) *string { return &h.Site.SelfStart }),
		long("site.comes_down_without_power", "How it comes down without power", func(h *h) *string { return &h.Site.ComesDown }),
		word("site.floor_below", "Under the floor", func(h *h) *string { return &h.Site.FloorBelow }),
		number("site.pad_depth_m", "Soft landing, depth", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Site.PadDepth }),
		number("site.load_width_m", "Width of the mass", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Site.LoadWidth }),
		number("site.load_height_m", "Height of the mass", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Site.LoadHeight }),
		number("site.frame_height_m", "Height of the frame", unit.Lengths, func(h *h) *unit.Known[unit.Length] { return &h.Site.FrameHeight }),
		word("site.neighbours_told", "Neighbours told", func(h *h) *string { return &h.Site.Told }),
		word("site.lit_at_night", "Light there at night", func(h *h) *string { return &h.Site.Lit }),
		word("site.noise_at_bed", "Noise at the bed is fine", func(h *h) *string { return &h.Site.Noise }),
		word("site.wind_plan", "Lowered in wind and frost", func(h *h) *string { return &h.Site.WindPlan }),
		word("site.insurance_and_rules", "Insurance and rules asked", func(h *h) *string { return &h.Site.Insurance }),
		word("site.watched_halfway", "Watched while halfway", func(h *h) *string { return &h.Site.Watched }),
	}
}
