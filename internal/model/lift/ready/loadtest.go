package ready

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
)

// Test is what a load test must reach of a part that nobody rates, if it is made of that: a torque at the drum for what the
// drum turns, a force on the part for all else.
type Test struct {
	Part   lift.Proved
	MadeOf lift.ProofMaterial
	Torque unit.Known[unit.Torque]
	Force  unit.Known[unit.Force]
	Held   unit.Duration // how long, at the least
	Months int           // for how long it counts,
	Lifts  unit.Count    // and for how many lifts
}

// proofMaterials are what a part may be made of whose rating a test can stand for.
var proofMaterials = []lift.ProofMaterial{lift.MadeMetal, lift.MadeWood, lift.MadePlastic, lift.MadeGround}

// Tests are the load tests that would clear a part, by the id of its check, one for each material; none where no test may, or
// where the load on the part is not known.
func (c Case) Tests(id string) []Test {
	if !provable(c.Hoist, id) {
		return nil
	}
	var out []Test
	for _, of := range proofMaterials {
		factor, held, months, lifts, ok := ask(of, id)
		if !ok {
			continue
		}
		t := Test{Part: lift.Proved(id), MadeOf: of, Held: held, Months: months, Lifts: lifts}
		if t.load(c, factor) {
			out = append(out, t)
		}
	}
	return out
}

// load sets what must be put on the part; false where that is not known.
func (t *Test) load(c Case, factor float64) bool {
	id := string(t.Part)
	if id == "bracing" {
		pull, ok := c.sidePull()
		t.Force = unit.Of(pull)
		return ok
	}
	s, ok := path.StillOf(id, c.Heavy.Hoist, c.Heavy.Drive)
	if !ok {
		return false
	}
	if turned(id) {
		t.Torque = unit.Of(unit.Torque(testTimes(factor, s) * float64(s.Torque)))
	} else {
		t.Force = unit.Of(unit.Force(testTimes(factor, s) * float64(s.Force)))
	}
	return true
}

// testTimes is how many times the load at rest a test must put on a part: the larger of the factor of its material times the
// jerks, and 1.1 times the largest event.
func testTimes(factor float64, s path.Still) float64 {
	return math.Max(factor*float64(s.Jerks), 1.1*float64(s.Event))
}
