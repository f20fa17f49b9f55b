package load

import (
	"fmt"
	"net/http"
	"strconv"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// One day stands for each month of the strips: the 21st, on which the nights of June and December are the shortest or the longest.

// nameMonth is the month in the address, 1 to 12.
const nameMonth = "month"

// monthIn reads a month of the address; 0 where it names none.
func monthIn(text string) int {
	if m, err := strconv.Atoi(text); err == nil && m >= 1 && m <= 12 {
		return m
	}
	return 0
}

// dayIn is the day of the year, from 0, that stands for a month, and its name; 0 is the month with the longest night.
func dayIn(g model.Ground, month int) (day int, name string) {
	if month == 0 {
		day, _ = longest(g)
		month = sun.MonthOf(day)
	}
	return page.FirstDay(month-1) + 20, "21 " + form.MonthNames[month-1]
}

// sumView is all of a day together, under the rows.
type sumView struct {
	Month   string // "December"
	Dark    string // "dark from 17 to 8"
	Months  []monthLink
	Picture string
	Top     string // power at the upper end of the picture
	Say     string
	Value   string // in the dark hours
	CSV     string // address of its numbers
}

// monthLink leads to a month of the strips.
type monthLink struct {
	Letter, Name, URL string
	Here              bool
}

// sumOf adds up the day that the strips show; nil where the sun or the load is not known.
func sumOf(g model.Ground, at loadAt, sys unit.System) *sumView {
	l, known := g.Nights()
	if !known || g.Sky == nil || len(l.Standing) == 0 {
		return nil
	}
	day, name := dayIn(g, at.month)
	month := sun.MonthOf(day)
	s := sumOn(g, l, day)
	var night, most float64
	when := 0
	for h := range 24 {
		all := s.Always[h] + s.Rest[h]
		if s.Dark[h] {
			night += all * 3600
		}
		if all > most {
			most, when = all, h
		}
	}
	top, past := s.Scale()
	v := &sumView{Month: form.MonthNames[month-1], Dark: darkOf(s.Dark), Picture: s.Draw(), Top: unit.Powers.Format(top, sys), Value: unit.Energies.Format(night, sys)}
	v.CSV = fmt.Sprintf("%s/a-day.csv?%s=%d", at.url, nameMonth, month)
	v.Say = fmt.Sprintf("%s: the most is %s, from %s.", name, unit.Powers.Format(most, sys), page.Clock(float64(when)))
	switch {
	case most == 0:
		v.Say = name + ": nothing is switched on."
	case past >= 0:
		v.Say += " That hour goes past the scale."
	}
	for m, n := range form.MonthNames {
		to := at
		to.month = m + 1
		v.Months = append(v.Months, monthLink{Letter: n[:1], Name: n[1:], URL: to.url + to.query() + "#all", Here: m+1 == month})
	}
	return v
}

// sumOn is what is on in each hour of a day, W.
func sumOn(g model.Ground, l load.Year, day int) draw.Sum {
	s := draw.Sum{Dark: g.Day(day).Dark}
	for h := range 24 {
		i := 24*day + h
		s.Always[h], s.Rest[h] = float64(l.Standing[i]), float64(l.Essential[i]+l.Nice[i])
	}
	return s
}

// sendSumCSV sends the hours of the day that the strips show, of the load as it is saved.
func (s *Pages) sendSumCSV(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Project(r)
	if err != nil {
		return err
	}
	g := s.Grounds.Of(p)
	l, known := g.Nights()
	if !known || g.Sky == nil || len(l.Standing) == 0 {
		return store.ErrNotFound
	}
	day, name := dayIn(g, monthIn(r.URL.Query().Get(nameMonth)))
	sum := sumOn(g, l, day)
	t := page.SheetOfNumbers{Name: "a-day", Head: []string{"hour of " + name, "dark", "all the time, W", "lamps and devices, W"}}
	for h := range 24 {
		dark := "no"
		if sum.Dark[h] {
			dark = "yes"
		}
		t.Rows = append(t.Rows, []any{h, dark, sum.Always[h], sum.Rest[h]})
	}
	return page.SendCSV(w, t)
}

// darkOf says which whole hours are dark.
func darkOf(dark [24]bool) string {
	from, until, n := 0, 0, 0
	for h, d := range dark {
		before := dark[(h+23)%24]
		switch {
		case d && !before:
			from = h
		case !d && before:
			until = h
		}
		if d {
			n++
		}
	}
	switch n {
	case 0:
		return "no hour is dark"
	case 24:
		return "dark all day"
	}
	return fmt.Sprintf("dark from %s to %s", page.Clock(float64(from)), page.Clock(float64(until)))
}
