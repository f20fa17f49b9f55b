package year

import "testing"

// Hours that belong to no night are those without a number, with one below zero, and with one that a year cannot have: as many
// as it has hours. A night is counted once however many hours it has.
func TestNightsThatCount(t *testing.T) {
	ones := make([]float64, 8)
	for h := range ones {
		ones[h] = 1
	}
	d := NewDemand(8, nil, ones, nil, []int{-1, 0, 0, 2, Hours, Hours - 1, Hours + 1})
	if d.counted != 3 {
		t.Errorf("%d nights count, want 0, 2 and the last that a year can have", d.counted)
	}
	want := []int{-1, 0, 0, 2, -1, Hours - 1, -1, -1}
	for h, k := range d.night {
		if k != want[h] {
			t.Errorf("hour %d is of night %d, want %d", h, k, want[h])
		}
	}
	for k, joules := range map[int]float64{0: 7200, 1: 0, 2: 3600, Hours - 1: 3600} {
		if d.wanted[k] != joules || d.isNight[k] != (joules > 0) {
			t.Errorf("night %d wants %g J, want %g", k, d.wanted[k], joules)
		}
	}
}
