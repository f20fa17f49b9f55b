package parts

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

func find(t *testing.T, h lift.Hoist, id string) Part {
	t.Helper()
	for _, p := range All(h) {
		if p.ID == id {
			return p
		}
	}
	t.Fatalf("no part %s", id)
	return Part{}
}

func ids(h lift.Hoist) (out []string) {
	for _, p := range All(h) {
		out = append(out, p.ID)
	}
	return out
}

// What a card shows first follows from what the part is: the answer on the left makes the inputs on the right appear, and without it
// they are not there.
func TestCardsByTheirKind(t *testing.T) {
	stage := func(k lift.StageKind) func(h *lift.Hoist) {
		return func(h *lift.Hoist) { h.Train.Stages = []lift.Stage{{}, {Kind: k}} }
	}
	load := func(k lift.LoadKind, forGood unit.Answer) func(h *lift.Hoist) {
		return func(h *lift.Hoist) { h.Lower.Loads = []lift.DCLoad{{}, {Kind: k, Permanent: forGood}} }
	}
	hold := func(k lift.HoldKind) func(h *lift.Hoist) {
		return func(h *lift.Hoist) { h.Holds.Holds = []lift.Hold{{}, {Kind: k}} }
	}
	first := func(k lift.HoldKind) func(h *lift.Hoist) {
		return func(h *lift.Hoist) { h.Holds.Holds = []lift.Hold{{Kind: k}} }
	}
	for _, x := range []struct {
		id     string
		change func(h *lift.Hoist)
		shows  string
	}{
		{"cage", func(h *lift.Hoist) { h.Container.Kind = lift.ContainerBag }, "container.safety_factor container.in_use_s"},
		{"eye", func(h *lift.Hoist) { h.Structure.HangerFixing = lift.FixingBoltedThroughWood }, "structure.hanger_washer_m"},
		{"eye", func(h *lift.Hoist) { h.Structure.Washer = unit.Of[unit.Length](0.05) }, "structure.hanger_washer_m"},
		{"beam", func(h *lift.Hoist) { h.Structure.Beam.Kind = lift.MemberTimber }, "structure.beam.class"},
		{"beam", func(h *lift.Hoist) { h.Structure.Beam.Kind = lift.MemberRoundPole }, "structure.beam.class"},
		{"beam", func(h *lift.Hoist) { h.Structure.Beam.Kind = lift.MemberSteelTube }, "structure.beam.yield_pa"},
		{"beam", func(h *lift.Hoist) { h.Structure.Beam.Kind = lift.MemberSteelRoundTube }, "structure.beam.yield_pa"},
		{"posts", func(h *lift.Hoist) { h.Structure.RestsOn = lift.RestsOnOwnPostsOnGround }, "structure.posts[].kind structure.posts[].height_m structure.posts[].soil"},
		{"shaft", func(h *lift.Hoist) { h.Drum.HubFit = lift.FitCrossPin }, "drum.pin_diameter_m drum.pin_yield_pa"},
		{"shaft", func(h *lift.Hoist) { h.Drum.HubFit = lift.FitKey }, "drum.key_width_m drum.key_length_m"},
		{"shaft", func(h *lift.Hoist) { h.Drum.HubFit = lift.FitSetScrew }, "drum.set_screw_torque_nm"},
		{"gears", stage(lift.StageBox), "train.stages[1].efficiency train.stages[1].rated_torque_nm"},
		{"gears", stage(lift.StageStrainWave), "train.stages[1].efficiency train.stages[1].rated_torque_nm"},
		{"gears", stage(lift.StageCycloid), "train.stages[1].efficiency train.stages[1].rated_torque_nm"},
		{"gears", stage(lift.StageWorm), "train.stages[1].lead_angle_rad"},
		{"gears", stage(lift.StagePlanetary), "train.stages[1].tooth.material train.stages[1].tooth.module_m train.stages[1].tooth.face_width_m"},
		{"gears", stage(lift.StageSpur), "train.stages[1].tooth.material train.stages[1].tooth.module_m"},
		{"gears", stage(lift.StageBevel), "train.stages[1].tooth.material train.stages[1].tooth.module_m"},
		{"feed", func(h *lift.Hoist) { h.Raise.Feed = lift.FeedPanel }, "raise.converter"},
		{"weights", func(h *lift.Hoist) { h.Base.WeightsFixed = unit.No }, "base.loose_mass_kg"},
		{"lamps", load(lift.LoadString, unit.No), "lower.loads[1].threshold_v lower.loads[1].slope_ohm lower.loads[1].rated_current_a"},
		{"lamps", load(lift.LoadClamp, ""), "lower.loads[1].threshold_v lower.loads[1].slope_ohm"},
		{"lamps", load(lift.LoadResistor, unit.No), "lower.loads[1].resistance_ohm"},
		{"lamps", load(lift.LoadConstantPower, unit.No), "lower.loads[1].power_w"},
		{"clamp", load(lift.LoadClamp, unit.Yes), "lower.loads[1].threshold_v lower.loads[1].kind"},
		{"clamp", load(lift.LoadResistor, unit.Yes), "lower.loads[1].resistance_ohm"},
		{"hold-2", hold(lift.HoldSpringBrake), "holds.holds[1].on_drum holds.holds[1].torque_nm holds.holds[1].sets holds.holds[1].trips"},
		{"hold-2", hold(lift.HoldOverspeedCatch), "holds.holds[1].on_drum holds.holds[1].trips_at_m_s holds.holds[1].trip_how"},
		{"hold-2", hold(lift.HoldLoadArrester), "holds.holds[1].force_n holds.holds[1].trips_at_m_s"},
		{"hold-2", hold(lift.HoldRatchet), "holds.holds[1].on_drum holds.holds[1].torque_nm"},
		{"hold-2", hold(lift.HoldRatedProp), "holds.holds[1].force_n"},
		{"hold-2", hold(lift.HoldLockingPin), "holds.holds[1].force_n"},
		{"hold-1", first(lift.HoldSpringBrake), "holds.brake_release"},
	} {
		var h lift.Hoist
		before := find(t, h, x.id)
		x.change(&h)
		after := find(t, h, x.id)
		for _, f := range strings.Fields(x.shows) {
			if before.Shows(f) || !after.Shows(f) {
				t.Errorf("%s shows %s before %v and after %v", x.id, f, before.Shows(f), after.Shows(f))
			}
		}
	}
	brakeSecond := lift.Hoist{Holds: lift.Holds{Holds: []lift.Hold{{Kind: lift.HoldRatchet}, {Kind: lift.HoldSpringBrake}}}}
	if find(t, brakeSecond, "hold-1").Shows("holds.brake_release") || find(t, brakeSecond, "hold-2").Shows("holds.brake_release") {
		t.Error("what opens the brake is asked on the card of the first hold alone, where that is a brake")
	}
	forGood := lift.Hoist{Lower: lift.Lower{Loads: []lift.DCLoad{{Kind: lift.LoadClamp, Permanent: unit.Yes}}}}
	if p := find(t, forGood, "lamps"); !slices.Equal(p.First, []string{"lower.loads[1].kind"}) {
		t.Errorf("without a lamp the next row is asked for: %v", p.First)
	}
}

