package web

import (
	"fmt"
	"math"
	"slices"

	"duskweight/internal/model/unit"
)

// farOut is how many times the machine's current a line of loads is followed; the picture ends at twice.
const farOut = 3

// loadsLine is the current of all that hangs on the terminals, A over V, up to well past the machine's own current.
// A constant voltage ends it straight up.
func (s sketch) loadsLine() [][2]float64 {
	star := float64(s.h.Drive.Lowering.Current)
	top, stiff := s.course.Ceiling().Value()
	last := s.lastVolts()
	if stiff {
		last = min(last, float64(top))
	}
	const steps = 80
	var at []float64
	for n := range steps + 1 {
		at = append(at, last*float64(n)/steps)
	}
	for _, u := range s.course.Bends() {
		if f := float64(u); f > 0 && f < last {
			at = append(at, f*(1-1e-9), f)
		}
	}
	slices.Sort(at)
	var out [][2]float64
	for n, u := range at {
		i := float64(s.course.Taken(unit.Voltage(u)))
		if n == 0 && len(at) > 1 && float64(s.course.Taken(unit.Voltage(at[1]))) > farOut*star {
			continue // a constant power comes down from far above: no line leads there from nothing
		}
		out = append(out, [2]float64{u, min(i, farOut*star)})
	}
	if stiff && last == float64(top) {
		from := 0.0
		if len(out) > 0 {
			from = out[len(out)-1][1]
		}
		for n := 1; n <= 10 && from < 2*star; n++ { // in steps, so that a speed can be told along it
			out = append(out, [2]float64{last, from + (2*star-from)*float64(n)/10})
		}
	}
	return out
}

// lastVolts is how far the picture goes: past the steady voltage, past the balance that does not last, past where the
// last load begins.
func (s sketch) lastVolts() float64 {
	lo := s.h.Drive.Lowering
	last := 1.4 * float64(lo.Voltage)
	for _, u := range s.course.Bends() {
		last = math.Max(last, 1.15*float64(u))
	}
	for _, l := range s.h.Design.Lower.Loads {
		if p, ok := l.Power.Value(); ok && l.Kind == "constant_power" && lo.Current > 0 {
			last = math.Max(last, 2*float64(p)/float64(lo.Current))
		}
		if r, ok := l.Resistance.Value(); ok && l.Kind == "resistor" && !lo.Steady {
			last = math.Max(last, math.Min(1.2*float64(r)*float64(lo.Current), 1000))
		}
	}
	if last == 0 {
		last = 24
	}
	return last
}

