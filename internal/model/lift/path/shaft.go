package path

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

const (
	shearShare = 0.577 // shear yield over yield, distortion energy
	holeFactor = 2     // stress concentration at a cross hole on the net section, from memory (Peterson: 1.7 to 2)
)

// ShaftStress is the von Mises stress of a round shaft of diameter D under bending m and torque q, Pa:
// √(σ² + 3τ²), σ = 32·M/(π·D³), τ = 16·T/(π·D³). With a cross hole d the net section takes D³·π/32 − d·D²/6 for
// bending and D³·π/16 − d·D²/6 for torsion; this is the nominal stress there.
func ShaftStress(m, q, D, hole float64) float64 {
	zb, zt := math.Pi*D*D*D/32-hole*D*D/6, math.Pi*D*D*D/16-hole*D*D/6
	if zb <= 0 || zt <= 0 {
		return 1e15 // nothing is left beside the hole
	}
	return math.Hypot(m/zb, math.Sqrt(3)*q/zt)
}

// bendingArm is the bending moment of the shaft for a rope pull of 1 N, m: the overhang, or a·(L − a)/L where the drum
// sits between two bearings.
func (t *loads) bendingArm() (float64, bool) {
	a, ok := t.h.Drum.ShaftSpan.Value()
	if span, is := t.h.Drum.BearingSpan.Value(); is && ok && a <= span {
		return float64(a) * float64(span-a) / float64(span), true
	}
	return float64(a), ok
}

// shaftChecks: at least twice on yield, four times for OK because its failure drops the load; events once on yield.
func shaftChecks(t *loads) []*Check {
	d := t.h.Drum
	l := newLine("shaft", "the drum's shaft", "had = yield / √(σ² + 3·τ²), twice the stress beside a cross hole", source.Shigley.At("distortion energy, shafts"))
	l.also(source.Peterson.At("cross hole, from memory"))
	q, okQ, miss := t.torque()
	l.miss(miss...)
	if !d.ShaftDiameter.Is {
		l.miss("drum.shaft_diameter_m")
	}
	if !d.ShaftYield.Is {
		l.miss("drum.shaft_yield_pa")
	}
	arm, okA := t.bendingArm()
	if !okA {
		l.miss("drum.shaft_overhang_m")
	}
	hole := 0.0
	switch {
	case d.HubFit == "":
		l.miss("drum.hub_fit")
	case d.HubFit == lift.FitCrossPin && !d.PinDiameter.Is:
		l.miss("drum.pin_diameter_m")
	case d.HubFit == lift.FitCrossPin:
		hole = float64(d.PinDiameter.Val)
	}
	if okQ && d.ShaftDiameter.Is && d.ShaftYield.Is && len(t.up) > 0 {
		t.shaftCases(l, q, arm, hole)
	}
	c := l.verdict()
	tell(c, bends, change("Use a thicker shaft, a stronger steel, or a bearing closer to the drum."))
	return []*Check{c}
}

func (t *loads) shaftCases(l *line, q, arm, hole float64) {
	D, yield := float64(t.h.Drum.ShaftDiameter.Val), float64(t.h.Drum.ShaftYield.Val)
	stress := ShaftStress(t.up[0]*arm, q, D, hole)
	l.in("torque at the drum, raising", q, unit.NewtonMetres)
	l.in("bending moment of the rope's pull", t.up[0]*arm, unit.NewtonMetres)
	l.in("shaft diameter", D, unit.Metres)
	l.in("cross hole", hole, unit.Metres)
	l.in("yield strength", yield, unit.Pascals)
	l.in("factor for jerks φ", t.phi, unit.Pieces)
	peak := stress
	if hole > 0 {
		peak *= holeFactor
	}
	l.add("at rest", unit.Pascals, peak, yield, 2, 4)
	l.add("working", unit.Pascals, t.phi*peak, yield, 2, 4)
	// Once in a while ductile steel evens the peak beside a hole out: events take the nominal stress.
	t.addEvents(l, unit.Pascals, stress, yield, 1, 1.25)
}

// addEvents adds the events as cases of a line: demand at rest times the event.
func (t *loads) addEvents(l *line, u unit.Measure, demand, capacity, wanted, ok float64) {
	events, miss := t.events()
	l.miss(miss...)
	for _, e := range events {
		l.add(e.name, u, demand*e.times, capacity, wanted, ok)
	}
}

// crossPinChecks: the pin in double shear 4·T/(π·d²·D), the shaft pressed 6·T/(d·D²), and the hub pressed
// 4·T/(d·(Do² − D²)) where its size and strength are known.
func crossPinChecks(t *loads) []*Check {
	d := t.h.Drum
	if d.HubFit != lift.FitCrossPin && d.HubFit != "" {
		return nil
	}
	l := newLine("cross_pin", "the cross pin", "4·T/(π·d²·D) ≤ .577·yield/2, and 6·T/(d·D²) ≤ yield/2", source.FromMemory.At("pinned hubs"))
	q, okQ, miss := t.torque()
	l.miss(miss...)
	if d.HubFit == "" {
		l.miss("drum.hub_fit")
	}
	for _, x := range []struct {
		is   bool
		path string
	}{{d.PinDiameter.Is, "drum.pin_diameter_m"}, {d.PinYield.Is, "drum.pin_yield_pa"}, {d.ShaftDiameter.Is, "drum.shaft_diameter_m"}, {d.ShaftYield.Is, "drum.shaft_yield_pa"}} {
		if !x.is {
			l.miss(x.path)
		}
	}
	if okQ && d.PinDiameter.Is && d.ShaftDiameter.Is {
		t.pinCases(l, q)
	}
	c := l.verdict()
	tell(c, bends, change("Use a thicker or harder pin, or a thicker shaft."))
	return []*Check{c}
}

