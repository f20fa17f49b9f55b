package parts

import (
	"slices"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// The order in which a maker is asked, by the rule on paper: a refused value, mass and travel, what the drive misses, holds,
// what keeps most checks open, a typical value, the place. Each step answers what was asked before.
func TestQuestionsInOrder(t *testing.T) {
	var h lift.Hoist
	given := map[string]bool{"travel_m": false, "rope.breaking_load_n": false, "rope.kind": true, "site.children": false}
	said := Said{At: "stores[0].hoist", Given: given, Checks: []path.Check{
		{ID: "rope", Word: path.NotKnown, Missing: []string{"mass", "rope.breaking_load_n"}},
		{ID: "knot", Word: path.NotKnown, Missing: []string{"rope.breaking_load_n", "rope.ending"}},
		{ID: "slack", Word: path.NotKnown, Missing: []string{"rope.stiffness_ea_n"}},
		{ID: "brake_catch", Word: path.NotKnown, Missing: []string{"rope.stiffness_ea_n"}},
		{ID: "overhoist", Word: path.NotKnown, Missing: []string{"rope.stiffness_ea_n"}, Of: "rope.breaking_load_n"},
	}, Typical: []string{"drum.diameter_m"}}
	ask := Ask{Refused: []string{"drum.width_m"}, Drive: []lift.Missing{{Path: "machine.k_vs_rad"}}}
	for i, want := range []struct {
		path   string
		tier   Tier
		answer func()
	}{
		{"drum.width_m", TierRefused, func() { ask.Refused = nil }},
		{"mass[0].mass_kg", TierMass, func() {
			h.Mass = []lift.Piece{{Mass: unit.Of[unit.Mass](100)}}
			given["mass[0].mass_kg"], given["mass[0].weighed"] = true, true
			said.Checks[0].Missing = said.Checks[0].Missing[1:]
		}},
		{"travel_m", TierMass, func() { h.Travel = unit.Of[unit.Length](2); given["travel_m"] = true }},
		{"machine.sheet_voltage_v", TierDrive, func() { ask.Drive = nil }},
		{"holds.holds[0].kind", TierHolds, func() { given["holds.holds[0].kind"] = true }},
		{"holds.holds[1].kind", TierHolds, func() { given["holds.holds[1].kind"] = true }},
		{"holds.upper_stops[0].kind", TierHolds, func() { given["holds.upper_stops[0].kind"] = true }},
		{"holds.upper_stops[1].kind", TierHolds, func() { given["holds.upper_stops[1].kind"] = true }},
		{"rope.breaking_load_n", TierPath, func() { ask.Later = []string{"rope.breaking_load_n"} }}, // two checks; the stiffness, which three miss, no maker knows
		{"rope.ending", TierPath, func() { ask.Later = append(ask.Later, "rope.ending") }},
		{"rope.breaking_load_n", TierPath, func() {
			given["rope.breaking_load_n"], given["rope.ending"] = true, true
			for k := range said.Checks {
				said.Checks[k].Missing = nil
			}
		}},
		{"drum.diameter_m", TierTypical, func() { said.Typical = nil; given["drum.diameter_m"] = true }},
		{"site.children", TierRound, nil},
	} {
		q := Next(h, States(h, said), said, ask)
		if q.Part < 0 || q.Path != want.path || q.Why != want.tier {
			t.Fatalf("question %d asks %+v, want %s of tier %d", i, q, want.path, want.tier)
		}
		if want.answer != nil {
			want.answer()
		}
	}
}

// A part's word is the worst that is said of it; a check that a proof by test cleared takes none away; what stands against
// the hoist and belongs to no part of it is a part of its own. A part with a value that is only usual elsewhere is not settled.
func TestWordsOfParts(t *testing.T) {
	h := lift.Hoist{Mass: []lift.Piece{{Mass: unit.Of[unit.Mass](50)}}}
	given := map[string]bool{}
	for _, p := range All(h) {
		for _, f := range p.First {
			given[blank(f)] = true
		}
	}
	said := Said{At: "stores[0].hoist", Given: given, Checks: []path.Check{
		{ID: "rope", Word: path.Tight, Use: unit.Of[unit.Ratio](.95)}, {ID: "beam", Word: path.GivesWay, Use: unit.Of[unit.Ratio](1.4)},
		{ID: "drum_hub", Word: path.NotKnown}, {ID: "head_sheave", Of: "reeving.sheaves[0]", Word: path.Holds, Use: unit.Of[unit.Ratio](.3)},
	}, Because: []reason.Reason{
		{ID: "drum_hub", Of: "drum.hub_strength_pa", Word: reason.Proven, Path: "stores[0].hoist.drum.hub_strength_pa"},
		{ID: "people_near", Word: reason.No, Path: "stores[0].hoist.site.children"}, {ID: "step_failed", Word: reason.No, Path: "panels[0].count"},
	}, Flags: []lift.Flag{{Path: "machine.max_speed_rad_s", Bad: true}, {Path: "drum.diameter_m"}}, Typical: []string{"rope.stiffness_ea_n", "reeving.dead_end", "train.stages[0].ratio"}}
	got := map[string]path.Word{}
	for _, s := range States(h, said) {
		got[s.ID] = s.Word
	}
	for id, want := range map[string]path.Word{"rope": path.NotKnown, "gears": path.NotKnown, "ends": path.Holds, "beam": path.GivesWay, "shaft": path.Holds, "pulley": path.Holds, "round": path.GivesWay, "motor": path.GivesWay, "drum": path.Holds, Beyond: path.GivesWay} {
		if got[id] != want {
			t.Errorf("%s is %q, want %q", id, got[id], want)
		}
	}
}

// Every check of the load path is about something that a part owns.
func TestEveryCheckHasAPart(t *testing.T) {
	all := All(lift.Hoist{})
	for _, id := range []string{"rope", "knot", "bend_ratio", "slack", "hanger", "beam", "post", "container", "head_sheave", "redirect_sheave", "base_uplift", "base_sliding", "base_overturning", "overhoist", "base_board", "ground", "shaft", "cross_pin", "set_screw", "coupling", "drum_hub", "drum_capacity", "fleet_angle", "dead_wraps", "gear_tooth", "case_fasteners", "holds", "stops", "brake_catch"} {
		if c := (path.Check{ID: id}); c.About() == "" || Owner(all, c.About()) < 0 {
			t.Errorf("%s is about %q, which no part owns", id, c.About())
		}
	}
	if slices.IndexFunc(all, func(p Part) bool { return p.ID == "hold-2" }) < 0 || slices.IndexFunc(all, func(p Part) bool { return p.ID == "stop-2" }) < 0 {
		t.Error("two holds and two stops have no places before they are named")
	}
}

// blank is a name of a card with its first row.
func blank(f string) string {
	var out []byte
	for i := range len(f) {
		out = append(out, f[i])
		if f[i] == '[' && i+1 < len(f) && f[i+1] == ']' {
			out = append(out, '0')
		}
	}
	return string(out)
}
