package unit

import "testing"

// A time of day runs from midnight to midnight, both included; what lies outside is no time of day and is told in seconds.
func TestClockBorders(t *testing.T) {
	for si, want := range map[float64]string{0: "00:00", 1: "00:00:01", 66600: "18:30", 86399: "23:59:59", 86400: "24:00", -1: Minus + "1" + Space + "s", 86401: Rounded(86401, 17) + Space + "s"} {
		if got := writeClock(si); got != want {
			t.Errorf("%g s: %q, want %q", si, got, want)
		}
	}
}
