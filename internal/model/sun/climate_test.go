package sun

import (
	"encoding/json"
	"fmt"
	"os"
	"slices"
	"testing"

	"duskweight/internal/model/unit"
)

// shared opens a file that stands beside the project, or skips: the test says what it left out.
func shared(t *testing.T, name string) []byte {
	t.Helper()
	b, err := os.ReadFile(root + "../shared/reference/" + name)
	if err != nil {
		t.Skipf("LEFT OUT: ../shared/reference/%s is not here; what this test compares with it was not compared", name)
	}
	return b
}

// climate is one row of the starter climates as they came.
type climate struct {
	Name, Country string
	Lat, Lon      float64
	TZ            float64     `json:"tz_hours"`
	Height        float64     `json:"elev_m"`
	GHI           [12]float64 `json:"ghi_kwh_m2_day"`
	T             [12]float64 `json:"t_mean_c"`
	Max           [12]float64 `json:"t_daymax_mean_c"`
	Min           [12]float64 `json:"t_daymin_mean_c"`
	Sd            [12]float64 `json:"kt_sd"`
	Lag           float64     `json:"kt_lag1"`
}

func (c climate) place(own bool) Place {
	m := &Monthly{}
	for i := range 12 {
		m.GHI[i] = unit.Irradiation(c.GHI[i] * 3.6e6)
		m.TMean[i], m.TMax[i], m.TMin[i] = unit.Celsius(c.T[i]), unit.Celsius(c.Max[i]), unit.Celsius(c.Min[i])
	}
	if own {
		m.KTSd = Own(c.Sd)
		m.KTLag1 = unit.Of(unit.Ratio(c.Lag))
	}
	return Place{Name: c.Name, Sky: "monthly", Monthly: m, Latitude: unit.Of(deg(c.Lat)), Longitude: unit.Of(deg(c.Lon)),
		Elevation: unit.Of(unit.Length(c.Height)), UTCOffset: unit.Of(unit.Duration(c.TZ * 3600))}
}

// three climates that stand in this file, so that the laws are held without other files: Stockholm (starter climates).
func stockholm() climate {
	return climate{Name: "Stockholm", Lat: 59.627, Lon: 17.954, TZ: 1, Height: 41.8,
		GHI: [12]float64{0.29, 0.96, 2.22, 4.22, 5.45, 5.73, 5.2, 3.98, 2.61, 1.17, 0.42, 0.17},
		T:   [12]float64{-2.1, -1.2, 0.8, 6.4, 11.7, 15.2, 17.9, 16.6, 12.0, 6.9, 3.8, 0.6},
		Max: [12]float64{0.0, 1.4, 3.5, 11.4, 16.9, 19.8, 22.5, 21.0, 16.0, 9.8, 6.1, 2.2},
		Min: [12]float64{-4.5, -4.2, -1.9, 0.4, 5.5, 9.4, 12.1, 11.5, 7.9, 3.8, 0.9, -1.1},
		Sd:  [12]float64{0.136, 0.183, 0.172, 0.195, 0.123, 0.177, 0.147, 0.14, 0.172, 0.189, 0.172, 0.118}, Lag: 0.323}
}

// laws holds what is true of any plan year: the month's mean light and temperature to 1e-9, no hour above 1.1 times the
// clear sky, diffuse never above global, dark at night, warmest from 14 to 16 o'clock where a day has a range.
func laws(t *testing.T, name string, p Place, s *Sky) {
	t.Helper()
	hour := 0
	for m, days := range monthLength {
		sum, temperature := 0.0, 0.0
		for range days {
			sum += lawsOfDay(t, name, p, s, hour)
			for _, v := range s.TAir[hour : hour+24] {
				temperature += v
			}
			hour += 24
		}
		want := float64(p.Monthly.GHI[m]) / 3600
		near(t, fmt.Sprint(name, " month ", m+1, " mean over wanted"), sum/float64(days)/max(want, 1e-3), want/max(want, 1e-3), 1e-9)
		near(t, fmt.Sprint(name, " month ", m+1, " temperature"), temperature/float64(days*24), float64(p.Monthly.TMean[m]), 1e-9)
	}
}

// lawsOfDay returns the sum of the global light of the day that begins at an hour.
func lawsOfDay(t *testing.T, name string, p Place, s *Sky, hour int) (sum float64) {
	t.Helper()
	g := s.Geometry
	for h := hour; h < hour+24; h++ {
		i, d := s.GHI[h], s.DHI[h]
		ceiling := 1.1 * thinAir(p.Elevation.Or(0)) * float64(ClearSky(g.Up[h])) * g.Lit[h]
		if !(i >= 0 && i <= ceiling*(1+1e-9)) || !(d >= 0 && d <= i) {
			t.Fatalf("%s hour %d: global %v diffuse %v ceiling %v", name, h, i, d, ceiling)
		}
		sum += i
		if s.TAir[h] > s.TAir[hour+14]+1e-9 {
			t.Fatalf("%s: warmer at hour %d than from 14 to 15", name, h)
		}
	}
	return sum
}

func TestYearKeepsTheMonths(t *testing.T) {
	c := stockholm()
	for _, own := range []bool{false, true} {
		for seed := range uint64(20) {
			p := c.place(own)
			s, ps := Year(p, seed, nil)
			if ps != nil {
				t.Fatal(ps)
			}
			laws(t, c.Name, p, s)
		}
	}
}

// The same seed gives the same year to the last digit, another seed another year.
func TestYearIsItsSeed(t *testing.T) {
	p := stockholm().place(true)
	a, _ := Year(p, 7, nil)
	b, _ := Year(p, 7, nil)
	c, _ := Year(p, 8, nil)
	if !slices.Equal(a.GHI, b.GHI) || !slices.Equal(a.DHI, b.DHI) || !slices.Equal(a.TAir, b.TAir) {
		t.Error("the same seed gave two years")
	}
	if slices.Equal(a.GHI, c.GHI) {
		t.Error("two seeds gave one year")
	}
}

// All starter climates: the laws hold and nothing is refused.
func TestStarterClimates(t *testing.T) {
	var climates []climate
	if err := json.Unmarshal(shared(t, "climates.json"), &climates); err != nil {
		t.Fatal(err)
	}
	for _, c := range climates {
		for seed := range uint64(10) {
			p := c.place(true)
			s, ps := Year(p, seed, nil)
			if ps != nil {
				t.Errorf("%s: %v", c.Name, ps)
				continue
			}
			laws(t, c.Name, p, s)
			if len(s.Remarks) > 0 {
				t.Logf("%s: %v", c.Name, s.Remarks)
			}
		}
	}
}
