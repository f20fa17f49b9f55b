package lift

import "slices"

// What many combinations of parts have in common, worked out once for each part: whether a motor lifts the mass, and
// whether the mass comes down by itself, takes no more than a few multiplications then. The equations are those of Compute,
// and a test holds the two together.

// Hung is the mass on its rope, pulleys and drum, before gears and motor are chosen.
type Hung struct {
	up, down float64 // N·m at the drum: fullest layer raising, first layer lowering
}

// Geared is one stage of a train.
type Geared struct{ run, push pair }

// Turned is a motor with what feeds it.
type Turned struct {
	k, r, i0, vb float64
	supply       supply
	fed          bool
	b            float64
}

// HungOf works out what hangs in a hoist; false where too little is known.
func HungOf(h Hoist) (Hung, bool) {
	w := &work{h: h, d: &Drive{}, bearing: float64(h.Drum.Friction.Or(0))}
	w.rope()
	w.winding()
	if !w.haveMass() || !w.d.DrumTorqueUp.Is || len(w.layers) == 0 || w.n == 0 {
		return Hung{}, false
	}
	return Hung{up: w.drumUp(w.fullest().torque), down: w.drumDown(w.layers[0].length)}, true
}

// GearedOf works out every stage of a hoist's train; false where too little is known of one.
func GearedOf(h Hoist) ([]Geared, bool) {
	w := &work{h: h, d: &Drive{}}
	w.train()
	var out []Geared
	for _, g := range w.gears {
		out = append(out, Geared{g.run, g.push})
	}
	return out, w.haveTrain
}

// TurnedOf works out the motor of a hoist and what feeds it; false where too little is known of the motor.
func TurnedOf(h Hoist) (Turned, bool) {
	w := &work{h: h, d: &Drive{}}
	w.constants()
	t := Turned{k: w.kk, r: w.r, i0: w.i0, vb: w.vb, b: float64(h.Train.Breakaway.Or(usualBreakaway))}
	t.supply, t.fed = w.supply()
	return t, w.haveMachine
}

// Screened is what a combination comes to at first sight.
type Screened struct {
	Stalls bool    // the motor does not lift
	Stuck  bool    // it does not come down by itself at all
	Short  float64 // of one that does only one of the two: the share that is there of what the other takes, 0 where none is
	Back   float64 // share of the work of lifting, in and out of the motor, that comes back; friction of gears and motor and the heat of lifting lost
}

// Screen tells whether a motor lifts what hangs through some stages, the first at the motor, and whether it comes down.
func Screen(h Hung, train []Geared, m Turned) Screened {
	run, push := h.up, h.up
	for _, g := range slices.Backward(train) {
		run, push = g.run.up(run), g.push.up(push)
	}
	s := Screened{}
	current := run/m.k + m.i0
	if m.fed {
		available := max(0, min((m.supply.volts-m.vb)/m.supply.loop, m.supply.limit))
		rotor := m.supply.volts - m.vb - current*m.supply.loop
		s.Stalls = m.k*(available-m.b*m.i0) < push || rotor <= 0 || current >= m.supply.limit
	}
	down := h.down
	s.Stuck = down <= 0
	for _, g := range slices.Backward(train) {
		down = g.run.down(down)
		if s.Stuck = s.Stuck || down <= 0; s.Stuck {
			return s
		}
	}
	got := down/m.k - m.i0
	if s.Stuck = got <= 0; s.Stuck || s.Stalls {
		if s.Stuck != s.Stalls {
			s.Short = m.short(s.Stalls, push, down)
		}
		return s
	}
	s.Back = got / current
	if m.fed {
		s.Back *= (m.supply.volts - m.vb - current*m.supply.loop) / m.supply.volts
	}
	return s
}

// short is the share that is there: of the torque for the first push of one that stalls, of the current without load of one
// that stays up.
func (t Turned) short(stalls bool, push, down float64) float64 {
	if !stalls {
		return down / t.k / t.i0
	}
	available := max(0, min((t.supply.volts-t.vb)/t.supply.loop, t.supply.limit))
	return t.k * (available - t.b*t.i0) / push
}
