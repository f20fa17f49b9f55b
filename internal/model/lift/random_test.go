package lift

import (
	"math"
	"math/rand/v2"

	"duskweight/internal/model/unit"
)

// dice makes random designs, the same for the same seed.
type dice struct{ *rand.Rand }

func newDice(seed uint64) dice { return dice{rand.New(rand.NewPCG(seed, 7))} }

// between is spread evenly over the orders of magnitude from lo to hi.
func (d dice) between(lo, hi float64) float64 { return lo * math.Pow(hi/lo, d.Float64()) }

func (d dice) even(lo, hi float64) float64 { return lo + (hi-lo)*d.Float64() }

func pick[T any](d dice, xs ...T) T { return xs[d.IntN(len(xs))] }

// hoist is a design that a home builder could come to, not always a good one.
func (d dice) hoist() Hoist {
	var h Hoist
	h.Name = "random"
	h.Units = known(unit.Count(1 + d.IntN(3)))
	for range 1 + d.IntN(3) {
		h.Mass = append(h.Mass, Piece{Mass: known(unit.Mass(d.between(5, 1000)))})
	}
	h.Travel = known(unit.Length(d.between(0.5, 12)))
	h.Rope.Diameter = known(unit.Length(d.between(0.003, 0.014)))
	n, k := 1+d.IntN(5), d.IntN(4)
	h.Reeving.RopeParts, h.Reeving.LeadSheaves = known(unit.Count(n)), known(unit.Count(k))
	h.Reeving.Efficiency = known(unit.Ratio(d.even(0.75, 1)))
	for range d.IntN(n + k) {
		s := Sheave{}
		if d.IntN(2) == 0 {
			s.Efficiency = known(unit.Ratio(d.even(0.75, 1)))
		}
		h.Reeving.Sheaves = append(h.Reeving.Sheaves, s)
	}
	h.Drum.Diameter = known(unit.Length(d.between(0.03, 0.3)))
	if d.IntN(4) > 0 {
		h.Drum.Width = known(unit.Length(d.between(0.02, 0.4)))
		h.Drum.DeadWraps = known(unit.Count(d.IntN(6)))
	}
	if d.IntN(3) == 0 {
		h.Drum.Friction = known(unit.Torque(d.even(0, 0.1)))
	}
	d.train(&h)
	d.machine(&h)
	d.loads(&h)
	if d.IntN(2) == 0 {
		h.Holds.BrakeDelay = known(unit.Duration(d.even(0, 1)))
	}
	return h
}

func (d dice) train(h *Hoist) {
	if d.IntN(2) == 0 {
		h.Train.Breakaway = known(unit.Ratio(d.even(1, 2)))
	}
	for range 1 + d.IntN(3) {
		s := Stage{Kind: StageKind(pick(d, "spur", "belt", "box", "planetary", "worm", "bevel", "chain", "strain_wave", "cycloid"))}
		s.IdleTorque = known(unit.Torque(d.between(1e-5, 3e-3)))
		switch {
		case s.Kind == "planetary" && d.IntN(2) == 0:
			s.SunTeeth, s.PlanetTeeth = known(unit.Count(10+d.IntN(20))), known(unit.Count(10+d.IntN(30)))
			s.MeshEff = known(unit.Ratio(d.even(0.85, 1)))
		case s.Kind == "worm":
			s.Ratio = known(unit.Ratio(d.even(5, 60)))
			s.LeadAngle = known(unit.Angle(d.even(0.05, 0.6)))
			s.Friction = known(unit.Ratio(d.even(0.02, 0.1)))
			if d.IntN(2) == 0 {
				s.PressureAngle = known(unit.Angle(d.even(0.2, 0.5)))
			}
		default:
			s.Ratio = known(unit.Ratio(d.between(1, 60)))
			s.Efficiency = known(unit.Ratio(d.even(0.4, 1)))
			if s.Kind == "box" && d.IntN(2) == 0 {
				s.InStages = known(unit.Count(1 + d.IntN(4)))
			}
			if s.Kind == "spur" && s.Efficiency.Val > 0.5 && d.IntN(4) == 0 {
				s.Backward = known(unit.Ratio(d.even(0.3, 1) * float64(s.Efficiency.Val)))
			}
		}
		h.Train.Stages = append(h.Train.Stages, s)
	}
}

