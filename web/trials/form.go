package trials

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// TrialsForm is the record of what was tried with one hoist.
func TrialsForm() []form.Part[lift.Hoist] { return trialsFormOn("") }

// trialsFormOn is the record with new rows of that day.
func trialsFormOn(today reason.Day) []form.Part[lift.Hoist] {
	type t = lift.Trials
	day := string(today)
	return form.Within("trials", func(h *lift.Hoist) *t { return &h.Trials },
		form.Heading("Load steps", "Use dead weight. Lift it "+page.FirstLiftMark+" off the ground first, then the whole travel. Let nobody inside the keep-out.",
			stepInputs("at_25", "25 %", func(t *t) *lift.LoadStep { return &t.Steps.S25 }),
			stepInputs("at_50", "50 %", func(t *t) *lift.LoadStep { return &t.Steps.S50 }),
			stepInputs("at_75", "75 %", func(t *t) *lift.LoadStep { return &t.Steps.S75 }),
			stepInputs("at_100", "100 %", func(t *t) *lift.LoadStep { return &t.Steps.S100 }),
			stepInputs("at_125", "125 %", func(t *t) *lift.LoadStep { return &t.Steps.S125 })),
		form.Rows("failures", "Parts that broke, fell or jerked", "failure", 40, func(t *t) *[]lift.Failure { return &t.Failures }, lift.Failure{Date: day},
			append([]form.Part[lift.Failure]{
				form.Text("date", "Date", func(f *lift.Failure) *string { return &f.Date }),
				form.Long("what", "What broke or moved", func(f *lift.Failure) *string { return &f.What }),
				form.Word("shock", "Did it fall, jerk or hit a stop?", func(f *lift.Failure) *unit.Answer { return &f.Shock }, form.Hint[lift.Failure]("if empty: yes"))},
				lookInputs(func(f *lift.Failure) *lift.Look { return &f.Look })...)...),
		form.Rows("looks", "Regular looks", "look", 60, func(t *t) *[]lift.LookTrial { return &t.Looks }, lift.LookTrial{Date: day},
			append([]form.Part[lift.LookTrial]{form.Text("date", "Date", func(l *lift.LookTrial) *string { return &l.Date })},
				lookInputs(func(l *lift.LookTrial) *lift.Look { return &l.Look })...)...),
		form.Rows("raises", "Lifts", "lift", 100, func(t *t) *[]lift.RaiseTrial { return &t.Raises }, lift.RaiseTrial{Date: day},
			form.Text("date", "Date", func(r *lift.RaiseTrial) *string { return &r.Date }),
			form.Number("mass_kg", "Mass", unit.Masses, func(r *lift.RaiseTrial) *unit.Known[unit.Mass] { return &r.Mass }, form.Hint[lift.RaiseTrial]("all that hung; 0 for motor and gears alone")),
			form.Number("voltage_v", "Volts at the motor", unit.Voltages, func(r *lift.RaiseTrial) *unit.Known[unit.Voltage] { return &r.Voltage }),
			form.Number("current_a", "Amps while it moved", unit.Currents, func(r *lift.RaiseTrial) *unit.Known[unit.Current] { return &r.Current }),
			form.Number("travel_m", "Distance up", unit.Heights, func(r *lift.RaiseTrial) *unit.Known[unit.Length] { return &r.Travel }),
			form.Number("time_s", "Time it took", unit.Durations, func(r *lift.RaiseTrial) *unit.Known[unit.Duration] { return &r.Time }),
			form.Number("motor_c", "Motor at the end", unit.Temperatures, func(r *lift.RaiseTrial) *unit.Known[unit.Celsius] { return &r.Warm }),
			form.Text("note", "Note", func(r *lift.RaiseTrial) *string { return &r.Note })),
		form.Rows("lowers", "Ways down", "way down", 100, func(t *t) *[]lift.LowerTrial { return &t.Lowers }, lift.LowerTrial{Date: day},
			form.Text("date", "Date", func(r *lift.LowerTrial) *string { return &r.Date }),
			form.Number("mass_kg", "Mass", unit.Masses, func(r *lift.LowerTrial) *unit.Known[unit.Mass] { return &r.Mass }),
			form.Number("voltage_v", "Volts at the motor", unit.Voltages, func(r *lift.LowerTrial) *unit.Known[unit.Voltage] { return &r.Voltage }),
			form.Number("current_a", "Amps while it moved", unit.Currents, func(r *lift.LowerTrial) *unit.Known[unit.Current] { return &r.Current }),
			form.Number("travel_m", "Distance down", unit.Heights, func(r *lift.LowerTrial) *unit.Known[unit.Length] { return &r.Travel }),
			form.Number("time_s", "Time it took", unit.Durations, func(r *lift.LowerTrial) *unit.Known[unit.Duration] { return &r.Time }),
			form.Number("motor_c", "Motor at the end", unit.Temperatures, func(r *lift.LowerTrial) *unit.Known[unit.Celsius] { return &r.Warm }),
			form.Text("note", "Note", func(r *lift.LowerTrial) *string { return &r.Note })),
		form.Folded("Smallest mass that comes down", "Close to the ground, lamps off. Add a little at a time.",
			form.Number("least.alone_kg", "Mass that came down by itself", unit.Masses, func(t *t) *unit.Known[unit.Mass] { return &t.Least.Alone }, form.Hint[t]("the smallest mass that did")),
			form.Number("least.alone_stays_kg", "Mass that stayed where it was", unit.Masses, func(t *t) *unit.Known[unit.Mass] { return &t.Least.AloneStays }, form.Hint[t]("the largest mass that stayed")),
			form.Number("least.push_kg", "Mass that went on after a push", unit.Masses, func(t *t) *unit.Known[unit.Mass] { return &t.Least.Push }, form.Hint[t]("the smallest mass that did")),
			form.Number("least.push_stays_kg", "Mass that stopped again after a push", unit.Masses, func(t *t) *unit.Known[unit.Mass] { return &t.Least.PushStays }, form.Hint[t]("the largest mass that stopped")),
			form.Text("least.date", "Date", func(t *t) *string { return &t.Least.Date })),
		form.Folded("Motor temperature", "Each line is one reading. A line with time 0 begins a new run. Write down some readings while the motor cools, too.",
			form.Word("warm_at", "Place of the thermometer", func(t *t) *lift.WarmAt { return &t.WarmAt }, form.Hint[t]("the winding is hotter than the case")),
			form.Rows("warmth", "Readings", "reading", 200, func(t *t) *[]lift.WarmthTrial { return &t.Warmth }, lift.WarmthTrial{},
				form.Number("at_s", "Time since the start", unit.Minutes, func(r *lift.WarmthTrial) *unit.Known[unit.Duration] { return &r.At }),
				form.Number("motor_c", "Motor", unit.Temperatures, func(r *lift.WarmthTrial) *unit.Known[unit.Celsius] { return &r.Warm }),
				form.Number("air_c", "Air temperature", unit.Temperatures, func(r *lift.WarmthTrial) *unit.Known[unit.Celsius] { return &r.Air }),
				form.Number("current_a", "Amps since the last line", unit.Currents, func(r *lift.WarmthTrial) *unit.Known[unit.Current] { return &r.Current }),
				form.Number("voltage_v", "Volts since the last line", unit.Voltages, func(r *lift.WarmthTrial) *unit.Known[unit.Voltage] { return &r.Voltage }))),
		form.Rows("held", "Dead weight on brake, catch or base", "test", 40, func(t *t) *[]lift.HeldTrial { return &t.Held }, lift.HeldTrial{Date: day},
			form.Text("date", "Date", func(r *lift.HeldTrial) *string { return &r.Date }),
			form.Word("what", "What was tested", func(r *lift.HeldTrial) *lift.Tested { return &r.What }),
			form.Number("mass_kg", "Dead weight", unit.Masses, func(r *lift.HeldTrial) *unit.Known[unit.Mass] { return &r.Mass }),
			form.Number("time_s", "Time it was held", unit.Minutes, func(r *lift.HeldTrial) *unit.Known[unit.Duration] { return &r.Time }),
			form.Word("held", "Held, nothing moved", func(r *lift.HeldTrial) *unit.Answer { return &r.Held }),
			form.Text("note", "Note", func(r *lift.HeldTrial) *string { return &r.Note })),
		form.Rows("proofs", "Load tests of parts that nobody rates", "load test", 40, func(t *t) *[]lift.Proof { return &t.Proofs }, lift.Proof{Date: day},
			form.Word("part", "Part", func(r *lift.Proof) *lift.Proved { return &r.Part }),
			form.Word("made_of", "Material", func(r *lift.Proof) *lift.ProofMaterial { return &r.MadeOf }),
			form.Number("load_n", "Force on it", unit.Loads, func(r *lift.Proof) *unit.Known[unit.Force] { return &r.Load }),
			form.Number("torque_nm", "Or torque at the drum", unit.Torques, func(r *lift.Proof) *unit.Known[unit.Torque] { return &r.Torque }),
			form.Number("held_s", "Time it was held", unit.Minutes, func(r *lift.Proof) *unit.Known[unit.Duration] { return &r.HeldFor }),
			form.Word("moved", "A mark moved", func(r *lift.Proof) *unit.Answer { return &r.Moved }),
			form.Word("measured_with", "Measured with", func(r *lift.Proof) *lift.MeasuredWith { return &r.Measured }),
			form.Word("on", "Place of the load", func(r *lift.Proof) *lift.ProofOn { return &r.On }),
			form.Text("date", "Day, such as 2026-11-28", func(r *lift.Proof) *string { return &r.Date }),
			form.Text("by", "Name of the tester", func(r *lift.Proof) *string { return &r.By }),
			form.Text("witness", "Second adult who saw it", func(r *lift.Proof) *string { return &r.Witness }),
			form.Text("qualified", "Qualified person who saw it", func(r *lift.Proof) *string { return &r.Expert }),
			form.Number("lifts_since", "Lifts since then", unit.Counts, func(r *lift.Proof) *unit.Known[unit.Count] { return &r.Lifts })),
	)
}

