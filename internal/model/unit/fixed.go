package unit

import (
	"math"
	"strconv"
	"strings"
)

// Fixed writes v with so many decimals, zeros kept, for what is told in equal steps: a sum of money, a row of a column, a whole
// number. Thousands are set apart, and it never writes powers of ten. A value that is not a number is "not known".
func Fixed(v float64, places int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "not known"
	}
	s := Apart(strconv.FormatFloat(math.Abs(v), 'f', max(places, 0), 64))
	if v < 0 && strings.Trim(s, "0.") != "" {
		s = Minus + s
	}
	return s
}

// Whole writes v as the nearest whole number.
func Whole(v float64) string { return Fixed(v, 0) }

// WholePercent writes a share as whole percent: "42 %".
func WholePercent(share float64) string { return PercentTo(share, 0) }

// PercentTo writes a share as percent with so many decimals; less than none rounds to tens.
func PercentTo(share float64, places int) string {
	p := 100 * share
	if places < 0 {
		p = 10 * math.Round(p/10)
	}
	return Fixed(p, places) + Space + "%"
}
