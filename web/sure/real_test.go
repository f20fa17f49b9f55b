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

// Where every real year has all its nights, no worst one is named, and a worse one may still come.
func TestRealYearsAlike(t *testing.T) {
	s := search.Sure{Nights: 365, Real: []string{"2011", "2012"}}
	one := search.Certain{Nights: []float64{365, 365}, Light: search.Spread{Worst: 365, Bad: 365, Usual: 365, Good: 365, Best: 365}}
	if got := realSay(one, s); got != "in every one of 2 real years 365 of 365 nights are full. A worse one comes about once in 3 years." {
		t.Errorf("%q", got)
	}
}

// The picture of real years marks as bad the year that the sentence calls so: the worst of fourteen.
func TestRealStripMarksTheBadYear(t *testing.T) {
	s := search.Sure{Nights: 365}
	one := search.Certain{Name: "Battery", Light: search.Spread{Worst: 300, Bad: 301.3, Usual: 306, Good: 311, Best: 313}}
	for j := range 14 {
		one.Nights = append(one.Nights, float64(313-j))
		s.Real = append(s.Real, fmt.Sprint(2000+j))
	}
	s.Variants = []search.Certain{one}
	strip := nightsOf(s, beside{}).Each[0]
	if len(strip.Real) != 14 || len(strip.Made) != 0 {
		t.Errorf("%d strokes, %d dots; want fourteen and none", len(strip.Real), len(strip.Made))
	}
	if strip.Bad != 300 || strip.Usual != 306 {
		t.Errorf("bad %v, usual %v; want the worst file, 300", strip.Bad, strip.Usual)
	}
}