func (d dice) machine(h *Hoist) {
	m := &h.Machine
	v := pick(d, 6.0, 12, 24, 48)
	stall := d.between(1, 200)
	speed := d.between(100, 1500)
	m.I0 = known(unit.Current(stall * d.even(0.002, 0.04)))
	if d.IntN(3) == 0 {
		m.SheetVolts, m.SheetStall = known(unit.Voltage(v)), known(unit.Current(stall))
		m.SheetSpeed = known(unit.AngularSpeed(speed))
		if d.IntN(2) == 0 {
			m.SheetGear = known(unit.Ratio(d.between(1, 100)))
			m.SheetSpeed.Val /= unit.AngularSpeed(m.SheetGear.Val)
		}
	} else {
		r := v / stall
		m.R = known(unit.Resistance(r))
		m.K = known(unit.MachineConstant((v - r*float64(m.I0.Val)) / speed))
	}
	if d.IntN(3) > 0 {
		m.J = known(unit.Inertia(d.between(1e-7, 1e-2)))
	}
	if d.IntN(3) == 0 {
		m.BrushDrop = known(unit.Voltage(d.even(0.1, 1.5)))
	}
	if d.IntN(2) == 0 {
		m.RthWinding, m.TauWinding = known(unit.ThermalResistance(d.between(0.5, 40))), known(unit.Duration(d.between(10, 2000)))
		m.MaxWinding = known(unit.Celsius(d.even(90, 155)))
		if d.IntN(4) == 0 {
			m.RthCase, m.TauCase = known(unit.ThermalResistance(d.between(0.5, 20))), known(unit.Duration(d.between(100, 3000)))
		}
	}
	h.Raise = Raise{Feed: Feed(pick(d, "drive", "relay")), Voltage: known(unit.Voltage(v)), Auxiliary: known(unit.Power(pick(d, 0.0, 5)))}
	if d.IntN(2) == 0 {
		h.Raise.WireR = known(unit.Resistance(d.between(0.01, 0.3)))
	}
	if d.IntN(2) == 0 {
		h.Raise.CurrentLimit = known(unit.Current(stall * d.even(0.1, 1)))
	}
	if d.IntN(2) == 0 {
		h.Raise.DriveEff = known(unit.Ratio(d.even(0.8, 1)))
	}
}

func (d dice) loads(h *Hoist) {
	h.Lower.Auxiliary = known(unit.Power(pick(d, 0.0, 0, 0.2, 5)))
	if d.IntN(3) == 0 {
		h.Lower.Ambient = known(unit.Celsius(d.even(-10, 35)))
	}
	for range pick(d, 1, 1, 1, 2, 3) {
		l := DCLoad{Kind: LoadKind(pick(d, "resistor", "string", "cell", "constant_power", "clamp"))}
		switch l.Kind {
		case "resistor":
			l.Resistance = known(unit.Resistance(d.between(0.3, 300)))
		case "constant_power":
			l.Power = known(unit.Power(d.between(0.1, 30)))
			if d.IntN(2) == 0 {
				l.MinVoltage = known(unit.Voltage(d.even(3, 10)))
			}
		default:
			l.Threshold = known(unit.Voltage(d.even(2, 25)))
			l.Slope = known(unit.Resistance(pick(d, 0.0, d.between(0.01, 20))))
			if d.IntN(2) == 0 {
				l.Diode = known(unit.Voltage(d.even(0.2, 0.9)))
			}
		}
		if d.IntN(3) == 0 {
			l.Efficiency = known(unit.Ratio(d.even(0.5, 1)))
		}
		h.Lower.Loads = append(h.Lower.Loads, l)
	}
	if d.IntN(8) == 0 {
		l := DCLoad{Kind: "governed", Speed: known(unit.AngularSpeed(d.between(100, 800)))}
		if d.IntN(2) == 0 {
			l.MinVoltage, l.MaxVoltage = known(unit.Voltage(d.even(2, 8))), known(unit.Voltage(d.even(8, 40)))
		}
		h.Lower.Loads = []DCLoad{l}
	}
}
