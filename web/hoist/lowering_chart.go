package hoist

import (
	"fmt"
	"math"
	"slices"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
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
		if p, ok := l.Power.Value(); ok && l.Kind == lift.LoadConstantPower && lo.Current > 0 {
			last = math.Max(last, 2*float64(p)/float64(lo.Current))
		}
		if r, ok := l.Resistance.Value(); ok && l.Kind == lift.LoadResistor && !lo.Steady {
			last = math.Max(last, math.Min(1.2*float64(r)*float64(lo.Current), 1000))
		}
	}
	if last == 0 {
		last = 24
	}
	return last
}

// settling is the current of the loads over voltage against the one current that the machine makes.
func (s sketch) settling() page.Plot {
	lo := s.h.Drive.Lowering
	volts, amps := page.ScaleOf(unit.Voltages, s.sys), page.ScaleOf(unit.Currents, s.sys)
	p := page.Plot{Id: "settling", Title: "Does the speed settle? The loads against the motor", X: volts.Axis("voltage on the motor's wires"), Y: []string{amps.Axis("current")}}
	switch {
	case lo.RunsBack == "":
		return s.empty(p, "Not drawn yet: what the motor makes coming down is not known.", machinePaths...)
	case lo.RunsBack == lift.DownNo:
		p.Say = "Not drawn: the mass does not come down by itself, so there is no current."
		return p
	case !s.course.LoadsKnown():
		return s.empty(p, "Not drawn yet: what hangs on the motor's wires is not known.", "lower.loads")
	}
	star := float64(lo.Current)
	loads := page.PlotLine{Name: "the loads use", Unit: amps.Unit, Color: "--night", Dash: "solid"}
	for _, at := range s.loadsLine() {
		loads.Points = append(loads.Points, [2]float64{volts.Of(at[0]), amps.Of(at[1])})
	}
	last := s.lastVolts()
	if n := len(loads.Points); n > 0 {
		last = max(last, loads.Points[n-1][0])
	}
	machine := page.PlotLine{Name: "the motor makes", Unit: amps.Unit, Color: "--mass", Dash: "dashed", Points: [][2]float64{{0, amps.Of(star)}, {volts.Of(last), amps.Of(star)}}}
	p.Lines, p.Top = []page.PlotLine{loads, machine}, []float64{2 * amps.Of(star)}
	p.Head = []string{"Voltage", "The loads use", "The motor makes"}
	n := len(loads.Points)
	for i := 0; i < n; i += max(1, n/10) {
		at := loads.Points[i]
		p.Rows = append(p.Rows, []string{unit.Rounded(at[0], 3) + " " + volts.Unit, unit.Rounded(at[1], 3) + " " + amps.Unit, unit.Rounded(amps.Of(star), 3) + " " + amps.Unit})
	}
	makes := unit.Currents.Format(star, s.sys)
	switch {
	case lo.Steady:
		u := unit.Voltages.Format(float64(lo.Voltage), s.sys)
		p.Lines = append(p.Lines, mark("settles here", "--night", "diamond", amps.Unit, 0, volts.Of(float64(lo.Voltage)), amps.Of(star)))
		p.Rows = append(p.Rows, []string{u + " (settles)", makes, makes})
		p.Say = fmt.Sprintf("The motor makes %s whatever the voltage. The loads use that at %s, and more when the voltage rises: the speed settles there.", makes, u)
	case lo.Voltage > 0:
		u := unit.Voltages.Format(float64(lo.Voltage), s.sys)
		p.Lines = append(p.Lines, mark("balance that does not last", "--fail", "rect", amps.Unit, 0, volts.Of(float64(lo.Voltage)), amps.Of(star)))
		p.Say = fmt.Sprintf("The lines cross at %s, but there the loads use less when the voltage rises. Nothing holds the speed: it never settles.", u)
	default:
		p.Say = fmt.Sprintf("The motor makes %s, and the loads' line does not cross that while it rises. It never settles.", makes)
	}
	return p
}

// descent is the start of a way down over time.
func (s sketch) descent() page.Plot {
	lo := s.h.Drive.Lowering
	speed, volts := page.ScaleOf(unit.SlowSpeeds, s.sys), page.ScaleOf(unit.Voltages, s.sys)
	p := page.Plot{Id: "descent", Title: "The start of a way down", X: "time after the brake opens, s", Y: []string{speed.Axis("speed"), "V and W"}}
	moments := s.course.Descent(72)
	if len(moments) == 0 {
		if lo.Known {
			p.Say = "Not drawn: there is no steady way down to draw."
			return p
		}
		return s.empty(p, "Not drawn yet: the way down is not known.", append(machinePaths, "lower.loads")...)
	}
	v := page.PlotLine{Name: "speed of the mass", Unit: speed.Unit, Color: "--mass", Dash: "solid"}
	u := page.PlotLine{Name: "volts", Unit: volts.Unit, Color: "--night", Dash: "dashed", Scale: 1}
	w := page.PlotLine{Name: "watts at the lamps", Unit: "W", Color: "--ink", Dash: "dotted", Scale: 1}
	p.Head = []string{"Time", "Speed", "Voltage", "At the lamps"}
	for i, m := range moments {
		t := float64(m.Time)
		v.Points = append(v.Points, [2]float64{t, speed.Of(float64(m.Speed))})
		u.Points = append(u.Points, [2]float64{t, volts.Of(float64(m.Volts))})
		w.Points = append(w.Points, [2]float64{t, float64(m.Power)})
		if i%8 == 0 || i == len(moments)-1 {
			p.Rows = append(p.Rows, []string{unit.Rounded(t, 3) + " s", unit.SlowSpeeds.Format(float64(m.Speed), s.sys), unit.Voltages.Format(float64(m.Volts), s.sys), unit.Powers.Format(float64(m.Power), s.sys)})
		}
	}
	p.Lines = []page.PlotLine{v, u, w}
	p.Say = fmt.Sprintf("The mass reaches its steady speed of %s after %s, at %s.", unit.SlowSpeeds.Format(float64(lo.Speed), s.sys),
		unit.Durations.Format(float64(moments[len(moments)-2].Time), s.sys), unit.Voltages.Format(float64(lo.Voltage), s.sys))
	if lo.EndSpeed < 0.99*lo.Speed {
		p.Say = fmt.Sprintf("On a longer way it would be at its speed of %s after %s. On this travel it arrives after %s, at %s.", unit.SlowSpeeds.Format(float64(lo.Speed), s.sys),
			unit.Durations.Format(float64(moments[len(moments)-2].Time), s.sys), unit.Durations.Format(float64(lo.Time), s.sys), unit.SlowSpeeds.Format(float64(lo.EndSpeed), s.sys))
	}
	if !s.h.Design.Machine.J.Is {
		p.Say += " The inertia of the rotor is not known and counts as none; in truth it starts more slowly."
	}
	return p
}
