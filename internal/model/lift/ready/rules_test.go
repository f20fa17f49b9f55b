package ready

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// told is what a rule says: id, word and path of each reason.
func told(rs []reason.Reason) string {
	var out []string
	for _, r := range rs {
		out = append(out, fmt.Sprint(r.ID, " ", r.Word, " ", r.Path))
	}
	return strings.Join(out, "; ")
}

// asking is told by one row of a table: the rule is asked of the hoist that is ready, changed in one answer.
type asking struct {
	what   string
	change func(h *lift.Hoist)
	want   string
}

// ask asks a rule of each row; before all of them, that it says nothing against the hoist that is ready.
func (rows askings) of(t *testing.T, rule func(Case) []reason.Reason) {
	t.Helper()
	ready := strong(t)
	// what the plan leaves open, answered well
	ready.Hoist.Site.CarriesPeople, ready.Hoist.Site.WayDown, ready.Hoist.Site.ComesDown = unit.No, lift.DownHandCrank, "by the crank"
	ready.Hoist.Holds.Holds = slices.Clone(ready.Hoist.Holds.Holds)
	ready.Hoist.Holds.Holds[0].Trips = unit.Yes
	if got := told(rule(ready)); got != "" {
		t.Errorf("the hoist that is ready: %s", got)
	}
	for _, x := range rows {
		c := ready
		c.Hoist.Holds.Holds = slices.Clone(ready.Hoist.Holds.Holds)
		c.Hoist.Structure.Posts = slices.Clone(ready.Hoist.Structure.Posts)
		c.Hoist.Train.Stages = slices.Clone(ready.Hoist.Train.Stages)
		c.Hoist.Lower.Loads = slices.Clone(ready.Hoist.Lower.Loads)
		c.Hoist.Reeving.Sheaves = slices.Clone(ready.Hoist.Reeving.Sheaves)
		x.change(&c.Hoist)
		if got := told(rule(c)); got != x.want {
			t.Errorf("%s: %q, want %q", x.what, got, x.want)
		}
	}
}

type askings []asking

// What is asked about the place, answer by answer, as the rule book has it: a bad answer forbids, none is not known, and what is
// secured in another way counts as good.
func TestPlaceByAnswers(t *testing.T) {
	askings{
		{"carries people", func(h *lift.Hoist) { h.Site.CarriesPeople = unit.Yes }, "people_ride no site.carries_people"},
		{"not said", func(h *lift.Hoist) { h.Site.CarriesPeople = "" }, "people_ride not_known site.carries_people"},
	}.of(t, peopleRide)
	open := func(h *lift.Hoist, b lift.Barrier, a unit.Answer) { h.Site.Barrier, h.Site.Children = b, a }
	askings{
		{"children, nothing between", func(h *lift.Hoist) { open(h, lift.BarrierNone, unit.Yes) }, "people_near no site.children"},
		{"children not said, nothing between", func(h *lift.Hoist) { open(h, lift.BarrierNone, "") }, "people_near not_known site.children"},
		{"no children, nothing between", func(h *lift.Hoist) { open(h, lift.BarrierNone, unit.No) }, ""},
		{"children, barrier not said", func(h *lift.Hoist) { open(h, "", unit.Yes) }, "people_near no site.children"},
		{"children behind a fence", func(h *lift.Hoist) { open(h, lift.BarrierFence, unit.Yes) }, ""},
		{"children before a locked room", func(h *lift.Hoist) { open(h, lift.BarrierLockedRoom, unit.Yes) }, ""},
	}.of(t, peopleNear)
	askings{
		{"somebody lives below", func(h *lift.Hoist) { h.Site.LivesBelow = unit.Yes }, "people_below no site.lives_below"},
		{"not said", func(h *lift.Hoist) { h.Site.LivesBelow = "" }, "people_below not_known site.lives_below"},
	}.of(t, peopleBelow)
	floor := func(h *lift.Hoist, f lift.FloorBelow, a unit.Answer) { h.Site.FloorBelow, h.Site.BelowSecured = f, a }
	askings{
		{"over a cellar", func(h *lift.Hoist) { floor(h, lift.FloorCellar, "") }, "floor_below no site.floor_below"},
		{"over a cellar that nobody secured", func(h *lift.Hoist) { floor(h, lift.FloorCellar, unit.No) }, "floor_below no site.floor_below"},
		{"over a secured cellar", func(h *lift.Hoist) { floor(h, lift.FloorCellar, unit.Yes) }, ""},
		{"not said", func(h *lift.Hoist) { floor(h, "", "") }, "floor_below not_known site.floor_below"},
		{"solid ground", func(h *lift.Hoist) { floor(h, lift.FloorSolidGround, unit.No) }, ""},
	}.of(t, floorBelow)
	askings{
		{"own", func(h *lift.Hoist) { h.Site.Owner = lift.ConsentOwn }, ""},
		{"agreed", func(h *lift.Hoist) { h.Site.Owner = lift.ConsentAgreed }, ""},
		{"not said", func(h *lift.Hoist) { h.Site.Owner = "" }, "owner not_known site.owner"},
	}.of(t, owner)
	askings{
		{"alone", func(h *lift.Hoist) { h.Site.Helper = unit.No }, "helper not_known site.helper"},
		{"not said", func(h *lift.Hoist) { h.Site.Helper = "" }, "helper not_known site.helper"},
	}.of(t, helper)
	start := func(h *lift.Hoist, starts, guard unit.Answer) {
		h.Site.SelfStart, h.Site.SelfStartGuard = starts, guard
	}
	askings{
		{"starts by itself", func(h *lift.Hoist) { start(h, unit.Yes, unit.No) }, "self_start no site.self_start"},
		{"starts by itself, guard not said", func(h *lift.Hoist) { start(h, unit.Yes, "") }, "self_start no site.self_start"},
		{"starts by itself, guarded", func(h *lift.Hoist) { start(h, unit.Yes, unit.Yes) }, ""},
		{"not said", func(h *lift.Hoist) { start(h, "", "") }, "self_start not_known site.self_start"},
		{"never", func(h *lift.Hoist) { start(h, unit.No, "") }, ""},
	}.of(t, selfStart)
	askings{
		{"no way down", func(h *lift.Hoist) { h.Site.WayDown = lift.DownNone }, "way_down not_known site.way_down"},
		{"a way not said", func(h *lift.Hoist) { h.Site.WayDown = "" }, "way_down not_known site.way_down"},
		{"no word of how", func(h *lift.Hoist) { h.Site.ComesDown = "" }, "way_down not_known site.comes_down_without_power"},
	}.of(t, wayDown)
}

