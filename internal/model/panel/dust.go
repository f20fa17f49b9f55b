package panel

import (
	"slices"

	"duskweight/internal/model/unit"
)

const (
	typicalDust = 0.0015 // a day, dry season (source.Kimber)
	mostDust    = 0.30   // no more settles, our own judgement: what lies thicker slides or blows off
)

// dusty reports whether anything is said of dust; without it the share lost to dirt is the same all year.
func (a Array) dusty() bool { return a.Dust.Is || a.DustClean.Is || len(a.DustIn) > 0 }

// cleanByDay returns what dirt leaves of the light on each of the 365 days, nil where nothing is said of dust. On day j after a
// cleaning, in a month with dust, the loss is soiling + j·dust_per_day, at most mostDust; the first day of the season is clean
// too, for the rain before it. In other months it is soiling.
func (a Array) cleanByDay() []float64 {
	if !a.dusty() {
		return nil
	}
	first, rate := float64(a.Soiling.Or(typicalSoiling)), float64(a.Dust.Or(typicalDust))
	every := int(a.DustClean.Or(0))
	settles := func(day int) bool {
		return len(a.DustIn) == 0 || slices.Contains(a.DustIn, unit.Count(monthOfDay[day]))
	}
	clean := make([]float64, len(monthOfDay))
	start, always := 0, true // the last day without dust, before the season; where dust settles all year, the day of a cleaning
	for day := range monthOfDay {
		if !settles(day) {
			start, always = day, false
		}
	}
	since := 0
	if every == 0 && always { // neither rain nor anybody cleans them
		since = int(mostDust/max(rate, 1e-9)) + 1
	}
	for i := range monthOfDay {
		day := (start + i) % len(monthOfDay)
		if !settles(day) {
			since = 0
			clean[day] = 1 - first
			continue
		}
		clean[day] = 1 - max(first, min(mostDust, first+float64(since)*rate))
		if since++; every > 0 && since == every {
			since = 0
		}
	}
	return clean
}

// monthOfDay is the month of each day of a year of 365 days.
var monthOfDay = func() (of [365]int) {
	day := 0
	for m, n := range [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31} {
		for range n {
			of[day] = m + 1
			day++
		}
	}
	return of
}()
