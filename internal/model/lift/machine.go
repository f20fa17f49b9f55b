package lift

import (
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Alpha is how much a copper winding's resistance grows for each kelvin, from 25 °C (source.FitzgeraldEM; motor makers
// print the same figure).
const Alpha = 0.00393

// SheetResistance returns the winding's resistance from a sheet's current with the shaft held: (V − V_b)/I_stall.
func SheetResistance(volts, brush unit.Voltage, stall unit.Current) unit.Resistance {
	return unit.Resistance(float64(volts-brush) / float64(stall))
}

// SheetConstant returns the machine constant from a sheet's speed without load: (V − V_b − I_0·R)/ω_0.
func SheetConstant(volts, brush unit.Voltage, i0 unit.Current, r unit.Resistance, speed unit.AngularSpeed) unit.MachineConstant {
	return unit.MachineConstant((float64(volts-brush) - float64(i0)*float64(r)) / float64(speed))
}

// DragCurrent returns the current without load of a machine whose own friction is a torque: T/K.
func DragCurrent(t unit.Torque, k unit.MachineConstant) unit.Current {
	return unit.Current(float64(t) / float64(k))
}

// MotorCurrent returns the current that makes a torque beyond the machine's own friction: T/K + I_0.
func MotorCurrent(t unit.Torque, k unit.MachineConstant, i0 unit.Current) unit.Current {
	return unit.Current(float64(t)/float64(k)) + i0
}

// GeneratorCurrent returns the current that a driving torque makes, less the machine's own friction: T/K − I_0.
func GeneratorCurrent(t unit.Torque, k unit.MachineConstant, i0 unit.Current) unit.Current {
	return unit.Current(float64(t)/float64(k)) - i0
}

// MotorSpeed returns (V − V_b − I·R)/K, R being all the resistance between the supply's voltage and the winding.
func MotorSpeed(volts, brush unit.Voltage, i unit.Current, r unit.Resistance, k unit.MachineConstant) unit.AngularSpeed {
	return unit.AngularSpeed((float64(volts-brush) - float64(i)*float64(r)) / float64(k))
}

// GeneratorSpeed returns (U + V_b + I·R)/K.
func GeneratorSpeed(volts, brush unit.Voltage, i unit.Current, r unit.Resistance, k unit.MachineConstant) unit.AngularSpeed {
	return unit.AngularSpeed((float64(volts+brush) + float64(i)*float64(r)) / float64(k))
}

// CopperGrowth returns the resistance of a copper winding at temperature t over its resistance at 25 °C: 1 + α·(T − 25).
func CopperGrowth(t unit.Celsius) unit.Ratio { return unit.Ratio(1 + Alpha*(float64(t)-25)) }

// worth is one value of a machine constant and where it comes from, in falling order of trust.
type worth struct {
	from  ConstantFrom
	value float64
}

// constants works out K, R, I_0 from whichever inputs decide: the user's own, then the bench, then the sheet. What
// disagrees by more than 5 % is said.
func (w *work) constants() {
	m, c := w.h.Machine, &w.d.Machine
	w.j = float64(m.J.Val)
	w.mostJ, _ = m.MostInertia()
	i0s := yours(m.I0.Is, float64(m.I0.Val))
	if v, ok := w.meanBench(m.BenchI0, "bench_no_load", unit.Currents, noLoadCurrent); ok {
		i0s = append(i0s, worth{FromBench, v})
	}
	i0 := w.pick("current without load", i0s)
	w.vb = float64(m.brush(i0))
	c.BrushDrop, c.J = unit.Voltage(w.vb), m.J
	rs := w.resistances(m)
	r := w.pick("resistance", rs)
	k := w.pick("machine constant", w.machineConstants(m, i0, r))
	w.impossible(m, i0)
	w.brushRange(k, r, i0)
	c.From = k.from
	c.K, c.R, c.I0 = w.tell(k), unit.Known[unit.Resistance]{}, unit.Known[unit.Current]{}
	if r.from != "" {
		c.R = unit.Of(unit.Resistance(r.value))
	}
	if i0.from != "" {
		c.I0 = unit.Of(unit.Current(i0.value))
	}
	w.kk, w.r, w.i0 = k.value, r.value, i0.value
	w.haveMachine = c.K.Is && c.R.Is && c.I0.Is
	w.lackMachine()
	w.checkMeasured(m)
}

func (w *work) tell(k worth) unit.Known[unit.MachineConstant] {
	if k.from == "" || k.value <= 0 {
		return unit.Known[unit.MachineConstant]{}
	}
	return unit.Of(unit.MachineConstant(k.value))
}

func yours(is bool, v float64) []worth {
	if !is {
		return nil
	}
	return []worth{{FromYours, v}}
}

// resistances lists what is known of R. The brushes' own drop is not in it twice.
func (w *work) resistances(m Machine) []worth {
	rs := yours(m.R.Is, float64(m.R.Val))
	if v, ok := w.meanBench(m.BenchR, "bench_resistance", unit.Resistances, func(b Bench) (float64, bool) {
		i := math.Abs(float64(b.Current.Val))
		return (math.Abs(float64(b.Voltage.Val)) - w.vb) / i, b.Voltage.Is && b.Current.Is && i > 0
	}); ok {
		rs = append(rs, worth{FromBench, v})
	}
	if m.SheetVolts.Is && m.SheetStall.Is {
		rs = append(rs, worth{FromSheet, float64(SheetResistance(m.SheetVolts.Val, unit.Voltage(w.vb), m.SheetStall.Val))})
	}
	return rs
}

// machineConstants lists what is known of K.
func (w *work) machineConstants(m Machine, i0, r worth) []worth {
	ks := yours(m.K.Is, float64(m.K.Val))
	if v, ok := w.meanBench(m.BenchK, "bench_driven", unit.MachineConstants, func(b Bench) (float64, bool) {
		s := math.Abs(float64(b.Speed.Val))
		return math.Abs(float64(b.Voltage.Val)) / s, b.Voltage.Is && b.Speed.Is && s > 0
	}); ok {
		ks = append(ks, worth{FromBench, v})
	}
	if m.SheetVolts.Is && m.SheetSpeed.Is && i0.from != "" && r.from != "" {
		speed := m.SheetSpeed.Val * unit.AngularSpeed(m.SheetGear.Or(1))
		ks = append(ks, worth{FromSheet, float64(SheetConstant(m.SheetVolts.Val, unit.Voltage(w.vb), unit.Current(i0.value), unit.Resistance(r.value), speed))})
	}
	if s, ok := m.stalled(i0); ok {
		ks = append(ks, worth{"stall", float64(s.K)})
	}
	return ks
}

// pick takes the most trusted value that can be, and says which others disagree.
func (w *work) pick(what string, all []worth) worth {
	best, q := worth{}, quantityOf(what)
	for _, x := range all {
		impossible := !finite(x.value) || x.value < 0 || (x.value == 0 && what != "current without load")
		if finite(x.value) {
			w.d.Machine.Found = append(w.d.Machine.Found, Found{what, x.from, x.value, !impossible && best.from == ""})
		}
		switch {
		case impossible:
			w.contradict(what, "The %s from the %s comes out as nothing or less: its numbers cannot belong together.", what, x.from)
		case best.from == "":
			best = x
		case math.Abs(x.value-best.value) > 0.05*best.value:
			w.contradict(what, "The %s is %s by %s and %s by %s. Measure again; %s is used.", what, say.Of(q, best.value), wording(best.from), say.Of(q, x.value), wording(x.from), say.Of(q, best.value))
		}
	}
	return best
}

func wording(from ConstantFrom) string {
	switch from {
	case FromBench:
		return "the bench test"
	case FromSheet:
		return "the sheet"
	case "stall":
		return "the sheet's torque with the shaft held"
	}
	return "your own number"
}

// fieldOf is the input that a constant is given by.
func fieldOf(what string) string {
	switch what {
	case "current without load":
		return "machine.i0_a"
	case "resistance":
		return "machine.r_ohm"
	}
	return "machine.k_vs_rad"
}

// quantityOf is what a constant is measured in.
func quantityOf(what string) unit.Quantity {
	switch what {
	case "current without load":
		return unit.Currents
	case "resistance":
		return unit.Resistances
	}
	return unit.MachineConstants
}

func (w *work) contradict(what, words string, values ...any) {
	w.d.Machine.Contradictions = append(w.d.Machine.Contradictions, say.That(words, values...))
	w.caution(fieldOf(what), words, values...)
}

// slowShaft is the speed under which a label's is hardly that of a motor's own shaft, 1,000 turns a minute (common
// practice; hub motors are slower).
const slowShaft = 1000 * unit.RevPerMinute

// impossible says what a sheet cannot mean.
func (w *work) impossible(m Machine, i0 worth) {
	if i0.from != "" && m.SheetStall.Is && i0.value >= float64(m.SheetStall.Val) {
		w.contradict("current without load", "The current without load is not smaller than the current with the shaft held. One of the two is wrong.")
	}
	if m.SheetSpeed.Is && !m.SheetGear.Is && m.SheetSpeed.Val < slowShaft {
		w.caution("machine.sheet_gear_ratio", "%s is slow for a motor's own shaft: most likely it is the speed after a gearbox. Give its ratio, 1 if there is none. Its losses belong to a gear stage.", say.Turning(m.SheetSpeed.Val))
	}
	if m.I0WithGear == unit.Yes {
		w.caution("machine.i0_measured_with_gear", "The current without load was measured with the gears on, so it holds their idle torque too. No idle torque is added.")
	}
}

// lackMachine lists what the machine still needs.
func (w *work) lackMachine() {
	c := w.d.Machine
	if !c.I0.Is {
		w.lack("machine.i0_a", "current and speed of the motor, and all that follows from them")
	}
	if !c.R.Is {
		w.lack("machine.r_ohm", "the machine: speed, heat, what it draws")
	}
	if !c.K.Is {
		w.lack("machine.k_vs_rad", "current and speed of the motor, and all that follows from them")
	}
	if most, _ := w.h.Machine.MostSpeed(); !most.Is {
		w.lack("machine.max_speed_rad_s", "whether the motor turns faster than it withstands")
	}
	if !w.mostJ.Is {
		w.lack("machine.j_kg_m2", "how fast the motor runs with nothing to brake it, and how far the mass goes past the upper stop; none counts here, the fastest case")
	}
}