// How far everybody keeps away hangs on the height of a frame on posts of its own, and where the circles may be larger on what of
// the mass is not measured.
func TestKeepOutIsKnown(t *testing.T) {
	for _, x := range []struct {
		what    string
		atLeast bool
		change  func(h *lift.Hoist)
		want    string
	}{
		{"all known", false, func(*lift.Hoist) {}, ""},
		{"frame not measured", false, func(h *lift.Hoist) { h.Site.FrameHeight.Is = false }, "site.frame_height_m"},
		{"frame not measured, a building", false, func(h *lift.Hoist) {
			h.Site.FrameHeight.Is, h.Structure.RestsOn = false, lift.RestsOnConcreteOrMasonry
		}, ""},
		{"width not measured", true, func(h *lift.Hoist) { h.Site.LoadWidth.Is = false }, "site.load_width_m"},
		{"height not measured", true, func(h *lift.Hoist) { h.Site.LoadHeight.Is = false }, "site.load_height_m"},
		{"something else", true, func(*lift.Hoist) {}, "site.frame_height_m"},
		{"width not measured, circles known", false, func(h *lift.Hoist) { h.Site.LoadWidth.Is = false }, ""},
	} {
		c := strong(t)
		c.Hazards.AtLeast = x.atLeast
		x.change(&c.Hoist)
		want := ""
		if x.want != "" {
			want = "keep_out not_known " + x.want
		}
		if got := told(keepOut(c)); got != want {
			t.Errorf("%s: %q, want %q", x.what, got, want)
		}
	}
}

