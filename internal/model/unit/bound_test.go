package unit

import (
	"strings"
	"testing"
)

// Limits by hand: 1 to 15 m are 39.37 to 590.55 in, 3 ft 3.37 in to 49 ft 2.55 in; 0.2 and 3 m are 7.874 and 118.11 in; 2 m are
// 78.74 in; 0.1 m are 3.937 in; 40 m are 131.2 ft; 2 mm are 0.07874 in; 30 kg are 66.14 lb; −430 and
// 6000 m are −1410.8 and 19 685 ft.
func TestBetween(t *testing.T) {
	plain := strings.NewReplacer(Space, " ", Minus, "-")
	for _, c := range []struct{ got, want string }{
		{Lengths.Between(1, 15, Metric), "1 to 15 m"}, {Lengths.Between(1, 15, Imperial), "3′ 4″ to 49′ 2″"}, {SmallLengths.Between(0.002, 0.0254, Imperial), "0.079 to 1 in"},
		{Masses.Between(30, 30000, Imperial), "67 to 66 000 lb"}, {Heights.Between(0.2, 3, Imperial), "8″ to 9′ 10″"}, {Heights.Between(0, 2, Imperial), "0 to 6′ 6″"}, {Widths.Between(0.001, 0.1, Imperial), "0.04 in to 3-3/4″"}, {Heights.Between(1, 40, Imperial), "3′ 4″ to 130 ft"},
		{Percents.Between(0.5, 0.985, Imperial), "50 to 98.5 %"}, {Counts.Between(1, 1234, Metric), "1 to 1 234"},
		{Elevations.PlausibleRange(Imperial), "-1 400 to 19 000 ft"}, {Durations.PlausibleRange(Metric), ""},
	} {
		if got := plain.Replace(c.got); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
