package path

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

const (
	steelE       = 210e9 // Pa, EN 1993-1-1 3.2.6
	steelDensity = 7850  // kg/m³, from memory
)

func num[T unit.Number](k unit.Known[T]) known { return known{float64(k.Val), k.Is} }

func beamSection(b lift.Beam) (section, []string, bool) {
	return sectionOf(b.Kind, num(b.Width), num(b.Depth), num(b.Wall), "structure.beam.")
}

func isTimber(kind lift.MemberKind) bool {
	return kind == lift.MemberTimber || kind == lift.MemberRoundPole
}

// beamCompliance is 1/k of the beam at the pulley, m/N; 0 (rigid, the stiffest) where it is not known.
func beamCompliance(b lift.Beam) float64 {
	s, _, ok := beamSection(b)
	span, okS := b.Span.Value()
	if !ok || !okS || s.i <= 0 {
		return 0
	}
	e := steelE
	if isTimber(b.Kind) {
		t, okT := timberOf(b.Class)
		if !okT {
			return 0
		}
		e = t.e
	}
	return deflection(b.Support, float64(span), loadAt(b), 1, 0, e*s.i)
}

// loadAt is the distance of the pulley from the nearer support; the middle where it is not known or off the beam.
func loadAt(b lift.Beam) float64 {
	span := float64(b.Span.Or(0))
	a, ok := b.From.Value()
	if !ok || float64(a) > span {
		return span / 2
	}
	return math.Min(float64(a), span-float64(a))
}

// moment is the largest bending moment of a point load p at a from the nearer support plus w along the beam, N·m
// (Roark, table 8.1): two supports p·a·b/L + w·L²/8; fixed ends the larger of the moment at the nearer end p·a·b²/L²
// and under the load 2·p·a²·b²/L³, + w·L²/12; cantilever p·L + w·L²/2.
func moment(support lift.BeamSupport, span, a, p, w float64) float64 {
	if span <= 0 {
		return 0
	}
	b := span - a
	switch support {
	case lift.BeamCantilever:
		return p*span + w*span*span/2
	case lift.BeamBothEndsFixed:
		return math.Max(p*a*b*b/(span*span), 2*p*a*a*b*b/(span*span*span)) + w*span*span/12
	}
	return p*a*b/span + w*span*span/8
}

// reaction is the larger support force, N.
func reaction(support lift.BeamSupport, span, a, p, w float64) float64 {
	if span <= 0 {
		return p
	}
	b := span - a
	switch support {
	case lift.BeamCantilever:
		return p + w*span
	case lift.BeamBothEndsFixed:
		return p*b*b*(3*a+b)/(span*span*span) + w*span/2
	}
	return p*b/span + w*span/2
}

// deflection is that under the load, m, for stiffness ei: two supports p·a²·b²/(3·EI·L) + 5·w·L⁴/(384·EI); fixed ends
// p·a³·b³/(3·EI·L³) + w·L⁴/(384·EI); cantilever p·L³/(3·EI) + w·L⁴/(8·EI). For a load off the middle the largest
// deflection lies a little towards the middle, at most 3 % more for a ≥ L/4.
func deflection(support lift.BeamSupport, span, a, p, w, ei float64) float64 {
	if span <= 0 || ei <= 0 {
		return 0
	}
	b := span - a
	l4 := math.Pow(span, 4)
	switch support {
	case lift.BeamCantilever:
		return p*span*span*span/(3*ei) + w*l4/(8*ei)
	case lift.BeamBothEndsFixed:
		return p*math.Pow(a*b, 3)/(3*ei*math.Pow(span, 3)) + w*l4/(384*ei)
	}
	return p*a*a*b*b/(3*ei*span) + 5*w*l4/(384*ei)
}

