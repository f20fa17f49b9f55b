// Package catalog is what ships with the program: starter climates, ropes, hardware, timber, cell kinds, motors by
// size, a worked sample project, and the first plan that three answers lead to. Choosing a row copies its values into
// the design; a plan never changes because the catalog did.
package catalog

import (
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
)

// Sample returns the worked example: an orchard workshop of our own invention, with a lifted mass, a battery, and both.
// Every number in it is invented; nothing in it was built or bought.
func Sample() model.Document {
	place := must(Climate("Luxembourg"))
	place.Name = "The orchard workshop (invented)"
	doc := model.Document{
		Edition: 1,
		Project: model.Project{
			Name: "Orchard workshop", Example: "yes", Currency: "EUR", Seed: 2718,
			Place: place,
			Load: load.Load{
				Appliances: []load.Appliance{
					{Name: "Lamp over the bench", Power: unit.Of[unit.Power](7), Count: unit.Of[unit.Count](1), From: clock(12, 0), To: clock(22, 30), AfterDusk: "yes", Supply: "dc", Priority: "essential", Purpose: "light"},
					{Name: "Path lamps", Power: unit.Of[unit.Power](0.5), Count: unit.Of[unit.Count](4), From: clock(12, 0), To: clock(12, 0), AfterDusk: "yes", Supply: "dc", Priority: "essential", Purpose: "light"},
					{Name: "Radio", Power: unit.Of[unit.Power](3), Count: unit.Of[unit.Count](1), From: clock(18, 0), To: clock(21, 0), Supply: "dc", Priority: "nice", Purpose: "radio"},
				},
				Standing: []load.Standing{{Name: "Door sensor", Power: unit.Of[unit.Power](0.05)}},
				Night:    load.Night{Own: "sun"},
			},
			Money: cost.Terms{Horizon: unit.Of[unit.Count](20), Rate: unit.Of[unit.Ratio](0.03)},
		},
		Variants: []model.Variant{sampleMass(), sampleBattery(), sampleBoth()},
	}
	doc.Project = sampleShelf(doc.Project, doc.Variants[2])
	return doc
}

// calendarYear is a year as it is typed and shown.
const calendarYear = 365.25 * unit.Day

func clock(h, m int) unit.Known[unit.Duration] {
	return unit.Of(unit.Duration(h)*unit.Hour + unit.Duration(m)*unit.Minute)
}

func samplePanels() []panel.Array {
	return []panel.Array{{
		Name: "Workshop roof", Count: unit.Of[unit.Count](1), Power: unit.Of[unit.Power](100),
		Tilt: unit.Of(55 * unit.Degree), Azimuth: unit.Of(180 * unit.Degree),
		Sheet: &panel.Sheet{Isc: unit.Of[unit.Current](5.9), Voc: unit.Of[unit.Voltage](22.5), Imp: unit.Of[unit.Current](5.5), Vmp: unit.Of[unit.Voltage](18.2),
			Alpha: unit.Of[unit.PerKelvin](0.0005), Beta: unit.Of[unit.PerKelvin](-0.003), Cells: unit.Of[unit.Count](36), Series: unit.Of[unit.Count](1)},
	}}
}

func sampleController() panel.Controller {
	return panel.Controller{Kind: "tracking", Night: unit.Of[unit.Power](0.15), BusVolts: unit.Of[unit.Voltage](12.8), MaxInput: unit.Of[unit.Voltage](100)}
}

func sampleMass() model.Variant {
	h := sampleHoist()
	h.Structure.HangerRating = unit.Of(unit.Mass(140).Weight()) // the M8 eye bolt that was in the drawer
	h.Structure.HangerKind = "shoulder_eyebolt"
	return model.Variant{
		Name: "Block in the gable", Panels: samplePanels(), Controller: sampleController(),
		Stores: []model.Store{{Hoist: &h}, {Cells: electronicsCells()}},
		Parts: append(hoistParts(),
			cost.Part{Name: "Eye bolt M8 with shoulder", Get: "have", Of: "store", As: "hanger"}),
	}
}