// settling is the current of the loads over voltage against the one current that the machine makes.
func (s sketch) settling() plot {
	lo := s.h.Drive.Lowering
	volts, amps := scaleOf(unit.Voltages, s.sys), scaleOf(unit.Currents, s.sys)
	p := plot{id: "settling", title: "Will it settle? The loads against the motor", x: volts.axis("voltage on the motor's wires"), y: []string{amps.axis("current")}}
	switch {
	case lo.RunsBack == "":
		return s.empty(p, "Not drawn yet: what the motor makes coming down is not known.", machinePaths...)
	case lo.RunsBack == "no":
		p.say = "Not drawn: it does not come down by itself, so there is no current."
		return p
	case !s.course.LoadsKnown():
		return s.empty(p, "Not drawn yet: what hangs on the motor's wires is not known.", "lower.loads")
	}
	star := float64(lo.Current)
	loads := plotLine{name: "the loads take", unit: amps.unit, color: "--night", dash: "solid"}
	for _, at := range s.loadsLine() {
		loads.points = append(loads.points, [2]float64{volts.of(at[0]), amps.of(at[1])})
	}
	last := s.lastVolts()
	if n := len(loads.points); n > 0 {
		last = max(last, loads.points[n-1][0])
	}
	machine := plotLine{name: "the motor makes", unit: amps.unit, color: "--mass", dash: "dashed", points: [][2]float64{{0, amps.of(star)}, {volts.of(last), amps.of(star)}}}
	p.lines, p.top = []plotLine{loads, machine}, []float64{2 * amps.of(star)}
	p.head = []string{"Voltage", "The loads take", "The motor makes"}
	n := len(loads.points)
	for i := 0; i < n; i += max(1, n/10) {
		at := loads.points[i]
		p.rows = append(p.rows, []string{unit.Rounded(at[0], 3) + " " + volts.unit, unit.Rounded(at[1], 3) + " " + amps.unit, unit.Rounded(amps.of(star), 3) + " " + amps.unit})
	}
	makes := unit.Currents.Format(star, s.sys)
	switch {
	case lo.Steady:
		u := unit.Voltages.Format(float64(lo.Voltage), s.sys)
		p.lines = append(p.lines, mark("settles here", "--night", "diamond", amps.unit, 0, volts.of(float64(lo.Voltage)), amps.of(star)))
		p.rows = append(p.rows, []string{u + " (settles)", makes, makes})
		p.say = fmt.Sprintf("The motor makes %s whatever the voltage. The loads take that at %s, and more when the voltage rises: it settles there.", makes, u)
	case lo.Voltage > 0:
		u := unit.Voltages.Format(float64(lo.Voltage), s.sys)
		p.lines = append(p.lines, mark("balance that does not last", "--fail", "rect", amps.unit, 0, volts.of(float64(lo.Voltage)), amps.of(star)))
		p.say = fmt.Sprintf("The lines cross at %s, but there the loads take less when the voltage rises. So nothing holds it: it never settles.", u)
	default:
		p.say = fmt.Sprintf("The motor makes %s, and the loads' line does not cross that while it rises. It never settles.", makes)
	}
	return p
}

// descent is the start of a way down over time.
func (s sketch) descent() plot {
	lo := s.h.Drive.Lowering
	speed, volts := scaleOf(unit.SlowSpeeds, s.sys), scaleOf(unit.Voltages, s.sys)
	p := plot{id: "descent", title: "The start of a way down", x: "time after the brake opens, s", y: []string{speed.axis("speed"), "V and W"}}
	moments := s.course.Descent(72)
	if len(moments) == 0 {
		if lo.Known {
			p.say = "Not drawn: there is no steady way down to draw."
			return p
		}
		return s.empty(p, "Not drawn yet: the way down is not known.", append(machinePaths, "lower.loads")...)
	}
	v := plotLine{name: "speed of the mass", unit: speed.unit, color: "--mass", dash: "solid"}
	u := plotLine{name: "volts", unit: volts.unit, color: "--night", dash: "dashed", scale: 1}
	w := plotLine{name: "watts at the lamps", unit: "W", color: "--ink", dash: "dotted", scale: 1}
	p.head = []string{"Time", "Speed", "Voltage", "At the lamps"}
	for i, m := range moments {
		t := float64(m.Time)
		v.points = append(v.points, [2]float64{t, speed.of(float64(m.Speed))})
		u.points = append(u.points, [2]float64{t, volts.of(float64(m.Volts))})
		w.points = append(w.points, [2]float64{t, float64(m.Power)})
		if i%8 == 0 || i == len(moments)-1 {
			p.rows = append(p.rows, []string{unit.Rounded(t, 3) + " s", unit.SlowSpeeds.Format(float64(m.Speed), s.sys), unit.Voltages.Format(float64(m.Volts), s.sys), unit.Powers.Format(float64(m.Power), s.sys)})
		}
	}
	p.lines = []plotLine{v, u, w}
	p.say = fmt.Sprintf("It is at its speed of %s after %s, and then stays there at %s.", unit.SlowSpeeds.Format(float64(lo.Speed), s.sys),
		unit.Durations.Format(float64(moments[len(moments)-2].Time), s.sys), unit.Voltages.Format(float64(lo.Voltage), s.sys))
	if !s.h.Design.Machine.J.Is {
		p.say += " The inertia of the rotor is not known and counts as none; really it takes longer."
	}
	return p
}