// beamForce is the static force of the hoist on the beam, N, without the beam's own weight: the mass and the upright
// share of the line to the drum; where the drum stands on the beam the line pulls inside it and the drive's weight
// hangs there instead.
func (t *loads) beamForce() (force float64, miss []string) {
	if !t.known() {
		return 0, nil
	}
	f := t.weight()
	switch {
	case t.h.Base.Where == lift.BaseOnBeam || (t.k == 0 && t.h.Base.Where != lift.BaseOnGround):
		m, ok := t.h.Base.Mass.Value()
		if !ok {
			miss = append(miss, "base.mass_kg")
		}
		return f + float64(m)*unit.G, miss
	case t.k == 0:
		return f, nil
	}
	line := math.Max(t.up[t.k-1], t.down[t.k-1])
	return f + math.Max(0, line*math.Cos(t.angle(t.k))), nil
}

// tripod reports three posts or more that all lean.
func (t *loads) tripod() bool {
	for _, p := range t.h.Structure.Posts {
		if !p.Lean.Is || p.Lean.Val <= 0 {
			return false
		}
	}
	return len(t.h.Structure.Posts) >= 3
}

func beamChecks(t *loads) []*Check {
	b := t.h.Structure.Beam
	l := newLine("beam", "the beam", "stress ≤ k_mod·f_k/γ_M, with 1.35 on the static load and 1.35·φ on the working load", source.Eurocode5.At("6.1, 6.3.3 and 7.2"))
	t.materialSource(l, b.Kind)
	t.phiSource(l)
	l.miss(t.missing...)
	force, miss := t.beamForce()
	l.miss(miss...)
	s, miss, ok := beamSection(b)
	l.miss(miss...)
	span, okS := b.Span.Value()
	if !okS {
		l.miss("structure.beam.span_m")
	}
	if b.Support == "" {
		l.miss("structure.beam.support")
	}
	mend := change("Use a deeper beam, a shorter span or a better class, or less mass.")
	switch {
	case b.Kind == lift.MemberNone && t.tripod():
		if r := t.restsOn(); r != nil {
			return []*Check{r}
		}
		return nil
	case b.Kind == lift.MemberNone:
		l.miss("structure.beam.kind")
		mend = always("Without a beam it needs three posts or more that lean together: give them and how far they lean.")
	case b.Kind == lift.MemberOther:
		l.miss("")
		mend = always("This kind of beam cannot be worked out here. A qualified person must look at it.")
	case ok && okS && b.Support != "" && t.known():
		t.beamCases(l, b, s, float64(span), force)
	}
	c := l.verdict()
	tell(c, bends, mend)
	out := []*Check{c}
	if r := t.restsOn(); r != nil {
		out = append(out, r)
	}
	return out
}

// materialSource names where the strength of a beam or post comes from.
func (t *loads) materialSource(l *line, kind lift.MemberKind) {
	switch kind {
	case lift.MemberTimber, lift.MemberRoundPole:
		l.also(source.EN338.At("tables 1 and 3"), source.EN14080.At("table 5"))
	case lift.MemberSteelTube, lift.MemberSteelRoundTube:
		l.c.Source, l.c.Formula = source.Eurocode3.At("6.2"), "stress ≤ yield, with 1.35 on the load; working with 1.35·φ"
	}
}

