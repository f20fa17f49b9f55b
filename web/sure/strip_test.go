package sure

import (
	"strings"
	"testing"

	"duskweight/internal/model/search"
)

// By hand: 300 years are 300 dots, 301 are stacks of up to two years a dot, 1,000 of up to four; and 200 years on one night
// and one on another stand over each other without reaching above the figures.
func TestDots(t *testing.T) {
	years := func(n int) search.Sure {
		c := search.Certain{Name: "A", Light: search.Spread{Worst: 300, Bad: 300, Usual: 300, Good: 300, Best: 340}}
		for range n - 1 {
			c.Nights = append(c.Nights, 300)
		}
		c.Nights = append(c.Nights, 340)
		return search.Sure{Nights: 365, Years: n, Variants: []search.Certain{c}}
	}
	for _, tc := range []struct {
		years, dots int
		say         string
	}{
		{201, 201, "A grey dot is one made year."},
		{300, 300, "A grey dot is one made year."},
		{301, 151, "A grey dot stands for up to 2 made years."},
		{1000, 251, "A grey dot stands for up to 4 made years."},
	} {
		s := stripsOf(years(tc.years), beside{})[0]
		if n := strings.Count(s.Made, "M"); n != tc.dots || !strings.HasSuffix(s.Say, tc.say) {
			t.Errorf("%d years: %d dots, want %d; %q", tc.years, n, tc.dots, s.Say)
		}
		if strings.Contains(s.Made, " -") || strings.Contains(s.Made, " 1.") || strings.Contains(s.Made, " 25.") {
			t.Errorf("%d years: dots reach above 26: %s", tc.years, s.Made)
		}
	}
	none := years(10)
	none.Variants[0].Light = search.Spread{}
	if s := stripsOf(none, beside{})[0]; s.Drawn || s.Say != "In no year is a night full." {
		t.Errorf("no full night: %+v", s)
	}
}

// Weather files are strokes under the axis, and made years of the same place dots above it, on one axis for both.
func TestFilesBesideTheirBand(t *testing.T) {
	real := search.Sure{Nights: 365, Real: []string{"2011", "2012"}, Variants: []search.Certain{{Nights: []float64{310, 320}, Light: search.SpreadOf([]float64{310, 320})}}}
	band := search.Sure{Nights: 365, Variants: []search.Certain{{Nights: []float64{300, 340}, Light: search.SpreadOf([]float64{300, 340})}}}
	s := stripsOf(real, beside{band: &band})[0]
	// 300 to 340 nights on 318: a night is 7.95, so 310 is at 6 + 79.5 and 320 at 6 + 159
	if s.Real != "M85.5 117v12M165.0 117v12" || strings.Count(s.Made, "M") != 2 || !strings.Contains(s.Say, "a dark stroke one file") {
		t.Errorf("%+v", s)
	}
}

// The year of a typical file is a ring on the axis, and no bad or usual year: of 300 to 340 nights on 318, 330 is at 6 + 238.5.
func TestTypicalFileIsARing(t *testing.T) {
	made := search.Sure{Nights: 365, Variants: []search.Certain{{Nights: []float64{300, 340}, Light: search.SpreadOf([]float64{300, 340})}}}
	file := search.Sure{Nights: 365, Variants: []search.Certain{{Nights: []float64{330}, Light: search.SpreadOf([]float64{330})}}}
	s := stripsOf(made, beside{typical: &file})[0]
	if s.Ring != "244.5" || !strings.Contains(s.Say, "The ring is the file’s own year, 330 nights") || strings.Contains(s.Figures, "330") {
		t.Errorf("%+v", s)
	}
}