// What holds a mass that moves: a brake anywhere, a ratchet or a catch on the drum alone, an arrester; a prop and a pin hold what
// stands. Two are needed, a brake or a ratchet among them, one of them on the drum, two of them without a part in common, and a
// brake that sets by itself.
func TestHoldsByKind(t *testing.T) {
	hold := func(k lift.HoldKind, drum, alone unit.Answer) lift.Hold {
		return lift.Hold{Kind: k, OnDrum: drum, Independent: alone, Sets: lift.SetsPowerOff}
	}
	const brake, ratchet, trip, arrester, prop, pin = lift.HoldSpringBrake, lift.HoldRatchet, lift.HoldOverspeedCatch, lift.HoldLoadArrester, lift.HoldRatedProp, lift.HoldLockingPin
	yes, no := unit.Yes, unit.No
	for _, x := range []struct {
		what                            string
		holds                           []lift.Hold
		count, drum, independent, words string
	}{
		{"none", nil, "no holds.holds", "", "", "No hold is named"},
		{"prop and pin", []lift.Hold{hold(prop, yes, yes), hold(pin, yes, yes)}, "no holds.holds", "", "", "No hold is named"},
		{"one brake", []lift.Hold{hold(brake, yes, yes)}, "no holds.holds", "", "", "Only 1 of the named holds"},
		{"brake and ratchet on the drum", []lift.Hold{hold(brake, yes, yes), hold(ratchet, yes, yes)}, "", "", "", ""},
		{"brake elsewhere, ratchet on the drum", []lift.Hold{hold(brake, no, yes), hold(ratchet, yes, yes)}, "", "", "", ""},
		{"brake and ratchet elsewhere", []lift.Hold{hold(brake, no, yes), hold(ratchet, no, yes)}, "no holds.holds", "", "", "Only 1 of the named holds"},
		{"two brakes elsewhere", []lift.Hold{hold(brake, no, yes), hold(brake, no, yes)}, "", "no holds.holds", "", ""},
		{"brake elsewhere, arrester", []lift.Hold{hold(brake, no, yes), hold(arrester, no, yes)}, "", "no holds.holds", "", ""},
		{"brake on the drum, arrester", []lift.Hold{hold(brake, yes, yes), hold(arrester, "", yes)}, "", "", "", ""},
		{"catch and arrester", []lift.Hold{hold(trip, yes, yes), hold(arrester, no, yes)}, "no holds.holds", "", "", "Neither a brake nor a ratchet"},
		{"brake, ratchet not said where", []lift.Hold{hold(brake, yes, yes), hold(ratchet, "", yes)}, "not_known holds.holds[1].on_drum", "", "not_known holds.holds", "is not known: a ratchet or a catch counts only on the drum"},
		{"brake not said where, arrester", []lift.Hold{hold(brake, "", yes), hold(arrester, no, yes)}, "", "not_known holds.holds[0].on_drum", "", ""},
		{"sharing a part", []lift.Hold{hold(brake, yes, no), hold(ratchet, yes, yes)}, "", "", "no holds.holds[0].independent", "share a part"},
		{"sharing not said", []lift.Hold{hold(brake, yes, yes), hold(ratchet, yes, "")}, "", "", "not_known holds.holds[1].independent", "share a part is not known"},
		{"sharing, beside a prop that shares none", []lift.Hold{hold(prop, yes, yes), hold(brake, yes, no), hold(ratchet, yes, yes)}, "", "", "no holds.holds[1].independent", "share a part"},
		{"three of which two share none", []lift.Hold{hold(brake, yes, no), hold(brake, yes, yes), hold(ratchet, yes, yes)}, "", "", "", ""},
	} {
		c := Case{Hoist: lift.Hoist{Holds: lift.Holds{Holds: x.holds}}}
		for id, y := range map[string]struct {
			rule func(Case) []reason.Reason
			want string
		}{"holds_count": {holdsCount, x.count}, "holds_drum": {holdsDrum, x.drum}, "holds_independent": {holdsIndependent, x.independent}} {
			want := y.want
			if want != "" {
				want = id + " " + want
			}
			if got := told(y.rule(c)); got != want {
				t.Errorf("%s: %q, want %q", x.what, got, want)
			}
		}
		all := fmt.Sprint(holdsCount(c), holdsIndependent(c))
		if x.words != "" && !strings.Contains(strings.ReplaceAll(all, unit.Space, " "), x.words) {
			t.Errorf("%s: no word of %q: %s", x.what, x.words, all)
		}
	}
	for sets, want := range map[lift.SetBy]string{lift.SetsPowerOff: "", lift.SetsLeverReleased: "", "": "holds_auto not_known holds.holds[0].sets", lift.SetsByHand: "holds_auto no holds.holds[0].sets"} {
		a, b := hold(brake, yes, yes), hold(ratchet, yes, yes)
		a.Sets = sets
		if got := told(holdsAuto(Case{Hoist: lift.Hoist{Holds: lift.Holds{Holds: []lift.Hold{a, b}}}})); got != want {
			t.Errorf("a brake that sets %q: %q, want %q", sets, got, want)
		}
	}
	if got := told(holdsAuto(Case{Hoist: lift.Hoist{Holds: lift.Holds{Holds: []lift.Hold{hold(ratchet, yes, yes), hold(ratchet, yes, yes)}}}})); got != "holds_auto no holds.holds" {
		t.Errorf("two ratchets: %q", got)
	}
}

// What catches a drum that turns free: a catch or a brake on the drum that trips by speed, or an arrester; what is not said of it
// is not known.
func TestWhatTrips(t *testing.T) {
	for _, kind := range []lift.HoldKind{lift.HoldOverspeedCatch, lift.HoldSpringBrake} {
		for _, x := range []struct {
			drum, trips unit.Answer
			want        reason.Word
		}{{unit.Yes, unit.Yes, reason.Yes}, {unit.Yes, "", reason.NotKnown}, {"", unit.Yes, reason.NotKnown}, {"", "", reason.NotKnown}, {unit.No, unit.Yes, reason.No}, {unit.Yes, unit.No, reason.No}, {unit.No, "", reason.No}, {"", unit.No, reason.No}} {
			best, worst := trips(lift.Hold{Kind: kind, OnDrum: x.drum, Trips: x.trips})
			if got := reason.Tried(!best, !worst); got != x.want {
				t.Errorf("%s, on the drum %q, trips %q: %s, want %s", kind, x.drum, x.trips, got, x.want)
			}
		}
	}
	for kind, want := range map[lift.HoldKind]bool{lift.HoldLoadArrester: true, lift.HoldRatchet: false, lift.HoldRatedProp: false, lift.HoldLockingPin: false} {
		if best, worst := trips(lift.Hold{Kind: kind, OnDrum: unit.Yes, Trips: unit.Yes}); best != want || worst != want {
			t.Errorf("%s: %v, %v", kind, best, worst)
		}
	}
	askings{
		{"nothing trips", func(h *lift.Hoist) {
			for i := range h.Holds.Holds {
				h.Holds.Holds[i].Trips = unit.No
			}
		}, "overspeed no holds.holds"},
	}.of(t, overspeed)
}

