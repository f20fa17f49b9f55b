package sun

import "math"

// warmth is the air of a climate by day: the mean that a day of the year has, and how single days and hours lie round it.
// Fitted to 27 places. Left out: warm winters are made too wide, and no heat wave or cold snap outlasts its days.
type warmth struct {
	mean   [Days]float64 // °C
	spread [12]float64   // K, of the days round their mean
	tie    [12]float64   // correlation of a day's fresh warmth with its fresh clearness: clear winter days are cold
	half   [12]float64   // K, half the mean daily range
}

// warmLag is the lag-one correlation of a day's deviation from its mean.
const warmLag = 0.75

// newWarmth reads the means of the months.
func newWarmth(m Monthly) *warmth {
	w := &warmth{}
	var month [12]float64
	year := 0.0
	for i, t := range m.TMean {
		month[i] = float64(t)
		year += float64(t) / 12
		w.half[i] = float64(m.TMax[i]-m.TMin[i]) / 2
	}
	swing := 0.0
	for _, t := range month {
		swing += (t - year) * (t - year) / 12
	}
	swing = math.Sqrt(swing)
	for i, t := range month {
		w.spread[i] = 1 + 0.33*swing - 0.094*(t-year) // 1 K at the least: none of twelve is further from their mean than √11 swings
		w.tie[i] = min(max(0.115+0.15*(t-year)/max(swing, 1), -0.5), 0.5) / 0.83
	}
	w.through(month)
	return w
}

// through lays a straight line from mid-month to mid-month and moves its knots until every month has its mean.
func (w *warmth) through(month [12]float64) {
	knots := month
	for range 60 {
		first := 0
		for d := range w.mean {
			i, f := midMonths(d)
			w.mean[d] = (1-f)*knots[(i+11)%12] + f*knots[i%12]
		}
		for i, days := range monthLength {
			sum := 0.0
			for _, t := range w.mean[first : first+days] {
				sum += t
			}
			knots[i] += month[i] - sum/float64(days)
			first += days
		}
	}
}

// midMonths returns between which mid-months the middle of day d lies, and how far on: i is the number of the earlier
// one, 0 for that of December before, 1 for January's, and f goes from 0 there to 1 at the next.
func midMonths(d int) (i int, f float64) {
	at := float64(d) + 0.5
	before := -float64(monthLength[11]) / 2
	first := 0
	for i, days := range monthLength {
		middle := float64(first) + float64(days)/2
		if at < middle {
			return i, (at - before) / (middle - before)
		}
		before, first = middle, first+days
	}
	return 12, (at - before) / (Days + float64(monthLength[0])/2 - before)
}

// hours writes the air of day d of month i: its mean and deviation, and a daily range that is wider on clear days. ratio
// is the day's clearness over the month's. Warmest at three in the afternoon: common practice.
func (w *warmth) hours(d, i int, deviation, ratio float64, air []float64) {
	half := w.half[i] * min(max(1+0.62*(ratio-1), 0.2), 1.8)
	for k := range 24 {
		air[d*24+k] = w.mean[d] + deviation + half*clockSwing[k]
	}
}

// clockSwing is cos(2π(t − 15)/24) in the middle of each clock hour.
var clockSwing = func() (s [24]float64) {
	for k := range s {
		s[k] = math.Cos(2 * math.Pi * (float64(k) + 0.5 - 15) / 24)
	}
	return s
}()
