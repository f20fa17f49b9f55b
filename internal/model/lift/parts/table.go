package parts

import (
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// single is a part that is no row of a list.
func single(id, name, ask string, place Place, owns, first []string) Part {
	return Part{id, name, ask, place, owns, first, -1}
}

func massPart() Part {
	return single("mass", "The mass", "How heavy is the mass, and how far does it travel?", Side,
		[]string{"mass", "travel_m", "name", "units", "site.load_width_m", "site.load_height_m", "site.rig_m"},
		[]string{"mass[].mass_kg", "mass[].name", "mass[].weighed", "travel_m"})
}

func containerPart(h lift.Hoist) Part {
	first := under("container", "kind", "working_load_n", "eye_working_load_n")
	if h.Container.Kind == lift.ContainerBag {
		first = append(first, under("container", "safety_factor", "in_use_s")...)
	}
	return single("cage", "Cage and its eye", "What is on its label?", Side, []string{"container"}, first)
}

func ropePart() Part {
	return single("rope", "Rope", "What does the reel say?", Side, []string{"rope", "reeving.dead_end"},
		under("rope", "kind", "diameter_m", "breaking_load_n", "length_m"))
}

func endsPart() Part {
	return single("ends", "Rope ends", "Spliced or tied?", Side, []string{"rope.ending", "rope.knot_factor"}, []string{"rope.ending"})
}

// pulleys are the top pulley and every further one that the rope runs over, each by where it hangs.
func pulleys(h lift.Hoist) []Part {
	lead := int(h.Reeving.LeadSheaves.Or(1))
	head := lead - 1 // of the rows; −1 where the drum stands above the mass
	top := single("pulley", "Top pulley", "How does the rope run?", Side,
		[]string{"reeving"}, under("reeving", "rope_parts", "lead_sheaves"))
	if head >= 0 {
		at := row("reeving.sheaves", head)
		top.Owns = append(top.Owns, at)
		top.First = append(top.First, under(at, "diameter_m", "working_load_n", "rating_of")...)
	}
	out := []Part{top}
	for i := range max(lead+int(h.Reeving.RopeParts.Or(1))-1, len(h.Reeving.Sheaves)) {
		if i != head {
			out = append(out, furtherPulley(i, head))
		}
	}
	return out
}

// furtherPulley is row i of the pulleys. Before the top pulley it is held by something of its own; after it the pulleys
// hang in turn on the mass and on the beam.
func furtherPulley(i, head int) Part {
	at := row("reeving.sheaves", i)
	name, first := fmt.Sprintf("Pulley %d, on the beam", i+1), under(at, "diameter_m", "working_load_n", "rating_of")
	switch {
	case i < head:
		name, first = fmt.Sprintf("Pulley %d, on the way up", i+1), append(first, under(at, "on_base", "fixing_working_load_n")...)
	case (i-head)%2 == 1:
		name = fmt.Sprintf("Pulley %d, on the mass", i+1)
	}
	return Part{fmt.Sprintf("pulley-%d", i+1), name, "What is on its label?", Side, []string{at}, first, i}
}

func hangerPart(h lift.Hoist) Part {
	first := under("structure", "hanger_kind", "hanger_working_load_n", "hanger_fixing")
	if h.Structure.HangerFixing == lift.FixingBoltedThroughWood || h.Structure.Washer.Is {
		first = append(first, "structure.hanger_washer_m")
	}
	return single("eye", "Hook or eye", "What is stamped on it?", Side,
		under("structure", "hanger_kind", "hanger_working_load_n", "hanger_fixing", "hanger_washer_m", "hanger_angle_rad", "lead_line_angle_rad"), first)
}

func beamPart(h lift.Hoist) Part {
	first := under("structure.beam", "kind", "width_m", "depth_m", "span_m", "support")
	switch k := h.Structure.Beam.Kind; {
	case k == lift.MemberTimber || k == lift.MemberRoundPole:
		first = append(first, "structure.beam.class")
	case k == lift.MemberSteelTube || k == lift.MemberSteelRoundTube:
		first = append(first, "structure.beam.yield_pa")
	}
	return single("beam", "Beam", "What is it, and how long?", Side, []string{"structure.beam"}, first)
}

func postsPart(h lift.Hoist) Part {
	first := under("structure", "rests_on", "rests_on_confirmed", "head_height_m")
	if h.Structure.RestsOn == lift.RestsOnOwnPostsOnGround {
		first = append(first, under("structure.posts[]", "kind", "class", "width_m", "height_m", "foot_area_m2", "soil")...)
	}
	return single("posts", "Posts and ground", "What is under the posts?", Side,
		under("structure", "rests_on", "rests_on_confirmed", "head_height_m", "side_pull_n", "posts"), first)
}

func drumPart() Part {
	own := under("drum", "diameter_m", "width_m", "flange_diameter_m", "dead_wraps", "grooved", "fleet_angle_rad", "bearing_torque_nm")
	return single("drum", "Drum", "How thick and how wide is the drum?", Drive, own, under("drum", "diameter_m", "width_m", "dead_wraps", "flange_diameter_m"))
}

func shaftPart(h lift.Hoist) Part {
	first := under("drum", "shaft_diameter_m", "shaft_yield_pa", "hub_fit", "coupling")
	switch h.Drum.HubFit {
	case lift.FitCrossPin:
		first = append(first, under("drum", "pin_diameter_m", "pin_yield_pa")...)
	case lift.FitKey:
		first = append(first, under("drum", "key_width_m", "key_length_m")...)
	case lift.FitSetScrew:
		first = append(first, "drum.set_screw_torque_nm")
	}
	return single("shaft", "Shaft and pin", "How does the drum sit on its shaft?", Drive, []string{"drum"}, first)
}

func gearsPart(h lift.Hoist) Part {
	first := under("train.stages[]", "kind", "ratio")
	for i, s := range h.Train.Stages {
		at := row("train.stages", i)
		switch s.Kind {
		case lift.StageBox, lift.StageStrainWave, lift.StageCycloid:
			first = append(first, under(at, "efficiency", "rated_torque_nm")...)
		case lift.StageWorm:
			first = append(first, at+".lead_angle_rad")
		case lift.StagePlanetary, lift.StageSpur, lift.StageBevel:
			first = append(first, under(at, "tooth.material", "tooth.module_m", "tooth.face_width_m")...)
		}
	}
	return single("gears", "Gears", "How many stages, and what are they?", Drive, []string{"train"}, first)
}

// hasCase reports whether the gears stand in a case of the builder's own: not where every stage is a bought gearbox.
func hasCase(h lift.Hoist) bool {
	t := h.Train
	own := len(t.Stages) == 0
	for _, s := range t.Stages {
		own = own || s.Kind != lift.StageBox
	}
	return own || t.CaseScrews != "" || t.CaseScrewSize.Is || t.CaseScrewCount.Is || t.CaseScrewCircle.Is || t.CaseScrewProof.Is
}

func casePart() Part {
	return single("case", "Gear case", "Are all its screws in?", Drive,
		under("train", "case_screws", "case_screw_diameter_m", "case_screw_count", "case_screw_circle_m", "case_screw_proof_pa"),
		under("train", "case_screws", "case_screw_diameter_m", "case_screw_count"))
}

// motorPart asks for the label until the motor's own numbers are known, typed or from the bench.
func motorPart(h lift.Hoist) Part {
	m := h.Machine
	first := under("machine", "sheet_voltage_v", "sheet_no_load_speed_rad_s", "sheet_stall_current_a", "continuous_current_a", "max_speed_rad_s")
	if (m.K.Is || len(m.BenchK) > 0) && (m.R.Is || len(m.BenchR) > 0) {
		first = under("machine", "continuous_current_a", "max_speed_rad_s")
	}
	return single("motor", "Motor", "What does the motor's label say?", Drive, []string{"machine"}, first)
}

func feedPart(h lift.Hoist) Part {
	first := under("raise", "feed", "voltage_v", "current_limit_a", "fuse_a", "wire_area_m2", "switch_a")
	if h.Raise.Feed == lift.FeedPanel {
		first = under("raise", "feed", "converter", "fuse_a", "wire_area_m2", "switch_a")
	}
	return single("feed", "Supply by day", "What feeds the motor while it lifts?", Circuit, []string{"raise"}, first)
}

// weightsPart keeps the drive on the ground.
func weightsPart(h lift.Hoist) Part {
	first := under("base", "where", "mass_kg", "weights_fixed", "ground")
	if h.Base.WeightsFixed == unit.No {
		first = append(first, "base.loose_mass_kg")
	}
	return single("weights", "Base weights", "How heavy are they, and are they fastened?", Side, []string{"base"}, first)
}

// hasBoard reports whether the drive stands on a board: not where it hangs on a beam or a wall.
func hasBoard(h lift.Hoist) bool {
	b := h.Base.Board
	given := b.Thickness.Is || b.Width.Is || b.Arm.Is || b.Strength.Is
	return given || h.Base.Where != lift.BaseOnBeam && h.Base.Where != lift.BaseOnWall
}

func boardPart() Part {
	return single("board", "Base board", "How thick and how strong is it?", Side, []string{"base.board"},
		under("base.board", "thickness_m", "width_m", "arm_m", "bending_strength_pa"))
}