// The label of a motor is asked for until its own numbers are known, constant and resistance both, typed or from the bench.
func TestMotorAsksForItsLabel(t *testing.T) {
	k, r, bench := unit.Of[unit.MachineConstant](0.1), unit.Of[unit.Resistance](1), []lift.Bench{{}}
	for _, x := range []struct {
		m     lift.Machine
		label bool
	}{
		{lift.Machine{}, true}, {lift.Machine{K: k}, true}, {lift.Machine{R: r}, true}, {lift.Machine{K: k, R: r}, false},
		{lift.Machine{BenchK: bench}, true}, {lift.Machine{BenchK: bench, BenchR: bench}, false}, {lift.Machine{K: k, BenchR: bench}, false}, {lift.Machine{BenchK: bench, R: r}, false},
	} {
		h := lift.Hoist{Machine: x.m}
		if got := find(t, h, "motor").Shows("machine.sheet_voltage_v"); got != x.label {
			t.Errorf("%+v: asks for the label %v", x.m, got)
		}
		want := "machine.k_vs_rad"
		if x.label {
			want = "machine.sheet_voltage_v"
		}
		if got := Input(All(h), "machine.k_vs_rad"); got != want {
			t.Errorf("%+v: for its constant %s is asked", x.m, got)
		}
	}
}