func sampleBattery() model.Variant {
	return model.Variant{
		Name: "Battery under the bench", Panels: samplePanels(), Controller: sampleController(),
		Stores: []model.Store{{Cells: &cell.Bank{
			Name: "12.8 V 40 Ah iron phosphate", Role: "night", Kind: "lfp", Capacity: unit.Of(40 * unit.AmpereHour),
			Voltage: unit.Of[unit.Voltage](12.8), Indoors: "own_room", Board: "yes", BoardMost: unit.Of[unit.Current](40), Origin: "new",
			CableLength: unit.Of[unit.Length](2), CableArea: unit.Of(4 * unit.SquareMillimetre), Fuse: unit.Of[unit.Current](15),
			Autonomy: unit.Of[unit.Ratio](3),
		}}},
		Parts: []cost.Part{
			{Name: "Battery 12.8 V 40 Ah with its board", Get: "buy", Of: "store", As: "battery", Price: unit.Of[unit.Money](160), Cells: "yes"},
			{Name: "Fuse 15 A for direct current, with holder", Get: "buy", Of: "safety", As: "fuse", Price: unit.Of[unit.Money](9)},
			{Name: "Cable 2 × 4 mm², 2 m", Get: "buy", Of: "store", As: "cable", Price: unit.Of[unit.Money](8)},
		},
	}
}

func sampleBoth() model.Variant {
	h := sampleHoist()
	h.Name = "Block in the gable, mended"
	h.Structure.HangerRating = unit.Of(unit.Mass(700).Weight())
	h.Structure.HangerKind = "shoulder_eyebolt"
	small := electronicsCells()
	small.Name, small.Role = "12.8 V 20 Ah iron phosphate", "night"
	small.Capacity, small.ChargeRate, small.Depth = unit.Of(20*unit.AmpereHour), unit.Known[unit.Ratio]{}, unit.Known[unit.Ratio]{}
	return model.Variant{
		Name: "Block and a small battery", Panels: samplePanels(), Controller: sampleController(),
		Stores: []model.Store{{Hoist: &h}, {Cells: small}},
		Parts: append(priced(hoistParts()),
			cost.Part{Name: "Eye bolt M16 with shoulder", Get: "buy", Of: "store", As: "hanger", Price: unit.Of[unit.Money](7)},
			cost.Part{Name: "Battery 12.8 V 20 Ah with its board", Get: "buy", Of: "store", As: "battery", Price: unit.Of[unit.Money](85), Cells: "yes"}),
	}
}

// electronicsCells is the small battery that the hoist's own electronics need anyway.
func electronicsCells() *cell.Bank {
	return &cell.Bank{
		Name: "12.8 V 2.5 Ah for the electronics", Role: "electronics", Kind: "lfp", Capacity: unit.Of(2.5 * unit.AmpereHour), ChargeRate: unit.Of[unit.Ratio](4), Depth: unit.Of[unit.Ratio](0.15),
		Voltage: unit.Of[unit.Voltage](12.8), Indoors: "own_room", Board: "yes", BoardMost: unit.Of[unit.Current](20), Origin: "new", Fuse: unit.Of[unit.Current](15),
		CableLength: unit.Of[unit.Length](1), CableArea: unit.Of(4 * unit.SquareMillimetre),
	}
}

// hoistParts is the list of the lifted mass. Each price is invented like the rest; three things have none yet.
func hoistParts() []cost.Part {
	return []cost.Part{
		{Name: "Six steel plates of 19 kg in a welded cage", Get: "have", Of: "store", As: "mass", Price: unit.Of[unit.Money](0)},
		{Name: "Rope, polyester 12 mm, 16 m, spliced", Get: "buy", Of: "store", As: "rope", Price: unit.Of[unit.Money](32), Life: unit.Of(5 * calendarYear)},
		{Name: "Pulley 100 mm on a ball bearing", Get: "buy", Of: "store", As: "pulley", Price: unit.Of[unit.Money](28)},
		{Name: "Drum 100 mm on a 35 mm shaft with cross pin", Get: "make", Of: "store", As: "drum", Price: unit.Of[unit.Money](45)},
		{Name: "Four planetary stages 5:1, steel", Number: "all case screws in", Get: "have", Of: "store"},
		{Name: "Motor 24 V, 3000 rpm", Get: "have", Of: "store", As: "motor"},
		{Name: "Spring brake on the drum", Get: "buy", Of: "safety", As: "hold", Price: unit.Of[unit.Money](70)},
		{Name: "Ratchet on the drum", Get: "buy", Of: "safety", As: "hold", Price: unit.Of[unit.Money](25)},
		{Name: "Overspeed catch on the drum, with its governor", Get: "buy", Of: "safety", As: "hold", Price: unit.Of[unit.Money](90)},
		{Name: "Two limit switches", Get: "buy", Of: "safety", As: "upper_stop", Price: unit.Of[unit.Money](12)},
		{Name: "Slack-rope switch", Get: "buy", Of: "safety", As: "slack_switch", Price: unit.Of[unit.Money](6)},
		{Name: "Fence and sign", Get: "borrow", Of: "safety", As: "fence"},
	}
}

