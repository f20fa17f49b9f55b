package say

import (
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// By hand: 25·1.8 + 32 = 77 °F; 600 MPa/6894.757 Pa = 87 023 psi; 6.5 mm/25.4 = 0.2559 in; 250/0.45359237 = 551.2 lb; a step of
// 40 K is 72 °F; 100 mm/25.4 = 3.94 in, 4 in to one digit; 3 mm/25.4 = 0.118.
func TestMarked(t *testing.T) {
	for text, want := range map[string][2]string{
		"Share at {25 °C}, 3 Ah":     {"Share at 25 °C, 3 Ah", "Share at 77 °F, 3 Ah"},
		"{600 MPa} for class 8.8":    {"600 MPa for class 8.8", "87 000 psi for class 8.8"},
		"M8 {6.5 mm}, over {250 kg}": {"M8 6.5 mm, over 250 kg", "M8 0.256 in, over 551 lb"},
		"from {-5 °C}, by {40 K}":    {"from −5 °C, by 40 K", "from 23 °F, by 72 °F"},
		"{100 mm:1} off, {3 mm:2}":   {"100 mm off, 3 mm", "4 in off, 0.12 in"},
		"nothing, 100 %":             {"nothing, 100 %", "nothing, 100 %"},
		"":                           {"", ""},
	} {
		s := Marked(text)
		for sys, want := range want {
			if got := strings.ReplaceAll(s.In(unit.System(sys)), unit.Space, " "); got != want {
				t.Errorf("%q: %q, want %q", text, got, want)
			}
		}
	}
	for _, wrong := range []string{"{25}", "{25 °C", "{2 parsecs}", "{a kg}", "{}", "{100 mm:x}"} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%q is let through", wrong)
				}
			}()
			Marked(wrong)
		}()
	}
}
