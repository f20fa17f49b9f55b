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
			Name: "Orchard workshop", Example: unit.Yes, Currency: "EUR", Seed: 2718,
			Place: place,
			Load: load.Load{
				Appliances: []load.Appliance{
					{Name: "Lamp over the bench", Power: unit.Of[unit.Power](7), Count: unit.Of[unit.Count](1), From: clock(12, 0), To: clock(22, 30), AfterDusk: unit.Yes, Supply: load.SupplyDc, Priority: load.PriorityEssential, Purpose: load.ForLight},
					{Name: "Path lamps", Power: unit.Of[unit.Power](0.5), Count: unit.Of[unit.Count](4), From: clock(12, 0), To: clock(12, 0), AfterDusk: unit.Yes, Supply: load.SupplyDc, Priority: load.PriorityEssential, Purpose: load.ForLight},
					{Name: "Radio", Power: unit.Of[unit.Power](3), Count: unit.Of[unit.Count](1), From: clock(18, 0), To: clock(21, 0), Supply: load.SupplyDc, Priority: load.PriorityNice, Purpose: load.ForRadio},
				},
				Standing: []load.Standing{{Name: "Door sensor", Power: unit.Of[unit.Power](0.05)}},
				Night:    load.Night{Own: load.NightSun},
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
	return panel.Controller{Kind: panel.ControllerTracking, Night: unit.Of[unit.Power](0.15), BusVolts: unit.Of[unit.Voltage](12.8), MaxInput: unit.Of[unit.Voltage](100)}
}

func sampleMass() model.Variant {
	h := sampleHoist()
	h.Structure.HangerRating = unit.Of(unit.Mass(140).Weight()) // the M8 eye bolt that was in the drawer
	h.Structure.HangerKind = lift.HangerShoulderEyebolt
	return model.Variant{
		Name: "Block in the gable", Panels: samplePanels(), Controller: sampleController(),
		Stores: []model.Store{{Hoist: &h}, {Cells: electronicsCells()}},
		Parts: append(hoistParts(),
			cost.Part{Name: "Eye bolt M8 with shoulder", Get: cost.GetHave, Of: cost.OfStore, As: cost.AsHanger}),
	}
}

func sampleBattery() model.Variant {
	return model.Variant{
		Name: "Battery under the bench", Panels: samplePanels(), Controller: sampleController(),
		Stores: []model.Store{{Cells: &cell.Bank{
			Name: "12.8 V 50 Ah iron phosphate", Role: cell.RoleNight, Kind: cell.LFP, Capacity: unit.Of(50 * unit.AmpereHour),
			Voltage: unit.Of[unit.Voltage](12.8), Indoors: cell.InOwnRoom, Board: unit.Yes, BoardMost: unit.Of[unit.Current](40), Origin: cell.BlocksNew,
			CableLength: unit.Of[unit.Length](2), CableArea: unit.Of(4 * unit.SquareMillimetre), Fuse: unit.Of[unit.Current](15),
			Autonomy: unit.Of[unit.Ratio](3),
		}}},
		Parts: []cost.Part{
			{Name: "Battery 12.8 V 50 Ah with its board", Get: cost.GetBuy, Of: cost.OfStore, As: cost.AsBattery, Price: unit.Of[unit.Money](200), Cells: unit.Yes},
			{Name: "Fuse 15 A for direct current, with holder", Get: cost.GetBuy, Of: cost.OfSafety, As: cost.AsFuse, Price: unit.Of[unit.Money](9)},
			{Name: "Cable, two wires, 4 mm²", Get: cost.GetBuy, Of: cost.OfStore, As: cost.AsCable, Price: unit.Of[unit.Money](8)},
		},
	}
}

