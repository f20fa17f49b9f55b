package variant

import (
	"cmp"
	"fmt"
	"net/http"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The page Season, dust and snow: /projects/{project}/variants/{variant}/season: what differs from month to month on the panels.

// seasonInputs are what the panels have of it.
func seasonInputs() []form.Part[panel.Array] {
	type a = panel.Array
	return []form.Part[a]{
		form.Twelve("tilt_by_month_rad", "Tilt of each month", unit.Angles, func(a *a) **[12]unit.Angle { return &a.TiltBy }, form.Hint[a]("12 numbers, January first; if empty: one tilt all year")),
		form.Number("dust_per_day", "Dust in a day", unit.Percents, func(a *a) *unit.Known[unit.Ratio] { return &a.Dust }, form.Hint[a]("")),
		form.Number("clean_every_days", "Days between cleanings", unit.Counts, func(a *a) *unit.Known[unit.Count] { return &a.DustClean }, form.Hint[a]("")),
		form.Months("dust_months", "Months with dust", func(a *a) *[]unit.Count { return &a.DustIn }, form.Hint[a]("6-9 or Jun-Sep")),
		form.Number("slant_m", "Lower edge to upper edge", unit.Heights, func(a *a) *unit.Known[unit.Length] { return &a.Slant }, form.Hint[a]("along the panels: how far snow slides")),
		form.Number("lower_edge_m", "Lower edge over the ground", unit.Heights, func(a *a) *unit.Known[unit.Length] { return &a.Edge }, form.Hint[a]("room for the snow that slid off")),
		form.Word("snow_cleared", "Snow cleared off", func(a *a) *unit.Answer { return &a.Cleared }),
	}
}

// seasonPaths are the inputs of this page, as they stand in a group of panels.
var seasonPaths = []string{"tilt_by_month_rad", "dust_per_day", "clean_every_days", "dust_months", "slant_m", "lower_edge_m", "snow_cleared"}

// OnSeason reports whether a path of the variant is that of an input of this page.
func OnSeason(path string) bool {
	_, input, _ := strings.Cut(path, ".")
	return slices.Contains(seasonPaths, input)
}

func (s *Pages) seasonEditor(r *http.Request) (page.Editor[model.Variant], error) {
	p, v, sys, err := s.VariantIn(r)
	if err != nil {
		return page.Editor[model.Variant]{}, err
	}
	url := page.VariantURL(p.ID, v.ID) + "/season"
	e := s.VariantEditor(r.Context(), p, v, sys, url, "Season, dust and snow")
	e.Form.Parts = form.Kept(form.Pick(variantForm(seasonInputs()...), OnSeason, func(string) bool { return false }),
		func(v *model.Variant, i int) string { return called(v.Panels[i], i) })
	e.Answer = func(w model.Variant) (page.Answer, error) {
		g := s.Grounds.Of(p)
		r, links := s.Results.Typed(p, v, w), s.LinksOf(p, w, v.ID)
		view := seasonViewOf(g, w, r, url, sys)
		view.Place = page.ProjectURL(p.ID) + "/place"
		return page.Answer{First: view.Says[0], Bands: []page.BandView{page.VariantBand(r, sys, links.To)}, Body: seasonResults(view)}, nil
	}
	return e, nil
}

// seasonView is what the page says, ready to print.
type seasonView struct {
	Says  []string
	Place string // address of the page Place and sun
	Head  []string
	Rows  [][]string // by month
	CSV   string
}

func seasonViewOf(g model.Ground, v model.Variant, r model.VariantResult, url string, sys unit.System) seasonView {
	out := seasonView{CSV: url + "/months.csv"}
	if !r.YearKnown {
		out.Says = []string{form.Sentence("The year is not known: " + r.WhyNoYear.In(sys))}
		return out
	}
	out.Says = append(out.Says, snowSay(g, v, r, sys))
	for _, a := range v.Panels {
		if a.TiltBy != nil {
			out.Says = append(out.Says, page.OrUnnamed(a.Name)+" has another tilt each month: "+page.Extent(unit.Angles, a.TiltBy[:], sys)+".")
		}
	}
	out.Head = []string{"Month", "From the panels, a day"}
	for i, a := range v.Panels {
		if a.TiltBy != nil {
			out.Head = append(out.Head, called(a, i)+": tilt")
		}
		if r.Snow[i] != nil {
			out.Head = append(out.Head, called(a, i)+": lost to snow")
		}
	}
	for m, energy := range monthsOf(r) {
		row := []string{form.MonthNames[m], unit.Energies.Format(energy/float64(page.MonthDays[m]), sys)}
		for i, a := range v.Panels {
			if a.TiltBy != nil {
				row = append(row, unit.Angles.Format(float64(a.TiltBy[m]), sys))
			}
			if r.Snow[i] != nil {
				row = append(row, roughly(r.Snow[i][m]))
			}
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

func called(a panel.Array, i int) string {
	return form.Clip(cmp.Or(a.Name, fmt.Sprintf("Panels %d", i+1)), 40)
}

// monthsOf is what the panels bring to the line in each month, J.
func monthsOf(r model.VariantResult) (sums [12]float64) {
	from := 0
	for m, days := range page.MonthDays {
		sums[m] = page.Sum(r.Bus.Power[from:from+24*days]) * 3600
		from += 24 * days
	}
	return sums
}

// snowSay tells what snow takes of the year, and in which month it takes most, or that nothing is said of it.
func snowSay(g model.Ground, v model.Variant, r model.VariantResult, sys unit.System) string {
	if g.Project.Place.SnowFall == nil {
		return "How much snow falls is not known: the winter is counted without snow on the panels."
	}
	worst, most, name := 0, 0.0, ""
	for i, months := range r.Snow {
		for m := range 12 {
			if months != nil && months[m] > most {
				worst, most, name = m, months[m], called(v.Panels[i], i)
			}
		}
	}
	if most == 0 {
		return "Snow takes nothing of the panels’ power."
	}
	lost := unit.Energy(0)
	for _, l := range r.Bus.Losses {
		if l.Name == panel.LossSnow {
			lost += l.Energy
		}
	}
	return fmt.Sprintf("Snow takes %s of the panels’ power in a year, and most in %s: %s of what %s could give.",
		roughly(float64(lost/(lost+outputOf(r)))), form.MonthNames[worst], roughly(most), name)
}

// roughly is a share in whole percent: the formula's own tables are no better.
func roughly(share float64) string {
	if share > 0 && share < 0.01 {
		return "less than 1" + unit.Space + "%"
	}
	return unit.WholePercent(share)
}

// outputOf is what all panels give before the controller.
func outputOf(r model.VariantResult) (sum unit.Energy) {
	for _, a := range r.Bus.Arrays {
		sum += a.Output
	}
	return sum
}

// sendSeasonCSV sends the numbers of the months as they are saved.
func (s *Pages) sendSeasonCSV(w http.ResponseWriter, r *http.Request) error {
	p, v, _, err := s.VariantIn(r)
	if err != nil {
		return err
	}
	result := s.Results.Of(p, v)
	if !result.YearKnown {
		return page.ErrNotFound
	}
	return page.SendPicture(w, r, []page.PictureView{{ID: "months", Numbers: func() page.SheetOfNumbers {
		t := page.SheetOfNumbers{Name: "season-and-snow", Head: []string{"month", "at the line, kWh a day"}}
		for i, a := range v.Value.Panels {
			t.Head = append(t.Head, called(a, i)+", tilt °", called(a, i)+", share lost to snow")
		}
		for m, energy := range monthsOf(result) {
			row := []any{m + 1, energy / 3.6e6 / float64(page.MonthDays[m])}
			for i, a := range v.Value.Panels {
				tilt, snow := a.Tilt.Val.Degrees(), 0.0
				if a.TiltBy != nil {
					tilt = a.TiltBy[m].Degrees()
				}
				if result.Snow[i] != nil {
					snow = result.Snow[i][m]
				}
				row = append(row, tilt, snow)
			}
			t.Rows = append(t.Rows, row)
		}
		return t
	}}})
}