// Case and board stand there where the builder's own are: gears that are not all bought boxes, or a screw that is told; a drive that
// hangs neither on a beam nor on a wall, or a number of the board.
func TestPartsThatMayBeMissing(t *testing.T) {
	box, spur := lift.Stage{Kind: lift.StageBox}, lift.Stage{Kind: lift.StageSpur}
	one, count := unit.Of[unit.Length](0.006), unit.Of[unit.Count](4)
	for _, x := range []struct {
		train lift.Train
		want  bool
	}{
		{lift.Train{}, true}, {lift.Train{Stages: []lift.Stage{box}}, false}, {lift.Train{Stages: []lift.Stage{box, box}}, false}, {lift.Train{Stages: []lift.Stage{box, spur}}, true}, {lift.Train{Stages: []lift.Stage{spur}}, true},
		{lift.Train{Stages: []lift.Stage{box}, CaseScrews: unit.Yes}, true}, {lift.Train{Stages: []lift.Stage{box}, CaseScrewSize: one}, true}, {lift.Train{Stages: []lift.Stage{box}, CaseScrewCount: count}, true},
		{lift.Train{Stages: []lift.Stage{box}, CaseScrewCircle: one}, true}, {lift.Train{Stages: []lift.Stage{box}, CaseScrewProof: unit.Of[unit.Stress](1)}, true},
	} {
		if got := slices.Contains(ids(lift.Hoist{Train: x.train}), "case"); got != x.want {
			t.Errorf("%+v: a case %v", x.train, got)
		}
	}
	for _, x := range []struct {
		base lift.Base
		want bool
	}{
		{lift.Base{}, true}, {lift.Base{Where: lift.BaseOnGround}, true}, {lift.Base{Where: lift.BaseOnBeam}, false}, {lift.Base{Where: lift.BaseOnWall}, false},
		{lift.Base{Where: lift.BaseOnBeam, Board: lift.Board{Thickness: one}}, true}, {lift.Base{Where: lift.BaseOnBeam, Board: lift.Board{Width: one}}, true},
		{lift.Base{Where: lift.BaseOnWall, Board: lift.Board{Arm: one}}, true}, {lift.Base{Where: lift.BaseOnWall, Board: lift.Board{Strength: unit.Of[unit.Stress](1)}}, true},
	} {
		if got := slices.Contains(ids(lift.Hoist{Base: x.base}), "board"); got != x.want {
			t.Errorf("%+v: a board %v", x.base, got)
		}
	}
}

