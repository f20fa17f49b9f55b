package variant

import (
	"fmt"
	"io"
	"math"
	"net/http"

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
		out = append(out, page.WeekPicture(page.WeekOf(g, r), sys))
	}
	for i := range r.Stores {
		if p, ok := page.StatePicture(r, i); ok {
			out = append(out, p)
		}
	}
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
	return page.PictureView{ID: "nights", Title: "The nights of the year", Say: fmt.Sprintf("%d of %d nights are full; essential devices had power in %d.", r.Year.NightsServed, r.Year.Nights, r.Year.NightsEssential),
		SVG: page.SvgOf(func(w io.Writer) error { return draw.Nights(states, w) }), Head: []string{"Month", "Full", "Of", "Not full"}, Rows: page.NightsByMonth(r), Numbers: func() page.SheetOfNumbers { return nightNumbers(r) }}
}

// nightNumbers is every night: the date on which it begins, and what it wanted and missed of lamps and devices.
func nightNumbers(r model.VariantResult) page.SheetOfNumbers {
	t := page.SheetOfNumbers{Name: "nights", Head: []string{"month", "day", "needed, Wh", "missing, Wh", "essential missing, Wh", "light"}}
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
		m, day := page.DateOf(d)
		t.Rows = append(t.Rows, []any{m + 1, day, page.JoulesWh(n.Wanted), page.JoulesWh(n.Unmet), page.JoulesWh(n.UnmetEssential), light})
	}
	return t
}

// dayPicture is the typical day of a month, with a link to each of the others.
func dayPicture(r model.VariantResult, m int, url string, sys unit.System) page.PictureView {
	d := draw.TypicalDay{Name: "A usual day in " + form.MonthNames[m], Sun: make([]float64, 24), Load: make([]float64, 24)}
	v := page.PictureView{ID: "day", Title: d.Name, Head: []string{"From", "Sun at the line", "Needed", "Stored at the end"}}
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
	d.Look = page.LookOf(r)
	v.Say = "The mean of each hour of the month. After all that is needed, " + unit.Energies.Format(over, sys) + " of sun are left over a day."
	v.SVG = page.SvgOf(func(w io.Writer) error { return draw.Day(d, w) })
	v.Numbers = func() page.SheetOfNumbers {
		t := page.SheetOfNumbers{Name: "day-" + page.Itoa(m+1), Head: []string{"from hour", "sun at the line, W", "needed, W", "stored at the end, Wh"}}
		for h := range d.Sun {
			t.Rows = append(t.Rows, []any{h, d.Sun[h], d.Load[h], page.JoulesWh(stored[h])})
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
	standing := y.Standing.Direct + y.Standing.Delivered + y.StoreStanding.Direct + y.StoreStanding.Delivered + y.Standing.Backup + y.StoreStanding.Backup
	f := draw.Flow{Name: "Where the energy went", Whole: draw.FlowPart{Name: "The sun of a year, at the line", Energy: y.Bus + y.Backup.Energy}, Parts: []draw.FlowPart{
		{Name: "lamps and devices, at once", Energy: y.Essential.Direct + y.Nice.Direct + y.Essential.Backup + y.Nice.Backup, Becomes: draw.ToLight},
		{Name: "lamps and devices, out of stores", Energy: y.Essential.Delivered + y.Nice.Delivered, Becomes: draw.ToLight},
		{Name: "what uses power all the time: heat", Energy: standing, Becomes: draw.ToHeat},
		{Name: "lost in stores: heat", Energy: loss, Becomes: draw.ToHeat},
	}}
	if change > 0.001*y.Bus {
		f.Parts = append(f.Parts, draw.FlowPart{Name: "still stored at the end", Energy: change, Becomes: draw.ToNobody})
	}
	f.Parts = append(f.Parts, draw.FlowPart{Name: "sun not used", Energy: y.Spilled, Becomes: draw.ToNobody})
	whence := "the sun of a year"
	if y.Backup.Energy > 0 {
		whence = "the sun and the backup of a year"
		f.Whole.Name = "The sun of a year and the backup, at the line"
	}
	v := page.PictureView{ID: "flow", Title: f.Name, SVG: page.SvgOf(f.Draw), Head: []string{"A year", "Energy", "Share"}, Say: "The panels bring no sun in this year."}
	if y.Bus > 0 {
		of := func(e unit.Energy) string { return page.Share(float64(e/f.Whole.Energy), sys) }
		v.Say = form.SentenceCase(of(f.Parts[0].Energy+f.Parts[1].Energy)) + " of " + whence + " reaches lamps and devices. " + of(standing+loss) + " becomes heat on the way, and " + of(y.Spilled) + " is not used."
	}
	for _, row := range flowOf(r, sys) {
		v.Rows = append(v.Rows, []string{row.Name, row.Value, row.Share})
	}
	v.Numbers = func() page.SheetOfNumbers {
		t := page.SheetOfNumbers{Name: "flow", Head: []string{"part", "a year, Wh"}, Rows: [][]any{{f.Whole.Name, page.JoulesWh(f.Whole.Energy)}}}
		for _, p := range f.Parts {
			t.Rows = append(t.Rows, []any{p.Name, page.JoulesWh(p.Energy)})
		}
		return t
	}
	return v
}
