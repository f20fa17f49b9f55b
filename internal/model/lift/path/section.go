package path

import (
	"math"

	"duskweight/internal/model/lift"
)

// section is a cross-section in m, m², m³, m⁴; w and i about the bending axis, least about the weaker one.
type section struct {
	area, w, i, least float64
	shear             float64 // area that the shear force is divided by for the largest shear stress
	width, depth      float64
	wall              float64 // 0 when solid
	round             bool
}

// sectionOf builds the section of a beam or post from its kind; the paths that are missing are fields of prefix. An
// empty result with no missing path means a kind that cannot be computed.
func sectionOf(kind lift.MemberKind, width, depth, wall known, prefix string) (s section, miss []string, ok bool) {
	need := func(k known, field string) float64 {
		if !k.is {
			miss = append(miss, prefix+field)
		}
		return k.val
	}
	switch kind {
	case lift.MemberTimber:
		b, h := need(width, "width_m"), need(depth, "depth_m")
		s = rectangle(b, h)
	case lift.MemberRoundPole:
		s = roundBar(need(width, "width_m"))
	case lift.MemberSteelTube:
		b, h, t := need(width, "width_m"), need(depth, "depth_m"), need(wall, "wall_m")
		s = boxTube(b, h, t)
	case lift.MemberSteelRoundTube:
		d, t := need(width, "width_m"), need(wall, "wall_m")
		s = roundTube(d, t)
	case "":
		return s, []string{prefix + "kind"}, false
	default:
		return s, nil, false
	}
	return s, miss, len(miss) == 0
}

// known is a plain number that may be not known.
type known struct {
	val float64
	is  bool
}

func rectangle(b, h float64) section {
	return section{area: b * h, w: b * h * h / 6, i: b * h * h * h / 12, least: math.Min(b*h*h*h, h*b*b*b) / 12,
		shear: b * h * 2 / 3, width: b, depth: h}
}

func roundBar(d float64) section {
	i := math.Pi * math.Pow(d, 4) / 64
	a := math.Pi * d * d / 4
	return section{area: a, w: math.Pi * d * d * d / 32, i: i, least: i, shear: a * 3 / 4, width: d, depth: d, round: true}
}

// boxTube takes the shear on the two upright walls.
func boxTube(b, h, t float64) section {
	t = math.Min(t, math.Min(b, h)/2)
	bi, hi := b-2*t, h-2*t
	i := (b*h*h*h - bi*hi*hi*hi) / 12
	j := (h*b*b*b - hi*bi*bi*bi) / 12
	return section{area: b*h - bi*hi, w: i / (h / 2), i: i, least: math.Min(i, j), shear: 2 * t * h, width: b, depth: h, wall: t}
}

// roundTube: the largest shear stress of a thin ring is 2·V/A.
func roundTube(d, t float64) section {
	t = math.Min(t, d/2)
	di := d - 2*t
	i := math.Pi * (math.Pow(d, 4) - math.Pow(di, 4)) / 64
	a := math.Pi * (d*d - di*di) / 4
	return section{area: a, w: i / (d / 2), i: i, least: i, shear: a / 2, width: d, depth: d, wall: t, round: true}
}

// net is the section modulus left beside an upright hole of diameter hole, m³: the hole takes its width out of a
// rectangle, d·D²/6 out of a round bar, and out of a tube its width of the upper and lower wall.
func (s section) net(hole float64) float64 {
	w := s.w
	switch {
	case s.wall > 0:
		w -= hole * s.wall * s.depth
	case s.round:
		w -= hole * s.depth * s.depth / 6
	default:
		w -= hole * s.depth * s.depth / 6
	}
	return math.Max(0, w)
}

// radius is the least radius of gyration, m.
func (s section) radius() float64 {
	if s.area <= 0 {
		return 0
	}
	return math.Sqrt(s.least / s.area)
}
