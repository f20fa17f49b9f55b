package path

import (
	"fmt"

	"duskweight/internal/model/lift"
)

// Checks follows the load from the mass to the ground and gives one line for each thing that may break, in the order
// of the closed list; for several pulleys, stages or posts one line each under the same id. A check that does not
// apply to the design is left out; one with a missing input is not known, unless what is known is already enough to
// say that it gives way.
func Checks(h lift.Hoist, d lift.Drive) []Check {
	t := newLoads(h, d)
	var out []Check
	for _, f := range []func(*loads) []*Check{
		ropeChecks, knotChecks, headSheaveChecks, hangerChecks, beamChecks, postChecks, containerChecks, redirectChecks,
		baseUpliftChecks, baseSlidingChecks, baseOverturningChecks, baseBoardChecks, groundChecks,
		shaftChecks, crossPinChecks, setScrewChecks, couplingChecks, hubChecks, drumCapacityChecks, deadWrapsChecks,
		fleetAngleChecks, bendRatioChecks, gearToothChecks, caseFastenerChecks, holdsChecks, stopsChecks,
		overhoistChecks, slackChecks, brakeCatchChecks,
	} {
		for _, c := range f(t) {
			out = append(out, *c)
		}
	}
	return afterShock(h.Trials.Seen(), afterTests(h, d, out))
}

// rowOf is where a hoist names row i of a list.
func rowOf(list string, i int) string { return fmt.Sprintf("%s[%d]", list, i) }

// at is the path of a field of the i-th of a list: "train.stages[1].ratio".
func at(list string, i int, field string) string { return fmt.Sprintf("%s[%d].%s", list, i, field) }
