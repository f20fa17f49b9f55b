package reason

import (
	"slices"
	"testing"

	"duskweight/internal/model/unit"
)

// The worst word of several is the worst by no, not_known, proven, yes.
func TestWorst(t *testing.T) {
	order := []Word{Yes, Proven, NotKnown, No}
	for i, a := range order {
		for j, b := range order {
			if got := Worst(a, b); got != order[max(i, j)] {
				t.Errorf("worst of %s and %s is %s", a, b, got)
			}
		}
	}
	if Worst() != Yes {
		t.Error("nothing against it is yes")
	}
}

// What forbids the first step stands first, then the words from the worst, what gives way by use, then the rule book.
func TestSort(t *testing.T) {
	use := func(x float64) unit.Known[unit.Ratio] { return unit.Of(unit.Ratio(x)) }
	rs := []Reason{{ID: "owner", Word: NotKnown}, {ID: "holds_count", Word: No}, {ID: "rope", Word: No, Use: use(1.2)},
		{ID: "coupling", Word: Proven}, {ID: "knot", Word: No, Use: use(2)}, {ID: "helper", Word: NotKnown}, {ID: "shock", Word: NotKnown, Forbids: true},
		{ID: "beam", Word: NotKnown}, {ID: "races", Word: No}}
	Sort(rs)
	var got []string
	for _, r := range rs {
		got = append(got, r.ID)
	}
	if want := []string{"shock", "knot", "rope", "races", "holds_count", "beam", "owner", "helper", "coupling"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// A rule over two open values: 1 to 3 and 0 to 2. Their sum lies between 1 and 5.
func TestCorners(t *testing.T) {
	ends := []Ends{Between(unit.Known[unit.Length]{}, 1, 3), {0, 2}, Between(unit.Of[unit.Length](1), 0, 9)}
	over := func(most float64) Word {
		return Corners(ends, func(at []float64) bool { return at[0]+at[1]+at[2]-1 > most })
	}
	for most, want := range map[float64]Word{0.9: No, 1: NotKnown, 4.9: NotKnown, 5: Yes} {
		if got := over(most); got != want {
			t.Errorf("over %g: %s, want %s", most, got, want)
		}
	}
	four := []Ends{{0, 1}, {0, 1}, {0, 1}, {0, 1}}
	if got := Corners(four, func([]float64) bool { return false }); got != NotKnown {
		t.Errorf("four open values: %s", got)
	}
	if got := Corners(four[:3], func([]float64) bool { return false }); got != Yes {
		t.Errorf("three open values, never bad: %s", got)
	}
}

// A month later is the same day of the next month; what is no day is refused.
func TestDay(t *testing.T) {
	d, ok := DayOf("2026-11-28")
	if !ok || d.Months(12) != "2027-11-28" || d.Months(3) != "2027-02-28" || !d.After("2026-11-27") || d.After("2026-11-28") || d.After("") {
		t.Errorf("%q", d)
	}
	for _, bad := range []string{"", "28.11.2026", "2026-02-30", "2026-1-2"} {
		if _, ok := DayOf(bad); ok {
			t.Errorf("%q is taken for a day", bad)
		}
	}
}
