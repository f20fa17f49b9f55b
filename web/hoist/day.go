package hoist

import (
	"fmt"
	"io"
	"strings"
	"time"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// inNumbers is what a lifted mass is: what hangs times how far. A single piece that its user named keeps its name.
func inNumbers(s model.StoreResult, sys unit.System) (name, numbers string) {
	h := model.HoistOf(s)
	name = page.OrUnnamed(s.Name)
	if m := h.Design.Mass; len(m) == 1 && m[0].Name != "" {
		name = m[0].Name
	}
	return name, page.Known(h.Drive.Mass, unit.Masses, sys) + " × " + page.Known(h.Design.Travel, unit.Heights, sys)
}

// day is a usual day of a month (0 is January) in four moments: the sun lifts it, something holds it, it comes down for the
// lamps, it is down.
func day(g model.Ground, r model.VariantResult, s model.StoreResult, month int, sys unit.System) (page.DayView, bool) {
	m := time.Month(month + 1)
	d, ok := g.LiftDay(r, s, m)
	v := page.DayView{PictureView: page.PictureView{ID: "day", Title: "A usual day in " + form.MonthNames[month], Head: []string{"Moment", "Time", "What happens"}}}
	switch {
	case !ok && s.WhyNot != "":
		v.Say = form.Sentence("Not drawn: " + strings.TrimSuffix(s.WhyNot, "."))
		return v, true
	case !ok:
		return v, false
	case d.Hours.From == d.Hours.To:
		v.Say = "No hour of this month leaves sun enough to lift."
		return v, true
	case !d.Sunset.Is:
		v.Say = "In this month the sun does not set, so there is no night to come down in."
		return v, true
	}
	if model.HoistOf(s).Ready == reason.No {
		v.Title += ", once the mass may hang"
	}
	if !d.Hours.Usual {
		v.Title = "A bright day in " + form.MonthNames[month]
	}
	lifts, down, up := page.Clock(float64(d.Hours.From)), page.Clock(float64(d.Sunset.Val)/3600), form.Lasting(d.Up)
	v.Say = fmt.Sprintf("The sun lifts the mass once between %s and %s. The mass waits at the top. After sunset it comes down and feeds the lamps.", lifts, page.Clock(float64(d.Hours.To)))
	scene := page.SceneOf(model.HoistOf(s), sys)
	for _, one := range []struct {
		name, clock, say string
		m                draw.Moment
	}{
		{"Lifting", lifts, "The sun lifts the mass: " + up, draw.Moment{Share: 0.5, Going: 1, Sun: true}},
		{"Holding", page.Clock(float64(d.Hours.To)), "It waits at the top, held without power", draw.Moment{Share: 1, Sun: true}},
		{"Coming down", down, fmt.Sprintf("It comes down and gives the lamps %s for %s", unit.Powers.FormatTo(float64(d.Power), sys, 2, unit.Nearest), form.Lasting(d.Down)), draw.Moment{Share: 0.5, Going: -1, Lamps: true}},
		{"Down", page.Clock(float64(d.Done.Val) / 3600), "It is down and gives no more tonight", draw.Moment{}},
	} {
		one.m.Scene, one.m.Title = scene, one.name
		v.Moments = append(v.Moments, page.MomentView{Clock: one.clock, Say: one.say, SVG: page.SvgOf(func(w io.Writer) error { return one.m.Draw(w) })})
		v.Rows = append(v.Rows, []string{one.name, one.clock, one.say})
	}
	v.Numbers = func() page.SheetOfNumbers { return dayNumbers(d) }
	return v, true
}

// dayNumbers is the day in hours of standard time since midnight.
func dayNumbers(d model.LiftDay) page.SheetOfNumbers {
	const hour = float64(unit.Hour)
	return page.SheetOfNumbers{Name: "day", Head: []string{"moment", "from, h", "to, h"}, Rows: [][]any{
		{"sun enough to lift", d.Hours.From, d.Hours.To},
		{"one lift takes", 0.0, float64(d.Up) / hour},
		{"coming down", float64(d.Sunset.Val) / hour, float64(d.Done.Val) / hour},
	}}
}
