package hoist

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/typical"
)

// HoistForm is every input of one hoist. What a first plan needs stands open; what only the careful give is folded.
func HoistForm() []form.Part[lift.Hoist] {
	type h = lift.Hoist
	return []form.Part[h]{
		form.InBrief(form.Heading("Weight and travel", "",
			form.Text("name", "Name", func(h *h) *string { return &h.Name }),
			form.Rows("mass", "Mass", "piece", 40, func(h *h) *[]lift.Piece { return &h.Mass }, lift.Piece{},
				form.Text("name", "Name", func(p *lift.Piece) *string { return &p.Name }),
				form.Number("mass_kg", "Mass", unit.Masses, func(p *lift.Piece) *unit.Known[unit.Mass] { return &p.Mass }),
				form.Word("weighed", "Way of weighing", func(p *lift.Piece) *lift.Weighing { return &p.Weighed })),
			form.Number("travel_m", "Travel", unit.Heights, func(h *h) *unit.Known[unit.Length] { return &h.Travel }, form.Hint[h]("upper stop to lower stop")),
			form.Number("units", "Hoists of this kind", unit.Counts, func(h *h) *unit.Known[unit.Count] { return &h.Units }),
		), massAndTravel),
		form.Telling(form.Folded("Rope and pulleys", "", ropeInputs()...), "rope.kind", "rope.diameter_m", "rope.breaking_load_n|breaks at %s"),
		form.Telling(form.Folded("Drum", "", drumInputs()...), "drum.diameter_m|%s across"),
		form.Telling(form.Folded("Gears", "", trainInputs()...), "train.stages"),
		form.Telling(form.Folded("Motor", "", motorInputs()...), "machine.name", "machine.sheet_voltage_v", "machine.sheet_no_load_speed_rad_s"),
		form.Folded("Power supply by day", "", raiseInputs()...),
		form.Telling(form.Folded("Lamps and loads at night", "", lowerInputs()...), "lower.loads"),
		form.Telling(form.Folded("Beam, posts and hook", "", structureInputs()...), "structure.hanger_kind", "structure.hanger_working_load_n|for %s", "structure.beam.kind|%s"),
		form.Telling(form.Folded("Weight on the base", "", baseInputs()...), "base.mass_kg", "base.where"),
		form.Telling(form.Folded("Holds and stops", "Motor, gears, joined wires and lamps hold nothing.", holdInputs()...), "holds.holds", "holds.upper_stops"),
		form.Telling(form.Folded("Drum shaft, hub and coupling", "Needed for the checks of these parts.", shaftInputs()...), "drum.shaft_diameter_m|shaft %s"),
		form.Telling(form.Folded("Container of the mass", "", containerInputs()...), "container.kind", "container.working_load_n|for %s"),
		form.Telling(form.Folded("Around the hoist", "These questions are asked once. A question without an answer counts as the worse answer.", siteInputs()...), "site.owner|structure: %s"),
		form.Telling(form.Folded("Motor: measured at the bench", "", benchInputs()...), "machine.bench_resistance", "machine.bench_no_load", "machine.bench_driven"),
	}
}

// massAndTravel tells what hangs and how far it moves.
func massAndTravel(h *lift.Hoist, sys unit.System) string {
	var all unit.Mass
	for _, p := range h.Mass {
		m, ok := p.Mass.Value()
		if !ok {
			return form.ManyOf(len(h.Mass), "piece")
		}
		all += m
	}
	if travel, ok := h.Travel.Value(); ok && len(h.Mass) > 0 {
		return unit.Masses.Format(float64(all), sys) + ", " + unit.Heights.Format(float64(travel), sys)
	}
	return ""
}