// stepInputs are the inputs of one load step.
func stepInputs(key, title string, at func(*lift.Trials) *lift.LoadStep) form.Part[lift.Trials] {
	type s = lift.LoadStep
	return form.Heading(title+" of the mass", "", form.Within("steps."+key, at,
		form.Word("done", "Passed", func(s *s) *unit.Answer { return &s.Done }, form.Hint[s]("nothing moved, slipped or got hot")),
		form.Number("mass_kg", "Mass on the rope", unit.Masses, func(s *s) *unit.Known[unit.Mass] { return &s.Mass }),
		form.Text("date", "Date", func(s *s) *string { return &s.Date }),
		form.Text("note", "Note", func(s *s) *string { return &s.Note }))...)
}

// lookInputs are what is found when the load path is looked at, part by part, of a record that holds it.
func lookInputs[R any](of func(*R) *lift.Look) []form.Part[R] {
	return []form.Part[R]{
		form.Word("looked.rope", "Rope, looked at", func(r *R) *lift.Condition { return &of(r).Rope }),
		form.Word("looked.knots", "Knots and ends, looked at", func(r *R) *lift.Condition { return &of(r).Knots }, form.Hint[R]("a knot tied again is a new knot")),
		form.Word("looked.pulleys", "Pulleys and what holds them", func(r *R) *lift.Condition { return &of(r).Pulleys }),
		form.Word("looked.pins", "Pins, drum, gears, brake, stops", func(r *R) *lift.Condition { return &of(r).Pins }),
		form.Word("looked.container", "Container of the mass", func(r *R) *lift.Condition { return &of(r).Container }),
		form.Word("looked.base", "Base, posts and beam", func(r *R) *lift.Condition { return &of(r).Base }),
		form.Text("looked.note", "Who looked, and when", func(r *R) *string { return &of(r).Note }),
	}
}
