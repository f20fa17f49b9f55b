package web

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// trialsForm is the record of what was tried with one hoist.
func trialsForm() []part[lift.Hoist] {
	type t = lift.Trials
	return within("trials", func(h *lift.Hoist) *t { return &h.Trials },
		heading("Load steps", "With dead weight, 100 mm off the ground first, then the whole travel. Nobody inside the keep-out.",
			stepInputs("at_25", "25 %", func(t *t) *lift.LoadStep { return &t.Steps.S25 }),
			stepInputs("at_50", "50 %", func(t *t) *lift.LoadStep { return &t.Steps.S50 }),
			stepInputs("at_75", "75 %", func(t *t) *lift.LoadStep { return &t.Steps.S75 }),
			stepInputs("at_100", "100 %", func(t *t) *lift.LoadStep { return &t.Steps.S100 }),
			stepInputs("at_125", "125 %", func(t *t) *lift.LoadStep { return &t.Steps.S125 })),
		rows("failures", "What broke, fell or jerked", "failure", 40, func(t *t) *[]lift.Failure { return &t.Failures }, lift.Failure{},
			text("date", "Date", func(f *lift.Failure) *string { return &f.Date }),
			long("what", "What broke or moved", func(f *lift.Failure) *string { return &f.What }),
			word("shock", "Did it fall, jerk or hit a stop?", func(f *lift.Failure) *string { return &f.Shock }, hint[lift.Failure]("empty counts as yes")),
			word("looked.rope", "Rope, looked at", func(f *lift.Failure) *string { return &f.Look.Rope }),
			word("looked.knots", "Knots and ends, looked at", func(f *lift.Failure) *string { return &f.Look.Knots }, hint[lift.Failure]("a knot tied again is a new knot")),
			word("looked.pulleys", "Pulleys and what holds them", func(f *lift.Failure) *string { return &f.Look.Pulleys }),
			word("looked.pins", "Pins, drum, gears, brake, stops", func(f *lift.Failure) *string { return &f.Look.Pins }),
			word("looked.container", "What holds the mass together", func(f *lift.Failure) *string { return &f.Look.Container }),
			word("looked.base", "Base, posts and beam", func(f *lift.Failure) *string { return &f.Look.Base }),
			text("looked.note", "Who looked, and when", func(f *lift.Failure) *string { return &f.Look.Note })),
		rows("raises", "Lifts", "lift", 100, func(t *t) *[]lift.RaiseTrial { return &t.Raises }, lift.RaiseTrial{},
			text("date", "Date", func(r *lift.RaiseTrial) *string { return &r.Date }),
			number("mass_kg", "Mass", unit.Masses, func(r *lift.RaiseTrial) *unit.Known[unit.Mass] { return &r.Mass }, hint[lift.RaiseTrial]("all that hung; 0 for motor and gears alone")),
			number("voltage_v", "Volts at the motor", unit.Voltages, func(r *lift.RaiseTrial) *unit.Known[unit.Voltage] { return &r.Voltage }),
			number("current_a", "Amps while it moved", unit.Currents, func(r *lift.RaiseTrial) *unit.Known[unit.Current] { return &r.Current }),
			number("travel_m", "Went up", unit.Lengths, func(r *lift.RaiseTrial) *unit.Known[unit.Length] { return &r.Travel }),
			number("time_s", "In", unit.Durations, func(r *lift.RaiseTrial) *unit.Known[unit.Duration] { return &r.Time }),
			number("motor_c", "Motor at the end", unit.Temperatures, func(r *lift.RaiseTrial) *unit.Known[unit.Celsius] { return &r.Warm }),
			text("note", "Note", func(r *lift.RaiseTrial) *string { return &r.Note })),
		rows("lowers", "Ways down", "way down", 100, func(t *t) *[]lift.LowerTrial { return &t.Lowers }, lift.LowerTrial{},
			text("date", "Date", func(r *lift.LowerTrial) *string { return &r.Date }),
			number("mass_kg", "Mass", unit.Masses, func(r *lift.LowerTrial) *unit.Known[unit.Mass] { return &r.Mass }),
			number("voltage_v", "Volts at the motor", unit.Voltages, func(r *lift.LowerTrial) *unit.Known[unit.Voltage] { return &r.Voltage }),
			number("current_a", "Amps while it moved", unit.Currents, func(r *lift.LowerTrial) *unit.Known[unit.Current] { return &r.Current }),
			number("travel_m", "Came down", unit.Lengths, func(r *lift.LowerTrial) *unit.Known[unit.Length] { return &r.Travel }),
			number("time_s", "In", unit.Durations, func(r *lift.LowerTrial) *unit.Known[unit.Duration] { return &r.Time }),
			number("motor_c", "Motor at the end", unit.Temperatures, func(r *lift.LowerTrial) *unit.Known[unit.Celsius] { return &r.Warm }),
			text("note", "Note", func(r *lift.LowerTrial) *string { return &r.Note })),
		folded("Smallest mass that comes down", "Close to the ground, lamps off. Add a little at a time.",
			number("least.alone_kg", "Came down by itself", unit.Masses, func(t *t) *unit.Known[unit.Mass] { return &t.Least.Alone }, hint[t]("the smallest that did")),
			number("least.alone_stays_kg", "Stayed where it was", unit.Masses, func(t *t) *unit.Known[unit.Mass] { return &t.Least.AloneStays }, hint[t]("the largest that did")),
			number("least.push_kg", "Went on after a push", unit.Masses, func(t *t) *unit.Known[unit.Mass] { return &t.Least.Push }, hint[t]("the smallest that did")),
			number("least.push_stays_kg", "Stopped again after a push", unit.Masses, func(t *t) *unit.Known[unit.Mass] { return &t.Least.PushStays }, hint[t]("the largest that did")),
			text("least.date", "Date", func(t *t) *string { return &t.Least.Date })),
		folded("Motor temperature", "Each line is one reading. A line with time 0 begins a new run. Write down some readings while it cools too.",
			word("warm_at", "What the thermometer touches", func(t *t) *string { return &t.WarmAt }, hint[t]("the winding is hotter than the case")),
			rows("warmth", "Readings", "reading", 200, func(t *t) *[]lift.WarmthTrial { return &t.Warmth }, lift.WarmthTrial{},
				number("at_s", "Time since the start", unit.Minutes, func(r *lift.WarmthTrial) *unit.Known[unit.Duration] { return &r.At }),
				number("motor_c", "Motor", unit.Temperatures, func(r *lift.WarmthTrial) *unit.Known[unit.Celsius] { return &r.Warm }),
				number("air_c", "Air", unit.Temperatures, func(r *lift.WarmthTrial) *unit.Known[unit.Celsius] { return &r.Air }),
				number("current_a", "Amps since the last line", unit.Currents, func(r *lift.WarmthTrial) *unit.Known[unit.Current] { return &r.Current }),
				number("voltage_v", "Volts since the last line", unit.Voltages, func(r *lift.WarmthTrial) *unit.Known[unit.Voltage] { return &r.Voltage }))),
		rows("held", "Dead weight on brake, catch or base", "test", 40, func(t *t) *[]lift.HeldTrial { return &t.Held }, lift.HeldTrial{},
			text("date", "Date", func(r *lift.HeldTrial) *string { return &r.Date }),
			word("what", "What was tested", func(r *lift.HeldTrial) *string { return &r.What }),
			number("mass_kg", "Dead weight", unit.Masses, func(r *lift.HeldTrial) *unit.Known[unit.Mass] { return &r.Mass }),
			number("time_s", "For", unit.Minutes, func(r *lift.HeldTrial) *unit.Known[unit.Duration] { return &r.Time }),
			word("held", "Held, nothing moved", func(r *lift.HeldTrial) *string { return &r.Held }),
			text("note", "Note", func(r *lift.HeldTrial) *string { return &r.Note })),
	)
}

// stepInputs are the inputs of one load step.
func stepInputs(key, title string, at func(*lift.Trials) *lift.LoadStep) part[lift.Trials] {
	type s = lift.LoadStep
	return heading(title+" of the mass", "", within("steps."+key, at,
		word("done", "Passed", func(s *s) *string { return &s.Done }, hint[s]("nothing moved, slipped or got hot")),
		number("mass_kg", "Mass that hung", unit.Masses, func(s *s) *unit.Known[unit.Mass] { return &s.Mass }),
		text("date", "Date", func(s *s) *string { return &s.Date }),
		text("note", "Note", func(s *s) *string { return &s.Note }))...)
}