func ropeInputs() []form.Part[lift.Hoist] {
	type h = lift.Hoist
	return append(form.Within("rope", func(h *h) *lift.Rope { return &h.Rope }, page.RopeForm()...),
		form.Number("reeving.rope_parts", "Ropes that carry the mass", unit.Counts, func(h *h) *unit.Known[unit.Count] { return &h.Reeving.RopeParts }, form.Hint[h]("count them at the mass")),
		form.Number("reeving.lead_sheaves", "Pulleys between mass and drum", unit.Counts, func(h *h) *unit.Known[unit.Count] { return &h.Reeving.LeadSheaves }, form.Hint[h]("the top one too")),
		form.Number("reeving.sheave_efficiency", "Efficiency of a pulley", unit.Percents, func(h *h) *unit.Known[unit.Ratio] { return &h.Reeving.Efficiency }),
		form.Word("reeving.dead_end", "Far end of the rope", func(h *h) *lift.DeadEnd { return &h.Reeving.DeadEnd }),
		form.Rows("reeving.sheaves", "Single pulleys, from the drum", "pulley", 24, func(h *h) *[]lift.Sheave { return &h.Reeving.Sheaves }, lift.Sheave{},
			form.Text("name", "Name", func(s *lift.Sheave) *string { return &s.Name }),
			form.Number("efficiency", "Efficiency", unit.Percents, func(s *lift.Sheave) *unit.Known[unit.Ratio] { return &s.Efficiency }),
			form.Number("diameter_m", "Diameter", unit.Widths, func(s *lift.Sheave) *unit.Known[unit.Length] { return &s.Diameter }),
			form.Number("working_load_n", "Load on its label", unit.Loads, func(s *lift.Sheave) *unit.Known[unit.Force] { return &s.Rating }),
			form.Word("rating_of", "Meaning of the label", func(s *lift.Sheave) *lift.RatingOf { return &s.RatingOf }),
			form.Number("angle_rad", "Angle between its ropes", unit.Angles, func(s *lift.Sheave) *unit.Known[unit.Angle] { return &s.Angle }),
			form.Word("on_base", "Pulley is on the drive's base", func(s *lift.Sheave) *unit.Answer { return &s.OnBase }),
			form.Number("fixing_working_load_n", "Working load of its fixing", unit.Loads, func(s *lift.Sheave) *unit.Known[unit.Force] { return &s.Fixing })))
}

func drumInputs() []form.Part[lift.Hoist] {
	return form.Within("drum", func(h *lift.Hoist) *lift.Drum { return &h.Drum }, page.DrumForm()...)
}

func trainInputs() []form.Part[lift.Hoist] {
	type h = lift.Hoist
	type s = lift.Stage
	return []form.Part[h]{
		form.Rows("train.stages", "Stages, the first at the motor", "stage", 20, func(h *h) *[]s { return &h.Train.Stages }, s{}, page.StageForm()...),
		form.Number("train.breakaway", "First push", unit.Ratios, func(h *h) *unit.Known[unit.Ratio] { return &h.Train.Breakaway }),
		form.Word("train.case_screws", "All case screws in place", func(h *h) *unit.Answer { return &h.Train.CaseScrews }),
		form.Folded("Case screws", "",
			form.Number("train.case_screw_diameter_m", "Screw size", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Train.CaseScrewSize }),
			form.Number("train.case_screw_count", "Number of screws", unit.Counts, func(h *h) *unit.Known[unit.Count] { return &h.Train.CaseScrewCount }),
			form.Number("train.case_screw_circle_m", "Circle of the screws, diameter", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Train.CaseScrewCircle }),
			form.Number("train.case_screw_proof_pa", "Proof strength", unit.Stresses, func(h *h) *unit.Known[unit.Stress] { return &h.Train.CaseScrewProof })),
	}
}

func motorInputs() []form.Part[lift.Hoist] {
	return form.Within("machine", func(h *lift.Hoist) *lift.Machine { return &h.Machine }, page.MachineForm()...)
}

func benchInputs() []form.Part[lift.Hoist] {
	type h = lift.Hoist
	type b = lift.Bench
	volts := func() form.Part[b] {
		return form.Number("voltage_v", "Volts", unit.Voltages, func(b *b) *unit.Known[unit.Voltage] { return &b.Voltage })
	}
	amps := func() form.Part[b] {
		return form.Number("current_a", "Amperes", unit.Currents, func(b *b) *unit.Known[unit.Current] { return &b.Current })
	}
	return []form.Part[h]{
		form.Rows("machine.bench_resistance", "Shaft held: volts and amperes", "reading", 20, func(h *h) *[]b { return &h.Machine.BenchR }, b{}, volts(), amps()),
		form.Rows("machine.bench_no_load", "Turning freely: volts and amperes", "reading", 20, func(h *h) *[]b { return &h.Machine.BenchI0 }, b{}, volts(), amps()),
		form.Rows("machine.bench_driven", "Turned by a drill, wires open", "reading", 20, func(h *h) *[]b { return &h.Machine.BenchK }, b{}, volts(),
			form.Number("speed_rad_s", "Speed", unit.RotationSpeeds, func(b *b) *unit.Known[unit.AngularSpeed] { return &b.Speed })),
	}
}

