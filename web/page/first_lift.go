package page

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// firstLift is how high the mass hangs in the first load step: it hangs free, and falls no further than that. Our own
// judgement.
const firstLift = 100 * unit.Millimetre

// FirstLift prints the height of the first load step, a round one in either system: 100 mm or 4 in.
func FirstLift(sys unit.System) string { return say.Size(firstLift).To(1).In(sys) }
