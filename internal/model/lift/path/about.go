package path

import "cmp"

// About is where the hoist names what the check is about: its row, or the field with what its part withstands.
func (c Check) About() string { return cmp.Or(c.Of, c.Strength()) }

// Strength is the field with what the part withstands, or for what is only counted or measured the answer that is counted;
// "" where no one field is more to blame than another.
func (c Check) Strength() string { return strengthOf[c.ID] }

// strengthOf names, for each line of the load path, the field with what its part withstands.
var strengthOf = map[string]string{
	"rope": "rope.breaking_load_n", "knot": "rope.ending", "bend_ratio": "reeving.sheaves", "slack": "holds.slack_switch",
	"hanger": "structure.hanger_working_load_n", "beam": "structure.beam.class", "post": "structure.posts", "container": "container.working_load_n",
	"head_sheave": "reeving.sheaves", "redirect_sheave": "reeving.sheaves",
	"base_uplift": "base.mass_kg", "base_sliding": "base.mass_kg", "base_overturning": "base.mass_kg", "overhoist": "base.mass_kg", "base_board": "base.board.bending_strength_pa", "ground": "base.ground",
	"shaft": "drum.shaft_yield_pa", "cross_pin": "drum.pin_yield_pa", "set_screw": "drum.set_screw_torque_nm", "coupling": "drum.coupling_torque_nm", "drum_hub": "drum.hub_strength_pa",
	"drum_capacity": "drum.width_m", "fleet_angle": "drum.fleet_angle_rad", "dead_wraps": "drum.dead_wraps",
	"gear_tooth": "train.stages", "case_fasteners": "train.case_screw_proof_pa",
	"holds": "holds.holds", "stops": "holds.upper_stops", "brake_catch": "holds.holds",
}
