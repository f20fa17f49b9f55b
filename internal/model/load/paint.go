package load

import (
	"math"

	"duskweight/internal/model/unit"
)

// Day is one day of the year by its clock hours, on which the hours of an appliance are shown and painted.
type Day struct {
	Dark  [24]bool
	dusk  [24]int // hours of darkness before each hour; -1 by day
	known bool    // there is a sun: the place is known
}

// DayOf is day d of the year, counted from 0; sunDown and solarNoon as in Hours.
func DayOf(d int, sunDown []bool, solarNoon []unit.Duration) Day {
	day, dusk := Day{known: true}, duskHours(sunDown, solarNoon)
	copy(day.Dark[:], sunDown[24*d:])
	copy(day.dusk[:], dusk[24*d:])
	return day
}

// Dusk is the clock hour in which the night begins; false on a day without dusk, or where the place is not known.
func (d Day) Dusk() (int, bool) {
	for h := range d.Dark {
		if d.known && d.dusk[h] == 0 {
			return h, true
		}
	}
	return 0, false
}

// On returns the share of each clock hour in which the time of an appliance runs, whatever the month. It is false where the
// time is not known, or depends on a sun that is not known.
func (d Day) On(a Appliance) (on [24]float64, known bool) {
	if !a.timeKnown() || !d.known && !a.MayWait() && (a.FromDusk.Is || a.AfterDusk == unit.Yes) {
		return on, false
	}
	for h := range on {
		on[h] = a.shareOn(h, d.Dark[:], d.dusk[:])
	}
	return on, true
}

// Run is so many clock hours on end, over midnight too.
type Run struct{ From, Hours int }

// last is the clock hour in which a run ends.
func (r Run) last() int { return (r.From + r.Hours - 1) % 24 }

// runsOf are the runs of some clock hours.
func runsOf(hours [24]bool) (runs []Run) {
	first := 0
	for first < 24 && hours[first] {
		first++
	}
	if first == 24 {
		return []Run{{0, 24}}
	}
	for k := range 24 {
		h := (first + k) % 24
		switch before := (h + 23) % 24; {
		case hours[h] && hours[before]:
			runs[len(runs)-1].Hours++
		case hours[h]:
			runs = append(runs, Run{h, 1})
		}
	}
	return runs
}

// Paint returns an appliance as it is on in these clock hours of the day, and the runs that one appliance cannot have besides.
// Of several runs it keeps that which was there before. An end that was not painted keeps its minutes; a part of an hour that
// alone was put off becomes a whole one.
func (d Day) Paint(a Appliance, hours [24]bool) (Appliance, []Run) {
	was, _ := d.On(a)
	whole, changed := -1, 0
	for h, on := range hours {
		if on != (was[h] > 0) {
			changed++
			if !on && was[h] < 1 {
				whole = h
			}
		}
	}
	if changed != 1 {
		whole = -1
	}
	if whole >= 0 {
		hours[whole] = true
	}
	runs := runsOf(hours)
	if len(runs) == 0 {
		return a.never(), nil
	}
	kept, most := 0, -1.0
	for i, r := range runs {
		same := 0.0
		for k := range r.Hours {
			same += was[(r.From+k)%24]
		}
		if same > most {
			kept, most = i, same
		}
	}
	more := append(append([]Run{}, runs[:kept]...), runs[kept+1:]...)
	return d.moved(a, was, runs[kept], whole), more
}

// never is an appliance whose time is not known.
func (a Appliance) never() Appliance {
	a.From, a.To, a.FromDusk, a.AfterDusk = unit.Known[unit.Duration]{}, unit.Known[unit.Duration]{}, unit.Known[unit.Duration]{}, unit.No
	return a
}

// With returns an appliance that is on in one run of whole hours, and only while it is dark where the run begins at dusk and
// ends before dawn.
func (d Day) With(a Appliance, r Run) Appliance { return d.moved(a.never(), [24]float64{}, r, -1) }

// moved gives an appliance a run in place of the shares of the hours that it had. The end that stays where it was keeps its
// time, but for the hour that is made whole.
func (d Day) moved(a Appliance, was [24]float64, r Run, whole int) Appliance {
	first, last := was[r.From] > 0 && was[(r.From+23)%24] == 0 && whole != r.From, was[r.last()] > 0 && was[(r.last()+1)%24] == 0 && whole != r.last()
	if r.Hours == 24 {
		a = a.never()
		a.From, a.To = unit.Of(unit.Duration(0)), unit.Of(unit.Duration(0))
		return a
	}
	dusk, falls := d.Dusk()
	if a.FromDusk.Is && falls && r.From == dusk {
		if !last {
			a.FromDusk = unit.Of(unit.Duration(r.Hours) * unit.Hour)
		}
		return a
	}
	dark := d.allDark(r)
	fromDusk := a.FromDusk
	a.FromDusk = unit.Known[unit.Duration]{}
	if !first || !a.From.Is {
		a.From = unit.Of(unit.Duration(r.From) * unit.Hour)
	}
	if !last || !a.To.Is {
		a.To = unit.Of(unit.Duration((r.From+r.Hours)%24) * unit.Hour)
		if end := float64(dusk)*3600 + float64(fromDusk.Val); last && fromDusk.Is {
			a.To = unit.Of(unit.Duration(math.Mod(end, 86400)))
		}
	}
	switch {
	case dark && falls && r.From == dusk && !first:
		a.AfterDusk = unit.Yes
	case !dark && a.AfterDusk == unit.Yes:
		a.AfterDusk = unit.No
	}
	if on, _ := d.On(a); (first || last) && runIn(on) != r { // the dark cut its hours, and does no longer
		return d.With(a, r)
	}
	return a
}

// runIn is the one run in which something is on; the zero run where there are several or none.
func runIn(on [24]float64) Run {
	var hours [24]bool
	for h, share := range on {
		hours[h] = share > 0
	}
	if runs := runsOf(hours); len(runs) == 1 {
		return runs[0]
	}
	return Run{}
}

// allDark reports whether a run lies in the dark.
func (d Day) allDark(r Run) bool {
	for k := range r.Hours {
		if !d.Dark[(r.From+k)%24] {
			return false
		}
	}
	return true
}
