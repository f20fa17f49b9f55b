package sun

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"duskweight/internal/model/unit"
)

// A sky in words, by its law: clearness is highest in June in the north and in December in the south, falls as a cosine to six months
// later, and its mean over the light outside is the described one; within the tropics it does not swing. The air is 29.7 °C at the
// equator, 32.1·sin²φ less further out and 6.5 K less for each kilometre; it swings by 12.9 K·sin φ round the middle of July less a
// third of a month (6.2), the other way round in the south; and a day goes as far up as down.
func TestDescribedSkyByItsLaw(t *testing.T) {
	words := described{clearness: 0.3, swing: 0.08, daily: 10}
	for _, lat := range []float64{-50, -30, -20, 0, 20, 30, 50} {
		for _, height := range []float64{0, 1000} {
			g := NewGeometry(deg(lat), 0, 0)
			m := describe(g, words, unit.Length(height))
			outside, most := monthsOf(g, unit.Length(height))
			swing, best := 0.08, 5.0 // June
			if math.Abs(lat) <= 23.45 {
				swing = 0
			}
			if lat < 0 {
				best = 11 // December
			}
			name := fmt.Sprintf("%g°, %g m: ", lat, height)
			var k [12]float64
			whole, light, mean := 0.0, 0.0, 0.0
			for i, days := range monthLength {
				k[i] = float64(m.GHI[i]) * float64(days) / outside[i]
				whole, light = whole+outside[i], light+float64(m.GHI[i])*float64(days)
				mean += float64(m.TMean[i]) / 12
				if k[i]*outside[i] > 0.9*most[i] {
					t.Fatalf("%smonth %d is under its ceiling", name, i+1)
				}
				near(t, name+"up and down", float64(m.TMax[i]-m.TMean[i]), 5, 1e-9)
				near(t, name+"down and up", float64(m.TMean[i]-m.TMin[i]), 5, 1e-9)
			}
			near(t, name+"clearness of the year", light/whole, 0.3, 1e-9)
			sin := math.Sin(lat * math.Pi / 180)
			near(t, name+"air of the year", mean, 29.7-32.1*sin*sin-0.0065*height, 1e-9)
			for i := range 12 {
				near(t, fmt.Sprint(name, "clearness of month ", i+1), k[int(best)]-k[i], swing*(1-math.Cos(2*math.Pi*(float64(i)-best)/12)), 1e-9)
				near(t, fmt.Sprint(name, "air of month ", i+1), float64(m.TMean[i])-mean, 12.9*sin*math.Cos(2*math.Pi*(float64(i)-6.2)/12), 1e-9)
			}
		}
	}
}

// A desert's winter far from the equator is under its ceiling all the same: no month has more than nine tenths of what its clear hours
// allow together.
func TestDescribedSkyUnderItsCeiling(t *testing.T) {
	g := NewGeometry(deg(60), 0, 0)
	m := describe(g, described{clearness: 0.9, swing: 0}, 0)
	_, most := monthsOf(g, 0)
	for i, days := range monthLength {
		near(t, fmt.Sprint("month ", i+1), float64(m.GHI[i])*float64(days)/most[i], 0.9, 1e-9)
	}
}

// The spread of a day's air about its month, and how it goes with the light, by the fit: 1 K and 0.33 of the yearly swing, 0.094 less
// for each kelvin that a month is warmer than the year. Twelve equal months have no swing; six of 10 K over
// and six under have one of 10 K.
func TestSpreadOfTheAir(t *testing.T) {
	of := func(temps ...float64) *warmth {
		var m Monthly
		for i := range m.TMean {
			m.TMean[i] = unit.Celsius(temps[i%len(temps)])
			m.TMax[i], m.TMin[i] = m.TMean[i]+3, m.TMean[i]-5
		}
		return newWarmth(m)
	}
	even, swings := of(10), of(20, 0)
	one := of(60, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0) // 5 °C in the year, a swing of √(5²·11 + 55²)/√12 = 16.5831 K
	for _, x := range []struct {
		what        string
		w           *warmth
		i           int
		spread, tie float64
	}{
		{"even", even, 3, 1, 0.115 / 0.83}, {"warm months", swings, 0, 1 + 0.33*10 - 0.94, (0.115 + 0.15) / 0.83}, {"cold months", swings, 1, 1 + 0.33*10 + 0.94, (0.115 - 0.15) / 0.83},
		{"hot month", one, 0, 1 + 0.33*16.583124 - 0.094*55, 0.5 / 0.83}, {"beside the hot month", one, 1, 1 + 0.33*16.583124 + 0.094*5, (0.115 - 0.15*5/16.583124) / 0.83},
	} {
		near(t, x.what+": spread", x.w.spread[x.i], x.spread, 1e-6)
		near(t, x.what+": tie", x.w.tie[x.i], x.tie, 1e-6)
		near(t, x.what+": half of a day's range", x.w.half[x.i], 4, 1e-12)
	}
	lone := of(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 20) // 18.33 K over the year at a swing of 5.53 K, the furthest that one of twelve can be
	near(t, "one month", lone.spread[11], 1+0.33*5.5277-0.094*18.3333, 1e-3)
	if lone.spread[11] < 1 {
		t.Errorf("%g K are under the least", lone.spread[11])
	}
}

