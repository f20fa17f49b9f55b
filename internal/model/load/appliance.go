package load

import (
	"fmt"
	"math"
	"slices"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// InverterEfficiency stands in where the inverter's is not known: a small inverter at a small load gives .80 to .90
// (from memory; source.SmallInverter).
const InverterEfficiency = 0.85

// monthEnds are the hours at which the months of the year end.
var monthEnds = [12]int{744, 1416, 2160, 2880, 3624, 4344, 5088, 5832, 6552, 7296, 8016, 8760}

// MonthOf returns the month, 1 to 12, of hour h of the year.
func MonthOf(h int) int {
	m := 0
	for m < 11 && h >= monthEnds[m] {
		m++
	}
	return m + 1
}

// Winter and Summer are 21 December and 21 June, counted from 1 January as day 0.
const (
	Winter = 354
	Summer = 171
)

// addAppliance books one appliance into the hours of its priority.
// factor is the power at the line over that at the devices, hour by hour, of an inverter whose losses follow the load; nil
// where they do not.
func (y *Year) addAppliance(l Load, i int, a Appliance, sunDown []bool, dusk []int, factor []float64) {
	out := ApplianceYear{Name: a.Name}
	defer func() { y.Each = append(y.Each, out) }()
	if why, no := Refused(a); no {
		out.Refused = why
		return
	}
	watts, ok := y.watts(l, i, a)
	if !ok || !y.timed(i, a) {
		return
	}
	if a.MayWait() {
		y.addWaiting(l, i, a, watts, &out)
		return
	}
	into, off := y.Essential, []float64(nil)
	if a.Priority == PriorityNice {
		into = y.Nice
	}
	if at := y.level(a); at >= 0 {
		off = y.Levels[at].Essential
		if a.Priority == PriorityNice {
			off = y.Levels[at].Nice
		}
	}
	for h := range HoursInYear {
		if !a.inMonth(h) {
			continue
		}
		on := a.shareOn(h, sunDown, dusk)
		p := watts * on
		if a.Heat == unit.Yes {
			p *= y.heatOn(a, h)
		}
		if factor != nil && a.Supply == SupplyInverter {
			p *= factor[h]
		}
		into[h] += p
		if off != nil {
			off[h] += p
		}
		switch h / 24 {
		case Winter:
			out.Winter[h%24] = p
		case Summer:
			out.Summer[h%24] = p
		}
		out.Year += unit.Energy(p * 3600)
		if y.Night[h] {
			out.Night += unit.Energy(p * 3600)
			out.NightOn += unit.Duration(on * 3600)
		}
	}
}

// inMonth reports whether hour h of the year lies in a month in which the appliance is used.
func (a Appliance) inMonth(h int) bool {
	return len(a.Months) == 0 || slices.Contains(a.Months, unit.Count(MonthOf(h)))
}

// inverterFactor returns, for an inverter whose losses follow the load, the power at the line over that at the devices in
// each hour: each device is on for its share of the hour, without heed of the others, so that E[P²] is the square of the
// mean m = Σ n d P and the variance Σ n d (1 − d) P². Nil where one efficiency holds.
func (y *Year) inverterFactor(l Load, sunDown []bool, dusk []int) []float64 {
	if !y.Losses.Curved() {
		return nil
	}
	mean, variance := make([]float64, HoursInYear), make([]float64, HoursInYear)
	for _, a := range l.Appliances {
		if _, no := Refused(a); no || a.Supply != SupplyInverter || !a.Power.Is || !a.Count.Is || !a.timeKnown() || a.MayWait() {
			continue
		}
		p, n, share := float64(a.Power.Val), float64(a.Count.Val), a.share()
		for h := range HoursInYear {
			if a.inMonth(h) {
				if a.Heat == unit.Yes {
					share = y.heatOn(a, h)
				}
				d := share * a.shareOn(h, sunDown, dusk)
				mean[h] += n * d * p
				variance[h] += n * d * (1 - d) * p * p
			}
		}
	}
	for h, m := range mean {
		if m > 0 {
			mean[h] = float64(y.Losses.Line(unit.Power(m), unit.Power(variance[h]))) / m
		}
	}
	return mean
}

// shareOn returns the share of hour h in which the appliance's time runs.
func (a Appliance) shareOn(h int, sunDown []bool, dusk []int) float64 {
	if n, ok := a.FromDusk.Value(); ok && !a.MayWait() {
		if dusk[h] < 0 {
			return 0
		}
		return math.Min(1, math.Max(0, float64(n)/3600-float64(dusk[h])))
	}
	if a.AfterDusk == unit.Yes && !sunDown[h] && !a.MayWait() {
		return 0
	}
	from, fromIs := a.From.Value()
	to, toIs := a.To.Value()
	if !fromIs || !toIs {
		return 1 // only after dusk and no times given: the whole night
	}
	return shareOfHour(h%24, float64(from), float64(to))
}

// watts returns the power of all of them at the line while their time runs, and false where it is not known.
func (y *Year) watts(l Load, i int, a Appliance) (float64, bool) {
	name := called(a.Name, "this appliance")
	each, powerIs := a.Running().Value()
	n, countIs := a.Count.Value()
	if !powerIs {
		y.Missing = append(y.Missing, Missing{path("appliances", i, "power_w"), "what " + name + " uses"})
	}
	if !countIs {
		y.Missing = append(y.Missing, Missing{path("appliances", i, "count"), "how many of " + name + " there are"})
	}
	w := float64(each) * float64(n)
	if a.Heat != unit.Yes && !a.MayWait() { // else hour by hour
		w *= a.share()
	}
	if a.Supply == SupplyInverter {
		if !y.Losses.Curved() {
			w /= y.Losses.Efficiency
		}
		if l.Inverter.Present == unit.No {
			y.Flags = append(y.Flags, Flag{path("appliances", i, "supply"),
				say.That("%s runs through the inverter, but you said that there is no inverter.", called(a.Name, "This appliance"))})
		}
	}
	return w, powerIs && countIs
}

// timeKnown reports whether the time of use is known.
func (a Appliance) timeKnown() bool {
	if a.MayWait() {
		return a.From.Is && a.To.Is
	}
	return a.FromDusk.Is || a.From.Is && a.To.Is || a.AfterDusk == unit.Yes && !a.From.Is && !a.To.Is
}

// timed reports whether the time of use is known.
func (y *Year) timed(i int, a Appliance) bool {
	if a.timeKnown() {
		return true
	}
	name := called(a.Name, "this appliance")
	if !a.From.Is {
		y.Missing = append(y.Missing, Missing{path("appliances", i, "from_s"), "when " + name + " goes on"})
	}
	if !a.To.Is {
		y.Missing = append(y.Missing, Missing{path("appliances", i, "to_s"), "when " + name + " goes off"})
	}
	return false
}

func path(list string, i int, field string) string { return fmt.Sprintf("%s[%d].%s", list, i, field) }

// called returns the name, or otherwise where there is none.
func called(name, otherwise string) string {
	if name == "" {
		return otherwise
	}
	return name
}
