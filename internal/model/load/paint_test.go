package load

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"duskweight/internal/model/unit"
)

// winterDay is a day on which the sun is down until 8 and from 17.
func winterDay() Day {
	down, noon := make([]bool, HoursInYear), make([]unit.Duration, DaysInYear)
	for h := range down {
		down[h] = h%24 < 8 || h%24 >= 17
	}
	for d := range noon {
		noon[d] = 12 * unit.Hour
	}
	return DayOf(Winter, down, noon)
}

// hoursOf puts on the clock hours from a to b, over midnight where b is less.
func hoursOf(ab ...int) (on [24]bool) {
	for i := 0; i+1 < len(ab); i += 2 {
		for h := ab[i]; h != ab[i+1]; h = (h + 1) % 24 {
			on[h] = true
		}
	}
	return on
}

// at is a known time of the clock, or so long.
func at(hours float64) unit.Known[unit.Duration] { return unit.Of(unit.Duration(hours * 3600)) }

// told is the time of an appliance in short.
func told(a Appliance) string {
	say := ""
	for _, one := range []struct {
		name string
		v    unit.Known[unit.Duration]
	}{{"from", a.From}, {"to", a.To}, {"dusk+", a.FromDusk}} {
		if one.v.Is {
			say += fmt.Sprintf("%s %g ", one.name, float64(one.v.Val)/3600)
		}
	}
	return say + string(a.AfterDusk)
}

// What painting makes of the hours of an appliance, by hand, on a day with dusk at 17.
func TestPaint(t *testing.T) {
	night := winterDay()
	none := unit.Known[unit.Duration]{}
	for _, c := range []struct {
		name           string
		from, to, dusk unit.Known[unit.Duration]
		after          unit.Answer
		hours          [24]bool
		want           string
		more           int
	}{
		{"nothing known, an evening", none, none, none, "", hoursOf(18, 21), "from 18 to 21 ", 0},
		{"nothing known, from dusk", none, none, none, "", hoursOf(17, 22), "from 17 to 22 yes", 0},
		{"over midnight", none, none, none, "", hoursOf(22, 2), "from 22 to 2 ", 0},
		{"to midnight", none, none, none, "", hoursOf(20, 0), "from 20 to 0 ", 0},
		{"through dawn is no hour of the dark alone", none, none, none, "", hoursOf(17, 9), "from 17 to 9 ", 0},
		{"all day", at(18), at(21), none, unit.Yes, [24]bool{true, true, true, true, true, true, true, true, true, true, true, true, true, true, true, true, true, true, true, true, true, true, true, true}, "from 0 to 0 no", 0},
		{"never", at(18), at(21), none, unit.Yes, [24]bool{}, "no", 0},
		{"the end keeps its minutes", at(18), at(21.5), none, "", hoursOf(16, 22), "from 16 to 21.5 ", 0},
		{"the beginning keeps its minutes", at(18.25), at(21), none, "", hoursOf(18, 23), "from 18.25 to 23 ", 0},
		{"a part of an hour that is pressed is whole", at(18), at(21.5), none, "", hoursOf(18, 21), "from 18 to 22 ", 0},
		{"two hours off are off", at(18), at(21.5), none, "", hoursOf(18, 20), "from 18 to 20 ", 0},
		{"a few minutes become an hour", at(7), at(7.05), none, "", [24]bool{}, "from 7 to 8 ", 0},
		{"longer from dusk", none, none, at(5), unit.Yes, hoursOf(17, 23), "dusk+ 6 yes", 0},
		{"a half hour from dusk made whole", none, none, at(4.5), unit.Yes, hoursOf(17, 21), "dusk+ 5 yes", 0},
		{"from dusk, begun later", none, none, at(4.5), unit.Yes, hoursOf(19, 22), "from 19 to 21.5 yes", 0},
		{"while it is dark, a later end", at(12), at(22.5), none, unit.Yes, hoursOf(17, 0), "from 12 to 0 yes", 0},
		{"while it is dark, begun by day", at(12), at(22), none, unit.Yes, hoursOf(15, 22), "from 15 to 22 no", 0},
		{"the whole night, ended at 6", none, none, none, unit.Yes, hoursOf(17, 6), "from 17 to 6 yes", 0},
		{"a second run", at(18), at(21), none, "", hoursOf(18, 21, 6, 8), "from 18 to 21 ", 1},
		{"a hole leaves the larger piece", at(18), at(22), none, "", hoursOf(18, 19, 20, 22), "from 20 to 22 ", 1},
	} {
		a, more := night.Paint(Appliance{From: c.from, To: c.to, FromDusk: c.dusk, AfterDusk: c.after}, c.hours)
		if got := told(a); got != c.want || len(more) != c.more {
			t.Errorf("%s: %q and %d more, want %q and %d", c.name, got, len(more), c.want, c.more)
		}
	}
}

// What is painted is what is on: for any hours, those that an appliance with all the further runs is on in are the painted ones;
// and painting what is on changes nothing.
func TestPaintedIsOn(t *testing.T) {
	night, r := winterDay(), rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		a := Appliance{}
		if r.IntN(2) == 0 {
			a = Appliance{From: at(float64(r.IntN(96)) / 4), To: at(float64(r.IntN(96)) / 4), AfterDusk: []unit.Answer{"", unit.Yes, unit.No}[r.IntN(3)]}
		}
		var hours [24]bool
		for h := range hours {
			hours[h] = r.IntN(3) > 0
		}
		painted, more := night.Paint(a, hours)
		got, _ := night.On(painted)
		for _, run := range more {
			on, known := night.On(night.With(a, run))
			for h := range on {
				got[h] += on[h]
			}
			if !known {
				t.Fatal("a further run has no time")
			}
		}
		changed := 0
		was, _ := night.On(a)
		for h := range hours {
			if hours[h] != (was[h] > 0) {
				changed++
			}
		}
		for h, on := range hours {
			if changed > 1 && on != (got[h] > 0) {
				t.Fatalf("%s painted %v: at %d on is %v, in %s and %v", told(a), hours, h, got[h], told(painted), more)
			}
		}
		for h := range hours {
			hours[h] = got[h] > 0 && len(more) == 0
		}
		if on, known := night.On(painted); known && len(more) == 0 {
			if again, _ := night.Paint(painted, hours); told(again) != told(painted) {
				t.Fatalf("painting what is on (%v) makes %q of %q", on, told(again), told(painted))
			}
		}
	}
}

// Without a place what waits for dusk cannot be shown, and what keeps to the clock can.
func TestNoDuskWithoutAPlace(t *testing.T) {
	day := Day{}
	if _, known := day.On(Appliance{FromDusk: at(4), AfterDusk: unit.Yes}); known {
		t.Error("from dusk is shown without a sun")
	}
	on, known := day.On(Appliance{From: at(23), To: at(1)})
	if !known || on[23] != 1 || on[0] != 1 || on[1] != 0 {
		t.Errorf("from 23 to 1: %v, %v", on, known)
	}
	if a, _ := day.Paint(Appliance{}, hoursOf(17, 19)); told(a) != "from 17 to 19 " {
		t.Errorf("painted: %q", told(a))
	}
}
