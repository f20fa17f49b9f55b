package year

import (
	"math/rand/v2"
	"testing"

	"duskweight/internal/model/reservoir"
)

// Without the moment at which it is full a store comes to the same states, hour by hour, as with it, to the last bit: the
// moment only says how long it was full. Energy that enters over a straight fall is (p0 − p1·x)·(1 − e^(−βt))/p1 up to what
// finds room, whenever the room ends (TestFallingAgainstSmallSteps holds the sizes).
func TestUntimedIsTimed(t *testing.T) {
	tapers := 0
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 41))
		in := anyYear(r, 24*(2+r.IntN(30)), 0)
		s := plain(r)
		s.FillLoss, s.AcceptFrom, s.AcceptEnd = 0, 0.1+0.8*r.Float64(), 0.5*r.Float64()
		if r.IntN(2) == 0 {
			s.Leak = 0
		}
		if r.IntN(3) == 0 {
			s.NoFill, s.Locked = make([]bool, len(in.Bus)), make([]float64, len(in.Bus))
			for h := range in.Bus {
				s.NoFill[h], s.Locked[h] = r.IntN(5) == 0, 0.3*r.Float64()
			}
		}
		d := NewDemand(len(in.Bus), in.Standing, in.Essential, in.Nice, in.Night)
		var timed, untimed Workspace
		for _, w := range []*Workspace{&timed, &untimed} {
			standing := w.ready([]reservoir.Reservoir{s}, len(in.Bus))
			if w == &untimed {
				w.stores[0].untimed = w.stores[0].timeless()
			}
			w.settle(in.Bus, d, standing, nil)
		}
		a, b := timed.stores[0], untimed.stores[0]
		if b.untimed && a.sum.full > 0 {
			tapers++
		}
		a.sum.full, b.sum.full = 0, 0
		if a.x != b.x || a.sum != b.sum {
			t.Fatalf("seed %d: timed %v %+v, untimed %v %+v", seed, a.x, a.sum, b.x, b.sum)
		}
		for h := range timed.unmet {
			if timed.unmet[h] != untimed.unmet[h] {
				t.Fatalf("seed %d, hour %d: %v J missing timed, %v untimed", seed, h, timed.unmet[h], untimed.unmet[h])
			}
		}
	}
	if tapers < 100 {
		t.Fatalf("only %d of 400 stores came to full on a fall", tapers)
	}
}