// Pulleys along the rope: those before the top one are on the way up, the top one is the top pulley's part, behind it they hang in turn
// on the mass and on the beam. The names count from one, the rows from nothing.
func TestPulleysAlongTheRope(t *testing.T) {
	names := func(lead, ropes unit.Known[unit.Count], rows int) string {
		h := lift.Hoist{Reeving: lift.Reeving{LeadSheaves: lead, RopeParts: ropes, Sheaves: make([]lift.Sheave, rows)}}
		var out []string
		for i, p := range pulleys(h) {
			if i > 0 {
				out = append(out, fmt.Sprint(p.ID, " ", p.Name, " ", p.Owns, " ", p.Row))
			} else if p.ID != "pulley" || p.Name != "Top pulley" || p.Row != -1 {
				t.Errorf("the first is %+v", p)
			} else if lead.Or(1) == 0 != (len(p.Owns) == 1) {
				t.Errorf("%v pulleys lead: the top pulley owns %v", lead, p.Owns)
			} else if n := int(lead.Or(1)); n > 0 && !slices.Contains(p.Owns, fmt.Sprintf("reeving.sheaves[%d]", n-1)) {
				t.Errorf("%v pulleys lead: the top pulley owns %v", lead, p.Owns)
			}
		}
		return strings.Join(out, "; ")
	}
	count := func(x float64) unit.Known[unit.Count] { return unit.Of(unit.Count(x)) }
	none := unit.Known[unit.Count]{}
	on := func(i int, where string) string {
		return fmt.Sprintf("pulley-%d Pulley %d, %s [reeving.sheaves[%d]] %d", i+1, i+1, where, i, i)
	}
	for _, x := range []struct {
		lead, ropes unit.Known[unit.Count]
		rows        int
		want        []string
	}{
		{none, none, 0, nil}, {count(1), count(1), 1, nil}, {count(0), count(1), 0, nil},
		{count(2), count(1), 0, []string{on(0, "on the way up")}}, {count(3), none, 3, []string{on(0, "on the way up"), on(1, "on the way up")}},
		{count(1), count(2), 0, []string{on(1, "on the mass")}}, {count(1), count(4), 0, []string{on(1, "on the mass"), on(2, "on the beam"), on(3, "on the mass")}},
		{count(0), count(2), 0, []string{on(0, "on the mass")}}, {count(2), count(3), 0, []string{on(0, "on the way up"), on(2, "on the mass"), on(3, "on the beam")}},
		{count(1), count(1), 3, []string{on(1, "on the mass"), on(2, "on the beam")}},
	} {
		if got, want := names(x.lead, x.ropes, x.rows), strings.Join(x.want, "; "); got != want {
			t.Errorf("%v lead, %v ropes, %d rows: %q, want %q", x.lead, x.ropes, x.rows, got, want)
		}
	}
	if p := furtherPulley(0, 1); !p.Shows("reeving.sheaves[0].on_base") || !p.Shows("reeving.sheaves[0].diameter_m") {
		t.Errorf("a pulley on the way up is held by something: %v", p.First)
	}
	if p := furtherPulley(1, 0); p.Shows("reeving.sheaves[1].on_base") {
		t.Errorf("a pulley on the mass is on no base: %v", p.First)
	}
}

// Holds and stops are numbered from one and are called by what they are; the first of each owns what all have in common.
func TestHoldsAndStopsByNumber(t *testing.T) {
	h := lift.Hoist{Holds: lift.Holds{Holds: []lift.Hold{{Kind: lift.HoldSpringBrake}, {Kind: lift.HoldRatchet}, {}}, UpperStops: make([]lift.Stop, 3)}}
	for id, want := range map[string]struct {
		name string
		row  int
		owns string
	}{
		"hold-1": {"Brake", 0, "holds.holds[0] holds"}, "hold-2": {"Ratchet", 1, "holds.holds[1]"}, "hold-3": {"Hold 3", 2, "holds.holds[2]"},
		"stop-1": {"Upper stop 1", 0, "holds.upper_stops[0] holds.upper_stops holds.room_above_m"}, "stop-2": {"Upper stop 2", 1, "holds.upper_stops[1]"}, "stop-3": {"Upper stop 3", 2, "holds.upper_stops[2]"},
	} {
		if p := find(t, h, id); p.Name != want.name || p.Row != want.row || strings.Join(p.Owns, " ") != want.owns {
			t.Errorf("%s: %q, row %d, %v", id, p.Name, p.Row, p.Owns)
		}
	}
	if p := find(t, h, "mass"); p.Row != -1 {
		t.Errorf("the mass is row %d", p.Row)
	}
	if !find(t, h, "stop-1").Shows("holds.room_above_m") || find(t, h, "stop-2").Shows("holds.room_above_m") {
		t.Error("the room above is asked once, with the first stop")
	}
}

