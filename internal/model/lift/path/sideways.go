package path

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Sideways is what pushes a frame of its own posts sideways: the rope, and the masses and areas that earthquake and wind
// take hold of. Missing says what keeps a figure from being known; the figure is then too small.
type Sideways struct {
	Rope     unit.Force // static side pull of the rope at the top, raising or lowering
	Hung     unit.Mass
	Beam     unit.Mass
	Posts    unit.Mass // all of them
	BeamArea unit.Area // seen from the side
	PostArea unit.Area
	LoadArea unit.Area
	Missing  []string
}

// SidewaysOf works out what pushes the frame of a hoist.
func SidewaysOf(h lift.Hoist, d lift.Drive) Sideways {
	t := newLoads(h, d)
	s := Sideways{Hung: unit.Mass(t.m), Beam: unit.Mass(t.beamWeight() / unit.G), Missing: append([]string(nil), t.missing...)}
	if t.known() && t.k >= 1 && h.Base.Where != lift.BaseOnBeam {
		a, ok := t.sideAngle()
		if !ok {
			s.Missing = append(s.Missing, "structure.lead_line_angle_rad")
		}
		s.Rope = unit.Force(math.Max(t.up[t.k-1], t.down[t.k-1]) * math.Sin(a))
	}
	b := h.Structure.Beam
	s.BeamArea = unit.Area(float64(b.Span.Or(0)) * math.Max(float64(b.Depth.Or(0)), float64(b.Width.Or(0))))
	if b.Kind != lift.MemberNone && s.Beam == 0 {
		s.Missing = append(s.Missing, "structure.beam.own_mass_kg")
	}
	for _, p := range h.Structure.Posts {
		m, ok := postMass(p)
		if !ok {
			s.Missing = append(s.Missing, "structure.posts")
		}
		s.Posts += m
		s.PostArea += unit.Area(float64(p.Height.Or(0)) * math.Max(float64(p.Width.Or(0)), float64(p.Depth.Or(0))))
	}
	if len(h.Structure.Posts) == 0 {
		s.Missing = append(s.Missing, "structure.posts")
	}
	s.LoadArea = unit.Area(h.Site.LoadWidth.Or(0)) * unit.Area(h.Site.LoadHeight.Or(0))
	if !h.Site.LoadWidth.Is || !h.Site.LoadHeight.Is {
		s.Missing = append(s.Missing, "site.load_width_m")
	}
	return s
}

// postMass is a post's own mass, kg; false where its size or kind is not known.
func postMass(p lift.Post) (unit.Mass, bool) {
	s, _, ok := sectionOf(p.Kind, num(p.Width), num(p.Depth), num(p.Wall), "")
	if !ok || !p.Height.Is {
		return 0, false
	}
	rho := float64(steelDensity)
	if isTimber(p.Kind) {
		t, ok := timberOf(p.Class)
		if !ok {
			return 0, false
		}
		rho = t.density
	}
	return unit.Mass(s.area * float64(p.Height.Val) * rho), true
}

// StormPressure is the push of a wind of 35 m/s on a square metre, Pa, and BreezePressure that of 15 m/s, up to which a
// hoist with a plan for wind is used (our own judgement): ½·1.225·v²·1.3.
const (
	StormPressure  = unit.Stress(stormPressure)
	BreezePressure = unit.Stress(0.5 * 1.225 * 15 * 15 * 1.3)
)
