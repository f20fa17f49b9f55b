package compare

import (
	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

// nightsTitle is the group of the rows about nights.
const nightsTitle = "Nights"

// years puts a usual and a bad year above the average year's nights, where at least one variant has them, and says what
// each of the three is. A variant whose years take long says that they are not worked out yet.
func (v *compareView) years(groups []compareGroup, years []search.Sure, rs []model.VariantResult) {
	usual, bad := compareRow{Name: "Full nights, usual year", Sense: "highest", OnAxis: true}, compareRow{Name: "Full nights, bad year", Sense: "highest", OnAxis: true}
	some := false
	var two [2][]known
	for i, s := range years {
		u, b, _, is := page.NightsOf(s)
		some = some || is
		two[0], two[1] = append(two[0], known{float64(u), is, whyNot(s, rs[i])}), append(two[1], known{float64(b), is, whyNot(s, rs[i])})
	}
	if !some && !waits(years, rs) {
		return
	}
	usual.best(two[0])
	bad.best(two[1])
	for i := range groups {
		if g := &groups[i]; g.Title == nightsTitle {
			g.Rows = append([]compareRow{usual, bad}, g.Rows...)
		}
	}
	v.Average = "A usual year is the middle of many, and one in ten is worse than a bad year. The average year has every month at its mean: no real year is like it, so its nights differ."
}

// waits reports whether the years of a variant are not worked out yet.
func waits(years []search.Sure, rs []model.VariantResult) bool {
	for i, s := range years {
		if s.Years == 0 && rs[i].YearKnown {
			return true
		}
	}
	return false
}

// whyNot is what stands instead of a number.
func whyNot(s search.Sure, r model.VariantResult) string {
	switch {
	case r.YearKnown && r.Open.IsZero() && s.Years == 0:
		return "not worked out yet: see How sure"
	case s.Years > 0 && !s.WhyOne.IsZero():
		return "there is one year only"
	}
	return "not known"
}

// known is a number of a row, or what stands instead.
type known struct {
	value float64
	is    bool
	why   string
}

// best fills a row of which the highest is best.
func (row *compareRow) best(vs []known) {
	most, n := 0.0, 0
	same := true
	for _, k := range vs {
		if k.is {
			same = same && (n == 0 || k.value == most)
			most = max(most, k.value)
			n++
		}
	}
	for _, k := range vs {
		if !k.is {
			row.Cells = append(row.Cells, compareCell{Text: k.why})
			continue
		}
		row.Cells = append(row.Cells, compareCell{Text: unit.Rounded(k.value, 3), Best: n > 1 && !same && k.value == most})
	}
}
