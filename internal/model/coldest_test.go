package model

import (
	"testing"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// The lowest temperature at the panels, by its own words: a record as it is; a weather file's coldest hour less 10 K, of several
// files the coldest of all; the lowest mean daily minimum less 10 and 20 K, 27 K under −15 °C; else all that is accepted.
func TestColdestNight(t *testing.T) {
	file := func(coldest float64) *sun.Sky {
		air := make([]float64, sun.YearHours)
		air[4000] = coldest
		return &sun.Sky{TAir: air}
	}
	monthly := func(low float64) *sun.Monthly {
		var m sun.Monthly
		for i := range m.TMin {
			m.TMin[i] = unit.Celsius(low + float64(i))
		}
		return &m
	}
	for name, c := range map[string]struct {
		g           Ground
		best, worst float64
	}{
		"a record":       {Ground{Project: Project{Place: sun.Place{RecordLow: unit.Of(unit.Celsius(-31)), Sky: sun.SkyFile}}, Sky: file(-5)}, -31, -31},
		"a file":         {Ground{Project: Project{Place: sun.Place{Sky: sun.SkyFile}}, Sky: file(-17)}, -27, -27},
		"monthly, mild":  {Ground{Project: Project{Place: sun.Place{Sky: sun.SkyMonthly, Monthly: monthly(-15)}}}, -25, -35},
		"monthly, cold":  {Ground{Project: Project{Place: sun.Place{Sky: sun.SkyMonthly, Monthly: monthly(-16)}}}, -26, -43},
		"nothing known":  {Ground{}, 40, -70},
		"a file to come": {Ground{Project: Project{Place: sun.Place{Sky: sun.SkyFile}}}, 40, -70},
	} {
		if best, worst := c.g.coldest(); best != c.best || worst != c.worst {
			t.Errorf("%s: %g to %g, want %g to %g", name, best, worst, c.best, c.worst)
		}
	}
}