// Each pair of answers that cannot both be true is told, and each half of it alone is not.
func TestAnswersThatContradict(t *testing.T) {
	wood, steel := lift.MemberTimber, lift.MemberSteelTube
	fixed := func(f lift.HangerFixing, k lift.MemberKind) func(h *lift.Hoist) {
		return func(h *lift.Hoist) { h.Structure.HangerFixing, h.Structure.Beam.Kind = f, k }
	}
	rows := askings{
		{"weights that are not fastened and none loose", func(h *lift.Hoist) { h.Base.WeightsFixed, h.Base.LoosePart = unit.No, unit.Of[unit.Mass](0) }, "contradiction not_known base.weights_fixed"},
		{"weights that are not fastened, half a kilogram loose", func(h *lift.Hoist) { h.Base.WeightsFixed, h.Base.LoosePart = unit.No, unit.Of[unit.Mass](0.5) }, ""},
		{"weights that are not fastened, loose not said", func(h *lift.Hoist) { h.Base.WeightsFixed, h.Base.LoosePart = unit.No, unit.Known[unit.Mass]{} }, ""},
		{"weights that are fastened, half a kilogram loose", func(h *lift.Hoist) { h.Base.WeightsFixed, h.Base.LoosePart = unit.Yes, unit.Of[unit.Mass](0.5) }, "contradiction not_known base.weights_fixed"},
		{"weights that are fastened, none loose", func(h *lift.Hoist) { h.Base.WeightsFixed, h.Base.LoosePart = unit.Yes, unit.Of[unit.Mass](0) }, ""},
		{"drive on the beam, rope over a pulley", func(h *lift.Hoist) { h.Base.Where, h.Reeving.LeadSheaves = lift.BaseOnBeam, unit.Of[unit.Count](1) }, "contradiction not_known base.where"},
		{"drive on the beam, no pulley", func(h *lift.Hoist) { h.Base.Where, h.Reeving.LeadSheaves = lift.BaseOnBeam, unit.Of[unit.Count](0) }, ""},
		{"anchored in masonry, a beam of wood", fixed(lift.FixingAnchorInMasonry, wood), "contradiction not_known structure.hanger_fixing"},
		{"anchored in masonry, a round pole", fixed(lift.FixingAnchorInMasonry, lift.MemberRoundPole), "contradiction not_known structure.hanger_fixing"},
		{"anchored in masonry, a beam of steel", fixed(lift.FixingAnchorInMasonry, steel), "contradiction not_known structure.hanger_fixing"},
		{"anchored in masonry, a round tube", fixed(lift.FixingAnchorInMasonry, lift.MemberSteelRoundTube), "contradiction not_known structure.hanger_fixing"},
		{"anchored in masonry", fixed(lift.FixingAnchorInMasonry, lift.MemberNone), ""},
		{"bolted through wood, a tube", fixed(lift.FixingBoltedThroughWood, steel), "contradiction not_known structure.hanger_fixing"},
		{"screwed into wood, a round tube", fixed(lift.FixingScrewedIntoWood, lift.MemberSteelRoundTube), "contradiction not_known structure.hanger_fixing"},
		{"bolted through wood, a beam of wood", fixed(lift.FixingBoltedThroughWood, wood), ""},
		{"round a tube", fixed(lift.FixingRoundTheBeam, steel), ""},
	}
	rows.of(t, func(c Case) []reason.Reason { return standing(c.Hoist) })

	askings{
		{"threaded into wood", fixed(lift.FixingThreadedIntoMetal, wood), "contradiction not_known structure.hanger_fixing"},
		{"threaded into a round pole", fixed(lift.FixingThreadedIntoMetal, lift.MemberRoundPole), "contradiction not_known structure.hanger_fixing"},
		{"a fixed hook pulled by 6° from the side", func(h *lift.Hoist) {
			h.Structure.HangerFixing, h.Structure.HangerKind, h.Structure.HangerAngle = lift.FixingBoltedThroughWood, lift.HangerHook, unit.Of(6*unit.Degree)
		}, "contradiction not_known structure.hanger_angle_rad"},
		{"a fixed hook pulled by 4°", func(h *lift.Hoist) {
			h.Structure.HangerFixing, h.Structure.HangerKind, h.Structure.HangerAngle = lift.FixingBoltedThroughWood, lift.HangerHook, unit.Of(4*unit.Degree)
		}, ""},
		{"a hook that turns, pulled by 6°", func(h *lift.Hoist) {
			h.Structure.HangerFixing, h.Structure.HangerKind, h.Structure.HangerAngle = lift.FixingRoundTheBeam, lift.HangerHook, unit.Of(6*unit.Degree)
		}, ""},
		{"a hook of which nobody said how it is fixed", func(h *lift.Hoist) {
			h.Structure.HangerFixing, h.Structure.HangerKind, h.Structure.HangerAngle = "", lift.HangerHook, unit.Of(6*unit.Degree)
		}, ""},
		{"ends of wood that are fixed", func(h *lift.Hoist) { h.Structure.Beam.Kind, h.Structure.Beam.Support = wood, lift.BeamBothEndsFixed }, "contradiction not_known structure.beam.support"},
		{"ends of wood that are fixed, in a building", func(h *lift.Hoist) {
			h.Structure.Beam.Kind, h.Structure.Beam.Support, h.Structure.RestsOn = wood, lift.BeamBothEndsFixed, lift.RestsOnConcreteOrMasonry
		}, ""},
		{"a beam of a tenth of its weight", func(h *lift.Hoist) { h.Structure.Beam.OwnMass = unit.Of[unit.Mass](0.1) }, "contradiction not_known structure.beam.own_mass_kg"},
		{"a beam of a hundred kilograms", func(h *lift.Hoist) { h.Structure.Beam.OwnMass = unit.Of[unit.Mass](100) }, ""},
		{"the top pulley on the base", func(h *lift.Hoist) {
			h.Reeving.LeadSheaves, h.Reeving.Sheaves = unit.Of[unit.Count](1), []lift.Sheave{{OnBase: unit.Yes}}
		}, "contradiction not_known reeving.sheaves[0].on_base"},
		{"the first of two pulleys on the base", func(h *lift.Hoist) {
			h.Reeving.LeadSheaves, h.Reeving.Sheaves = unit.Of[unit.Count](2), []lift.Sheave{{OnBase: unit.Yes}, {}}
		}, ""},
		{"a frame of 2 m with its posts", func(h *lift.Hoist) { h.Site.FrameHeight = unit.Of[unit.Length](2) }, "contradiction not_known site.frame_height_m"},
		{"a building of 2 m with such posts", func(h *lift.Hoist) {
			h.Site.FrameHeight, h.Structure.RestsOn = unit.Of[unit.Length](2), lift.RestsOnConcreteOrMasonry
		}, ""},
	}.of(t, frames)

	askings{
		{"a brake of 9 ms", func(h *lift.Hoist) { h.Holds.BrakeDelay = unit.Of[unit.Duration](0.009) }, "contradiction not_known holds.brake_delay_s"},
		{"a brake of 10 ms", func(h *lift.Hoist) { h.Holds.BrakeDelay = unit.Of[unit.Duration](0.010) }, ""},
		{"a brake of which nobody knows", func(h *lift.Hoist) { h.Holds.BrakeDelay.Is = false }, ""},
		{"a catch of 9 ms", func(h *lift.Hoist) { h.Holds.Holds[1].ActsIn = unit.Of[unit.Duration](0.009) }, "contradiction not_known holds.holds[1].acts_in_s"},
		{"a catch of 10 ms", func(h *lift.Hoist) { h.Holds.Holds[1].ActsIn = unit.Of[unit.Duration](0.010) }, ""},
		{"a catch of 0.9 mm", func(h *lift.Hoist) { h.Holds.Holds[0].EngagesIn = unit.Of[unit.Length](0.0009) }, "contradiction not_known holds.holds[0].engages_in_m"},
		{"a catch of a millimetre", func(h *lift.Hoist) { h.Holds.Holds[0].EngagesIn = unit.Of[unit.Length](0.001) }, ""},
		{"a catch of which nobody knows", func(h *lift.Hoist) {
			h.Holds.Holds[0].EngagesIn, h.Holds.Holds[0].ActsIn = unit.Known[unit.Length]{}, unit.Known[unit.Duration]{}
		}, ""},
		{"slows with 1.31 of what it holds", func(h *lift.Hoist) {
			h.Holds.Holds[0].Torque, h.Holds.Holds[0].Stopping = unit.Of[unit.Torque](100), unit.Of[unit.Torque](131)
		}, "contradiction not_known holds.holds[0].stopping_torque_nm"},
		{"slows with 1.29 of what it holds", func(h *lift.Hoist) {
			h.Holds.Holds[0].Torque, h.Holds.Holds[0].Stopping = unit.Of[unit.Torque](100), unit.Of[unit.Torque](129)
		}, ""},
		{"slows, holds not known", func(h *lift.Hoist) {
			h.Holds.Holds[0].Torque, h.Holds.Holds[0].Stopping = unit.Known[unit.Torque]{}, unit.Of[unit.Torque](129)
		}, ""},
	}.of(t, func(c Case) []reason.Reason { return instant(c.Hoist) })

	askings{
		{"a rotor of no inertia", func(h *lift.Hoist) { h.Machine.J = unit.Of[unit.Inertia](0) }, "contradiction not_known machine.j_kg_m2"},
		{"a rotor of which nobody knows", func(h *lift.Hoist) { h.Machine.J.Is = false }, ""},
	}.of(t, rotor)

	askings{
		{"rope indoors, hoist outdoors", func(h *lift.Hoist) { h.Rope.Outdoors, h.Site.Outdoors = unit.No, unit.Yes }, "contradiction not_known rope.outdoors"},
		{"both outdoors", func(h *lift.Hoist) { h.Rope.Outdoors, h.Site.Outdoors = unit.Yes, unit.Yes }, ""},
		{"rope outdoors, hoist indoors", func(h *lift.Hoist) { h.Rope.Outdoors, h.Site.Outdoors = unit.Yes, unit.No }, ""},
		{"both indoors", func(h *lift.Hoist) { h.Rope.Outdoors, h.Site.Outdoors = unit.No, unit.No }, ""},
		{"a base that grips better than is published", func(h *lift.Hoist) {
			h.Base.Ground, h.Base.Underside, h.Base.Friction = lift.GroundConcreteSlab, lift.UndersideTimber, unit.Of[unit.Ratio](0.99)
		}, "contradiction not_known base.friction"},
		{"a base that grips worse", func(h *lift.Hoist) {
			h.Base.Ground, h.Base.Underside, h.Base.Friction = lift.GroundConcreteSlab, lift.UndersideTimber, unit.Of[unit.Ratio](0.1)
		}, ""},
		{"a base of which nobody knows", func(h *lift.Hoist) {
			h.Base.Ground, h.Base.Underside, h.Base.Friction.Is = lift.GroundConcreteSlab, lift.UndersideTimber, false
		}, ""},
		{"a grip of a base that nobody described", func(h *lift.Hoist) {
			h.Base.Ground, h.Base.Underside, h.Base.Friction = lift.GroundConcreteSlab, "", unit.Of[unit.Ratio](0.99)
		}, ""},
	}.of(t, contradictions)
}