// A path belongs to the part that names it most exactly; a name that only begins alike is not within, and what no part names has none.
func TestOwnerOfAPath(t *testing.T) {
	all := All(lift.Hoist{})
	for p, want := range map[string]string{
		"mass[0].mass_kg": "mass", "travel_m": "mass", "rope.kind": "rope", "rope.ending": "ends", "reeving.rope_parts": "pulley", "reeving.dead_end": "rope", "reeving.sheaves[0].diameter_m": "pulley",
		"structure.hanger_kind": "eye", "structure.beam.span_m": "beam", "structure.posts[1].height_m": "posts", "drum.diameter_m": "drum", "drum.hub_fit": "shaft", "train.stages[0].ratio": "gears", "train.case_screws": "case",
		"machine.k_vs_rad": "motor", "raise.feed": "feed", "lower.loads[0].kind": "lamps", "lower.shunt": "clamp", "base.mass_kg": "weights", "base.board.arm_m": "board", "holds.holds[1].kind": "hold-2", "holds.brake_delay_s": "hold-1",
		"holds.upper_stops[1].kind": "stop-2", "holds.room_above_m": "stop-1", "holds.slack_switch": "slack", "site.children": "round", "site.load_width_m": "mass",
		"rope": "rope", "ropes": "", "rope_kind": "", "trials.steps": "", "": "",
	} {
		got := ""
		if i := Owner(all, p); i >= 0 {
			got = all[i].ID
		}
		if got != want {
			t.Errorf("%q belongs to %q, want %q", p, got, want)
		}
	}
	if got := Owner(all, "trials.steps"); got != -1 {
		t.Errorf("what no part names belongs to part %d", got)
	}
	s := State{Part: Part{First: []string{"a", "b[].c", "d[2].e"}}}
	for at, want := range map[string]int{"a": 0, "b[3].c": 1, "b[].c": 1, "d[2].e": 2, "d[3].e": 3, "x": 3} {
		if got := s.place(at); got != want {
			t.Errorf("%s stands at place %d of the card, want %d", at, got, want)
		}
	}
	for p, want := range map[string]bool{"a.b": true, "a[0]": true, "a": true, "ab": false, "b.a": false} {
		if within(p, "a") != want {
			t.Errorf("%q within a: %v", p, !want)
		}
	}
	for p, want := range map[string]string{"a[12].b[0]": "a[].b[]", "a.b": "a.b", "a[0]": "a[]"} {
		if got := everyRow(p); got != want {
			t.Errorf("%q becomes %q", p, got)
		}
	}
	p := Part{First: []string{"a[].b", "c[1].d"}}
	for at, want := range map[string]bool{"a[3].b": true, "a[].b": true, "c[1].d": true, "c[2].d": false, "a.b": false} {
		if p.Shows(at) != want {
			t.Errorf("the card shows %q: %v", at, !want)
		}
	}
	for at, want := range map[string]string{"a": "a[0].b", "c": "c[1].d", "x": "x"} {
		if got := Input([]Part{p}, at); got != want {
			t.Errorf("%q asks for %q", at, got)
		}
	}
	if got := inside("stores[0].hoist.rope.kind", "stores[0].hoist"); got != "rope.kind" {
		t.Errorf("inside the hoist %q", got)
	}
	for _, at := range []string{"stores[0].hoist", "stores[0].hoists.rope", "panels[0].count"} {
		if got := inside(at, "stores[0].hoist"); got != at {
			t.Errorf("%q becomes %q", at, got)
		}
	}
}

