package lift

import (
	"math"

	"duskweight/internal/model/unit"
)

// Course is the lines behind a drive's figures: what hangs on the terminals over voltage, the start of a descent over
// time, the winding over runs and rests.
type Course struct {
	w     *work
	loads []branch
	ends  terminals
	known bool // what hangs on the terminals
}

// CourseOf works a hoist out for its lines.
func CourseOf(h Hoist) Course {
	c := Course{w: compute(h)}
	if c.w.haveMachine && c.w.d.Lowering.RunsBack != "" {
		c.loads, c.known = c.w.branches()
		lo := c.w.d.Lowering
		c.ends = newTerminals(c.loads, c.w.r, float64(lo.Current), c.w.kk*float64(lo.Rotor)-c.w.vb)
	}
	return c
}

// LoadsKnown reports whether what hangs on the terminals can be drawn.
func (c Course) LoadsKnown() bool { return c.known }

// Taken is the current that the loads take together at a voltage under their lowest constant voltage.
func (c Course) Taken(u unit.Voltage) unit.Current { return unit.Current(taken(c.loads, float64(u))) }

// Ceiling is the lowest constant voltage among the loads: there they take whatever comes. A governed converter's is the
// voltage at which it keeps its speed.
func (c Course) Ceiling() unit.Known[unit.Voltage] {
	i := float64(c.w.d.Lowering.Current)
	top, _ := ceiling(c.loads, c.w.governedVolts(c.loads, i))
	return told[unit.Voltage](top)
}

// Bends are the voltages, from 0 up, at which a load begins to take current.
func (c Course) Bends() []unit.Voltage {
	var out []unit.Voltage
	for _, u := range thresholds(c.loads, math.Inf(1)) {
		out = append(out, unit.Voltage(u))
	}
	return out
}

// Moment is one moment of a descent.
type Moment struct {
	Time  unit.Duration
	Rotor unit.AngularSpeed
	Speed unit.Speed
	Volts unit.Voltage
	Power unit.Power // at the lamps, brake coil and controller off
}

// Descent follows the first moments of a way down, from rest with the brake just opened, in the fullest layer and with
// running friction, until the speed is within a thousandth of the steady one and a third longer. points is how many
// moments are wanted at the most. Nil where it does not come down at a steady speed.
//
//	(J + m·q_d/c²)·dω/dt = T_g − K·I_0 − K·I(ω),   K·ω = V_b + U + I·R with the loads taking I at U
//
// Time over speed is an integral; with ω = ω*·(1 − e^−s) the long approach becomes an even step of s (Simpson's rule).
func (c Course) Descent(points int) []Moment {
	w, lo := c.w, c.w.d.Lowering
	if !c.known || !lo.Known || !lo.Steady || lo.Rotor <= 0 || points < 4 {
		return nil
	}
	gear := w.gearing(w.fullest())
	turning := w.j + w.moving()/(gear*gear)
	const far = 6.9 // e^−6.9 is a thousandth
	n := points - 1 // one is left for the steady end
	pull := float64(w.d.AtMotorDown.Val) - w.kk*w.i0
	per := func(s float64) float64 { // dt/ds
		left := float64(lo.Rotor) * math.Exp(-s)
		_, i := c.terminal(float64(lo.Rotor) - left)
		force := pull - w.kk*i
		if force <= 0 { // by rounding only: the loads take less than the machine gives until it is there
			return 0
		}
		return turning * left / force
	}
	var out []Moment
	t, step := 0.0, far/float64(n-1)
	last := per(0)
	for k := range n {
		s := float64(k) * step
		if k > 0 {
			now := per(s)
			t += step / 6 * (last + 4*per(s-step/2) + now)
			last = now
		}
		out = append(out, c.moment(t, float64(lo.Rotor)*-math.Expm1(-s), gear))
	}
	end := out[n-1]
	end.Time *= 4. / 3
	end.Rotor, end.Speed, end.Volts, end.Power = lo.Rotor, lo.Speed, lo.Voltage, max(0, lo.SteadyPower)
	out = append(out, end)
	for _, m := range out {
		if !finite(float64(m.Time), float64(m.Speed), float64(m.Volts), float64(m.Power)) {
			return nil
		}
	}
	return out
}

func (c Course) moment(t, rotor, gear float64) Moment {
	u, i := c.terminal(rotor)
	r := root{u: u, holder: -1}
	if top, holder := ceiling(c.loads, math.Inf(1)); u >= top {
		r.holder = holder
	}
	power := math.Max(0, r.reaching(c.loads, i)-float64(c.w.h.Lower.Auxiliary.Or(0)))
	return Moment{unit.Duration(t), unit.AngularSpeed(rotor), unit.Speed(rotor / gear), unit.Voltage(u), unit.Power(power)}
}

// terminal is voltage and current of the loads at a rotor speed.
func (c Course) terminal(rotor float64) (u, i float64) {
	a := c.ends.at(c.w.kk*rotor - c.w.vb)
	return a.u, a.i
}

// Warmth is the winding at one moment.
type Warmth struct {
	Time    unit.Duration
	Winding unit.Celsius
}

// Warmths follows the winding from cold over runs of one current at one rotor speed with rests between, each drawn with
// so many points. Nil where the motor's thermal values are not known.
func (c Course) Warmths(i unit.Current, rotor unit.AngularSpeed, run, rest unit.Duration, runs, points int) []Warmth {
	body, ok := c.w.thermal(float64(i), float64(rotor))
	if !ok || run <= 0 || rest < 0 || runs < 1 || points < 1 {
		return nil
	}
	air := float64(c.w.h.Lower.Ambient.Or(25))
	out := []Warmth{{0, unit.Celsius(air)}}
	var th [2]float64
	t := 0.0
	stretch := func(long float64, on bool) {
		for k := 1; k <= points && long > 0; k++ {
			th = body.after(long/float64(points), th, on)
			t += long / float64(points)
			out = append(out, Warmth{unit.Duration(t), unit.Celsius(math.Min(air+th[0], 1e6))})
		}
	}
	for k := range runs {
		stretch(float64(run), true)
		if k < runs-1 {
			stretch(float64(rest), false)
		}
	}
	for _, x := range out {
		if !finite(float64(x.Time), float64(x.Winding)) {
			return nil
		}
	}
	return out
}

// after is one body after t from θ: running θ·e^(−(1−x)·t/τ) + the rise from cold, standing θ·e^(−t/τ).
func (q heating) after(t float64, th [2]float64, on bool) [2]float64 {
	if !on {
		return [2]float64{th[0] * math.Exp(-t/q.tau)}
	}
	return [2]float64{th[0]*math.Exp(-(1-q.x)*t/q.tau) + q.rise(t)}
}

func (q twoBody) after(t float64, th [2]float64, on bool) [2]float64 {
	if !on {
		return q.off.after(t, th, [2]float64{})
	}
	return q.on.after(t, th, [2]float64{q.p1, q.p2})
}
