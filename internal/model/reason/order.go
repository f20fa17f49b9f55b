package reason

import (
	"cmp"
	"math"
	"slices"
)

// Order is the closed list of ids that are not checks of the load path, in the order of the rule book. Checks stand before
// all of them.
func Order() []string {
	return []string{
		"mass_guess", "lift_stalls", "never_lifts", "stays_up", "races", "load_rating", "stops", "slack", "needs_push",
		"measured_differs", "typical", "motor_unknown", "load_unknown", "shock",
		"holds_count", "holds_drum", "holds_independent", "holds_auto", "overspeed", "free_drum", "brake_power", "shunt",
		"geometry_height", "geometry_posts", "geometry_rope", "geometry_width", "geometry_drive", "contradiction", "bracing",
		"people_ride", "people_near", "people_below", "floor_below", "keep_out", "owner", "helper", "self_start", "way_down",
		"motor_hot", "motor_mixed", "label_gear", "step_failed", "proof_lapsed",
		"volts_line", "volts_feed", "volts_string", "volts_touch", "mains_out", "strings_fuse", "panel_cable", "panel_input", "fuse_breaks",
		"batteries_joined", "peak_fuse", "cable", "fuse", "board", "low_voltage", "lamp_volts", "charge_current", "inverter", "bare_volts", "contacts",
		"place", "cells_mixed", "freezes", "air", "harm",
		"drowning", "tank_base", "pipe_pressure", "lower_water",
		"no_store", "not_computed",
	}
}

// Sort puts the worst reason first: what forbids even the first step, then by word, then what gives way by its use (the
// largest first), then by the order of the rule book. Equal reasons keep their order.
func Sort(reasons []Reason) {
	at := map[string]int{}
	for i, id := range Order() {
		at[id] = i + 1
	}
	slices.SortStableFunc(reasons, func(a, b Reason) int {
		return cmp.Or(
			-compareBool(a.Forbids, b.Forbids),
			cmp.Compare(b.Word.rank(), a.Word.rank()),
			cmp.Compare(b.weight(), a.weight()),
			cmp.Compare(at[a.ID], at[b.ID]),
		)
	})
}

// weight is the use of what gives way; without a figure it comes first of the checks and does not count for other ids.
func (r Reason) weight() float64 {
	if r.Use.Is && r.Word == No && !math.IsNaN(float64(r.Use.Val)) {
		return float64(r.Use.Val)
	}
	return 0
}

func compareBool(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return 1
	}
	return -1
}

// Of returns the worst word of some reasons; Yes for none.
func Of(reasons []Reason) Word {
	worst := Yes
	for _, r := range reasons {
		worst = Worst(worst, r.Word)
	}
	return worst
}
