package hoist

import (
	"duskweight/web/form"
	"fmt"
	"math"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/web/page"
)

// today says what to do with a hoist on a usual day of a month (0 is January): when to lift, how long to wait, when to let it
// down, when to stop.
func today(g model.Ground, r model.VariantResult, s model.StoreResult, month int) []string {
	h := model.HoistOf(s)
	switch {
	case h.Ready == reason.No:
		return []string{"Do not lift: the checks say do not hang."}
	case s.Reservoir == nil:
		return nil
	}
	var say []string
	if h.Ready != reason.Yes {
		say = []string{"Not before every check of the plan sheet holds. Then:"}
	}
	return append(say, liftWhen(g, r, s, month), lowerWhen(g, month), "Stop if the base moves, the motor is too hot to touch, or wind moves the mass.")
}

// liftWhen is the time of day in which the sun lifts, and how a lift goes: the hours in which it does so on at least half
// of the days of the month, or else those of the bright days.
func liftWhen(g model.Ground, r model.VariantResult, s model.StoreResult, month int) string {
	enough := sunLifts(g, r, s)
	days := daysOf(month)
	var by [24]int // days of the month on which the hour is enough
	bright := 0
	for d := days[0]; d < days[1]; d++ {
		any := false
		for h := range by {
			if enough(24*d + h) {
				by[h]++
				any = true
			}
		}
		if any {
			bright++
		}
	}
	n := days[1] - days[0]
	from, to := longest(func(h int) bool { return 2*by[h] >= n })
	say := ""
	if from == to {
		if from, to = longest(func(h int) bool { return by[h] > 0 }); from == to {
			return "No hour of this month leaves sun enough to lift."
		}
		say = fmt.Sprintf("On bright days, %d of %d in this month: ", bright, n)
	}
	return say + fmt.Sprintf("Lift between %s and %s", page.Clock(float64(from)), page.Clock(float64(to))) + liftAndRest(s) + "."
}

// sunLifts tells whether an hour of the year leaves the hoist what it needs to move, after all that is wanted; with the
// panel straight on the motor, whether it turns.
func sunLifts(g model.Ground, r model.VariantResult, s model.StoreResult) func(hour int) bool {
	if own := s.Reservoir.Own; own != nil {
		return func(h int) bool { return own.Power[h] > 0 }
	}
	standing := float64(r.StandingPower - g.Load.StandingPower) // the variant's, beside the project's
	return func(h int) bool {
		return r.Bus.Power[h]-g.Load.Standing[h]-standing-g.Load.Essential[h]-g.Load.Nice[h] >= float64(s.Reservoir.FillThreshold)
	}
}

// liftAndRest is how long a lift takes and how long the motor rests after it.
func liftAndRest(s model.StoreResult) string {
	say, d := "", model.HoistOf(s).Drive
	if d.Raising.Time > 0 {
		say = ", " + form.Lasting(d.Raising.Time)
		if !s.Reservoir.FillStep || s.Reservoir.Own != nil {
			say += " in full sun"
		}
	}
	switch rest, known := d.HeatUp.Rest.Value(); {
	case d.HeatUp.TooHot:
		say += ". One whole lift makes the motor too hot: stop halfway and wait until it is cool"
	case !d.HeatUp.Known:
		say += ". How long the motor must rest after it is not known: wait until it is cool to touch"
	case known && rest > 0:
		say += ", then wait " + form.Lasting(rest)
	}
	return say
}

// daysOf are the first day of a month and the first of the next, counted from the first of January.
func daysOf(month int) (days [2]int) {
	for _, n := range page.MonthDays[:month] {
		days[0] += n
	}
	days[1] = days[0] + page.MonthDays[month]
	return days
}

// lowerWhen is sunset in the middle of the month, to the next ten minutes.
func lowerWhen(g model.Ground, month int) string {
	day := daysOf(month)[0] + 14
	half := g.Sky.Geometry.Sunset[day] // hour angle, 0 … π
	if half <= 0 || half >= math.Pi {
		return "Lower when you need light."
	}
	return "Lower after sunset, about " + page.Clock(math.Ceil((g.Sky.Geometry.Noon[day]+half*12/math.Pi)*6)/6) + ". Times are standard time."
}

// longest is the longest run of hours of a day that pass, from its first to the end of its last.
func longest(pass func(hour int) bool) (from, to int) {
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
