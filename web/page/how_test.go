package page

import "testing"

// A use has two digits behind the point, and rounding never brings it to the other side of its limit.
func TestUseText(t *testing.T) {
	for u, want := range map[float64]string{
		0.73: "0.73 ×", 0.918: "0.92 ×", 2.219: "2.3 ×", 1: "1 ×", 0.997: "just under 1 ×", 1.004: "1.1 ×",
		0.984: "0.99 ×", 0.994: "just under 1 ×", 1.1: "1.1 ×", 0.004: "under 0.01 ×", 0: "0 ×", 0.051: "0.06 ×", 12.34: "13 ×", 1001: "over 1\u00a0000 ×",
	} {
		if got := UseText(u); got != want {
			t.Errorf("%v is told as %q, want %q", u, got, want)
		}
	}
}