// While a plan is only an idea, of a part those inputs are asked that the list names, else its first one alone.
func TestIdeaAsksLittle(t *testing.T) {
	h := lift.Hoist{}
	for _, x := range []struct {
		part, path string
		want       bool
	}{
		{"mass", "mass[0].mass_kg", true}, {"mass", "mass[0].name", false}, {"mass", "travel_m", true}, {"rope", "rope.kind", true}, {"rope", "rope.breaking_load_n", false},
		{"ends", "rope.ending", true}, {"slack", "holds.slack_switch", true}, {"weights", "base.where", true}, {"weights", "base.mass_kg", false}, {"gears", "train.stages[2].ratio", true}, {"gears", "train.stages[2].efficiency", false},
		{"hold-1", "holds.holds[0].kind", true}, {"hold-1", "holds.holds[0].independent", false},
	} {
		if got := find(t, h, x.part).Idea(x.path); got != x.want {
			t.Errorf("%s asks for %s: %v", x.part, x.path, got)
		}
	}
	if (Part{}).Idea("x") {
		t.Error("a part without inputs asks for one")
	}
	if rows := (Part{First: []string{"list[].a", "list[].b"}}); !rows.Idea("list[3].a") || rows.Idea("list[3].b") {
		t.Error("of a list the first input of each row is asked")
	}
}

// The check of a part is the one that is used most; one of which the use is not known comes before none. Its word is the worst, and that
// check is shown then. Settled is what holds or is tight.
func TestCheckOfAPart(t *testing.T) {
	of := func(id string, w path.Word, use float64) path.Check {
		c := path.Check{ID: id, Word: w, Use: unit.Of(unit.Ratio(use))}
		c.Use.Is = use > 0
		return c
	}
	for _, x := range []struct {
		checks []path.Check
		shown  string
		use    float64
		word   path.Word
	}{
		{[]path.Check{of("rope", path.Holds, 0.3), of("slack", path.Holds, 0.5)}, "slack", 0.5, path.Holds},
		{[]path.Check{of("rope", path.Holds, 0.5), of("slack", path.Holds, 0.3)}, "rope", 0.5, path.Holds},
		{[]path.Check{of("rope", path.Holds, 0), of("slack", path.Holds, 0.3)}, "slack", 0.3, path.Holds},
		{[]path.Check{of("rope", path.Holds, 0.3), of("slack", path.Holds, 0)}, "rope", 0.3, path.Holds},
		{[]path.Check{of("rope", path.Holds, 0), of("slack", path.Holds, 0)}, "rope", 0, path.Holds},
		{[]path.Check{of("rope", path.Holds, 0.9), of("slack", path.Tight, 0.8)}, "slack", 0.9, path.Tight},
		{[]path.Check{of("rope", path.GivesWay, 1.2), of("slack", path.NotKnown, 0)}, "rope", 1.2, path.GivesWay},
	} {
		var s State
		s.Word = path.Holds
		for i := range x.checks {
			s.measure(&x.checks[i])
			s.take(&x.checks[i])
		}
		if s.Check.ID != x.shown || float64(s.Use.Val) != x.use && s.Use.Is || s.Word != x.word {
			t.Errorf("%v: %s, %v, %s", x.checks, s.Check.ID, s.Use, s.Word)
		}
	}
	for w, want := range map[path.Word]bool{path.Holds: true, path.Tight: true, path.NotKnown: false, path.GivesWay: false} {
		if (State{Word: w}).Settled() != want {
			t.Errorf("%s is settled: %v", w, !want)
		}
	}
}