// The greatest strengths of materials and ropes, from memory: hardened steel 2,500 MPa, brass 900, cast iron 1,600, POM 150, nylon
// 250, printed 120, aluminium 750, wood 200; polyester 300 N/mm² of d², nylon 350, polypropylene 220, HMPE and other fibre 1,600,
// wire 1,000. A part at it is believed, one above it is not.
func TestStrengthOfMaterials(t *testing.T) {
	believed := func(h lift.Hoist) bool { return len(impossible(h)) == 0 }
	for material, mpa := range map[lift.ToothMaterial]float64{lift.ToothSteel: 2500, lift.ToothBrass: 900, lift.ToothCastIron: 1600, lift.ToothPOM: 150, lift.ToothNylon: 250, lift.ToothPrinted: 120} {
		for by, want := range map[float64]bool{1: true, 1.001: false} {
			h := lift.Hoist{Train: lift.Train{Stages: []lift.Stage{{Tooth: lift.Tooth{Material: material, Strength: unit.Of(unit.Stress(by * mpa * 1e6))}}}}}
			if believed(h) != want {
				t.Errorf("teeth of %s of %g MPa believed: %v", material, by*mpa, !want)
			}
		}
	}
	for material, mpa := range map[lift.HubMaterial]float64{lift.HubAluminium: 750, lift.HubWood: 200} {
		for by, want := range map[float64]bool{1: true, 1.001: false} {
			if h := (lift.Hoist{Drum: lift.Drum{HubMaterial: material, HubAllow: unit.Of(unit.Stress(by * mpa * 1e6))}}); believed(h) != want {
				t.Errorf("a hub of %s of %g MPa believed: %v", material, by*mpa, !want)
			}
		}
	}
	for kind, mpa := range map[lift.RopeKind]float64{lift.RopePolyester: 300, lift.RopeNylon: 350, lift.RopePolypropylene: 220, lift.RopeHMPE: 1600, lift.RopeOtherFibre: 1600, lift.RopeWire: 1000} {
		for by, want := range map[float64]bool{0.999: true, 1.001: false} {
			if h := (lift.Hoist{Rope: lift.Rope{Kind: kind, Diameter: unit.Of[unit.Length](0.008), BreakingLoad: unit.Of(unit.Force(by * mpa * 64))}}); believed(h) != want {
				t.Errorf("a rope of %s of 8 mm that breaks at %g N believed: %v", kind, by*mpa*64, !want)
			}
		}
	}
}

