package typical

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
)

// What is usual depends on the kind of stage, load or battery.

// StageRatio is the usual ratio of one stage. A box of several has more.
func StageRatio(s *lift.Stage) Habit {
	switch s.Kind {
	case lift.StageWorm:
		return Value("40", "4", "100", "a worm with one start", source.FromMemory)
	case lift.StageStrainWave:
		return Value("30", "15", "160", "a strain wave gear", source.FromMemory)
	case lift.StageCycloid:
		return Value("15", "5", "120", "a cycloid gear", source.FromMemory)
	case lift.StageBox:
		return Value("50", "2", "1000", "a small gear motor", source.FromMemory)
	}
	return HoistHabits["lift.Stage ratio"]
}

// StageEfficiency is the usual efficiency of one stage at full load.
func StageEfficiency(s *lift.Stage) Habit {
	switch s.Kind {
	case lift.StagePlanetary:
		return Value("90 %", "80 %", "97 %", "a planetary stage of a small gear motor", source.FromMemory)
	case lift.StageSpur:
		return Value("97 %", "80 %", "98 %", "metal spur wheels on ball bearings; printed and greased 88 %", source.FromMemory)
	case lift.StageBevel:
		return Value("95 %", "90 %", "97 %", "bevel wheels", source.FromMemory)
	case lift.StageWorm:
		return Value("50 %", "25 %", "86 %", "a worm with one start; table 13-6 gives 25 to 86 %", source.Shigley)
	case lift.StageBelt:
		return Value("92 %", "85 %", "97 %", "a V-belt; a toothed one 97 %", source.FromMemory)
	case lift.StageChain:
		return Value("97 %", "90 %", "98 %", "a clean roller chain; dry 92 %", source.FromMemory)
	case lift.StageStrainWave:
		return Value("55 %", "45 %", "90 %", "a printed strain wave gear", source.FromMemory)
	case lift.StageCycloid:
		return Value("70 %", "60 %", "92 %", "a printed cycloid gear", source.FromMemory)
	case lift.StageBox:
		return Value("75 %", "50 %", "96 %", "a small gear motor of 50 to 100 to 1", source.FromMemory)
	}
	return HoistHabits["lift.Stage efficiency"]
}

// LoadBegins is the usual voltage where a load on the motor's wires begins to take current.
func LoadBegins(l *lift.DCLoad) Habit {
	switch l.Kind {
	case lift.LoadCell:
		return Value("12.8 V", "3 V", "60 V", "a lead battery of 12 V; iron phosphate 13.3 V", source.FromMemory)
	case lift.LoadClamp:
		return Value("14 V", "5 V", "60 V", "a clamp for a line of 12 V", source.FromMemory)
	}
	return HoistHabits["lift.DCLoad threshold_v"]
}

// LoadSlope is how much more voltage it wants for each ampere more.
func LoadSlope(l *lift.DCLoad) Habit {
	switch l.Kind {
	case lift.LoadCell:
		return Value("0.03 Ω", "0.005 Ω", "0.5 Ω", "a battery of 12 V", source.FromMemory)
	case lift.LoadClamp:
		return Value("0.2 Ω", "0.05 Ω", "1 Ω", "a zener diode with a transistor", source.FromMemory)
	}
	return HoistHabits["lift.DCLoad slope_ohm"]
}