// What is missing after the days were scaled goes to each by its room, up to the clearest and down to the darkest day: two days of 0.5
// under 0.8 and 0.6 whose light outside is 1 and 2, wanted 1.75: 0.25 of 0.5 are given, half of each room; wanted 1.2: 0.3 of 1.2
// are taken, a quarter of what stands above 0.1. More than all room is all of it.
func TestWhatIsMissingGoesByRoom(t *testing.T) {
	for wanted, want := range map[float64][2]float64{1.75: {0.65, 0.55}, 1.2: {0.4, 0.4}, 1.5: {0.5, 0.5}, 9: {0.8, 0.6}, 0: {0.1, 0.1}} {
		k := []float64{0.5, 0.5}
		settle(k, []float64{1, 2}, []float64{0.8, 0.6}, 0.1, wanted)
		near(t, fmt.Sprint("first day of ", wanted), k[0], want[0], 1e-12)
		near(t, fmt.Sprint("second day of ", wanted), k[1], want[1], 1e-12)
	}
}

// A day so bright that more is cut off at the ceilings than the other hours have room for stands at its ceilings, and no hour above;
// one that is a little too bright keeps all of its light.
func TestHoursUnderTheirCeilings(t *testing.T) {
	p := stockholm().place(true)
	g := NewGeometry(p.Latitude.Val, p.Longitude.Val, p.UTCOffset.Val)
	c, ps := NewClimate(g, *p.Monthly, p.Elevation.Val)
	if len(ps) > 0 {
		t.Fatal(ps)
	}
	const day = 171 // 21 June
	of := func(k float64) (sum, most float64) {
		ghi, dhi := make([]float64, Hours), make([]float64, Hours)
		c.hours(day, k, ghi, dhi)
		for h := day * 24; h < day*24+24; h++ {
			if ghi[h] > c.ceiling[h]*(1+1e-12) || dhi[h] > ghi[h] {
				t.Errorf("clearness %g, hour %d: %g W/m², %g diffuse, of %g", k, h, ghi[h], dhi[h], c.ceiling[h])
			}
			sum, most = sum+ghi[h], most+c.ceiling[h]
		}
		return sum, most
	}
	for _, k := range []float64{0.9, 1, 3} {
		sum, most := of(k)
		near(t, fmt.Sprint("clearness ", k, ", all"), sum, min(most, k*g.Day[day]/3600), 1e-6*most)
	}
}

// How fast the spread of a curve rises with σ while its mean is held, against the difference of two curves beside it.
func TestSlopeOfTheSpread(t *testing.T) {
	for _, row := range [][4]float64{{.47, 52, 15, 0}, {.28, 52, 4, 0}, {.70, 33, 30, 300}} {
		c, _ := curveAt(row[0], row[1], row[2], row[3])
		const h = 1e-4
		beside := func(by float64) float64 {
			d := c
			d.sigma += by
			d.raise(math.Inf(1), row[0])
			spread, _ := d.spreadAt(row[0])
			return spread
		}
		spread, slope := c.spreadAt(row[0])
		near(t, "slope", slope, (beside(h)-beside(-h))/(2*h), 1e-6)
		near(t, "spread", spread, beside(0), 1e-9)
	}
}

// The sun in the west stands behind what is high in the west alone, the sun in the east is free, and the other way round.
func TestBehindOnTheSideOfTheSun(t *testing.T) {
	for _, high := range []float64{90, 270} {
		s := newSkyline([]Horizon{{deg(high - 30), 0}, {deg(high), deg(30)}, {deg(high + 30), 0}})
		for az := 0.0; az < 360; az += 15 {
			a, up := az*math.Pi/180, math.Tan(10*math.Pi/180)
			want := math.Abs(az-high) < 20 // 10° of 30° at two thirds of the way
			if got := s.behind(math.Sin(a), math.Cos(a), up); got != want {
				t.Errorf("high in %g°, sun in %g°: behind %v", high, az, got)
			}
		}
	}
}