// What the drive does with the mass, on its way up and down, one word for each.
func TestHowItMoves(t *testing.T) {
	good := lift.Drive{}
	good.Raising.Known, good.Raising.Starts = true, true
	good.Lowering.Known, good.Lowering.Steady, good.Lowering.RunsBack = true, true, lift.DownYes
	for _, x := range []struct {
		what   string
		change func(d *lift.Drive)
		want   string
	}{
		{"lifts and comes down", func(*lift.Drive) {}, ""},
		{"not known up", func(d *lift.Drive) { d.Raising.Known = false }, "lift_stalls not_known raise.voltage_v"},
		{"stalls", func(d *lift.Drive) { d.Raising.Stalls = true }, "lift_stalls no raise.voltage_v"},
		{"does not start", func(d *lift.Drive) { d.Raising.Starts = false }, "lift_stalls no raise.voltage_v"},
		{"stalls without the gearbox of its label", func(d *lift.Drive) { d.Raising.Stalls, d.Raising.Gearless = true, true }, ""},
		{"not known down", func(d *lift.Drive) { d.Lowering.Known = false }, "stays_up not_known lower.loads"},
		{"stays up", func(d *lift.Drive) { d.Lowering.RunsBack = lift.DownNo }, "stays_up no train.stages"},
		{"races", func(d *lift.Drive) { d.Lowering.Steady = false }, "races no lower.loads"},
		{"travel too short", func(d *lift.Drive) { d.Lowering.Short = true }, "races no lower.loads"},
		{"needs a push", func(d *lift.Drive) { d.Lowering.RunsBack = lift.DownNudge }, "needs_push not_known train.stages"},
		{"races and needs a push", func(d *lift.Drive) { d.Lowering.RunsBack, d.Lowering.Steady = lift.DownNudge, false }, "races no lower.loads"},
	} {
		d := good
		x.change(&d)
		if got := told(moves(Work{Drive: d})); got != x.want {
			t.Errorf("%s: %q, want %q", x.what, got, x.want)
		}
	}
	askings{
		{"no feed", func(h *lift.Hoist) { h.Raise.Feed = "" }, "lift_stalls not_known raise.feed"},
		{"idle torque not known", func(h *lift.Hoist) {
			h.Machine.I0WithGear = unit.No
			h.Train.Stages[0].IdleTorque.Is = false
		}, "stays_up not_known train.stages[0].idle_torque_nm"},
		{"idle torque in the current without load", func(h *lift.Hoist) {
			h.Machine.I0WithGear = unit.Yes
			h.Train.Stages[0].IdleTorque.Is = false
		}, ""},
	}.of(t, lifts)
}