// priced are the same with what the others leave open, and the rest of the plan.
func priced(parts []cost.Part) []cost.Part {
	for i, p := range parts {
		if !p.Price.Is {
			parts[i].Price = unit.Of[unit.Money](0)
		}
	}
	return append(parts,
		cost.Part{Name: "Beam and posts, C24", Get: "buy", Of: "store", As: "beam", Price: unit.Of[unit.Money](110)},
		cost.Part{Name: "Kerb stones, bolted to the base", Get: "borrow", Of: "store", As: "base_weight", Price: unit.Of[unit.Money](0)},
		cost.Part{Name: "Board of the base", Get: "have", Of: "store", As: "base_board", Price: unit.Of[unit.Money](0)},
		cost.Part{Name: "Step-down drive 12 V", Get: "buy", Of: "store", As: "drive", Price: unit.Of[unit.Money](38), Life: unit.Of(10 * calendarYear)},
		cost.Part{Name: "Clamp on a steel plate", Get: "make", Of: "safety", As: "shunt", Price: unit.Of[unit.Money](14)},
		cost.Part{Name: "Gloves and goggles", Get: "buy", Of: "safety", As: "gloves", Price: unit.Of[unit.Money](18), Life: unit.Of(4 * calendarYear)})
}

func must[T any](v T, ok bool) T {
	if !ok {
		panic("catalog: a row that ships is missing")
	}
	return v
}

