package hoist

import (
	"fmt"
	"math"
	"time"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/web/form"
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
		say = []string{"Do this only when every part of the plan sheet is strong enough:"}
	}
	return append(say, liftWhen(g, r, s, time.Month(month+1)), lowerWhen(g, time.Month(month+1)), "Stop if the base moves, the motor is too hot to touch, or wind moves the mass.")
}

// liftWhen is the time of day in which the sun lifts, and how a lift goes: the hours in which it does so on at least half
// of the days of the month, or else those of the bright days.
func liftWhen(g model.Ground, r model.VariantResult, s model.StoreResult, month time.Month) string {
	l, say := g.LiftingHours(r, s, month), ""
	switch {
	case l.From == l.To:
		return "No hour of this month leaves sun enough to lift."
	case !l.Usual:
		say = fmt.Sprintf("On bright days, %d of %d in this month: ", l.Bright, l.Days)
	}
	return say + fmt.Sprintf("Lift between %s and %s", page.Clock(float64(l.From)), page.Clock(float64(l.To))) + liftAndRest(s) + "."
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

// lowerWhen is sunset in the middle of the month, to the next ten minutes.
func lowerWhen(g model.Ground, month time.Month) string {
	set, ok := g.Sunset(month)
	if !ok {
		return "Lower when you need light."
	}
	return "Lower after sunset, about " + page.Clock(math.Ceil(float64(set)/600)/6) + ". Times are standard time."
}
