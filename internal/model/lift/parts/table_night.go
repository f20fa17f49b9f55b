package parts

import (
	"cmp"
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// The parts of the night, of the holds and of the place.

// loadFirst are the inputs of one load on the motor's wires that its kind needs.
func loadFirst(at string, l lift.DCLoad) []string {
	first := under(at, "kind", "name", "rated_current_a")
	switch l.Kind {
	case lift.LoadString, lift.LoadClamp:
		return append(first, under(at, "threshold_v", "slope_ohm")...)
	case lift.LoadResistor:
		return append(first, at+".resistance_ohm")
	case lift.LoadConstantPower:
		return append(first, at+".power_w")
	}
	return first
}

// lampsPart is what the motor feeds on its way down. A load that is wired for good belongs to the clamp.
func lampsPart(h lift.Hoist) Part {
	var first []string
	for i, l := range h.Lower.Loads {
		if l.Permanent != unit.Yes {
			first = append(first, loadFirst(row("lower.loads", i), l)...)
		}
	}
	if len(first) == 0 {
		first = under(row("lower.loads", len(h.Lower.Loads)), "kind")
	}
	return single("lamps", "Lamps", "Which lamps does it feed?", Circuit, []string{"lower"}, first)
}

func clampPart(h lift.Hoist) Part {
	p := single("clamp", "Clamp", "What always stays on the motor?", Circuit, []string{"lower.shunt"}, []string{"lower.shunt"})
	for i, l := range h.Lower.Loads {
		if l.Permanent == unit.Yes {
			at := row("lower.loads", i)
			p.Owns, p.First = append(p.Owns, at), append(p.First, loadFirst(at, l)...)
		}
	}
	return p
}

func holdPart(h lift.Hoist, i int) Part {
	at := row("holds.holds", i)
	var hold lift.Hold
	if i < len(h.Holds.Holds) {
		hold = h.Holds.Holds[i]
	}
	p := Part{fmt.Sprintf("hold-%d", i+1), fmt.Sprintf("Hold %d", i+1), "What holds the mass without power?", Drive, []string{at}, under(at, "kind", "independent"), i}
	p.Name = cmp.Or(holdNames[hold.Kind], p.Name)
	switch hold.Kind {
	case lift.HoldSpringBrake:
		p.First = append(p.First, under(at, "on_drum", "torque_nm", "sets", "trips")...)
	case lift.HoldOverspeedCatch:
		p.First = append(p.First, under(at, "on_drum", "torque_nm", "trips_at_m_s", "engages_in_m", "trip_how")...)
	case lift.HoldLoadArrester:
		p.First = append(p.First, under(at, "force_n", "trips_at_m_s", "engages_in_m")...)
	case lift.HoldRatchet:
		p.First = append(p.First, under(at, "on_drum", "torque_nm")...)
	case lift.HoldRatedProp, lift.HoldLockingPin:
		p.First = append(p.First, at+".force_n")
	}
	if i == 0 {
		p.Owns = append(p.Owns, "holds")
		if hold.Kind == lift.HoldSpringBrake {
			p.First = append(p.First, "holds.brake_release")
		}
	}
	return p
}

// holdNames call a hold by what it is.
var holdNames = map[lift.HoldKind]string{
	lift.HoldSpringBrake: "Brake", lift.HoldRatchet: "Ratchet", lift.HoldRatedProp: "Prop", lift.HoldLockingPin: "Locking pin",
	lift.HoldOverspeedCatch: "Catch", lift.HoldLoadArrester: "Load arrester",
}

func stopPart(i int) Part {
	at := row("holds.upper_stops", i)
	p := Part{fmt.Sprintf("stop-%d", i+1), fmt.Sprintf("Upper stop %d", i+1), "Stops at the top?", Side, []string{at}, under(at, "kind", "own_path"), i}
	if i == 0 {
		p.Owns = append(p.Owns, "holds.upper_stops", "holds.room_above_m")
		p.First = append(p.First, "holds.room_above_m")
	}
	return p
}

func slackPart() Part {
	return single("slack", "Slack switch", "Does a switch stop the drum when the rope goes slack?", Side, []string{"holds.slack_switch"}, []string{"holds.slack_switch"})
}

// roundFirst are the questions about the place, in the order in which they are asked.
var roundFirst = under("site", "barrier", "may_fall", "children", "lives_below", "floor_below", "below_secured", "owner", "helper", "self_start", "self_start_guard", "way_down", "carries_people", "outdoors", "earthquake")

// mostRound is how many questions its card shows at once; our own judgement.
const mostRound = 5

// roundPart asks the first few questions that have no answer.
func roundPart(h lift.Hoist) Part {
	s := h.Site
	open := map[string]bool{
		"site.barrier": s.Barrier == "", "site.may_fall": s.MayFall == "", "site.children": s.Children == "", "site.lives_below": s.LivesBelow == "",
		"site.floor_below": s.FloorBelow == "", "site.below_secured": s.BelowSecured == "" && s.FloorBelow != lift.FloorSolidGround, "site.owner": s.Owner == "",
		"site.helper": s.Helper == "", "site.self_start": s.SelfStart == "", "site.self_start_guard": s.SelfStartGuard == "" && s.SelfStart == unit.Yes,
		"site.way_down": s.WayDown == "", "site.carries_people": s.CarriesPeople == "", "site.outdoors": s.Outdoors == "", "site.earthquake": s.Earthquake == "",
	}
	var first []string
	for _, path := range roundFirst {
		if open[path] && len(first) < mostRound {
			first = append(first, path)
		}
	}
	if len(first) == 0 {
		first = roundFirst[:mostRound]
	}
	return single("round", "Around the hoist", "Who can come near, and what is below?", Around, []string{"site"}, first)
}