// What a part is asked for: first what its card shows, of that what most checks miss, then the order of the card; each once. Of a list
// without a row its first input alone. A part with something open that else would hold is not known.
func TestOrderOfWhatIsOpen(t *testing.T) {
	h := lift.Hoist{}
	said := Said{At: "h", Given: map[string]bool{"rope.kind": false, "rope.diameter_m": false, "rope.breaking_load_n": false, "rope.length_m": true, "rope.age_factor": false},
		Checks:  []path.Check{{ID: "rope", Word: path.NotKnown, Missing: []string{"rope.breaking_load_n", "rope.age_factor"}}, {ID: "slack", Word: path.NotKnown, Missing: []string{"rope.breaking_load_n", "rope.age_factor"}}, {ID: "knot", Word: path.NotKnown, Missing: []string{"rope.diameter_m", "rope.age_factor"}}},
		Because: []reason.Reason{{ID: "typical", Word: reason.NotKnown, Path: "h.rope.stiffness_ea_n", Say: say.That("typical")}, {ID: "rope", Word: reason.No, Path: "h.rope.outdoors"}}}
	for _, s := range States(h, said) {
		switch s.ID {
		case "rope":
			if got := strings.Join(s.Open, " "); got != "rope.breaking_load_n rope.diameter_m rope.kind rope.age_factor rope.stiffness_ea_n" {
				t.Errorf("the rope is asked for %s", got)
			}
		case "mass":
			if got := strings.Join(s.Open, " "); got != "mass[0].mass_kg" {
				t.Errorf("the mass is asked for %s", got)
			}
		case "ends":
			if s.Word != path.NotKnown {
				t.Errorf("the ends, of which a check is not known, are %s", s.Word)
			}
		}
	}
	given := Said{At: "h", Given: map[string]bool{"rope.kind": true, "rope.diameter_m": true, "rope.breaking_load_n": true, "rope.length_m": false}}
	for _, s := range States(h, given) {
		if s.ID == "rope" && (s.Word != path.NotKnown || strings.Join(s.Open, " ") != "rope.length_m") {
			t.Errorf("a rope without a length is %s, asked for %v", s.Word, s.Open)
		}
		if s.ID == Beyond {
			t.Error("nothing is beyond the parts")
		}
	}
	gives := Said{At: "h", Given: map[string]bool{"rope.kind": false}, Checks: []path.Check{{ID: "rope", Word: path.GivesWay}}}
	for _, s := range States(h, gives) {
		if s.ID == "rope" && s.Word != path.GivesWay {
			t.Errorf("a rope that gives way and is not all known is %s", s.Word)
		}
	}
}

// What stands against the mass, the first of the parts, is said of it. Where nothing is left to ask there is no question; a typical value
// asks for itself, and what forbids by another input does not.
func TestNothingLeftToAsk(t *testing.T) {
	h := lift.Hoist{Mass: []lift.Piece{{Mass: unit.Of[unit.Mass](50)}}}
	given := map[string]bool{}
	for _, p := range All(h) {
		for _, f := range p.First {
			given[blank(f)] = true
		}
	}
	said := Said{At: "h", Given: given}
	if q := Next(h, States(h, said), said, Ask{}); q.Part != -1 {
		t.Errorf("nothing is open, and it asks %+v", q)
	}
	said.Because = []reason.Reason{{ID: "mass_guess", Word: reason.NotKnown, Path: "h.mass", Say: say.That("Weigh it.")}}
	states := States(h, said)
	if states[0].Word != path.NotKnown || len(states[0].Against) != 1 || states[len(states)-1].ID == Beyond {
		t.Errorf("the mass is %s", states[0].Word)
	}
	for _, x := range []struct {
		r    reason.Reason
		want Tier
	}{
		{reason.Reason{ID: "bracing", Word: reason.NotKnown, Path: "h.drum.diameter_m"}, TierPath},
		{reason.Reason{ID: "bracing", Word: reason.No, Path: "h.drum.diameter_m"}, TierRest}, {reason.Reason{ID: "bracing", Word: reason.NotKnown, Path: "h.drum.width_m"}, TierRest},
	} {
		s := State{Part: drumPart(), Against: []reason.Reason{x.r}}
		if got := tierOf(h, s, "drum.diameter_m", 0, said, Ask{}); got != x.want {
			t.Errorf("%s %s of %s: tier %d, want %d", x.r.ID, x.r.Word, x.r.Path, got, x.want)
		}
	}
	said.Typical = []string{"drum.diameter_m"}
	if got := tierOf(h, State{Part: drumPart()}, "drum.diameter_m", 0, said, Ask{}); got != TierTypical {
		t.Errorf("a value that is usual elsewhere: tier %d", got)
	}
	if got := tierOf(h, State{Part: drumPart()}, "drum.diameter_m", 1, said, Ask{}); got != TierPath {
		t.Errorf("a check misses it: tier %d", got)
	}
	if got := tierOf(h, State{Part: drumPart()}, "drum.bearing_torque_nm", 5, said, Ask{}); got != TierRest {
		t.Errorf("what the card does not show: tier %d", got)
	}
}