func sampleBoth() model.Variant {
	h := sampleHoist()
	h.Name = "Block in the gable, mended"
	h.Structure.HangerRating = unit.Of(unit.Mass(700).Weight())
	h.Structure.HangerKind = lift.HangerShoulderEyebolt
	small := electronicsCells()
	small.Name, small.Role = "12.8 V 20 Ah iron phosphate", cell.RoleNight
	small.Capacity, small.ChargeRate, small.Depth = unit.Of(20*unit.AmpereHour), unit.Known[unit.Ratio]{}, unit.Known[unit.Ratio]{}
	return model.Variant{
		Name: "Block and a small battery", Panels: samplePanels(), Controller: sampleController(),
		Stores: []model.Store{{Hoist: &h}, {Cells: small}},
		Parts: append(priced(hoistParts()),
			cost.Part{Name: "Eye bolt M16 with shoulder", Get: cost.GetBuy, Of: cost.OfStore, As: cost.AsHanger, Price: unit.Of[unit.Money](7)},
			cost.Part{Name: "Battery 12.8 V 20 Ah with its board", Get: cost.GetBuy, Of: cost.OfStore, As: cost.AsBattery, Price: unit.Of[unit.Money](85), Cells: unit.Yes}),
	}
}

// electronicsCells is the small battery that the hoist's own electronics need anyway.
func electronicsCells() *cell.Bank {
	return &cell.Bank{
		Name: "12.8 V 2.5 Ah for the electronics", Role: cell.RoleElectronics, Kind: cell.LFP, Capacity: unit.Of(2.5 * unit.AmpereHour), ChargeRate: unit.Of[unit.Ratio](4), Depth: unit.Of[unit.Ratio](0.15),
		Voltage: unit.Of[unit.Voltage](12.8), Indoors: cell.InOwnRoom, Board: unit.Yes, BoardMost: unit.Of[unit.Current](20), Origin: cell.BlocksNew, Fuse: unit.Of[unit.Current](15),
		CableLength: unit.Of[unit.Length](1), CableArea: unit.Of(4 * unit.SquareMillimetre),
	}
}

