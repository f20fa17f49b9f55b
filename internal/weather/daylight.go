package weather

import (
	"math"
	"slices"

	"duskweight/internal/model/sun"
)

// clockJump takes rows that keep daylight saving time back to standard time, where the times say so themselves: one hour of
// the file is there twice and another, at night in spring or autumn, is left out. begin are the minutes of the rows in the
// order of the file; it says from and to which of them daylight saving time is kept. ok is false where the times do not jump so.
func clockJump(begin []int, step, circle int) (from, to int, ok bool) {
	forward, backward := -1, -1 // rows; a clock that each row says itself does not jump
	for i := 1; i < len(begin); i++ {
		d := (begin[i]-begin[i-1]+circle+circle/2)%circle - circle/2
		switch {
		case d == step-60 && backward < 0:
			backward = i
		case d <= 0:
			return 0, 0, false // no order of time
		case d == step+60 && jumps(begin[i], step):
			if forward >= 0 {
				return 0, 0, false
			}
			forward = i
		}
	}
	if forward < 0 || backward < 0 {
		return 0, 0, false
	}
	for i := range begin {
		if summer := i >= forward && i < backward; backward < forward && !(i >= backward && i < forward) || summer {
			begin[i] = (begin[i] - 60 + circle) % circle
		}
	}
	return begin[forward], begin[backward], true
}

// jumps reports whether clocks are put forward at a minute of the year: by night, in March or April north of the equator and
// from September to November south of it.
func jumps(minute, step int) bool {
	day, hour := minute/dayMinutes, (minute%dayMinutes-step/2+60)/60
	return hour >= 1 && hour <= 5 && (day >= 59 && day < 121 || day >= 243 && day < 335)
}

// inSummer takes rows from one day of the year to another, from 1, back by the hour of daylight saving time.
func (g *grid) inSummer(days [2]int) {
	for i, b := range g.begin {
		if between(b/dayMinutes+1, days) {
			g.begin[i] = (b - 60 + g.circle()) % g.circle()
		}
	}
}

// between reports whether a day lies from the first on to before the second, which may be in the next year.
func between(day int, days [2]int) bool {
	if days[0] < days[1] {
		return day >= days[0] && day < days[1]
	}
	return day >= days[0] || day < days[1]
}

// Daylight saving time that the times do not show makes the sun late by an hour in half of the year. leastSeason and
// mostSeason are the differences of the seasons' lateness, in minutes, that are asked about. Our own judgement.
const leastSeason, mostSeason = 35.0, 85.0

// season is by how many minutes the sun runs later from May to August than from November to February; 0 where one of them has
// too little sun to tell.
func (l lateness) season() float64 {
	of := func(months ...int) float64 {
		var known []float64
		for _, m := range months {
			if !math.IsNaN(l.months[m-1]) {
				known = append(known, l.months[m-1])
			}
		}
		if len(known) == 0 {
			return math.NaN()
		}
		return median(known)
	}
	d := of(5, 6, 7, 8) - of(11, 12, 1, 2)
	if math.IsNaN(d) {
		return 0
	}
	return d
}

// seasonal reports whether the lateness is that of daylight saving time.
func (l lateness) seasonal() bool {
	d := math.Abs(l.season())
	return d >= leastSeason && d <= mostSeason
}

// standard is the lateness of the months without daylight saving time, those that run less late.
func (l lateness) standard() float64 {
	var known []float64
	for _, x := range l.months {
		if !math.IsNaN(x) {
			known = append(known, x)
		}
	}
	slices.Sort(known)
	return median(known[:max(1, len(known)/3)])
}

// summerOf finds from and to which day of the year, from 1, the light runs an hour late: where the sums of what is left of
// the lateness of single days are least.
func summerOf(light []float64, g *sun.Geometry, l lateness) [2]int {
	base := l.standard()
	var gain [sun.Days + 1]float64 // sum over the days before: what is left without the hour less what is left with it
	for d := range sun.Days {
		gain[d+1] = gain[d]
		if late, ok := lateOfDay(light, g, d); ok {
			gain[d+1] += min(60, math.Abs(late-base)) - min(60, math.Abs(late-base-60))
		}
	}
	best, days := math.Inf(-1), [2]int{}
	for from := range sun.Days {
		for to := range sun.Days {
			sum := gain[to] - gain[from]
			if to <= from {
				sum += gain[sun.Days]
			}
			if from != to && sum > best {
				best, days = sum, [2]int{from + 1, to + 1}
			}
		}
	}
	return days
}

// lateOfDay is by how many minutes the middle of the light of one day is late; ok is false for a day with little light.
func lateOfDay(light []float64, g *sun.Geometry, day int) (minutes float64, ok bool) {
	first := day*24 + int(math.Floor(g.Noon[day]-12))
	var sum, middle, extra, extraMiddle float64
	for k := range 24 {
		i := around(first + k)
		sum += light[i]
		middle += light[i] * float64(k)
		extra += g.Extra[i]
		extraMiddle += g.Extra[i] * float64(k)
	}
	if extra < 500 || sum < 0.15*extra {
		return 0, false
	}
	return (middle/sum - extraMiddle/extra) * 60, true
}

// DayOfYear is a day of the year, from 1, in words: "28 March".
func DayOfYear(day int) string {
	text := label((day - 1) * dayMinutes)
	return text[:len(text)-len(" 00:00")]
}