func sampleHoist() lift.Hoist {
	return lift.Hoist{
		Name: "Block in the gable", Units: unit.Of[unit.Count](1),
		Mass: []lift.Piece{
			{Name: "Six steel plates", Mass: unit.Of[unit.Mass](114), Weighed: "scale"},
			{Name: "Cage and shackle", Mass: unit.Of[unit.Mass](6), Weighed: "scale"},
		},
		Travel: unit.Of[unit.Length](4.5),
		Rope: lift.Rope{Kind: "polyester", Diameter: unit.Of(12 * unit.Millimetre), BreakingLoad: unit.Of[unit.Force](19600),
			Length: unit.Of[unit.Length](16), Ending: "splice", Outdoors: "no", Stiffness: unit.Of[unit.Force](137e3)},
		Reeving: lift.Reeving{RopeParts: unit.Of[unit.Count](1), LeadSheaves: unit.Of[unit.Count](1), Efficiency: unit.Of[unit.Ratio](0.92), DeadEnd: "mass",
			Sheaves: []lift.Sheave{{Name: "Head pulley", Efficiency: unit.Of[unit.Ratio](0.92), Diameter: unit.Of(100 * unit.Millimetre),
				Rating: unit.Of(unit.Mass(500).Weight()), RatingOf: "hook_load", Angle: unit.Of(12 * unit.Degree), OnBase: "no"}}},
		Drum: lift.Drum{Diameter: unit.Of(100 * unit.Millimetre), Width: unit.Of(240 * unit.Millimetre), Flange: unit.Of(160 * unit.Millimetre),
			DeadWraps: unit.Of[unit.Count](3), Grooved: "no", FleetAngle: unit.Of(1.4 * unit.Degree),
			HubMaterial: "steel", HubOuter: unit.Of(60 * unit.Millimetre), HubAllow: unit.Of(235 * unit.Megapascal), HubFit: "cross_pin",
			ShaftDiameter: unit.Of(35 * unit.Millimetre), ShaftYield: unit.Of(355 * unit.Megapascal), ShaftSpan: unit.Of(150 * unit.Millimetre), BearingSpan: unit.Of(300 * unit.Millimetre),
			PinDiameter: unit.Of(8 * unit.Millimetre), PinYield: unit.Of(640 * unit.Megapascal), NoCoupling: "none"},
		Train: lift.Train{Stages: sampleStages(), Breakaway: unit.Of[unit.Ratio](1.5), CaseScrews: "yes", CaseScrewSize: unit.Of(6 * unit.Millimetre),
			CaseScrewCount: unit.Of[unit.Count](8), CaseScrewCircle: unit.Of(110 * unit.Millimetre), CaseScrewProof: unit.Of(600 * unit.Megapascal)},
		Machine: lift.Machine{Name: "24 V, 3000 rpm", K: unit.Of[unit.MachineConstant](0.0756), R: unit.Of[unit.Resistance](0.8), I0: unit.Of[unit.Current](0.3),
			J: unit.Of[unit.Inertia](1.5e-4), MaxCurrent: unit.Of[unit.Current](4), MaxSpeed: unit.Of(6000 * unit.RevPerMinute), MaxWinding: unit.Of[unit.Celsius](130),
			RthWinding: unit.Of[unit.ThermalResistance](4), TauWinding: unit.Of[unit.Duration](900), I0WithGear: "no"},
		Raise: lift.Raise{Feed: "drive", Converter: "step_down", Voltage: unit.Of[unit.Voltage](12), Fuse: unit.Of[unit.Current](7.5), WireArea: unit.Of(1.5 * unit.SquareMillimetre), Switch: unit.Of[unit.Current](16), CurrentLimit: unit.Of[unit.Current](6), WireR: unit.Of[unit.Resistance](0.05),
			DriveEff: unit.Of[unit.Ratio](0.92), Auxiliary: unit.Of[unit.Power](8)},
		Lower: lift.Lower{Loads: []lift.DCLoad{
			{Kind: "string", Name: "Four white lamps in a row, three rows", Threshold: unit.Of[unit.Voltage](11), Slope: unit.Of[unit.Resistance](0.93), MaxCurrent: unit.Of[unit.Current](1.05), Permanent: "no"},
			{Kind: "clamp", Name: "Clamp straight on the motor", Threshold: unit.Of[unit.Voltage](14), Slope: unit.Of[unit.Resistance](0.3), MaxCurrent: unit.Of[unit.Current](5), Permanent: "yes"},
		}, Auxiliary: unit.Of[unit.Power](3), Ambient: unit.Of[unit.Celsius](15), Shunt: "yes"},
		Structure: lift.Structure{HangerAngle: unit.Of[unit.Angle](0), HangerFixing: "bolted_through_wood", Washer: unit.Of(80 * unit.Millimetre), SidePull: unit.Of(unit.Mass(60).Weight()), HeadHeight: unit.Of[unit.Length](5.75), LeadAngle: unit.Of(12 * unit.Degree),
			Beam: lift.Beam{Kind: "timber", Class: "C24", Width: unit.Of(100 * unit.Millimetre), Depth: unit.Of(200 * unit.Millimetre), Span: unit.Of[unit.Length](1.6),
				Support: "two_supports", From: unit.Of[unit.Length](0.8), Bearing: unit.Of(90 * unit.Millimetre), Hole: unit.Of(18 * unit.Millimetre), OwnMass: unit.Of[unit.Mass](22)},
			Posts:   []lift.Post{samplePost(), samplePost()},
			RestsOn: "own_posts_on_ground", RestsOnOK: "yes"},
		Base: lift.Base{Where: "on_ground", Mass: unit.Of[unit.Mass](480), ChildProof: "yes", LoosePart: unit.Of[unit.Mass](0), Width: unit.Of[unit.Length](0.8),
			PullHeight: unit.Of[unit.Length](0.35), PullOffset: unit.Of[unit.Length](0.05), RopeAngle: unit.Of(12 * unit.Degree), Friction: unit.Of[unit.Ratio](0.4), Ground: "concrete_slab",
			Board: lift.Board{Thickness: unit.Of(40 * unit.Millimetre), Width: unit.Of(600 * unit.Millimetre), Arm: unit.Of(200 * unit.Millimetre), Strength: unit.Of(24 * unit.Megapascal)}},
		Container: lift.Container{Kind: "cage", Rating: unit.Of(unit.Mass(300).Weight()), EyeRating: unit.Of(unit.Mass(700).Weight())},
		Holds: lift.Holds{
			Holds:        sampleHolds(),
			BrakeRelease: "coil",
			UpperStops:   []lift.Stop{{Kind: "limit_switch", Path: "yes"}, {Kind: "second_limit_switch", Path: "yes"}},
			SlackSwitch:  "yes", BrakeDelay: unit.Of[unit.Duration](0.2), RoomAbove: unit.Of[unit.Length](0.6)},
		Site: lift.Site{Outdoors: "no", Earthquake: "none", Children: "no", Carries: "own", Below: "no", Helper: "yes", SelfStart: "no",
			ComesDown: "The hand crank on the second motor shaft lets it down, brake open and pawl up", FloorBelow: "solid_ground", PadDepth: unit.Of(150 * unit.Millimetre),
			LoadWidth: unit.Of[unit.Length](0.4), LoadHeight: unit.Of[unit.Length](0.3), FrameHeight: unit.Of[unit.Length](6.1), Told: "yes", Lit: "yes", Noise: "yes", WindPlan: "yes", Insurance: "yes", Watched: "yes",
			Barrier: "locked_room", WayDown: "hand_crank", CarriesPeople: "no", Rig: unit.Of(100 * unit.Millimetre)},
	}
}

