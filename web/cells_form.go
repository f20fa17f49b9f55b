package web

import (
	"duskweight/internal/model/cell"
	"duskweight/internal/model/unit"
)

// cellsForm is every input of one battery. Empty fields of the second part take the typical value of the kind, which
// the results name.
func cellsForm() []part[cell.Bank] {
	type b = cell.Bank
	return []part[b]{
		heading("The battery you have or want", "",
			text("name", "Name", func(b *b) *string { return &b.Name }),
			word("role", "It is there for", func(b *b) *string { return &b.Role }),
			word("kind", "Kind", func(b *b) *string { return &b.Kind }),
			number("block_capacity_c", "Capacity on the label", unit.Charges, func(b *b) *unit.Known[unit.Charge] { return &b.Capacity }, hint[b]("of one block")),
			number("block_voltage_v", "Voltage on the label", unit.Voltages, func(b *b) *unit.Known[unit.Voltage] { return &b.Voltage }),
			number("series", "In a row", unit.Counts, func(b *b) *unit.Known[unit.Count] { return &b.Series }),
			number("parallel", "Side by side", unit.Counts, func(b *b) *unit.Known[unit.Count] { return &b.Parallel }),
			number("rated_time_s", "Label holds for", unit.Hours, func(b *b) *unit.Known[unit.Duration] { return &b.RatedHours }, hint[b]("20 h on most lead batteries"), ofKind(unit.Hours, float64(unit.Hour), "1 h", "120 h", func(k cell.Kind) cell.Typical { return k.RatedHours })),
		),
		heading("Where it stands", "",
			word("place", "Place", func(b *b) *string { return &b.Indoors }),
			word("cells_are", "Cells are", func(b *b) *string { return &b.Origin }),
			word("management_board", "Board that stops charging in the cold", func(b *b) *string { return &b.Board }),
		),
		heading("Cable and fuse", "",
			number("cable_length_m", "Cable, one way", unit.Lengths, func(b *b) *unit.Known[unit.Length] { return &b.CableLength }),
			number("cable_area_m2", "Copper", unit.SmallAreas, func(b *b) *unit.Known[unit.Area] { return &b.CableArea }),
			number("fuse_a", "Fuse at the battery", unit.Currents, func(b *b) *unit.Known[unit.Current] { return &b.Fuse }),
			number("autonomy_days", "Days without sun to last", unit.Ratios, func(b *b) *unit.Known[unit.Ratio] { return &b.Autonomy }),
		),
		folded("What its data sheet says", "Empty takes the typical value of the kind.",
			number("usable_depth", "Share that is used", unit.Percents, func(b *b) *unit.Known[unit.Ratio] { return &b.Depth }, ofKind(unit.Percents, 1, "20 %", "100 %", func(k cell.Kind) cell.Typical { return k.Depth })),
			number("round_trip", "Energy out of energy in", unit.Percents, func(b *b) *unit.Known[unit.Ratio] { return &b.RoundTrip }, ofKind(unit.Percents, 1, "50 %", "98 %", func(k cell.Kind) cell.Typical { return k.RoundTrip })),
			number("charge_efficiency", "Charging alone", unit.Percents, func(b *b) *unit.Known[unit.Ratio] { return &b.ChargeEff }),
			number("discharge_efficiency", "Discharging alone", unit.Percents, func(b *b) *unit.Known[unit.Ratio] { return &b.DrawEff }),
			number("peukert", "Peukert exponent", unit.Ratios, func(b *b) *unit.Known[unit.Ratio] { return &b.Peukert }, ofKind(unit.Ratios, 1, "1", "1.4", func(k cell.Kind) cell.Typical { return k.Peukert })),
			number("charge_rate_per_h", "Fastest charge", unit.PerHours, func(b *b) *unit.Known[unit.Ratio] { return &b.ChargeRate }, ofKind(unit.PerHours, 1, "0.05", "2", func(k cell.Kind) cell.Typical { return k.ChargeRate })),
			number("draw_rate_per_h", "Fastest discharge", unit.PerHours, func(b *b) *unit.Known[unit.Ratio] { return &b.DrawRate }, ofKind(unit.PerHours, 1, "0.05", "5", func(k cell.Kind) cell.Typical { return k.DrawRate })),
			number("charge_min_c", "Coldest charge", unit.Temperatures, func(b *b) *unit.Known[unit.Celsius] { return &b.ChargeMin }, ofKind(unit.Temperatures, 1, "-30 °C", "10 °C", func(k cell.Kind) cell.Typical { return k.ChargeMin })),
			number("charge_max_c", "Warmest charge", unit.Temperatures, func(b *b) *unit.Known[unit.Celsius] { return &b.ChargeMax }, ofKind(unit.Temperatures, 1, "35 °C", "60 °C", func(k cell.Kind) cell.Typical { return k.ChargeMax })),
			number("leak_per_month", "Lost by itself a month", unit.Percents, func(b *b) *unit.Known[unit.Ratio] { return &b.Leak }, ofKind(unit.Percents, 1, "0.5 %", "30 %", func(k cell.Kind) cell.Typical { return k.Leak })),
			number("cycle_life", "Cycles it lasts", unit.Ratios, func(b *b) *unit.Known[unit.Ratio] { return &b.CycleLife }, ofKind(unit.Ratios, 1, "200", "15000", func(k cell.Kind) cell.Typical { return k.CycleLife })),
			number("cycle_life_depth", "At a depth of", unit.Percents, func(b *b) *unit.Known[unit.Ratio] { return &b.CycleDepth }, ofKind(unit.Percents, 1, "20 %", "100 %", func(k cell.Kind) cell.Typical { return k.CycleDepth })),
			number("cycle_life_slope", "Exponent of life over depth", unit.Ratios, func(b *b) *unit.Known[unit.Ratio] { return &b.CycleSlope }, ofKind(unit.Ratios, 1, "0.8", "2.5", func(k cell.Kind) cell.Typical { return k.CycleSlope })),
			number("calendar_life_s", "Life on the shelf", unit.Years, func(b *b) *unit.Known[unit.Duration] { return &b.Calendar }, ofKind(unit.Years, float64(cell.Year), "2 years", "30 years", func(k cell.Kind) cell.Typical { return k.Calendar })),
			number("standing_w", "Its own electronics take", unit.Powers, func(b *b) *unit.Known[unit.Power] { return &b.Standing }),
		),
	}
}
