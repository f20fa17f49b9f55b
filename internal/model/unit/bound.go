package unit

// Bound returns a limit of q for reading, in q's unit under sys, rounded in a direction to its digits, at least three: "at most
// 32.8 ft" for 10 m. Rounded towards the inside of the range it is a value that is taken.
func (q Quantity) Bound(si float64, sys System, dir Round) string {
	return q.FormatTo(si, sys, max(q.digits, 3), dir)
}

// Between returns a usual range for reading, "50 to 98 %": limits that three digits say in full stand as they are, others are
// rounded to two digits towards the inside. A value outside of the range is outside of what is told, too.
func (q Quantity) Between(lo, hi float64, sys System) string {
	return q.NumberTo(lo, sys, q.shortest(lo, sys), Up) + " to " + q.FormatTo(hi, sys, q.shortest(hi, sys), Down)
}

// shortest is three where three digits say a value in full, else two; never less than q counts in.
func (q Quantity) shortest(si float64, sys System) int {
	if q.NumberTo(si, sys, 3, Up) == q.NumberTo(si, sys, 3, Down) || q.dim.whole {
		return max(q.digits, 3)
	}
	return 2
}

// PlausibleRange returns the plausible range in words, "10 to 500 mm", or "" where there is none.
func (q Quantity) PlausibleRange(sys System) string {
	if q.lo == 0 && q.hi == 0 {
		return ""
	}
	return q.Between(q.lo, q.hi, sys)
}
