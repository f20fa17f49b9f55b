package load

import (
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/typical"
)

// mostAppliances is how many rows a night may have.
const mostAppliances = 200

// LoadForm is what the night wants.
func LoadForm() []form.Part[load.Load] {
	type l = load.Load
	type a = load.Appliance
	return []form.Part[l]{
		form.Rows("appliances", "Energy of the night", "lamp or device", mostAppliances, func(l *l) *[]a { return &l.Appliances }, a{Supply: load.SupplyDc, Priority: load.PriorityEssential, AfterDusk: unit.Yes},
			form.Text("name", "Name", func(a *a) *string { return &a.Name }),
			form.Number("power_w", "Power of one", unit.Powers, func(a *a) *unit.Known[unit.Power] { return &a.Power }),
			form.Number("count", "How many", unit.Counts, func(a *a) *unit.Known[unit.Count] { return &a.Count }),
			form.Number("from_dusk_s", "Time on from dusk", unit.Hours, func(a *a) *unit.Known[unit.Duration] { return &a.FromDusk }, form.Hint[a](""), form.UsualBy(unit.Hours, fromDusk)),
			form.Number("from_s", "Or time when it goes on", unit.ClockTimes, func(a *a) *unit.Known[unit.Duration] { return &a.From }, form.Hint[a]("")),
			form.Number("to_s", "Time when it goes off", unit.ClockTimes, func(a *a) *unit.Known[unit.Duration] { return &a.To }, form.Hint[a]("")),
			form.Word("after_dusk", "Used in the dark only", func(a *a) *unit.Answer { return &a.AfterDusk }),
			form.Word("priority", "Importance", func(a *a) *load.Priority { return &a.Priority }),
			form.Folded("More about it", "",
				form.Number("share_on", "Share of that time it runs", unit.Percents, func(a *a) *unit.Known[unit.Ratio] { return &a.Share }, form.Hint[a]("if empty: 100 %")),
				form.Number("label_j_year", "Or the energy on its label, a year", unit.BigEnergies, func(a *a) *unit.Known[unit.Energy] { return &a.Label }, form.UsualBy(unit.BigEnergies, func(*a) typical.Habit { return typical.None(typical.WhyLabel, "10 kWh", "1500 kWh") })),
				form.Number("measured_j_day", "Or energy a day, measured with a meter", unit.Energies, func(a *a) *unit.Known[unit.Energy] { return &a.Measured }, form.UsualBy(unit.Energies, func(*a) typical.Habit { return typical.None(typical.WhyMeasure, "1 Wh", "10000 Wh") })),
				form.Word("follows_heat", "Cooling device, runs longer in heat", func(a *a) *unit.Answer { return &a.Heat }),
				form.Word("supply", "Supply", func(a *a) *load.Supply { return &a.Supply }),
				form.Word("purpose", "Purpose", func(a *a) *load.Purpose { return &a.Purpose }),
				form.Word("stops_harm", "A person or an animal is harmed when it stops", func(a *a) *unit.Answer { return &a.StopsHarm }),
				form.Number("surge_w", "Power of one at its start", unit.Powers, func(a *a) *unit.Known[unit.Power] { return &a.Surge }),
				form.Number("surge_s", "Length of its start", unit.Durations, func(a *a) *unit.Known[unit.Duration] { return &a.SurgeTime }),
				form.Number("power_factor", "Power factor", unit.Ratios, func(a *a) *unit.Known[unit.Ratio] { return &a.PowerFact }),
				form.Word("at_once", "Runs together with others", func(a *a) *unit.Answer { return &a.AtOnce }),
				form.Number("volts_v", "Voltage it needs", unit.Voltages, func(a *a) *unit.Known[unit.Voltage] { return &a.Volts }),
				form.Word("own_converter", "Has its own converter", func(a *a) *unit.Answer { return &a.Converter }),
				form.Number("cable_length_m", "Its cable, one way", unit.Lengths, func(a *a) *unit.Known[unit.Length] { return &a.CableLen }),
				form.Number("cable_area_m2", "Copper of its cable", unit.WireAreas, func(a *a) *unit.Known[unit.Area] { return &a.CableArea })),
			form.Folded("When the stores run low", "",
				form.Number("shed_below", "Charge below which it goes off", unit.Percents, func(a *a) *unit.Known[unit.Ratio] { return &a.ShedBelow }, form.Hint[a]("charge of the stores")),
				form.Number("back_above", "Charge at which it goes on again", unit.Percents, func(a *a) *unit.Known[unit.Ratio] { return &a.BackAbove }, form.Hint[a]("if empty: 10 % more")),
				form.Word("waits", "May wait for the sun", func(a *a) *unit.Answer { return &a.Waits }, form.Hint[a]("then it runs between the two times above, in whole hours")),
				form.Number("energy_j_day", "Energy of one in a day", unit.Energies, func(a *a) *unit.Known[unit.Energy] { return &a.DayEnergy }, form.Hint[a]("for a device that waits")),
				form.Number("run_above", "Charge above which it runs", unit.Percents, func(a *a) *unit.Known[unit.Ratio] { return &a.RunAbove }, form.Hint[a]("if empty: 50 %; below it only on sun that is left over")),
				form.Word("must_today", "Runs in its last hours anyway", func(a *a) *unit.Answer { return &a.MustToday }),
				form.Number("carry_days", "Days it may wait", unit.Counts, func(a *a) *unit.Known[unit.Count] { return &a.CarryDays }, form.Hint[a]("if empty: 0")),
				form.Number("water.m3_day", "Water pumped in a day", unit.Volumes, func(a *a) *unit.Known[unit.Volume] { return &a.Water.Daily }, form.Hint[a]("its energy follows from it")),
				form.Number("water.lift_m", "Height it is lifted", unit.Heights, func(a *a) *unit.Known[unit.Length] { return &a.Water.Lift }),
				form.Number("water.pipe_length_m", "Length of its pipe", unit.Lengths, func(a *a) *unit.Known[unit.Length] { return &a.Water.PipeLength }),
				form.Number("water.pipe_inner_m", "Inner width of its pipe", unit.SmallLengths, func(a *a) *unit.Known[unit.Length] { return &a.Water.PipeInner }),
				form.Number("water.flow_m3_s", "Flow while it runs", unit.Flows, func(a *a) *unit.Known[unit.Flow] { return &a.Water.Flow }),
				form.Number("water.efficiency", "Efficiency of the pump", unit.Percents, func(a *a) *unit.Known[unit.Ratio] { return &a.Water.Efficiency }))),
		form.Rows("standing", "What uses power all the time", "device", 50, func(l *l) *[]load.Standing { return &l.Standing }, load.Standing{}, page.StandingRow()...),
		form.Heading("Inverter", "Makes house current from 12 V; it uses power even with nothing plugged in.",
			form.Word("inverter.present", "Inverter present", func(l *l) *unit.Answer { return &l.Inverter.Present }),
			form.Number("inverter.idle_w", "Power with nothing plugged in", unit.Powers, func(l *l) *unit.Known[unit.Power] { return &l.Inverter.Idle }),
			form.Number("inverter.efficiency", "Efficiency", unit.Percents, func(l *l) *unit.Known[unit.Ratio] { return &l.Inverter.Efficiency }, form.Hint[l]("if empty: 85 %")),
			form.Number("inverter.rated_w", "Rated power", unit.Powers, func(l *l) *unit.Known[unit.Power] { return &l.Inverter.Rated }),
			form.Number("inverter.surge_w", "Power for a start", unit.Powers, func(l *l) *unit.Known[unit.Power] { return &l.Inverter.Surge }),
			form.Number("inverter.input_v", "Voltage on its battery side", unit.Voltages, func(l *l) *unit.Known[unit.Voltage] { return &l.Inverter.Input }),
			form.Number("inverter.cut_v", "Voltage below which it switches off", unit.Voltages, func(l *l) *unit.Known[unit.Voltage] { return &l.Inverter.Cut }),
			form.Number("inverter.efficiency_tenth", "Efficiency at a tenth of its power", unit.Percents, func(l *l) *unit.Known[unit.Ratio] { return &l.Inverter.Tenth }),
			form.Number("inverter.efficiency_full", "Efficiency at its full power", unit.Percents, func(l *l) *unit.Known[unit.Ratio] { return &l.Inverter.Full }),
			form.Word("inverter.own_sockets", "Devices plug into the inverter itself", func(l *l) *unit.Answer { return &l.Inverter.OwnSockets }),
			form.Number("inverter.cable_length_m", "Its cable, one way", unit.Lengths, func(l *l) *unit.Known[unit.Length] { return &l.Inverter.CableLen }),
			form.Number("inverter.cable_area_m2", "Copper of its cable", unit.WireAreas, func(l *l) *unit.Known[unit.Area] { return &l.Inverter.CableArea })),
		form.Folded("Which hours are night", "",
			form.Word("night.hours", "Night hours", func(l *l) *load.NightOf { return &l.Night.Own }),
			form.Number("night.from_s", "Start of the night", unit.ClockTimes, func(l *l) *unit.Known[unit.Duration] { return &l.Night.From }, form.Hint[l]("")),
			form.Number("night.to_s", "End of the night", unit.ClockTimes, func(l *l) *unit.Known[unit.Duration] { return &l.Night.To }, form.Hint[l](""))),
		form.Folded("The load of later years", "",
			form.Number("growth_per_year", "Growth a year", unit.Percents, func(l *l) *unit.Known[unit.Ratio] { return &l.Growth }, form.Hint[l]("growth of lamps and devices; with the years below, the plan is for the load at their end")),
			form.Number("growth_years", "Years of growth", unit.Counts, func(l *l) *unit.Known[unit.Count] { return &l.GrowthYears }, form.Hint[l](""))),
	}
}

// fromDusk offers an evening where no hours of the clock are given.
func fromDusk(a *load.Appliance) typical.Habit {
	if a.From.Is {
		return typical.None(typical.WhyYours, "0.1 h", "14 h")
	}
	return typical.PlainHabits["load.Appliance from_dusk_s"]
}
