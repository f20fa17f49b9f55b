package load

import (
	"math"

	"duskweight/internal/model/unit"
)

// markNights fills in which hours are night and which night they belong to. Night d is the night hours from solar noon
// of day d to solar noon of day d + 1; those before the first solar noon of the year belong to the last night.
func (y *Year) markNights(n Night, sunDown []bool, solarNoon []unit.Duration) {
	y.Night = y.nightHours(n, sunDown)
	y.NightOf = make([]int, HoursInYear)
	var has [DaysInYear]bool
	for h := range HoursInYear {
		y.NightOf[h] = -1
		if y.Night[h] {
			d := nightOf(h, solarNoon)
			y.NightOf[h] = d
			has[d] = true
		}
	}
	for _, yes := range has {
		if yes {
			y.Nights++
		}
	}
}

// MostAtNight is the greatest power in W that the appliances take together in an hour of the night; 0 without any.
func (y *Year) MostAtNight() (most float64) {
	for h, n := range y.NightOf {
		if n >= 0 {
			most = max(most, y.Essential[h]+y.Nice[h])
		}
	}
	return most
}

// nightOf returns the night that the middle of hour h falls into.
func nightOf(h int, solarNoon []unit.Duration) int {
	d := h / 24
	middle := float64(h%24)*3600 + 1800
	if middle < float64(solarNoon[d]) {
		d = (d + DaysInYear - 1) % DaysInYear
	}
	return d
}

// nightHours returns the mask: the sun's, or the user's own hours, taken at the hour's middle.
func (y *Year) nightHours(n Night, sunDown []bool) []bool {
	mask := make([]bool, HoursInYear)
	copy(mask, sunDown)
	if n.Own != NightOwn {
		return mask
	}
	from, fromIs := n.From.Value()
	to, toIs := n.To.Value()
	if !fromIs {
		y.Missing = append(y.Missing, Missing{"night.from_s", "your own night hours; the sun's night is taken"})
	}
	if !toIs {
		y.Missing = append(y.Missing, Missing{"night.to_s", "your own night hours; the sun's night is taken"})
	}
	if !fromIs || !toIs {
		return mask
	}
	for h := range mask {
		mask[h] = within(float64(h%24)*3600+1800, float64(from), float64(to))
	}
	return mask
}

// within reports whether time of day t lies from a to b, over midnight if b < a, always if a = b.
func within(t, a, b float64) bool {
	if a < b {
		return a <= t && t < b
	}
	return a == b || t >= a || t < b
}

// shareOfHour returns the share of the hour of the day (0 … 23) that lies from a to b, seconds after midnight: over
// midnight if b < a, the whole day if a = b.
func shareOfHour(hour int, a, b float64) float64 {
	lo, hi := float64(hour)*3600, float64(hour+1)*3600
	overlap := func(a, b float64) float64 { return math.Max(0, math.Min(hi, b)-math.Max(lo, a)) / 3600 }
	switch {
	case a == b:
		return 1
	case a < b:
		return overlap(a, b)
	default:
		return overlap(a, 86400) + overlap(0, b)
	}
}

// duskHours returns for each hour how many hours of darkness the sun's night had before it, or -1 by day. Where the
// sun does not rise the night begins at solar noon.
func duskHours(sunDown []bool, solarNoon []unit.Duration) []int {
	since := make([]int, HoursInYear)
	var count [DaysInYear]int
	// A night runs over the end of a day and the last one over the end of the year: begin at the first hour of night 0.
	first := 0
	for first < 48 && nightOf(first, solarNoon) != 0 {
		first++
	}
	for i := range HoursInYear {
		h := (first + i) % HoursInYear
		since[h] = -1
		if sunDown[h] {
			d := nightOf(h, solarNoon)
			since[h] = count[d]
			count[d]++
		}
	}
	return since
}