// PinShear, PinShaft and PinHub are the nominal stresses of a cross pin of diameter d through a shaft D in a hub of
// outer diameter Do, for a torque q, Pa.
func PinShear(q, d, D float64) float64 { return 4 * q / (math.Pi * d * d * D) }

// PinShaft is the pressure of the pin in the shaft.
func PinShaft(q, d, D float64) float64 { return 6 * q / (d * D * D) }

// PinHub is the pressure of the pin in the hub; a hub no wider than the shaft bears nothing.
func PinHub(q, d, D, Do float64) float64 {
	if Do <= D {
		return 1e15
	}
	return 4 * q / (d * (Do*Do - D*D))
}

func (t *loads) pinCases(l *line, q float64) {
	x := t.h.Drum
	d, D := float64(x.PinDiameter.Val), float64(x.ShaftDiameter.Val)
	l.in("torque at the drum, raising", q, unit.NewtonMetres)
	l.in("pin diameter", d, unit.Metres)
	l.in("shaft diameter", D, unit.Metres)
	l.in("factor for jerks φ", t.phi, unit.Pieces)
	if x.PinYield.Is {
		yield := shearShare * float64(x.PinYield.Val)
		l.in("yield strength of the pin in shear", yield, unit.Pascals)
		l.add("working, pin sheared", unit.Pascals, t.phi*PinShear(q, d, D), yield, 2, 4)
		t.addEvents(l, unit.Pascals, PinShear(q, d, D), yield, 1, 1.25)
	}
	if x.ShaftYield.Is {
		l.add("working, shaft pressed by the pin", unit.Pascals, t.phi*PinShaft(q, d, D), float64(x.ShaftYield.Val), 2, 4)
	}
	if x.HubOuter.Is && x.HubAllow.Is && x.HubMaterial != "" {
		w, ok := hubBorders(x.HubMaterial)
		l.add("working, hub pressed by the pin", unit.Pascals, t.phi*PinHub(q, d, D, float64(x.HubOuter.Val)), float64(x.HubAllow.Val), w, ok)
	}
}

// setScrewChecks: a set screw alone may not hold the mass, whatever it holds: published values of the same screw differ
// two and a half times, and it works loose.
func setScrewChecks(t *loads) []*Check {
	if t.h.Drum.HubFit != lift.FitSetScrew {
		return nil
	}
	l := newLine("set_screw", "the set screw", "a set screw alone may not hold the mass", source.Platforms.At("set screws in the drive"))
	if q, ok, _ := t.torque(); ok && t.h.Drum.SetScrewTorque.Is {
		l.in("torque at the drum, raising", q, unit.NewtonMetres)
		l.add("working", unit.NewtonMetres, t.phi*q, float64(t.h.Drum.SetScrewTorque.Val), 4, 8)
	}
	l.add("the only thing between drum and shaft", unit.Pieces, 1, 0, 1, 1)
	c := l.verdict()
	c.Say = say.That("A set screw alone may not hold the mass: it slips and works loose. Put a pin through hub and shaft, or a key.")
	return []*Check{c}
}

// couplingChecks: φ times the drum's torque against the rating; events against twice the rating, the peak that makers
// of couplings allow (from memory, DIN 740-2).
func couplingChecks(t *loads) []*Check {
	d := t.h.Drum
	if d.Coupling == lift.CouplingNone {
		return nil
	}
	l := newLine("coupling", "the coupling between gear and drum", "φ·T ≤ rated torque", source.DIN740.At("rated and peak torque"))
	q, okQ, miss := t.torque()
	l.miss(miss...)
	rated, ok := d.CouplingRating.Value()
	if !ok {
		l.miss("drum.coupling_torque_nm")
		if d.Coupling == "" {
			l.miss("drum.coupling")
		}
	}
	mend := change("Use a larger coupling, or put its work on a keyed shaft.")
	if okQ && ok {
		l.in("torque at the drum, raising", q, unit.NewtonMetres)
		l.in("rated torque", float64(rated), unit.NewtonMetres)
		l.in("factor for jerks φ", t.phi, unit.Pieces)
		l.add("working", unit.NewtonMetres, t.phi*q, float64(rated), 1, 1.25)
		t.addEvents(l, unit.NewtonMetres, q, 2*float64(rated), 1, 1.25)
	} else if okQ {
		mend = always("It is turned with %s: look for that rating. Choose \"none\" if there is no coupling.", turnedWith(t.phi*q))
	}
	c := l.verdict()
	tell(c, turns, mend)
	return []*Check{c}
}
