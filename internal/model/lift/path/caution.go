package path

import (
	"duskweight/internal/model/lift"
)

// Caution is one short sentence for the page and the sheet.
type Caution struct {
	Group string // "mechanical", "structure", "electrical", "cells"
	Say   string
	Sheet bool // short and heavy enough for the printed sheet
}

// cautionRule is a caution and when it is said; a nil rule is always said.
type cautionRule struct {
	Caution
	when func(h lift.Hoist, d lift.Drive) bool
}

// cautions are the sentences that fit this design. What is not known counts as the worse answer.
func cautions(h lift.Hoist, d lift.Drive) []Caution {
	var out []Caution
	for _, rules := range [][]cautionRule{mechanicalRules(), structureRules(), electricalRules(), cellRules()} {
		for _, r := range rules {
			if r.when == nil || r.when(h, d) {
				out = append(out, r.Caution)
			}
		}
	}
	return out
}

func mechanicalRules() []cautionRule {
	say := func(s string) Caution { return Caution{"mechanical", s, false} }
	sheet := func(s string) Caution { return Caution{"mechanical", s, true} }
	return []cautionRule{
		{sheet("Not for persons. Nobody rides on it, climbs on it or stands under it."), nil},
		{sheet("Two holds, one of them on the drum, each for 125 % of the mass; tested every month. Motor, gears, joined wires and lamps hold nothing."), nil},
		{sheet("Prop before hands: the mass stands on the ground or on a rated prop before anyone touches drive, rope or brake."), nil},
		{sheet("First lifts: 100 mm over a soft landing, then 25 to 125 % in steps, outside the keep-out, with a phone and a second person."), nil},
		{sheet("After any fall or shock every part of the load path is unknown until it was looked at."), nil},
		{say("It starts by itself at sunrise: no automatic restart, a switch-off at the site that locks, a warning before it moves. A stop button within reach sets the brake."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Site.SelfStart != "no" }},
		{say("Children and animals: fence it or lock the room. No rope end or mass to climb. Lowered and locked when nobody is there."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Site.Children != "no" }},
		{say("Hands are caught where rope meets drum, pulley and gear: guards there, and no gloves or sleeves near them while it moves."), nil},
		{say("A thermal cut-out must set the brake, not just open the wires: whatever opens lets the mass go."), nil},
		{say("Past empty the drum winds backwards and lifts again. Leave three turns on, and a slack switch that stops it."), nil},
		{say("Keepers on every pulley, so that a slack rope cannot jump off."), nil},
		{say("A free mass swings: tag lines or guides."), nil},
		{say("Working at height hurts most people. A ladder is a way up, not a place to work. Use a platform with rails above 2 m; a helper; tools on cords; nobody below."), nil},
		{say("The new hoist does not lift its own beam. Overhead lines stay far away."), nil},
		{say("A piece is heavier than 25 kg: two people, or split it."), heavyPiece},
		{say("How it comes down with dead power, a stuck brake or a jammed rope is not known: plan it before the first lift."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Site.ComesDown == "" }},
		{say("Write the date on the rope. Retire it after any shock, heat, glaze or cut. A knot that is tied again is a new knot."), nil},
		{say("This rope creeps under a load that hangs all day and melts on a hot drum: mark it, and look at the stop marks every week."),
			func(h lift.Hoist, _ lift.Drive) bool {
				return h.Rope.Kind == "polypropylene" || h.Rope.Kind == "hmpe" || h.Rope.Kind == ""
			}},
		{say("Wire rope is retired at six broken wires in one lay, three in one strand, or a third of a wire worn away."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Rope.Kind == "wire" }},
		{say("A bag lasts 12 months in the sun. Its four loops hang on a spreader, and its drain stays open: rain is extra load."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Container.Kind == "bag" }},
		{say("No open water as mass."), nil},
		{say("Tighten the bolts after 10 and after 100 lifts. Look for rust and for gnawed rope."), nil},
		{say("Printed parts: never the only thing that holds the mass, never near a hot motor (PLA softens at 50 °C)."), printed},
		{say("There is no switch that stops the drum when the rope goes slack. A mass caught by a slack rope pulls at least twice its weight."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Holds.SlackSwitch != "yes" }},
	}
}

