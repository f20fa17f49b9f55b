package path

import (
	"fmt"
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// lengthFactor is K of the buckling length by the fixing of the ends: the design values, 2.1 for a free top, 1 for
// pinned or braced, .8 for a fixed foot under a held top. A fixing that is not known counts as a free top.
func lengthFactor(fixing string) float64 {
	switch fixing {
	case "pinned_both", "braced":
		return 1
	case "fixed_foot_pinned_top":
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
		if s.RestsOn != "own_posts_on_ground" {
			return nil
		}
		l := newLine("post", "the posts", "force ≤ critical force / 3", source.Eurocode5.At("6.3.2"))
		l.miss("structure.posts")
		c := l.verdict()
		say(c, carries, "Say what posts carry the beam.")
		return []*Check{c}
	}
	var out []*Check
	for i, p := range s.Posts {
		out = append(out, t.postCheck(i, p))
	}
	return out
}

// onPost is the static force on a post: its share of the hoist's force and of the beam's own weight.
func (t *loads) onPost(p lift.Post) (hoist, own float64, miss []string) {
	f, miss := t.beamForce()
	share := float64(p.Share.Or(1))
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
	mend := "Take a thicker or shorter post, or hold its top."
	if p.Kind == "other" {
		l.miss("")
		mend = "This kind of post cannot be worked out here. A qualified person must look at it."
	}
	m := member{kind: p.Kind, class: p.Class, yield: num(p.Yield), outdoors: t.outdoorsBeam(), prefix: prefix}
	if ok && okH && t.known() && m.material(l) {
		t.postCases(l, m, s, p, float64(height), hoist, own)
	}
	if p.Fixing == "" && ok {
		mend = "How its ends are held is not known, so its top counts as free. " + mend
	}
	c := l.verdict()
	say(c, carries, mend)
	return c
}

func (t *loads) postCases(l *line, m member, s section, p lift.Post, height, hoist, own float64) {
	k := lengthFactor(p.Fixing)
	critical := Euler(m.low(), s.least, k, height)
	l.in("force of the hoist on it, at rest", hoist, "N")
	l.in("buckling length K·L", k*height, "m")
	l.in("least second moment of area", s.least, "m⁴")
	l.in("factor for jerks φ", t.phi, "1")
	l.add("working, buckling", "N", t.phi*hoist+own, critical, 3, 5)
	kc := 1.0
	if r := s.radius(); m.timber() && r > 0 {
		kc = m.t.kc(k * height / r)
	}
	l.add("at rest, pressed", "Pa", gammaG*(hoist+own)/s.area, kc*m.along(false), 1, 1.25)
	l.add("working, pressed", "Pa", gammaG*(t.phi*hoist+own)/s.area, kc*m.along(true), 1, 1.25)
}
