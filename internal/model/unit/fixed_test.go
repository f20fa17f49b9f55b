package unit

import (
	"math"
	"strings"
	"testing"
)

// By hand: 12 345.678 to two decimals is 12 345.68; a half goes to the even digit of a float64 that is exact (0.125 → 0.12);
// −0.004 is 0.00 to two decimals, and a zero has no sign; 0.947 is 95 %, 90 % in tens, 94.7 % to one decimal.
func TestFixed(t *testing.T) {
	for _, x := range []struct {
		v      float64
		places int
		want   string
	}{{12345.678, 2, "12 345.68"}, {9999.5, 1, "9 999.5"}, {0.125, 2, "0.12"}, {-0.004, 2, "0.00"}, {-3.5, 1, "−3.5"}, {0, 0, "0"}, {3, 2, "3.00"}, {1e21, 0, "1 000 000 000 000 000 000 000"},
		{math.NaN(), 1, "not known"}, {math.Inf(1), 1, "not known"}} {
		if got := strings.ReplaceAll(Fixed(x.v, x.places), Space, " "); got != x.want {
			t.Errorf("%g to %d: %q, want %q", x.v, x.places, got, x.want)
		}
	}
	for places, want := range map[int]string{-1: "90 %", 0: "95 %", 1: "94.7 %"} {
		if got := strings.ReplaceAll(PercentTo(0.947, places), Space, " "); got != want {
			t.Errorf("0.947 to %d: %q, want %q", places, got, want)
		}
	}
	if got := WholePercent(0.425) + Whole(-0.2); got != "42"+Space+"%"+"0" && got != "43"+Space+"%"+"0" {
		t.Error(got)
	}
}
