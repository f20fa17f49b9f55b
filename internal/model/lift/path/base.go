package path

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// onGround reports whether drum and motor stand on the ground; not known counts as the ground wherever there is a
// pulley before the mass, because there the rope pulls the base up.
func (t *loads) onGround() bool {
	w := t.h.Base.Where
	return w == lift.BaseOnGround || (w == "" && (!t.reeved || t.k > 0))
}

// lifted reports whether the rope can lift the base at all: it stands on the ground and the rope goes up from it.
func (t *loads) lifted() bool { return t.onGround() && (!t.reeved || t.k > 0) }

// crossing are the rope parts that leave the base: part j runs from pulley j (0 the drum) to pulley j+1, or to the dead
// end. With foot pulleys on the base these are the parts that leave the last of them.
func (t *loads) crossing() []int {
	on := func(j int) bool { return j == 0 || (j < len(t.up) && t.pulley(j).OnBase == unit.Yes) }
	var out []int
	for j := range t.up {
		if on(j) != on(j+1) {
			out = append(out, j)
		}
	}
	return out
}

// pull is the static raising tension that leaves the base, split into its upright and its level part, N.
func (t *loads) pull() (up, level float64) {
	a, _ := t.ropeAngle()
	for _, j := range t.crossing() {
		up += t.up[j] * math.Max(0, math.Cos(a))
		level += t.up[j] * math.Max(0, math.Sin(a))
	}
	return up, level
}

// ropeAngle is the angle from upright at which the rope leaves the base: the user's, or that at the top pulley where the
// rope runs straight there. Not known is upright, the worst for lifting the base; whether it slides is not known then.
func (t *loads) ropeAngle() (float64, bool) {
	if a, ok := t.h.Base.RopeAngle.Value(); ok {
		return float64(a), true
	}
	if a, ok := t.sideAngle(); ok && t.k == 1 {
		return a, true
	}
	return 0, false
}

// sideAngle is the angle between the two ropes at the top pulley, and whether it is known.
func (t *loads) sideAngle() (float64, bool) {
	return t.angle(t.k), t.pulley(t.k).Angle.Is || t.h.Structure.LeadAngle.Is
}

// ballast is the mass that keeps the base down, kg: without the loose weights that someone could remove. Where it is
// not known whether there are any, the whole mass stands in (enough for "gives way" only) and the paths are named.
func (t *loads) ballast() (mass float64, is bool, miss []string) {
	b := t.h.Base
	m, ok := b.Mass.Value()
	if !ok {
		return 0, false, []string{"base.mass_kg"}
	}
	if b.WeightsFixed == unit.Yes {
		return float64(m), true, nil
	}
	if loose, ok := b.LoosePart.Value(); ok {
		return math.Max(0, float64(m-loose)), true, nil
	}
	miss = []string{"base.loose_mass_kg"}
	if b.WeightsFixed == "" {
		miss = []string{"base.weights_fixed", "base.loose_mass_kg"}
	}
	return float64(m), true, miss
}

// baseLine begins a check of the base: what is missing of tensions and ballast, and the inputs they share.
func (t *loads) baseLine(id, part, formula, place string) (l *line, mb, up, level float64, ok bool) {
	l = newLine(id, part, formula, source.Derivation.At(place))
	l.miss(t.missing...)
	mb, is, miss := t.ballast()
	l.miss(miss...)
	if t.known() {
		up, level = t.pull()
		l.in("rope pull that leaves the base upwards, raising", up, unit.Newtons)
		if level > 0 {
			l.in("level part of that pull", level, unit.Newtons)
		}
	}
	if is {
		l.in("mass that keeps it down", mb, unit.Kilograms)
	}
	l.in("factor for jerks φ", t.phi, unit.Pieces)
	return l, mb, up, level, is && t.known()
}

// baseUpliftChecks: use = max(1.5·V_s, 1.2·V_w)/(m_b·g), V_s the static raising pull upwards, V_w = φ·V_s.
func baseUpliftChecks(t *loads) []*Check {
	if t.h.Base.Where == lift.BaseOnWall {
		l := newLine("base_uplift", "what fixes the drive to the wall", "asked, not computed", source.CommonPractice.Whole())
		l.miss("")
		c := l.verdict()
		tell(c, carries, always("Fixings in a wall stay not known until a qualified person has confirmed them. Never into brick joints."))
		return []*Check{c}
	}
	if !t.lifted() {
		return nil
	}
	l, mb, up, _, ok := t.baseLine("base_uplift", "the weight that keeps the drive on the ground", "max(1.5·V_s, 1.2·φ·V_s) ≤ m_b·g", "equilibrium of the base")
	mend := change("Put more weight on the base, fastened so that nobody can remove it.")
	if ok {
		l.add("at rest", unit.Newtons, up, mb*unit.G, 1.5, 2)
		l.add("working", unit.Newtons, t.phi*up, mb*unit.G, 1.2, 1.6)
		mend = mend.and(always("It needs %s in all.", heavy(math.Max(1.5, 1.2*t.phi)*up)))
	} else if t.known() {
		mend = always("It needs %s in all, fastened.", heavy(math.Max(1.5, 1.2*t.phi)*up))
	}
	c := l.verdict()
	tell(c, lifts, mend)
	return []*Check{c}
}

