package unit

import (
	"strings"
	"testing"
)

// Limits by hand: 1 to 15 m are 3.2808 to 49.213 ft; 2 mm are 0.07874 in; 30 kg are 66.14 lb; −430 and
// 6000 m are −1410.8 and 19 685 ft.
func TestBetween(t *testing.T) {
	plain := strings.NewReplacer(Space, " ", Minus, "-")
	for _, c := range []struct{ got, want string }{
		{Lengths.Between(1, 15, Metric), "1 to 15 m"}, {Lengths.Between(1, 15, Imperial), "3.3 to 49 ft"}, {SmallLengths.Between(0.002, 0.0254, Imperial), "0.079 to 1 in"},
		{Masses.Between(30, 30000, Imperial), "67 to 66 000 lb"}, {Percents.Between(0.5, 0.985, Imperial), "50 to 98.5 %"}, {Counts.Between(1, 1234, Metric), "1 to 1 234"},
		{Elevations.PlausibleRange(Imperial), "-1 400 to 19 000 ft"}, {Durations.PlausibleRange(Metric), ""},
	} {
		if got := plain.Replace(c.got); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
