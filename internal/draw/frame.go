package draw

import "math"

// frame brings the scene onto the paper: one scale for both directions, and where the travel is very long a piece of it
// is cut out, as a drafter breaks a long part.
type frame struct {
	scale    float64 // paper units for a mm
	x0, y0   float64 // paper place of the scene's origin
	cutFrom  float64 // scene heights between which nothing is drawn; equal: no cut
	cutTo    float64
	cutPaper float64 // what is left of the cut on the paper
}

func (f frame) x(v float64) float64 { return f.x0 + v*f.scale }

func (f frame) y(v float64) float64 {
	cut := f.cutTo - f.cutFrom
	switch {
	case cut <= 0 || v <= f.cutFrom:
		return f.y0 - v*f.scale
	case v >= f.cutTo:
		return f.y0 - (v-cut)*f.scale - f.cutPaper
	default:
		return f.y0 - f.cutFrom*f.scale - f.cutPaper*(v-f.cutFrom)/cut
	}
}

func (f frame) p(q Point) (float64, float64) { return f.x(q.X), f.y(q.Y) }

// bounds of all that is drawn to scale.
func (s Scene) bounds() Rect {
	b := Rect{s.Mass.X0, 0, s.Mass.X1, s.Mass.Y1}
	grow := func(r Rect) {
		b.X0, b.X1, b.Y1 = math.Min(b.X0, r.X0), math.Max(b.X1, r.X1), math.Max(b.Y1, r.Y1)
	}
	for _, list := range [][]Rect{s.Posts, s.Stubs, s.Weights, {s.Beam}} {
		for _, r := range list {
			grow(r)
		}
	}
	if s.HasBase {
		grow(s.Board)
	}
	for _, w := range s.Wheels {
		grow(Rect{w.C.X - w.R, 0, w.C.X + w.R, w.C.Y + w.R})
	}
	b.Y0 = math.Min(0, s.Mass.Y0-s.Travel)
	return b
}

// leastMass is the smallest that the mass is drawn before the travel is cut.
const leastMass = 20.0

// fit places the scene in a box of the paper.
func (s Scene) fit(left, top, w, h float64) frame {
	b := s.bounds()
	bw, bh := math.Max(b.X1-b.X0, 1), math.Max(b.Y1-b.Y0, 1)
	f := frame{scale: math.Min(w/bw, h/bh)}
	small := math.Max(1, math.Min(s.Mass.X1-s.Mass.X0, s.Mass.Y1-s.Mass.Y0))
	// The free travel: between the mass at the bottom and the mass at the top, a mass' height kept clear of both.
	lo, hi := s.Mass.Y1-s.Travel+0.6*small, s.Mass.Y0-0.6*small
	lo = math.Max(lo, s.baseTop())
	if f.scale*small < leastMass && bh*f.scale > h*0.99 && hi > lo {
		const gap = 14
		scale := math.Min(w/bw, leastMass/small)
		cut := bh - (h-gap)/scale
		if cut > hi-lo {
			cut = hi - lo
			scale = math.Min(scale, (h-gap)/(bh-cut))
		}
		if cut > 0.15*bh {
			mid := (lo + hi) / 2
			f = frame{scale: scale, cutFrom: mid - cut/2, cutTo: mid + cut/2, cutPaper: gap}
		}
	}
	f.x0 = left + (w-bw*f.scale)/2 - b.X0*f.scale
	f.y0 = top + h + b.Y0*f.scale
	return f
}

// baseTop is the height under which nothing may be cut out: the drive stands there.
func (s Scene) baseTop() float64 {
	top := 0.0
	for _, w := range s.Wheels {
		if w.Place == "base" {
			top = math.Max(top, w.C.Y+w.R)
		}
	}
	for _, r := range s.Weights {
		top = math.Max(top, r.Y1)
	}
	return top + 60
}