func raiseInputs() []form.Part[lift.Hoist] {
	type h = lift.Hoist
	return []form.Part[h]{
		form.Word("raise.feed", "Kind of supply", func(h *h) *lift.Feed { return &h.Raise.Feed }),
		form.Number("raise.voltage_v", "Supply voltage", unit.Voltages, func(h *h) *unit.Known[unit.Voltage] { return &h.Raise.Voltage }),
		form.Number("raise.current_limit_a", "Most current it gives", unit.Currents, func(h *h) *unit.Known[unit.Current] { return &h.Raise.CurrentLimit }),
		form.Number("raise.wire_ohm", "Resistance of the wires", unit.Resistances, func(h *h) *unit.Known[unit.Resistance] { return &h.Raise.WireR }),
		form.Number("raise.drive_efficiency", "Efficiency of the converter", unit.Percents, func(h *h) *unit.Known[unit.Ratio] { return &h.Raise.DriveEff }),
		form.Number("raise.auxiliary_w", "Brake coil while lifting", unit.Powers, func(h *h) *unit.Known[unit.Power] { return &h.Raise.Auxiliary }),
		form.Word("raise.converter", "The converter steps the voltage", func(h *h) *lift.Conversion { return &h.Raise.Converter }),
		form.Number("raise.fuse_a", "Fuse of the motor's supply", unit.Currents, func(h *h) *unit.Known[unit.Current] { return &h.Raise.Fuse }),
		form.Number("raise.wire_area_m2", "Copper of the motor's wires", unit.WireAreas, func(h *h) *unit.Known[unit.Area] { return &h.Raise.WireArea }),
		form.Number("raise.switch_a", "Direct current its switch can break", unit.Currents, func(h *h) *unit.Known[unit.Current] { return &h.Raise.Switch }),
	}
}

func lowerInputs() []form.Part[lift.Hoist] {
	type h = lift.Hoist
	type l = lift.DCLoad
	return []form.Part[h]{
		form.Rows("lower.loads", "Loads on the motor's wires", "load", 20, func(h *h) *[]l { return &h.Lower.Loads }, l{},
			form.Word("kind", "Kind", func(l *l) *lift.LoadKind { return &l.Kind }),
			form.Text("name", "Name", func(l *l) *string { return &l.Name }),
			form.Number("threshold_v", "Voltage at which it begins", unit.Voltages, func(l *l) *unit.Known[unit.Voltage] { return &l.Threshold }, form.UsualBy(unit.Voltages, typical.LoadBegins)),
			form.Number("slope_ohm", "Slope", unit.Resistances, func(l *l) *unit.Known[unit.Resistance] { return &l.Slope }, form.UsualBy(unit.Resistances, typical.LoadSlope)),
			form.Number("resistance_ohm", "Resistance", unit.Resistances, func(l *l) *unit.Known[unit.Resistance] { return &l.Resistance }),
			form.Number("power_w", "Constant power", unit.Powers, func(l *l) *unit.Known[unit.Power] { return &l.Power }),
			form.Number("rated_current_a", "Rated current", unit.Currents, func(l *l) *unit.Known[unit.Current] { return &l.MaxCurrent }),
			form.Word("permanent", "Wired for good", func(l *l) *unit.Answer { return &l.Permanent }),
			form.Folded("More of this load", "",
				form.Number("diode_v", "Diode in front", unit.Voltages, func(l *l) *unit.Known[unit.Voltage] { return &l.Diode }),
				form.Number("set_speed_rad_s", "Speed it keeps", unit.RotationSpeeds, func(l *l) *unit.Known[unit.AngularSpeed] { return &l.Speed }),
				form.Number("efficiency", "Share that reaches the lamps", unit.Percents, func(l *l) *unit.Known[unit.Ratio] { return &l.Efficiency }),
				form.Number("min_voltage_v", "Least voltage", unit.Voltages, func(l *l) *unit.Known[unit.Voltage] { return &l.MinVoltage }),
				form.Number("max_voltage_v", "Most voltage", unit.Voltages, func(l *l) *unit.Known[unit.Voltage] { return &l.MaxVoltage }))),
		form.Number("lower.auxiliary_w", "Brake coil while lowering", unit.Powers, func(h *h) *unit.Known[unit.Power] { return &h.Lower.Auxiliary }),
		form.Number("lower.ambient_c", "Air round the motor", unit.Temperatures, func(h *h) *unit.Known[unit.Celsius] { return &h.Lower.Ambient }),
		form.Word("lower.shunt", "Resistor or clamp straight on the motor", func(h *h) *unit.Answer { return &h.Lower.Shunt }),
	}
}

