package page

import (
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// mostOf is the share of what all stores gave from which one of them is said to have given nearly all (our own judgement).
const mostOf = 0.9

// GivenBy says which store gave what in the year, where there are several: a verdict is of the whole variant, and must not
// be read as that of its first store. "" where one store stands alone or the year is not known.
func GivenBy(r model.VariantResult, sys unit.System) string {
	if !r.YearKnown || len(r.Stores) < 2 {
		return ""
	}
	var gave []string
	for _, s := range r.Stores {
		what := "nothing"
		if s.InYear && s.Year.Delivered > 0 {
			what = unit.BigEnergies.Format(float64(s.Year.Delivered), sys)
		}
		gave = append(gave, "“"+OrUnnamed(s.Name)+"” gave "+what)
	}
	return "Energy from the stores in a year: " + strings.Join(gave, ", ") + "."
}

// HeadlineAndGiven are the sentences of a verdict on the page of one of several stores, with what each of them gave behind
// the first.
func HeadlineAndGiven(r model.VariantResult, sys unit.System) (first string, rest []string) {
	first, rest = HeadlineOf(r, sys)
	if gave := GivenBy(r, sys); gave != "" {
		rest = append([]string{gave}, rest...)
	}
	return first, rest
}

// NearlyAllBy names the store from which nearly everything came that stores gave in the year, where there are several; ""
// where they share it, or nothing came.
func NearlyAllBy(r model.VariantResult) string {
	if !r.YearKnown || len(r.Stores) < 2 {
		return ""
	}
	for _, s := range r.Stores {
		if s.InYear && r.Year.Delivered > 0 && s.Year.Delivered >= mostOf*r.Year.Delivered {
			return OrUnnamed(s.Name)
		}
	}
	return ""
}