// filled is a weather file of one year with the same light in every hour of the day.
func filled(name string, year float64, light, air float64) *Series {
	w := &Series{Name: name, Latitude: deg(50)}
	if year > 0 {
		w.Year = unit.Of(unit.Count(year))
	}
	for h := range Hours {
		x := 0.0
		if h%24 >= 10 && h%24 < 14 {
			x = light
		}
		w.GHI, w.DHI, w.TAir = append(w.GHI, x), append(w.DHI, x/2), append(w.TAir, air+float64(h%24))
	}
	return w
}

// The means of two files are half of the sum of each one's: light and the three temperatures of a day, which here goes from air to 23 K
// over it.
func TestMeansOfTwoFiles(t *testing.T) {
	a, b := filled("a", 2001, 100, 5), filled("b", 2002, 200, -7)
	one, two, both := Means([]*Series{a}), Means([]*Series{b}), Means([]*Series{a, b})
	for i := range 12 {
		near(t, "light of one", float64(one.GHI[i]), 100*4*3600, 1e-6)
		near(t, "light", float64(both.GHI[i]), float64(one.GHI[i]+two.GHI[i])/2, 1e-6)
		near(t, "mean", float64(both.TMean[i]), -1+11.5, 1e-9)
		near(t, "warmest", float64(both.TMax[i]), -1+23, 1e-9)
		near(t, "coldest", float64(both.TMin[i]), -1, 1e-9)
	}
}

// Files stand by their years, those without one last, then by name and by light, however they came; the middle of them is the one with
// the middle light, of two the darker.
func TestOrderOfFiles(t *testing.T) {
	early, late, noneA, noneB, dark := filled("z", 1999, 100, 0), filled("y", 2005, 300, 0), filled("a", 0, 200, 0), filled("b", 0, 50, 0), filled("a", 0, 20, 0)
	want := []*Series{early, late, dark, noneA, noneB}
	for range 5 {
		want = append(want[1:], want[0])
		if got := InOrder(want); !slices.Equal(got, []*Series{early, late, dark, noneA, noneB}) {
			t.Errorf("order %v", got)
		}
	}
	if got := Middle([]*Series{late, noneB, early}); got != early {
		t.Errorf("the middle of three is %s", got.Name)
	}
	if got := Middle([]*Series{late, early}); got != early {
		t.Errorf("the middle of two is %s", got.Name)
	}
	if Middle(nil) != nil {
		t.Error("the middle of none is one")
	}
}

// By which files a sky is known: one that is asked for by one file, all where several are, none else. Of several real years each has its
// turn; one real year is the same each time; a year of typical months is only where others are drawn from.
func TestWhichFilesASkyIsOf(t *testing.T) {
	a, b := filled("a", 2001, 100, 5), filled("b", 2002, 200, 6)
	for _, x := range []struct {
		sky   SkyKind
		files []*Series
		want  int
	}{
		{SkyFile, []*Series{a, b}, 1}, {SkyFile, nil, 0}, {SkyFiles, []*Series{a, b}, 2}, {SkyFiles, nil, 0}, {SkyDescribed, []*Series{a, b}, 0}, {SkyMonthly, []*Series{a}, 0},
	} {
		if got := filesOf(Place{Sky: x.sky}, x.files); len(got) != x.want {
			t.Errorf("%s of %d files: %d", x.sky, len(x.files), len(got))
		}
	}
	light := func(sky SkyKind, j int, files ...*Series) float64 {
		p := Place{Sky: sky, Latitude: unit.Of(deg(50)), Longitude: unit.Of(deg(0))}
		s, ps := MadeYear(p, 7, j, files)
		if len(ps) > 0 {
			t.Fatal(ps)
		}
		return total(s.GHI)
	}
	for j := range 4 {
		near(t, fmt.Sprint("year ", j, " of two"), light(SkyFiles, j, b, a), total([]*Series{a, b}[j%2].GHI), 1e-6)
		near(t, fmt.Sprint("year ", j, " of one"), light(SkyFile, j, b), total(b.GHI), 1e-6)
	}
	typical := filled("typical year", 0, 100, 5)
	typical.Source = "typical meteorological year"
	if x, y := light(SkyFile, 0, typical), light(SkyFile, 1, typical); x == y {
		t.Error("two years drawn from typical months are alike")
	}
}