// hoistParts is the list of the lifted mass. Each price is invented like the rest; three things have none yet.
func hoistParts() []cost.Part {
	return []cost.Part{
		{Name: "Six steel plates in a welded cage", Get: cost.GetHave, Of: cost.OfStore, As: cost.AsMass, Price: unit.Of[unit.Money](0)},
		{Name: "Rope, polyester, spliced", Get: cost.GetBuy, Of: cost.OfStore, As: cost.AsRope, Price: unit.Of[unit.Money](32), Life: unit.Of(5 * calendarYear)},
		{Name: "Pulley on a ball bearing", Get: cost.GetBuy, Of: cost.OfStore, As: cost.AsPulley, Price: unit.Of[unit.Money](28)},
		{Name: "Drum on its shaft, with cross pin", Get: cost.GetMake, Of: cost.OfStore, As: cost.AsDrum, Price: unit.Of[unit.Money](45)},
		{Name: "Four planetary stages 5:1, steel", Number: "all case screws in", Get: cost.GetHave, Of: cost.OfStore},
		{Name: "Motor 24 V, 3000 rpm", Get: cost.GetHave, Of: cost.OfStore, As: cost.AsMotor},
		{Name: "Spring brake on the drum", Get: cost.GetBuy, Of: cost.OfSafety, As: cost.AsHold, Price: unit.Of[unit.Money](70)},
		{Name: "Ratchet on the drum", Get: cost.GetBuy, Of: cost.OfSafety, As: cost.AsHold, Price: unit.Of[unit.Money](25)},
		{Name: "Overspeed catch on the drum, with its governor", Get: cost.GetBuy, Of: cost.OfSafety, As: cost.AsHold, Price: unit.Of[unit.Money](90)},
		{Name: "Two limit switches", Get: cost.GetBuy, Of: cost.OfSafety, As: cost.AsUpperStop, Price: unit.Of[unit.Money](12)},
		{Name: "Slack-rope switch", Get: cost.GetBuy, Of: cost.OfSafety, As: cost.AsSlackSwitch, Price: unit.Of[unit.Money](6)},
		{Name: "Fence and sign", Get: cost.GetBorrow, Of: cost.OfSafety, As: cost.AsFence},
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
		cost.Part{Name: "Beam and posts, C24", Get: cost.GetBuy, Of: cost.OfStore, As: cost.AsBeam, Price: unit.Of[unit.Money](110)},
		cost.Part{Name: "Kerb stones, bolted to the base", Get: cost.GetBorrow, Of: cost.OfStore, As: cost.AsBaseWeight, Price: unit.Of[unit.Money](0)},
		cost.Part{Name: "Board of the base", Get: cost.GetHave, Of: cost.OfStore, As: cost.AsBaseBoard, Price: unit.Of[unit.Money](0)},
		cost.Part{Name: "Step-down drive 12 V", Get: cost.GetBuy, Of: cost.OfStore, As: cost.AsDrive, Price: unit.Of[unit.Money](38), Life: unit.Of(10 * calendarYear)},
		cost.Part{Name: "Clamp on a steel plate", Get: cost.GetMake, Of: cost.OfSafety, As: cost.AsShunt, Price: unit.Of[unit.Money](14)},
		cost.Part{Name: "Gloves and goggles", Get: cost.GetBuy, Of: cost.OfSafety, As: cost.AsGloves, Price: unit.Of[unit.Money](18), Life: unit.Of(4 * calendarYear)})
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
			{Name: "Six steel plates", Mass: unit.Of[unit.Mass](114), Weighed: lift.ByScale},
			{Name: "Cage and shackle", Mass: unit.Of[unit.Mass](6), Weighed: lift.ByScale},
		},
		Travel: unit.Of[unit.Length](4.5),
		Rope: lift.Rope{Kind: lift.RopePolyester, Diameter: unit.Of(12 * unit.Millimetre), BreakingLoad: unit.Of[unit.Force](19600),
			Length: unit.Of[unit.Length](16), Ending: lift.EndingSplice, Outdoors: unit.No, Stiffness: unit.Of[unit.Force](137e3)},
		Reeving: lift.Reeving{RopeParts: unit.Of[unit.Count](1), LeadSheaves: unit.Of[unit.Count](1), Efficiency: unit.Of[unit.Ratio](0.92), DeadEnd: lift.DeadEndMass,
			Sheaves: []lift.Sheave{{Efficiency: unit.Of[unit.Ratio](0.92), Diameter: unit.Of(100 * unit.Millimetre),
				Rating: unit.Of(unit.Mass(500).Weight()), RatingOf: lift.RatingHookLoad, Angle: unit.Of(12 * unit.Degree), OnBase: unit.No}}},
		Drum: lift.Drum{Diameter: unit.Of(100 * unit.Millimetre), Width: unit.Of(240 * unit.Millimetre), Flange: unit.Of(160 * unit.Millimetre),
			DeadWraps: unit.Of[unit.Count](3), Grooved: unit.No, FleetAngle: unit.Of(1.4 * unit.Degree),
			HubMaterial: lift.HubSteel, HubOuter: unit.Of(60 * unit.Millimetre), HubAllow: unit.Of(235 * unit.Megapascal), HubFit: lift.FitCrossPin,
			ShaftDiameter: unit.Of(35 * unit.Millimetre), ShaftYield: unit.Of(355 * unit.Megapascal), ShaftSpan: unit.Of(150 * unit.Millimetre), BearingSpan: unit.Of(300 * unit.Millimetre),
			PinDiameter: unit.Of(8 * unit.Millimetre), PinYield: unit.Of(640 * unit.Megapascal), Coupling: lift.CouplingNone},
		Train: lift.Train{Stages: sampleStages(), Breakaway: unit.Of[unit.Ratio](1.5), CaseScrews: unit.Yes, CaseScrewSize: unit.Of(6 * unit.Millimetre),
			CaseScrewCount: unit.Of[unit.Count](8), CaseScrewCircle: unit.Of(110 * unit.Millimetre), CaseScrewProof: unit.Of(600 * unit.Megapascal)},
		Machine: lift.Machine{Name: "24 V, 3000 rpm", K: unit.Of[unit.MachineConstant](0.0756), R: unit.Of[unit.Resistance](0.8), I0: unit.Of[unit.Current](0.3),
			J: unit.Of[unit.Inertia](1.5e-4), MaxCurrent: unit.Of[unit.Current](4), MaxSpeed: unit.Of(6000 * unit.RevPerMinute), MaxWinding: unit.Of[unit.Celsius](130),
			RthWinding: unit.Of[unit.ThermalResistance](4), TauWinding: unit.Of[unit.Duration](900), I0WithGear: unit.No},
		Raise: lift.Raise{Feed: lift.FeedDrive, Converter: lift.ConversionStepDown, Voltage: unit.Of[unit.Voltage](12), Fuse: unit.Of[unit.Current](7.5), WireArea: unit.Of(1.5 * unit.SquareMillimetre), Switch: unit.Of[unit.Current](16), CurrentLimit: unit.Of[unit.Current](6), WireR: unit.Of[unit.Resistance](0.05),
			DriveEff: unit.Of[unit.Ratio](0.92), Auxiliary: unit.Of[unit.Power](8)},
		Lower: lift.Lower{Loads: []lift.DCLoad{
			{Kind: lift.LoadString, Name: "Four white lamps in a row, three rows", Threshold: unit.Of[unit.Voltage](11), Slope: unit.Of[unit.Resistance](0.93), MaxCurrent: unit.Of[unit.Current](1.05), Permanent: unit.No},
			{Kind: lift.LoadClamp, Name: "Clamp straight on the motor", Threshold: unit.Of[unit.Voltage](14), Slope: unit.Of[unit.Resistance](0.3), MaxCurrent: unit.Of[unit.Current](5), Permanent: unit.Yes},
		}, Auxiliary: unit.Of[unit.Power](3), Ambient: unit.Of[unit.Celsius](15), Shunt: unit.Yes},
		Structure: lift.Structure{HangerAngle: unit.Of[unit.Angle](0), HangerFixing: lift.FixingBoltedThroughWood, Washer: unit.Of(80 * unit.Millimetre), SidePull: unit.Of(unit.Mass(60).Weight()), HeadHeight: unit.Of[unit.Length](5.75), LeadAngle: unit.Of(12 * unit.Degree),
			Beam: lift.Beam{Kind: lift.MemberTimber, Class: lift.TimberC24, Width: unit.Of(100 * unit.Millimetre), Depth: unit.Of(200 * unit.Millimetre), Span: unit.Of[unit.Length](1.6),
				Support: lift.BeamTwoSupports, From: unit.Of[unit.Length](0.8), Bearing: unit.Of(90 * unit.Millimetre), Hole: unit.Of(18 * unit.Millimetre), OwnMass: unit.Of[unit.Mass](22)},
			Posts:   []lift.Post{samplePost(), samplePost()},
			RestsOn: lift.RestsOnOwnPostsOnGround, RestsOnOK: unit.Yes},
		Base: lift.Base{Where: lift.BaseOnGround, Mass: unit.Of[unit.Mass](480), WeightsFixed: unit.Yes, LoosePart: unit.Of[unit.Mass](0), Width: unit.Of[unit.Length](0.8),
			PullHeight: unit.Of[unit.Length](0.35), PullOffset: unit.Of[unit.Length](0.05), RopeAngle: unit.Of(12 * unit.Degree), Friction: unit.Of[unit.Ratio](0.4), Ground: lift.GroundConcreteSlab,
			Board: lift.Board{Thickness: unit.Of(40 * unit.Millimetre), Width: unit.Of(600 * unit.Millimetre), Arm: unit.Of(200 * unit.Millimetre), Strength: unit.Of(24 * unit.Megapascal)}},
		Container: lift.Container{Kind: lift.ContainerCage, Rating: unit.Of(unit.Mass(300).Weight()), EyeRating: unit.Of(unit.Mass(700).Weight())},
		Holds: lift.Holds{
			Holds:        sampleHolds(),
			BrakeRelease: lift.ReleaseCoil,
			UpperStops:   []lift.Stop{{Kind: lift.StopLimitSwitch, Path: unit.Yes}, {Kind: lift.StopSecondLimitSwitch, Path: unit.Yes}},
			SlackSwitch:  unit.Yes, BrakeDelay: unit.Of[unit.Duration](0.2), RoomAbove: unit.Of[unit.Length](0.6)},
		Site: lift.Site{Outdoors: unit.No, Earthquake: lift.EarthquakesNone, Children: unit.No, Owner: lift.ConsentOwn, LivesBelow: unit.No, Helper: unit.Yes, SelfStart: unit.No,
			ComesDown: "The hand crank on the second motor shaft lets it down, brake open and pawl up", FloorBelow: lift.FloorSolidGround, PadDepth: unit.Of(150 * unit.Millimetre),
			LoadWidth: unit.Of[unit.Length](0.4), LoadHeight: unit.Of[unit.Length](0.3), FrameHeight: unit.Of[unit.Length](6.1), Told: unit.Yes, Lit: unit.Yes, Noise: unit.Yes, WindPlan: unit.Yes, Insurance: unit.Yes, Watched: unit.Yes,
			Barrier: lift.BarrierLockedRoom, WayDown: lift.DownHandCrank, CarriesPeople: unit.No, Rig: unit.Of(100 * unit.Millimetre)},
	}
}

