package sun

import (
	"math"
	"slices"
	"testing"

	"duskweight/internal/model/unit"
)

// beamOnly is a year whose light comes from the sun's disc alone, with the same strength on a plane that follows it.
func beamOnly(g *Geometry, direct float64) *Sky {
	s := &Sky{GHI: make([]float64, Hours), DHI: make([]float64, Hours), TAir: make([]float64, Hours), Geometry: g}
	for h := range s.GHI {
		if g.Up[h] > 0 {
			s.GHI[h] = direct * g.Up[h] * g.Lit[h]
		}
	}
	return s
}

// Beam of one strength from sunrise to sunset on a plane that faces noon at 30° north, tilted β: a winter day brings it
// cos(φ−β)·cos δ·sin ω + ω·sin(φ−β)·sin δ (Duffie & Beckman, integral of eq. 1.6.7a), with the sunset angle ω of eq. 1.6.10 and
// the declination δ of eq. 1.6.1a. Over a month this is greatest where tan(φ−β) = Σ ω sin δ / Σ cos δ sin ω. The scan must come
// within half its step; nothing of it is exact at the horizon, so half a degree more.
func TestBestTiltOfABeam(t *testing.T) {
	const phi = 30 * math.Pi / 180
	g := NewGeometry(phi, 0, 0)
	s := SeasonOf(g, Place{Albedo: unit.Of[unit.Ratio](0)}, beamOnly(g, 200))
	day := 0
	for m, days := range monthLength {
		var up, side float64
		winter := true
		for range days {
			day++
			d := float64(cooper(day))
			winter = winter && d < 0
			w := math.Acos(-math.Tan(phi) * math.Tan(d))
			up, side = up+w*math.Sin(d), side+math.Cos(d)*math.Sin(w)
		}
		if !winter { // in summer the sun rises behind the plane
			continue
		}
		want := (phi - math.Atan2(up, side)) * 180 / math.Pi
		if got := float64(s.ByMonth[m] / unit.Degree); math.Abs(got-want) > 3 {
			t.Errorf("month %d: %v°, by the integral %.2f°", m+1, got, want)
		}
	}
	if month, _ := s.Poorest(AtFixed); month != 12 && month != 6 && month != 1 && month != 7 {
		t.Errorf("the poorest month is %d, not one beside a solstice", month)
	}
}

// Three tilts whose light is written out. The first, the usual one, brings the poorest month 1; the second 2, the third 1 in
// January and 4 in every other. One tilt: the second, since its poorest month has 2. Two: January alone at the second and the
// rest at the third leaves the poorest month 2 with the most light over the year. A month's own best is the same.
func TestSeasonByHand(t *testing.T) {
	even := func(x float64) (out [12]float64) {
		for m, days := range monthLength {
			out[m] = x * float64(days)
		}
		return out
	}
	steep := even(4)
	steep[0] = 1 * 31
	s := seasonOf([]unit.Angle{0.1, 0.2, 0.3}, [][12]float64{even(1), even(2), steep})
	if s.Fixed != 0.2 || s.Two != [2]unit.Angle{0.3, 0.2} && s.Two != [2]unit.Angle{0.2, 0.3} {
		t.Errorf("one tilt %v, two %v", s.Fixed, s.Two)
	}
	if s.TwoMonths != [2]int{1, 2} || s.Two[0] != 0.2 {
		t.Errorf("from months %v on %v", s.TwoMonths, s.Two)
	}
	near(t, "gain of the poorest month", float64(s.PoorestGain.Val), 1, 1e-12)
	near(t, "two tilts over the year", float64(s.Year(AtTwo)), (2*31+4*334)*3600, 1e-6)
	if s.ByMonth[0] != 0.2 || slices.ContainsFunc(s.ByMonth[1:], func(a unit.Angle) bool { return a != 0.3 }) {
		t.Errorf("months %v", s.ByMonth)
	}
	if same := seasonOf([]unit.Angle{0.1, 0.2}, [][12]float64{even(2), even(2)}); same.Fixed != 0.1 || same.TwoMonths != [2]int{1, 1} {
		t.Errorf("where every tilt is alike, the usual one stays: %+v", same)
	}
	if dark := seasonOf([]unit.Angle{0.1}, [][12]float64{{}}); dark.PoorestGain.Is {
		t.Error("a gain over nothing is known")
	}
}

