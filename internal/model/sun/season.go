package sun

import (
	"math"
	"slices"

	"duskweight/internal/model/unit"
)

// Season is which tilts of panels that face noon bring most light: one all year, two a year, or one for each month. Every tilt
// brings its poorest month the most that any can; of several that do, the one with the most light over the year counts.
type Season struct {
	Fixed     unit.Angle     // best tilt all year
	Two       [2]unit.Angle  // best two tilts a year: the first from month TwoMonths[0] on, the second from TwoMonths[1] on
	TwoMonths [2]int         // 1 to 12; both are 1 where two tilts bring no more than one
	ByMonth   [12]unit.Angle // each month's own best
	Usual     unit.Angle     // the latitude, from 10° to 60°

	PoorestGain unit.Known[unit.Ratio] // of the poorest month at Fixed over that at Usual; not known where it is dark

	// On the panel, mean day of each month, J/m².
	Light [seasons][12]unit.Irradiation
}

// The ways of Season.Light.
const (
	AtUsual = iota
	AtFixed
	AtTwo
	AtByMonth
	seasons
)

// tiltStep is from one tilt that is tried to the next, from flat to upright.
const tiltStep = 5 * unit.Degree

// SeasonOf tries the tilts of panels that face noon at a place, every 5° and the usual one. Snow on them is left out.
func SeasonOf(g *Geometry, place Place, sky *Sky) Season {
	usual, azimuth := FacingEquator(g.Latitude)
	tilts := []unit.Angle{usual}
	for i := range int(math.Round(float64(90*unit.Degree/tiltStep))) + 1 {
		tilts = append(tilts, unit.Angle(i)*tiltStep)
	}
	light := make([][12]float64, len(tilts))
	room := Light{Plane: make([]float64, Hours), Cells: make([]float64, Hours)}
	for i, t := range tilts {
		PlaneOf(g, place, Face{Tilt: t, Azimuth: azimuth, Bare: true}).Fill(sky, room)
		light[i] = monthSums(room.Plane)
	}
	return seasonOf(tilts, light)
}

// monthSums adds up a year's hours by month.
func monthSums(hours []float64) (sums [12]float64) {
	from := 0
	for m, days := range monthLength {
		for _, x := range hours[from : from+24*days] {
			sums[m] += x
		}
		from += 24 * days
	}
	return sums
}

// worth is what a choice of tilts brings: the mean day of the poorest month, and the year.
type worth struct{ poorest, year float64 }

func worthOf(light [12]float64) worth {
	w := worth{poorest: math.Inf(1)}
	for m, x := range light {
		w.poorest, w.year = min(w.poorest, x/float64(monthLength[m])), w.year+x
	}
	return w
}

// sameLight is the share within which two sums of light are the same: rounding of 744 hours.
const sameLight = 1e-12

// over reports whether w is better than o.
func (w worth) over(o worth) bool {
	if math.Abs(w.poorest-o.poorest) > sameLight*max(w.poorest, o.poorest) {
		return w.poorest > o.poorest
	}
	return w.year > o.year*(1+sameLight)
}

// seasonOf chooses among tilts, the first of them the usual one; light is what each brings in each month.
func seasonOf(tilts []unit.Angle, light [][12]float64) Season {
	s := Season{Usual: tilts[0], TwoMonths: [2]int{1, 1}}
	fixed := 0
	for i := range tilts {
		if worthOf(light[i]).over(worthOf(light[fixed])) {
			fixed = i
		}
	}
	best := worthOf(light[fixed])
	s.Fixed, s.Two, s.Light[AtUsual], s.Light[AtFixed], s.Light[AtTwo] = tilts[fixed], [2]unit.Angle{tilts[fixed], tilts[fixed]}, meanDays(light[0]), meanDays(light[fixed]), meanDays(light[fixed])
	for from := range 12 {
		for to := from + 1; to < 12; to++ {
			for a := range tilts {
				for b := range tilts {
					two := light[b]
					copy(two[from:to], light[a][from:to])
					if w := worthOf(two); w.over(best) {
						best, s.Two, s.TwoMonths, s.Light[AtTwo] = w, [2]unit.Angle{tilts[a], tilts[b]}, [2]int{from + 1, to + 1}, meanDays(two)
					}
				}
			}
		}
	}
	var own [12]float64
	for m := range own {
		at := fixed
		for i := range tilts {
			if light[i][m] > light[at][m] {
				at = i
			}
		}
		s.ByMonth[m], own[m] = tilts[at], light[at][m]
	}
	s.Light[AtByMonth] = meanDays(own)
	if usual := worthOf(light[0]).poorest; usual > 0 {
		s.PoorestGain = unit.Of(unit.Ratio(worthOf(light[fixed]).poorest/usual - 1))
	}
	return s
}

// meanDays turns the light of months, W/m² in each hour added up, into that of their mean day.
func meanDays(light [12]float64) (out [12]unit.Irradiation) {
	for m, x := range light {
		out[m] = unit.Irradiation(x * 3600 / float64(monthLength[m]))
	}
	return out
}

// Poorest is the month with the least light of one of the ways of Season.Light, 1 to 12, and the light of its mean day.
func (s Season) Poorest(way int) (month int, light unit.Irradiation) {
	light = slices.Min(s.Light[way][:])
	return slices.Index(s.Light[way][:], light) + 1, light
}

// Year is what one of the ways of Season.Light brings in a year, J/m².
func (s Season) Year(way int) (sum unit.Irradiation) {
	for m, x := range s.Light[way] {
		sum += x * unit.Irradiation(monthLength[m])
	}
	return sum
}
