package model

import "duskweight/internal/model/unit"

// comparedBattery is the battery that every project is held against: a small common size that one hand carries (our own
// judgement).
const comparedBattery = 12 * unit.AmpereHour

// Bars are the three energies that a project is told by first, all on one scale.
type Bars struct {
	Night   unit.Known[unit.Energy] // what a mean night needs, appliances and what uses power all the time
	Lift    unit.Known[unit.Energy] // what one full lift gives back; not known without a lifted mass too
	Lifts   unit.Known[unit.Ratio]  // lifts that one night takes
	Charge  unit.Charge             // the battery beside them, at 12.8 V
	Battery unit.Energy             // what it holds at its usable depth
	Nights  unit.Known[unit.Ratio]  // mean nights that it holds
	Top     unit.Energy             // end of the scale; what is past it is drawn broken
}

// mostScales is how many times the battery the scale reaches at the most: past it the battery would be a line (our own
// judgement).
const mostScales = 4

// Bars returns the energies of one variant beside a battery of 12 Ah.
func (f Facts) Bars() Bars {
	b := Bars{Lift: f.OneLiftOut, Lifts: f.TimesMore, Charge: comparedBattery, Battery: batteryHolds(comparedBattery)}
	b.Top = b.Battery
	if need, ok := f.nightNeed(); ok {
		b.Night = unit.Of(need)
		if need > 0 {
			b.Nights = unit.Of(unit.Ratio(float64(b.Battery) / float64(need)))
		}
	}
	for _, e := range []unit.Known[unit.Energy]{b.Night, b.Lift} {
		if e.Is {
			b.Top = max(b.Top, min(e.Val, mostScales*b.Battery))
		}
	}
	return b
}

// Gives is what so many lifts give back together; not known where one lift is not.
func (b Bars) Gives(lifts float64) unit.Known[unit.Energy] {
	if !b.Lift.Is {
		return b.Lift
	}
	return unit.Of(unit.Energy(lifts * float64(b.Lift.Val)))
}

// usableDepth and ironVolts are those of an iron-phosphate battery (typical values of that kind of cell, from memory).
const (
	usableDepth = 0.8
	ironVolts   = 12.8
)

// BatteryDepth is the share of the compared battery that is used, and its voltage.
func (Bars) BatteryDepth() (unit.Ratio, unit.Voltage) { return usableDepth, ironVolts }

// batteryFor is the capacity of such a battery that gives e.
func batteryFor(e unit.Energy) unit.Charge { return unit.Charge(float64(e) / usableDepth / ironVolts) }

// batteryHolds is what such a battery of capacity c gives: c × 12.8 V × 0.8.
func batteryHolds(c unit.Charge) unit.Energy {
	return unit.Energy(float64(c) * ironVolts * usableDepth)
}
