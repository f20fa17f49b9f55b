package place

import (
	"io"
	"math"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// placeView is a place's year of sun, ready to print.
type placeView struct {
	Headline string
	More     []string
	Flags    []page.FlagView
	Facts    []page.FactView
	Months   [][]string
	Degrees  string // unit of the air in the table of months
	Picture  *page.PictureView
}

// onPanel is the light on a panel as a maker would set it up: to noon, tilted by the latitude; nothing where there is no sky.
func onPanel(g model.Ground) sun.Light {
	if g.Sky == nil {
		return sun.Light{}
	}
	tilt, azimuth := sun.FacingEquator(g.Sky.Geometry.Latitude)
	return sun.PlaneOf(g.Sky.Geometry, g.Project.Place, sun.Face{Tilt: tilt, Azimuth: azimuth}).Light(g.Sky)
}

func placeViewOf(g model.Ground, light sun.Light, sys unit.System, here string) placeView {
	if g.Sky == nil {
		v := placeView{Headline: "The sun is not known yet."}
		for _, p := range g.WhyNot {
			v.Flags = append(v.Flags, page.FlagView{Say: form.Sentence(p.Say.In(sys))})
		}
		return v
	}
	year := g.Sky.Year()
	tilt, _ := sun.FacingEquator(g.Sky.Geometry.Latitude)
	v := placeView{Headline: "A year brings " + unit.YearIrradiations.Format(year, sys) + " on the flat."}
	if g.Sky.Made != "" {
		v.More = []string{form.Sentence(g.Sky.Made)}
	}
	if g.Sky.Rough {
		v.Flags = append(v.Flags, page.FlagView{Say: "This sky is rough: it was described in words. Twelve monthly means or a weather file make it better."})
	}
	for _, remark := range g.Remarks() {
		v.Flags = append(v.Flags, page.FlagView{Say: form.Sentence(remark.Say.In(sys))})
	}
	onPanel := page.Sum(light.Plane) * 3600
	v.Facts = []page.FactView{
		{ID: "ghi", Label: "On the flat, a year", Value: unit.YearIrradiations.Format(year, sys), How: &page.HowView{Formula: "Σ of the 8\u00a0760 hours", Source: g.Sky.Made, Topic: "sun"}},
		{ID: "panel", Label: "On a panel at " + unit.Angles.Format(float64(tilt), sys) + " facing noon", Value: unit.YearIrradiations.Format(onPanel, sys),
			How: &page.HowView{Formula: "beam by geometry, sky by Hay and Davies, ground by the share it reflects", Source: "Duffie and Beckman, Solar Engineering of Thermal Processes, ch. 2", Topic: "sun"}},
		{ID: "temperature", Label: "Mean air temperature", Value: unit.Temperatures.Format(page.Sum(g.Sky.TAir)/float64(len(g.Sky.TAir)), sys)},
	}
	v.Degrees = unit.Temperatures.Symbol(sys)
	v.Months = monthRows(g, light.Plane, sys)
	flat, panel := dayMeans(g.Sky.GHI), dayMeans(light.Plane)
	v.Picture = &page.PictureView{ID: "sun", Title: "Sun month by month", Say: "The bars show the sun on the flat, and on a panel at " + unit.Angles.Format(float64(tilt), sys) + " facing noon.",
		SVG: page.SvgOf(func(w io.Writer) error { return draw.SunMonths(flat, panel, w) }), CSV: here + "/sun.csv"}
	v.Picture.Numbers = func() page.SheetOfNumbers {
		t := page.SheetOfNumbers{Name: "sun-month-by-month", Head: []string{"month", "on the flat, kWh/m² a day", "on the panel, kWh/m² a day", "one day in ten is under, kWh/m²", "one day in ten is over, kWh/m²", "night, h"}}
		low, high, of := daySpread(g)
		nights := nightHours(g)
		for m := range flat {
			row := []any{m + 1, flat[m], panel[m], low[m], high[m], nights[m]}
			if of == "" {
				row[3], row[4] = math.NaN(), math.NaN()
			}
			t.Rows = append(t.Rows, row)
		}
		return t
	}
	return v
}

// dayMeans is a year's hourly light, W/m², as the mean day of each month, kWh/m².
func dayMeans(hours []float64) (means [12]float64) {
	from := 0
	for m, days := range page.MonthDays {
		to := from + 24*days
		means[m] = page.Sum(hours[from:to]) / 1000 / float64(days)
		from = to
	}
	return means
}

func monthRows(g model.Ground, plane []float64, sys unit.System) [][]string {
	var rows [][]string
	from := 0
	for m, days := range page.MonthDays {
		to := from + 24*days
		n := float64(days)
		dark := 0
		for _, d := range g.Sky.Geometry.Down[from:to] {
			if d {
				dark++
			}
		}
		rows = append(rows, []string{form.MonthNames[m], unit.Irradiations.Number(page.Sum(g.Sky.GHI[from:to])*3600/n, sys), unit.Irradiations.Number(page.Sum(plane[from:to])*3600/n, sys),
			unit.Temperatures.Number(page.Sum(g.Sky.TAir[from:to])/float64(to-from), sys), unit.Rounded(float64(dark)/n, 3)})
		from = to
	}
	return rows
}
