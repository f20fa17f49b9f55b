package say

import (
	"math"

	"duskweight/internal/model/unit"
)

// digits is how many significant digits an amount has in a sentence unless it says otherwise: our own judgement, what the
// inputs of a home-made store support at best.
const digits = 3

// Amount is a quantity in a sentence. It is printed in the reader's units, never with a power of ten.
type Amount struct {
	si      float64
	digits  int
	round   unit.Round
	worded  bool   // the unit is spelt out: 12 minutes
	endless string // instead of a value without end
	q       unit.Quantity
	larger  *step // what a value of another size is printed in; nil for none
}

// step is the quantity, and so the unit, of values of a size or more, and the next.
type step struct {
	from float64 // SI
	q    unit.Quantity
	next *step
}

// Of is a value of a quantity, in SI, in the quantity's own unit of each system.
func Of(q unit.Quantity, si float64) Amount { return Amount{si: si, digits: digits, q: q} }

// Limit is a limit of a quantity, with its digits, at least three: "at most 32.8 ft" for 10 m rounded down. Rounded towards the
// inside of the range it is a value that is accepted.
func Limit(q unit.Quantity, si float64) Amount { return Of(q, si).To(q.LimitDigits()) }

// stepped is Of with the units of larger values.
func stepped(q unit.Quantity, si float64, larger *step) Amount {
	return Amount{si: si, digits: digits, q: q, larger: larger}
}

// The units of larger values.
var (
	metres     = &step{from: 1, q: unit.Lengths}
	heights    = &step{from: 1, q: unit.Heights}
	megapascal = &step{from: 1e5, q: unit.Stresses}
	kilowatts  = &step{from: 10e3 * 3600, q: unit.BigEnergies}
	minutes    = &step{120, unit.Minutes, &step{2 * 3600, unit.Hours, &step{from: 48 * 3600, q: unit.Days}}}
)

// quantity is the one that a value of this size is printed in.
func (a Amount) quantity() unit.Quantity {
	q := a.q
	for s := a.larger; s != nil && math.Abs(a.si) >= s.from; s = s.next {
		q = s.q
	}
	return q
}

// To returns the amount with n significant digits instead of three; zero for a whole number.
func (a Amount) To(n int) Amount { a.digits = n; return a }

// Up returns the amount rounded up in the reader's unit: for a strength that must be bought.
func (a Amount) Up() Amount { a.round = unit.Up; return a }

// Down returns the amount rounded down in the reader's unit: for a strength that is there.
func (a Amount) Down() Amount { a.round = unit.Down; return a }

// Toward returns the amount rounded in a direction in the reader's unit.
func (a Amount) Toward(dir unit.Round) Amount { a.round = dir; return a }

func (a Amount) print(sys unit.System) string {
	if a.endless != "" && math.IsInf(a.si, 1) {
		return a.endless
	}
	q := a.quantity()
	if !a.worded || math.IsNaN(a.si) || math.IsInf(a.si, 0) {
		return q.FormatTo(a.si, sys, a.digits, a.round)
	}
	n, word := q.NumberTo(a.si, sys, a.digits, a.round), q.Word(sys)
	if n == "1" {
		word = one[word]
	}
	return n + unit.Space + word
}

// one is the singular of the units that are spelt out.
var one = map[string]string{"seconds": "second", "minutes": "minute", "hours": "hour", "days": "day", "revolutions a minute": "revolution a minute"}

// In returns the amount alone as text in a reader's units.
func (a Amount) In(sys unit.System) string { return a.print(sys) }

// String is the amount in metric units.
func (a Amount) String() string { return a.In(unit.Metric) }

// Mass is a mass in kg or lb.
func Mass(m unit.Mass) Amount { return Of(unit.Masses, float64(m)) }

// Weight is a force as the mass whose weight it is, in kg or lb: makers weigh.
func Weight(f unit.Force) Amount { return Of(unit.Loads, float64(f)) }

// Force is a force in N or lbf.
func Force(f unit.Force) Amount { return Of(unit.Forces, float64(f)) }

// Length is a length: mm or in under a metre, m or feet and whole inches from there on.
func Length(l unit.Length) Amount { return stepped(unit.SmallLengths, float64(l), metres) }

// Taped is a length that a tape is held to: in mm under a metre, in m from there on, or in feet, inches and sixteenths.
func Taped(l unit.Length) Amount { return stepped(unit.Widths, float64(l), heights) }

