package ready

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// fits is what the clashes of a hoist say: id, word and path.
func fits(h lift.Hoist) string {
	var out []string
	for _, k := range Clashes(h) {
		out = append(out, fmt.Sprint(k.ID, " ", k.Word, " ", k.Path))
	}
	return strings.Join(out, "; ")
}

// A size that is not known leaves open, by its name, what it decides; a hoist of which all is known fits. Drive and rope hang on the
// pulley over which it runs, and a hoist in a building has no posts that could be too short or stand in the way.
func TestClashesOfWhatIsNotKnown(t *testing.T) {
	none := unit.Known[unit.Length]{}
	two := unit.Of[unit.Count](2)
	for _, x := range []struct {
		what   string
		change func(h *lift.Hoist)
		want   string
	}{
		{"all known", func(*lift.Hoist) {}, ""},
		{"travel", func(h *lift.Hoist) { h.Travel = none }, "geometry_height not_known travel_m"},
		{"height of the mass", func(h *lift.Hoist) { h.Site.LoadHeight = none }, "geometry_height not_known site.load_height_m"},
		{"width of the mass", func(h *lift.Hoist) { h.Site.LoadWidth = none }, "geometry_width not_known site.load_width_m; geometry_drive not_known site.load_width_m"},
		{"pad", func(h *lift.Hoist) { h.Site.PadDepth = none }, "geometry_height not_known site.pad_depth_m"},
		{"room above", func(h *lift.Hoist) { h.Holds.RoomAbove = none }, "geometry_height not_known holds.room_above_m"},
		{"rig", func(h *lift.Hoist) { h.Site.Rig = none }, ""},
		{"top pulley, with half a metre to spare", func(h *lift.Hoist) { h.Reeving.Sheaves[0].Diameter = none }, ""},
		{"top pulley, with 0.4 m to spare", func(h *lift.Hoist) { h.Structure.HeadHeight, h.Reeving.Sheaves = m(4.8), nil }, "geometry_height not_known reeving.sheaves"},
		{"head", func(h *lift.Hoist) { h.Structure.HeadHeight = none }, "geometry_height not_known structure.head_height_m; geometry_posts not_known structure.head_height_m; geometry_rope not_known structure.head_height_m; geometry_drive not_known structure.head_height_m"},
		{"drum above the mass, with 0.4 m to spare", func(h *lift.Hoist) {
			h.Reeving.LeadSheaves, h.Structure.HeadHeight, h.Drum.Diameter = unit.Of[unit.Count](0), m(4.8), none
		}, "geometry_height not_known drum.diameter_m"},
		{"drum above the mass, with half a metre to spare", func(h *lift.Hoist) {
			h.Reeving.LeadSheaves, h.Structure.HeadHeight, h.Drum.Diameter = unit.Of[unit.Count](0), m(4.91), none
		}, ""},
		{"lower block, two metres to spare", func(h *lift.Hoist) { h.Reeving.RopeParts, h.Structure.HeadHeight = two, m(6) }, ""},
		{"lower block, half a metre to spare", func(h *lift.Hoist) { h.Reeving.RopeParts = two }, "geometry_height not_known reeving.sheaves"},
		{"posts", func(h *lift.Hoist) { h.Structure.Posts = nil }, "geometry_posts not_known structure.posts"},
		{"height of a post", func(h *lift.Hoist) { h.Structure.Posts[0].Height = none }, "geometry_posts not_known structure.posts[0].height_m"},
		{"two posts, the second too short", func(h *lift.Hoist) {
			h.Structure.Posts = append(h.Structure.Posts, lift.Post{Height: m(5), Width: m(0.12)})
		}, "geometry_posts no structure.posts[0].height_m"},
		{"two posts, the first too short", func(h *lift.Hoist) {
			h.Structure.Posts = append([]lift.Post{{Height: m(5), Width: m(0.12)}}, h.Structure.Posts...)
		}, "geometry_posts no structure.posts[0].height_m"},
		{"width of a post, 0.2 m to spare", func(h *lift.Hoist) { h.Structure.Posts[0].Width, h.Structure.Beam.From = none, m(0.5) }, "geometry_width not_known structure.posts[0].width_m"},
		{"width of a post, 1.5 m to spare", func(h *lift.Hoist) { h.Structure.Posts[0].Width, h.Structure.Beam.From = none, m(1.9) }, ""},
		{"where the mass hangs on the beam", func(h *lift.Hoist) { h.Structure.Beam.From, h.Structure.Beam.Span = none, none }, "geometry_width not_known structure.beam.load_from_support_m"},
		{"outdoors, near the posts", func(h *lift.Hoist) { h.Structure.Beam.From, h.Site.Outdoors = m(0.45), "" }, "geometry_width not_known site.outdoors"},
		{"outdoors, far from the posts", func(h *lift.Hoist) { h.Site.Outdoors = "" }, ""},
		{"near the posts, on a cantilever", func(h *lift.Hoist) { h.Structure.Beam.From, h.Structure.Beam.Support = m(0.1), lift.BeamCantilever }, ""},
		{"near the posts, without a beam", func(h *lift.Hoist) { h.Structure.Beam.From, h.Structure.Beam.Kind = m(0.1), lift.MemberNone }, ""},
		{"near the posts, in a building", func(h *lift.Hoist) {
			h.Structure.Beam.From, h.Structure.RestsOn, h.Structure.Posts[0].Height = m(0.1), lift.RestsOnJoists, m(1)
		}, ""},
		{"near the posts", func(h *lift.Hoist) { h.Structure.Beam.From = m(0.1) }, "geometry_width no site.load_width_m"},
		{"rope", func(h *lift.Hoist) { h.Rope.Length = none }, "geometry_rope not_known rope.length_m"},
		{"rope of 1 m", func(h *lift.Hoist) { h.Rope.Length = m(1) }, "geometry_rope no rope.length_m"},
		{"angle of the rope, rope of 11 m", func(h *lift.Hoist) { h.Rope.Length, h.Structure.LeadAngle.Is = m(11), false }, "geometry_rope not_known structure.lead_line_angle_rad; geometry_drive not_known structure.lead_line_angle_rad"},
		{"where the rope leaves the base, rope of 9 m", func(h *lift.Hoist) { h.Rope.Length, h.Base.PullHeight = m(9), none }, "geometry_rope not_known base.pull_height_m; geometry_drive not_known base.pull_height_m"},
		{"width of the base", func(h *lift.Hoist) { h.Base.Width = none }, "geometry_drive not_known base.width_m"},
		{"drive under the mass", func(h *lift.Hoist) { h.Structure.LeadAngle = unit.Of[unit.Angle](0.01) }, "geometry_drive no structure.lead_line_angle_rad"},
		{"drive under the mass, if it stands on the ground", func(h *lift.Hoist) { h.Structure.LeadAngle, h.Base.Where = unit.Of[unit.Angle](0.01), "" }, "geometry_drive not_known base.where"},
		{"drive on a wall", func(h *lift.Hoist) { h.Structure.LeadAngle, h.Base.Where = unit.Of[unit.Angle](0.01), lift.BaseOnWall }, ""},
		{"rope over two pulleys", func(h *lift.Hoist) {
			h.Structure.LeadAngle, h.Reeving.LeadSheaves = unit.Of[unit.Angle](0.01), two
			h.Reeving.Sheaves = append(h.Reeving.Sheaves, h.Reeving.Sheaves[0])
		}, ""},
		{"drive under the mass, pulleys not counted", func(h *lift.Hoist) {
			h.Structure.LeadAngle, h.Reeving.LeadSheaves.Is = unit.Of[unit.Angle](0.01), false
		}, ""},
		{"near the posts outdoors, travel not known", func(h *lift.Hoist) { h.Structure.Beam.From, h.Site.Outdoors, h.Travel = m(0.42), unit.Yes, none }, "geometry_height not_known travel_m"},
		{"drive near the mass, indoors", func(h *lift.Hoist) { h.Structure.LeadAngle = unit.Of[unit.Angle](0.08) }, ""},
		{"drive near the mass, outdoors", func(h *lift.Hoist) { h.Structure.LeadAngle, h.Site.Outdoors = unit.Of[unit.Angle](0.08), unit.Yes }, "geometry_drive no structure.lead_line_angle_rad"},
		{"drive near the mass, outdoors not said", func(h *lift.Hoist) { h.Structure.LeadAngle, h.Site.Outdoors = unit.Of[unit.Angle](0.08), "" }, "geometry_drive no structure.lead_line_angle_rad"},
	} {
		h := room()
		x.change(&h)
		if got := fits(h); got != x.want {
			t.Errorf("%s: %q, want %q", x.what, got, x.want)
		}
	}
}

