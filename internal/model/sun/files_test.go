package sun

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// reference is what an independent library makes of the same files.
type reference struct {
	Files map[string]struct {
		Lat, Lon, TZ float64
		Elev         float64 `json:"elev_m"`
		Annual       struct {
			GHI float64 `json:"ghi_kwh_m2"`
			T   float64 `json:"t_mean_c"`
		}
		POA map[string]struct {
			Tilt      float64 `json:"tilt_deg"`
			Azimuth   float64 `json:"azimuth_deg_from_north"`
			Isotropic model
			HayDavies model
			Closed    struct {
				Annual float64 `json:"annual_kwh_m2"`
			} `json:"isotropic_beam_from_ghi_minus_dhi"`
		}
		Closure struct {
			RMSE float64 `json:"rmse_wm2"`
		}
	}
}

type model struct {
	Annual  float64     `json:"annual_kwh_m2"`
	Monthly [12]float64 `json:"monthly_kwh_m2_day"`
}

// columns reads global, diffuse and temperature from the two public layouts, as they stand. (The real reader, which
// checks everything, is package weather; this is the least that a comparison needs.)
func columns(t *testing.T, name string) *Series {
	t.Helper()
	head, ghi, dhi, air := 8, 13, 15, 6
	if strings.HasSuffix(name, ".csv") {
		head, ghi, dhi, air = 2, 4, 10, 31
	}
	w := &Series{Name: name}
	for i, line := range strings.Split(strings.ReplaceAll(string(shared(t, "weather/"+name)), "\r\n", "\n"), "\n") {
		if i < head || line == "" {
			continue
		}
		f := strings.Split(line, ",")
		w.GHI = append(w.GHI, number(t, f[ghi]))
		w.DHI = append(w.DHI, number(t, f[dhi]))
		w.TAir = append(w.TAir, number(t, f[air]))
	}
	return w
}

// Five planes of six real files: within 1 % a year and 2 % a month of the reference (which has no loss in the glass and
// takes the beam from the file's own column; here it is global less diffuse).
//
// The Cape Town file contradicts itself: its direct and diffuse columns are shifted by half an hour against the global
// one, so that beam·cos z + diffuse misses global by 44 W/m² r.m.s. There the year is compared with the reference's
// own sum that takes the beam from global less diffuse, and nothing else is owed.
func TestReferenceFiles(t *testing.T) {
	var ref reference
	if err := json.Unmarshal(shared(t, "weather-reference.json"), &ref); err != nil {
		t.Fatal(err)
	}
	for name, file := range ref.Files {
		w := columns(t, name)
		w.Latitude, w.Longitude, w.UTCOffset = deg(file.Lat), deg(file.Lon), unit.Duration(file.TZ*3600)
		s, ps := Year(Place{Sky: "file"}, 0, []*Series{w})
		if ps != nil {
			t.Errorf("%s: %v", name, ps)
			continue
		}
		near(t, name+" global", s.Year()/3.6e6, file.Annual.GHI, 1e-4*file.Annual.GHI)
		mean := 0.0
		for _, v := range s.TAir {
			mean += v / Hours
		}
		near(t, name+" temperature", mean, file.Annual.T, 0.01)
		for plane, p := range file.POA {
			for _, m := range []struct {
				say       string
				isotropic bool
				want      model
			}{{"isotropic", true, p.Isotropic}, {"Hay–Davies", false, p.HayDavies}} {
				face := Face{Tilt: deg(p.Tilt), Azimuth: deg(p.Azimuth), Isotropic: m.isotropic, Bare: true}
				l := PlaneOf(s.Geometry, Place{}, face).Light(s)
				what := fmt.Sprintf("%.8s %s %s", name, plane, m.say)
				year, hour := 0.0, 0
				for i, days := range monthLength {
					sum := 0.0
					for range days * 24 {
						sum += l.Plane[hour] / 1000
						hour++
					}
					year += sum
					if file.Closure.RMSE < 10 {
						want := m.want.Monthly[i]
						near(t, fmt.Sprint(what, " month ", i+1), sum/float64(days), want, 0.02*want)
					}
				}
				want := m.want.Annual
				if file.Closure.RMSE >= 10 {
					if want = p.Closed.Annual; !m.isotropic || want == 0 {
						continue
					}
				}
				near(t, what, year, want, 0.01*want)
				t.Logf("%-50s %8.1f of %8.1f: %+.2f %%", what, year, want, 100*(year/want-1))
			}
		}
	}
}

// A year made from a real file's twelve means and lag gives planes the file's own year within 5 %: what the way from
// months to hours may cost (diffuse by Erbs, hours by Collares-Pereira & Rabl), mean of five seeds.
func TestMadeYearsAgainstFiles(t *testing.T) {
	var ref struct {
		Files map[string]struct {
			Lat, Lon, TZ float64
			Elev         float64 `json:"elev_m"`
			Monthly      struct {
				GHI [12]float64 `json:"ghi_kwh_m2_day"`
				Sd  [12]float64 `json:"KT_sd"`
			}
			POA map[string]struct {
				Tilt      float64 `json:"tilt_deg"`
				Azimuth   float64 `json:"azimuth_deg_from_north"`
				HayDavies model
			}
		}
	}
	if err := json.Unmarshal(shared(t, "weather-reference.json"), &ref); err != nil {
		t.Fatal(err)
	}
	for name, file := range ref.Files {
		c := climate{Lat: file.Lat, Lon: file.Lon, TZ: file.TZ, Height: file.Elev, GHI: file.Monthly.GHI, Sd: file.Monthly.Sd, Lag: 0.29}
		p := c.place(true)
		for _, plane := range []string{"tilt30_equator", "tilt_lat_equator", "tilt60_equator"} {
			f := file.POA[plane]
			mean := 0.0
			const seeds = 5
			for seed := range uint64(seeds) {
				s, ps := Year(p, seed, nil)
				if ps != nil {
					t.Fatal(name, ps)
				}
				for _, v := range PlaneOf(s.Geometry, Place{}, Face{Tilt: deg(f.Tilt), Azimuth: deg(f.Azimuth), Bare: true}).Light(s).Plane {
					mean += v / 1000 / seeds
				}
			}
			near(t, name+" "+plane, mean/f.HayDavies.Annual, 1, 0.05)
			t.Logf("%.8s %-16s %+.2f %%", name, plane, 100*(mean/f.HayDavies.Annual-1))
		}
	}
}