// Height is a length that is walked, climbed or lifted: in m however short, or in feet, inches and sixteenths.
func Height(l unit.Length) Amount { return Of(unit.Heights, float64(l)) }

// Distance is a fall, or a length of rope, cable or pipe: in m however short, or in feet and whole inches.
func Distance(l unit.Length) Amount { return Of(unit.Lengths, float64(l)) }

// Width is the size of a drum, a pulley or a beam: in mm, or in feet, inches and sixteenths.
func Width(l unit.Length) Amount { return Of(unit.Widths, float64(l)) }

// Compared are two lengths that one sentence compares, told in one manner: as a tape shows them where it measures both, else as
// a calliper does.
func Compared(a, b unit.Length) (Amount, Amount) {
	if unit.TapeReads(a) && unit.TapeReads(b) {
		return Width(a), Width(b)
	}
	return Size(a), Size(b)
}

// Size is a length that is measured with a rule or a calliper: in mm or in, however long.
func Size(l unit.Length) Amount { return Of(unit.SmallLengths, float64(l)) }

// Torque is a torque in N·m or lbf·ft.
func Torque(t unit.Torque) Amount { return Of(unit.Torques, float64(t)) }

// Stress is a stress: kPa under 0.1 MPa and MPa from there on, or psi.
func Stress(s unit.Stress) Amount {
	return stepped(unit.SmallStresses, float64(s), megapascal)
}

// Speed is a speed in m/s or ft/s.
func Speed(v unit.Speed) Amount { return Of(unit.Speeds, float64(v)) }

// Turning is a turning speed in revolutions a minute.
func Turning(w unit.AngularSpeed) Amount {
	a := Of(unit.RotationSpeeds, float64(w))
	a.worded = true
	return a
}

// Energy is an energy: Wh, or kWh from 10 kWh on.
func Energy(e unit.Energy) Amount {
	return stepped(unit.Energies, float64(e), kilowatts)
}

// Power is a power in W.
func Power(p unit.Power) Amount { return Of(unit.Powers, float64(p)) }

// Voltage is a voltage in V.
func Voltage(v unit.Voltage) Amount { return Of(unit.Voltages, float64(v)) }

// Current is a current in A.
func Current(i unit.Current) Amount { return Of(unit.Currents, float64(i)) }

// Charge is a charge in Ah.
func Charge(q unit.Charge) Amount { return Of(unit.Charges, float64(q)) }

// Resistance is a resistance in Ω.
func Resistance(r unit.Resistance) Amount { return Of(unit.Resistances, float64(r)) }

// Temperature is a temperature in whole °C or °F.
func Temperature(t unit.Celsius) Amount {
	return Of(unit.Temperatures, float64(t)).To(0)
}

// Light is sunlight on a surface in W/m².
func Light(g unit.Irradiance) Amount { return Of(unit.Irradiances, float64(g)) }

// Sun is the sunlight that falls on a surface in a day, in kWh/m².
func Sun(h unit.Irradiation) Amount { return Of(unit.Irradiations, float64(h)) }

// WireArea is the copper of a wire in mm², with the gauge beside for readers in inches.
func WireArea(a unit.Area) Amount { return Of(unit.WireAreas, float64(a)) }

// Area is the area of a thing that can be walked on or leaned against, in m² or ft².
func Area(a unit.Area) Amount { return Of(unit.Areas, float64(a)) }

// Opening is the area of a hole or a plate in cm² or in².
func Opening(a unit.Area) Amount { return Of(unit.Openings, float64(a)) }

// Angle is an angle in degrees.
func Angle(a unit.Angle) Amount { return Of(unit.Angles, float64(a)) }

// Share is a part of a whole in percent.
func Share(r unit.Ratio) Amount { return Of(unit.Percents, float64(r)).To(2) }

// Times is a plain ratio: "2.2" in "2.2 times as much".
func Times(r unit.Ratio) Amount { return Of(unit.Ratios, float64(r)) }

// Time is how long something lasts, in the unit a person would use: seconds under two minutes, minutes under two hours, hours
// under two days, then days; "for ever" without end.
func Time(d unit.Duration) Amount {
	a := stepped(unit.Durations, float64(d), minutes)
	a.worded, a.endless = true, "for ever"
	return a
}
