package year

import (
	"math"

	"duskweight/internal/model/unit"
)

// Managed is who goes first when not everything can be had: devices that are switched off below a charge, devices that wait
// for the sun, and a backup. The charge σ is Σ(x − locked)/Σ(X − locked) over all stores of the year but those aside, read once an hour,
// after the hour's leak; 0 where the stores can hold nothing. The rule of an hour stands at manager.hour.
//
// Left out: what an inverter loses less when a level is off, and the time in which a generator starts and warms up.
type Managed struct {
	Levels  []Level
	Waiting []Waiting // in the order in which they are asked
	Backup  *Backup   // nil for none
}

// Level is a part of the load that is switched off below a charge and on again from a higher one on.
type Level struct {
	Below, Back float64   // of the charge
	Essential   []float64 // W by hour; a part of Input.Essential
	Nice        []float64 // W by hour; a part of Input.Nice
}

// Waiting is a device that needs so much energy a day and may wait for it.
type Waiting struct {
	Power     float64   // W at the line while it runs
	Energy    []float64 // J at the line that each day asks, by day of the year; a day that is not there asks nothing
	From, To  int       // clock hours of its window, over midnight too; the same: all day
	RunAbove  float64   // of the charge: above it runs with the sun that others leave, below only with the sun that stores leave
	Must      bool      // runs in the last hours of its window, whatever the charge
	Carry     float64   // days for which what was not run may wait besides its own day
	Essential bool      // it is served as what is essential; else as what is nice to have
}

// Backup is a generator, the grid or a car.
type Backup struct {
	Rated    float64 // W at the line
	Charge   float64 // W that may go into charging
	Gain     float64 // of charging, joules at the line for each that it gives
	Start    float64 // of the charge: below it goes on
	Stop     float64 // of the charge: from there on it goes off
	From, To int     // clock hours in which it may run, over midnight too; the same: all day
	Most     float64 // hours a day
	Idle     float64 // litres an hour while it is on
	PerKWh   float64 // litres for each kWh that it gives
}

// BackupYear is what a backup did in a year.
type BackupYear struct {
	Hours  int         // on
	Starts int         // how often it went on
	Energy unit.Energy // at the line: used at once and put into stores
	Direct unit.Energy // of Energy, used at once
	Out    unit.Energy // that it gave, the loss of charging included
	Fuel   unit.Volume
}

// LevelYear is what a level kept off in a year.
type LevelYear struct {
	Below  float64
	Hours  int         // in which it kept something off
	Energy unit.Energy // that was wanted meanwhile; a part of Unmet
}

// WaitYear is what a waiting device came to in a year. Asked = Run + Missed + Change.
type WaitYear struct {
	Asked  unit.Energy // at the line
	Run    unit.Energy
	Missed unit.Energy // waited for too long
	Change unit.Energy // still waiting at the end, less what waited at the beginning
	Days   int         // on which some of it was missed
}

// add adds the sums of later hours.
func (b *BackupYear) add(c BackupYear) {
	b.Hours += c.Hours
	b.Starts += c.Starts
	b.Energy += c.Energy
	b.Direct += c.Direct
	b.Out += c.Out
}

// burn works the fuel out: (f_0·P_r·hours + f_1·out)/1000, with f_0·P_r in litres an hour.
func (b *BackupYear) burn(of *Backup) {
	litres := tame(of.Idle)*float64(b.Hours) + tame(of.PerKWh)*float64(b.Out)/3.6e6
	b.Fuel = unit.Volume(litres / 1000)
}

// tamed is the backup with no number that cannot be.
func (b Backup) tamed() Backup {
	for _, v := range []*float64{&b.Rated, &b.Charge, &b.Start, &b.Stop, &b.Most, &b.Idle, &b.PerKWh} {
		*v = tame(*v)
	}
	b.Gain = within(b.Gain)
	return b
}

// window is the clock hours in which something may be on, a bit for each.
type window uint32

// windowOf is the hours from one clock hour until another, over midnight too; all of them where both are the same.
func windowOf(from, to int) (w window) {
	for clock := range 24 {
		if from == to || from < to && from <= clock && clock < to || from > to && (clock >= from || clock < to) {
			w |= 1 << clock
		}
	}
	return w
}

// open reports whether a clock hour lies in the window.
func (w window) open(clock int) bool { return w>>clock&1 != 0 }

// left is how many hours are left with this one, in a window that ends at clock hour to.
func left(clock, to int) int {
	if to <= clock {
		to += 24
	}
	return to - clock
}

// within takes v between 0 and 1; what is no number is 0.
func within(v float64) float64 { return math.Min(1, tame(v)) }
