package web

import (
	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// What is usual depends on the kind of stage, load or battery.

// stageRatio is the usual ratio of one stage. A box of several has more.
func stageRatio(s *lift.Stage) habit {
	switch s.Kind {
	case "worm":
		return typ("40", "4", "100", "a worm with one start", source.FromMemory)
	case "strain_wave":
		return typ("30", "15", "160", "a strain wave gear", source.FromMemory)
	case "cycloid":
		return typ("15", "5", "120", "a cycloid gear", source.FromMemory)
	case "box":
		return typ("50", "2", "1000", "a small gear motor", source.FromMemory)
	}
	return hoistHabits["lift.Stage ratio"]
}

// stageEfficiency is the usual efficiency of one stage at full load.
func stageEfficiency(s *lift.Stage) habit {
	switch s.Kind {
	case "planetary":
		return typ("90 %", "80 %", "97 %", "a planetary stage of a small gear motor", source.FromMemory)
	case "spur":
		return typ("97 %", "80 %", "98 %", "metal spur wheels on ball bearings; printed and greased 88 %", source.FromMemory)
	case "bevel":
		return typ("95 %", "90 %", "97 %", "bevel wheels", source.FromMemory)
	case "worm":
		return typ("50 %", "25 %", "86 %", "a worm with one start; table 13-6 gives 25 to 86 %", source.Shigley)
	case "belt":
		return typ("92 %", "85 %", "97 %", "a V-belt; a toothed one 97 %", source.FromMemory)
	case "chain":
		return typ("97 %", "90 %", "98 %", "a clean roller chain; dry 92 %", source.FromMemory)
	case "strain_wave":
		return typ("55 %", "45 %", "90 %", "a printed strain wave gear", source.FromMemory)
	case "cycloid":
		return typ("70 %", "60 %", "92 %", "a printed cycloid gear", source.FromMemory)
	case "box":
		return typ("75 %", "50 %", "96 %", "a small gear motor of 50 to 100 to 1", source.FromMemory)
	}
	return hoistHabits["lift.Stage efficiency"]
}

// loadBegins is the usual voltage where a load on the motor's wires begins to take current.
func loadBegins(l *lift.DCLoad) habit {
	switch l.Kind {
	case "cell":
		return typ("12.8 V", "3 V", "60 V", "a lead battery of 12 V; iron phosphate 13.3 V", source.FromMemory)
	case "clamp":
		return typ("14 V", "5 V", "60 V", "a clamp for a line of 12 V", source.FromMemory)
	}
	return hoistHabits["lift.DCLoad threshold_v"]
}

// loadSlope is how much more voltage it wants for each ampere more.
func loadSlope(l *lift.DCLoad) habit {
	switch l.Kind {
	case "cell":
		return typ("0.03 Ω", "0.005 Ω", "0.5 Ω", "a battery of 12 V", source.FromMemory)
	case "clamp":
		return typ("0.2 Ω", "0.05 Ω", "1 Ω", "a zener diode with a transistor", source.FromMemory)
	}
	return hoistHabits["lift.DCLoad slope_ohm"]
}

// ofKind is the typical value of the kind of a battery, which an empty field counts as, in the unit of its field; scale
// brings the kind's number to SI.
func ofKind(q unit.Quantity, scale float64, low, high string, at func(cell.Kind) cell.Typical) func(*input[cell.Bank]) {
	return usualBy(q, func(b *cell.Bank) habit {
		k, ok := cell.KindOf(b.Kind)
		if !ok {
			return none(whyLabel, low, high)
		}
		v := at(k)
		take := q.FormatFull(v.Value*scale, unit.Metric)
		return habit{take: take, low: low, high: high, of: v.Source.Place, from: v.Source.Source, counts: true}
	})
}
