package sure

import (
	"fmt"
	"strings"
	"testing"

	"duskweight/internal/model/search"
)

// By hand: of fourteen years the worst is also the one in ten, ⌊15/10⌋ = 1; of nineteen it is the second worst, ⌊20/10⌋ = 2; of
// eight nothing is said of nine in ten.
func TestRealYearsSaid(t *testing.T) {
	for _, c := range []struct {
		n, bad int
		nine   string
	}{{14, 300, "In 9 of 10 years like these at least 300 nights are full."}, {19, 301, "In 9 of 10 years like these at least 301 nights are full."}, {8, 300, ""}} {
		s := search.Sure{Nights: 365}
		var one search.Certain
		for j := range c.n { // 300 + j full nights, the worst in the middle of the list
			one.Nights = append(one.Nights, float64(300+(j+c.n/2)%c.n))
			s.Real = append(s.Real, fmt.Sprint(2000+j))
		}
		one.Light = search.Spread{Worst: 300, Best: float64(300 + c.n - 1)}
		worst := 2000 + (c.n - c.n/2)
		got := realSay(one, s)
		want := fmt.Sprintf("of %d real years the worst has 300 of 365 full nights (%d). A worse one comes about once in %d years.", c.n, worst, c.n+1)
		if got != strings.TrimSpace(want+" "+c.nine) || s.BadNights(one) != c.bad {
			t.Errorf("%q, bad year %d; want %q", got, s.BadNights(one), want+" "+c.nine)
		}
	}
}

// The picture of real years marks as bad the year that the sentence calls so: the worst of fourteen, at the left end.
func TestRealStripMarksTheBadYear(t *testing.T) {
	s := search.Sure{Nights: 365}
	one := search.Certain{Name: "Battery", Light: search.Spread{Worst: 300, Bad: 301.3, Usual: 306, Good: 311, Best: 313}}
	for j := range 14 {
		one.Nights = append(one.Nights, float64(313-j))
		s.Real = append(s.Real, fmt.Sprint(2000+j))
	}
	s.Variants = []search.Certain{one}
	strip := stripsOf(s, beside{})[0]
	// 300 of 300 to 320 nights: the left end, 6; the worst file is the last of the list
	if want := "M6.0 117v12"; !strings.HasSuffix(strip.Real, want) || strings.Count(strip.Real, "M") != 14 || strip.Made != "" {
		t.Errorf("strokes %s, dots %q; want fourteen that end with %s, and no dot", strip.Real, strip.Made, want)
	}
	if !strings.HasPrefix(strip.Marks, "M6.0 114V26") || !strings.HasPrefix(strip.Figures, "bad 300 · usual 306 ·") {
		t.Errorf("marks %s, %q; want bad at the left end", strip.Marks, strip.Figures)
	}
}
