package path

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// member is the material of a beam or post, with its design strengths.
type member struct {
	kind     lift.MemberKind
	class    lift.TimberClass
	yield    known
	outdoors bool
	prefix   string // path prefix of its fields
	t        timber
}

// material finds the strength class or the yield strength and says whether the member can be computed.
func (m *member) material(l *line) bool {
	if isTimber(m.kind) {
		t, ok := timberOf(m.class)
		if !ok {
			l.miss(m.prefix + "class")
			return false
		}
		m.t = t
		l.in("bending strength of the class", t.fm, unit.Pascals)
		l.in("k_mod, always", kmod(m.outdoors, false), unit.Pieces)
		l.in("k_mod, short", kmod(m.outdoors, true), unit.Pieces)
		return true
	}
	if !m.yield.is {
		l.miss(m.prefix + "yield_pa")
		return false
	}
	l.in("yield strength", m.yield.val, unit.Pascals)
	return true
}

func (m *member) timber() bool { return isTimber(m.kind) }

func (m *member) design(f float64, short bool) float64 { return kmod(m.outdoors, short) * f / gammaM }

// bending strength, Pa: k_mod·k_h·f_m/γ_M, or the yield strength of steel (γ_M0 = 1, EN 1993-1-1 6.1). A round pole
// gets no size factor.
func (m *member) bending(depth float64, short bool) float64 {
	if !m.timber() {
		return m.yield.val
	}
	kh := m.t.kh(depth)
	if m.kind == lift.MemberRoundPole {
		kh = 1
	}
	return m.design(m.t.fm*kh, short)
}

// breaking is what an event of a moment wants of the member: twice its characteristic strength, which is whole times the
// strengths here, for timber breaks with no warning; steel may come up to its yield strength once. Source: the borders of
// events, 2 on breaking and 1 on yield.
func (m *member) breaking() (wanted, ok, whole float64) {
	if m.timber() {
		return 2, 2.5, gammaM
	}
	return 1, 1.25, 1
}

// tilting is k_crit, the share of bending strength that a tall thin timber beam keeps before it tips over sideways
// between its supports, EN 1995-1-1 6.3.3: σ_crit = .78·b²·E_05/(h·l_ef), l_ef = .8·L + 2·h for a load on top.
func (m *member) tilting(s section, span float64) float64 {
	if m.kind != lift.MemberTimber || s.depth <= 0 || s.width <= 0 {
		return 1
	}
	critical := 0.78 * s.width * s.width * m.t.e05 / (s.depth * (0.8*span + 2*s.depth))
	rel := math.Sqrt(m.t.fm / critical)
	switch {
	case rel <= 0.75:
		return 1
	case rel <= 1.4:
		return 1.56 - 0.75*rel
	}
	return 1 / (rel * rel)
}

// shear strength, Pa: cracks leave .67 of the width; steel f_y/√3.
func (m *member) shear(short bool) float64 {
	if !m.timber() {
		return m.yield.val / math.Sqrt(3)
	}
	return m.design(m.t.fv*kcr, short)
}

// across is the strength across the grain, Pa (k_c,90 = 1).
func (m *member) across(short bool) float64 { return m.design(m.t.fc90, short) }

// along is the compressive strength along the grain, Pa; steel its yield strength.
func (m *member) along(short bool) float64 {
	if !m.timber() {
		return m.yield.val
	}
	return m.design(m.t.fc0, short)
}

func (m *member) modulus() float64 {
	if m.timber() {
		return m.t.e
	}
	return steelE
}

// low is the modulus for buckling: the 5-percentile.
func (m *member) low() float64 {
	if m.timber() {
		return m.t.e05
	}
	return steelE
}

func (m *member) density() float64 {
	if m.timber() {
		return m.t.density
	}
	return steelDensity
}

func (m *member) creep() float64 {
	if m.timber() {
		return 1 + kdef(m.outdoors)
	}
	return 1
}

// bearingWidth: a round pole touches with about half its diameter (our own judgement).
func (m *member) bearingWidth(s section) float64 {
	if s.round {
		return s.width / 2
	}
	return s.width
}