func heavyPiece(h lift.Hoist, _ lift.Drive) bool {
	for _, p := range h.Mass {
		if !p.Mass.Is || p.Mass.Val > 25 {
			return true
		}
	}
	return false
}

func printed(h lift.Hoist, _ lift.Drive) bool {
	for _, s := range h.Train.Stages {
		if s.Tooth.Material == "printed" {
			return true
		}
	}
	return h.Drum.HubMaterial == "printed"
}

func structureRules() []cautionRule {
	say := func(s string) Caution { return Caution{"structure", s, false} }
	sheet := func(s string) Caution { return Caution{"structure", s, true} }
	return []cautionRule{
		{sheet("More than 100 kg hang on a building all the time: ask an engineer first."), heavyOnBuilding},
		{say("Trusses, joists, trees, balconies, brick and chimneys are not made for it."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Structure.RestsOn != "own_posts_on_ground" }},
		{say("Neighbours, tenancy, permit and insurance come before the first hole."), nil},
		{say("Earthquake: sideways 0.1 of the weight on frame and mass at least, 0.4 where they are strong (from memory; the local code decides). The mass swings out of its keep-out."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Site.Earthquake != "none" }},
		{say("Wind: in a storm of 35 m/s a square metre of mass feels about 1 kN. Lower it in gales; snow and ice sit on pulleys; lightning looks for a mast."), outdoors},
		{say("Cellar, pipes or tank under the floor: the room below belongs to the keep-out."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Site.FloorBelow != "solid_ground" }},
		{say("Someone lives below or behind it: nobody may be there while the mass is up."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Site.Below != "no" }},
	}
}

func outdoors(h lift.Hoist, _ lift.Drive) bool { return h.Site.Outdoors != "no" }

func heavyOnBuilding(h lift.Hoist, d lift.Drive) bool {
	return h.Structure.RestsOn != "own_posts_on_ground" && (!d.Mass.Is || d.Mass.Val > 100)
}

func electricalRules() []cautionRule {
	say := func(s string) Caution { return Caution{"electrical", s, false} }
	sheet := func(s string) Caution { return Caution{"electrical", s, true} }
	return []cautionRule{
		{sheet("Over 60 V somewhere, a runaway counted: direct current at this voltage kills. Stay below 60 V, or let a licensed person do it."), highVoltage},
		{sheet("Sun and lamps are never on the motor together: one changeover switch, centre off, break before make."), nil},
		{sheet("A resistor or clamp stays wired straight to the motor, no fuse, no switch: whatever opens lets the mass go."), nil},
		{say("Fuses stand at each source, close to it, rated for direct current and able to break its short-circuit current. Switches are rated for direct current. A diode stands before a battery."), nil},
		{say("Panels cannot be switched off by day: cover or isolate them. An arc on direct current does not go out by itself."), nil},
		{say("Braking resistor and motor burn skin and wood: on metal, clear of everything, guarded, sized for the speed of a runaway."), nil},
		{say("Nothing here feeds the house wiring. An inverter's earth and neutral are for a licensed person."), nil},
		{say("When electronics hang, the brake sets."), nil},
		{say("Never run medical devices, alarms or anything that does harm when it stops from this store."), nil},
	}
}

// highVoltage reports more than 60 V at the supply, the loads, or a runaway motor's terminals.
func highVoltage(h lift.Hoist, d lift.Drive) bool {
	if h.Raise.Voltage.Is && h.Raise.Voltage.Val > 60 {
		return true
	}
	if d.Lowering.Known && d.Lowering.Voltage > 60 {
		return true
	}
	return d.LetGo.Known && d.LetGo.OpenVoltage > 60
}

func cellRules() []cautionRule {
	say := func(s string) Caution { return Caution{"cells", s, false} }
	return []cautionRule{
		{say("Battery: not in bedrooms, escape routes or lofts; a smoke alarm above it."), cellLoad},
		{say("Lithium: a management board with a cut for cold charging, no mixed or unknown used cells, equal voltage before they are joined."), cellLoad},
		{say("Lead: goggles, water for 15 minutes on a splash, no jewellery; charging makes hydrogen: air flow, no sparks near."), cellLoad},
	}
}

func cellLoad(h lift.Hoist, _ lift.Drive) bool {
	for _, x := range h.Lower.Loads {
		if x.Kind == "cell" {
			return true
		}
	}
	return false
}
