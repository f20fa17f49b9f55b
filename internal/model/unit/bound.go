package unit

import (
	"cmp"
	"strings"
)

// LimitDigits is how many digits a limit of q is told with: its own, at least three.
func (q Quantity) LimitDigits() int { return max(q.digits, 3) }

// Between returns a usual range for reading, "50 to 98 %": limits that three digits say in full stand as they are, others are
// rounded to two digits towards the inside. A value outside of the range is outside of what is told, too. Where a limit is told in
// feet and inches, each limit has its unit: "8″ to 9′ 10″".
func (q Quantity) Between(lo, hi float64, sys System) string {
	from, tapedFrom := q.tapedLimit(lo, sys, Up)
	to, tapedTo := q.tapedLimit(hi, sys, Down)
	if tapedFrom || tapedTo {
		if !tapedFrom && lo != 0 {
			from = q.withSymbol(q.NumberTo(lo, sys, q.shortest(lo, sys), Up), lo, sys)
		}
		if !tapedTo {
			to = q.withSymbol(q.NumberTo(hi, sys, q.shortest(hi, sys), Down), hi, sys)
		}
		return cmp.Or(from, "0") + " to " + to
	}
	text := q.NumberTo(lo, sys, q.shortest(lo, sys), Up) + " to " + q.withSymbol(q.NumberTo(hi, sys, q.shortest(hi, sys), Down), hi, sys)
	if from, to := Gauge(Area(lo)), Gauge(Area(hi)); q.gauge && sys == Imperial && from != "" && to != "" {
		text += " (" + from + " to " + strings.TrimPrefix(to, "AWG"+Space) + ")"
	}
	return text
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