// The rope by hand, of the room of round numbers: a drive on the beam wants 4.1 m down and three turns of π·0.11 m, 5.1367 m; one on
// the ground with two ropes and a block of 0.15 m 2·3.95 + 5/cos 0.2 + 1.2095 = 14.2112 m; from 0.35 m over the ground 4.65/cos 0.2 in
// place of 5/cos 0.2, 10.0541 m; without turns that are known half a turn less 3, 9.3744 m.
func TestRopeOfOtherHoists(t *testing.T) {
	for _, x := range []struct {
		what   string
		want   float64
		change func(h *lift.Hoist)
	}{
		{"drive on the beam", 5.1367, func(h *lift.Hoist) { h.Base.Where, h.Reeving.LeadSheaves = lift.BaseOnBeam, unit.Of[unit.Count](0) }},
		{"drive on the beam, a pulley", 5.1367, func(h *lift.Hoist) { h.Base.Where = lift.BaseOnBeam }},
		{"two ropes", 14.2112, func(h *lift.Hoist) {
			h.Reeving.RopeParts, h.Reeving.Sheaves = unit.Of[unit.Count](2), append(h.Reeving.Sheaves, lift.Sheave{Diameter: m(0.15)})
		}},
		{"where is not said", 10.4112, func(h *lift.Hoist) { h.Base.Where = "" }},
		{"pulleys not counted", 10.4112, func(h *lift.Hoist) { h.Reeving.LeadSheaves.Is = false }},
		{"from 0.35 m", 10.0541, func(h *lift.Hoist) { h.Base.PullHeight = m(0.35) }},
		{"no turns known", 9.3744, func(h *lift.Hoist) { h.Drum.DeadWraps.Is = false }},
		{"rope of no thickness", 10.3012, func(h *lift.Hoist) { h.Rope.Diameter.Is = false }},
	} {
		for by, short := range map[float64]bool{-0.001: true, 0.001: false} {
			h := room()
			h.Structure.HeadHeight, h.Site.Rig = m(5), m(0.2)
			x.change(&h)
			h.Rope.Length = m(x.want + by)
			if got := strings.Contains(fits(h), "geometry_rope no"); got != short {
				t.Errorf("%s, %g m of rope: too short %v", x.what, x.want+by, got)
			}
		}
	}
}

// What is missing is told in metres, and what is not known as such; each clash has words of its own.
func TestClashesInWords(t *testing.T) {
	for id, words := range map[string][3]string{
		"geometry_height": {"200 mm too little height", "Whether the mass fits under the pulley is not known", "less travel"},
		"geometry_posts":  {"200 mm too short", "Whether the posts reach up", "longer posts"},
		"geometry_rope":   {"200 mm too short", "Whether the rope is long enough", "longer rope"},
		"geometry_width":  {"200 mm too little room", "Whether the mass passes between the posts", "posts further apart"},
		"geometry_drive":  {"200 mm further out", "Whether the drive is clear of the mass", "Move the drive"},
	} {
		wrong, open, mend := clashWords(Clash{ID: id, By: 0.2})
		if !strings.Contains(strings.ReplaceAll(wrong.String(), unit.Space, " "), words[0]) || !strings.Contains(open, words[1]) || !strings.Contains(mend, words[2]) {
			t.Errorf("%s: %q, %q, %q", id, wrong, open, mend)
		}
	}
	c := Case{Hoist: room()}
	c.Hoist.Structure.HeadHeight = m(4)
	if got := geometry(c); len(got) == 0 || !strings.Contains(got[0].Say.String(), "does not fit under the pulley") || got[0].Clears != reason.Change {
		t.Errorf("a head of 4 m: %v", got)
	}
	c.Hoist.Structure.HeadHeight, c.Hoist.Travel = m(5), unit.Known[unit.Length]{}
	if got := geometry(c); len(got) != 1 || got[0].Say.String() != "Whether the mass fits under the pulley is not known." || got[0].Clears != reason.Answer {
		t.Errorf("a travel that is not known: %v", got)
	}
}

