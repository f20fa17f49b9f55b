package page

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// FirstLiftMark is how high the mass hangs in the first load step, for a constant text (see say.Marked): it hangs free, and
// falls no further than that; a round figure in either system, 100 mm or 4 in. Our own judgement.
const FirstLiftMark = "{100 mm:1}"

// FirstLift prints the height of the first load step.
func FirstLift(sys unit.System) string { return say.Marked(FirstLiftMark).In(sys) }
