package place

import (
	"fmt"

	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// seasonView is which tilts bring most: one all year, two a year, and each month's own.
type seasonView struct {
	Say  []string
	Head []string
	Rows [][]string // months: their own best tilt, what it brings, and what the one tilt brings
	CSV  string
}

// seasonViewOf prints the tilts of a place whose sky is known.
func seasonViewOf(g model.Ground, sys unit.System, at placeAt) seasonView {
	s := g.Season()
	v := seasonView{Say: seasonSay(s, sys), CSV: at.url + "/season.csv",
		Head: []string{"Month", "Best tilt", "At that tilt, a day", "At " + angle(s.Fixed, sys) + ", a day"}}
	for m, name := range form.MonthNames {
		best := angle(s.ByMonth[m], sys)
		if s.Light[sun.AtByMonth][m] == 0 {
			best = "any: the sun stays down"
		}
		v.Rows = append(v.Rows, []string{name, best, unit.Irradiations.Format(float64(s.Light[sun.AtByMonth][m]), sys), unit.Irradiations.Format(float64(s.Light[sun.AtFixed][m]), sys)})
	}
	return v
}

func angle(a unit.Angle, sys unit.System) string { return unit.Angles.Format(float64(a), sys) }

// worthTurning is the share of a year's light from which on it is said what a second tilt brings.
const worthTurning = 0.005

// seasonSay tells which tilt gives the poorest month most, what two tilts a year bring, and what a tilt for each month brings.
func seasonSay(s sun.Season, sys unit.System) []string {
	_, usual := s.Poorest(sun.AtUsual)
	_, fixed := s.Poorest(sun.AtFixed)
	amount := func(l unit.Irradiation) string { return kilowattHours(float64(l)/3.6e6) + unit.Space + "kWh/m²" }
	var out []string
	switch {
	case fixed < 0.005*3.6e6:
		out = append(out, "In the poorest month no tilt brings anything: the sun stays down.")
	case s.Fixed == s.Usual || amount(fixed) == amount(usual):
		out = append(out, fmt.Sprintf("%s gives the poorest month %s a day; no other tilt gives clearly more.", angle(s.Usual, sys), amount(usual)))
	default:
		out = append(out, fmt.Sprintf("%s gives the poorest month %s a day; %s gives it %s.", angle(s.Usual, sys), amount(usual), angle(s.Fixed, sys), amount(fixed)))
	}
	more := func(way int) float64 { return float64(s.Year(way)/s.Year(sun.AtFixed)) - 1 }
	if more(sun.AtTwo) >= worthTurning {
		out = append(out, fmt.Sprintf("Tilted twice a year, %s from %s and %s from %s, panels get %s more over the year than at %s. The poorest month loses nothing.",
			angle(s.Two[0], sys), form.MonthNames[s.TwoMonths[0]-1], angle(s.Two[1], sys), form.MonthNames[s.TwoMonths[1]-1], unit.WholePercent(more(sun.AtTwo)), angle(s.Fixed, sys)))
		out = append(out, "With the best tilt of each month, they get "+unit.WholePercent(more(sun.AtByMonth))+" more.")
	}
	return out
}

// seasonNumbers are the tilts of the months and what they bring.
func seasonNumbers(g model.Ground) page.SheetOfNumbers {
	s := g.Season()
	t := page.SheetOfNumbers{Name: "tilt-through-the-year", Head: []string{"month", "best tilt, °", "at that tilt, kWh/m² a day", "best tilt all year, °", "at that tilt, kWh/m² a day", "tilted twice a year, kWh/m² a day"}}
	kwh := func(way, m int) float64 { return float64(s.Light[way][m]) / 3.6e6 }
	for m := range form.MonthNames {
		t.Rows = append(t.Rows, []any{m + 1, s.ByMonth[m].Degrees(), kwh(sun.AtByMonth, m), s.Fixed.Degrees(), kwh(sun.AtFixed, m), kwh(sun.AtTwo, m)})
	}
	return t
}