// Which parts a load test may clear: metal and wood that carry, of a frame of one's own, and never rope, knot, bag, hanger in
// masonry or wood screws.
func TestWhatATestMayClear(t *testing.T) {
	own, building := lift.RestsOnOwnPostsOnGround, lift.RestsOnConcreteOrMasonry
	with := func(change func(h *lift.Hoist)) lift.Hoist { var h lift.Hoist; change(&h); return h }
	for _, x := range []struct {
		id   string
		h    lift.Hoist
		want bool
	}{
		{"rope", lift.Hoist{}, false}, {"knot", lift.Hoist{}, false}, {"slack", lift.Hoist{}, false}, {"stops", lift.Hoist{}, false}, {"shaft", lift.Hoist{}, false},
		{"drum_hub", lift.Hoist{}, true}, {"coupling", lift.Hoist{}, true}, {"cross_pin", lift.Hoist{}, true}, {"gear_tooth", lift.Hoist{}, true}, {"case_fasteners", lift.Hoist{}, true},
		{"head_sheave", lift.Hoist{}, true}, {"redirect_sheave", lift.Hoist{}, true}, {"base_board", lift.Hoist{}, true}, {"base_uplift", lift.Hoist{}, true}, {"base_sliding", lift.Hoist{}, true},
		{"holds", lift.Hoist{}, true}, {"bracing", lift.Hoist{}, true},
		{"hanger", with(func(h *lift.Hoist) { h.Structure.HangerFixing = lift.FixingBoltedThroughWood }), true},
		{"hanger", with(func(h *lift.Hoist) { h.Structure.HangerFixing = lift.FixingScrewedIntoWood }), false},
		{"hanger", with(func(h *lift.Hoist) { h.Structure.HangerFixing = lift.FixingAnchorInMasonry }), false},
		{"container", with(func(h *lift.Hoist) { h.Container.Kind = lift.ContainerCage }), true},
		{"container", with(func(h *lift.Hoist) { h.Container.Kind = lift.ContainerCrate }), true},
		{"container", with(func(h *lift.Hoist) { h.Container.Kind = lift.ContainerBag }), false},
		{"beam", with(func(h *lift.Hoist) { h.Structure.RestsOn = own }), true},
		{"beam", with(func(h *lift.Hoist) { h.Structure.RestsOn, h.Structure.Beam.Class = own, "C24" }), false},
		{"beam", with(func(h *lift.Hoist) { h.Structure.RestsOn = building }), false},
		{"post", with(func(h *lift.Hoist) { h.Structure.RestsOn = own }), true},
		{"post", with(func(h *lift.Hoist) { h.Structure.RestsOn = building }), false},
	} {
		if got := provable(x.h, x.id); got != x.want {
			t.Errorf("%s of %+v: %v", x.id, x.h.Structure.HangerFixing, got)
		}
	}
	turns := []string{"drum_hub", "coupling", "cross_pin", "gear_tooth", "case_fasteners", "holds"}
	for _, id := range append(turns, "hanger", "beam", "base_uplift", "bracing", "head_sheave") {
		if got := turned(id); got != strings.Contains(strings.Join(turns, " "), id) {
			t.Errorf("a torque loads %s: %v", id, got)
		}
	}
}

// What clears a line that is not known: a strength that is missing wants a rating, a test or a person, all else an answer.
func TestWhatClearsALine(t *testing.T) {
	bag := Case{Hoist: lift.Hoist{Container: lift.Container{Kind: lift.ContainerBag}}}
	for _, x := range []struct {
		id      string
		missing []string
		want    reason.Clears
	}{
		{"rope", nil, reason.RatedPart}, {"knot", nil, reason.RatedPart}, {"container", nil, reason.RatedPart},
		{"rope", []string{"rope.breaking_load_n"}, reason.RatedPart}, {"rope", []string{"rope.age_factor"}, reason.Answer}, {"rope", []string{"rope.age_factor", "rope.breaking_load_n"}, reason.RatedPart},
		{"slack", nil, reason.Answer}, {"stops", nil, reason.Answer}, {"overhoist", nil, reason.Answer}, {"brake_catch", nil, reason.Answer},
		{"slack", []string{"rope.breaking_load_n"}, reason.Answer}, {"overhoist", []string{"rope.breaking_load_n"}, reason.Answer}, {"brake_catch", []string{"rope.breaking_load_n"}, reason.Answer},
		{"drum_hub", []string{"drum.hub_strength_pa"}, reason.Proof}, {"drum_hub", []string{"drum.hub_outer_diameter_m"}, reason.Answer}, {"drum_hub", nil, reason.Proof},
		{"shaft", []string{"drum.shaft_yield_pa"}, reason.Answer}, {"beam", []string{"structure.rests_on_confirmed"}, reason.Person}, {"beam", []string{"structure.beam.span_m", "structure.rests_on_confirmed"}, reason.Person},
	} {
		if got, _ := clearing(bag, path.Check{ID: x.id, Missing: x.missing}); got != x.want {
			t.Errorf("%s without %v: %s, want %s", x.id, x.missing, got, x.want)
		}
	}
	for p, want := range map[string]bool{"structure.hanger_working_load_n": true, "rope.breaking_load_n": true, "drum.hub_strength_pa": true, "drum.shaft_yield_pa": true, "train.stages[0].rated_torque_nm": true,
		"drum.coupling_torque_nm": true, "structure.beam.class": true, "train.case_screw_proof_pa": true, "holds.holds[0].torque_nm": true, "holds.holds[0].force_n": true, "base.friction": true, "structure.side_pull_n": true,
		"drum.diameter_m": false, "rope.age_factor": false, "travel_m": false} {
		if isStrength(p) != want {
			t.Errorf("%s is a strength: %v", p, !want)
		}
	}
}

