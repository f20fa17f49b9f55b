package weather

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// tmy2 writes the year in the fixed-width layout, by the format of the User's Manual for TMY2s, tables 3-1 and 3-2.
func (m made) tmy2() string {
	var b strings.Builder
	letter := func(v float64, plus, minus string) string {
		if v < 0 {
			return minus
		}
		return plus
	}
	parts := func(v float64) (int, int) {
		minutes := int(math.Round(math.Abs(v) * 60))
		return minutes / 60, minutes % 60
	}
	latD, latM := parts(m.lat)
	lonD, lonM := parts(m.lon)
	fmt.Fprintf(&b, " %5s %-22s %2s %3.0f %s %2d %2d %s %3d %2d  %4d\n", "00001", "MADE HARBOUR", "NW", m.zone, letter(m.lat, "N", "S"), latD, latM, letter(m.lon, "E", "W"), lonD, lonM, 12)
	for i := range m.g {
		month, day := date(i)
		fmt.Fprintf(&b, " %2d%2d%2d%2d%4d%4d%4.0fA7%4.0fA7%4.0fA7%4dI6%4dI6%4dI6%4dI6%2dA7%2dA7%4.0fA7%4dA7%3dA7%4dA7%3dA7%3dA7%4dB8%5dA7%10d%3dE8%3dF8%3dA7%2dA7\n",
			60+month, month, day, i%24+1, 0, 0, m.g[i], m.b[i], m.d[i], 0, 0, 0, 0, 7, 7, m.t[i]*10, -20, 80, 1013, 240, 20, 160, 500, 9999999999, 10, 50, 0, 88)
	}
	return b.String()
}

// The fixed-width layout is read as the year that was written, on both halves of the Earth.
func TestTMY2(t *testing.T) {
	for _, at := range []place3{{46.5, -68.25, -5}, {-33.75, 18.5, 2}} {
		m := makeYear(at.lat, at.lon, at.zone)
		text := m.tmy2()
		if n := len(strings.Split(text, "\n")[1]); n != 142 {
			t.Fatalf("rows of %d letters", n)
		}
		s, rep := read(t, text, Mapping{})
		m.same(t, s, 1e-9)
		typical, known := s.IsTypical()
		if rep.Layout != TMY2 || !typical || !known || s.Name != "MADE HARBOUR" || s.Elevation != 12 || s.UTCOffset != unit.Duration(at.zone)*unit.Hour ||
			math.Abs(s.Latitude.Degrees()-at.lat) > 1e-9 || math.Abs(s.Longitude.Degrees()-at.lon) > 1e-9 || rep.Asks("slip") {
			t.Errorf("%+v %v %v", rep.Mapping, s.Name, rep.Notes)
		}
	}
	m := makeYear(46.5, -68.25, -5)
	l := strings.Split(m.tmy2(), "\n")
	gap := append([]string(nil), l...)
	gap[20] = gap[20][:67] + "9999?0" + gap[20][73:]
	if _, rep := read(t, strings.Join(gap, "\n"), Mapping{}); len(rep.Gaps) != 1 || rep.Gaps[0].What != "temperature" {
		t.Errorf("a code for missing: %+v", rep.Gaps)
	}
	l[20], l[30] = l[20][:40], l[30][:17]+" abc"+l[30][21:]
	faults(t, strings.Join(l, "\n"), Mapping{}, "line 21: ", "shorter than the layout", "line 31: ", "is not a whole number")
}
