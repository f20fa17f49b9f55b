package ready

import (
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// What a load test asks of a material (section 5 of the rule book): metal 1.5 times for a quarter of an hour, good for 12 months or 500
// lifts, of any part; wood twice for a day, 3 months or 100 lifts, of nothing that the drum turns; ground twice, of base and frame; plastic
// three times, of teeth, coupling and case alone; nothing else.
func TestWhatATestAsks(t *testing.T) {
	ids := []string{"gear_tooth", "coupling", "case_fasteners", "drum_hub", "cross_pin", "holds", "hanger", "beam", "head_sheave", "base_uplift", "base_sliding", "base_board", "bracing"}
	turned, plastic, ground := ids[:6], ids[:3], []string{"base_uplift", "base_sliding", "bracing"}
	among := func(list []string, id string) bool {
		return strings.Contains(" "+strings.Join(list, " ")+" ", " "+id+" ")
	}
	for _, x := range []struct {
		of     lift.ProofMaterial
		factor float64
		held   unit.Duration
		months int
		lifts  unit.Count
		may    func(id string) bool
	}{
		{lift.MadeMetal, 1.5, 900, 12, 500, func(string) bool { return true }},
		{lift.MadeWood, 2, 86400, 3, 100, func(id string) bool { return !among(turned, id) }},
		{lift.MadeGround, 2, 86400, 3, 100, func(id string) bool { return among(ground, id) }},
		{lift.MadePlastic, 3, 86400, 3, 100, func(id string) bool { return among(plastic, id) }},
		{lift.MadePrinted, 3, 86400, 3, 100, func(id string) bool { return among(plastic, id) }},
	} {
		for _, id := range ids {
			factor, held, months, lifts, ok := ask(x.of, id)
			if factor != x.factor || held != x.held || months != x.months || lifts != x.lifts || ok != x.may(id) {
				t.Errorf("%s of %s: %g times for %g s, %d months, %g lifts, %v", id, x.of, factor, float64(held), months, float64(lifts), ok)
			}
		}
	}
	if factor, held, months, lifts, ok := ask("fibre", "hanger"); factor != 0 || held != 0 || months != 0 || lifts != 0 || ok {
		t.Error("fibre is asked for something")
	}
}

// A device against overspeed: one that surely trips is enough; one of which that is not said is not known; a closed place where the mass
// may fall stands in for it. Fewer than two holds is another rule's word.
func TestOverspeedByDevice(t *testing.T) {
	brake := func(trips unit.Answer) lift.Hold {
		return lift.Hold{Kind: lift.HoldSpringBrake, OnDrum: unit.Yes, Trips: trips}
	}
	ratchet := lift.Hold{Kind: lift.HoldRatchet, OnDrum: unit.Yes}
	closed := lift.Site{MayFall: unit.Yes, Barrier: lift.BarrierLockedRoom, ControlsOutside: unit.Yes, FloorBelow: lift.FloorSolidGround, PadDepth: m(0.2)}
	unsaid := closed
	unsaid.PadDepth.Is = false
	for _, x := range []struct {
		what        string
		holds       []lift.Hold
		site        lift.Site
		want, words string
	}{
		{"a brake that trips", []lift.Hold{brake(unit.Yes), ratchet}, lift.Site{}, "", ""},
		{"two that trip", []lift.Hold{brake(unit.Yes), brake(unit.Yes)}, lift.Site{}, "", ""},
		{"a brake that does not", []lift.Hold{brake(unit.No), ratchet}, lift.Site{}, "overspeed no holds.holds", "nothing catches the mass"},
		{"a brake of which nobody says", []lift.Hold{ratchet, brake("")}, lift.Site{}, "overspeed not_known holds.holds[1].trips", "whether anything catches"},
		{"nothing trips, a closed place", []lift.Hold{brake(unit.No), ratchet}, closed, "", ""},
		{"nothing trips, a place not quite known", []lift.Hold{brake(unit.No), ratchet}, unsaid, "overspeed not_known site.pad_depth_m", "whether the place where it falls is closed"},
		{"not said, a place not quite known", []lift.Hold{brake(""), ratchet}, unsaid, "overspeed not_known holds.holds[0].trips", "whether anything catches"},
		{"one hold alone", []lift.Hold{brake(unit.No)}, lift.Site{}, "", ""},
	} {
		c := Case{Hoist: lift.Hoist{Site: x.site, Holds: lift.Holds{Holds: x.holds}, Drum: lift.Drum{DeadWraps: unit.Of[unit.Count](3)}}}
		rs := overspeed(c)
		if got := told(rs); got != x.want || x.words != "" && !strings.Contains(rs[0].Say.String(), x.words) {
			t.Errorf("%s: %q, want %q; %v", x.what, got, x.want, rs)
		}
	}
}

// Of several devices the best decides; none is named, or fewer than two holds are, is another rule's word; a closed place where the mass
// may fall asks for none.
func TestFreeDrumByDevices(t *testing.T) {
	base := strong(t)
	holds := func(hs ...lift.Hold) Case {
		h := base.Hoist
		h.Holds.Holds = hs
		d := lift.Compute(h)
		return New(h, d, path.Checks(h, d), path.HazardsOf(h, d), "2026-11-28")
	}
	good := lift.Hold{Kind: lift.HoldOverspeedCatch, OnDrum: unit.Yes, Trips: unit.Yes, TripsAt: unit.Of[unit.Speed](0.3), TripHow: lift.TripRated, EngagesIn: unit.Of[unit.Length](0.01), ActsIn: unit.Of[unit.Duration](0.05), Torque: unit.Of[unit.Torque](1e5), Independent: unit.Yes}
	late := good
	late.Torque = unit.Of[unit.Torque](1) // of a catch that does not withstand it
	for _, x := range []struct {
		what string
		c    Case
		want string
	}{
		{"good and late", holds(good, late), ""}, {"late and good", holds(late, good), ""}, {"two good", holds(good, good), ""},
		{"two late", holds(late, late), "free_drum no holds.holds[0].torque_nm"},
		{"one late alone", holds(late), ""},
		{"nothing that trips", holds(lift.Hold{Kind: lift.HoldRatchet, OnDrum: unit.Yes}, lift.Hold{Kind: lift.HoldRatchet, OnDrum: unit.Yes}), ""},
	} {
		if got := told(freeDrum(x.c)); got != x.want {
			t.Errorf("%s: %q, want %q", x.what, got, x.want)
		}
	}
	c := holds(late, late)
	c.Hoist.Site.MayFall, c.Hoist.Site.Barrier, c.Hoist.Site.ControlsOutside, c.Hoist.Site.FloorBelow = unit.Yes, lift.BarrierLockedRoom, unit.Yes, lift.FloorSolidGround
	if got := told(freeDrum(c)); got != "" {
		t.Errorf("in a closed place: %q", got)
	}
	// Half of the rope's strength that is left at rest is what it keeps when the mass is caught: one rope of two carries half the pull.
	w := base.Heavy
	w.Hoist.Reeving.RopeParts = unit.Of[unit.Count](1)
	left, ok := path.RopeLeft(w.Hoist, w.Drive)
	if !ok {
		t.Fatal("the rope's strength is not known")
	}
	w.Hoist.Holds.Holds = []lift.Hold{good}
	w.Hoist.Holds.Holds[0].TripsAt = unit.Of[unit.Speed](5)
	for by, want := range map[float64]reason.Word{0.499: reason.Yes, 0.501: reason.No} {
		if got := caught(w, path.Catch{Kind: lift.HoldOverspeedCatch, Holds: true, Pull: unit.Force(by * float64(left))}).Word; got != want {
			t.Errorf("a pull of %g of what the rope withstands: %s", by, got)
		}
	}
}

// A rule of how it moves is asked of the light and of the heavy hoist, with both drops at the brushes, and of both ends of each motor that it
// may be: each of these six decides where it alone differs.
func TestEveryWorkIsAsked(t *testing.T) {
	work := func(name string) Work { return Work{Hoist: lift.Hoist{Name: name}} }
	c := Case{Light: work("light"), Heavy: work("heavy"), High: &[2]Work{work("high light"), work("high heavy")}, usual: [][2]Work{{work("other light"), work("other heavy")}}}
	for _, bad := range []string{"light", "heavy", "high light", "high heavy", "other light", "other heavy"} {
		rs := c.moving(func(w Work) []reason.Reason {
			if w.Hoist.Name == bad {
				return []reason.Reason{no("races", "lower.loads", silent)}
			}
			return nil
		})
		if len(rs) == 0 || rs[0].Word != reason.NotKnown {
			t.Errorf("%s alone races: %v", bad, rs)
		}
	}
	all := c.moving(func(Work) []reason.Reason { return []reason.Reason{no("races", "lower.loads", silent)} })
	if got := told(all); got != "races no lower.loads" {
		t.Errorf("all race: %q", got)
	}
	if rs := c.moving(func(Work) []reason.Reason { return nil }); len(rs) != 0 {
		t.Errorf("none races: %v", rs)
	}
	among := Case{}.Among(Usual{Hub: true, Hoists: []lift.Hoist{{Mass: []lift.Piece{{Mass: unit.Of[unit.Mass](100), Weighed: lift.ByScale}}}}})
	if a, b := among.usual[0][0].Hoist.Mass[0].Mass.Val, among.usual[0][1].Hoist.Mass[0].Mass.Val; a != 98 || b != 102 || !among.hub {
		t.Errorf("100 kg on a scale: %g to %g kg, hub %v", float64(a), float64(b), among.hub)
	}
}

// silent is a sentence that says nothing.
var silent = reason.Reason{}.Say

// With the greatest drop at the brushes the heavy hoist may be the only one that gets too hot.
func TestGreatestDropGetsHot(t *testing.T) {
	c := strong(t)
	c.Hoist.Machine.MaxWinding.Is, c.Hoist.Lower.Ambient.Is = false, false
	cool, warm := c.Heavy, c.Heavy
	cool.Hoist.Machine.RthWinding, warm.Hoist.Machine.RthWinding = unit.Of[unit.ThermalResistance](0.01), unit.Of[unit.ThermalResistance](200)
	cool.Hoist.Machine.MaxWinding.Is, warm.Hoist.Machine.MaxWinding.Is = false, false
	cool.Drive, warm.Drive = lift.Drive{}, lift.Drive{}
	c.Plan, c.Light, c.Heavy = cool, cool, cool
	for _, x := range []struct {
		what string
		high *[2]Work
		want string
	}{{"one drop", nil, ""}, {"cool", &[2]Work{cool, cool}, ""}, {"hot at the heaviest", &[2]Work{cool, warm}, "motor_hot not_known machine.max_winding_c"}, {"hot at the lightest", &[2]Work{warm, cool}, ""}} {
		c.High = x.high
		if got := told(motorUnmarked(c)); got != x.want {
			t.Errorf("%s: %q, want %q", x.what, got, x.want)
		}
	}
	// The same in air of 80 °C, of a winding that is marked.
	for _, w := range []*Work{&cool, &warm} {
		w.Hoist.Machine.MaxWinding = unit.Of[unit.Celsius](130)
	}
	c.Hoist.Machine.MaxWinding = unit.Of[unit.Celsius](130)
	for what, x := range map[string]struct {
		heavy Work
		high  *[2]Work
		want  string
	}{"cool": {cool, nil, ""}, "hot": {warm, nil, "motor_hot not_known lower.ambient_c"}, "cool with both drops": {cool, &[2]Work{cool, cool}, ""}, "hot with the greatest drop": {cool, &[2]Work{cool, warm}, "motor_hot not_known lower.ambient_c"}, "hot with the least drop": {warm, &[2]Work{cool, cool}, "motor_hot not_known lower.ambient_c"}} {
		c.Heavy, c.High = x.heavy, x.high
		if got := told(motorHot(c)); got != x.want {
			t.Errorf("%s: %q, want %q", what, got, x.want)
		}
	}
}

// A frame of which a size is missing is not known however well it is braced; a plan for wind takes the storm off the mass.
func TestFrameOfUnknownSize(t *testing.T) {
	c := strong(t)
	c.Hoist.Site.Earthquake, c.Hoist.Site.Outdoors, c.Hoist.Structure.SidePull = lift.EarthquakesSome, unit.No, unit.Of[unit.Force](1e6)
	if got := told(bracing(c)); got != "" {
		t.Errorf("braced for a million newtons: %q", got)
	}
	c.Heavy.Hoist.Structure.Posts = nil
	if got := told(bracing(c)); got != "bracing not_known structure.posts" {
		t.Errorf("posts not known: %q", got)
	}
	if _, ok := c.sidePull(); ok {
		t.Error("the pull of a test on a frame of unknown posts is known")
	}
	c = strong(t)
	s := path.SidewaysOf(c.Heavy.Hoist, c.Heavy.Drive)
	c.Hoist.Site.Earthquake, c.Hoist.Site.Outdoors = lift.EarthquakesNone, unit.Yes
	with, without := SideForce(s, lift.EarthquakesNone, true, true), SideForce(s, lift.EarthquakesNone, true, false)
	if without <= with {
		t.Fatal("a storm on the mass pushes no harder than a breeze")
	}
	c.Hoist.Structure.SidePull = unit.Of((with + without) / 2)
	for plan, want := range map[unit.Answer]string{unit.Yes: "", unit.No: "bracing no structure.side_pull_n", "": "bracing not_known structure.side_pull_n"} {
		c.Hoist.Site.WindPlan = plan
		if got := told(bracing(c)); got != want {
			t.Errorf("a plan for wind %q: %q, want %q", plan, got, want)
		}
	}
}

// Words that hang on the answer: not known is said as such, and an answer clears it.
func TestWordsOfWhatIsNotKnown(t *testing.T) {
	c := strong(t)
	c.Hoist.Drum.HubMaterial = lift.HubPrinted
	for answer, want := range map[unit.Answer]struct {
		words  string
		clears reason.Clears
	}{"": {"Whether the printed hub is pressed on is not known", reason.Answer}, unit.Yes: {"A printed hub cracks", reason.Change}} {
		c.Hoist.Drum.HubPressed = answer
		if r := hubAndCoupling(c)[0]; !strings.HasPrefix(r.Say.String(), want.words) || r.Clears != want.clears {
			t.Errorf("pressed on %q: %v, %s", answer, r.Say, r.Clears)
		}
	}
	for sets, words := range map[lift.SetBy]string{"": "Whether the brake sets by itself", lift.SetsByHand: "No brake closes by itself"} {
		c.Hoist.Holds.Holds = []lift.Hold{{Kind: lift.HoldSpringBrake, Sets: sets}, {Kind: lift.HoldSpringBrake, Sets: lift.SetsByHand}}
		if r := holdsAuto(c)[0]; !strings.HasPrefix(r.Say.String(), words) {
			t.Errorf("sets %q: %v", sets, r.Say)
		}
	}
	for answer, words := range map[unit.Answer]string{"": "Whether somebody lives below or behind the hoist is not known.", unit.Yes: "Somebody lives below or behind the hoist."} {
		c.Hoist.Site.LivesBelow = answer
		if r := peopleBelow(c)[0]; r.Say.String() != words {
			t.Errorf("lives below %q: %v", answer, r.Say)
		}
	}
	c.Hoist.Machine.I0WithGear = unit.No
	c.Hoist.Train.Stages = []lift.Stage{{IdleTorque: unit.Of[unit.Torque](0)}, {}}
	rs := lifts(c)
	if got := strings.ReplaceAll(rs[len(rs)-1].Say.String(), unit.Space, " "); !strings.Contains(got, "The torque that turns gear stage 2 empty") {
		t.Errorf("the second stage: %s", got)
	}
	for in, want := range map[string]string{"": "", "x": "X", "the rope": "The rope", "aB": "AB", "Rope": "Rope", "2 ropes": "2 ropes", "z": "Z", "a": "A", "{": "{"} {
		if got := capital(in); got != want {
			t.Errorf("%q becomes %q", in, got)
		}
	}
}

// A strength of a material that is not in the table, and a top pulley of a hoist whose pulleys nobody counted, contradict nothing.
func TestNothingToContradict(t *testing.T) {
	h := lift.Hoist{Rope: lift.Rope{Diameter: unit.Of[unit.Length](0.01), BreakingLoad: unit.Of[unit.Force](1e9)}, Drum: lift.Drum{HubAllow: unit.Of[unit.Stress](1e12)},
		Train: lift.Train{Stages: []lift.Stage{{Tooth: lift.Tooth{Strength: unit.Of[unit.Stress](1e12)}}}}, Reeving: lift.Reeving{Sheaves: []lift.Sheave{{OnBase: unit.Yes}}}}
	if got := told(contradictions(Case{Hoist: h})); got != "" {
		t.Errorf("%q", got)
	}
	h.Train.Stages = append(h.Train.Stages, lift.Stage{Tooth: lift.Tooth{Material: lift.ToothPOM, Strength: unit.Of[unit.Stress](1e12)}})
	rs := impossible(h)
	if len(rs) != 1 || rs[0].Path != "train.stages[1].tooth.strength_pa" || !strings.Contains(strings.ReplaceAll(rs[0].Say.String(), unit.Space, " "), "gear stage 2,") {
		t.Errorf("%v", rs)
	}
}
