package page

import (
	"duskweight/internal/model"
	"duskweight/internal/model/lift/ready"
	"duskweight/internal/model/reason"
)

// NextLook says when the load path of a hoist is to be looked at again, as it is on that day; a day that is not known compares
// with nothing. Nothing is said of a hoist that may not be hung and on which nobody has looked at anything yet.
func NextLook(h *model.HoistResult, on reason.Day) (PairView, bool) {
	row := PairView{Name: "Next look at rope, pins and brake"}
	switch due := ready.NextLook(h.Design.Trials); {
	case due == "" && h.Ready.Worse(reason.Proven):
		return row, false
	case due == "":
		row.Value = "before the first lift; no look is recorded"
	case on.After(due):
		row.Value = "due since " + DayText(due) + ": look before you lift"
	default:
		row.Value = DayText(due)
	}
	return row, true
}