func structureInputs() []form.Part[lift.Hoist] {
	type h = lift.Hoist
	type p = lift.Post
	return []form.Part[h]{
		form.Word("structure.hanger_kind", "Hook or eye of the top pulley", func(h *h) *lift.HangerKind { return &h.Structure.HangerKind }),
		form.Number("structure.hanger_working_load_n", "Hook or eye: working load", unit.Loads, func(h *h) *unit.Known[unit.Force] { return &h.Structure.HangerRating }, form.Hint[h]("printed on it; never guessed")),
		form.Word("structure.hanger_fixing", "Fastening of the hook or eye", func(h *h) *lift.HangerFixing { return &h.Structure.HangerFixing }),
		form.Number("structure.hanger_washer_m", "Washer on the wood", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Washer }),
		form.Number("structure.hanger_angle_rad", "Angle of the pull", unit.Angles, func(h *h) *unit.Known[unit.Angle] { return &h.Structure.HangerAngle }),
		form.Number("structure.lead_line_angle_rad", "Angle between the two ropes at the top", unit.Angles, func(h *h) *unit.Known[unit.Angle] { return &h.Structure.LeadAngle }),
		form.Number("structure.side_pull_n", "Side force that the frame withstands", unit.Loads, func(h *h) *unit.Known[unit.Force] { return &h.Structure.SidePull }),
		form.Number("structure.head_height_m", "Height of the top pulley", unit.Heights, func(h *h) *unit.Known[unit.Length] { return &h.Structure.HeadHeight }),
		form.Word("structure.rests_on", "Support under the beam", func(h *h) *lift.RestsOn { return &h.Structure.RestsOn }),
		form.Word("structure.rests_on_confirmed", "Confirmed by a qualified person", func(h *h) *unit.Answer { return &h.Structure.RestsOnOK }),
		form.Folded("Beam", "", beamInputs()...),
		form.Folded("Posts", "",
			form.Rows("structure.posts", "Posts", "post", 12, func(h *h) *[]p { return &h.Structure.Posts }, p{},
				form.Word("kind", "Kind", func(p *p) *lift.MemberKind { return &p.Kind }),
				form.Word("class", "Class", func(p *p) *lift.TimberClass { return &p.Class }),
				form.Number("width_m", "Smaller side", unit.Widths, func(p *p) *unit.Known[unit.Length] { return &p.Width }),
				form.Number("depth_m", "Larger side", unit.Widths, func(p *p) *unit.Known[unit.Length] { return &p.Depth }),
				form.Number("wall_m", "Wall", unit.SmallLengths, func(p *p) *unit.Known[unit.Length] { return &p.Wall }),
				form.Number("yield_pa", "Yield strength", unit.Stresses, func(p *p) *unit.Known[unit.Stress] { return &p.Yield }),
				form.Number("height_m", "Height", unit.Heights, func(p *p) *unit.Known[unit.Length] { return &p.Height }),
				form.Word("fixing", "Fastening of the ends", func(p *p) *lift.PostFixing { return &p.Fixing }),
				form.Number("lean_rad", "Lean from upright", unit.Angles, func(p *p) *unit.Known[unit.Angle] { return &p.Lean }),
				form.Word("foot_tied", "Foot is tied to the others", func(p *p) *unit.Answer { return &p.Tied }),
				form.Number("load_share", "Share of the load", unit.Percents, func(p *p) *unit.Known[unit.Ratio] { return &p.Share }),
				form.Number("foot_area_m2", "Area of its foot", unit.Areas, func(p *p) *unit.Known[unit.Area] { return &p.FootArea }),
				form.Word("soil", "Ground under its foot", func(p *p) *lift.Ground { return &p.Soil }))),
	}
}

