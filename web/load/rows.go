package load

import (
	"strconv"
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// rowView is one lamp or device, or one of the rows that everything idle has.
type rowView struct {
	Name, About string
	Icon        string
	Typical     int    // of its values, taken from the catalog and not confirmed
	Sign        string // of what is refused or not known
	Word        string // the same in a word; empty where all is known
	Strip       string
	Value, Note string
	URL         string
	Here        bool
}

// nightRows are the rows of the page with the day that is drawn.
type nightRows struct {
	Rows  []rowView
	Day   string // "21 December"
	Empty bool
}

// longest is the day with the most dark hours of the two that are worked out in full, and its name.
func longest(g model.Ground) (day int, name string, dark [24]bool) {
	day, name = load.Winter, "21 December"
	if g.Sky == nil {
		return day, name, dark
	}
	count := func(day int) (n int) {
		for h := range 24 {
			if g.Sky.Geometry.Down[24*day+h] {
				n++
			}
		}
		return n
	}
	if count(load.Summer) > count(load.Winter) {
		day, name = load.Summer, "21 June"
	}
	copy(dark[:], g.Sky.Geometry.Down[24*day:24*day+24])
	return day, name, dark
}

// rowsOf prints the rows.
func rowsOf(g model.Ground, p model.Project, at loadAt, sys unit.System) nightRows {
	l, known := g.Nights()
	day, name, dark := longest(g)
	v := nightRows{Day: name, Empty: len(p.Load.Appliances) == 0}
	if g.Sky == nil {
		v.Day = ""
	}
	open := map[string]bool{}
	for _, m := range l.Missing {
		open[partOf(m.Path)] = true
	}
	for i, a := range p.Load.Appliances {
		part := "appliances[" + strconv.Itoa(i) + "]"
		row := rowView{Icon: draw.Appliance(iconOf(a)), Typical: typicalIn(p, part), Name: page.OrUnnamed(form.Clip(a.Name, page.PaperName)), About: aboutOf(a, sys), URL: at.card(part), Here: at.part == part, Value: "not known"}
		var hours [24]float64
		if known && i < len(l.Each) {
			e := l.Each[i]
			if hours = e.Winter; day == load.Summer {
				hours = e.Summer
			}
			row.Value, row.Note = unit.Energies.Format(float64(e.Night), sys), noteOf(a)
			if e.Refused != "" {
				row.Sign, row.Word, row.Value, row.Note = draw.Sign(path.GivesWay), "refused", "refused", e.Refused
			}
		}
		if open[part] || !a.Power.Is || !a.Count.Is {
			row.Sign, row.Word, row.Value, row.Note = draw.Sign(path.NotKnown), "not known", "?", "not counted"
		}
		row.Strip = draw.Strip(hours, dark, row.Word != "not known")
		v.Rows = append(v.Rows, row)
	}
	return v
}

// typicalIn counts the values of a part of the load that are only typical.
func typicalIn(p model.Project, part string) (n int) {
	for at, o := range p.Origins {
		if o.Kind == model.OriginTypical && model.Within(at, "load."+part) {
			n++
		}
	}
	return n
}

// alsoRows are the rows of what is no appliance.
func alsoRows(g model.Ground, p model.Project, at loadAt, sys unit.System) []rowView {
	l, _ := g.Nights()
	idle := "nothing"
	if n := len(p.Load.Standing); n > 0 {
		idle = page.Counted(n, "device") + ", " + unit.Powers.Format(float64(l.StandingPower), sys) + " day and night"
	}
	inverter := "not known whether there is one"
	switch p.Load.Inverter.Present {
	case unit.Yes:
		inverter = "there is one"
		if p.Load.Inverter.Rated.Is {
			inverter = page.Known(p.Load.Inverter.Rated, unit.Powers, sys)
		}
	case unit.No:
		inverter = "none"
	}
	night := "by the sun"
	if n := p.Load.Night; n.Own != "" {
		night = form.WordFor(string(n.Own))
	}
	return []rowView{
		{Name: "All the time", About: idle, Value: unit.Energies.Format(float64(l.StandingNight), sys), Note: "in a mean night", Typical: typicalIn(p, partStanding), URL: at.card(partStanding), Here: at.part == partStanding},
		{Name: "Inverter", About: inverter, Typical: typicalIn(p, partInverter), URL: at.card(partInverter), Here: at.part == partInverter},
		{Name: "Which hours are night", About: night, URL: at.card(partNight), Here: at.part == partNight},
	}
}

// aboutOf says what an appliance is and when it runs: "2 × 7 W, from dusk for 4 h".
func aboutOf(a load.Appliance, sys unit.System) string {
	parts := []string{page.Known(a.Power, unit.Powers, sys)}
	if n, ok := a.Count.Value(); ok && n != 1 {
		parts[0] = unit.Counts.Format(float64(n), sys) + unit.Space + "× " + parts[0]
	}
	switch {
	case a.FromDusk.Is:
		parts = append(parts, "from dusk for "+form.Lasting(a.FromDusk.Val))
	case a.From.Is && a.To.Is:
		hours := unit.ClockTimes.Format(float64(a.From.Val), sys) + " to " + unit.ClockTimes.Format(float64(a.To.Val), sys)
		if a.From.Val == a.To.Val {
			hours = "all day"
		}
		if a.AfterDusk == unit.Yes {
			hours += " while it is dark"
		}
		parts = append(parts, hours)
	default:
		parts = append(parts, "hours not known")
	}
	return strings.Join(parts, ", ")
}

// noteOf says what is special of an appliance.
func noteOf(a load.Appliance) string {
	note := form.WordFor(string(a.Priority))
	if n := len(a.Months); n > 0 && n < 12 {
		note += ", " + page.Counted(n, "month")
	}
	return note
}
