package panel

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// How many panels stand in a row: the sheet's word first; one panel alone is one; several over the strings that stand side by
// side, rounded up to the longest; else it is not known.
func TestInSeries(t *testing.T) {
	count := func(n float64) unit.Known[unit.Count] { return unit.Of(unit.Count(n)) }
	for name, c := range map[string]struct {
		a     Array
		n     int
		known bool
	}{
		"the sheet says":                {Array{Count: count(6), Strings: count(2), Sheet: &Sheet{Series: count(5)}}, 5, true},
		"one with a sheet":              {Array{Count: count(1), Strings: count(3), Sheet: &Sheet{}}, 1, true},
		"two with a sheet, strings":     {Array{Count: count(2), Strings: count(1), Sheet: &Sheet{}}, 2, true},
		"two with a sheet, no strings":  {Array{Count: count(2), Sheet: &Sheet{}}, 1, false},
		"none counted, a sheet":         {Array{Sheet: &Sheet{}}, 1, false},
		"none with strings":             {Array{Count: count(0), Strings: count(2)}, 1, true},
		"one without":                   {Array{Count: count(1)}, 1, true},
		"two without":                   {Array{Count: count(2)}, 1, false},
		"six in two":                    {Array{Count: count(6), Strings: count(2)}, 3, true},
		"seven in two":                  {Array{Count: count(7), Strings: count(2)}, 4, true},
		"strings that are none":         {Array{Count: count(6), Strings: count(0)}, 1, false},
		"strings that nobody counted":   {Array{Count: count(6)}, 1, false},
		"panels that nobody counted":    {Array{Strings: count(2)}, 1, false},
		"several of one in each string": {Array{Count: count(4), Strings: count(4)}, 1, true},
	} {
		if n, known := c.a.InSeries(); n != c.n || known != c.known {
			t.Errorf("%s: %d, %v, want %d, %v", name, n, known, c.n, c.known)
		}
	}
}

// The factors of table 690.7(A) of the National Electrical Code at their borders: 1.02 from 24 to 20 °C, 1.25 under −35 °C; and
// 1 from 25 °C on, where the label was measured.
func TestColdFactors(t *testing.T) {
	for temp, want := range map[float64]float64{25: 1, 24.9: 1.02, 20: 1.02, 19.9: 1.04, 15: 1.04, 10: 1.06, 5: 1.08, 0: 1.10, -5: 1.12, -5.1: 1.14, -10: 1.14, -15: 1.16, -20: 1.18, -25: 1.20, -30: 1.21, -35: 1.23, -35.1: 1.25, -40: 1.25} {
		if got := ColdFactor(unit.Celsius(temp)); math.Abs(got-want) > 1e-12 {
			t.Errorf("%g °C: %g, want %g", temp, got, want)
		}
	}
}

// Panels with dust that is cleaned off give, in every hour of every day, the label times the light times what dust leaves: by
// hand 100 W at 500 W/m² and 25 °C of the cells make 50 W, on a day with a tenth of dirt 45 W. From the first hour of the year on.
func TestEveryHourOfDustyPanels(t *testing.T) {
	daily := make([]float64, 365)
	for d := range daily {
		daily[d] = 1 - float64(d%2)/10
	}
	a := array{label: 100, clean: 1, equal: 1, wired: 1, kept: 1, daily: daily}
	const n = 51 // two days and three hours
	light := Light{Plane: make([]float64, n), Cells: make([]float64, n)}
	air, power := make([]float64, n), make([]float64, n)
	for h := range n {
		light.Plane[h], light.Cells[h], air[h] = 500, 500, 25
	}
	a.add(light, air, power)
	for h, p := range power {
		if want := 50 - 5*float64(h/24%2); math.Abs(p-want) > 1e-9 {
			t.Errorf("hour %d: %g W, want %g", h, p, want)
		}
	}
}