func beamInputs() []form.Part[lift.Hoist] {
	type h = lift.Hoist
	return []form.Part[h]{
		form.Word("structure.beam.kind", "Kind", func(h *h) *lift.MemberKind { return &h.Structure.Beam.Kind }),
		form.Word("structure.beam.class", "Timber class", func(h *h) *lift.TimberClass { return &h.Structure.Beam.Class }),
		form.Number("structure.beam.width_m", "Width", unit.Widths, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Beam.Width }),
		form.Number("structure.beam.depth_m", "Height of the section", unit.Widths, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Beam.Depth }),
		form.Number("structure.beam.wall_m", "Wall", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Beam.Wall }),
		form.Number("structure.beam.yield_pa", "Yield strength", unit.Stresses, func(h *h) *unit.Known[unit.Stress] { return &h.Structure.Beam.Yield }),
		form.Number("structure.beam.span_m", "Span", unit.Heights, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Beam.Span }),
		form.Word("structure.beam.support", "Support of the ends", func(h *h) *lift.BeamSupport { return &h.Structure.Beam.Support }),
		form.Number("structure.beam.load_from_support_m", "Pulley from the nearer support", unit.Heights, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Beam.From }),
		form.Number("structure.beam.bearing_length_m", "Length it lies on", unit.Widths, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Beam.Bearing }),
		form.Number("structure.beam.hole_m", "Largest hole", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Structure.Beam.Hole }),
		form.Number("structure.beam.own_mass_kg", "Mass of the beam", unit.Masses, func(h *h) *unit.Known[unit.Mass] { return &h.Structure.Beam.OwnMass }),
	}
}

func baseInputs() []form.Part[lift.Hoist] {
	type h = lift.Hoist
	return []form.Part[h]{
		form.Word("base.where", "Place of the drive", func(h *h) *lift.BaseWhere { return &h.Base.Where }),
		form.Number("base.mass_kg", "Mass of base, drive and weights", unit.Masses, func(h *h) *unit.Known[unit.Mass] { return &h.Base.Mass }),
		form.Word("base.weights_fixed", "Weights fastened", func(h *h) *unit.Answer { return &h.Base.WeightsFixed }),
		form.Number("base.loose_mass_kg", "Part of that mass that lies loose", unit.Masses, func(h *h) *unit.Known[unit.Mass] { return &h.Base.LoosePart }),
		form.Number("base.rope_angle_rad", "Angle of the rope at the base, from straight up", unit.Angles, func(h *h) *unit.Known[unit.Angle] { return &h.Base.RopeAngle }),
		form.Folded("Sliding, tipping, board and ground", "",
			form.Number("base.width_m", "Width along the pull", unit.Heights, func(h *h) *unit.Known[unit.Length] { return &h.Base.Width }),
			form.Number("base.pull_height_m", "Height of the pull", unit.Heights, func(h *h) *unit.Known[unit.Length] { return &h.Base.PullHeight }),
			form.Number("base.pull_offset_m", "Distance of the pull from the middle", unit.Heights, func(h *h) *unit.Known[unit.Length] { return &h.Base.PullOffset }),
			form.Number("base.friction", "Friction on the ground", unit.Ratios, func(h *h) *unit.Known[unit.Ratio] { return &h.Base.Friction }),
			form.Word("base.underside", "Underside of the base", func(h *h) *lift.Underside { return &h.Base.Underside }),
			form.Word("base.ground", "Ground", func(h *h) *lift.Ground { return &h.Base.Ground }),
			form.Number("base.board.thickness_m", "Board: thickness", unit.SmallLengths, func(h *h) *unit.Known[unit.Length] { return &h.Base.Board.Thickness }),
			form.Number("base.board.width_m", "Board: width", unit.Widths, func(h *h) *unit.Known[unit.Length] { return &h.Base.Board.Width }),
			form.Number("base.board.arm_m", "Board: drum to nearest weight", unit.Widths, func(h *h) *unit.Known[unit.Length] { return &h.Base.Board.Arm }),
			form.Number("base.board.bending_strength_pa", "Board: bending strength", unit.Stresses, func(h *h) *unit.Known[unit.Stress] { return &h.Base.Board.Strength })),
	}
}