// A line gives way where it does at both ends of the mass, with the figures of the plan where that gives way too; at the heavy end
// alone the weighing decides. How many holds there are and what waits for a look are other rules' lines.
func TestLinesAtBothEndsOfTheMass(t *testing.T) {
	line := func(w path.Word, text string) []path.Check {
		return []path.Check{{ID: "rope", Part: "the rope", Word: w, Say: say.That("%s", text), Use: unit.Of[unit.Ratio](1.5)}}
	}
	for _, x := range []struct {
		light, plan, heavy path.Word
		want, words        string
	}{
		{path.GivesWay, path.GivesWay, path.GivesWay, "rope no ", "as planned"}, {path.Holds, path.Holds, path.GivesWay, "rope not_known ; mass_guess not_known mass", "at the heaviest"},
		{path.Tight, path.GivesWay, path.GivesWay, "rope not_known ; mass_guess not_known mass", "as planned"}, {path.Holds, path.Holds, path.Holds, "", ""}, {path.Holds, path.Holds, path.Tight, "", ""},
		{path.NotKnown, path.NotKnown, path.NotKnown, "rope not_known ", "at the heaviest"},
		{path.GivesWay, path.GivesWay, path.NotKnown, "rope not_known ", "at the heaviest"},
	} {
		c := Case{Light: Work{Checks: line(x.light, "at the lightest")}, Plan: Work{Checks: line(x.plan, "as planned")}, Heavy: Work{Checks: line(x.heavy, "at the heaviest")}}
		rs := checks(c)
		var got []string
		for _, r := range rs {
			p := r.Path
			if r.ID == "rope" {
				p = ""
			}
			got = append(got, fmt.Sprint(r.ID, " ", r.Word, " ", p))
		}
		if text := strings.Join(got, "; "); text != x.want || x.words != "" && !strings.Contains(rs[0].Say.String(), x.words) {
			t.Errorf("%s, %s, %s: %q, %v", x.light, x.plan, x.heavy, text, rs)
		}
	}
	c := Case{Heavy: Work{Checks: []path.Check{{ID: "holds", Part: path.TwoHolds, Word: path.GivesWay}, {ID: "holds", Part: "the ratchet", Word: path.GivesWay}, {ID: "rope", Part: path.TwoHolds, Word: path.GivesWay},
		{ID: "knot", Part: "the knot", Word: path.NotKnown, Missing: []string{"rope.ending", "trials.failures[0].looked"}}}}}
	c.Light, c.Plan = c.Heavy, c.Heavy
	var ids []string
	for _, r := range checks(c) {
		ids = append(ids, r.ID)
	}
	if got := strings.Join(ids, " "); got != "holds rope" {
		t.Errorf("lines of other rules: %s", got)
	}
	if got := told(checks(Case{})); got != "not_computed not_known " {
		t.Errorf("nothing checked: %q", got)
	}
	// After a fall it is said once which parts wait, with the failure that is the first.
	c.Heavy.Checks = append(c.Heavy.Checks, path.Check{ID: "beam", Part: "the beam", Word: path.NotKnown, Missing: []string{"trials.failures[2].looked"}})
	if rs := shock(c); told(rs) != "shock not_known trials.failures[0].looked" || !rs[0].Forbids || !strings.Contains(rs[0].Say.String(), "the knot, the beam.") {
		t.Errorf("after a fall: %v", rs)
	}
	if rs := shock(Case{Heavy: Work{Checks: []path.Check{{ID: "rope", Missing: []string{"rope.ending"}}}}}); len(rs) != 0 {
		t.Errorf("no fall: %v", rs)
	}
	var h lift.Hoist
	h.Trials.Steps.S50.Done, h.Trials.Steps.S75.Done = unit.No, unit.Yes
	if got := told(failedSteps(Case{Hoist: h})); got != "step_failed no trials.steps.at_50.done" {
		t.Errorf("a step that did not pass: %q", got)
	}
}

// What a drive of which not all is known gives another word is not known: what forbids in both ways forbids.
func TestBothWays(t *testing.T) {
	no, open := reason.Reason{ID: "races", Word: reason.No, Use: unit.Of[unit.Ratio](1)}, reason.Reason{ID: "races", Word: reason.NotKnown}
	var plain, hub Case
	hub.hub = true
	for _, by := range []struct {
		words string
		of    func(reason.Reason, reason.Word) reason.Reason
	}{{"the drop at its brushes", byBrush}, {"current without load, with the gears on", plain.byMotor}, {"Wheel hubs differ", hub.byMotor}} {
		for _, x := range []struct {
			least, greatest []reason.Reason
			want            reason.Word
			mended          bool
		}{
			{[]reason.Reason{no}, []reason.Reason{no}, reason.No, false}, {[]reason.Reason{no}, nil, reason.NotKnown, true}, {nil, []reason.Reason{no}, reason.NotKnown, true},
			{[]reason.Reason{no}, []reason.Reason{open}, reason.NotKnown, true}, {[]reason.Reason{open}, []reason.Reason{no}, reason.NotKnown, true}, {[]reason.Reason{open}, nil, reason.NotKnown, false}, {nil, []reason.Reason{open}, reason.NotKnown, false},
			{[]reason.Reason{open}, []reason.Reason{open}, reason.NotKnown, false},
		} {
			got := both(x.least, x.greatest, by.of)
			if len(got) != 1 || got[0].Word != x.want || strings.Contains(got[0].Mend.String(), by.words) != x.mended {
				t.Errorf("%v and %v: %v", x.least, x.greatest, got)
			}
		}
	}
}

