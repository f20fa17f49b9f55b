package page

import (
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// The ends of a range are told with two digits, rounded to the outside, so that what lies between lies between what is printed;
// two that read the same are one number.
func TestSpan(t *testing.T) {
	for _, c := range []struct {
		q    unit.Quantity
		a, b float64
		sys  unit.System
		want string
	}{
		{unit.Currents, 7.34, 8.02, unit.Metric, "7.3 to 8.1\u00a0A"},
		{unit.Currents, 8.02, 7.34, unit.Imperial, "7.3 to 8.1\u00a0A"},
		{unit.Currents, 7.341, 7.3412, unit.Metric, "7.34\u00a0A"},
	} {
		if got := Span(c.q, c.a, c.b, c.sys); got != c.want {
			t.Errorf("%v and %v: %q, want %q", c.a, c.b, got, c.want)
		}
	}
}

// A share is told in figures from a hundredth of a per cent on: 0.0000353 is 0.00353 %.
func TestShare(t *testing.T) {
	for share, want := range map[float64]string{0: "0 %", 0.0000353: "less than 0.01 %", 0.0001: "0.01 %", 0.176: "17.6 %", 1: "100 %"} {
		if got := strings.ReplaceAll(Share(share, unit.Metric), unit.Space, " "); got != want {
			t.Errorf("%g: %q, want %q", share, got, want)
		}
	}
}