// What hangs on the motor: a load without a rating, a coil without power, nothing that is wired for good.
func TestWhatHangsOnTheMotor(t *testing.T) {
	askings{
		{"first load not rated", func(h *lift.Hoist) { h.Lower.Loads[0].MaxCurrent.Is = false }, "load_unknown not_known lower.loads[0].rated_current_a"},
	}.of(t, loadUnknown)
	c := strong(t)
	c.Hoist.Lower.Loads = []lift.DCLoad{{MaxCurrent: unit.Of[unit.Current](1)}, {}}
	if got := strings.ReplaceAll(fmt.Sprint(loadUnknown(c)), unit.Space, " "); !strings.Contains(got, "What current load 2 withstands") {
		t.Errorf("the second load is not rated: %s", got)
	}
	askings{
		{"thermal resistance not known", func(h *lift.Hoist) { h.Machine.RthWinding.Is = false }, "motor_unknown not_known machine.rth_winding_k_w"},
		{"time constant not known", func(h *lift.Hoist) { h.Machine.TauWinding.Is = false }, "motor_unknown not_known machine.tau_winding_s"},
		{"both not known", func(h *lift.Hoist) { h.Machine.RthWinding.Is, h.Machine.TauWinding.Is = false, false }, "motor_unknown not_known machine.rth_winding_k_w"},
		{"speed not known", func(h *lift.Hoist) { h.Machine.MaxSpeed.Is, h.Machine.SheetSpeed.Is = false, false }, "motor_unknown not_known machine.max_speed_rad_s"},
	}.of(t, motorUnknown)
	coil := func(release lift.BrakeRelease, up, down float64, kind lift.HoldKind) func(h *lift.Hoist) {
		return func(h *lift.Hoist) {
			h.Holds.BrakeRelease = release
			h.Raise.Auxiliary, h.Lower.Auxiliary = unit.Of(unit.Power(up)), unit.Of(unit.Power(down))
			h.Holds.Holds = []lift.Hold{{Kind: kind}, {Kind: lift.HoldRatchet}}
		}
	}
	askings{
		{"coil of no power", coil(lift.ReleaseCoil, 0, 0, lift.HoldSpringBrake), "brake_power not_known raise.auxiliary_w"},
		{"coil of no power going up", coil(lift.ReleaseCoil, 0, 5, lift.HoldSpringBrake), "brake_power not_known raise.auxiliary_w"},
		{"coil of no power coming down", coil(lift.ReleaseCoil, 5, 0, lift.HoldSpringBrake), "brake_power not_known lower.auxiliary_w"},
		{"not said what opens it", coil("", 0, 0, lift.HoldSpringBrake), "brake_power not_known raise.auxiliary_w"},
		{"coil of power", coil(lift.ReleaseCoil, 5, 0.5, lift.HoldSpringBrake), ""},
		{"opened by hand", coil(lift.ReleaseHeldByHand, 0, 0, lift.HoldSpringBrake), ""},
		{"no brake", coil(lift.ReleaseCoil, 0, 0, lift.HoldLoadArrester), ""},
	}.of(t, brakePower)
	loads := func(ls ...lift.DCLoad) func(h *lift.Hoist) { return func(h *lift.Hoist) { h.Lower.Loads = ls } }
	row := lift.DCLoad{Kind: lift.LoadString, Permanent: unit.Yes}
	for _, kind := range []lift.LoadKind{lift.LoadResistor, lift.LoadClamp} {
		askings{
			{"for good", loads(row, lift.DCLoad{Kind: kind, Permanent: unit.Yes}), ""},
			{"by a plug", loads(row, lift.DCLoad{Kind: kind, Permanent: unit.No}), "shunt no lower.loads"},
			{"not said how", loads(row, lift.DCLoad{Kind: kind}), "shunt not_known lower.loads[1].permanent"},
			{"one by a plug, one for good", loads(lift.DCLoad{Kind: kind, Permanent: unit.No}, lift.DCLoad{Kind: kind, Permanent: unit.Yes}), ""},
			{"lamps for good", loads(row), "shunt no lower.loads"},
		}.of(t, shunt)
	}
}

// A printed hub cracks when it is pressed on; a printed coupling slips.
func TestPrintedHubAndCoupling(t *testing.T) {
	askings{
		{"printed, pressed on", func(h *lift.Hoist) { h.Drum.HubMaterial, h.Drum.HubPressed = lift.HubPrinted, unit.Yes }, "drum_hub no drum.hub_pressed"},
		{"printed, not said", func(h *lift.Hoist) { h.Drum.HubMaterial, h.Drum.HubPressed = lift.HubPrinted, "" }, "drum_hub not_known drum.hub_pressed"},
		{"printed, not pressed", func(h *lift.Hoist) { h.Drum.HubMaterial, h.Drum.HubPressed = lift.HubPrinted, unit.No }, ""},
		{"aluminium, pressed on", func(h *lift.Hoist) { h.Drum.HubMaterial, h.Drum.HubPressed = lift.HubAluminium, unit.Yes }, ""},
		{"a printed coupling", func(h *lift.Hoist) { h.Drum.Coupling, h.Drum.CouplingMade = lift.CouplingYes, lift.CouplingPrinted }, "coupling not_known drum.coupling_made_of"},
		{"no coupling", func(h *lift.Hoist) { h.Drum.Coupling, h.Drum.CouplingMade = lift.CouplingNone, lift.CouplingPrinted }, ""},
		{"a coupling of metal", func(h *lift.Hoist) { h.Drum.Coupling, h.Drum.CouplingMade = lift.CouplingYes, lift.CouplingMetal }, ""},
	}.of(t, hubAndCoupling)
}

