package page

import (
	"duskweight/internal/model"
	"duskweight/web/form"
)

// BreaksFirst is the part of a variant that breaks first, and its word.
func BreaksFirst(r model.VariantResult) string {
	for _, s := range r.Stores {
		if c, ok := s.Part.First(); ok {
			return c.Part + ": " + CheckWords[c.Word].Word
		}
	}
	return "nothing hangs"
}

// NightsByMonth counts the full nights, by the month in which each night begins.
func NightsByMonth(r model.VariantResult) [][]string {
	var out [][]string
	d := 0
	for m, days := range MonthDays {
		served, of := 0, 0
		for range days {
			if n := r.Year.NightLog[d]; n.Counted {
				of++
				if n.Served {
					served++
				}
			}
			d++
		}
		out = append(out, []string{form.MonthNames[m], Itoa(served), Itoa(of), Itoa(of - served)})
	}
	return out
}
