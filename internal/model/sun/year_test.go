package sun

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// Refusals say month and numbers; tiny suns are mended with a remark; unknown places are problems, not zeros.
func TestYearRefuses(t *testing.T) {
	p := stockholm().place(false)
	p.Monthly.GHI[0] = 6 * 3.6e6
	if s, ps := Year(p, 1, nil); s != nil || len(ps) != 1 || ps[0].Path != "monthly.ghi_j_m2_day[0]" {
		t.Errorf("six kilowatt-hours in a January at 60° north: %v", ps)
	}
	p = stockholm().place(false)
	p.Latitude = unit.Of(deg(72))
	p.Monthly.GHI = [12]unit.Irradiation{}
	p.Monthly.GHI[0] = 3e4 // a little twilight in polar night
	s, ps := Year(p, 1, nil)
	if ps != nil || len(s.Remarks) != 1 {
		t.Errorf("twilight: %v", ps)
	}
	for _, place := range []Place{{}, {Latitude: unit.Of(deg(10))}, {Latitude: unit.Of(deg(10)), Sky: "monthly"},
		{Latitude: unit.Of(deg(10)), Sky: "described"}, {Sky: "file"}} {
		if s, ps := Year(place, 1, nil); s != nil || len(ps) == 0 || ps[0].Say.IsZero() {
			t.Errorf("%+v: no problem", place)
		}
	}
	bad := &Series{GHI: make([]float64, Hours), DHI: make([]float64, Hours), TAir: make([]float64, Hours)}
	bad.TAir[77] = math.NaN()
	if s, ps := Year(Place{Sky: "file"}, 1, []*Series{bad}); s != nil || len(ps) != 1 {
		t.Error("a file with a hole was taken")
	}
}

// A sky in words gives a year anywhere, from pole to pole, in its climate's clearness.
func TestDescribedSkies(t *testing.T) {
	for words, d := range skies {
		for lat := -90.0; lat <= 90; lat += 10 {
			p := Place{Sky: "described", Described: words, Latitude: unit.Of(deg(lat))}
			s, ps := Year(p, 5, nil)
			if ps != nil {
				t.Fatalf("%s at %v: %v", words, lat, ps)
			}
			if !s.Rough {
				t.Error("not marked rough")
			}
			outside := 0.0
			for _, day := range s.Geometry.Day {
				outside += day
			}
			k := s.Year() / outside
			if math.Abs(lat) <= 40 {
				near(t, fmt.Sprint(words, " at ", lat), k, d.clearness, 0.005)
			} else if !(k > 0.25 && k < d.clearness+0.005) {
				t.Errorf("%s at %v: clearness %v", words, lat, k)
			}
		}
	}
}

// Any input within the ranges: a year or a reason, never a panic, never a number that is none.
func FuzzYear(f *testing.F) {
	f.Add(60.0, 10.0, 1.0, 3e6, 2e7, 0.1, 0.3, 10.0, uint64(1))
	f.Add(-90.0, 0.0, -12.0, 0.0, 1e7, 0.4, 0.95, -20.0, uint64(1))
	f.Add(0.0, 180.0, 14.0, 5e7, 5e7, 0.0, -0.9, 9000.0, uint64(9007199254740991))
	f.Fuzz(func(t *testing.T, lat, lon, tz, winter, summer, sd, lag, height float64, seed uint64) {
		if !(math.Abs(lat) <= 90 && math.Abs(lon) <= 180 && math.Abs(tz) <= 14 && winter >= 0 && winter <= 5e7 &&
			summer >= 0 && summer <= 5e7 && sd >= 0 && sd <= 0.4 && lag >= -0.9 && lag <= 0.95 && height >= -500 && height <= 9000) {
			t.Skip()
		}
		m := &Monthly{KTLag1: unit.Of(unit.Ratio(lag))}
		for i := range 12 {
			season := (1 - math.Cos(2*math.Pi*float64(i)/12)) / 2
			m.GHI[i] = unit.Irradiation(winter + (summer-winter)*season)
			m.KTSd[i] = unit.Of(unit.Ratio(sd))
			m.TMax[i] = 10
		}
		p := Place{Sky: "monthly", Monthly: m, Latitude: unit.Of(deg(lat)), Longitude: unit.Of(deg(lon)),
			UTCOffset: unit.Of(unit.Duration(tz * 3600)), Elevation: unit.Of(unit.Length(height))}
		s, ps := Year(p, seed, nil)
		if (s == nil) == (len(ps) == 0) {
			t.Fatal("neither a year nor a reason")
		}
		if s == nil {
			return
		}
		l := PlaneOf(s.Geometry, p, Face{Tilt: deg(math.Abs(lat)), Azimuth: deg(180 + lon)}).Light(s)
		sum := 0.0
		for h := range Hours {
			for _, v := range [4]float64{s.GHI[h], s.DHI[h], l.Plane[h], l.Cells[h]} {
				if !(v >= 0 && v < 3000) {
					t.Fatalf("hour %d: %v", h, v)
				}
			}
			sum += s.GHI[h]
		}
		wanted := 0.0
		for i, days := range monthLength {
			wanted += float64(m.GHI[i]) / 3600 * float64(days)
		}
		if len(s.Remarks) == 0 {
			near(t, "year", sum/max(wanted, 1), wanted/max(wanted, 1), 1e-9)
		}
	})
}

// An hour that no sky has is refused in the reader's units. By hand: 95 °C are 203 °F, 80 °C 176 °F, −100 °C −148 °F.
func TestImpossibleHour(t *testing.T) {
	w := &Series{GHI: make([]float64, Hours), DHI: make([]float64, Hours), TAir: make([]float64, Hours)}
	w.TAir[12] = 95
	_, ps := Year(Place{Sky: SkyFile}, 1, []*Series{w})
	if len(ps) != 1 {
		t.Fatalf("%v", ps)
	}
	for sys, want := range []string{
		"the weather file's hour 12 has an air temperature of 95 °C, outside −100 °C to 80 °C",
		"the weather file's hour 12 has an air temperature of 203 °F, outside −148 °F to 176 °F",
	} {
		if got := strings.ReplaceAll(ps[0].Say.In(unit.System(sys)), unit.Space, " "); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