func shaftInputs() []form.Part[lift.Hoist] {
	return form.Within("drum", func(h *lift.Hoist) *lift.Drum { return &h.Drum }, page.ShaftForm()...)
}

func containerInputs() []form.Part[lift.Hoist] {
	type h = lift.Hoist
	return []form.Part[h]{
		form.Word("container.kind", "Container", func(h *h) *lift.ContainerKind { return &h.Container.Kind }),
		form.Number("container.working_load_n", "Bag or cage: working load", unit.Loads, func(h *h) *unit.Known[unit.Force] { return &h.Container.Rating }),
		form.Number("container.safety_factor", "Safety factor on its label", unit.Ratios, func(h *h) *unit.Known[unit.Ratio] { return &h.Container.Factor }),
		form.Number("container.in_use_s", "Time in use", unit.Years, func(h *h) *unit.Known[unit.Duration] { return &h.Container.Age }),
		form.Number("container.eye_working_load_n", "Eye on the mass: working load", unit.Loads, func(h *h) *unit.Known[unit.Force] { return &h.Container.EyeRating }),
	}
}

func holdInputs() []form.Part[lift.Hoist] {
	type h = lift.Hoist
	return []form.Part[h]{
		form.Rows("holds.holds", "Holds of the mass", "hold", 10, func(h *h) *[]lift.Hold { return &h.Holds.Holds }, lift.Hold{},
			form.Word("kind", "Kind", func(o *lift.Hold) *lift.HoldKind { return &o.Kind }),
			form.Word("on_drum", "Acts on the drum", func(o *lift.Hold) *unit.Answer { return &o.OnDrum }),
			form.Number("torque_nm", "Torque it holds at the drum", unit.Torques, func(o *lift.Hold) *unit.Known[unit.Torque] { return &o.Torque }),
			form.Number("force_n", "Or the load it holds", unit.Loads, func(o *lift.Hold) *unit.Known[unit.Force] { return &o.Force }),
			form.Word("sets", "Way of setting", func(o *lift.Hold) *lift.SetBy { return &o.Sets }),
			form.Word("trips", "Sets by itself at too high a speed", func(o *lift.Hold) *unit.Answer { return &o.Trips }),
			form.Number("trips_at_m_s", "Speed of the mass at which it sets", unit.Speeds, func(o *lift.Hold) *unit.Known[unit.Speed] { return &o.TripsAt }),
			form.Number("acts_in_s", "Time until it grips", unit.Durations, func(o *lift.Hold) *unit.Known[unit.Duration] { return &o.ActsIn }),
			form.Number("engages_in_m", "Catch: fall until it has locked", unit.SmallLengths, func(o *lift.Hold) *unit.Known[unit.Length] { return &o.EngagesIn }),
			form.Word("trip_how", "Catch: what throws the pawl", func(o *lift.Hold) *lift.TripHow { return &o.TripHow }),
			form.Number("stopping_torque_nm", "Brake: torque while it slows the drum", unit.Torques, func(o *lift.Hold) *unit.Known[unit.Torque] { return &o.Stopping }),
			form.Word("independent", "Shares no part with another hold", func(o *lift.Hold) *unit.Answer { return &o.Independent })),
		form.Word("holds.brake_release", "Opening of the brake", func(h *h) *lift.BrakeRelease { return &h.Holds.BrakeRelease }),
		form.Rows("holds.upper_stops", "Stops at the top", "stop", 10, func(h *h) *[]lift.Stop { return &h.Holds.UpperStops }, lift.Stop{},
			form.Word("kind", "Kind", func(o *lift.Stop) *lift.StopKind { return &o.Kind }),
			form.Word("own_path", "Cuts power by its own path", func(o *lift.Stop) *unit.Answer { return &o.Path })),
		form.Word("holds.slack_switch", "Slack-rope switch", func(h *h) *unit.Answer { return &h.Holds.SlackSwitch }),
		form.Number("holds.brake_delay_s", "Time until the brake sets", unit.Durations, func(h *h) *unit.Known[unit.Duration] { return &h.Holds.BrakeDelay }),
		form.Number("holds.room_above_m", "Room above the upper stop", unit.Widths, func(h *h) *unit.Known[unit.Length] { return &h.Holds.RoomAbove }),
		form.Folded("Factor for jerks", "",
			form.Number("holds.dynamic_factor", "Your own factor", unit.Ratios, func(h *h) *unit.Known[unit.Ratio] { return &h.Holds.Factor }),
			form.Word("holds.hoist_class", "Hoisting class", func(h *h) *lift.HoistClass { return &h.Holds.Class })),
	}
}

