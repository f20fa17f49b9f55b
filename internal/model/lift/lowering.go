package lift

import (
	"fmt"
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// falling is one layer on the way down, with the current it makes and the loads' answer to it.
func (w *work) falling(l layer, i float64, bs []branch) (point, root) {
	r := settle(bs, i, w.governedVolts(bs, i))
	p := point{layer: l, c: w.gearing(l), current: i}
	p.rotor = w.rotorAt(r.u, i)
	p.speed = p.rotor / p.c
	p.time = l.share * w.travel / p.speed
	p.power = r.reaching(bs, i) - float64(w.h.Lower.Auxiliary.Or(0))
	return p, r
}

// rotorAt is the rotor's speed, rad/s, at which the motor gives current i at terminals with u volts.
func (w *work) rotorAt(u, i float64) float64 {
	return float64(GeneratorSpeed(unit.Voltage(u), unit.Voltage(w.vb), unit.Current(i), unit.Resistance(w.r), unit.MachineConstant(w.kk)))
}

// governedVolts is the voltage at which the lowest set speed stands: K·ω_set − V_b − I·R.
func (w *work) governedVolts(bs []branch, i float64) float64 {
	u := math.Inf(1)
	for _, b := range bs {
		if b.kind == LoadGoverned {
			u = math.Min(u, w.kk*b.speed-w.vb-i*w.r)
		}
	}
	return u
}

// lower fills the way down.
func (w *work) lower() {
	lo := &w.d.Lowering
	if !w.runsBack() {
		return
	}
	w.needs()
	w.mayOpen()
	bs, ok := w.branches()
	if !w.h.Lower.Auxiliary.Is {
		w.lack("lower.auxiliary_w", "what reaches the lamps; brake coil and controller are counted as none")
	}
	if lo.RunsBack == DownNo {
		lo.Known = true
		w.sayStuck()
		w.sayShunt()
		return
	}
	if lo.RunsBack == DownNudge {
		w.sayNudge()
	}
	if ok {
		w.rideDown(bs)
	}
	w.sayShunt()
}

// runsBack tells whether the mass comes down by itself: in the layer that helps it least, for it must come down all
// the way. False where the numbers leave what can be computed.
func (w *work) runsBack() bool {
	lo := &w.d.Lowering
	first := w.layers[0]
	run, _, stuck := w.run.down(w.drumDown(first.length)) // the smaller radius: it must give energy all the way
	push, _, stuckBA := w.push.down(w.drumDown(first.torque))
	current := GeneratorCurrent(w.d.AtMotorDown.Val, unit.MachineConstant(w.kk), unit.Current(w.i0))
	breakaway := push/w.kk - w.b*w.i0
	if !finite(run/w.kk, float64(current), breakaway) {
		w.caution("lower", beyond)
		return false
	}
	lo.Current, lo.BreakawayCurrent = current, unit.Current(breakaway)
	w.stuck = stuck
	worst := RunsBack
	for _, g := range w.gears {
		if g.class == Locks || (g.class == Uncertain && worst != Locks) {
			worst = g.class
		}
	}
	switch {
	case stuck >= 0 || run/w.kk-w.i0 <= 0 || worst == Locks:
		lo.RunsBack = DownNo
	case stuckBA >= 0 || lo.BreakawayCurrent <= 0 || worst == Uncertain:
		lo.RunsBack = DownNudge
	default:
		lo.RunsBack = DownYes
	}
	return true
}

// needs fills the smallest mass, the smallest drum, the greatest ratio that come down by themselves.
func (w *work) needs() {
	lo := &w.d.Lowering
	for _, g := range w.gears {
		if g.class != RunsBack {
			return
		}
	}
	motor := w.b * w.kk * w.i0
	drum, ok := w.push.drumTorqueFor(motor)
	if !ok {
		return
	}
	first := w.layers[0]
	lo.NeedsMass = told[unit.Mass]((drum + w.bearing) / first.torque / w.fDown * w.m)
	d := 2*(drum+w.bearing)/w.fDown - float64(w.h.Rope.Diameter.Val)
	lo.NeedsDrum = told[unit.Length](math.Max(0, d))
	_, in, _ := w.push.down(w.drumDown(first.torque))
	out := w.drumDown(first.torque)
	if len(in) > 1 {
		out = in[1]
	}
	head := w.push[0]
	if need := motor + head.t0; out > 0 && need > 0 {
		if n := w.run.ratio() / head.r * out * head.back / need; n >= w.run.ratio()/head.r {
			lo.NeedsRatio = told[unit.Ratio](n)
		}
	}
}

// sayStuck says why it does not come down and what would mend it.
func (w *work) sayStuck() {
	lo := &w.d.Lowering
	why := say.That("It will not come down by itself: the motor's own friction holds it.")
	for i, g := range w.gears {
		if g.class == Locks || g.run.back <= 0 {
			lo.Say = say.That("It will not come down by itself: gear stage %s locks (%s forward leaves nothing backward). Another stage there, above %s, is needed.", i+1, say.Share(unit.Ratio(g.run.fwd)), say.Share(sureAbove))
			w.bad(fmt.Sprintf("train.stages[%d]", i), "%s", lo.Say)
			return
		}
	}
	if w.drumDown(w.layers[0].torque) <= 0 {
		why = say.That("It will not come down by itself: the friction of the drum's bearings holds it.")
	} else if w.stuck >= 0 {
		why = say.That("It will not come down by itself: the idle torque of gear stage %s uses all that is left.", w.stuck+1)
	}
	lo.Say = say.Join(why, w.wouldRun())
	w.bad("train.stages", "%s", lo.Say)
}

// sayNudge says why it needs a push.
func (w *work) sayNudge() {
	lo := &w.d.Lowering
	lo.Say = say.Join(say.That("It comes down only with a push: once it moves it keeps moving, but it does not start by itself."), w.wouldRun())
	for i, g := range w.gears {
		if g.class == Uncertain {
			lo.Say = say.That("It may come down only with a push: gear stage %s, at %s, is not sure to run back. Test it, or use a stage above %s.", i+1, say.Share(unit.Ratio(g.inner)), say.Share(sureAbove))
		}
	}
	w.caution("train.stages", "%s", lo.Say)
}

// wouldRun is the cure in words: mass, drum or ratio.
func (w *work) wouldRun() say.Sentence {
	lo := w.d.Lowering
	var ways []say.Sentence
	if v, ok := lo.NeedsMass.Value(); ok && v > w.d.Mass.Val {
		ways = append(ways, say.That("with %s", say.Mass(v).Up()))
	}
	if v, ok := lo.NeedsDrum.Value(); ok && v > w.h.Drum.Diameter.Val {
		ways = append(ways, say.That("with a drum of %s", say.Width(v).Up()))
	}
	if v, ok := lo.NeedsRatio.Value(); ok && v < w.d.Ratio.Val {
		ways = append(ways, say.That("with gears of %s:1", say.Times(v).Down()))
	}
	if len(ways) == 0 {
		return say.That("No mass or drum mends that: other gears or another motor are needed.")
	}
	return say.That("It would start by itself %s. Then look whether it still lifts.", say.List(", or ", ways...))
}

// tooShort tells a steady speed that the travel is too short to reach: no load makes the mass arrive faster than it would
// with none.
func (w *work) tooShort() {
	lo := &w.d.Lowering
	end := w.freeRun()
	if !finite(end) || end <= 0 || end >= float64(lo.Speed) {
		return
	}
	lo.Short = true
	w.caution("travel_m", "The travel is too short for a steady speed: the mass would settle at %s and arrives at %s. Volts and motor speed at the steady speed are those of a longer way. Time, power and energy are those of this one.", say.Speed(lo.Speed), say.Speed(lo.EndSpeed))
}

// rideDown finds the steady speed of every layer and fills the figures of the fullest one, then follows the whole way.
func (w *work) rideDown(bs []branch) {
	lo := &w.d.Lowering
	full, r := w.falling(w.fullest(), float64(lo.Current), bs)
	if !w.settles(full, r, bs) {
		return
	}
	costs, steady := 0.0, 0.0
	for _, l := range w.layers {
		t, _, _ := w.run.down(w.drumDown(l.length))
		p, at := w.falling(l, t/w.kk-w.i0, bs)
		if !at.found {
			w.settles(p, at, bs)
			return
		}
		w.down.points, w.roots = append(w.down.points, p), append(w.roots, at)
		steady += at.reaching(bs, p.current) * p.time
		costs += l.share * p.c * w.kk / (w.m * unit.G) * at.reaching(bs, p.current) / at.u
	}
	way := w.descend(bs)
	w.down.gain = costs
	w.down.time, w.down.energy = way.time, way.reaching-float64(w.h.Lower.Auxiliary.Or(0))*way.time
	if !finite(full.rotor, full.speed, w.down.time, w.down.energy, w.down.gain, way.fastest, way.left, w.down.energy/w.down.time) || full.speed <= 0 {
		lo.Known, lo.Steady = false, false
		return
	}
	if steady > 0 {
		w.down.kept = way.reaching / steady
	}
	lo.Voltage, lo.Rotor, lo.Speed = unit.Voltage(r.u), unit.AngularSpeed(full.rotor), unit.Speed(full.speed)
	lo.Time, lo.EnergyOut = unit.Duration(w.down.time), unit.Energy(w.down.energy)
	lo.Power, lo.SteadyPower = unit.Power(w.down.energy/w.down.time), unit.Power(full.power)
	last := w.gearing(w.layers[0])
	lo.EndSpeed, lo.Left = unit.Speed(way.last), unit.Energy(way.left)
	lo.Top, lo.TopRotor = unit.Speed(way.fastest), unit.AngularSpeed(way.fastest*last)
	w.tooShort()
	lo.CurrentLow, lo.SpeedLow = w.down.points[0].current, w.down.points[0].speed
	w.flagLowering(bs, r)
}
