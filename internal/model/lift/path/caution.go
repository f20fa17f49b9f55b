package path

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Caution is one short sentence for the page and the sheet.
type Caution struct {
	Group string // "mechanical", "structure", "electrical", "cells"
	Say   say.Sentence
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
	note := func(words string, values ...any) Caution {
		return Caution{"mechanical", say.That(words, values...), false}
	}
	sheet := func(words string, values ...any) Caution {
		return Caution{"mechanical", say.That(words, values...), true}
	}
	return []cautionRule{
		{sheet("Never lift a person. Let nobody ride on the mass, climb on it or be under it."), nil},
		{sheet("Two holds, one of them on the drum, each for 125 % of the mass; tested every month. Motor, gears, joined wires and lamps hold nothing."), nil},
		{sheet("Before anyone touches drive, rope or brake, put the mass on the ground or on a rated prop."), nil},
		{sheet("First lifts: %s over a soft landing, then 25 to 125 % in steps, outside the keep-out, with a phone and a second person.", say.Taped(0.1).To(1)), nil},
		{sheet("After any fall or shock every part of the load path is unknown until it was looked at."), nil},
		{note("The hoist may start by itself at sunrise. Let nothing start it again by itself. Fit a switch that locks at the site, a warning before the mass moves, and a stop button within reach that sets the brake."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Site.SelfStart != unit.No }},
		{note("Children and animals: fence the hoist or lock the room. Leave no rope end or mass to climb. Lower and lock the mass when nobody is there."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Site.Children != unit.No }},
		{note("Hands are caught where the rope meets drum, pulley and gear. Put guards there. Keep gloves and sleeves away while the mass moves."), nil},
		{note("If a thermal cut-out opens the wires, the mass runs away. The same cut-out must also set the brake."), nil},
		{note("If the drum runs on when all rope is off, it winds the rope backwards and lifts the mass again. Leave three turns on the drum, and fit a slack switch that stops it."), nil},
		{note("Fit a keeper on every pulley, so that a slack rope cannot jump off."), nil},
		{note("A free mass swings: use tag lines or guides."), nil},
		{note("Work at height hurts more people than anything else here. A ladder is a way up, not a place to work. Above %s use a platform with rails. Have a helper, keep tools on cords, and let nobody stand below.", say.Height(2).To(2)), nil},
		{note("Do not lift the beam with the new hoist. Keep far away from overhead power lines."), nil},
		{note("One piece is heavier than %s: lift it with two people, or split it.", say.Mass(25).To(2)), heavyPiece},
		{note("How the mass comes down with no power, a stuck brake or a jammed rope is not known. Plan this before the first lift."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Site.ComesDown == "" }},
		{note("Write the date on the rope. Retire it after any shock, heat, glaze or cut. A knot that is tied again is a new knot."), nil},
		{note("This rope creeps under a load that hangs all day and melts on a hot drum: mark it, and look at the stop marks every week."),
			func(h lift.Hoist, _ lift.Drive) bool {
				return h.Rope.Kind == lift.RopePolypropylene || h.Rope.Kind == lift.RopeHMPE || h.Rope.Kind == ""
			}},
		{note("Wire rope is retired at six broken wires in one lay, three in one strand, or a third of a wire worn away."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Rope.Kind == lift.RopeWire }},
		{note("A bag lasts 12 months in the sun. Its four loops hang on a spreader, and its drain stays open: rain is extra load."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Container.Kind == lift.ContainerBag }},
		{note("Never use open water as mass: children drown in it."), nil},
		{note("Tighten the bolts after 10 and after 100 lifts. Look for rust and for gnawed rope."), nil},
		{note("Printed parts: never the only thing that holds the mass, never near a hot motor (PLA softens at %s).", say.Temperature(50)), printed},
		{note("There is no switch that stops the drum when the rope goes slack. A mass caught by a slack rope pulls at least twice its weight."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Holds.SlackSwitch != unit.Yes }},
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
		if s.Tooth.Material == lift.ToothPrinted {
			return true
		}
	}
	return h.Drum.HubMaterial == lift.HubPrinted
}

