package form

import (
	"math"
	"slices"
	"testing"

	"duskweight/internal/model/unit"
)

// Twelve numbers in degrees, with spaces, commas or semicolons between, and what the field then shows; nothing is not known, and
// another number of them, or a word, is refused. π/180 is a degree.
func TestTwelve(t *testing.T) {
	type thing struct{ Tilts *[12]unit.Angle }
	in := Twelve("", "Tilts", unit.Angles, func(x *thing) **[12]unit.Angle { return &x.Tilts }, Hint[thing]("")).Input
	var x thing
	for _, text := range []string{"60 60 50 40 30 20 20 25 35 45 60 65.5", "60, 60; 50, 40 30° 20 20 25 35 45 60 65.5"} {
		if err := in.Read(&x, text, unit.Metric); err != nil || x.Tilts == nil || math.Abs(float64(x.Tilts[11])-65.5*math.Pi/180) > 1e-12 {
			t.Fatalf("%q: %v, %v", text, x.Tilts, err)
		}
		if got := in.Show(&x, unit.Metric); got != "60 60 50 40 30 20 20 25 35 45 60 65.5" {
			t.Errorf("shown as %q", got)
		}
	}
	for _, text := range []string{"60", "1 2 3 4 5 6 7 8 9 10 11", "1 2 3 4 5 6 7 8 9 10 11 12 13", "1 2 3 4 5 6 7 8 9 10 11 steep"} {
		if in.Read(&x, text, unit.Metric) == nil {
			t.Errorf("%q is taken", text)
		}
	}
	if err := in.Read(&x, " ", unit.Metric); err != nil || x.Tilts != nil || in.Show(&x, unit.Metric) != "" {
		t.Errorf("nothing typed: %v, %v", x.Tilts, err)
	}
}

// What people type for months, what it is, and what the field then shows.
func TestMonths(t *testing.T) {
	for text, want := range map[string]struct {
		months []unit.Count
		shown  string
	}{
		"":           {nil, ""},
		"6-9":        {[]unit.Count{6, 7, 8, 9}, "6-9"},
		"11–2":       {[]unit.Count{1, 2, 11, 12}, "1-2, 11-12"},
		"Jun-Sep":    {[]unit.Count{6, 7, 8, 9}, "6-9"},
		"jan, Dec":   {[]unit.Count{1, 12}, "1, 12"},
		"3 ; 1, 3":   {[]unit.Count{1, 3}, "1, 3"},
		"september":  {[]unit.Count{9}, "9"},
		"12-12":      {[]unit.Count{12}, "12"},
		"1-12, june": {[]unit.Count{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12}, "1-12"},
	} {
		months, err := readMonths(text)
		if err != nil || !slices.Equal(months, want.months) || monthsText(months) != want.shown {
			t.Errorf("%q: %v, %v, shown %q", text, months, err, monthsText(months))
		}
	}
	for _, text := range []string{"13", "0", "summer", "6-", "ja", "-3"} {
		if months, err := readMonths(text); err == nil {
			t.Errorf("%q is read as %v", text, months)
		}
	}
}