// What a trial showed counts: a mass that stayed up although it was as heavy as this one may be, or lighter.
func TestWhatATrialShowed(t *testing.T) {
	c := strong(t)
	least := c.Light.Drive.Mass.Val // 117.6 kg
	for _, x := range []struct {
		what        string
		push, alone unit.Known[unit.Mass]
		want        string
	}{
		{"nothing tried", unit.Known[unit.Mass]{}, unit.Known[unit.Mass]{}, ""},
		{"stayed alone, lighter", unit.Known[unit.Mass]{}, unit.Of(least - 1), ""},
		{"stayed alone, as heavy", unit.Known[unit.Mass]{}, unit.Of(least), "needs_push not_known trials.least.alone_stays_kg"},
		{"stayed although pushed, as heavy", unit.Of(least), unit.Known[unit.Mass]{}, "stays_up not_known trials.least.push_stays_kg"},
		{"stayed although pushed, lighter", unit.Of(least - 1), unit.Known[unit.Mass]{}, ""},
	} {
		c.Hoist.Trials.Least.PushStays, c.Hoist.Trials.Least.AloneStays = x.push, x.alone
		if got := told(stayed(c)); got != x.want {
			t.Errorf("%s: %q, want %q", x.what, got, x.want)
		}
	}
	c.Light.Drive.Mass.Is = false
	c.Hoist.Trials.Least = lift.LeastTrial{AloneStays: unit.Of[unit.Mass](1e6), PushStays: unit.Of[unit.Mass](1e6)}
	if got := told(stayed(c)); got != "" {
		t.Errorf("a mass that nobody knows: %q", got)
	}
}

// What pushes a frame sideways, by hand: 300 kg hung, 40 kg of beam and half of 60 kg of posts shake with 0.2 or 0.4 of 3628.5 N; a
// storm of 35 m/s pushes with ½·1.225·35²·1.3 = 975.4 Pa on 2 m² of beam and half of 1 m² of posts, and on 0.5 m² of mass, where
// there is a plan for wind with 179.2 Pa of 15 m/s. The larger counts, beside the rope's own 100 N.
func TestPushOnAFrame(t *testing.T) {
	s := path.Sideways{Rope: 100, Hung: 300, Beam: 40, Posts: 60, BeamArea: 2, PostArea: 1, LoadArea: 0.5}
	for _, x := range []struct {
		quake          lift.Earthquakes
		outdoors, plan bool
		want           float64
	}{
		{lift.EarthquakesNone, false, false, 100}, {lift.EarthquakesSome, false, false, 100 + 0.2*370*9.80665}, {lift.EarthquakesStrong, false, true, 100 + 0.4*370*9.80665},
		{lift.EarthquakesNone, true, false, 100 + 975.40625*3}, {lift.EarthquakesNone, true, true, 100 + 975.40625*2.5 + 179.15625*0.5}, {lift.EarthquakesStrong, true, false, 100 + 975.40625*3},
	} {
		if got := float64(SideForce(s, x.quake, x.outdoors, x.plan)); got < x.want-0.01 || got > x.want+0.01 {
			t.Errorf("%s, outdoors %v, plan %v: %g N, want %g", x.quake, x.outdoors, x.plan, got, x.want)
		}
	}
}

// A frame braced for more than what pushes it is good, for less is not; what is not known is tried at both ends. Indoors and without
// earthquakes nothing but the rope pushes, and that is a line of the load path.
func TestFrameIsBraced(t *testing.T) {
	c := strong(t)
	s := path.SidewaysOf(c.Heavy.Hoist, c.Heavy.Drive)
	at := func(quake lift.Earthquakes, outdoors bool) unit.Force { return SideForce(s, quake, outdoors, false) }
	pull := func(f unit.Force) unit.Known[unit.Force] { return unit.Of(f) }
	some, storm := at(lift.EarthquakesSome, false), at(lift.EarthquakesNone, true)
	for _, x := range []struct {
		what     string
		quake    lift.Earthquakes
		outdoors unit.Answer
		pull     unit.Known[unit.Force]
		want     string
	}{
		{"enough for an earthquake", lift.EarthquakesSome, unit.No, pull(some + 1), ""},
		{"too little for an earthquake", lift.EarthquakesSome, unit.No, pull(some - 1), "bracing no structure.side_pull_n"},
		{"enough for a storm", lift.EarthquakesNone, unit.Yes, pull(storm + 1), ""},
		{"too little for a storm", lift.EarthquakesNone, unit.Yes, pull(at(lift.EarthquakesNone, false)), "bracing no structure.side_pull_n"},
		{"not measured, an earthquake", lift.EarthquakesSome, unit.No, unit.Known[unit.Force]{}, "bracing not_known structure.side_pull_n"},
		{"not measured, nothing pushes", lift.EarthquakesNone, unit.No, unit.Known[unit.Force]{}, ""},
		{"earthquakes not said", "", unit.No, pull(some), "bracing not_known site.earthquake"},
		{"earthquakes not said, enough for a strong one", "", unit.No, pull(at(lift.EarthquakesStrong, false) + 1), ""},
		{"outdoors not said", lift.EarthquakesNone, "", pull(at(lift.EarthquakesNone, false)), "bracing not_known site.outdoors"},
	} {
		c.Hoist.Site.Earthquake, c.Hoist.Site.Outdoors, c.Hoist.Site.WindPlan, c.Hoist.Structure.SidePull = x.quake, x.outdoors, unit.No, x.pull
		if got := told(bracing(c)); got != x.want {
			t.Errorf("%s: %q, want %q", x.what, got, x.want)
		}
	}
	c.Hoist.Structure.RestsOn, c.Hoist.Structure.SidePull = lift.RestsOnConcreteOrMasonry, pull(0)
	if got := told(bracing(c)); got != "" {
		t.Errorf("a building: %q", got)
	}
}
