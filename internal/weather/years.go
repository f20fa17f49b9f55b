package weather

import (
	"errors"
	"io"
	"slices"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// ReadYears reads a weather file of one year or of several, each with the report on it, in their order. Of a file with
// several years the whole ones are returned, and left says which were left out and why. A file without one whole year, or
// that cannot be read, gives an error as Read does, and the report as far as it came.
func ReadYears(r io.Reader, hint Mapping, progress func(done int64)) (years []Year, left []say.Sentence, rep Report, err error) {
	text, err := slurp(r)
	if err != nil {
		return nil, nil, rep, err
	}
	t, err := layOut(text, hint)
	if err != nil {
		return nil, nil, rep, err
	}
	t.progress = progress
	rep = Report{Layout: t.layout, Mapping: t.mapping()}
	rows, err := t.rows()
	rep.Rows = len(rows)
	if err != nil {
		return nil, nil, rep, err
	}
	first := rep
	for _, rows := range byYear(rows) {
		one, its := *t, first // each year is read by itself
		its.Rows = len(rows)
		s, why := one.year(rows, &its)
		if rep = its; why == nil {
			years = append(years, Year{s, its})
			continue
		}
		if err == nil {
			err = why
		}
		refused, ok := errors.AsType[*Refused](why)
		if !ok {
			return nil, nil, rep, why
		}
		if n := onlyYear(rows); n > 0 {
			left = append(left, say.That("%s is left out, with %s rows: %s", unit.CalendarYear(n), len(rows), refused.Faults[0].Reason))
		}
	}
	if len(years) == 0 {
		return nil, nil, rep, err
	}
	return years, left, years[0].Report, nil
}

// byYear parts rows by the years of their stamps where the same moment stands in more than one year; a typical year, whose
// months come from different years, stays whole. The midnight with which a year's last hour ends is stamped with the next
// year: where it is all that is there of a year, it stays with the year that it ends.
func byYear(rows []row) [][]row {
	if !slices.ContainsFunc(rows, func(x row) bool { return x.at.year != rows[0].at.year }) {
		return [][]row{rows}
	}
	at := map[moment]int{}
	several := false
	of := map[int][]row{}
	var order []int
	for _, x := range rows {
		m := x.at
		m.year, m.zone, m.zoned = 0, 0, false
		if y, seen := at[m]; seen && y != x.at.year {
			several = true
		}
		at[m] = x.at.year
		if of[x.at.year] == nil {
			order = append(order, x.at.year)
		}
		of[x.at.year] = append(of[x.at.year], x)
	}
	if !several || of[0] != nil {
		return [][]row{rows}
	}
	slices.Sort(order)
	last := order[len(order)-1]
	if n := len(order); len(of[last]) == 1 && midnight(of[last][0]) && order[n-2] == last-1 { // stamps end their hours
		for _, y := range order {
			if of[y] = slices.DeleteFunc(of[y], func(x row) bool {
				if midnight(x) && of[y-1] != nil {
					of[y-1] = append(of[y-1], x)
				}
				return midnight(x)
			}); y == last {
				order = order[:n-1]
			}
		}
	}
	out := make([][]row, len(order))
	for i, y := range order {
		out[i] = of[y]
	}
	return out
}

// midnight reports whether a row is stamped with the first moment of a year.
func midnight(x row) bool { return x.at.month == 1 && x.at.day == 1 && x.at.minute == 0 }

// onlyYear is the year of all rows, the midnight at their end apart; 0 where it is not said or not one.
func onlyYear(rows []row) int {
	year := rows[0].at.year
	for _, x := range rows {
		if x.at.year != year && !(x.at.year == year+1 && midnight(x)) {
			return 0
		}
	}
	return year
}
