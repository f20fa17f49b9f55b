package cells

import (
	"duskweight/internal/model/cell"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/typical"
)

// CellsForm is every input of one battery. Empty fields of the second part take the typical value of the kind, which
// the results name.
func CellsForm() []form.Part[cell.Bank] {
	type b = cell.Bank
	return []form.Part[b]{
		form.Heading("The battery", "",
			form.Text("name", "Name", func(b *b) *string { return &b.Name }),
			form.Word("role", "Purpose", func(b *b) *cell.Role { return &b.Role }),
			form.Word("kind", "Kind", func(b *b) *cell.Chemistry { return &b.Kind }),
			form.Number("block_capacity_c", "Capacity on the label", unit.Charges, func(b *b) *unit.Known[unit.Charge] { return &b.Capacity }, form.Hint[b]("of one block")),
			form.Number("block_voltage_v", "Voltage on the label", unit.Voltages, func(b *b) *unit.Known[unit.Voltage] { return &b.Voltage }),
			form.Number("series", "Blocks in a row", unit.Counts, func(b *b) *unit.Known[unit.Count] { return &b.Series }),
			form.Number("parallel", "Rows side by side", unit.Counts, func(b *b) *unit.Known[unit.Count] { return &b.Parallel }),
			form.Number("rated_time_s", "The label’s Ah are for a discharge in", unit.Hours, func(b *b) *unit.Known[unit.Duration] { return &b.RatedHours }, form.Hint[b]("20 h on most lead batteries"), ofKind(unit.Hours, float64(unit.Hour), "1 h", "120 h", func(k cell.Kind) cell.Typical { return k.RatedHours })),
		),
		form.Heading("Place of the battery", "",
			form.Word("place", "Place", func(b *b) *cell.Room { return &b.Indoors }),
			form.Word("cells_are", "State of the cells", func(b *b) *cell.Origin { return &b.Origin }),
			form.Word("management_board", "Board that stops charging in the cold", func(b *b) *unit.Answer { return &b.Board }),
			form.Number("board_max_a", "Most current of the board", unit.Currents, func(b *b) *unit.Known[unit.Current] { return &b.BoardMost }),
			form.Number("vent_area_m2", "Opening to the outside, low and again high", unit.Openings, func(b *b) *unit.Known[unit.Area] { return &b.Vent }),
		),
		form.Heading("Cable and fuse", "",
			form.Number("cable_length_m", "Cable, one way", unit.Lengths, func(b *b) *unit.Known[unit.Length] { return &b.CableLength }),
			form.Number("cable_area_m2", "Copper", unit.WireAreas, func(b *b) *unit.Known[unit.Area] { return &b.CableArea }),
			form.Number("fuse_a", "Fuse at the battery", unit.Currents, func(b *b) *unit.Known[unit.Current] { return &b.Fuse }),
			form.Number("breaking_a", "Short circuit the fuse can end", unit.Currents, func(b *b) *unit.Known[unit.Current] { return &b.Breaking }),
			form.Number("fuse_distance_m", "From battery to fuse", unit.Heights, func(b *b) *unit.Known[unit.Length] { return &b.FuseFrom }),
			form.Number("autonomy_days", "Days without sun to last", unit.Ratios, func(b *b) *unit.Known[unit.Ratio] { return &b.Autonomy }),
		),
		form.Folded("What its data sheet says", "If empty: the typical value of the kind.",
			form.Number("usable_depth", "Share that is used", unit.Percents, func(b *b) *unit.Known[unit.Ratio] { return &b.Depth }, ofKind(unit.Percents, 1, "20 %", "100 %", func(k cell.Kind) cell.Typical { return k.Depth })),
			form.Number("round_trip", "Energy out of energy in", unit.Percents, func(b *b) *unit.Known[unit.Ratio] { return &b.RoundTrip }, ofKind(unit.Percents, 1, "50 %", "98 %", func(k cell.Kind) cell.Typical { return k.RoundTrip })),
			form.Number("charge_efficiency", "Efficiency of charging alone", unit.Percents, func(b *b) *unit.Known[unit.Ratio] { return &b.ChargeEff }),
			form.Number("discharge_efficiency", "Efficiency of discharging alone", unit.Percents, func(b *b) *unit.Known[unit.Ratio] { return &b.DrawEff }),
			form.Number("peukert", "Peukert exponent", unit.Ratios, func(b *b) *unit.Known[unit.Ratio] { return &b.Peukert }, ofKind(unit.Ratios, 1, "1", "1.4", func(k cell.Kind) cell.Typical { return k.Peukert })),
			form.Number("charge_rate_per_h", "Fastest charge", unit.PerHours, func(b *b) *unit.Known[unit.Ratio] { return &b.ChargeRate }, ofKind(unit.PerHours, 1, "0.05", "2", func(k cell.Kind) cell.Typical { return k.ChargeRate })),
			form.Number("draw_rate_per_h", "Fastest discharge", unit.PerHours, func(b *b) *unit.Known[unit.Ratio] { return &b.DrawRate }, ofKind(unit.PerHours, 1, "0.05", "5", func(k cell.Kind) cell.Typical { return k.DrawRate })),
			form.Number("charge_min_c", "Coldest charge", unit.Temperatures, func(b *b) *unit.Known[unit.Celsius] { return &b.ChargeMin }, ofKind(unit.Temperatures, 1, "-30 °C", "10 °C", func(k cell.Kind) cell.Typical { return k.ChargeMin })),
			form.Number("charge_max_c", "Warmest charge", unit.Temperatures, func(b *b) *unit.Known[unit.Celsius] { return &b.ChargeMax }, ofKind(unit.Temperatures, 1, "35 °C", "60 °C", func(k cell.Kind) cell.Typical { return k.ChargeMax })),
			form.Number("leak_per_month", "Lost by itself a month", unit.Percents, func(b *b) *unit.Known[unit.Ratio] { return &b.Leak }, ofKind(unit.Percents, 1, "0.5 %", "30 %", func(k cell.Kind) cell.Typical { return k.Leak })),
			form.Number("cycle_life", "Cycles it lasts", unit.Ratios, func(b *b) *unit.Known[unit.Ratio] { return &b.CycleLife }, ofKind(unit.Ratios, 1, "200", "15000", func(k cell.Kind) cell.Typical { return k.CycleLife })),
			form.Number("cycle_life_depth", "Depth of those cycles", unit.Percents, func(b *b) *unit.Known[unit.Ratio] { return &b.CycleDepth }, ofKind(unit.Percents, 1, "20 %", "100 %", func(k cell.Kind) cell.Typical { return k.CycleDepth })),
			form.Number("cycle_life_slope", "Exponent of life over depth", unit.Ratios, func(b *b) *unit.Known[unit.Ratio] { return &b.CycleSlope }, ofKind(unit.Ratios, 1, "0.8", "2.5", func(k cell.Kind) cell.Typical { return k.CycleSlope })),
			form.Number("calendar_life_s", "Life on the shelf", unit.Years, func(b *b) *unit.Known[unit.Duration] { return &b.Calendar }, ofKind(unit.Years, float64(cell.Year), "2 years", "30 years", func(k cell.Kind) cell.Typical { return k.Calendar })),
			form.Number("end_share", "Share of its capacity at which it is replaced", unit.Percents, func(b *b) *unit.Known[unit.Ratio] { return &b.EndShare }, form.UsualBy(unit.Percents, func(*b) typical.Habit { return typical.None(typical.WhyYours, "50 %", "95 %") })),
			form.Number("internal_ohm", "Internal resistance of one block", unit.Resistances, func(b *b) *unit.Known[unit.Resistance] { return &b.Internal }),
			form.Number("standing_w", "Power of its own electronics", unit.Powers, func(b *b) *unit.Known[unit.Power] { return &b.Standing }),
		),
	}
}
