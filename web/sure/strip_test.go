package sure

import (
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
)

// The key says what a dot stands for: by hand, 300 years are single dots, 301 are up to two a dot, 1,000 up to four.
func TestDotsAreSaid(t *testing.T) {
	for years, want := range map[int]string{201: "one made year", 300: "one made year", 301: "up to 2 made years", 1000: "up to 4 made years"} {
		s := search.Sure{Nights: 365, Years: years, Variants: []search.Certain{{Name: "A", Nights: make([]float64, years), Light: search.Spread{Worst: 0, Best: 40}}}}
		if v := pictureOf(s, beside{}); len(v.Key) != 1 || v.Key[0].Say != want || v.Wide == "" || v.Narrow == "" {
			t.Errorf("%d years: %+v", years, v.Key)
		}
	}
}

// lived gives a variant the rest of what a year has: all its energy, and no gap.
func lived(s search.Sure) search.Sure {
	for i := range s.Variants {
		c := &s.Variants[i]
		for range c.Nights {
			c.Lit, c.Missing, c.Gaps = append(c.Lit, 1), append(c.Missing, 0), append(c.Gaps, year.Gaps{})
		}
	}
	return s
}

// Without a full night in any year there is a sentence and no strip.
func TestNoFullNight(t *testing.T) {
	s := search.Sure{Nights: 365, Years: 10, Variants: []search.Certain{{Name: "A", Nights: make([]float64, 10)}}}
	if n := nightsOf(s, beside{}); len(n.Each) != 1 || n.Each[0].Drawn || n.Each[0].Say != "No night is full in any year." {
		t.Errorf("%+v", n)
	}
	var v sureView
	v.Rows = make([]sureRow, 1)
	v.lead(lived(s), beside{}, unit.Metric)
	if v.Lead.Title != "No night is full in any year." {
		t.Errorf("%q", v.Lead.Title)
	}
}

// Weather files are strokes, and made years of the same place dots behind them, on one axis for both.
func TestFilesBesideTheirBand(t *testing.T) {
	real := search.Sure{Nights: 365, Real: []string{"2011", "2012"}, Variants: []search.Certain{{Nights: []float64{310, 320}, Light: search.SpreadOf([]float64{310, 320})}}}
	band := search.Sure{Nights: 365, Years: 2, Variants: []search.Certain{{Nights: []float64{300, 340}, Light: search.SpreadOf([]float64{300, 340}), Nine: 304}}}
	n := nightsOf(real, beside{band: &band})
	if one := n.Each[0]; n.Low != 300 || n.High != 340 || !slices.Equal(one.Real, []float64{310, 320}) || !slices.Equal(one.Made, []float64{300, 340}) {
		t.Errorf("%+v", n)
	}
	v := sureView{Rows: make([]sureRow, 1)}
	v.lead(lived(real), beside{band: &band}, unit.Metric)
	if !strings.Contains(strings.Join(v.Lead.More, " "), "Of 2 made years from the means of the files one in ten has fewer than 304.") {
		t.Errorf("%q", v.Lead.More)
	}
}

// The year of a typical file is a ring, and no bad or usual year.
func TestTypicalFileIsARing(t *testing.T) {
	made := search.Sure{Nights: 365, Variants: []search.Certain{{Nights: []float64{300, 340}, Light: search.SpreadOf([]float64{300, 340})}}}
	file := search.Sure{Nights: 365, Variants: []search.Certain{{Nights: []float64{330}, Light: search.SpreadOf([]float64{330})}}}
	n := nightsOf(made, beside{typical: &file})
	if one := n.Each[0]; one.Ring != 330 || one.Bad == 330 || one.Usual == 330 || !strings.Contains(one.Say, "The ring is the file’s own year, 330 nights") {
		t.Errorf("%+v", one)
	}
	if v := pictureOf(made, beside{typical: &file}); !slices.ContainsFunc(v.Key, func(k keyLine) bool { return strings.Contains(k.Say, "chosen as ordinary") }) {
		t.Errorf("%+v", v.Key)
	}
}

// The page speaks first of the variant with the most full nights in a bad year, and names it where there are several.
func TestLeadIsTheBestInABadYear(t *testing.T) {
	one := func(name string, nine int, usual float64) search.Certain {
		return search.Certain{Name: name, Nights: []float64{1, 2}, Nine: nine, Light: search.Spread{Worst: 1, Usual: usual, Best: 360}}
	}
	s := search.Sure{Nights: 365, Years: 2, Variants: []search.Certain{one("A", 300, 350), one("B", 310, 320), one("C", 310, 330)}}
	if at, ok := leadOf(s); !ok || at != 2 {
		t.Errorf("%d, %v; want C", at, ok)
	}
	v := sureView{Rows: make([]sureRow, 3)}
	v.lead(lived(s), beside{}, unit.Metric)
	if v.Lead.Title != "C: in 9 of 10 made years at least 310 of 365 nights are full." {
		t.Errorf("%q", v.Lead.Title)
	}
}