// At places from the tropics to beyond the polar circle: no month gets less at its own tilt than at the fixed one, two tilts
// leave the poorest month no worse than one, and the fixed one no worse than the usual.
func TestSeasonNeverLoses(t *testing.T) {
	for _, latitude := range []float64{-34, 5, 28, 52, 69} {
		for _, sky := range []DescribedSky{DescribedDesert, DescribedMixed} {
			p := Place{Latitude: unit.Of(deg(latitude)), Sky: SkyDescribed, Described: sky}
			year, ps := Year(p, 1, nil)
			if len(ps) > 0 {
				t.Fatal(ps)
			}
			s := SeasonOf(year.Geometry, p, year)
			for m := range s.ByMonth {
				if s.Light[AtByMonth][m] < s.Light[AtFixed][m] {
					t.Errorf("%v°, month %d: %v at its own best, %v at the fixed tilt", latitude, m+1, s.Light[AtByMonth][m], s.Light[AtFixed][m])
				}
			}
			_, usual := s.Poorest(AtUsual)
			_, fixed := s.Poorest(AtFixed)
			_, two := s.Poorest(AtTwo)
			_, own := s.Poorest(AtByMonth)
			if fixed < usual || float64(two) < float64(fixed)*(1-1e-9) || float64(own) < float64(two)*(1-1e-9) {
				t.Errorf("%v°: the poorest month has %v, %v, %v, %v", latitude, usual, fixed, two, own)
			}
			// what is told of a tilt is what a plane of it gets
			_, azimuth := FacingEquator(year.Geometry.Latitude)
			l := PlaneOf(year.Geometry, p, Face{ByMonth: &s.ByMonth, Azimuth: azimuth}).Light(year)
			sums := monthSums(l.Plane)
			for m := range sums {
				near(t, "its own best", sums[m]*3600/float64(monthLength[m]), float64(s.Light[AtByMonth][m]), 1e-9*(1+sums[m]*3600))
			}
		}
	}
}

// Twelve equal tilts are one tilt, to the last bit; and with others each month gets what a plane of its tilt gets in it.
func TestTiltByMonth(t *testing.T) {
	p := Place{Latitude: unit.Of(deg(47)), Sky: SkyDescribed, Described: DescribedMixed, Horizon: []Horizon{{2, 0.3}, {4, 0.1}}}
	year, ps := Year(p, 3, nil)
	if len(ps) > 0 {
		t.Fatal(ps)
	}
	light := func(f Face) Light { f.Azimuth = 3; return PlaneOf(year.Geometry, p, f).Light(year) }
	even, mixed := [12]unit.Angle{}, [12]unit.Angle{}
	for m := range even {
		even[m], mixed[m] = 0.7, 0.1*unit.Angle(m+1)
	}
	one, twelve, turned := light(Face{Tilt: 0.7}), light(Face{Tilt: 0.2, ByMonth: &even}), light(Face{ByMonth: &mixed})
	if !slices.Equal(one.Plane, twelve.Plane) || !slices.Equal(one.Cells, twelve.Cells) {
		t.Error("twelve equal tilts differ from one")
	}
	from := 0
	for m, days := range monthLength {
		to := from + 24*days
		own := light(Face{Tilt: mixed[m]})
		if !slices.Equal(own.Plane[from:to], turned.Plane[from:to]) || !slices.Equal(own.Cells[from:to], turned.Cells[from:to]) {
			t.Errorf("month %d is not that of its tilt", m+1)
		}
		from = to
	}
}
