package form

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"duskweight/internal/model/unit"
)

// Months is an input for some months of the year, typed as numbers or names: "6-9", "11-2", "Jan, Dec". Empty is none.
func Months[T any](path, label string, at func(*T) *[]unit.Count, more ...func(*Input[T])) Part[T] {
	in := NewInput[T](path, label, asText)
	in.Show = func(t *T, _ unit.System) string { return monthsText(*at(t)) }
	in.Read = func(t *T, text string, _ unit.System) error {
		months, err := readMonths(text)
		if err == nil {
			*at(t) = months
		}
		return err
	}
	return finish(in, more)
}

// monthsText prints months in the order of the year, runs as "6-9".
func monthsText(months []unit.Count) string {
	var out []string
	for from := 1; from <= 12; {
		if !slices.Contains(months, unit.Count(from)) {
			from++
			continue
		}
		to := from
		for to < 12 && slices.Contains(months, unit.Count(to+1)) {
			to++
		}
		if to > from {
			out = append(out, fmt.Sprintf("%d-%d", from, to))
		} else {
			out = append(out, strconv.Itoa(from))
		}
		from = to + 1
	}
	return strings.Join(out, ", ")
}

// readMonths reads what Months takes, each month once and in order. A run may go over the turn of the year.
func readMonths(text string) ([]unit.Count, error) {
	var found [13]bool
	for _, piece := range strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' || r == ' ' }) {
		first, last, run := strings.Cut(strings.ReplaceAll(piece, "–", "-"), "-")
		from, to := monthOf(first), monthOf(first)
		if run {
			to = monthOf(last)
		}
		if from == 0 || to == 0 {
			return nil, fmt.Errorf("“%s” is no month: write 6-9 or Jun-Sep, or 1, 2, 12", Clip(piece, 20))
		}
		for m := from; ; m = m%12 + 1 {
			found[m] = true
			if m == to {
				break
			}
		}
	}
	var out []unit.Count
	for m, is := range found {
		if is {
			out = append(out, unit.Count(m))
		}
	}
	return out, nil
}

// monthOf is the number of a month by number or by the first three letters of its name; 0 where it is none.
func monthOf(text string) int {
	if n, err := strconv.Atoi(text); err == nil && n >= 1 && n <= 12 {
		return n
	}
	for i, name := range MonthNames {
		if len(text) >= 3 && strings.HasPrefix(strings.ToLower(name), strings.ToLower(text)) {
			return i + 1
		}
	}
	return 0
}

// Twelve is an input for one number of each month, January first, typed one after the other. Empty is not known.
func Twelve[T any, X unit.Number](path, label string, q unit.Quantity, at func(*T) **[12]X, more ...func(*Input[T])) Part[T] {
	in := NewInput[T](path, label, asText)
	in.Symbol, in.Spare, in.each = q.Symbol, true, &q
	in.Show = func(t *T, sys unit.System) string {
		months := *at(t)
		if months == nil {
			return ""
		}
		var out []string
		for _, x := range months {
			out = append(out, TypedForm(q, float64(x), sys))
		}
		return strings.Join(out, " ")
	}
	in.Read = func(t *T, text string, sys unit.System) error {
		pieces := strings.Fields(strings.ReplaceAll(text, ";", " "))
		if len(pieces) == 0 {
			*at(t) = nil
			return nil
		}
		if len(pieces) != 12 {
			return fmt.Errorf("give 12 numbers, January first; there are %d", len(pieces))
		}
		months := new([12]X)
		for m, piece := range pieces {
			v, known, err := ReadNumber[X](q, strings.TrimSuffix(piece, ","), sys)
			if err != nil || !known {
				return fmt.Errorf("“%s” for %s is no number", Clip(piece, 20), MonthNames[m])
			}
			months[m] = v
		}
		*at(t) = months
		return nil
	}
	return finish(in, more)
}
