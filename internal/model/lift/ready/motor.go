package ready

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// hottestAir is the warmest air round a motor that a plan may name, °C: its accepted range.
const hottestAir = 80

// motorHot is one run from cold that passes the highest winding temperature, with the mass as planned or at its heaviest; in
// air of a warmth that nobody gave, in the warmest.
func motorHot(c Case) []reason.Reason {
	out := motorHotIn(c)
	if !c.Hoist.Machine.MaxWinding.Is {
		out = append(out, motorUnmarked(c)...)
	}
	if c.Hoist.Lower.Ambient.Is || len(out) > 0 {
		return out
	}
	warm := c.Heavy.Hoist
	warm.Lower.Ambient = unit.Of[unit.Celsius](hottestAir)
	high := c.Heavy.Hoist
	if c.High != nil {
		high = c.High[1].Hoist
	}
	high.Lower.Ambient = warm.Lower.Ambient
	warm, high = marked(warm), marked(high)
	if !hot(lift.Compute(warm)) && !hot(lift.Compute(high)) {
		return nil
	}
	r := motorHotWord(reason.NotKnown)
	r.Path, r.Clears = "lower.ambient_c", reason.Answer
	r.Say = say.That("How warm the air round the motor gets is not known. In very warm air one run from cold makes the motor too hot.")
	r.Mend = say.That("Give the warmest air that the motor is ever in: a closed case in the sun reaches %s.", say.Temperature(60))
	return []reason.Reason{r}
}

// unmarked is the winding temperature to stop at where the class is not marked, °C (from memory).
const unmarked = 90

// marked is a hoist whose motor may reach what an unmarked winding may, where nobody says what it withstands.
func marked(h lift.Hoist) lift.Hoist {
	if !h.Machine.MaxWinding.Is {
		h.Machine.MaxWinding = unit.Of[unit.Celsius](unmarked)
	}
	return h
}

// motorUnmarked is a winding of unknown class that passes what an unmarked one withstands.
func motorUnmarked(c Case) []reason.Reason {
	works := []Work{c.Plan, c.Heavy}
	if c.High != nil {
		works = append(works, c.High[1])
	}
	for _, w := range works {
		if hot(lift.Compute(marked(w.Hoist))) {
			r := motorHotWord(reason.NotKnown)
			r.Clears = reason.Answer
			r.Say = say.That("What its winding withstands is not known. One run from cold makes it hotter than %s, the most for a winding without a mark.", say.Temperature(unmarked))
			r.Mend = say.That("Read the insulation class on its label, or use more gear ratio, less mass, or a larger motor.")
			return []reason.Reason{r}
		}
	}
	return nil
}

// motorHotIn is that in the air that the plan counts with.
func motorHotIn(c Case) []reason.Reason {
	w := reason.Tried(hot(c.Plan.Drive), hot(c.Heavy.Drive))
	if c.High != nil { // it decides where the other end of the drop at the brushes gives another word
		if other := reason.Tried(hot(c.High[0].Drive), hot(c.High[1].Drive)); other != w {
			return []reason.Reason{byBrush(motorHotWord(reason.No), reason.Yes)}
		}
	}
	for _, two := range c.usual {
		if other := reason.Tried(hot(two[0].Drive), hot(two[1].Drive)); (other == reason.No) != (w == reason.No) {
			return []reason.Reason{c.byMotor(motorHotWord(reason.No), reason.Yes)}
		}
	}
	if w == reason.Yes {
		return nil
	}
	r := motorHotWord(w)
	if w == reason.NotKnown {
		return withGuess([]reason.Reason{between(r, reason.No, reason.Yes)}, c)
	}
	return []reason.Reason{r}
}

func motorHotWord(w reason.Word) reason.Reason {
	return reason.Reason{ID: "motor_hot", Word: w, Path: "machine.max_winding_c", Clears: reason.Change,
		Say:    say.That("One run from cold already makes the motor too hot. When the winding burns out, the mass runs away."),
		Mend:   say.That("Use more gear ratio, less mass, or a larger motor."),
		Source: source.FromMemory.At("IEC 60034-1")}
}

func hot(d lift.Drive) bool {
	return d.HeatUp.Known && d.HeatUp.TooHot || d.HeatDown.Known && d.HeatDown.TooHot
}

// How far the numbers of one motor may disagree (our own judgement).
const (
	sameResistance = 0.25
	sameSpeed      = 0.10
	leastWarmth    = 0.1 // of the winding's allowance at the current it withstands all day
	mostWarmth     = 2.5
)

