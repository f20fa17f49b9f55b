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

// Nights by hand, each of 100 J: full with 1 J missed, not with 1.1; for the most part there with 10 J missed, dark with 90 J. A
// night that wants nothing is full and not dark. The share is what was there of all that was wanted.
func TestNightsByWhatTheyMiss(t *testing.T) {
	for _, c := range []struct {
		wanted, missed              float64
		full, most, dark, essential int
	}{{100, 0, 1, 1, 0, 1}, {100, 1, 1, 1, 0, 1}, {100, 1.1, 0, 1, 0, 0}, {100, 10, 0, 1, 0, 0}, {100, 10.1, 0, 0, 0, 0}, {100, 89.9, 0, 0, 0, 0}, {100, 90, 0, 0, 1, 0}, {100, 100, 0, 0, 1, 0}, {0, 0, 1, 1, 0, 1}} {
		n := newTally()
		n.add(c.wanted, c.missed, c.wanted/2, c.missed/2)
		if n.Nights != 1 || n.NightsFull != c.full || n.NightsMost != c.most || n.NightsDark != c.dark || n.NightsEssentialFull != c.essential {
			t.Errorf("%g of %g missed: %+v", c.missed, c.wanted, n.Tally)
		}
	}
	n := newTally()
	if n.NightShare != 1 {
		t.Errorf("no night: %g", n.NightShare)
	}
	n.add(100, 50, 0, 0)
	n.add(300, 50, 0, 0)
	if n.NightShare != 0.75 {
		t.Errorf("100 of 400 J missed: %g", n.NightShare)
	}
}

// The longest hours without: by hand, over the turn of the year too; less than a millionth of what was wanted is a trace.
func TestLongestWithout(t *testing.T) {
	watts := []float64{1, 1, 1, 1, 1, 1, 1, 1}
	for _, c := range []struct {
		missing []float64
		want    Span
	}{
		{[]float64{0, 0, 0, 0, 0, 0, 0, 0}, Span{}},
		{[]float64{0, 5, 5, 0, 0, 7, 0, 0}, Span{From: 1, Hours: 2, Unmet: 10}},
		{[]float64{3, 0, 5, 5, 0, 0, 2, 2}, Span{From: 6, Hours: 3, Unmet: 7}},
		{[]float64{1, 1, 1, 1, 1, 1, 1, 1}, Span{From: 0, Hours: 8, Unmet: 8}},
		{[]float64{0, 0.0036, 0.0037, 0, 0, 0, 0, 0}, Span{From: 2, Hours: 1, Unmet: 0.0037}}, // 1 W for an hour are 3600 J
	} {
		if got := longest(c.missing, watts); got != c.want {
			t.Errorf("%v: %+v, want %+v", c.missing, got, c.want)
		}
	}
	for _, c := range []struct {
		unmet []float64
		width int
		want  Span
	}{
		{[]float64{0, 0, 0, 0}, 2, Span{}}, {[]float64{1, 5, 2, 0}, 2, Span{From: 1, Hours: 2, Unmet: 7}}, {[]float64{6, 0, 0, 5}, 2, Span{From: 3, Hours: 2, Unmet: 11}}, {[]float64{1, 2, 3}, 9, Span{From: 0, Hours: 3, Unmet: 6}},
		{[]float64{4, 4, 0, 8}, 1, Span{From: 3, Hours: 1, Unmet: 8}}, {[]float64{3, 3, 3, 3}, 2, Span{From: 0, Hours: 2, Unmet: 6}},
	} {
		if got := worst(c.unmet, c.width); got != c.want {
			t.Errorf("%v, %d wide: %+v, want %+v", c.unmet, c.width, got, c.want)
		}
	}
}
