package lift

import (
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// wantedMargin is how much more than its first push a motor should have (source.CommonPractice).
const wantedMargin = 1.3

// point is a hoist moving steadily in one layer.
type point struct {
	layer
	c       float64 // rad of the rotor for a metre of travel
	current float64
	rotor   float64
	speed   float64
	time    float64
	power   float64 // at the line raising, at the lamps lowering
}

// passage is a whole travel, layer by layer, with its sums.
type passage struct {
	points []point
	time   float64
	energy float64
	gain   float64 // own joules for a joule at the line (raising), or the reverse (lowering), over the whole travel
	kept   float64 // lowering: what reaches the lamps, as a share of what would at the steady speed all the way
}

// supply is what feeds the motor.
type supply struct {
	volts, loop, limit, eff, aux float64 // loop: winding, wires and source together
}

// Available returns the current that a held motor takes from its supply: the limit, or (V − V_b)/R of the whole loop.
func Available(volts, brush unit.Voltage, loop unit.Resistance, limit unit.Known[unit.Current]) unit.Current {
	i := unit.Current(float64(volts-brush) / float64(loop))
	if v, ok := limit.Value(); ok {
		i = min(i, v)
	}
	return max(i, 0)
}

// StartMargin returns how much more torque the motor has than its first push takes: K·(I_av − b·I_0)/T_ba.
func StartMargin(k unit.MachineConstant, available, i0 unit.Current, b unit.Ratio, first unit.Torque) unit.Ratio {
	return unit.Ratio(float64(k) * (float64(available) - float64(b)*float64(i0)) / float64(first))
}

// StartIrradiance returns the sun, W/m², at which a panel straight on a motor that lifts gives the current of the first
// push: a hoist asks for a current, whatever the speed (source.Appelbaum).
func StartIrradiance(start, shortCircuit unit.Current) unit.Irradiance {
	return unit.Irradiance(1000 * float64(start/shortCircuit))
}

// RaisePoint returns how the motor turns and what it takes at a voltage: what a panel or a drive needs to know.
// The speed is 0 where it does not turn.
func (d Drive) RaisePoint(volts unit.Voltage) (current unit.Current, rotor unit.AngularSpeed, speed unit.Speed) {
	c := d.Machine
	if !d.AtMotorUp.Is || !c.K.Is || !c.I0.Is || !c.R.Is || !d.RotorPerMetre.Is {
		return 0, 0, 0
	}
	current = MotorCurrent(d.AtMotorUp.Val, c.K.Val, c.I0.Val)
	rotor = max(0, MotorSpeed(volts, c.BrushDrop, current, c.R.Val+d.Raising.Wire, c.K.Val))
	return current, rotor, unit.Speed(float64(rotor) / float64(d.RotorPerMetre.Val))
}

// supply reads what feeds the motor; what is not known and counted as none is said.
func (w *work) supply() (supply, bool) {
	r := w.h.Raise
	s := supply{eff: float64(r.DriveEff.Or(1)), aux: float64(r.Auxiliary.Or(0)), limit: math.Inf(1)}
	w.d.Raising.Wire = r.WireR.Or(0)
	s.loop = w.r + float64(w.d.Raising.Wire)
	if r.Feed == "" {
		w.lack("raise.feed", "how the sun's power becomes height")
	}
	if !r.DriveEff.Is && r.Feed == FeedDrive {
		w.lack("raise.drive_efficiency", "what a lift costs; counted as 1, so the real cost is higher")
	}
	if !r.Auxiliary.Is {
		w.lack("raise.auxiliary_w", "what a lift costs; brake coil and relays are counted as none")
	}
	if v, ok := r.CurrentLimit.Value(); ok {
		s.limit = float64(v)
	}
	v, ok := r.Voltage.Value()
	if !ok && r.Feed != FeedPanel {
		w.lack("raise.voltage_v", "whether it lifts, how fast, for how much")
	}
	s.volts = float64(v)
	return s, ok
}

// raise fills the way up.
func (w *work) raise() {
	ra := &w.d.Raising
	s, ok := w.supply()
	l := w.fullest()
	ra.Current = MotorCurrent(w.d.AtMotorUp.Val, unit.MachineConstant(w.kk), unit.Current(w.i0))
	first, _ := w.push.up(w.drumUp(l.torque))
	ra.FirstPush = unit.Current(first/w.kk + w.b*w.i0)
	if !finite(float64(ra.Current), float64(ra.FirstPush)) {
		ra.Current, ra.FirstPush = 0, 0
		w.caution("raise", beyond)
		return
	}
	w.climbs()
	if !ok {
		if w.h.Raise.Feed == FeedPanel {
			ra.Say = say.That("The sun decides: it lifts while the panel gives %s, and starts at %s.", say.Current(ra.Current), say.Current(ra.FirstPush))
		}
		return
	}
	available := float64(Available(unit.Voltage(s.volts), unit.Voltage(w.vb), unit.Resistance(s.loop), w.h.Raise.CurrentLimit))
	margin := StartMargin(unit.MachineConstant(w.kk), unit.Current(available), unit.Current(w.i0), unit.Ratio(w.b), unit.Torque(first))
	p := w.rising(l, float64(ra.Current), s)
	if !finite(available, float64(margin), p.rotor, p.speed) {
		w.caution("raise", beyond)
		return
	}
	ra.Known, ra.Margin = true, margin
	ra.Starts = ra.Margin >= 1
	ra.Stalls = p.rotor <= 0 || float64(ra.Current) >= s.limit || !ra.Starts
	if ra.Stalls {
		w.sayStall(available, first, s)
		return
	}
	w.rideUp(p, s)
	w.flagRaising()
}

// climbs tells what each layer takes, for a supply whose voltage changes.
func (w *work) climbs() {
	for _, l := range w.layers {
		t, _ := w.run.up(w.drumUp(l.length))
		c := Climb{Share: l.share, Current: unit.Current(t/w.kk + w.i0), RotorPerMetre: unit.Ratio(w.gearing(l))}
		if !finite(float64(c.Current), float64(c.RotorPerMetre)) || c.RotorPerMetre <= 0 {
			w.d.Raising.Layers = nil
			return
		}
		w.d.Raising.Layers = append(w.d.Raising.Layers, c)
	}
}

// rising is one layer on the way up, with the current it takes.
func (w *work) rising(l layer, i float64, s supply) point {
	p := point{layer: l, c: w.gearing(l), current: i}
	p.rotor = (s.volts - w.vb - i*s.loop) / w.kk
	p.speed = p.rotor / p.c
	p.time = l.share * w.travel / p.speed
	p.power = s.volts*i/s.eff + s.aux
	return p
}

// rideUp sums the layers. Energy is counted with the radius for length in the torque too, so that none is made.
func (w *work) rideUp(full point, s supply) {
	ra := &w.d.Raising
	costs := 0.0
	for _, l := range w.layers {
		t, _ := w.run.up(w.drumUp(l.length))
		p := w.rising(l, t/w.kk+w.i0, s)
		w.up.points = append(w.up.points, p)
		w.up.time += p.time
		w.up.energy += p.power * p.time
		costs += l.share * p.c * w.kk * p.current / (w.m * unit.G * s.eff)
	}
	w.up.gain = 1 / costs
	if !finite(w.up.time, w.up.energy, w.up.gain, full.speed) || w.up.time <= 0 || w.up.energy <= 0 {
		ra.Known = false
		w.caution("raise", beyond)
		return
	}
	ra.Speed, ra.Rotor = unit.Speed(full.speed), unit.AngularSpeed(full.rotor)
	ra.Time, ra.EnergyIn = unit.Duration(w.up.time), unit.Energy(w.up.energy)
	ra.Share = unit.Ratio(w.m * unit.G * w.travel / w.up.energy)
	ra.CurrentLow, ra.SpeedLow = w.up.points[0].current, w.up.points[0].speed
}

// sayStall says why it does not lift and what would mend it.
func (w *work) sayStall(available, first float64, s supply) {
	ra := &w.d.Raising
	need := wantedMargin*first + w.b*w.kk*w.i0 // at the motor, with the margin
	had := w.kk * available
	amp := need / w.kk
	why := say.That("The motor stalls: it needs %s to start the mass and has %s.", say.Torque(unit.Torque(first+w.b*w.kk*w.i0)), say.Torque(unit.Torque(had)))
	if had >= first+w.b*w.kk*w.i0 {
		why = say.That("The motor stalls: lifting needs %s, and the supply gives less than that at any speed.", say.Current(ra.Current))
	}
	ra.Say = say.Join(why, w.wouldLift(available, amp, s), say.That("Less mass or a thinner drum helps too."))
	if g, missing := LabelGear(w.h, w.d.Stages); missing {
		ra.Gearless = true
		ra.Say = say.That("Whether the hoist lifts is not known: the gearbox of the motor's label, %s : 1, is not in the train. Without it the motor stalls. Add it as the first stage.", say.Times(g))
		w.caution("machine.sheet_gear_ratio", "%s", ra.Say)
		return
	}
	w.bad("raise", "%s", ra.Say)
}

// wouldLift is the cure in words: more volts or amperes where the motor stands that current, and gears.
func (w *work) wouldLift(available, amp float64, s supply) say.Sentence {
	most, limited := w.h.Machine.MaxCurrent.Value()
	if limited && amp > startOverload*float64(most) {
		if n, ok := w.liftRatio(math.Min(available, float64(most))); ok {
			return say.That("It needs gears of about %s:1 in all, which lift with the %s that the motor withstands all day. More volts would overheat it.", say.Times(unit.Ratio(n)), say.Current(most))
		}
	}
	cure := say.That("It would lift with about %s (%s)", say.Voltage(unit.Voltage(w.vb+amp*s.loop)), say.Current(unit.Current(amp)))
	if s.limit*s.loop+w.vb <= s.volts {
		cure = say.That("It would lift with a supply that gives %s, not %s", say.Current(unit.Current(amp)), say.Current(unit.Current(available)))
	}
	if n, ok := w.liftRatio(available); ok {
		return say.That("%s, or slower with gears of about %s:1.", cure, say.Times(unit.Ratio(n)))
	}
	return say.That("%s.", cure)
}

// startOverload is how many times the current it stands all day a motor is thought to take for a first push (common
// practice).
const startOverload = 3

// liftRatio returns the smallest ratio of the whole train, changed at the stage by the motor, that lifts with margin.
func (w *work) liftRatio(available float64) (float64, bool) {
	_, in := w.push.up(w.drumUp(w.fullest().torque))
	first := w.push[0]
	out := w.drumUp(w.fullest().torque)
	if len(in) > 1 {
		out = in[1]
	}
	spare := w.kk*(available-w.b*w.i0)/wantedMargin - first.t0
	if spare <= 0 {
		return 0, false
	}
	n := w.run.ratio() * out / (spare * first.fwd * first.r)
	return n, finite(n) && n > w.run.ratio()
}

// flagRaising says what is wrong although it lifts.
func (w *work) flagRaising() {
	ra := w.d.Raising
	if ra.Margin < wantedMargin {
		w.caution("raise", "It lifts, but hardly starts: the supply gives %s times the current of the first push, and %s times is needed. Cold grease or a night under load can stop it.", say.Times(ra.Margin).Down(), say.Times(wantedMargin))
	}
	w.flagCurrent("Lifting needs", float64(ra.Current))
	if most, over := w.tooFast(ra.Rotor); over {
		w.bad("machine.max_speed_rad_s", "Lifting turns the motor at %s. %s A lower voltage slows it.", say.Turning(ra.Rotor), most)
	}
	if stall := (float64(w.h.Raise.Voltage.Or(0)) - w.vb) / w.r; float64(ra.Current) > stall/2 {
		w.caution("raise", "Lifting needs more than half of all that the motor can pull. It wastes more than half of the energy and heats fast. More gear ratio helps.")
	}
	if v, ok := w.h.Raise.Voltage.Value(); ok && v > touchVolts {
		w.caution("raise.voltage_v", "%s is above 60 V direct current: a shock can kill. Stay at or below 60 V.", say.Voltage(v))
	}
}
