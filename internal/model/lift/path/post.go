package path

import (
	"fmt"
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// lengthFactor is K of the buckling length by the fixing of the ends: the design values, 2.1 for a free top, 1 for
// pinned or braced, .8 for a fixed foot under a held top. A fixing that is not known counts as a free top.
func lengthFactor(fixing lift.PostFixing) float64 {
	switch fixing {
	case lift.PostPinnedBoth, lift.PostBraced:
		return 1
	case lift.PostFixedFootPinnedTop:
		return 0.8
	}
	return 2.1
}

// Euler is the critical force of a column, N: π²·E·I/(K·L)².
func Euler(e, i, k, length float64) float64 {
	if length <= 0 {
		return math.MaxFloat64
	}
	return math.Pi * math.Pi * e * i / (k * length * k * length)
}

func postChecks(t *loads) []*Check {
	s := t.h.Structure
	if len(s.Posts) == 0 {
		if s.RestsOn != lift.RestsOnOwnPostsOnGround {
			return nil
		}
		l := newLine("post", "the posts", "force ≤ critical force / 3", source.Eurocode5.At("6.3.2"))
		l.miss("structure.posts")
		c := l.verdict()
		tell(c, carries, always("Say what posts carry the beam."))
		return []*Check{c}
	}
	var out []*Check
	for i, p := range s.Posts {
		out = append(out, t.postCheck(i, p))
		if p.Lean.Val > 0 {
			out = append(out, t.slideCheck(i, p))
		}
	}
	if c := t.sideCheck(); c != nil {
		out = append(out, c)
	}
	return out
}

// onPost is the static force along a post: its share of the hoist's force and of the beam's own weight, more by 1/cos of
// its lean.
func (t *loads) onPost(p lift.Post) (hoist, own float64, miss []string) {
	f, miss := t.beamForce()
	share := float64(p.Share.Or(1)) / math.Cos(float64(p.Lean.Or(0)))
	return f * share, t.beamWeight() * share, miss
}

// beamWeight is the beam's own weight, N; 0 where it is not known.
func (t *loads) beamWeight() float64 {
	b := t.h.Structure.Beam
	if m, ok := b.OwnMass.Value(); ok {
		return float64(m) * unit.G
	}
	s, _, ok := beamSection(b)
	if !ok || !b.Span.Is {
		return 0
	}
	rho := float64(steelDensity)
	if isTimber(b.Kind) {
		tm, okT := timberOf(b.Class)
		if !okT {
			return 0
		}
		rho = tm.density
	}
	return s.area * float64(b.Span.Val) * rho * unit.G
}

func (t *loads) postCheck(i int, p lift.Post) *Check {
	prefix := fmt.Sprintf("structure.posts[%d].", i)
	l := newLine("post", fmt.Sprintf("post %d", i+1), "force ≤ π²·E·I/(K·L)² / 3, and stress ≤ k_c·k_mod·f_c/γ_M", source.Eurocode5.At("6.3.2"))
	t.materialSource(l, p.Kind)
	t.phiSource(l)
	l.miss(t.missing...)
	hoist, own, miss := t.onPost(p)
	l.miss(miss...)
	s, miss, ok := sectionOf(p.Kind, num(p.Width), num(p.Depth), num(p.Wall), prefix)
	l.miss(miss...)
	height, okH := p.Height.Value()
	if !okH {
		l.miss(prefix + "height_m")
	}
	mend := change("Use a thicker or shorter post, or hold its top.")
	if p.Kind == lift.MemberOther {
		l.miss("")
		mend = always("This kind of post cannot be worked out here. A qualified person must look at it.")
	}
	if t.h.Structure.Beam.Support == lift.BeamCantilever {
		l.miss("")
		mend = always("A beam that sticks out bends its post, and that is not worked out here. Carry the beam at both ends, or ask a qualified person.")
	}
	m := member{kind: p.Kind, class: p.Class, yield: num(p.Yield), outdoors: t.outdoorsBeam(), prefix: prefix}
	if ok && okH && t.known() && m.material(l) {
		t.postCases(l, m, s, p, float64(height), hoist, own)
	}
	if p.Fixing == "" && ok {
		mend = always("How its ends are held is not known, so its top counts as free.").and(mend)
	}
	c := l.verdict()
	tell(c, carries, mend)
	return c
}

func (t *loads) postCases(l *line, m member, s section, p lift.Post, height, hoist, own float64) {
	k := lengthFactor(p.Fixing)
	critical := Euler(m.low(), s.least, k, height)
	l.in("force of the hoist on it, at rest", hoist, unit.Newtons)
	l.in("buckling length K·L", k*height, unit.Metres)
	l.in("least second moment of area", s.least, unit.MetresFourth)
	l.in("factor for jerks φ", t.phi, unit.Pieces)
	l.add("working, buckling", unit.Newtons, t.phi*hoist+own, critical, 3, 5)
	kc := 1.0
	if r := s.radius(); m.timber() && r > 0 {
		kc = m.t.kc(k * height / r)
	}
	if up, ok := t.caughtTimes(); ok {
		wanted, fine, whole := m.breaking()
		l.add(caughtCase+", buckling", unit.Newtons, up*hoist+own, critical, 2, 2.5)
		l.add(caughtCase+", pressed", unit.Pascals, (up*hoist+own)/s.area, whole*kc*m.along(true), wanted, fine)
	}
	l.add("at rest, pressed", unit.Pascals, gammaG*(hoist+own)/s.area, kc*m.along(false), 1, 1.25)
	l.add("working, pressed", unit.Pascals, gammaG*(t.phi*hoist+own)/s.area, kc*m.along(true), 1, 1.25)
}

// slideCheck looks at a leaning post whose foot pushes outward: tan of the lean against the friction of the foot, .4 and
// .3 in the wet (from memory); nothing slides where the feet are tied together.
func (t *loads) slideCheck(i int, p lift.Post) *Check {
	l := newLine("post", fmt.Sprintf("post %d, its foot sliding out", i+1), "tan(lean) ≤ friction / 1.5", source.Derivation.At("equilibrium of the foot"))
	l.also(source.FromMemory.At("friction of wood or steel on concrete"))
	mu := 0.4
	if t.outdoorsBeam() {
		mu = 0.3
	}
	push := math.Tan(float64(p.Lean.Val))
	l.in("lean from upright", float64(p.Lean.Val), unit.Radians)
	l.in("friction of the foot", mu, unit.Pieces)
	switch p.Tied {
	case unit.Yes:
		l.add("feet tied together", unit.Pieces, 0, 1, 1, 1)
	case unit.No:
		l.add("free at the foot", unit.Pieces, push, mu, 1.5, 2)
	default:
		if 1.5*push > mu {
			l.miss(fmt.Sprintf("structure.posts[%d].foot_tied", i))
		} else {
			l.add("free at the foot", unit.Pieces, push, mu, 1.5, 2)
		}
	}
	c := l.verdict()
	mend := always("Tie all feet together with a chain or a frame, or make it steeper.")
	tell(c, verbs{}, mend)
	countSay(c, say.That("It pushes outward with %s of its load.", say.Share(unit.Ratio(push))), mend)
	if p.Tied == unit.Yes {
		c.Say = say.That("You say that its foot is tied to the others, so that it cannot slide out.")
	}
	return c
}

// sideCheck sets the sideways pull of the rope at the top, T·sin of the angle between the two ropes there, against what
// the frame is braced for. Posts are worked out for upright load only, so where it is not known the frame is not known.
func (t *loads) sideCheck() *Check {
	if t.reeved && t.k == 0 || t.h.Base.Where == lift.BaseOnBeam {
		return nil
	}
	a, okA := t.sideAngle()
	if okA && a <= 3*math.Pi/180 {
		return nil // nearly upright: a tenth of what 30° pull
	}
	l := newLine("post", "the frame, pulled sideways by the rope", "φ·T·sin θ ≤ sideways pull it is braced for", source.Derivation.At("equilibrium at the top pulley")).of("structure.side_pull_n")
	l.miss(t.missing...)
	if !okA {
		l.miss("structure.lead_line_angle_rad")
	}
	f, ok := t.h.Structure.SidePull.Value()
	if !ok {
		l.miss("structure.side_pull_n")
	}
	mend := always("Brace the frame with slanting struts or stays, or set the drive right under the top pulley.")
	if t.known() && t.k >= 1 && okA {
		h := math.Max(t.up[t.k-1], t.down[t.k-1]) * math.Sin(a)
		l.in("angle between the two ropes at the top", a, unit.Radians)
		l.in("pull of the rope towards the drum", math.Max(t.up[t.k-1], t.down[t.k-1]), unit.Newtons)
		l.in("factor for jerks φ", t.phi, unit.Pieces)
		if ok {
			l.add("working", unit.Newtons, t.phi*h, float64(f), 1, 1.25)
		} else {
			mend = always("The rope pulls it sideways with %s: brace it for that, or set the drive right under the top pulley.", heavy(t.phi*h))
		}
	}
	c := l.verdict()
	tell(c, leans, mend)
	return c
}