// sampleHolds are a spring brake that sets without power, a ratchet for hands near the drum, and a catch that a governor
// throws when a gear breaks.
func sampleHolds() []lift.Hold {
	return []lift.Hold{
		{Kind: "spring_brake", OnDrum: "yes", Torque: unit.Of[unit.Torque](110), Sets: "power_off", Trips: "no", Independent: "yes"},
		{Kind: "ratchet", OnDrum: "yes", Torque: unit.Of[unit.Torque](110), Sets: "by_hand", Independent: "yes"},
		{Kind: "overspeed_catch", OnDrum: "yes", Torque: unit.Of[unit.Torque](150), Trips: "yes", TripsAt: unit.Of[unit.Speed](0.3), EngagesIn: unit.Of(20 * unit.Millimetre), TripHow: "governor", Independent: "yes"},
	}
}

func samplePost() lift.Post {
	return lift.Post{Kind: "timber", Class: "C24", Width: unit.Of(120 * unit.Millimetre), Depth: unit.Of(120 * unit.Millimetre), Height: unit.Of[unit.Length](5.9), Fixing: "braced",
		Share: unit.Of[unit.Ratio](0.5), FootArea: unit.Of[unit.Area](0.09), Soil: "concrete_slab"}
}

func sampleStages() []lift.Stage {
	var out []lift.Stage
	for i := range 4 {
		s := lift.Stage{Kind: "planetary", Ratio: unit.Of[unit.Ratio](5), Efficiency: unit.Of[unit.Ratio](0.95), IdleTorque: unit.Of[unit.Torque](0),
			SunTeeth: unit.Of[unit.Count](12), PlanetTeeth: unit.Of[unit.Count](18), RingTeeth: unit.Of[unit.Count](48), Planets: unit.Of[unit.Count](3)}
		if i == 0 {
			s.IdleTorque = unit.Of[unit.Torque](0.002)
		}
		s.Tooth = lift.Tooth{Module: unit.Of([]unit.Length{0.75, 1, 1.5, 3}[i] * unit.Millimetre), Teeth: unit.Of[unit.Count](18), FaceWidth: unit.Of([]unit.Length{8, 12, 20, 35}[i] * unit.Millimetre),
			Meshes: unit.Of[unit.Count](2), Material: "steel", Strength: unit.Of(355 * unit.Megapascal)}
		out = append(out, s)
	}
	return out
}