// A motor gets too hot where one run from cold does, up or down, in what is known; as planned it forbids, at the heaviest alone the
// weighing decides, and where brushes or the motor's usual values give another word they do.
func TestMotorThatGetsHot(t *testing.T) {
	hotUp := lift.Drive{HeatUp: lift.Heat{Known: true, TooHot: true}}
	hotDown := lift.Drive{HeatDown: lift.Heat{Known: true, TooHot: true}}
	cool := lift.Drive{HeatUp: lift.Heat{Known: true}, HeatDown: lift.Heat{Known: true}}
	for what, x := range map[string]struct {
		d    lift.Drive
		want bool
	}{"up": {hotUp, true}, "down": {hotDown, true}, "neither": {cool, false}, "not known up": {lift.Drive{HeatUp: lift.Heat{TooHot: true}}, false}, "not known down": {lift.Drive{HeatDown: lift.Heat{TooHot: true}}, false}} {
		if hot(x.d) != x.want {
			t.Errorf("%s: %v", what, !x.want)
		}
	}
	w := func(d lift.Drive) Work { return Work{Drive: d} }
	two := func(a, b lift.Drive) *[2]Work { return &[2]Work{w(a), w(b)} }
	for _, x := range []struct {
		what        string
		plan, heavy lift.Drive
		high        *[2]Work
		usual       [][2]Work
		want, words string
	}{
		{"cool", cool, cool, nil, nil, "", ""},
		{"hot as planned", hotUp, hotDown, nil, nil, "motor_hot no machine.max_winding_c", "more gear ratio"},
		{"hot at the heaviest", cool, hotUp, nil, nil, "motor_hot not_known machine.max_winding_c; mass_guess not_known mass", "on a scale"},
		{"hot with the other brushes", cool, cool, two(hotUp, hotUp), nil, "motor_hot not_known machine.max_winding_c", "brushes"},
		{"hot with the other brushes at the heaviest", cool, cool, two(cool, hotUp), nil, "motor_hot not_known machine.max_winding_c", "brushes"},
		{"hot with all brushes", hotUp, hotUp, two(hotUp, hotUp), nil, "motor_hot no machine.max_winding_c", "more gear ratio"},
		{"hot with the other brushes at the lightest alone", cool, cool, two(hotUp, cool), nil, "motor_hot not_known machine.max_winding_c", "brushes"},
		{"cool with all brushes", cool, cool, two(cool, cool), nil, "", ""},
		{"hot with another motor", cool, cool, nil, [][2]Work{*two(hotUp, hotUp)}, "motor_hot not_known machine.max_winding_c", "without load"},
		{"cool with another motor", hotUp, hotUp, nil, [][2]Work{*two(cool, cool)}, "motor_hot not_known machine.max_winding_c", "without load"},
		{"hot with the second of two motors", cool, cool, nil, [][2]Work{*two(cool, cool), *two(hotUp, hotUp)}, "motor_hot not_known machine.max_winding_c", "without load"},
		{"hot with every motor", hotUp, hotUp, nil, [][2]Work{*two(hotUp, hotUp)}, "motor_hot no machine.max_winding_c", "more gear ratio"},
		{"hot with another motor at the heaviest alone", cool, cool, nil, [][2]Work{*two(cool, hotUp)}, "", ""},
	} {
		c := Case{Plan: w(x.plan), Heavy: w(x.heavy), High: x.high, usual: x.usual}
		rs := motorHotIn(c)
		if got := told(rs); got != x.want || x.words != "" && !strings.Contains(rs[0].Mend.String(), x.words) {
			t.Errorf("%s: %q, want %q; %v", x.what, got, x.want, rs)
		}
	}
}

// A winding that nobody gave a class may reach 90 °C, and air that nobody gave may be 80 °C: what stays 20 K under the highest
// temperature then is good, what does not is not known. The hoist that is ready warms its winding to T in air of 15 °C.
func TestMotorInUnknownAir(t *testing.T) {
	c := strong(t)
	if got := told(motorHot(c)); got != "" {
		t.Fatalf("the hoist that is ready: %s", got)
	}
	warm := func(ambient unit.Known[unit.Celsius], most unit.Known[unit.Celsius]) string {
		h := c.Hoist
		h.Lower.Ambient, h.Machine.MaxWinding = ambient, most
		d := lift.Compute(h)
		return told(motorHot(New(h, d, path.Checks(h, d), path.HazardsOf(h, d), "2026-11-28")))
	}
	heat := func(ambient float64) float64 {
		h := c.Heavy.Hoist
		h.Lower.Ambient = unit.Of(unit.Celsius(ambient))
		d := lift.Compute(h)
		return math.Max(float64(d.HeatUp.Winding), float64(d.HeatDown.Winding))
	}
	none, at := unit.Known[unit.Celsius]{}, func(x float64) unit.Known[unit.Celsius] { return unit.Of(unit.Celsius(x)) }
	inHot := heat(80) + 20
	if got := warm(none, at(inHot+1)); got != "" {
		t.Errorf("cool enough in air of 80 °C: %q", got)
	}
	if got := warm(none, at(inHot-1)); got != "motor_hot not_known lower.ambient_c" {
		t.Errorf("a degree too hot in air of 80 °C: %q", got)
	}
	if got := warm(at(15), at(inHot-1)); got != "" {
		t.Errorf("the same in air of 15 °C: %q", got)
	}
	low, high := -40.0, 80.0 // the air in which the heaviest mass brings the winding to 90 °C less the margin
	for range 50 {
		if mid := (low + high) / 2; heat(mid)+20 < 90 {
			low = mid
		} else {
			high = mid
		}
	}
	if got := warm(at(low-0.5), none); got != "" {
		t.Errorf("without a class, cool enough: %q", got)
	}
	if got := warm(at(low+0.5), none); got != "motor_hot not_known machine.max_winding_c" {
		t.Errorf("without a class, too hot: %q", got)
	}
}

