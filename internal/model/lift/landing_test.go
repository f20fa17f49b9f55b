package lift

import (
	"testing"

	"duskweight/internal/model/unit"
)

// A landing at more than half a metre a second is said to be hard, and from what height a free fall would end as fast:
// v²/2g by the law of falling bodies. Wheels of many sizes bring the worked hoist down slower and faster.
func TestHardLanding(t *testing.T) {
	soft, hard := 0, 0
	for diameter := 0.02; diameter < 1.5; diameter *= 1.2 {
		h := worked()
		h.Drum.Diameter = unit.Of(unit.Length(diameter))
		d := Compute(h)
		if d.Lowering.Fastest() <= 0 {
			continue
		}
		v := float64(d.Lowering.Fastest())
		if said := mentions(d, "lands as if dropped from"); v > 0.502 && !said || v < 0.498 && said {
			t.Errorf("down at %v m/s, said to be hard: %v", v, said)
		} else if said {
			hard++
		} else {
			soft++
		}
	}
	if soft < 3 || hard < 3 {
		t.Errorf("only %d soft and %d hard landings tried", soft, hard)
	}
}
