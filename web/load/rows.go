package load

import (
	"cmp"
	"fmt"
	"math"
	"net/url"
	"slices"
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
	Sign        string // of what is not known
	Word        string // the same in a word; empty where all is known
	Value, Note string
	URL         string
	Here        bool

	Path    string     // of its hours in the form
	Fields  string     // the same in the fields of its open card, as a query by their ids; empty where it is closed
	Cells   []cellView // its hours from 8 to 8
	Unknown bool       // its hours are not known
	Waits   bool       // its hours are those in which it may run
	Asks    bool       // more runs are painted than one row can have
}

// cellView is one hour of a strip.
type cellView struct {
	Hour, Label string
	ID, Class   string
	On          bool
}

// nightRows are the rows of the page with the day that is drawn.
type nightRows struct {
	Rows  []rowView
	Day   string // "21 December"
	Sum   *sumView
	Empty bool
	Waits bool // one of them waits for the sun
	More  int  // rows that are not shown
	All   string
}

// mostRows is how many rows stand on the page before the smallest are left to a link, and fewRows how many stand there then.
const mostRows, fewRows = 12, 6

// whole is the address of the page with every row.
func (at loadAt) whole() string {
	at.more, at.all = true, false
	return at.url + at.query()
}

// longest is the day with the most dark hours of the two that are worked out in full, and its name.
func longest(g model.Ground) (day int, name string) {
	winter, summer := g.Day(load.Winter), g.Day(load.Summer)
	count := func(d load.Day) (n int) {
		for _, dark := range d.Dark {
			if dark {
				n++
			}
		}
		return n
	}
	if count(summer) > count(winter) {
		return load.Summer, "21 June"
	}
	return load.Winter, "21 December"
}

// rowsOf prints the rows, each with the hours that are painted where they wait for an answer.
func rowsOf(g model.Ground, p model.Project, at loadAt, strips *painter, sys unit.System) nightRows {
	l, known := g.Nights()
	_, name := dayIn(g, at.month)
	v := nightRows{Day: name, Sum: sumOf(g, at, sys), Empty: len(p.Load.Appliances) == 0, All: at.whole()}
	if g.Sky == nil {
		v.Day = ""
	}
	shown := shownRows(p, l, at)
	v.More = len(p.Load.Appliances) - len(shown)
	for _, i := range shown {
		a := p.Load.Appliances[i]
		row := rowOf(p, i, at, sys)
		if known && i < len(l.Each) {
			row.Value, row.Note = unit.Energies.Format(float64(l.Each[i].Night), sys), noteOf(a)
		}
		if !a.Counts() {
			row.Sign, row.Word, row.Value, row.Note = draw.Sign(path.NotKnown), "not known", "?", "not counted"
		}
		row.strip(i, a, strips)
		v.Waits = v.Waits || row.Waits
		v.Rows = append(v.Rows, row)
	}
	return v
}

// rowOf prints what a row says of its appliance whatever the night is.
func rowOf(p model.Project, i int, at loadAt, sys unit.System) rowView {
	a, part := p.Load.Appliances[i], "appliances["+strconv.Itoa(i)+"]"
	fields := ""
	if at.part == part {
		fields = fieldsOf(a, rowPath(i), sys)
	}
	return rowView{Fields: fields, Icon: draw.Appliance(iconOf(a)), Typical: typicalIn(p, part), Name: page.OrUnnamed(form.Clip(a.Name, page.PaperName)), About: aboutOf(a, sys), URL: at.card(part), Here: at.part == part,
		Value: "not known", Path: rowPath(i)}
}

// fieldsOf are the texts of the fields that painting writes.
func fieldsOf(a load.Appliance, at string, sys unit.System) string {
	q := url.Values{form.FieldID(at + ".after_dusk"): {string(a.AfterDusk)}}
	for field, v := range map[string]unit.Known[unit.Duration]{"from_s": a.From, "to_s": a.To} {
		q.Set(form.FieldID(at+"."+field), typedTime(v, unit.ClockTimes, sys))
	}
	q.Set(form.FieldID(at+".from_dusk_s"), typedTime(a.FromDusk, unit.Hours, sys))
	return q.Encode()
}

// typedTime is a time as it stands in its field.
func typedTime(v unit.Known[unit.Duration], q unit.Quantity, sys unit.System) string {
	if !v.Is {
		return ""
	}
	return form.TypedForm(q, float64(v.Val), sys)
}

// shownRows are the places of the rows that the page shows, in their order: of many those that need the most, and that whose
// card is open.
func shownRows(p model.Project, l load.Year, at loadAt) []int {
	all := make([]int, len(p.Load.Appliances))
	for i := range all {
		all[i] = i
	}
	if len(all) <= mostRows || at.more {
		return all
	}
	night := func(i int) unit.Energy {
		if i < len(l.Each) {
			return l.Each[i].Night
		}
		return 0
	}
	slices.SortStableFunc(all, func(a, b int) int { return cmp.Compare(night(b), night(a)) })
	few := all[:fewRows]
	if _, open, ok := form.SplitRow(at.part); ok && open < len(all) && !slices.Contains(few, open) {
		few = append(few[:fewRows:fewRows], open)
	}
	slices.Sort(few)
	return few
}

// strip prints the 24 hours of a row.
func (row *rowView) strip(i int, a load.Appliance, strips *painter) {
	on, known := strips.day.On(a)
	waits, asks := strips.asks[i]
	row.Asks, row.Unknown, row.Waits = asks, !known, a.MayWait()
	for k := range 24 {
		h := (stripStart + k) % 24
		c := cellView{Hour: strconv.Itoa(h), Label: fmt.Sprintf("%d to %d", h, (h+1)%24), ID: fmt.Sprintf("h-%d-%d", i, h), On: on[h] > 0}
		if strips.day.Dark[h] {
			c.Class = " n"
		}
		if q := int(math.Round(4 * on[h])); c.On && on[h] < 1 {
			end := "b" // the run begins in this hour
			if on[(h+23)%24] > 0 || on[(h+1)%24] == 0 {
				end = "e"
			}
			c.Class += " " + end + strconv.Itoa(min(3, max(1, q)))
		}
		if asks {
			c.On = waits[h]
		}
		row.Cells = append(row.Cells, c)
	}
}

// stripStart is the clock hour at which a strip begins: noon and night both stand whole in it.
const stripStart = 8

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
	if n := len(p.Load.Standing); n == 0 && l.StandingPower > 0 {
		idle = "the inverter alone, " + unit.Powers.Format(float64(l.StandingPower), sys) + " day and night"
	} else if n > 0 {
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
		{Name: "Later years", About: growthSay(p.Load, sys), URL: at.card(partGrowth), Here: at.part == partGrowth},
	}
}

// growthSay says how much larger than today's the load is that the plan is for.
func growthSay(l load.Load, sys unit.System) string {
	f := l.Grows()
	if f == 1 {
		return "counted as today’s"
	}
	return page.Counted(int(l.GrowthYears.Val), "year") + " on, lamps and devices use " + unit.Ratios.Format(f, sys) + " times as much"
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
	if share := a.ShareOn(); share < 1 {
		parts = append(parts, unit.Percents.Format(float64(share), sys)+" of it")
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
