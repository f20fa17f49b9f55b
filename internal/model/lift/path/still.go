package path

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Still is what a load test of one part is measured against: the greatest load on it at rest, the factor for jerks, and the
// largest event as a multiple of the load at rest.
type Still struct {
	Torque unit.Torque // at the drum
	Force  unit.Force  // on the part
	Weight unit.Force  // of the mass
	Jerks  unit.Ratio
	Event  unit.Ratio // 0 where nothing is known to go wrong
}

// StillOf works out what stands on a part, by the id of its check, while the mass hangs still; false where it is not known.
func StillOf(id string, h lift.Hoist, d lift.Drive) (Still, bool) {
	t := newLoads(h, d)
	q, ok, _ := t.torque()
	if !ok || !t.known() || t.m <= 0 || len(t.missing) > 0 {
		return Still{}, false
	}
	s := Still{Torque: unit.Torque(q), Weight: unit.Force(t.weight()), Jerks: unit.Ratio(t.phi), Force: unit.Force(t.on(id))}
	events, miss := t.events()
	for _, e := range events {
		s.Event = unit.Ratio(math.Max(float64(s.Event), e.times))
	}
	return s, len(miss) == 0
}

// on is the greatest force on a part at rest, N; parts that a torque loads and parts of the base take the pull of the rope.
func (t *loads) on(id string) float64 {
	switch id {
	case "container":
		return t.weight()
	case "head_sheave", "hanger":
		if t.k >= 1 {
			return t.hook(t.k)
		}
	case "redirect_sheave":
		f := 0.0
		for j := 1; j <= t.n+t.k-1; j++ {
			f = math.Max(f, t.hook(j))
		}
		return f
	case "beam", "post":
		f, _ := t.beamForce()
		return f + t.beamWeight()
	}
	return t.greatest(0)
}
