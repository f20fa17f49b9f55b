package variant

import (
	"fmt"
	"io"
	"math"
	"net/http"
	"slices"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// picturesOf are the pictures of a variant's year on ground g: the typical day of a month (0 is January), where the energy
// went, every night, the worst week, how full each store was, and for a hoist its mass against its height. url is the page
// they stand on.
func picturesOf(kinds page.Kinds, g model.Ground, r model.VariantResult, month int, url string, sys unit.System) []page.PictureView {
	if !r.YearKnown {
		return nil
	}
	out := []page.PictureView{dayPicture(r, month, url, sys)}
	if r.Year.Bus > 0 {
		out = append(out, flowPicture(r, sys))
	}
	if r.Year.Nights > 0 {
		out = append(out, nightsPicture(r))
	}
	if r.Year.WorstWeek.Unmet > 0 && r.Year.Hourly != nil {
		out = append(out, weekPicture(weekOf(g, r), sys))
	}
	out = append(out, statePictures(r)...)
	out = append(out, kindPictures(kinds, r, sys)...)
	for i := range out {
		out[i].CSV = url + "/" + out[i].ID + ".csv"
	}
	out[0].CSV += fmt.Sprintf("?month=%d", month+1)
	return out
}

// kindPictures is a picture of each kind that has one, of its first store for which there is one.
func kindPictures(kinds page.Kinds, r model.VariantResult, sys unit.System) (out []page.PictureView) {
	for _, k := range kinds {
		for _, s := range r.Stores {
			if s.Kind != k.Row || k.Year.Picture == nil {
				continue
			}
			if p, ok := k.Year.Picture(r, s, sys); ok {
				out = append(out, p)
				break
			}
		}
	}
	return out
}

// lookOf is the look of the one store that took part in the year; empty for several.
func lookOf(r model.VariantResult) string {
	for _, s := range r.Stores {
		if s.InYear && len(r.Year.Stores) == 1 {
			return s.Kind.Look
		}
	}
	return ""
}

// sendVariantCSV sends the numbers of one picture of a variant as it is saved.
func (s *Pages) sendVariantCSV(w http.ResponseWriter, r *http.Request) error {
	p, v, sys, err := s.VariantIn(r)
	if err != nil {
		return err
	}
	g := s.Grounds.Of(p)
	return page.SendPicture(w, r, picturesOf(s.Tables.Stores, g, s.Results.Of(p, v), s.monthOf(r), page.VariantURL(p.ID, v.ID), sys))
}

// cents is a power without what is less than a hundredth of a watt: that is dusk and rounding.
func cents(w float64) float64 {
	if math.Abs(w) < 0.005 {
		return 0
	}
	return w
}

// joulesWh is an energy in watt-hours, for a table of numbers.
func joulesWh[E ~float64](e E) float64 { return unit.Energy(e).WattHours() }

func nightsPicture(r model.VariantResult) page.PictureView {
	states := make([]int8, len(r.Year.NightLog))
	for d, n := range r.Year.NightLog {
		switch {
		case !n.Counted:
			states[d] = draw.NotCounted
		case n.Served:
			states[d] = draw.Served
		case n.Essential:
			states[d] = draw.PartlyServed
		default:
			states[d] = draw.Dark
		}
	}
	return page.PictureView{ID: "nights", Title: "The nights of the year", Say: fmt.Sprintf("All the light you ask for in %d of %d nights; the essential things in %d.", r.Year.NightsServed, r.Year.Nights, r.Year.NightsEssential),
		SVG: page.SvgOf(func(w io.Writer) error { return draw.Nights(states, w) }), Head: []string{"Month", "With light", "Of", "Without"}, Rows: page.NightsByMonth(r), Numbers: func() page.SheetOfNumbers { return nightNumbers(r) }}
}

// nightNumbers is every night: the date on which it begins, and what it wanted and missed of lamps and devices.
func nightNumbers(r model.VariantResult) page.SheetOfNumbers {
	t := page.SheetOfNumbers{Name: "nights", Head: []string{"month", "day", "wanted, Wh", "missing, Wh", "essential missing, Wh", "light"}}
	for d, n := range r.Year.NightLog {
		light := "none asked"
		switch {
		case n.Served:
			light = "all night"
		case n.Essential:
			light = "the essential"
		case n.Counted:
			light = "not all night"
		}
		m, day := dateOf(d)
		t.Rows = append(t.Rows, []any{m + 1, day, joulesWh(n.Wanted), joulesWh(n.Unmet), joulesWh(n.UnmetEssential), light})
	}
	return t
}

// dateOf is the month, 0 for January, and the day of the month of a day of the typical year, from 0.
func dateOf(day int) (month, date int) {
	day %= 365
	for m, days := range page.MonthDays {
		if day < days {
			return m, day + 1
		}
		day -= days
	}
	return 11, 31
}

// week is the 168 hours that miss most.
type week struct {
	draw.WorstWeek
	from int // first hour of the year
}

func weekOf(g model.Ground, r model.VariantResult) week {
	y, own := r.Year.Hourly, float64(r.StandingPower-g.Load.StandingPower) // the variant's, its controller's and its stores'
	w := week{from: r.Year.WorstWeek.From}
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
		w.Load = append(w.Load, g.Load.Standing[h]+g.Load.Essential[h]+g.Load.Nice[h]+own)
		if len(y.State) > 0 {
			w.Stored = append(w.Stored, stored(h))
		}
		if i%24 == 0 {
			m, day := dateOf(h / 24)
			w.Days = append(w.Days, fmt.Sprintf("%d %s", day, form.MonthNames[m][:3]))
		}
	}
	w.Look = lookOf(r)
	w.Name = "The worst week, from " + w.Days[0]
	return w
}

