package weather

import (
	"math"
	"testing"

	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// A file whose direct column and global less diffuse light disagree is read with the lower winter of the two, on either half
// of the Earth, and names the month in which they differ most. By hand: half of the light outside the air, of it 0.25 or, in
// the month that is changed, 0.30 or 0.20 direct by the column; global less diffuse light stays at 0.25.
func TestColumnsThatDisagree(t *testing.T) {
	for _, c := range []struct {
		latitude float64
		month    int // that is changed by the column, 1 to 12
		factor   float64
		column   bool // the column has the lower winter
		says     string
	}{
		{45, 1, 0.20, true, "most in January"},
		{45, 1, 0.30, false, "most in January"},
		{-35, 7, 0.20, true, "most in July"},
		{-35, 7, 0.30, false, "most in July"},
		{45, 6, 0.20, false, "most in June"}, // winters are equal: diffuse as it is in the file
	} {
		g := sun.NewGeometry(unit.Angle(c.latitude)*unit.Degree, 0, 0)
		var h [columns][]float64
		for _, k := range []int{ghi, dhi, dni} {
			h[k] = make([]float64, sun.YearHours)
		}
		for i, x := range g.Extra {
			h[ghi][i], h[dhi][i] = x/2, x/4
			direct := 0.25
			if month, _ := date(i); month == c.month {
				direct = c.factor
				if x > 100 { // and over 20 W/m² root mean square in a year: a cloud over the other hours does not count
					h[ghi][i], h[dhi][i] = 500+x/2, 500+x/4
				}
			} else if x > 0 {
				direct = 0
				h[dhi][i] = h[ghi][i]
			}
			if up := g.Up[i] * g.Lit[i]; up > 0.02 {
				h[dni][i] = direct * x / up
			}
		}
		rep := Report{Global: "file", Diffuse: "file"}
		closure(&h, g, &rep)
		if !rep.Asks("columns") || !says(rep, c.says) || says(rep, "that of the direct column") != c.column || (rep.Diffuse == "direct") != c.column {
			t.Errorf("%v°, month %d by %v: %v", c.latitude, c.month, c.factor, rep.Notes)
		}
		noon := (before(c.month, false)+14)*24 + 12
		want := 0.25
		if c.column {
			want = c.factor
		}
		if got := (h[ghi][noon] - h[dhi][noon]) / g.Extra[noon]; math.Abs(got-want) > 0.001 {
			t.Errorf("%v°, month %d by %v: direct light is %.3f of that outside the air, want %v", c.latitude, c.month, c.factor, got, want)
		}
	}
}

// Read from a file, the lower winter of the direct column is used, asked about, and its diffuse light is that much more.
func TestFileThatDisagrees(t *testing.T) {
	m := makeYear(harbour, 12, 1)
	for i := range m.b {
		if month, _ := date(i); month == 12 || month < 3 {
			m.b[i] = math.Round(m.b[i] * 0.6)
		}
	}
	s, rep := read(t, m.energyPlus(), Mapping{})
	i := 14*24 + 12
	if !rep.Asks("columns") || !says(rep, "The lower winter is used, that of the direct column") || rep.Diffuse != "direct" || s.DHI[i] <= m.d[i] {
		t.Errorf("diffuse %v, in the file %v: %v", s.DHI[i], m.d[i], rep.Notes)
	}
}