// beamCases adds bending, shear, bearing, the section beside a hole, and deflection.
func (t *loads) beamCases(l *line, b lift.Beam, s section, span, force float64) {
	m := member{kind: b.Kind, class: b.Class, yield: num(b.Yield), outdoors: t.outdoorsBeam(), prefix: "structure.beam."}
	if !m.material(l) {
		return
	}
	own, ok := b.OwnMass.Value()
	w := s.area * m.density() * unit.G
	if ok && span > 0 {
		w = float64(own) * unit.G / span
	}
	a := loadAt(b)
	near := a // for shear and bearing
	if !b.From.Is {
		near = 0 // where it hangs is not known: right beside a support it presses hardest on that
	}
	l.in("force of the hoist on the beam, at rest", force, unit.Newtons)
	l.in("factor for jerks φ", t.phi, unit.Pieces)
	l.in("span", span, unit.Metres)
	l.in("from the nearer support to the pulley", a, unit.Metres)
	l.in("section modulus", s.w, unit.CubicMetres)
	hole, okH := b.Hole.Value()
	if !okH {
		l.miss("structure.beam.hole_m")
	}
	length, okL := b.Bearing.Value()
	if isTimber(b.Kind) && !okL {
		l.miss("structure.beam.bearing_length_m")
	}
	for _, c := range []struct {
		name  string
		phi   float64
		short bool
	}{{"at rest", 1, false}, {"working", t.phi, true}} {
		p, q := gammaG*c.phi*force, gammaG*w
		l.add(c.name+", bending", unit.Pascals, moment(b.Support, span, a, p, q)/s.w, m.tilting(s, span)*m.bending(s.depth, c.short), 1, 1.25)
		l.add(c.name+", shear", unit.Pascals, reaction(b.Support, span, near, p, q)/s.shear, m.shear(c.short), 1, 1.25)
		if hole > 0 {
			l.add(c.name+", bending beside the hole", unit.Pascals, ratioOr(moment(b.Support, span, a, p, q), s.net(float64(hole))), m.bending(s.depth, c.short), 1, 1.25)
		}
		if isTimber(b.Kind) && okL {
			l.add(c.name+", crushed at the support", unit.Pascals, reaction(b.Support, span, near, p, q)/(m.bearingWidth(s)*float64(length)), m.across(c.short), 1, 1.25)
		}
	}
	if up, ok := t.caughtTimes(); ok {
		wanted, fine, whole := m.breaking()
		p := up * force
		l.add(caughtCase+", bending", unit.Pascals, moment(b.Support, span, a, p, w)/s.w, whole*m.tilting(s, span)*m.bending(s.depth, true), wanted, fine)
		l.add(caughtCase+", shear", unit.Pascals, reaction(b.Support, span, near, p, w)/s.shear, whole*m.shear(true), wanted, fine)
		if hole > 0 {
			l.add(caughtCase+", bending beside the hole", unit.Pascals, ratioOr(moment(b.Support, span, a, p, w), s.net(float64(hole))), whole*m.bending(s.depth, true), wanted, fine)
		}
	}
	l.add("sags in the long run", unit.Metres, deflection(b.Support, span, a, force, w, m.modulus()*s.i)*m.creep(), span/240, 1, 1.25)
}

// ratioOr divides; nothing left to divide by gives a number no material bears, so that the case gives way.
func ratioOr(x, by float64) float64 {
	if by <= 0 {
		return 1e15
	}
	return x / by
}

// outdoorsBeam takes the site's answer; not known counts as outdoors.
func (t *loads) outdoorsBeam() bool { return t.h.Site.Outdoors != unit.No }

// restsOn asks what is under the beam. Supports that were not made for it stay not known until a qualified person has
// confirmed them; posts of one's own have lines of their own.
func (t *loads) restsOn() *Check {
	s := t.h.Structure
	seen := s.RestsOn != "" && s.RestsOn != lift.RestsOnNotSeen // nobody can confirm what nobody saw
	if s.RestsOn == lift.RestsOnOwnPostsOnGround || seen && s.RestsOnOK == unit.Yes {
		return nil
	}
	l := newLine("beam", "what the beam rests on", "asked, not computed", source.CommonPractice.Whole()).of("structure.rests_on")
	mend := always("Answer what the beam rests on, down to the ground.")
	switch s.RestsOn {
	case "", lift.RestsOnNotSeen:
		l.miss("structure.rests_on")
	case lift.RestsOnEngineeredSteel:
		l.miss("structure.rests_on_confirmed")
		mend = always("Ask whoever designed it for the load it may carry.")
	default:
		l.miss("structure.rests_on_confirmed")
		mend = always("A %s was not made for this. It stays not known until a qualified person has confirmed it. Two posts of your own on the ground do without.", plain(s.RestsOn))
		if s.RestsOn == lift.RestsOnJoists {
			mend = always("Joists were not made for this. They stay not known until a qualified person has confirmed them. Two posts of your own on the ground do without.")
		}
		if s.RestsOn == lift.RestsOnConcreteOrMasonry {
			mend = always("Fixings in concrete or masonry overhead stay not known until a qualified person has confirmed them. Never into brick joints.")
		}
	}
	c := l.verdict()
	tell(c, bends, mend)
	return c
}
