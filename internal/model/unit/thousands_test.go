package unit

import (
	"math/big"
	"strings"
	"testing"
)

// Three digits behind a comma may be thousands, and so may three behind a point that end in 0: both are asked back, where one to three
// digits stand before them and the first is no 0. Everything else is a decimal.
func TestThousandsAreAskedBack(t *testing.T) {
	for text, want := range map[string]string{ // "": asked back
		"1,500": "", "12,345": "", "999,999": "", "1.500": "", "999.990": "", "1.505": "301/200", "1.050": "", "1234,567": "1234567/1000", "1234.560": "1234560/1000", "0,500": "1/2", "0.500": "1/2", "012,345": "12345/1000",
		",500": "1/2", ".500": "1/2", "1,50": "3/2", "1,5000": "3/2", "12.5": "25/2", "1": "1", "1.5.5": "", "1,5,5": "", "1.234,5": "",
	} {
		c := &scanner{s: text}
		v, err := c.number()
		if (err == nil) != (want != "") {
			t.Errorf("%q: %v, %v", text, v.value, err)
			continue
		}
		if want != "" {
			if w, _ := new(big.Rat).SetString(want); v.value.Cmp(w) != 0 || c.pos != len(text) {
				t.Errorf("%q is %v, want %s; read up to %d", text, v.value, want, c.pos)
			}
		}
	}
}

// Groups of three, counted from the point, as ISO 80000-1 prints numbers (7.3.1): from 1 000 up everywhere, nothing set apart behind the
// point. 1 234 567 J are 342.9 Wh, 1 234 567 Wh are 1 234.567 kWh.
func TestThousandsApart(t *testing.T) {
	for text, want := range map[string]string{"": "", "7": "7", "999": "999", "1000": "1 000", "9999": "9 999", "10000": "10 000", "999999": "999 999", "1234567": "1 234 567",
		"1234.5678": "1 234.5678", "0.12345": "0.12345", "-1200": "-1 200", Minus + "1200": Minus + "1 200", "1/1000": "1/1000", "12:30": "12:30", "plan 4096": "plan 4096", "5e1234": "5e1234"} {
		if got := strings.ReplaceAll(Apart(text), Space, " "); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
	for _, tc := range []struct{ got, want string }{
		{Energies.Format(1234*3600, Metric), "1 230 Wh"}, {BigEnergies.Format(1.234567e9*3.6, Metric), "1 230 kWh"}, {Masses.Format(1500, Metric), "1 500 kg"},
		{Rounded(-1000, 4), Minus + "1 000"}, {Rounded(999.6, 3), "1 000"}, {Fixed(1234.5, 1), "1 234.5"}, {Fixed(999.95, 1), "1 000.0"}, {Whole(8760), "8 760"},
		{RoundedTo(1999, 2, Up), "2 000"}, {Thousands(8760), "8 760"}, {Thousands(-1000), "-1 000"}, {CalendarYear(2026), "2026"}, {Typed(Rounded(12345, 5)), "12345"},
	} {
		if got := strings.ReplaceAll(tc.got, Space, " "); got != tc.want {
			t.Errorf("%q, want %q", got, tc.want)
		}
	}
}

// What is read can be typed, and comes back as the number that stood there; what stands in a field has no marks.
func TestThousandsAreReadBack(t *testing.T) {
	for _, v := range []float64{999, 1000, 1200, 9999, 10000, 123000, 1234567} {
		for _, typed := range []string{Rounded(v, 17), strings.ReplaceAll(Rounded(v, 17), Space, " "), strings.ReplaceAll(Rounded(v, 17), Space, "\u202f"), Typed(Rounded(v, 17))} {
			if got, known, err := Ratios.Parse(typed, Metric); err != nil || !known || got != v {
				t.Errorf("%q is read as %v (%v, %v), want %v", typed, got, known, err, v)
			}
		}
		if full := Ratios.FormatFull(v, Metric); strings.Contains(full, Space) {
			t.Errorf("a field holds %q", full)
		}
	}
}
