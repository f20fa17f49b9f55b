package model

import (
	"math"
	"time"

	"duskweight/internal/model/unit"
)

// LiftingHours are the hours of a day in which the sun lifts in one month, standard time.
type LiftingHours struct {
	From, To int  // first hour and the end of the last; equal where no hour of the month is enough
	Usual    bool // so on at least half of the days; false: only on bright days
	Bright   int  // days of the month on which any hour is enough
	Days     int  // of the month
}

// LiftingHours returns when the sun lifts the hoist of a store in a month: the longest run of hours in which it does so on
// at least half of the days, or else of those in which it does so on any. The store must have run through the year.
func (g Ground) LiftingHours(r VariantResult, s StoreResult, month time.Month) LiftingHours {
	first, last := daysOf(month)
	enough := g.sunLifts(r, s)
	var by [24]int // days of the month on which the hour is enough
	l := LiftingHours{Days: last - first}
	for d := first; d < last; d++ {
		any := false
		for h := range by {
			if enough(24*d + h) {
				by[h]++
				any = true
			}
		}
		if any {
			l.Bright++
		}
	}
	if l.From, l.To = longestRun(func(h int) bool { return 2*by[h] >= l.Days }); l.From < l.To {
		l.Usual = true
		return l
	}
	l.From, l.To = longestRun(func(h int) bool { return by[h] > 0 })
	return l
}

// LiftDay is a usual day of a month with a lifted mass: the sun lifts it once, something holds it, it comes down for the lamps.
type LiftDay struct {
	Hours  LiftingHours
	Up     unit.Duration             // how long one lift takes
	Down   unit.Duration             // how long one way down takes
	Power  unit.Power                // what reaches the lamps meanwhile, in the mean
	Sunset unit.Known[unit.Duration] // since midnight, standard time; not known where the sun does not set
	Done   unit.Known[unit.Duration] // when it is down if it goes at sunset; from 24 h up it is the next day
}

// LiftDay returns that day for the hoist of a store; false where it does not lift, does not come down, or ran through no
// year.
func (g Ground) LiftDay(r VariantResult, s StoreResult, month time.Month) (LiftDay, bool) {
	h := HoistOf(s)
	if h == nil || s.Reservoir == nil || !r.YearKnown || h.Drive.Raising.Time <= 0 || h.Drive.Lowering.Time <= 0 {
		return LiftDay{}, false
	}
	d := LiftDay{Hours: g.LiftingHours(r, s, month), Up: h.Drive.Raising.Time, Down: h.Drive.Lowering.Time, Power: h.Drive.Lowering.Power}
	if set, ok := g.Sunset(month); ok {
		d.Sunset, d.Done = unit.Of(set), unit.Of(set+d.Down)
	}
	return d, true
}

// sunLifts tells whether an hour of the year leaves the hoist what it needs to move, after all that is wanted; with the
// panel straight on the motor, whether it turns.
func (g Ground) sunLifts(r VariantResult, s StoreResult) func(hour int) bool {
	if own := s.Reservoir.Own; own != nil {
		return func(h int) bool { return own.Power[h] > 0 }
	}
	standing := float64(r.StandingPower - g.Load.StandingPower) // the variant's, beside the project's
	return func(h int) bool {
		return r.Bus.Power[h]-g.Load.Standing[h]-standing-g.Load.Essential[h]-g.Load.Nice[h] >= float64(s.Reservoir.FillThreshold)
	}
}

// Sunset returns when the sun sets in the middle of a month, standard time since midnight; false where it does not set or
// does not rise.
func (g Ground) Sunset(month time.Month) (unit.Duration, bool) {
	first, _ := daysOf(month)
	day := first + 14
	half := g.Sky.Geometry.Sunset[day] // hour angle, 0 … π
	if half <= 0 || half >= math.Pi {
		return 0, false
	}
	return unit.Duration(3600 * (g.Sky.Geometry.Noon[day] + half*12/math.Pi)), true
}

// daysOf are the first day of a month and the first of the next, counted from the first of January.
func daysOf(month time.Month) (first, next int) {
	for _, n := range monthDays[:month-1] {
		first += n
	}
	return first, first + monthDays[month-1]
}

// longestRun is the longest run of hours of a day that pass, from its first to the end of its last.
func longestRun(pass func(hour int) bool) (from, to int) {
	for h := 0; h < 24; h++ {
		start := h
		for h < 24 && pass(h) {
			h++
		}
		if h-start > to-from {
			from, to = start, h
		}
	}
	return from, to
}
