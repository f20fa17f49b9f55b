package catalog

import (
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// Cabin returns the second worked example: a hill cabin of our own invention with a fridge, a pump that waits for the sun, a
// laptop and lamps; its variants are two batteries, and a small battery with a petrol generator. Every number in it is
// invented; nothing in it was built or bought.
func Cabin() model.Document {
	place := must(Climate("Piedmont 45N 8E"))
	place.Name = "The hill cabin (invented)"
	place.Indoor = &sun.Indoor{Mean: 16, Swing: 6, Warmest: 7}
	return model.Document{
		Edition: 1,
		Project: model.Project{
			Name: "Hill cabin", Example: unit.Yes, Currency: "EUR", Seed: 1618,
			Place: place,
			Load: load.Load{
				Appliances: cabinAppliances(),
				Inverter: load.Inverter{Present: unit.Yes, Idle: unit.Of[unit.Power](6), Rated: unit.Of[unit.Power](800), Surge: unit.Of[unit.Power](2400), Input: unit.Of[unit.Voltage](24),
					OwnSockets: unit.Yes, CableLen: unit.Of[unit.Length](1), CableArea: unit.Of(25 * unit.SquareMillimetre)},
				Night: load.Night{Own: load.NightSun},
			},
			Money: cost.Terms{Horizon: unit.Of[unit.Count](20), Rate: unit.Of[unit.Ratio](0.03)},
		},
		Variants: []model.Variant{cabinIron(), cabinLead(), cabinGenerator()},
	}
}

func cabinAppliances() []load.Appliance {
	one := unit.Of[unit.Count](1)
	return []load.Appliance{
		{Name: "Fridge", Power: unit.Of[unit.Power](70), Count: one, From: clock(0, 0), To: clock(0, 0), Share: unit.Of[unit.Ratio](0.35), Supply: load.SupplyInverter, Priority: load.PriorityEssential,
			Purpose: load.ForCooling, Surge: unit.Of[unit.Power](500), SurgeTime: unit.Of[unit.Duration](0.5), StopsHarm: unit.No},
		{Name: "Lamps", Power: unit.Of[unit.Power](5), Count: unit.Of[unit.Count](4), FromDusk: unit.Of(5 * unit.Hour), Supply: load.SupplyDc, Priority: load.PriorityEssential, Purpose: load.ForLight,
			Volts: unit.Of[unit.Voltage](24), StopsHarm: unit.No},
		{Name: "Laptop", Power: unit.Of[unit.Power](45), Count: one, From: clock(18, 0), To: clock(22, 0), Supply: load.SupplyInverter, Priority: load.PriorityNice, Purpose: load.ForComputer,
			ShedBelow: unit.Of[unit.Ratio](0.3), StopsHarm: unit.No},
		{Name: "Water pump", Power: unit.Of[unit.Power](300), Count: one, From: clock(9, 0), To: clock(17, 0), Supply: load.SupplyInverter, Priority: load.PriorityEssential, Purpose: load.ForPump,
			Surge: unit.Of[unit.Power](1200), SurgeTime: unit.Of[unit.Duration](0.5), Waits: unit.Yes, CarryDays: unit.Of[unit.Count](2), StopsHarm: unit.No,
			Water: load.Pump{Daily: unit.Of[unit.Volume](0.6), Lift: unit.Of[unit.Length](18), PipeLength: unit.Of[unit.Length](60), PipeInner: unit.Of(26 * unit.Millimetre),
				Flow: unit.Of[unit.Flow](0.0004), Efficiency: unit.Of[unit.Ratio](0.3)}},
	}
}

func cabinPanels() []panel.Array {
	return []panel.Array{{
		Name: "South wall", Count: unit.Of[unit.Count](2), Power: unit.Of[unit.Power](430), Tilt: unit.Of(60 * unit.Degree), Azimuth: unit.Of(180 * unit.Degree), Strings: unit.Of[unit.Count](2),
		CableLen: unit.Of[unit.Length](8), CableArea: unit.Of(6 * unit.SquareMillimetre),
		Sheet: &panel.Sheet{Isc: unit.Of[unit.Current](11.0), Voc: unit.Of[unit.Voltage](49), Imp: unit.Of[unit.Current](10.4), Vmp: unit.Of[unit.Voltage](41.4),
			Alpha: unit.Of[unit.PerKelvin](0.0005), Beta: unit.Of[unit.PerKelvin](-0.0026), Cells: unit.Of[unit.Count](72), Series: unit.Of[unit.Count](1), Fuse: unit.Of[unit.Current](25)},
	}}
}

func cabinController(volts unit.Voltage) panel.Controller {
	return panel.Controller{Kind: panel.ControllerTracking, Night: unit.Of[unit.Power](0.4), BusVolts: unit.Of(volts), Power: unit.Of[unit.Power](1000),
		MaxInput: unit.Of[unit.Voltage](100), MaxInputA: unit.Of[unit.Current](35), MaxCharge: unit.Of[unit.Current](40), StringFuses: unit.No}
}

// cabinBank is what the batteries of the cabin have in common: how they are joined to the line.
func cabinBank(b cell.Bank) model.Store {
	b.Role, b.Origin = cell.RoleNight, cell.BlocksNew
	b.CableLength, b.CableArea = unit.Of[unit.Length](1.5), unit.Of(25*unit.SquareMillimetre)
	b.Fuse, b.FuseFrom, b.Breaking = unit.Of[unit.Current](80), unit.Of[unit.Length](0.15), unit.Of[unit.Current](10000)
	return model.Store{Cells: &b}
}

func cabinIron() model.Variant {
	return model.Variant{
		Name: "Iron phosphate, 100 Ah", Panels: cabinPanels(), Controller: cabinController(25.6),
		Stores: []model.Store{cabinBank(cell.Bank{Name: "25.6 V 100 Ah iron phosphate", Kind: cell.LFP, Capacity: unit.Of(100 * unit.AmpereHour), Voltage: unit.Of[unit.Voltage](25.6),
			Indoors: cell.InOwnRoom, Board: unit.Yes, BoardMost: unit.Of[unit.Current](100)})},
		Parts: append(cabinParts(), bought("Battery 25.6 V 100 Ah with its board", cost.AsBattery, 1, 560, 450, 750)),
	}
}

func cabinLead() model.Variant {
	return model.Variant{
		Name: "Lead, 2 × 12 V 280 Ah", Panels: cabinPanels(), Controller: cabinController(24),
		Stores: []model.Store{cabinBank(cell.Bank{Name: "Flooded lead", Kind: cell.FloodedLead, Capacity: unit.Of(280 * unit.AmpereHour), Voltage: unit.Of[unit.Voltage](12),
			Series: unit.Of[unit.Count](2), Indoors: cell.InShed, Vent: unit.Of[unit.Area](0.02)})},
		Parts: append(cabinParts(), bought("Lead battery 12 V 280 Ah", cost.AsBattery, 2, 420, 350, 520)),
	}
}

func cabinGenerator() model.Variant {
	return model.Variant{
		Name: "Iron phosphate, 75 Ah, and a generator", Panels: cabinPanels(), Controller: cabinController(25.6),
		Stores: []model.Store{cabinBank(cell.Bank{Name: "25.6 V 75 Ah iron phosphate", Kind: cell.LFP, Capacity: unit.Of(75 * unit.AmpereHour), Voltage: unit.Of[unit.Voltage](25.6),
			Indoors: cell.InOwnRoom, Board: unit.Yes, ChargeRate: unit.Of[unit.Ratio](0.7), BoardMost: unit.Of[unit.Current](100)})},
		Backup: model.Backup{Kind: model.BackupPetrol, Rated: unit.Of[unit.Power](1000), Charge: unit.Of[unit.Power](500), Start: unit.Of[unit.Ratio](0.4), Stop: unit.Of[unit.Ratio](0.85),
			From: clock(8, 0), To: clock(20, 0), PricePerL: unit.Of[unit.Money](1.8)},
		Parts: append(cabinParts(), bought("Battery 25.6 V 75 Ah with its board", cost.AsBattery, 1, 440, 360, 590),
			cost.Part{Name: "Petrol generator 1 kW, with charger", Get: cost.GetBuy, Of: cost.OfStore, Price: unit.Of[unit.Money](420)}),
	}
}

// bought is something that is bought, with a low and a high price. All of them are invented.
func bought(name string, as cost.As, count unit.Count, price, low, high unit.Money) cost.Part {
	of, worn := cost.OfPanel, unit.No
	if as == cost.AsBattery {
		of, worn = cost.OfStore, unit.Yes
	}
	return cost.Part{Name: name, Get: cost.GetBuy, Of: of, As: as, Count: unit.Of(count), Price: unit.Of(price), Low: unit.Of(low), High: unit.Of(high), Cells: worn}
}

// cabinParts are bought for every variant of the cabin.
func cabinParts() []cost.Part {
	return []cost.Part{
		bought("Panel 430 W", cost.AsPanel, 2, 95, 80, 130),
		{Name: "Fuse and switch for the panels", Get: cost.GetBuy, Of: cost.OfSafety, As: cost.AsPanelFuse, Price: unit.Of[unit.Money](35)},
		{Name: "Fuse 80 A that ends 10 kA, with holder", Get: cost.GetBuy, Of: cost.OfSafety, As: cost.AsFuse, Price: unit.Of[unit.Money](28)},
		{Name: "Cable, 25 mm²", Get: cost.GetBuy, Of: cost.OfStore, As: cost.AsCable, Price: unit.Of[unit.Money](24)},
		{Name: "Tracking controller 40 A", Get: cost.GetBuy, Of: cost.OfPanel, As: cost.AsController, Price: unit.Of[unit.Money](170)},
	}
}
