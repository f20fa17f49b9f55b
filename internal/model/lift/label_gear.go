package lift

import (
	"math"

	"duskweight/internal/model/unit"
)

// sameRatio is how far the label's gearbox may be off the first stages (our own judgement).
const sameRatio = 0.05

// LabelGear is the gearbox of the motor's label, where it is no part of the train; false where it is, or where there is none.
// The motor's constants are those of the rotor then, and without the gearbox it lifts far less than it will.
func LabelGear(h Hoist, stages []StageResult) (unit.Ratio, bool) {
	g, ok := h.Machine.SheetGear.Value()
	if !ok || g <= 1 {
		return 0, false
	}
	product := 1.0
	for i := range max(len(stages), len(h.Train.Stages)) {
		switch {
		case i < len(stages):
			product *= float64(stages[i].Ratio)
		case h.Train.Stages[i].Ratio.Is: // the train is not worked out yet
			product *= float64(h.Train.Stages[i].Ratio.Val)
		default:
			return 0, false // it may be this one
		}
		if math.Abs(product-float64(g)) <= sameRatio*float64(g) {
			return 0, false
		}
	}
	return g, true
}
