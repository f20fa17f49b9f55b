package weather

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"
)

// shared is the folder with the reference files, beside the repository; without it the test is left out.
func shared(t *testing.T, parts ...string) string {
	t.Helper()
	p := filepath.Join(append([]string{"..", "..", "..", "shared", "reference"}, parts...)...)
	if _, err := os.Stat(p); err != nil {
		t.Skipf("LEFT OUT: the reference weather files are not beside the repository (%s)", p)
	}
	return p
}

type reference struct {
	Lat, Lon, TZ float64
	Annual       struct {
		GHI float64 `json:"ghi_kwh_m2"`
		DHI float64 `json:"dhi_kwh_m2"`
		T   float64 `json:"t_mean_c"`
	}
	Monthly struct {
		Days []float64
		GHI  []float64 `json:"ghi_kwh_m2_day"`
		DHI  []float64 `json:"dhi_kwh_m2_day"`
		T    []float64 `json:"t_mean_c"`
	}
	Closure struct {
		RMSE float64 `json:"rmse_wm2"`
	}
}

func references(t *testing.T) map[string]reference {
	t.Helper()
	b, err := os.ReadFile(shared(t, "weather-reference.json"))
	if err != nil {
		t.Fatal(err)
	}
	var all struct{ Files map[string]reference }
	if err := json.Unmarshal(b, &all); err != nil {
		t.Fatal(err)
	}
	return all.Files
}

func TestReferenceFiles(t *testing.T) {
	for name, want := range references(t) {
		f, err := os.Open(shared(t, "weather", name))
		if err != nil {
			t.Fatal(err)
		}
		s, rep, err := Read(f, Mapping{}, nil)
		f.Close()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		near := func(what string, got, want, tolerance float64) {
			if math.Abs(got-want) > tolerance {
				t.Errorf("%s: %s is %v, want %v", name, what, got, want)
			}
		}
		near("latitude", s.Latitude.Degrees(), want.Lat, 1e-9)
		near("longitude", s.Longitude.Degrees(), want.Lon, 1e-9)
		near("zone", float64(s.UTCOffset)/3600, want.TZ, 0)
		near("GHI", float64(rep.GHI)/3.6e6, want.Annual.GHI, 0.05) // printed to 0.01 or 0.1
		near("DHI", float64(rep.DHI)/3.6e6, want.Annual.DHI, 0.05+0.001*want.Annual.DHI)
		near("mean temperature", float64(rep.TMean), want.Annual.T, 0.0006)
		near("closure", float64(rep.Closure.Val), want.Closure.RMSE, 1.5)
		slip := 0.0
		if want.Closure.RMSE > 20 {
			slip = -30 // the global light of this file really is half an hour before its direct and diffuse light
		}
		near("slip", float64(rep.Slip.Val)/60, slip, 5)
		hour := 0
		for m, days := range want.Monthly.Days {
			var g, d, c float64
			n := int(days) * 24
			for range n {
				g, d, c = g+s.GHI[hour], d+s.DHI[hour], c+s.TAir[hour]
				hour++
			}
			near("GHI of a month", g/1000/days, want.Monthly.GHI[m], 0.00006)
			near("DHI of a month", d/1000/days, want.Monthly.DHI[m], 0.01)
			near("temperature of a month", c/float64(n), want.Monthly.T[m], 0.0006)
		}
		t.Logf("%s: slip %.1f min, closure %.1f, over %d, above %d, %v", name, float64(rep.Slip.Val)/60, float64(rep.Closure.Val), rep.DiffuseOver, rep.AboveSky, rep.Notes)
	}
}