// motorMixed are numbers of a motor that cannot come from one motor: its resistance, its speed without load, and how warm it
// gets at the current it withstands all day.
func motorMixed(c Case) []reason.Reason {
	var out []reason.Reason
	m, k := c.Hoist.Machine, c.Plan.Drive.Machine
	add := func(path, beside string, s say.Sentence) {
		out = append(out, reason.Reason{ID: "motor_mixed", Word: reason.NotKnown, Path: path, Beside: beside, Clears: reason.Answer, Say: s,
			Mend: say.That("Use numbers that all come from one label, or measure them on the bench."), Source: source.Judgement.Whole()})
	}
	if first, other, ok := mixed(k.Found, "resistance", sameResistance); ok {
		add(toldBy("resistance", first), toldBy("resistance", other), say.That("The numbers of the motor give two winding resistances: they may come from two motors."))
	}
	if first, other, ok := mixed(k.Found, "machine constant", sameSpeed); ok && offSpeed(m, k) {
		add(toldBy("machine constant", first), toldBy("machine constant", other), say.That("The numbers of the motor give two speeds without load: they may come from two motors."))
	}
	switch w, ok := warmth(m, k); {
	case ok && math.IsInf(w, 1):
		add("machine.continuous_current_a", "machine.rth_winding_k_w", say.That("At the current that the motor withstands all day, its winding would never stop getting warmer: the numbers may come from two motors."))
	case ok && (w < leastWarmth || w > mostWarmth):
		add("machine.continuous_current_a", "machine.rth_winding_k_w", say.That("At the current that the motor withstands all day, its winding would get %s times as warm as it may: the numbers may come from two motors.", say.Times(unit.Ratio(w)).To(2)))
	}
	return out
}

// mixed finds two sets of inputs that give values which differ by more than a share, or one that cannot be.
func mixed(found []lift.Found, what string, share float64) (first, other lift.ConstantFrom, apart bool) {
	least := 0.0
	for _, f := range found {
		switch {
		case f.What != what:
		case f.Value <= 0:
			return f.From, "", true
		case least == 0:
			first, least = f.From, f.Value
		case math.Abs(f.Value-least) > share*least:
			return first, f.From, true
		}
	}
	return "", "", false
}

// toldBy is the field of a motor from which a set of inputs tells a constant; "" for no set.
func toldBy(what string, from lift.ConstantFrom) string {
	resistance := what == "resistance"
	switch {
	case from == "":
		return ""
	case from == lift.FromBench && resistance:
		return "machine.bench_resistance"
	case from == lift.FromBench:
		return "machine.bench_driven"
	case from == lift.FromSheet && resistance:
		return "machine.sheet_stall_current_a"
	case from == lift.FromSheet:
		return "machine.sheet_no_load_speed_rad_s"
	case from == lift.FromYours && resistance:
		return "machine.r_ohm"
	case from == lift.FromYours:
		return "machine.k_vs_rad"
	}
	return "machine.sheet_stall_torque_nm"
}

// offSpeed reports whether the speed without load by K is off the label's at both ends of the drop at the brushes. Values
// of the bench alone stand as they are.
func offSpeed(m lift.Machine, k lift.Constants) bool {
	if !m.SheetVolts.Is || !m.SheetSpeed.Is || !k.K.Is || !k.R.Is || !k.I0.Is {
		return true
	}
	label := float64(m.SheetSpeed.Val) * float64(m.SheetGear.Or(1))
	low, high := k.BrushLow.Or(k.BrushDrop), k.BrushHigh.Or(k.BrushDrop)
	if told := m.BrushDrop.Is || m.SheetTorque.Is || k.BrushHigh.Is; !told {
		low, high = 0, lift.CarbonDrop*m.SheetVolts.Val
	}
	for _, drop := range []float64{float64(low), float64(high)} {
		speed := (float64(m.SheetVolts.Val) - drop - float64(k.I0.Val)*float64(k.R.Val)) / float64(k.K.Val)
		if math.Abs(speed-label) <= sameSpeed*label {
			return false
		}
	}
	return true
}

// Warmth is how much warmer than 25 °C a winding settles at a current, K: R_th·I²·R/(1 − α·R_th·I²·R); +Inf where it never
// settles.
func Warmth(rth, current, r float64) float64 {
	p := rth * current * current * r
	if x := lift.Alpha * p; x < 1 {
		return p / (1 - x)
	}
	return math.Inf(1)
}

// warmth is that at the current which the motor withstands all day, as a share of what its winding may warm up.
func warmth(m lift.Machine, k lift.Constants) (float64, bool) {
	if !m.MaxCurrent.Is || !m.RthWinding.Is || !m.MaxWinding.Is || !k.R.Is {
		return 0, false
	}
	rth := float64(m.RthWinding.Val) + float64(m.RthCase.Or(0))
	return Warmth(rth, float64(m.MaxCurrent.Val), float64(k.R.Val)) / (float64(m.MaxWinding.Val) - 25), true
}

// labelGear is a gearbox on the motor's label that is no part of the train.
func labelGear(c Case) []reason.Reason {
	g, missing := lift.LabelGear(c.Hoist, c.Plan.Drive.Stages)
	if !missing {
		return nil
	}
	return []reason.Reason{{ID: "label_gear", Word: reason.NotKnown, Path: "machine.sheet_gear_ratio", Clears: reason.Answer,
		Say:    say.That("The gearbox of the motor's label, %s : 1, is not in the train.", say.Times(g)),
		Mend:   say.That("Add it as the first stage."),
		Source: source.Derivation.Whole()}}
}
