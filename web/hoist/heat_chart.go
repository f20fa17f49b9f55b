package hoist

import (
	"duskweight/web/form"
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

// warming is the motor's winding over repeated lifts with the rest that they need, or over ways down.
func (s sketch) warming(of string) page.Plot {
	d := s.h.Drive
	heat, current, rotor, run, what := d.HeatUp, d.Raising.Current, d.Raising.Rotor, d.Raising.Time, "lift"
	p := page.Plot{Id: "heat-up", Title: "Motor temperature over repeated lifts"}
	if of == "lower" {
		heat, current, rotor, run, what = d.HeatDown, d.Lowering.Current, d.Lowering.Rotor, d.Lowering.Time, "way down"
		p.Id, p.Title = "heat-down", "Motor temperature over repeated ways down"
	}
	if !heat.Known || run <= 0 {
		return s.empty(p, "Not drawn: there is no "+what+" whose heat could be worked out.", append(machinePaths, "machine.rth", "machine.tau", "raise.voltage", "lower.loads")...)
	}
	temp := page.ScaleOf(unit.Temperatures, s.sys)
	p.Y = []string{temp.Axis("winding")}
	c := cycle(heat, run)
	moments := s.course.Warmths(current, rotor, c.run, c.rest, c.runs, c.points)
	if len(moments) == 0 {
		return s.empty(p, "Not drawn: its temperature cannot be worked out.", "machine.rth", "machine.tau")
	}
	span := float64(moments[len(moments)-1].Time)
	per, name := timeUnit(span)
	p.X = "time, " + name
	winding := page.PlotLine{Name: "winding", Unit: temp.Unit, Color: "--mass", Dash: "solid"}
	p.Head = []string{"Time", "Winding"}
	for i, m := range moments {
		winding.Points = append(winding.Points, [2]float64{float64(m.Time) / per, temp.Of(float64(m.Winding))})
		if i%c.points == 0 {
			p.Rows = append(p.Rows, []string{unit.Rounded(float64(m.Time)/per, 3) + " " + name, unit.Temperatures.Format(float64(m.Winding), s.sys)})
		}
	}
	p.Lines = append(p.Lines, winding)
	p.Say = c.say(what, unit.Temperatures.Format(float64(moments[len(moments)-1].Winding), s.sys))
	if most, ok := s.h.Design.Machine.MaxWinding.Value(); ok {
		limit := float64(most) - 20 // what stays free is that of the rests
		p.Lines = append(p.Lines, page.PlotLine{Name: "the most", Unit: temp.Unit, Color: "--fail", Dash: "dashed",
			Points: [][2]float64{{0, temp.Of(limit)}, {span / per, temp.Of(limit)}}})
		p.Say += fmt.Sprintf(" It should stay under %s.", unit.Temperatures.Format(limit, s.sys))
	}
	return p
}

// runs is how often and how long the motor runs in a picture.
type runs struct {
	run, rest    unit.Duration
	runs, points int
	kind         string // "rests", "on end", "too hot"
}

// cycle takes six runs with the rest they need; where none is needed, runs on end until the motor is nearly settled; and
// where one run is too hot already, that one run.
func cycle(h lift.Heat, run unit.Duration) runs {
	rest, rests := h.Rest.Value()
	switch {
	case h.TooHot:
		return runs{run, 0, 1, 60, "too hot"}
	case rests && rest > 0:
		return runs{run, rest, 6, 10, "rests"}
	}
	return runs{run, 0, 24, 4, "on end"}
}

func (c runs) say(what, end string) string {
	switch c.kind {
	case "too hot":
		return fmt.Sprintf("One %s from cold heats the winding to %s. That is too hot.", what, end)
	case "rests":
		return fmt.Sprintf("Six times %s of running and %s of rest: the winding ends at %s.", form.Lasting(c.run), form.Lasting(c.rest), end)
	}
	return fmt.Sprintf("%d times a %s of %s without any rest heats the winding to %s.", c.runs, what, form.Lasting(c.run), end)
}

// timeUnit is the unit that a span of seconds is shown in.
func timeUnit(span float64) (seconds float64, name string) {
	switch {
	case span < 180:
		return 1, "s"
	case span < 3*3600:
		return 60, "min"
	}
	return 3600, "h"
}
