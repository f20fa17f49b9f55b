package web

import (
	"fmt"
	"math"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// todayOf says what to do on a usual day of a month (0 is January) with the first hoist of a variant: when to lift, how
// long to wait, when to let it down, when to stop. Nothing where there is no hoist.
func todayOf(g model.Ground, r model.VariantResult, month int, sys unit.System) []string {
	for _, s := range r.Stores {
		if s.Hoist == nil {
			continue
		}
		switch {
		case s.Hoist.Ready == "no" && len(s.Hoist.Reasons) > 0:
			return []string{"Do not lift. " + sentence(s.Hoist.Reasons[0])}
		case s.Hoist.Ready == "no":
			return []string{"Do not lift."}
		case s.Reservoir == nil:
			return nil
		}
		var say []string
		if s.Hoist.Ready != "yes" {
			say = []string{"Not before every check of the plan sheet holds. Then:"}
		}
		return append(say, liftWhen(r, s, month, sys), lowerWhen(g, month), "Stop if the base moves, the motor is too hot to touch, or wind moves the mass.")
	}
	return nil
}

// liftWhen is the time of day in which the sun left over is enough to lift, and how a lift goes.
func liftWhen(r model.VariantResult, s model.StoreResult, month int, sys unit.System) string {
	d, need := s.Hoist.Drive, s.Reservoir.FillMax // what a lift takes at full speed; never less than the threshold
	if s.Reservoir.Own != nil {
		need = 0
	}
	from, to := longest(func(h int) bool {
		c := r.Year.Typical[month][h]
		if s.Reservoir.Own != nil {
			return c.Own > 0
		}
		return c.Bus-c.Load >= need
	})
	if from == to {
		if s.Reservoir.Own != nil {
			return "On a usual day the panel does not lift it."
		}
		return "No hour of a usual day leaves the " + unit.Powers.Format(float64(need), sys) + " that a lift takes. Lift on bright days, when that much is left over."
	}
	say := fmt.Sprintf("Lift between %s and %s", clock(float64(from)), clock(float64(to)))
	if s.Reservoir.Own == nil && d.Raising.Time > 0 {
		say += ", " + model.Lasting(d.Raising.Time)
	}
	switch rest, known := d.HeatUp.Rest.Value(); {
	case d.HeatUp.TooHot:
		say += ". One lift already makes the motor too hot: stop halfway and wait"
	case !d.HeatUp.Known:
		say += ". How long the motor must rest after it is not known: touch it, and wait until it is cool"
	case known && rest > 0:
		say += ", then wait " + model.Lasting(rest)
	}
	return say + "."
}

// lowerWhen is sunset in the middle of the month, to the next ten minutes.
func lowerWhen(g model.Ground, month int) string {
	day := 14
	for _, n := range monthDays[:month] {
		day += n
	}
	half := g.Sky.Geometry.Sunset[day] // hour angle, 0 … π
	if half <= 0 || half >= math.Pi {
		return "Lower when you need light."
	}
	return "Lower after " + clock(math.Ceil((g.Sky.Geometry.Noon[day]+half*12/math.Pi)*6)/6) + ", when the sun is down. Times are standard time."
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