func weekPicture(d week, sys unit.System) page.PictureView {
	energy := func(watts []float64) string { return unit.Energies.Format(page.Sum(watts)*3600, sys) }
	v := page.PictureView{ID: "week", Title: "The worst week of the year", SVG: page.SvgOf(d.Draw), Head: []string{"Day from", "Sun at the line", "Wanted", "Not there"}}
	v.Say = fmt.Sprintf("From %s at %s: of %s wanted, %s are not there.", d.Days[0], page.Clock(float64(d.from%24)), energy(d.Load), energy(d.Missing))
	for i, day := range d.Days {
		from, to := 24*i, min(24*i+24, len(d.Sun))
		v.Rows = append(v.Rows, []string{day, energy(d.Sun[from:to]), energy(d.Load[from:to]), energy(d.Missing[from:to])})
	}
	v.Numbers = func() page.SheetOfNumbers {
		t := page.SheetOfNumbers{Name: "worst-week", Head: []string{"hour of the year", "sun at the line, W", "wanted, W", "not there, W"}}
		if len(d.Stored) > 0 {
			t.Head = append(t.Head, "stored at the end, Wh")
		}
		for i := range d.Sun {
			row := []any{(d.from + i) % (365 * 24), d.Sun[i], d.Load[i], d.Missing[i]}
			if len(d.Stored) > 0 {
				row = append(row, joulesWh(d.Stored[i]))
			}
			t.Rows = append(t.Rows, row)
		}
		return t
	}
	return v
}

// dayPicture is the typical day of a month, with a link to each of the others.
func dayPicture(r model.VariantResult, m int, url string, sys unit.System) page.PictureView {
	d := draw.TypicalDay{Name: "A usual day in " + form.MonthNames[m], Sun: make([]float64, 24), Load: make([]float64, 24)}
	v := page.PictureView{ID: "day", Title: d.Name, Head: []string{"From", "Sun at the line", "Wanted", "Stored at the end"}}
	stored, over := make([]float64, 24), 0.0
	for h, c := range r.Year.Typical[m] {
		d.Sun[h], d.Load[h] = float64(c.Bus), float64(c.Load)
		over += float64(c.Surplus()) * 3600
		for _, x := range c.State {
			stored[h] += float64(x)
		}
		v.Rows = append(v.Rows, []string{page.Clock(float64(h)), unit.Powers.Format(cents(d.Sun[h]), sys), unit.Powers.Format(cents(d.Load[h]), sys), unit.Energies.Format(stored[h], sys)})
	}
	if len(r.Year.Stores) > 0 {
		d.Stored = stored
	}
	d.Look = lookOf(r)
	v.Say = "The mean of each hour of the month. After all that is wanted, " + unit.Energies.Format(over, sys) + " of sun are left over a day."
	v.SVG = page.SvgOf(func(w io.Writer) error { return draw.Day(d, w) })
	v.Numbers = func() page.SheetOfNumbers {
		t := page.SheetOfNumbers{Name: "day-" + page.Itoa(m+1), Head: []string{"from hour", "sun at the line, W", "wanted, W", "stored at the end, Wh"}}
		for h := range d.Sun {
			t.Rows = append(t.Rows, []any{h, d.Sun[h], d.Load[h], joulesWh(stored[h])})
		}
		return t
	}
	for i, name := range form.MonthNames {
		v.Links = append(v.Links, page.Tab{Text: name[:3], URL: fmt.Sprintf("%s?month=%d#day", url, i+1), Here: i == m})
	}
	return v
}