func siteInputs() []form.Part[lift.Hoist] {
	type h = lift.Hoist
	return []form.Part[h]{
		form.Word("site.outdoors", "Outdoors", func(h *h) *unit.Answer { return &h.Site.Outdoors }),
		form.Word("site.earthquake", "Earthquakes", func(h *h) *lift.Earthquakes { return &h.Site.Earthquake }),
		form.Word("site.children", "Children or animals near", func(h *h) *unit.Answer { return &h.Site.Children }),
		form.Word("site.owner", "Owner of the structure", func(h *h) *lift.Consent { return &h.Site.Owner }),
		form.Word("site.lives_below", "Somebody lives below or behind", func(h *h) *unit.Answer { return &h.Site.LivesBelow }),
		form.Word("site.helper", "Somebody can come to help", func(h *h) *unit.Answer { return &h.Site.Helper }),
		form.Word("site.self_start", "Hoist can start by itself", func(h *h) *unit.Answer { return &h.Site.SelfStart }),
		form.Long("site.comes_down_without_power", "How the mass comes down without power", func(h *h) *string { return &h.Site.ComesDown }),
		form.Word("site.floor_below", "What is under the floor?", func(h *h) *lift.FloorBelow { return &h.Site.FloorBelow }),
		form.Number("site.pad_depth_m", "Soft landing, depth", unit.Widths, func(h *h) *unit.Known[unit.Length] { return &h.Site.PadDepth }),
		form.Number("site.load_width_m", "Width of the mass", unit.Widths, func(h *h) *unit.Known[unit.Length] { return &h.Site.LoadWidth }),
		form.Number("site.load_height_m", "Height of the mass", unit.Widths, func(h *h) *unit.Known[unit.Length] { return &h.Site.LoadHeight }),
		form.Number("site.frame_height_m", "Height of the frame", unit.Heights, func(h *h) *unit.Known[unit.Length] { return &h.Site.FrameHeight }),
		form.Word("site.neighbours_told", "Neighbours know the hours", func(h *h) *unit.Answer { return &h.Site.Told }),
		form.Word("site.lit_at_night", "Lamp there at night", func(h *h) *unit.Answer { return &h.Site.Lit }),
		form.Word("site.noise_at_bed", "Noise at the bed is acceptable", func(h *h) *unit.Answer { return &h.Site.Noise }),
		form.Word("site.wind_plan", "Lowered in wind and frost", func(h *h) *unit.Answer { return &h.Site.WindPlan }),
		form.Word("site.insurance_and_rules", "Insurance and local rules checked", func(h *h) *unit.Answer { return &h.Site.Insurance }),
		form.Word("site.barrier", "Barrier around it", func(h *h) *lift.Barrier { return &h.Site.Barrier }),
		form.Word("site.below_secured", "Room and pipes below secured", func(h *h) *unit.Answer { return &h.Site.BelowSecured }),
		form.Word("site.self_start_guard", "Guard against starting by itself", func(h *h) *unit.Answer { return &h.Site.SelfStartGuard }),
		form.Word("site.carries_people", "Carries a person at any time", func(h *h) *unit.Answer { return &h.Site.CarriesPeople }),
		form.Word("site.way_down", "Way down without power", func(h *h) *lift.WayDown { return &h.Site.WayDown }),
		form.Word("site.may_fall", "The mass may fall: nobody can be there", func(h *h) *unit.Answer { return &h.Site.MayFall }),
		form.Number("site.fence_radius_m", "Distance to the fence", unit.Heights, func(h *h) *unit.Known[unit.Length] { return &h.Site.FenceRadius }),
		form.Word("site.controls_outside", "Controls are outside the fence", func(h *h) *unit.Answer { return &h.Site.ControlsOutside }),
		form.Number("site.rig_m", "Splice, shackle and hook: height", unit.Widths, func(h *h) *unit.Known[unit.Length] { return &h.Site.Rig }),
		form.Word("site.watched_halfway", "Watched while halfway", func(h *h) *unit.Answer { return &h.Site.Watched }),
	}
}
