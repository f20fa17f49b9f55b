package load

import (
	"math"

	"duskweight/internal/model/unit"
)

// What counts where it is not known: the fields say so.
const (
	usualRunAbove = 0.5
	usualBack     = 0.1 // above where it goes off
)

// Level is the part of the load that is switched off below a charge of the stores and on again from Back on.
type Level struct {
	Below, Back     float64
	Essential, Nice []float64 // W at the line, 8760; a part of those of the year
}

// Waiting is a device that may wait for the sun. It is in no hour of the year's load.
type Waiting struct {
	At        int // its place in the list of appliances
	Name      string
	Power     float64   // W at the line
	Energy    []float64 // J at the line that each of the 365 days asks
	From, To  int       // clock hours of its window
	RunAbove  float64
	Must      bool
	Carry     float64 // days
	Essential bool
}

// MayWait reports whether the appliance waits for the sun.
func (a Appliance) MayWait() bool { return a.Waits == unit.Yes }

// Daily is what one of them needs in a day if it waits: what is given, else what its water costs.
func (a Appliance) Daily() unit.Known[unit.Energy] {
	if a.DayEnergy.Is {
		return a.DayEnergy
	}
	return a.Water.Energy()
}

// Running is the power of one while it runs: what is given, else for a pump that waits what its water takes.
func (a Appliance) Running() unit.Known[unit.Power] {
	if !a.Power.Is && a.MayWait() {
		return a.Water.Power()
	}
	return a.Power
}

// Window is how many hours a day a waiting appliance may run; 0 where that is not known.
func (a Appliance) Window() int {
	if !a.From.Is || !a.To.Is {
		return 0
	}
	hours := (clockHour(a.To.Val) - clockHour(a.From.Val) + 24) % 24
	if hours == 0 {
		return 24
	}
	return hours
}

// clockHour is the clock hour of a time, 0 to 24.
func clockHour(t unit.Duration) int { return int(math.Round(float64(t) / 3600)) }

// Back is from where on it is switched on again.
func (a Appliance) Back() unit.Ratio {
	return a.BackAbove.Or(min(1, a.ShedBelow.Val+usualBack))
}

// level is the place of the level at which an appliance goes off, made where there is none yet; −1 for one that never does.
func (y *Year) level(a Appliance) int {
	if !a.ShedBelow.Is || a.MayWait() {
		return -1
	}
	for i, l := range y.Levels {
		if l.Below == float64(a.ShedBelow.Val) {
			return i
		}
	}
	y.Levels = append(y.Levels, Level{Below: float64(a.ShedBelow.Val), Back: float64(a.Back()), Essential: make([]float64, HoursInYear), Nice: make([]float64, HoursInYear)})
	return len(y.Levels) - 1
}

// addWaiting books an appliance that waits, watts all of them at the line. Its inverter's loss is that of its own power alone.
func (y *Year) addWaiting(l Load, i int, a Appliance, watts float64, out *ApplianceYear) {
	e, ok := a.Daily().Value()
	if !ok {
		y.Missing = append(y.Missing, Missing{path("appliances", i, "energy_j_day"), "what " + called(a.Name, "this appliance") + " needs in a day"})
		return
	}
	each := float64(a.Running().Val) * float64(a.Count.Val)
	loss := 1.0
	if a.Supply == SupplyInverter && each > 0 {
		if y.Losses.Curved() {
			watts = float64(y.Losses.Line(unit.Power(each), 0))
		}
		loss = watts / each
	}
	w := Waiting{At: i, Name: a.Name, Power: watts, Energy: make([]float64, DaysInYear), From: clockHour(a.From.Val) % 24, To: clockHour(a.To.Val) % 24,
		RunAbove: float64(a.RunAbove.Or(usualRunAbove)), Must: a.MustToday == unit.Yes, Carry: float64(a.CarryDays.Or(0)), Essential: a.Priority != PriorityNice}
	for d := range w.Energy {
		if a.inMonth(24 * d) {
			w.Energy[d] = float64(e) * float64(a.Count.Val) * loss
			out.Year += unit.Energy(w.Energy[d])
		}
	}
	out.Waits = true
	y.Waiting = append(y.Waiting, w)
}

// Managed reports whether anything of the load is switched off by a level or waits.
func (y Year) Managed() bool { return len(y.Levels) > 0 || len(y.Waiting) > 0 }

// scaleManaged gives what waits and what levels switch off use times its power.
func (y *Year) scaleManaged(use float64) {
	levels, waiting := make([]Level, len(y.Levels)), make([]Waiting, len(y.Waiting))
	for i, l := range y.Levels {
		l.Essential, l.Nice = times(l.Essential, use), times(l.Nice, use)
		levels[i] = l
	}
	for i, w := range y.Waiting {
		w.Power, w.Energy = w.Power*use, times(w.Energy, use)
		waiting[i] = w
	}
	y.Levels, y.Waiting = levels, waiting
}
