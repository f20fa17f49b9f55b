package draw

import (
	"io"
	"math"
)

// lowered is the scene with the mass at a share of its travel, 0 at the lower stop and 1 at the upper. The rope follows.
func (s Scene) lowered(share float64) Scene {
	down := s.Travel * (1 - math.Min(1, math.Max(0, share)))
	drop := func(r Rect) Rect { return Rect{r.X0, r.Y0 - down, r.X1, r.Y1 - down} }
	out := s
	out.Mass, out.Rig, out.Travel = drop(s.Mass), drop(s.Rig), 0
	if s.endMoves() {
		out.DeadEnd.Y -= down
	}
	out.Wheels = append([]Wheel(nil), s.Wheels...)
	for i := range out.Wheels {
		if out.Wheels[i].AtLower {
			out.Wheels[i].C.Y -= down
		}
	}
	out.Legs = nil
	for i := range out.Wheels {
		next := Wheel{C: out.DeadEnd, Turn: with}
		if i+1 < len(out.Wheels) {
			next = out.Wheels[i+1]
		}
		out.Legs = append(out.Legs, Tangent(out.Wheels[i], next))
	}
	return out
}

// endMoves reports whether the rope's dead end hangs at the mass: with an odd number of ropes it does.
func (s Scene) endMoves() bool {
	ropes := 1
	for _, w := range s.Wheels[s.Head+1:] {
		if w.Place == "mass" || w.Place == "beam" {
			ropes++
		}
	}
	return ropes%2 == 1
}

// whole places the scene in a box with nothing cut out, at one scale.
func (s Scene) whole(left, top, w, h float64) frame {
	b := s.bounds()
	f := frame{scale: math.Min(w/math.Max(b.X1-b.X0, 1), h/math.Max(b.Y1-b.Y0, 1))}
	f.x0 = left + (w-(b.X1-b.X0)*f.scale)/2 - b.X0*f.scale
	f.y0 = top + h + b.Y0*f.scale
	return f
}

// Moment is the hoist at one moment of its day, for the eye: no letters, no dimension.
type Moment struct {
	Scene Scene
	Title string
	Share float64 // of the travel, 0 at the lower stop
	Going int     // 1: it is being lifted; -1: it comes down
	Sun   bool
	Lamps bool
}

// The paper of a moment.
const (
	momentW = 150.0
	momentH = 140.0
)

// Draw draws the moment.
func (m Moment) Draw(w io.Writer) error {
	p := open(w, "moment", momentW, momentH, m.Title, "")
	c := &sheet{pen: p, s: m.Scene.lowered(m.Share), f: m.Scene.whole(26, 8, momentW-52, momentH-18)}
	c.line(4, c.f.y(0), momentW-4, c.f.y(0), stroke(ink, wide, ""))
	c.frameParts()
	c.basePart()
	c.hanging()
	c.ropePart()
	for _, w := range c.s.Wheels {
		x, y := c.f.p(w.C)
		c.circle(x, y, math.Max(1.5, w.Bare/2*c.f.scale), stroke(ink, 1, ""), attrs{"class", "mark"})
	}
	x, y := c.f.x(m.Scene.bounds().X1)+9, (c.f.y(c.s.Mass.Y0)+c.f.y(c.s.Mass.Y1))/2
	if m.Going != 0 {
		d := 12 * float64(m.Going)
		c.line(x, y+d, x, y-d, stroke(ink, 1.4, ""))
		c.arrow(x, y-d, 0, -float64(m.Going))
	}
	c.lights(m)
	return c.close()
}

// hanging draws the mass with what it hangs by.
func (c *sheet) hanging() {
	m, r, col := c.s.Mass, c.s.Rig, c.colour("mass", massColour)
	c.rect(c.f.x(m.X0), c.f.y(m.Y1), (m.X1-m.X0)*c.f.scale, (m.Y1-m.Y0)*c.f.scale, stroke(col, wide, ""), attrs{"fill", col, "fill-opacity", ".3"})
	x0, y0, x1, y1 := c.f.x(r.X0), c.f.y(r.Y1), c.f.x(r.X1), c.f.y(r.Y0)
	c.path([]float64{x0, y0, x1, y0, (c.f.x(m.X0) + c.f.x(m.X1)) / 2, y1}, true, stroke(col, narrow, ""))
}

// lights draws the sun above or a lamp beside the hoist: with its light while it shines.
func (c *sheet) lights(m Moment) {
	if m.Sun {
		c.circle(15, 16, 8, attrs{"fill", sunColour}, stroke(ink, narrow, ""))
		for i := range 8 {
			sin, cos := math.Sincos(float64(i) * math.Pi / 4)
			c.line(15+10.5*cos, 16+10.5*sin, 15+13.5*cos, 16+13.5*sin, stroke(ink, narrow, ""))
		}
	}
	x, y := momentW-14, c.f.y(0)-34
	c.line(x, y+6, x, c.f.y(0), stroke(ink, narrow, ""))
	if m.Lamps {
		c.circle(x, y, 13, attrs{"fill", sunColour, "fill-opacity", ".35"})
		c.circle(x, y, 6, attrs{"fill", sunColour}, stroke(ink, 1, ""))
		return
	}
	c.circle(x, y, 6, stroke(ink, 1, ""), attrs{"class", "mark"})
}
