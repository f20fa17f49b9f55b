package catalog

import (
	"math"
	"testing"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// outside is the daily irradiation outside the atmosphere on a flat place, mean of a month, J/m² (FAO-56 eq. 21, with
// its eqs 23 to 25 for nearness, declination and sunset).
func outside(latitude float64, month int) float64 {
	first := 1
	for _, d := range daysIn[:month] {
		first += int(d)
	}
	sum := 0.0
	for n := first; n < first+int(daysIn[month]); n++ {
		day := 2 * math.Pi * float64(n) / 365
		near := 1 + 0.033*math.Cos(day)
		dec := 0.409 * math.Sin(day-1.39)
		ws := math.Acos(min(1, max(-1, -math.Tan(latitude)*math.Tan(dec))))
		sum += 24 * 60 / math.Pi * 0.0820e6 * near * (ws*math.Sin(latitude)*math.Sin(dec) + math.Cos(latitude)*math.Cos(dec)*math.Sin(ws))
	}
	return sum / daysIn[month]
}

// Each month's irradiation over what its own latitude gets outside the atmosphere is the clearness that the source
// states: a slip in latitude, month or unit would show. The stated means are printed to 0.01 kWh/m²; the
// solar constants of the two (1367 and 1361 W/m²) differ by 0.44 %, and half a degree of declination, which the
// one-line formula may miss, is another 1 % at 60° in February.
func TestClearnessOfStarterClimates(t *testing.T) {
	worst := 0.0
	for _, c := range Climates() {
		for m := range 12 {
			out := outside(float64(c.Place.Latitude.Val), m)
			kt := float64(c.Place.Monthly.GHI[m]) / out
			allowed := 0.0144*c.KT[m] + 0.001 + 0.005*3.6e6/out
			worst = max(worst, math.Abs(kt-c.KT[m]))
			if math.Abs(kt-c.KT[m]) > allowed {
				t.Errorf("%s, month %d: clearness %.3f, stated %.3f (%s)", c.Name, m+1, kt, c.KT[m], source.FAO56.At("eq. 21"))
			}
		}
	}
	t.Logf("largest difference of clearness %.4f", worst)
}

// The yearly sums of the places, kWh/m², as their source prints them.
func TestYearlySumsOfStarterClimates(t *testing.T) {
	want := map[string]float64{"Jyväskylä": 879, "Luxembourg": 1211, "Addis Ababa": 2034, "Cape Town": 1975, "New Delhi": 2029, "Colombo": 1969, "Denver, Colorado": 1670, "Greensboro, North Carolina": 1566, "Sand Point, Alaska": 829}
	seen := 0
	for _, c := range Climates() {
		w, ok := want[c.Name]
		if !ok {
			continue
		}
		seen++
		// printed whole; the months are rounded to 0.01 a day
		if got := float64(c.Yearly) / 3.6e6; math.Abs(got-w) > 0.5+0.005*365/math.Sqrt(12)*2 {
			t.Errorf("%s: %.1f kWh/m² a year, want %g", c.Name, got, w)
		}
	}
	if seen != len(want) {
		t.Errorf("%d of %d places found", seen, len(want))
	}
}

func TestStarterClimatesAreWhole(t *testing.T) {
	rows := Climates()
	if len(rows) != 30 {
		t.Fatalf("%d climates", len(rows))
	}
	seen := map[string]bool{}
	for _, c := range rows {
		if seen[c.Name] || c.Source == "" || len(c.Country) != 2 {
			t.Errorf("%q: twice, without source or without country", c.Name)
		}
		seen[c.Name] = true
		p := c.Place
		// standard time is within three hours of the sun's
		if d := math.Abs(float64(p.UTCOffset.Val)/3600 - p.Longitude.Val.Degrees()/15); d > 3 {
			t.Errorf("%s: clock %.1f h from its longitude", c.Name, d)
		}
		for m := range 12 {
			mm := p.Monthly
			if !(mm.TMin[m] <= mm.TMean[m] && mm.TMean[m] <= mm.TMax[m]) || mm.GHI[m] <= 0 {
				t.Errorf("%s, month %d: temperatures or sun out of order", c.Name, m+1)
			}
		}
		if c.Coldest > p.Monthly.TMin[0] && c.Coldest > p.Monthly.TMin[6] {
			t.Errorf("%s: coldest %g is warmer than the winter's mean", c.Name, c.Coldest)
		}
	}
}

// A plan that takes a row and changes it changes nothing that ships.
func TestTakingACopies(t *testing.T) {
	a, ok := Climate("luxembourg")
	if !ok {
		t.Fatal("no Luxembourg")
	}
	a.Monthly.GHI[0] = 0
	a.Monthly.KTSd[0].Val = 9
	b, _ := Climate("Luxembourg")
	if b.Monthly.GHI[0] != unit.Irradiation(0.88*3.6e6) || b.Monthly.KTSd[0].Val == 9 {
		t.Error("the catalog changed with the plan")
	}
	if _, ok := Climate("Nowhere"); ok {
		t.Error("Nowhere found")
	}
}

func TestClimatesAreReadStrictly(t *testing.T) {
	for _, bad := range []string{`[{"name":"x","surprise":1}]`, `[] []`, `{`, `[{"ghi_kwh_m2_day":"1"}]`} {
		if _, err := decodeClimates([]byte(bad)); err == nil {
			t.Errorf("%s is taken", bad)
		}
	}
}
