package lift

import (
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Growth returns how fast a small departure from the balance grows, 1/s: −K²·g/((1 + g·R)·J_t). Negative: it dies away.
// For a constant power alone, g = −P/U², it is K²·P/((U² − P·R)·J_t). Not known where 1 + g·R ≤ 0 or nothing turns:
// then it goes at once.
func Growth(k unit.MachineConstant, slope float64, r unit.Resistance, turning unit.Inertia) unit.Known[unit.Ratio] {
	d := (1 + slope*float64(r)) * float64(turning)
	if d <= 0 {
		return unit.Known[unit.Ratio]{}
	}
	return told[unit.Ratio](-float64(k) * float64(k) * slope / d)
}

// hardLanding is the drop, m, from which a landing is called hard (our own judgement: half a metre a second).
const hardLanding = 0.0127

// settles fills whether the loads hold the mass at a steady speed, and what would mend it where they do not.
func (w *work) settles(p point, r root, bs []branch) bool {
	lo := &w.d.Lowering
	lo.Known = true
	lo.Steady, lo.Stiff = r.found, r.stiff
	if finite(r.slope) {
		lo.Slope = r.slope
	}
	if r.found && r.u >= 0 && p.rotor > 0 {
		return true
	}
	lo.Steady, lo.Stiff = false, false
	power := 0.0
	for _, b := range bs {
		power += b.power
	}
	switch {
	case r.found:
		lo.Say = say.That("The speed that is set cannot be kept: even with the motor wires joined the mass turns it at %s.", say.Turning(unit.AngularSpeed(w.rotorAt(0, p.current))))
		w.bad("lower.loads", "%s", lo.Say)
		return false
	case power == 0:
		lo.Say = say.That("Nothing that is wired to the motor slows the mass: it runs away.")
		w.bad("lower.loads", "%s", lo.Say)
		return false
	}
	w.race(p, r, bs, power)
	return false
}

// race fills what a constant power does to a mass that comes down: figures at the balance, which does not last.
func (w *work) race(p point, r root, bs []branch, power float64) {
	lo := &w.d.Lowering
	at := r.at
	if at == 0 && r.races {
		at = power / p.current // under the least voltage of the load: the balance is on paper only
	}
	slope := -power / (at * at)
	if r.at > 0 {
		_, slope = sumAt(bs, at)
	}
	rotor := w.rotorAt(at, p.current)
	if at > 0 && finite(at, slope, rotor, rotor/p.c) {
		lo.Slope, lo.Voltage = slope, unit.Voltage(at)
		lo.Rotor, lo.Speed = unit.AngularSpeed(rotor), unit.Speed(rotor/p.c)
		jt := w.j + w.moving()/(p.c*p.c)
		lo.Growth = Growth(unit.MachineConstant(w.kk), lo.Slope, unit.Resistance(w.r), unit.Inertia(jt))
	}
	switch {
	case r.at > 0 && r.races:
		lo.Say = say.That("It never settles: these loads use constant power. A little above %s the mass runs away; a little below they get no power and it creeps down.", say.Voltage(unit.Voltage(r.at)))
	case r.races:
		lo.Say = say.That("It never settles: these loads use constant power, and the mass runs away.")
	default:
		lo.Say = say.That("The loads ask for more current than the mass gives. They switch off and on, or get no power, while it creeps down.")
	}
	w.cures(p, bs, power)
	for i, c := range lo.Cures {
		lo.Say = say.Join(lo.Say, say.That("Cure %s: %s", i+1, c.Say))
	}
	w.bad("lower.loads", "%s", lo.Say)
}

// sumAt is current and slope of all branches at a voltage.
func sumAt(bs []branch, u float64) (i, g float64) {
	for _, b := range bs {
		x, y := b.current(u)
		i, g = i+x, g+y
	}
	return i, g
}

// moving is m·q_d, the mass as the rotor feels it on the way down.
func (w *work) moving() float64 {
	return float64(w.n) * w.fDown / unit.G * math.Max(0, w.run.backward())
}

// cures are the three ways to make a constant power settle.
//
//	resistor: U²/R > P, so it burns at least P; with U·I = U²/R + P that takes R ≥ 4·P/I² and U ≥ 2·P/I, and more where
//	the converter works from a higher voltage on: R = U/(I − P/U) burns U·I − P
//	clamp at U_z: burns U_z·I − P;   a converter whose input is governed: nothing
func (w *work) cures(p point, bs []branch, power float64) {
	i := p.current
	least := 0.0
	for _, b := range bs {
		least = math.Max(least, b.least)
	}
	u := math.Max(2*power/i, 1.15*least)
	r := u / (i - power/u)
	clamp := 1.15 * math.Max(power/i, least)
	if !finite(u, r, clamp) {
		return
	}
	w.d.Lowering.Cures = []Cure{
		{Say: say.That("a resistor of at least %s beside them, wired straight to the motor. It burns at least %s, and the voltage is %s or more.", say.Resistance(unit.Resistance(r)), say.Power(unit.Power(u*i-power)), say.Voltage(unit.Voltage(u))), Burns: unit.Power(u*i - power), Resistance: unit.Of(unit.Resistance(r))},
		{Say: say.That("a clamp that conducts at %s, wired straight to the motor. It burns %s.", say.Voltage(unit.Voltage(clamp)), say.Power(unit.Power(clamp*i-power))), Burns: unit.Power(clamp*i - power), Voltage: unit.Of(unit.Voltage(clamp))},
		{Say: say.That("a converter that keeps the motor's speed. It burns nothing beside its own loss."), Burns: 0},
	}
}

// mayOpen lists everything that lets the mass go when it opens.
func (w *work) mayOpen() {
	lo := &w.d.Lowering
	lo.MayOpen = []string{"a wire or a terminal between the motor and the lamps", "a brush of the motor that sticks or wears out", "a fuse, a switch or a changeover in that line", "a thermal cut-out in the motor"}
	for _, l := range w.h.Lower.Loads {
		straight := l.Permanent == unit.Yes
		lo.Shunt = lo.Shunt || l.shunt()
		name := l.Name
		if name == "" {
			name = loadWord(l.Kind)
		}
		if !straight {
			lo.MayOpen = append(lo.MayOpen, name+": its plug, switch or fuse")
		}
		if l.Kind == LoadString {
			lo.MayOpen = append(lo.MayOpen, name+": one lamp of the row that burns out")
		}
		if l.Kind == LoadConstantPower || l.Kind == LoadGoverned {
			lo.MayOpen = append(lo.MayOpen, name+": its electronics switch off, for low or for high voltage")
		}
		if l.Kind == LoadCell {
			lo.MayOpen = append(lo.MayOpen, name+": its management board cuts it off when full")
		}
	}
}

// sayShunt asks for the permanent shunt: a clamp is sized 15 % above the voltage of the loads.
func (w *work) sayShunt() {
	lo := w.d.Lowering
	if lo.Shunt {
		w.flagShunt()
		return
	}
	if w.h.Lower.Shunt == unit.Yes {
		w.caution("lower.shunt", "You say that a resistor or clamp is wired straight to the motor, but it is not among the loads. Enter it there as wired for good: it uses its share of the current. Until then it counts as missing.")
		return
	}
	size := say.Sentence{}
	if lo.Known && lo.Steady && lo.Voltage > 0 {
		size = say.That(" (a clamp that conducts at about %s)", say.Voltage(unit.Voltage(1.15*float64(lo.Voltage))))
	}
	w.caution("lower.shunt", "If this circuit breaks anywhere, the mass runs away: nothing is wired straight to the motor to brake it. Wire a resistor or a clamp to its terminals%s, with no fuse, switch or plug.", size)
}

func loadWord(kind LoadKind) string {
	switch kind {
	case LoadResistor:
		return "the resistor"
	case LoadString:
		return "the lamps in a row"
	case LoadCell:
		return "the battery"
	case LoadConstantPower:
		return "the converter"
	case LoadGoverned:
		return "the governed converter"
	case LoadClamp:
		return "the clamp"
	}
	return "the load"
}

// dragDecides is the share of the mass's torque at the motor from which the motor's own drag is said to decide (our own
// judgement: half or twice as much drag then changes the current by an eighth or more).
const dragDecides = 0.25

// flagLowering says what is wrong although it settles.
func (w *work) flagLowering(bs []branch, r root) {
	lo := w.d.Lowering
	i := float64(lo.Current)
	w.flagCurrent("Coming down the motor carries", i)
	if most, over := w.tooFast(lo.FastestRotor()); over {
		w.bad("machine.max_speed_rad_s", "Coming down turns the motor at %s. %s Lamps for a lower voltage slow it down.", say.Turning(lo.FastestRotor()), most)
	}
	if drags := w.kk * w.i0 / float64(w.d.AtMotorDown.Val); drags > dragDecides {
		w.caution("machine.i0_a", "The motor's own drag uses %s of what the mass gives on the way down, so that drag decides what this hoist gives. Measure the current without load.", say.Share(unit.Ratio(drags)).To(2))
	}
	for j, x := range r.split(bs, i) {
		w.flagLoad(j, bs[j], x, r.u)
	}
	if v := float64(lo.Fastest()); v*v/(2*unit.G) > hardLanding {
		w.caution("lower.loads", "It comes down at %s and lands as if dropped from %s. Slow it with a lower voltage or more gear ratio, and lay something soft under it.", say.Speed(unit.Speed(v)), say.Taped(unit.Length(v*v/(2*unit.G))))
	}
	if lo.Voltage > touchVolts {
		w.caution("lower.loads", "%s is above 60 V direct current: a shock can kill. Stay at or below 60 V.", say.Voltage(unit.Voltage(r.u)))
	}
	aux, asked := w.h.Lower.Auxiliary.Value()
	if reaching := float64(lo.SteadyPower + aux); reaching <= 0 {
		w.caution("lower.loads", "%s", w.darkSay(bs, r))
	} else if lo.Power <= 0 {
		w.caution("lower.auxiliary_w", "Brake coil and controller use all that the mass gives on the way down. Nothing reaches the lamps.")
	} else if asked && float64(aux) > float64(lo.Power) {
		w.caution("lower.auxiliary_w", "Brake coil and controller use %s, more than the lamps get (%s).", say.Power(aux), say.Power(lo.Power))
	}
}
