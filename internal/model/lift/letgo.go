package lift

import (
	"fmt"
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// letGo fills what happens when the lamps are unplugged or the motor wires joined.
//
//	a = c·(T_g − K·I_0)/(m·q_d + J·c²), the torque at the motor less its friction, over everything that has to move
//
// which is (m·g·q_d − c·(K·I_0 + Σ T_0 referred to the rotor))/(m·q_d + J·c²). The end speed sums the layers.
func (w *work) letGo() {
	g := &w.d.LetGo
	full := w.fullest()
	c := w.gearing(full)
	last := w.gearing(w.layers[0])
	free := 0.0
	for _, l := range w.layers {
		cc := w.gearing(l)
		free += 2 * w.m * unit.G / (w.m + w.j*cc*cc) * l.share * w.travel
	}
	a, v := w.openAcceleration(full), w.freeRun()
	if !finite(a, v, free, v*last, w.kk*v*last) {
		return
	}
	g.Known = true
	g.Acceleration, g.OpenSpeed, g.OpenRotor = unit.Acceleration(a), unit.Speed(v), unit.AngularSpeed(v*last)
	g.OpenVoltage = unit.Voltage(w.kk * v * last)
	g.Frictionless = unit.Speed(math.Sqrt(free))
	g.FreeFall = unit.Speed(math.Sqrt(2 * unit.G * w.travel))
	if most, _ := w.h.Machine.MostSpeed(); most.Is {
		g.BreaksUpFirst = g.OpenRotor > 2*most.Val
	}
	w.joined(c)
	w.burst()
	w.brake(a)
	w.sayLetGo()
}

// freeRun is the speed at the end of the travel from rest with the terminals open: v² = Σ 2·a·s over the layers.
func (w *work) freeRun() float64 {
	square := 0.0
	for _, l := range w.layers {
		square += 2 * w.openAcceleration(l) * l.share * w.travel
	}
	return math.Sqrt(square)
}

// Halfway is the speed at the end of half the travel from rest with the terminals open: √(2·a·h/2) = v_end/√2, as long as
// one layer's acceleration holds.
func (g LetGo) Halfway() unit.Speed { return unit.Speed(float64(g.OpenSpeed) / math.Sqrt2) }

// openAcceleration is how the mass gathers speed with the terminals open, 0 where friction holds it.
func (w *work) openAcceleration(l layer) float64 {
	t, _, stuck := w.run.down(w.drumDown(l.length))
	c := w.gearing(l)
	if stuck >= 0 || t <= w.kk*w.i0 {
		return 0
	}
	return c * (t - w.kk*w.i0) / (w.moving() + w.j*c*c)
}

// joined is the speed with the motor wires joined: ω = (I·R + V_b)/K, all of it heat in the winding.
func (w *work) joined(c float64) {
	g := &w.d.LetGo
	if w.d.Lowering.RunsBack == DownNo || w.d.Lowering.RunsBack == "" {
		return
	}
	rotor := w.rotorAt(0, float64(w.d.Lowering.Current))
	if !finite(rotor) {
		return
	}
	g.JoinedRotor, g.JoinedSpeed = unit.AngularSpeed(rotor), told[unit.Speed](rotor/c)
}

// burst is the pull of the rope when the wires are joined while it runs away at its end speed: K²·ω/R at the motor
// brakes rotor and mass together, a = c·T/(m·q_d + J·c²), and the rope pulls F_down·(1 + a/g). A rope that gives takes
// less; without the rotor's inertia it is the torque through the whole train.
func (w *work) burst() {
	g := &w.d.LetGo
	if g.OpenSpeed <= 0 {
		return
	}
	l := w.layers[0]
	c := w.gearing(l)
	t := w.kk * math.Max(0, float64(g.OpenVoltage)-w.vb) / w.r
	a := c*t/(w.moving()+w.j*c*c) - w.openAcceleration(l)
	g.BurstForce = told[unit.Force](w.fDown * (1 + math.Max(0, a)/unit.G))
}

// brake is how far it falls until the brake sets: v·t + a·t²/2, from the speed of coming down.
func (w *work) brake(a float64) {
	t, ok := w.h.Holds.BrakeDelay.Value()
	if !ok {
		w.lack("holds.brake_delay_s", "how far it falls until the brake sets, and how far it goes past the upper stop")
		return
	}
	lo := w.d.Lowering
	if lo.RunsBack != DownNo && !(lo.Known && lo.Steady) {
		return
	}
	v, d := float64(lo.Fastest()), float64(t)
	w.d.LetGo.BrakeFall = told[unit.Length](v*d + a*d*d/2)
	w.d.LetGo.BrakeSpeed = told[unit.Speed](v + a*d)
}

// sayLetGo puts the worst of it in words.
func (w *work) sayLetGo() {
	g, when := w.d.LetGo, "With the lamps unplugged"
	if w.d.Lowering.Shunt { // what is wired for good holds it then; these are for a wire of the motor that opens
		when = "If a wire of the motor itself opens,"
	}
	if g.BreaksUpFirst {
		w.caution("machine.max_speed_rad_s", when+" the motor would reach %s, more than twice what it withstands. The motor flies apart before that: guard it.", say.Turning(g.OpenRotor))
	} else if most, over := w.tooFast(g.OpenRotor); over {
		w.caution("machine.max_speed_rad_s", when+" the motor reaches %s. %s", say.Turning(g.OpenRotor), most)
	}
	if g.OpenVoltage > touchVolts {
		w.caution("lower.loads", when+" the motor makes up to %s. Above 60 V a shock can kill, and the electronics must withstand it.", say.Voltage(g.OpenVoltage))
	}
	for i, l := range w.h.Lower.Loads {
		if v, ok := l.MaxVoltage.Value(); ok && g.OpenVoltage > v {
			w.caution(fmt.Sprintf("lower.loads[%d].max_voltage_v", i), "A runaway makes up to %s. This load withstands %s.", say.Voltage(g.OpenVoltage), say.Voltage(v))
		}
	}
}

// Overtravel returns how far the mass goes after the power is cut: v·t + v²/(2a).
func Overtravel(v unit.Speed, delay unit.Duration, a unit.Acceleration) unit.Length {
	return unit.Length(float64(v)*float64(delay) + float64(v)*float64(v)/(2*float64(a)))
}

// stop fills what happens at the upper stop: the way past it, with the greatest inertia that the rotor can have and no
// friction to help, and the pull of the motor that stalls against it.
func (w *work) stop() {
	c := w.gearing(w.fullest())
	j, haveJ := w.mostJ.Value()
	reflected := float64(j) * c * c
	if haveJ {
		w.d.ReflectedMass = told[unit.Mass](reflected)
	}
	ra := w.d.Raising
	if t, ok := w.h.Holds.BrakeDelay.Value(); ok && haveJ && ra.Known && !ra.Stalls {
		a := w.m * unit.G / (w.m + reflected)
		w.d.Overtravel = told[unit.Length](float64(Overtravel(ra.Speed, t, unit.Acceleration(a))))
	}
	v, ok := w.h.Raise.Voltage.Value()
	if !ok {
		return
	}
	loop := unit.Resistance(w.r) + w.h.Raise.WireR.Or(0)
	i := float64(Available(v, unit.Voltage(w.vb), loop, w.h.Raise.CurrentLimit))
	t := math.Max(0, w.run.pull(w.kk*math.Max(0, i-w.i0))-w.bearing)
	w.d.StallRopePull = told[unit.Force](t / w.fullest().torque)
}
