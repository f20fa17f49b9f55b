package form

import (
	"slices"
	"testing"

	"duskweight/internal/model/unit"
)

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