// The numbers of a motor in other ways of giving them: a label behind a gearbox, a drop at the brushes that is a range or not known,
// which may be up to 0.14 of the volts; without a label the bench alone stands as it is.
func TestSpeedOfTheLabel(t *testing.T) {
	label := func(speed float64) lift.Machine {
		return lift.Machine{SheetVolts: unit.Of[unit.Voltage](12), SheetSpeed: unit.Of(unit.AngularSpeed(speed))}
	}
	k := lift.Constants{K: unit.Of[unit.MachineConstant](0.1), R: unit.Of[unit.Resistance](2), I0: unit.Of[unit.Current](0.5)} // 11 V are left: 110 rad/s
	ranged := k
	ranged.BrushLow, ranged.BrushHigh = unit.Of[unit.Voltage](0.5), unit.Of[unit.Voltage](2)
	dropped := k
	dropped.BrushDrop = 1
	for _, x := range []struct {
		what string
		m    lift.Machine
		k    lift.Constants
		want bool
	}{
		// with no drop 110 rad/s, with one of 1.68 V 93.2: within a tenth of the label 100 to 122.2, or 84.7 to 103.6
		{"within a tenth, no drop", label(122), k, false}, {"more than a tenth below", label(122.5), k, true},
		{"within a tenth, with the most drop", label(84.9), k, false}, {"more than a tenth above", label(84.5), k, true},
		{"behind a gearbox of 2", lift.Machine{SheetVolts: unit.Of[unit.Voltage](12), SheetSpeed: unit.Of[unit.AngularSpeed](60), SheetGear: unit.Of[unit.Ratio](2)}, k, false},
		{"behind a gearbox of 3", lift.Machine{SheetVolts: unit.Of[unit.Voltage](12), SheetSpeed: unit.Of[unit.AngularSpeed](60), SheetGear: unit.Of[unit.Ratio](3)}, k, true},
		// a drop from 0.5 to 2 V: 105 and 90 rad/s
		{"a range, its least drop", label(116), ranged, false}, {"a range, past its least drop", label(117), ranged, true}, {"a range, its greatest drop", label(82), ranged, false}, {"a range, past its greatest drop", label(81.5), ranged, true},
		{"no volts on the label", lift.Machine{SheetSpeed: unit.Of[unit.AngularSpeed](110)}, k, true}, {"no speed on the label", lift.Machine{SheetVolts: unit.Of[unit.Voltage](12)}, k, true},
		{"no constant", label(110), lift.Constants{R: k.R, I0: k.I0}, true}, {"no resistance", label(110), lift.Constants{K: k.K, I0: k.I0}, true}, {"no current without load", label(110), lift.Constants{K: k.K, R: k.R}, true},
	} {
		if got := offSpeed(x.m, x.k); got != x.want {
			t.Errorf("%s: %v", x.what, got)
		}
	}
	given := label(111.2) // a drop of 1 V that is given: 100 rad/s, a tenth of 111.1
	given.BrushDrop = unit.Of[unit.Voltage](1)
	if !offSpeed(given, dropped) {
		t.Error("a drop that is given is no range")
	}
	given.SheetSpeed.Val = 111
	if offSpeed(given, dropped) {
		t.Error("a tenth beside the label is its own motor")
	}
	told := label(111.2)
	told.SheetTorque = unit.Of[unit.Torque](1)
	if !offSpeed(told, dropped) {
		t.Error("a drop that the torque tells is no range")
	}
}

// How warm a winding settles, R_th·I²·R/(1 − α·R_th·I²·R): 8 K/W, 2 A and 0.5 Ω are 16 K at 25 °C and 17.0736 K with the copper grown;
// at α·p = 1 it settles nowhere.
func TestWarmthOfAWinding(t *testing.T) {
	if got := Warmth(8, 2, 0.5); math.Abs(got-16/(1-0.00393*16)) > 1e-12 {
		t.Errorf("%g K", got)
	}
	if got := Warmth(1, 1, 1/0.00393); !math.IsInf(got, 1) {
		t.Errorf("%g K where it never settles", got)
	}
	m := lift.Machine{MaxCurrent: unit.Of[unit.Current](2), RthWinding: unit.Of[unit.ThermalResistance](6), RthCase: unit.Of[unit.ThermalResistance](2), MaxWinding: unit.Of[unit.Celsius](125)}
	k := lift.Constants{R: unit.Of[unit.Resistance](0.5)}
	if w, ok := warmth(m, k); !ok || math.Abs(w-16/(1-0.00393*16)/100) > 1e-12 {
		t.Errorf("%g of what it may, %v", w, ok)
	}
	for what, change := range map[string]func(m *lift.Machine, k *lift.Constants){
		"current": func(m *lift.Machine, _ *lift.Constants) { m.MaxCurrent.Is = false }, "thermal resistance": func(m *lift.Machine, _ *lift.Constants) { m.RthWinding.Is = false },
		"winding": func(m *lift.Machine, _ *lift.Constants) { m.MaxWinding.Is = false }, "resistance": func(_ *lift.Machine, k *lift.Constants) { k.R.Is = false },
	} {
		x, y := m, k
		change(&x, &y)
		if w, ok := warmth(x, y); ok || w != 0 {
			t.Errorf("%s not known: %g", what, w)
		}
	}
	// The words name how many times: 126 W·K/W are 2.5 times 100 K.
	var c Case
	c.Hoist.Machine = lift.Machine{MaxCurrent: unit.Of[unit.Current](1), RthWinding: unit.Of[unit.ThermalResistance](8), MaxWinding: unit.Of[unit.Celsius](125)}
	c.Plan.Drive.Machine.R = unit.Of[unit.Resistance](16.5)
	if got := strings.ReplaceAll(fmt.Sprint(motorMixed(c)), unit.Space, " "); !strings.Contains(got, "2.7 times as warm") { // 132/(1 − 0.00393·132) = 274 K
		t.Errorf("%s", got)
	}
	c.Plan.Drive.Machine.R = unit.Of[unit.Resistance](40)
	if got := fmt.Sprint(motorMixed(c)); !strings.Contains(got, "never stop getting warmer") {
		t.Errorf("%s", got)
	}
}

