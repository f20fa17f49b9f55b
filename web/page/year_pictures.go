package page

import (
	"fmt"
	"slices"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
)

// Pictures of a year that more than one page shows: the worst week, and how full a store was.

// LookOf is the look of the one store that took part in the year; empty for several.
func LookOf(r model.VariantResult) string {
	for _, s := range r.Stores {
		if s.InYear && len(r.Year.Stores) == 1 {
			return s.Kind.Look
		}
	}
	return ""
}

// JoulesWh is an energy in watt-hours, for a table of numbers.
func JoulesWh[E ~float64](e E) float64 { return unit.Energy(e).WattHours() }

// DateOf is the month, 0 for January, and the day of the month of a day of the typical year, from 0.
func DateOf(day int) (month, date int) {
	day %= 365
	for m, days := range MonthDays {
		if day < days {
			return m, day + 1
		}
		day -= days
	}
	return 11, 31
}

// Week is the 168 hours that miss most.
type Week struct {
	draw.WorstWeek
	from int // first hour of the year
}

// WeekOf is the worst week of a year on ground g.
func WeekOf(g model.Ground, r model.VariantResult) Week {
	y, own := r.Year.Hourly, float64(r.StandingPower-g.Load.StandingPower) // the variant's, its controller's and its stores'
	w := Week{from: r.Year.WorstWeek.From}
	stored := func(h int) float64 {
		sum := 0.0
		for k := range y.State {
			sum += y.State[k][h]
		}
		return sum
	}
	hours := len(y.Unmet)
	for i := range r.Year.WorstWeek.Hours {
		h := (w.from + i) % hours
		w.Sun, w.Missing = append(w.Sun, r.Bus.Power[h]), append(w.Missing, y.Unmet[h]/3600)
		wanted := g.Load.Standing[h] + g.Load.Essential[h] + g.Load.Nice[h] + own
		for k := range y.Run { // what waits ran then
			wanted += y.Run[k][h] / 3600
		}
		w.Load = append(w.Load, wanted)
		if len(y.State) > 0 {
			w.Stored = append(w.Stored, stored(h))
		}
		if i%24 == 0 {
			m, day := DateOf(h / 24)
			w.Days = append(w.Days, fmt.Sprintf("%d %s", day, form.MonthNames[m][:3]))
		}
	}
	w.Look = LookOf(r)
	w.Name = "The worst week, from " + w.Days[0]
	return w
}

// WeekPicture is a week as a picture with its table.
func WeekPicture(d Week, sys unit.System) PictureView {
	energy := func(watts []float64) string { return unit.Energies.Format(Sum(watts)*3600, sys) }
	v := PictureView{ID: "week", Title: "The worst week of the year", SVG: SvgOf(d.Draw), Head: []string{"Day from", "Sun at the line", "Needed", "Missing"}}
	v.Say = fmt.Sprintf("From %s at %s: %s are needed, and %s of them are missing.", d.Days[0], Clock(float64(d.from%24)), energy(d.Load), energy(d.Missing))
	for i, day := range d.Days {
		from, to := 24*i, min(24*i+24, len(d.Sun))
		v.Rows = append(v.Rows, []string{day, energy(d.Sun[from:to]), energy(d.Load[from:to]), energy(d.Missing[from:to])})
	}
	v.Numbers = func() SheetOfNumbers {
		t := SheetOfNumbers{Name: "worst-week", Head: []string{"hour of the year", "sun at the line, W", "needed, W", "missing, W"}}
		if len(d.Stored) > 0 {
			t.Head = append(t.Head, "stored at the end, Wh")
		}
		for i := range d.Sun {
			row := []any{(d.from + i) % (365 * 24), d.Sun[i], d.Load[i], d.Missing[i]}
			if len(d.Stored) > 0 {
				row = append(row, JoulesWh(d.Stored[i]))
			}
			t.Rows = append(t.Rows, row)
		}
		return t
	}
	return v
}

// StatePicture is how full store i was, day by day; false where it took no part in the year. Its numbers stand at the address
// of its variant, under its ID.
func StatePicture(r model.VariantResult, i int) (PictureView, bool) {
	if r.Year.Hourly == nil || !r.Stores[i].InYear {
		return PictureView{}, false
	}
	n := 0
	for _, s := range r.Stores[:i] {
		if s.InYear {
			n++
		}
	}
	s, state, capacity := r.Stores[i], r.Year.Hourly.State[n], float64(r.Year.Stores[n].Capacity)
	if capacity <= 0 {
		return PictureView{}, false
	}
	d := draw.States{Name: OrUnnamed(s.Name), Look: s.Kind.Look}
	d.Least, d.Most = dayEnds(state, capacity)
	full, empty := 0, 0
	for i := range d.Most {
		if d.Most[i] >= nearly {
			full++
		}
		if d.Least[i] <= 1-nearly {
			empty++
		}
	}
	say := fmt.Sprintf("The band shows each day's lowest and highest level. The store gets full on %d days of the year and empty on %d.", full, empty)
	if slices.ContainsFunc(s.Reservoir.Locked, func(share float64) bool { return share > 0 }) {
		say += " In the cold it gives less."
	}
	return PictureView{ID: "state" + Itoa(n+1), Title: "Charge level through the year: " + d.Name, Say: say,
		SVG: SvgOf(d.Draw), Head: []string{"Month", "Least", "Most", "Days full", "Days empty"}, Rows: statesByMonth(d), Numbers: func() SheetOfNumbers { return stateNumbers(d) }}, true
}

// stateNumbers is the least and the most of each day.
func stateNumbers(d draw.States) SheetOfNumbers {
	t := SheetOfNumbers{Name: "how-full", Head: []string{"month", "day", "least, share of full", "most, share of full"}}
	for i := range d.Least {
		m, day := DateOf(i)
		t.Rows = append(t.Rows, []any{m + 1, day, d.Least[i], d.Most[i]})
	}
	return t
}

// nearly is the share that counts as full: half a hundredth is less than the picture shows.
const nearly = 0.995

// dayEnds is the least and the most of each day of an hourly state, as shares of full.
func dayEnds(state []float64, capacity float64) (least, most []float64) {
	for day := range slices.Chunk(state, 24) {
		least, most = append(least, slices.Min(day)/capacity), append(most, slices.Max(day)/capacity)
	}
	return least, most
}

func statesByMonth(d draw.States) [][]string {
	var rows [][]string
	from := 0
	percent := func(v float64) string { return Share(v, unit.Metric) }
	for m, days := range MonthDays {
		least, most := d.Least[from:from+days], d.Most[from:from+days]
		full, empty := 0, 0
		for i := range most {
			if most[i] >= nearly {
				full++
			}
			if least[i] <= 1-nearly {
				empty++
			}
		}
		rows = append(rows, []string{form.MonthNames[m], percent(slices.Min(least)), percent(slices.Max(most)), Itoa(full), Itoa(empty)})
		from += days
	}
	return rows
}
