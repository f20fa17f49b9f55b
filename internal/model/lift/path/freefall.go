package path

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// stoppingShare is what a brake slows with of what it holds, where nobody measured it (our own judgement).
const stoppingShare = 0.8

// brakeExcess is how much more than its label a brake may hold back with, for the pull on the rope (our own judgement).
const brakeExcess = 1.3

// Catch is what stops a drum that turns free because a gear broke, and how. Figures are 0 where Missing says what keeps
// them from being known.
type Catch struct {
	At      int           // place in holds.holds
	Kind    lift.HoldKind // spring_brake, overspeed_catch or load_arrester
	Speed   unit.Speed    // of the mass when it grips
	Fall    unit.Length   // from its trip until the mass stands; a locking catch: until it has locked
	Pull    unit.Force    // at the mass
	Torque  unit.Torque   // of that pull at the drum
	Holds   bool          // a brake: it slows the mass at all
	Missing []string
}

// Catches are the devices that act on a free drum or on a rope of their own, those whose place is not known included. The
// drum's inertia is left out: the mass falls with g.
func Catches(h lift.Hoist, d lift.Drive) []Catch { return newLoads(h, d).freeFall() }

func (t *loads) freeFall() []Catch {
	var out []Catch
	for i, x := range t.h.Holds.Holds {
		c := Catch{At: i, Kind: x.Kind}
		switch {
		case x.Kind == lift.HoldSpringBrake && x.OnDrum != unit.No && x.Trips == unit.Yes:
			t.slipping(&c, x)
		case x.Kind == lift.HoldOverspeedCatch && x.OnDrum != unit.No && x.Trips != unit.No, x.Kind == lift.HoldLoadArrester:
			t.locking(&c, x)
		default:
			continue
		}
		out = append(out, c)
	}
	return out
}

// FallTo is how a mass that sinks at v0 falls until a brake that trips at vt grips t seconds later: its speed then, and the
// way from the moment that the drum turns free.
func FallTo(v0, vt unit.Speed, t unit.Duration) (v unit.Speed, way unit.Length) {
	a, b, s := float64(v0), float64(vt), float64(t)
	return unit.Speed(b + unit.G*s), unit.Length((b*b-a*a)/(2*unit.G) + b*s + unit.G*s*s/2)
}

// slipping is a brake that slows the drum: a = n·T_s/(r·m) − g, s = s1 + v1²/(2a).
func (t *loads) slipping(c *Catch, x lift.Hold) {
	r, okR := t.drumRadius()
	vt, okV := x.TripsAt.Value()
	delay, okT := x.ActsIn.Value()
	if !okT {
		delay, okT = t.h.Holds.BrakeDelay.Value()
	}
	q, okQ := x.Torque.Value()
	stop, okS := x.Stopping.Value()
	if !okS {
		stop = unit.Torque(stoppingShare * float64(q))
	}
	c.need(okV, at("holds.holds", c.At, "trips_at_m_s"))
	c.need(okT, at("holds.holds", c.At, "acts_in_s"))
	c.need(okQ, at("holds.holds", c.At, "torque_nm"))
	c.need(okR && t.m > 0 && t.reeved, "drum.diameter_m")
	c.need(t.d.Lowering.Known, "lower.loads")
	if len(c.Missing) > 0 {
		return
	}
	v1, s1 := FallTo(t.d.Lowering.Fastest(), vt, delay)
	a := float64(t.n)*float64(stop)/(r*t.m) - unit.G
	c.Speed, c.Holds = v1, a > 0
	c.Pull = unit.Force(brakeExcess * float64(q) / r * float64(t.n))
	c.Torque = unit.Torque(brakeExcess * float64(q))
	if c.Holds {
		c.Fall = s1 + unit.Length(float64(v1)*float64(v1)/(2*a))
	}
}

// locking is a catch that stops the drum dead after the way in which it engages: v1 = √(vt² + 2·g·s_e), and the pull of a
// mass that a rope stops, m·g·(1 + (v1/g)·√(k/m)).
func (t *loads) locking(c *Catch, x lift.Hold) {
	r, okR := t.drumRadius()
	vt, okV := x.TripsAt.Value()
	s, okS := x.EngagesIn.Value()
	k, miss := t.stiffness(true)
	c.need(okV, at("holds.holds", c.At, "trips_at_m_s"))
	c.need(okS, at("holds.holds", c.At, "engages_in_m"))
	c.need(okR && t.m > 0 && t.reeved, "drum.diameter_m")
	c.Missing = append(c.Missing, miss...)
	if len(c.Missing) > 0 {
		return
	}
	v := math.Sqrt(float64(vt)*float64(vt) + 2*unit.G*float64(s))
	c.Speed, c.Fall, c.Holds = unit.Speed(v), s, true
	c.Pull = unit.Force(t.weight() * StopFactor(v, k, t.m))
	if c.Kind != lift.HoldLoadArrester {
		c.Torque = unit.Torque(float64(c.Pull) * r / float64(t.n))
	}
}

func (c *Catch) need(is bool, path string) {
	if !is {
		c.Missing = append(c.Missing, path)
	}
}

// drumRadius is that of the fullest layer of rope, m.
func (t *loads) drumRadius() (float64, bool) {
	r, ok := t.d.Winding.RadiusLast.Value()
	return float64(r), ok && r > 0
}

// caught is the greatest pull at the mass of a catch that stops a free fall, N; false where none is known.
func (t *loads) caught() (pull float64, ok bool) {
	for _, c := range t.freeFall() {
		if len(c.Missing) == 0 {
			pull, ok = math.Max(pull, float64(c.Pull)), true
		}
	}
	return pull, ok
}

// caughtTimes is that pull as a multiple of the weight; false where none is known.
func (t *loads) caughtTimes() (float64, bool) {
	pull, ok := t.caught()
	if !ok || t.m <= 0 {
		return 0, false
	}
	return pull / t.weight(), true
}

// addCaught adds the catch of a free fall to a line of rated hardware: up to twice its working load (2006/42/EC annex I
// 4.1.2.5: metal fittings break at four times their working load). Demand is the force at rest.
func (t *loads) addCaught(l *line, still, rating float64) {
	if pull, ok := t.caught(); ok && t.m > 0 {
		l.add(caughtCase, unit.Newtons, still*pull/t.weight(), 2*rating, 1, 1.25)
	}
}

// caughtCase is the name of the event.
const caughtCase = "a gear breaks, and the catch stops the fall"

// RopeLeft is what the rope withstands where it is weakest, N; false where it is not known.
func RopeLeft(h lift.Hoist, d lift.Drive) (unit.Force, bool) {
	f, miss := newLoads(h, d).weakest()
	return unit.Force(f), len(miss) == 0
}

// Turning is the highest surface speed of the drum, m/s, at which a pawl thrown by the drum's own turning cannot tell it
// from standing: ω²·r is under three times gravity, √(3·g·r).
func Turning(r unit.Length) unit.Speed { return unit.Speed(math.Sqrt(3 * unit.G * float64(r))) }
