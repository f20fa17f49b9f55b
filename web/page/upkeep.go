package page

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/ready"
	"duskweight/internal/model/reason"
)

// NextLook says when the load path of a hoist is to be looked at again, as it is on that day; a day that is not known compares
// with nothing. Nothing is said where no look is on record.
func NextLook(h lift.Hoist, on reason.Day) (PairView, bool) {
	due := ready.NextLook(h.Trials)
	row := PairView{Name: "Next look at rope, pins and brake", Value: DayText(due)}
	if on.After(due) {
		row.Value = "due since " + DayText(due) + ": look before you lift"
	}
	return row, due != ""
}