// baseSlidingChecks: H ≤ μ·(m_b·g − V). Left out where the rope goes straight up.
func baseSlidingChecks(t *loads) []*Check {
	a, okA := t.ropeAngle()
	if !t.lifted() || okA && a <= 0 {
		return nil
	}
	l, mb, up, level, ok := t.baseLine("base_sliding", "the base that slides on the ground", "1.5·H ≤ μ·(m_b·g − V)", "equilibrium of the base")
	if !okA {
		l.miss("base.rope_angle_rad")
	}
	mu, okMu := t.h.Grip().Value()
	if !okMu {
		l.miss("base.friction")
		mu = 1 // the most there is: enough for "gives way" only
	}
	if okMu && !t.h.Base.Friction.Is {
		l.also(source.TemporaryWorks.Whole())
	}
	l.in("friction", float64(mu), unit.Pieces)
	if ok {
		held := func(phi float64) float64 { return math.Max(0, float64(mu)*(mb*unit.G-phi*up)) }
		l.add("at rest", unit.Newtons, level, held(1), 1.5, 2)
		l.add("working", unit.Newtons, t.phi*level, held(t.phi), 1.2, 1.6)
	}
	c := l.verdict()
	tell(c, slides, change("Put more weight on it, or stake it to the ground."))
	return []*Check{c}
}

// baseOverturningChecks takes moments about both edges of a base of width b, the pull leaving at e from its middle and
// h above the ground: about the edge on the side of the level pull H·h + V·(b/2 − e), about the far edge
// V·(b/2 + e) − H·h, against m_b·g·b/2.
func baseOverturningChecks(t *loads) []*Check {
	if !t.lifted() {
		return nil
	}
	l, mb, up, level, ok := t.baseLine("base_overturning", "the base that tips over", "1.5·(H·h + V·arm) ≤ m_b·g·b/2", "moments about the edge")
	b := t.h.Base
	w, okW := b.Width.Value()
	if !okW {
		l.miss("base.width_m")
	}
	e, okE := b.PullOffset.Value()
	if !okE {
		l.miss("base.pull_offset_m")
	}
	h, okH := b.PullHeight.Value()
	if !okH && level > 0 {
		l.miss("base.pull_height_m")
	}
	l.in("width of the base", float64(w), unit.Metres)
	l.in("from the middle to where the rope leaves", float64(e), unit.Metres)
	if ok && okW {
		tip := func(v, hz float64) float64 {
			near := hz*float64(h) + v*(float64(w)/2-float64(e))
			return math.Max(near, v*(float64(w)/2+float64(e))-hz*float64(h))
		}
		held := mb * unit.G * float64(w) / 2
		l.add("at rest", unit.NewtonMetres, tip(up, level), held, 1.5, 2)
		l.add("working", unit.NewtonMetres, t.phi*tip(up, level), held, 1.2, 1.6)
	}
	c := l.verdict()
	tell(c, tips, change("Put the rope over the middle of the weights, widen the base, or add weight."))
	return []*Check{c}
}

// baseBoardChecks bends the board between the drum's screws and the nearest weight: σ = 6·V·a/(w·t²), set against the
// board's strength as timber, k_mod·f/γ_M with 1.35 on the pull.
func baseBoardChecks(t *loads) []*Check {
	if !t.lifted() {
		return nil
	}
	b := t.h.Base.Board
	l := newLine("base_board", "the base board", "1.35·6·V·a/(w·t²) ≤ k_mod·f/γ_M", source.Eurocode5.At("6.1.6"))
	l.miss(t.missing...)
	for _, f := range []struct {
		is   bool
		path string
	}{{b.Thickness.Is, "thickness_m"}, {b.Width.Is, "width_m"}, {b.Arm.Is, "arm_m"}, {b.Strength.Is, "bending_strength_pa"}} {
		if !f.is {
			l.miss("base.board." + f.path)
		}
	}
	if t.known() && b.Thickness.Is && b.Width.Is && b.Arm.Is && b.Strength.Is {
		up, _ := t.pull()
		w, th, a, f := float64(b.Width.Val), float64(b.Thickness.Val), float64(b.Arm.Val), float64(b.Strength.Val)
		out := t.outdoorsBeam()
		stress := gammaG * 6 * up * a / (w * th * th)
		l.in("rope pull upwards, raising", up, unit.Newtons)
		l.in("arm", a, unit.Metres)
		l.in("bending strength of the board", f, unit.Pascals)
		l.add("at rest, bending", unit.Pascals, stress, kmod(out, false)*f/gammaM, 1, 1.25)
		l.add("working, bending", unit.Pascals, t.phi*stress, kmod(out, true)*f/gammaM, 1, 1.25)
	}
	c := l.verdict()
	tell(c, bends, change("Use a thicker or wider board, or set the weights closer to the drum."))
	return []*Check{c}
}
