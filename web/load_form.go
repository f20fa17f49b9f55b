package web

import (
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
)

// loadForm is what the night wants.
func loadForm() []part[load.Load] {
	type l = load.Load
	type a = load.Appliance
	return []part[l]{
		rows("appliances", "What the night needs", "lamp or device", 200, func(l *l) *[]a { return &l.Appliances }, a{Supply: "dc", Priority: "essential", AfterDusk: "yes"},
			text("name", "What", func(a *a) *string { return &a.Name }),
			number("power_w", "Power of one", unit.Powers, func(a *a) *unit.Known[unit.Power] { return &a.Power }),
			number("count", "How many", unit.Counts, func(a *a) *unit.Known[unit.Count] { return &a.Count }),
			number("from_dusk_s", "From dusk, for", unit.Hours, func(a *a) *unit.Known[unit.Duration] { return &a.FromDusk }, hint[a](""), usualBy(unit.Hours, fromDusk)),
			number("from_s", "Or on from", unit.ClockTimes, func(a *a) *unit.Known[unit.Duration] { return &a.From }, hint[a]("")),
			number("to_s", "Until", unit.ClockTimes, func(a *a) *unit.Known[unit.Duration] { return &a.To }, hint[a]("")),
			word("after_dusk", "In the dark only", func(a *a) *string { return &a.AfterDusk }),
			word("priority", "It is", func(a *a) *string { return &a.Priority }),
			folded("More of it", "",
				number("share_on", "Share of that time on", unit.Percents, func(a *a) *unit.Known[unit.Ratio] { return &a.Share }, hint[a]("empty counts as 100 %")),
				word("supply", "Fed from", func(a *a) *string { return &a.Supply }),
				word("purpose", "For", func(a *a) *string { return &a.Purpose }))),
		rows("standing", "What uses power all the time", "device", 50, func(l *l) *[]load.Standing { return &l.Standing }, load.Standing{}, standingRow()...),
		heading("Inverter", "Makes house current from 12 V; it takes power even with nothing plugged in.",
			word("inverter.present", "Is there one", func(l *l) *string { return &l.Inverter.Present }),
			number("inverter.idle_w", "Takes all the time", unit.Powers, func(l *l) *unit.Known[unit.Power] { return &l.Inverter.Idle }),
			number("inverter.efficiency", "Efficiency", unit.Percents, func(l *l) *unit.Known[unit.Ratio] { return &l.Inverter.Efficiency }, hint[l]("empty counts as 85 %"))),
		folded("Which hours are night", "",
			word("night.hours", "Night by", func(l *l) *string { return &l.Night.Own }),
			number("night.from_s", "From", unit.ClockTimes, func(l *l) *unit.Known[unit.Duration] { return &l.Night.From }, hint[l]("")),
			number("night.to_s", "Until", unit.ClockTimes, func(l *l) *unit.Known[unit.Duration] { return &l.Night.To }, hint[l](""))),
	}
}

// fromDusk offers an evening where no hours of the clock are given.
func fromDusk(a *load.Appliance) habit {
	if a.From.Is {
		return none(whyYours, "0.1 h", "14 h")
	}
	return plainHabits["load.Appliance from_dusk_s"]
}

func standingRow() []part[load.Standing] {
	return []part[load.Standing]{
		text("name", "What", func(s *load.Standing) *string { return &s.Name }),
		number("power_w", "Power", unit.Powers, func(s *load.Standing) *unit.Known[unit.Power] { return &s.Power }),
	}
}
