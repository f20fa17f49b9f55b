package lift

import (
	"math"
	"testing"
)

// The screen says of 20,000 random hoists what Compute says: whether the motor stalls and whether the mass stays stuck.
func TestScreenIsCompute(t *testing.T) {
	seen := map[string]int{}
	for seed := range uint64(20000) {
		h := newDice(seed).hoist()
		d := Compute(h)
		hung, okH := HungOf(h)
		train, okT := GearedOf(h)
		motor, okM := TurnedOf(h)
		if !okH || !okT || !okM || h.Travel.Val <= 0 {
			continue
		}
		s := Screen(hung, train, motor)
		if d.Raising.Known && s.Stalls != d.Raising.Stalls {
			t.Errorf("seed %d: stalls %v, Compute says %v", seed, s.Stalls, d.Raising.Stalls)
		}
		if d.Lowering.Known && s.Stuck != (d.Lowering.RunsBack == "no") {
			t.Errorf("seed %d: stuck %v, Compute says %q", seed, s.Stuck, d.Lowering.RunsBack)
		}
		switch {
		case d.Raising.Known && s.Stalls:
			seen["stalls"]++
		case d.Lowering.Known && s.Stuck:
			seen["stuck"]++
		case d.Raising.Known && d.Lowering.Known:
			seen["moves"]++
			if !(s.Back > 0 && s.Back < 1) || math.IsNaN(s.Back) {
				t.Errorf("seed %d: gives %v back", seed, s.Back)
			}
		}
	}
	if t.Logf("%v", seen); seen["stalls"] < 200 || seen["stuck"] < 200 || seen["moves"] < 200 {
		t.Errorf("only %v", seen)
	}
}

func BenchmarkScreen(b *testing.B) {
	h := newDice(1).hoist()
	hung, _ := HungOf(h)
	train, _ := GearedOf(h)
	motor, _ := TurnedOf(h)
	for b.Loop() {
		Screen(hung, train, motor)
	}
}