// A proof that counts makes a reason proven, up to a day and a mass; one that has run out leaves it and says so; one that was too
// small leaves it and says that; one of another part is none.
func TestProofOfAPart(t *testing.T) {
	c := strong(t)
	s, ok := path.StillOf("cross_pin", c.Heavy.Hoist, c.Heavy.Drive)
	if !ok {
		t.Fatal("nothing is known of what stands on the pin")
	}
	wanted := testTimes(1.5, s) * float64(s.Torque)
	r := reason.Reason{ID: "cross_pin", Word: reason.NotKnown, Path: "drum.pin_yield_pa", Say: say.That("Not known.")}
	_, p := tested()
	p.Part, p.Torque = "cross_pin", unit.Of(unit.Torque(1.01*wanted))
	other, late, small := p, p, p
	other.Part = "coupling"
	late.Date = "2024-01-01"
	small.Torque.Val = unit.Torque(0.9 * wanted)
	c.Hoist.Site.Barrier = lift.BarrierLockedRoom
	for _, x := range []struct {
		what        string
		proofs      []lift.Proof
		want, words string
	}{
		{"none", nil, "cross_pin not_known drum.pin_yield_pa", "Not known."},
		{"of another part", []lift.Proof{other}, "cross_pin not_known drum.pin_yield_pa", "Not known."},
		{"good", []lift.Proof{other, p}, "cross_pin proven trials.proofs[1].date", "valid until 2027-06-01"},
		{"run out", []lift.Proof{other, late}, "cross_pin not_known drum.pin_yield_pa; proof_lapsed not_known trials.proofs[1].date", "Not known."},
		{"run out, and a good one", []lift.Proof{late, p}, "cross_pin proven trials.proofs[1].date", "proved this part"},
		{"too small", []lift.Proof{small}, "cross_pin not_known drum.pin_yield_pa", "too small for this part"},
	} {
		c.Hoist.Trials.Proofs = x.proofs
		rs := c.prove("cross_pin", r)
		if got := told(rs); got != x.want || !strings.Contains(rs[0].Say.String(), x.words) {
			t.Errorf("%s: %q, want %q; %v", x.what, got, x.want, rs[0].Say)
		}
	}
	c.Hoist.Trials.Proofs = []lift.Proof{p}
	if rs := c.prove("cross_pin", r); rs[0].Mass != unit.Of[unit.Mass](120) || rs[0].Until != "2027-06-01" {
		t.Errorf("proven for %v until %s, want the 120 kg of the plan", rs[0].Mass, rs[0].Until)
	}
	// What is missing has to be a strength.
	line := path.Check{ID: "cross_pin", Missing: []string{"drum.pin_yield_pa"}}
	if rs := c.proved(line, r); rs[0].Word != reason.Proven {
		t.Errorf("a yield that is missing: %v", rs)
	}
	line.Missing = append(line.Missing, "drum.pin_diameter_m")
	if rs := c.proved(line, r); rs[0].Word != reason.NotKnown {
		t.Errorf("a size that is missing: %v", rs)
	}
}

// Where a test is made decides what it is measured by: on a bench what the drum turns by its torque, all else by the force on it; on the
// rope by what hung there, and then nothing else may give way.
func TestHowAProofIsMeasured(t *testing.T) {
	c := strong(t)
	_, p := tested()
	pin, _ := path.StillOf("cross_pin", c.Heavy.Hoist, c.Heavy.Drive)
	hook, _ := path.StillOf("hanger", c.Heavy.Hoist, c.Heavy.Drive)
	torque, force := testTimes(1.5, pin)*float64(pin.Torque), testTimes(1.5, hook)*float64(hook.Force)
	for _, x := range []struct {
		what, id string
		change   func(p *lift.Proof)
		want     bool
	}{
		{"torque on the pin", "cross_pin", func(p *lift.Proof) { p.Torque = unit.Of(unit.Torque(torque)) }, true},
		{"too little torque on the pin", "cross_pin", func(p *lift.Proof) { p.Torque = unit.Of(unit.Torque(0.999 * torque)) }, false},
		{"a force on the pin", "cross_pin", func(p *lift.Proof) { p.Load = unit.Of[unit.Force](1e9) }, false},
		{"a force on the hanger", "hanger", func(p *lift.Proof) { p.Load = unit.Of(unit.Force(force)) }, true},
		{"too little force on the hanger", "hanger", func(p *lift.Proof) { p.Load = unit.Of(unit.Force(0.999 * force)) }, false},
		{"a torque on the hanger", "hanger", func(p *lift.Proof) { p.Torque = unit.Of[unit.Torque](1e9) }, false},
		{"nothing measured", "hanger", func(p *lift.Proof) {}, false},
		{"not said where", "hanger", func(p *lift.Proof) { p.On, p.Load = "", unit.Of(unit.Force(force)) }, false},
		{"on the rope, so heavy that the rope gives way", "hanger", func(p *lift.Proof) { p.On, p.Load = lift.OnRope, unit.Of[unit.Force](1e6) }, false},
		{"on the rope, too little", "hanger", func(p *lift.Proof) { p.On, p.Load = lift.OnRope, unit.Of[unit.Force](1) }, false},
	} {
		q := p
		x.change(&q)
		mass, ok := c.carries(x.id, q)
		if ok != x.want || !ok && mass != 0 {
			t.Errorf("%s: %v, %g kg", x.what, ok, float64(mass))
		}
	}
	if asked := asks(c, "hanger", lift.MadeMetal); math.Abs(float64(asked.Force.Val)/force-1) > 1e-12 || asked.Torque.Is {
		t.Errorf("the hanger asks for %v, want %g N", asked, force)
	}
	c.Heavy.Drive.Mass.Is = false
	if mass, ok := c.carriesSide(lift.Proof{Load: unit.Of[unit.Force](1e9), Measured: lift.MeasuredWithLoadCell}); ok || mass != 0 {
		t.Errorf("a mass that nobody knows: %g kg", float64(mass))
	}
}

// A test on the rope counts where all else keeps twice its breaking, its yield once, and rated hardware half of its working load.
func TestWhatElseBearsATest(t *testing.T) {
	c := strong(t)
	least := map[string]float64{"rope": 2, "knot": 2, "slack": 2, "brake_catch": 2, "overhoist": 2, "head_sheave": 0.5, "redirect_sheave": 0.5, "hanger": 0.5, "container": 0.5}
	counted := []string{"holds", "stops", "dead_wraps", "fleet_angle", "bend_ratio", "drum_capacity"}
	decided := map[string]bool{}
	c.Heavy.Hoist.Raise.CurrentLimit = unit.Of[unit.Current](3) // a motor that neither breaks the rope at the upper stop nor lifts the base
	for _, kg := range []float64{20, 60, 100, 130, 160, 200, 250, 300, 400, 600, 1000} {
		h := c.Heavy.Hoist
		h.Mass = []lift.Piece{{Mass: unit.Of(unit.Mass(kg)), Weighed: lift.ByScale}}
		var weak []string
		for _, k := range path.Checks(h, lift.Compute(h)) {
			if had, ok := k.Had.Value(); ok && !strings.Contains(strings.Join(counted, " "), k.ID) {
				want, known := least[k.ID]
				if !known {
					want = 1
				}
				if float64(had) < want {
					weak = append(weak, k.ID)
				}
			}
		}
		for _, id := range []string{"hanger", "rope", "beam", "none"} {
			want := true
			for _, w := range weak {
				want = want && w == id
			}
			if got := c.bears(id, unit.Mass(kg)); got != want {
				t.Errorf("%g kg beside %s: %v, weak are %v", kg, id, got, weak)
			}
			decided[fmt.Sprint(want)] = true
		}
	}
	if len(decided) != 2 {
		t.Error("nothing was decided", decided)
	}
}