// sampleHolds are a spring brake that sets without power, a ratchet for hands near the drum, and a catch that a governor
// throws when a gear breaks.
func sampleHolds() []lift.Hold {
	return []lift.Hold{
		{Kind: lift.HoldSpringBrake, OnDrum: unit.Yes, Torque: unit.Of[unit.Torque](110), Sets: lift.SetsPowerOff, Trips: unit.No, Independent: unit.Yes},
		{Kind: lift.HoldRatchet, OnDrum: unit.Yes, Torque: unit.Of[unit.Torque](110), Sets: lift.SetsByHand, Independent: unit.Yes},
		{Kind: lift.HoldOverspeedCatch, OnDrum: unit.Yes, Torque: unit.Of[unit.Torque](150), Trips: unit.Yes, TripsAt: unit.Of[unit.Speed](0.3), EngagesIn: unit.Of(20 * unit.Millimetre), TripHow: lift.TripGovernor, Independent: unit.Yes},
	}
}

func samplePost() lift.Post {
	return lift.Post{Kind: lift.MemberTimber, Class: lift.TimberC24, Width: unit.Of(120 * unit.Millimetre), Depth: unit.Of(120 * unit.Millimetre), Height: unit.Of[unit.Length](5.9), Fixing: lift.PostBraced,
		Share: unit.Of[unit.Ratio](0.5), FootArea: unit.Of[unit.Area](0.09), Soil: lift.GroundConcreteSlab}
}

func sampleStages() []lift.Stage {
	var out []lift.Stage
	for i := range 4 {
		s := lift.Stage{Kind: lift.StagePlanetary, Ratio: unit.Of[unit.Ratio](5), Efficiency: unit.Of[unit.Ratio](0.95), IdleTorque: unit.Of[unit.Torque](0),
			SunTeeth: unit.Of[unit.Count](12), PlanetTeeth: unit.Of[unit.Count](18), RingTeeth: unit.Of[unit.Count](48), Planets: unit.Of[unit.Count](3)}
		if i == 0 {
			s.IdleTorque = unit.Of[unit.Torque](0.002)
		}
		s.Tooth = lift.Tooth{Module: unit.Of([]unit.Length{0.75, 1, 1.5, 3}[i] * unit.Millimetre), Teeth: unit.Of[unit.Count](18), FaceWidth: unit.Of([]unit.Length{8, 12, 20, 35}[i] * unit.Millimetre),
			Meshes: unit.Of[unit.Count](2), Material: lift.ToothSteel, Strength: unit.Of(355 * unit.Megapascal)}
		out = append(out, s)
	}
	return out
}
