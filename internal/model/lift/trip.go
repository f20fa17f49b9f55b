package lift

import (
	"math"

	"duskweight/internal/model/unit"
)

// Phase is what a hoist does at a moment of its trip.
type Phase string

// The phases of a trip, in their order.
const (
	PhaseUp   Phase = "up"
	PhaseHold Phase = "hold"
	PhaseDown Phase = "down"
)

// Beat is one moment of a trip.
type Beat struct {
	Time    unit.Duration // since the lift began
	Phase   Phase
	Height  unit.Length // over the lower stop
	Speed   unit.Speed  // of the mass, up or down
	Volts   unit.Voltage
	Current unit.Current
	Winding unit.Known[unit.Celsius] // from a cold motor on
}

// TripHold is how long the hold of a trip is: far shorter than it is in a day, so that lift and descent can be seen (our own
// judgement).
const TripHold unit.Duration = 20

// The moments of a trip: the first ones of a descent stand close together, because the mass gathers speed there.
const (
	tripUp   = 40
	tripHold = 4
	tripDown = 60
)

// MostBeats is how many moments a trip has at the most.
const MostBeats = 120

// firstWays are the shares of a layer at which the beginning of a way down is told, before its even steps.
var firstWays = []float64{0.0002, 0.0008, 0.002, 0.005, 0.01}

// Trip follows one lift, a short hold and one way down over time: the lift at its steady speed in each layer of rope, the way
// down from rest as descend has it, the winding through all three from cold. Nil where it does not lift, does not come down at
// a steady speed, or where one of them is not known.
func (c Course) Trip() []Beat {
	w, ra, lo := c.w, c.w.d.Raising, c.w.d.Lowering
	if !c.known || !ra.Known || ra.Stalls || len(w.up.points) == 0 || !lo.Known || !lo.Steady || lo.RunsBack == DownNo || len(w.roots) != len(w.layers) {
		return nil
	}
	t := trip{w: w, air: float64(w.h.Lower.Ambient.Or(25))}
	t.lift()
	t.hold()
	t.descend(c)
	for _, b := range t.beats {
		if !finite(float64(b.Time), float64(b.Height), float64(b.Speed), float64(b.Volts), float64(b.Current), float64(b.Winding.Val)) {
			return nil
		}
	}
	return thinned(t.beats)
}

// trip gathers the moments, with the winding's warmth over the air as it goes.
type trip struct {
	w     *work
	beats []Beat
	time  float64
	z     float64 // height
	th    [2]float64
	air   float64
	body  thermal // of the phase; nil where the motor's thermal values are not known
	on    bool
}

// run begins a phase with a current and a rotor speed.
func (t *trip) run(i, rotor float64, on bool) {
	t.on = on
	if body, ok := t.w.thermal(i, rotor); ok {
		t.body = body
	}
}

// step goes on by so many seconds and metres.
func (t *trip) step(dt, dz float64) {
	t.time += dt
	t.z = math.Max(0, math.Min(t.w.travel, t.z+dz))
	if t.body != nil && dt > 0 {
		t.th = t.body.after(dt, t.th, t.on)
	}
}

func (t *trip) tell(p Phase, speed, volts, current float64) {
	b := Beat{Time: unit.Duration(t.time), Phase: p, Height: unit.Length(t.z), Speed: unit.Speed(speed), Volts: unit.Voltage(volts), Current: unit.Current(current)}
	if t.body != nil {
		b.Winding = unit.Of(unit.Celsius(math.Min(t.air+t.th[0], 1e6)))
	}
	t.beats = append(t.beats, b)
}

// lift goes up layer by layer, each at its steady speed. The volts are those at the motor: the supply's less what the wires
// take.
func (t *trip) lift() {
	w := t.w
	s, _ := w.supply()
	t.run(float64(w.d.Raising.Current), float64(w.d.Raising.Rotor), true)
	n := max(1, tripUp/len(w.up.points))
	for _, p := range w.up.points {
		volts := s.volts - p.current*(s.loop-w.r)
		t.tell(PhaseUp, p.speed, volts, p.current)
		for range n {
			t.step(p.time/float64(n), p.share*w.travel/float64(n))
			t.tell(PhaseUp, p.speed, volts, p.current)
		}
	}
	t.z = w.travel
}

func (t *trip) hold() {
	t.run(0, 0, false)
	t.tell(PhaseHold, 0, 0, 0)
	for range tripHold {
		t.step(float64(TripHold)/tripHold, 0)
		t.tell(PhaseHold, 0, 0, 0)
	}
}

// descend goes down from rest, from the outermost layer in. Its steps are those of descend, cut shorter.
func (t *trip) descend(c Course) {
	w := t.w
	t.run(float64(w.d.Lowering.Current), float64(w.d.Lowering.Rotor), true)
	t.tell(PhaseDown, 0, 0, 0)
	v, before := 0.0, 0.0
	n := max(1, tripDown/len(w.layers))
	for k := len(w.layers) - 1; k >= 0; k-- {
		f := w.rideIn(k, c.loads)
		if before > 0 {
			v *= math.Sqrt(before / f.heavy)
		}
		before = f.heavy
		way, at := w.layers[k].share*w.travel, 0.0
		for _, to := range waysOf(n, k == len(w.layers)-1) {
			d := descent{}
			v = f.through(v, (to-at)*way, &d)
			t.step(d.time, -(to-at)*way)
			at = to
			u, i := c.terminal(v * w.down.points[k].c)
			t.tell(PhaseDown, v, u, i)
		}
	}
	t.z = 0
	t.beats[len(t.beats)-1].Height = 0
}

// waysOf are the shares of a layer at which the way down is told.
func waysOf(n int, first bool) []float64 {
	var out []float64
	if first {
		for _, s := range firstWays {
			if s < 1/float64(n) {
				out = append(out, s)
			}
		}
	}
	for i := 1; i <= n; i++ {
		out = append(out, float64(i)/float64(n))
	}
	return out
}

// thinned keeps the first and the last moment of each phase, and of the rest as many as may be.
func thinned(beats []Beat) []Beat {
	if len(beats) <= MostBeats {
		return beats
	}
	each := (len(beats) + MostBeats - 7) / (MostBeats - 6)
	var out []Beat
	for i, b := range beats {
		edge := i == 0 || i == len(beats)-1 || beats[i-1].Phase != b.Phase || beats[i+1].Phase != b.Phase
		if edge || i%each == 0 {
			out = append(out, b)
		}
	}
	return out
}
