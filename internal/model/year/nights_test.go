package year

import "testing"

// Nights are counted by their hours: what is under nothing or no number of a night is none, hours past the list are none, and a night that is
// named and has no hour does not count. Each has the joules that its own hours want, essential ones apart.
func TestNightsOfADemand(t *testing.T) {
	of := func(night []int) *Demand {
		return NewDemand(6, []float64{1, 1, 1, 1, 1, 1}, []float64{2, 2, 2, 2, 2, 2}, []float64{0, 0, 4, 4, 0, 0}, night)
	}
	d := of([]int{-1, 0, 0, 2, Hours, Hours - 1})
	if d.counted != 3 || len(d.wanted) != Hours || d.isNight[1] || !d.isNight[0] || !d.isNight[2] || !d.isNight[Hours-1] {
		t.Fatalf("%d nights, %d places", d.counted, len(d.wanted))
	}
	for k, want := range map[int][2]float64{0: {(2 + 6) * 3600, 4 * 3600}, 1: {}, 2: {6 * 3600, 2 * 3600}, Hours - 1: {2 * 3600, 2 * 3600}} {
		if d.wanted[k] != want[0] || d.wantedEssential[k] != want[1] {
			t.Errorf("night %d wants %g J, %g essential, want %v", k, d.wanted[k], d.wantedEssential[k], want)
		}
	}
	for h, want := range []int{-1, 0, 0, 2, -1, Hours - 1} {
		if d.night[h] != want {
			t.Errorf("hour %d is of night %d", h, d.night[h])
		}
	}
	if d := of([]int{5, -3}); d.counted != 1 || d.night[2] != -1 || d.night[1] != -1 || len(d.wanted) != 6 {
		t.Errorf("%d nights of %v", d.counted, d.night)
	}
	if d := of(nil); d.counted != 0 || d.night != nil || d.wanted != nil {
		t.Errorf("no nights: %d of %v", d.counted, d.night)
	}
	if got := of(nil).appliances; got != (12+8)*3600 {
		t.Errorf("the appliances want %g J", got)
	}
}