// flowPicture is where the sun of a year went, in parts that add up to it: Bus = Direct + Taken + Spilled, and what was
// taken came out again, was lost, or is still there.
func flowPicture(r model.VariantResult, sys unit.System) page.PictureView {
	y := r.Year
	var loss, change unit.Energy
	for _, s := range y.Stores {
		loss, change = loss+s.Loss, change+s.Change
	}
	standing := y.Standing.Direct + y.Standing.Delivered + y.StoreStanding.Direct + y.StoreStanding.Delivered
	f := draw.Flow{Name: "Where each watt-hour went", Whole: draw.FlowPart{Name: "The sun of a year, at the line", Energy: y.Bus}, Parts: []draw.FlowPart{
		{Name: "lamps and devices, at once", Energy: y.Essential.Direct + y.Nice.Direct, Becomes: draw.ToLight},
		{Name: "lamps and devices, out of stores", Energy: y.Essential.Delivered + y.Nice.Delivered, Becomes: draw.ToLight},
		{Name: "what uses power all the time: heat", Energy: standing, Becomes: draw.ToHeat},
		{Name: "lost in stores: heat", Energy: loss, Becomes: draw.ToHeat},
	}}
	if change > 0.001*y.Bus {
		f.Parts = append(f.Parts, draw.FlowPart{Name: "still stored at the end", Energy: change, Becomes: draw.ToNobody})
	}
	f.Parts = append(f.Parts, draw.FlowPart{Name: "sun not used", Energy: y.Spilled, Becomes: draw.ToNobody})
	v := page.PictureView{ID: "flow", Title: f.Name, SVG: page.SvgOf(f.Draw), Head: []string{"A year", "Energy", "Share"}, Say: "The panels bring no sun in this year."}
	if y.Bus > 0 {
		of := func(e unit.Energy) string { return unit.Percents.Format(float64(e/y.Bus), sys) }
		v.Say = "Of the sun of a year " + of(f.Parts[0].Energy+f.Parts[1].Energy) + " reaches lamps and devices, " + of(standing+loss) + " becomes heat on the way, " + of(y.Spilled) + " is not used."
	}
	for _, row := range flowOf(r, sys) {
		v.Rows = append(v.Rows, []string{row.Name, row.Value, row.Share})
	}
	v.Numbers = func() page.SheetOfNumbers {
		t := page.SheetOfNumbers{Name: "flow", Head: []string{"part", "a year, Wh"}, Rows: [][]any{{f.Whole.Name, joulesWh(f.Whole.Energy)}}}
		for _, p := range f.Parts {
			t.Rows = append(t.Rows, []any{p.Name, joulesWh(p.Energy)})
		}
		return t
	}
	return v
}

// statePictures are how full each store was, day by day.
func statePictures(r model.VariantResult) []page.PictureView {
	var out []page.PictureView
	if r.Year.Hourly == nil {
		return nil
	}
	n := 0
	for _, s := range r.Stores {
		if !s.InYear {
			continue
		}
		state, capacity := r.Year.Hourly.State[n], float64(r.Year.Stores[n].Capacity)
		n++
		if capacity <= 0 {
			continue
		}
		d := draw.States{Name: page.OrUnnamed(s.Name), Look: s.Kind.Look}
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
		say := fmt.Sprintf("The band is from the lowest to the highest of each day. It becomes full on %d days of the year and empty on %d.", full, empty)
		if slices.ContainsFunc(s.Reservoir.Locked, func(share float64) bool { return share > 0 }) {
			say += " In the cold it gives less: a part stays in it."
		}
		out = append(out, page.PictureView{ID: "state" + page.Itoa(n), Title: "How full over the year: " + d.Name, Say: say,
			SVG: page.SvgOf(d.Draw), Head: []string{"Month", "Least", "Most", "Days full", "Days empty"}, Rows: statesByMonth(d), Numbers: func() page.SheetOfNumbers { return stateNumbers(d) }})
	}
	return out
}

// stateNumbers is the least and the most of each day.
func stateNumbers(d draw.States) page.SheetOfNumbers {
	t := page.SheetOfNumbers{Name: "how-full", Head: []string{"month", "day", "least, share of full", "most, share of full"}}
	for i := range d.Least {
		m, day := dateOf(i)
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
	percent := func(v float64) string { return unit.Percents.Format(v, unit.Metric) }
	for m, days := range page.MonthDays {
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
		rows = append(rows, []string{form.MonthNames[m], percent(slices.Min(least)), percent(slices.Max(most)), page.Itoa(full), page.Itoa(empty)})
		from += days
	}
	return rows
}