// One device that catches in time is enough, beside another that does not; what is not known of it is not known.
func TestBestOfTheCatches(t *testing.T) {
	c := strong(t)
	if rs := freeDrum(c); len(rs) > 0 && rs[0].ID != "free_drum" {
		t.Errorf("%v", rs)
	}
	var w Work
	w.Hoist.Travel = unit.Of[unit.Length](4.5)
	w.Hoist.Reeving.RopeParts = unit.Of[unit.Count](2)
	w.Drive.Winding.RadiusLast = unit.Of[unit.Length](0.056)
	// A plain pawl wants 1.2836 m/s at the drum, which two ropes reach at half of that at the mass.
	x := lift.Hold{Kind: lift.HoldOverspeedCatch, TripHow: lift.TripPlainPawl}
	for trips, slow := range map[unit.Speed]bool{0.641: true, 0.643: false} {
		x.TripsAt = unit.Of(trips)
		if tooSlow(w, x) != slow {
			t.Errorf("two ropes at %g m/s: %v", float64(trips), !slow)
		}
	}
	w.Drive.Winding.RadiusLast.Is = false
	if tooSlow(w, x) {
		t.Error("a drum of which nobody knows the size is too slow")
	}
	// What comes down at half a metre a second trips a catch of 0.5 m/s, and not one of 0.51.
	w.Drive.Lowering.Known, w.Drive.Lowering.Speed = true, 0.5
	w.Hoist.Holds.Holds = []lift.Hold{{Kind: lift.HoldSpringBrake}}
	for trips, want := range map[unit.Speed]reason.Word{0.5: reason.No, 0.51: reason.Yes} {
		w.Hoist.Holds.Holds[0].TripsAt = unit.Of(trips)
		if got := caught(w, path.Catch{Kind: lift.HoldSpringBrake, Holds: true}).Word; got != want {
			t.Errorf("a catch of %g m/s: %s", float64(trips), got)
		}
	}
	w.Drive.Lowering.Known = false
	w.Hoist.Holds.Holds[0].TripsAt = unit.Of[unit.Speed](0.1)
	if got := caught(w, path.Catch{Kind: lift.HoldSpringBrake, Holds: true}).Word; got != reason.Yes {
		t.Errorf("a way down that nobody knows: %s", got)
	}
}

// A bad flag of the drive that its own sentences do not say already is a reason, under the id of its place.
func TestFlagsOfTheDrive(t *testing.T) {
	var d lift.Drive
	d.Raising.Say, d.Lowering.Say = say.That("It stalls."), say.That("It races.")
	d.Flags = []lift.Flag{{Path: "raise.voltage_v", Say: d.Raising.Say, Bad: true}, {Path: "lower.loads", Say: d.Lowering.Say, Bad: true}, {Path: "drum.width_m", Say: say.That("Narrow."), Bad: false},
		{Path: "raise.voltage_v", Say: say.That("Volts."), Bad: true}, {Path: "lower.loads[0].rated_current_a", Say: say.That("Burns."), Bad: true}, {Path: "raise.feed", Say: say.That("Never."), Bad: true, ID: "never_lifts"}}
	if got, want := told(flags(d)), "lift_stalls no raise.voltage_v; load_rating no lower.loads[0].rated_current_a; never_lifts no raise.feed"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	// What the year says of the plan is said although the same hoist worked out again knows nothing of it, and once.
	c := strong(t)
	before := len(ratings(c))
	c.Plan.Drive.Flags = append(c.Plan.Drive.Flags, d.Flags[5], lift.Flag{Path: "raise.feed", Say: say.That("Feed."), Bad: true}, lift.Flag{Path: "drum.width_m", Say: say.That("Plan alone."), Bad: true})
	if got := told(ratings(c)[before:]); got != "never_lifts no raise.feed; load_rating no raise.feed" && got != "never_lifts no raise.feed; lift_stalls no raise.feed" {
		t.Errorf("%q", got)
	}
}

// Two angles of one rope may differ by 0.05 rad; one alone contradicts nothing. A mass is set against its size where both sides are
// known.
func TestHalvesOfAContradiction(t *testing.T) {
	for what, change := range map[string]func(c *Case){
		"no angle at the base":   func(c *Case) { c.Hoist.Structure.LeadAngle = unit.Of[unit.Angle](0.5) },
		"no angle at the top":    func(c *Case) { c.Hoist.Base.RopeAngle = unit.Of[unit.Angle](0.5) },
		"no angle at the pulley": func(c *Case) { c.Hoist.Reeving.Sheaves = []lift.Sheave{{}} },
		"no width of the mass": func(c *Case) {
			c.Plan.Drive.Mass, c.Hoist.Site.LoadHeight = unit.Of[unit.Mass](1e6), unit.Of[unit.Length](0.1)
		},
		"no height of the mass": func(c *Case) {
			c.Plan.Drive.Mass, c.Hoist.Site.LoadWidth = unit.Of[unit.Mass](1e6), unit.Of[unit.Length](0.1)
		},
		"no height of the frame": func(c *Case) { c.Hoist.Structure.HeadHeight = unit.Of[unit.Length](3) },
		"no height of the head":  func(c *Case) { c.Hoist.Site.FrameHeight = unit.Of[unit.Length](1) },
		"no diameter of the rope": func(c *Case) {
			c.Hoist.Rope = lift.Rope{Kind: lift.RopePolyester, BreakingLoad: unit.Of[unit.Force](1e6)}
		},
		"no strength of the rope": func(c *Case) {
			c.Hoist.Rope = lift.Rope{Kind: lift.RopePolyester, Diameter: unit.Of[unit.Length](1e-6)}
		},
	} {
		var c Case
		c.Hoist.Reeving.LeadSheaves = unit.Of[unit.Count](1)
		change(&c)
		if got := told(contradictions(c)); got != "" {
			t.Errorf("%s: %s", what, got)
		}
	}
}
