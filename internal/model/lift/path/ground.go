package path

import (
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// psf is a pound-force a square foot, Pa.
const psf = 0.45359237 * unit.G / (0.3048 * 0.3048)

// soilStrength is the presumptive bearing pressure, Pa (IBC 2012, table 1806.2): clay 1,500 psf, sand 2,000, sandy
// gravel 3,000, sedimentary rock 4,000. A slab spreads the load by an unknown amount and counts as the clay that may be
// under it. Fill and mud carry nothing that may be counted on. The second value is false where it is not known.
func soilStrength(soil lift.Ground) (float64, bool) {
	switch soil {
	case lift.GroundClay, lift.GroundConcreteSlab:
		return 1500 * psf, true
	case lift.GroundSand:
		return 2000 * psf, true
	case lift.GroundGravel:
		return 3000 * psf, true
	case lift.GroundRock:
		return 4000 * psf, true
	case lift.GroundFill, lift.GroundMud:
		return 0, true
	}
	return 0, false
}

// groundChecks looks at the foot of each post, and at a floor of wood under a heavy base.
func groundChecks(t *loads) []*Check {
	var out []*Check
	for i, p := range t.h.Structure.Posts {
		out = append(out, t.footCheck(i, p))
	}
	if c := t.floorCheck(); c != nil {
		out = append(out, c)
	}
	return out
}

func (t *loads) footCheck(i int, p lift.Post) *Check {
	l := newLine("ground", fmt.Sprintf("the ground under post %d", i+1), "φ·force / foot area ≤ what the ground carries", source.IBC1806.At("presumptive load-bearing values")).of("structure.posts")
	l.miss(t.missing...)
	hoist, own, miss := t.onPost(p)
	l.miss(miss...)
	area, okA := p.FootArea.Value()
	if !okA {
		l.miss(at("structure.posts", i, "foot_area_m2"))
	}
	bears, okB := soilStrength(p.Soil)
	if !okB {
		l.miss(at("structure.posts", i, "soil"))
		bears = 4000 * psf // rock, the best there is: enough for "gives way" only
	}
	own += t.postWeight(p)
	l.in("force of the hoist on it, at rest", hoist, unit.Newtons)
	l.in("foot area", float64(area), unit.SquareMetres)
	l.in("what the ground carries", bears, unit.Pascals)
	l.in("factor for jerks φ", t.phi, unit.Pieces)
	if okA && t.known() {
		l.add("working", unit.Pascals, (t.phi*hoist+own)/float64(area), bears, 1, 2)
	}
	if p.Soil == lift.GroundConcreteSlab && len(l.cases) > 0 && useOf(l.cases[0]) > 1 {
		// too much for clay without the slab's help; how far the slab spreads it is not known
		l.cases = nil
		l.miss(at("structure.posts", i, "foot_area_m2"))
		c := l.verdict()
		tell(c, bends, always("How far the slab spreads the load is not known. A plate of %s under the post would do without the slab's help.", say.Opening(unit.Area((t.phi*hoist+own)/bears)).Up()))
		return c
	}
	c := l.verdict()
	tell(c, bends, change("Use a larger foot, or firmer ground."))
	return c
}

// postWeight is the post's own weight, N; 0 where it is not known.
func (t *loads) postWeight(p lift.Post) float64 {
	s, _, ok := sectionOf(p.Kind, num(p.Width), num(p.Depth), num(p.Wall), "")
	if !ok || !p.Height.Is {
		return 0
	}
	rho := float64(steelDensity)
	if isTimber(p.Kind) {
		tm, okT := timberOf(p.Class)
		if !okT {
			return 0
		}
		rho = tm.density
	}
	return s.area * float64(p.Height.Val) * rho * unit.G
}

// floorCheck: a floor of wood under base and weights is not known; loose fill and mud bear nothing that may be
// counted on.
func (t *loads) floorCheck() *Check {
	if !t.onGround() {
		return nil
	}
	g := t.h.Base.Ground
	l := newLine("ground", "the floor under the base", "asked, not computed", source.CommonPractice.Whole())
	mend := always("Say what is under the base: a wooden floor or fill may give way.")
	switch g {
	case "", lift.GroundNotSeen:
		l.miss("base.ground")
	case lift.GroundTimberFloor:
		l.miss("")
		mend = always("What a wooden floor carries is not known. Stand the base on the ground, or ask a qualified person.")
	default:
		if g != lift.GroundFill && g != lift.GroundMud {
			return nil
		}
		l.miss("")
		mend = always("Fill and mud carry nothing that may be counted on: the base sinks and tilts. Use firm ground or a slab.")
	}
	c := l.verdict()
	tell(c, bends, mend)
	return c
}