func structureRules() []cautionRule {
	note := func(words string, values ...any) Caution {
		return Caution{"structure", say.That(words, values...), false}
	}
	sheet := func(words string, values ...any) Caution {
		return Caution{"structure", say.That(words, values...), true}
	}
	return []cautionRule{
		{sheet("More than %s hang on a building all the time: ask an engineer first.", say.Mass(heavyThere)), heavyOnBuilding},
		{note("Trusses, joists, trees, balconies, brick and chimneys are not made to carry a hoist."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Structure.RestsOn != lift.RestsOnOwnPostsOnGround }},
		{note("Ask neighbours, landlord, building office and insurer before you drill the first hole."), nil},
		{note("An earthquake pushes frame and mass sideways with at least 0.1 of their weight, or 0.4 where earthquakes are strong (from memory). The local code decides. The mass swings out of its keep-out."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Site.Earthquake != lift.EarthquakesNone }},
		{note("Wind: a storm of %s pushes a mass with a side of %s with about %s. Lower the mass in gales, snow and ice. Lightning strikes tall things.", say.Speed(35).To(2), say.Area(1).To(2), say.Weight(1000).To(1)), outdoors},
		{note("What a falling mass does to a concrete floor is not known. The thickness of the slab, its steel and the ground under it decide. Expect cracks and flying pieces, and put the soft landing on the floor."), nil},
		{note("Nobody has said that the noise at night is acceptable: gears, chain and motor sound through wood and walls. Stand the base on rubber or felt, and listen at the bed before the first night."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Site.Noise != unit.Yes }},
		{note("Cellar, pipes or tank under the floor: the room below belongs to the keep-out."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Site.FloorBelow != lift.FloorSolidGround }},
		{note("If somebody lives below or behind the hoist, nobody may be there while the mass is up."),
			func(h lift.Hoist, _ lift.Drive) bool { return h.Site.LivesBelow != unit.No }},
	}
}

func outdoors(h lift.Hoist, _ lift.Drive) bool { return h.Site.Outdoors != unit.No }

// heavyThere is the mass from which an engineer is asked: our own judgement.
const heavyThere unit.Mass = 100

func heavyOnBuilding(h lift.Hoist, d lift.Drive) bool {
	return h.Structure.RestsOn != lift.RestsOnOwnPostsOnGround && (!d.Mass.Is || d.Mass.Val > heavyThere)
}

func electricalRules() []cautionRule {
	note := func(words string, values ...any) Caution {
		return Caution{"electrical", say.That(words, values...), false}
	}
	sheet := func(words string, values ...any) Caution {
		return Caution{"electrical", say.That(words, values...), true}
	}
	return []cautionRule{
		{sheet("Some wires carry more than 60 V, at work or when the mass runs away. Direct current at this voltage kills. Stay below 60 V, or let a licensed person do the wiring."), highVoltage},
		{sheet("Sun and lamps are never on the motor together: one changeover switch, centre off, break before make."), nil},
		{sheet("If the circuit of the motor breaks anywhere, the mass runs away. Wire a resistor or clamp straight to the motor for good, with no fuse and no switch."), nil},
		{note("Put a fuse at each source, close to it, rated for direct current and able to break its short-circuit current. Use switches rated for direct current. Put a diode in front of a battery."), nil},
		{note("Panels cannot be switched off by day: cover or isolate them. An arc of direct current does not go out by itself."), nil},
		{note("The braking resistor and the motor get so hot that they burn skin and wood. Mount them on metal, guarded, clear of everything. Size the resistor for the speed of a runaway."), nil},
		{note("Nothing here feeds the house wiring. An inverter's earth and neutral are for a licensed person."), nil},
		{note("If the controller freezes, the brake must close by itself."), nil},
		{note("Never run medical devices, alarms or anything that does harm when it stops from this store."), nil},
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
	note := func(words string, values ...any) Caution { return Caution{"cells", say.That(words, values...), false} }
	return []cautionRule{
		{note("Battery: not in bedrooms, escape routes or lofts; a smoke alarm above it."), cellLoad},
		{note("Lithium: a management board with a cut for cold charging, no mixed or unknown used cells, equal voltage before they are joined."), cellLoad},
		{note("Lead: goggles, water for 15 minutes on a splash, no jewellery; a lead battery gives off hydrogen while charging: air flow, no sparks near."), cellLoad},
	}
}

func cellLoad(h lift.Hoist, _ lift.Drive) bool {
	for _, x := range h.Lower.Loads {
		if x.Kind == lift.LoadCell {
			return true
		}
	}
	return false
}
