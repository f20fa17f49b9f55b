package draw

import (
	"math"
	"slices"
)

// ropePart draws the rope: straight pieces and the turns round the wheels between them.
func (c *sheet) ropePart() {
	c.rope(c.f, wide+0.3, len(c.s.Legs), true)
}

func (c *sheet) rope(f frame, width float64, legs int, mark bool) {
	col := c.colour("rope", massColour)
	look := attrs{"stroke", col, "stroke-width", num(width), "stroke-linecap", "butt", "stroke-linejoin", "round"}
	for i, l := range c.s.Legs[:min(legs, len(c.s.Legs))] {
		if i < c.s.Head && mark {
			for _, part := range hidden(l, c.s.Mass) {
				if part.behind {
					c.leg(f, part.Leg, append(slices.Clone(look), "stroke-dasharray", "4 2.5"), mark)
				} else {
					c.leg(f, part.Leg, look, mark)
				}
			}
		} else {
			c.leg(f, l, look, mark)
		}
		if i > 0 {
			c.turn(f, c.s.Wheels[i], c.s.Legs[i-1].To, l.From, look)
		}
	}
}

// leg draws a straight piece, with the cut left out.
func (c *sheet) leg(f frame, l Leg, look attrs, mark bool) {
	x0, y0 := f.p(l.From)
	x1, y1 := f.p(l.To)
	if mark {
		c.markLine(x0, y0, x1, y1)
	}
	lo, hi := math.Min(l.From.Y, l.To.Y), math.Max(l.From.Y, l.To.Y)
	if f.cutTo <= f.cutFrom || lo > f.cutFrom || hi < f.cutTo {
		c.line(x0, y0, x1, y1, look)
		return
	}
	at := func(y float64) (float64, float64) {
		t := (y - l.From.Y) / (l.To.Y - l.From.Y)
		return f.p(Point{l.From.X + t*(l.To.X-l.From.X), y})
	}
	near, far := f.cutFrom, f.cutTo
	if l.From.Y > l.To.Y {
		near, far = far, near
	}
	ax, ay := at(near)
	bx, by := at(far)
	c.line(x0, y0, ax, ay, look)
	c.line(bx, by, x1, y1, look)
}

// piece is a part of a leg, in view or behind the mass.
type piece struct {
	Leg
	behind bool
}

// hidden parts a leg where it passes behind the mass.
func hidden(l Leg, m Rect) []piece {
	dx, dy := l.To.X-l.From.X, l.To.Y-l.From.Y
	in, out := 0.0, 1.0
	for _, side := range [][2]float64{{-dx, l.From.X - m.X0}, {dx, m.X1 - l.From.X}, {-dy, l.From.Y - m.Y0}, {dy, m.Y1 - l.From.Y}} {
		switch p, q := side[0], side[1]; {
		case p == 0 && q < 0:
			return []piece{{l, false}}
		case p < 0:
			in = math.Max(in, q/p)
		case p > 0:
			out = math.Min(out, q/p)
		}
	}
	if in >= out {
		return []piece{{l, false}}
	}
	at := func(t float64) Point { return Point{l.From.X + t*dx, l.From.Y + t*dy} }
	return []piece{{Leg{l.From, at(in)}, false}, {Leg{at(in), at(out)}, true}, {Leg{at(out), l.To}, false}}
}

// turn draws the rope round a wheel.
func (c *sheet) turn(f frame, w Wheel, in, out Point, look attrs) {
	a0 := math.Atan2(in.Y-w.C.Y, in.X-w.C.X)
	a1 := math.Atan2(out.Y-w.C.Y, out.X-w.C.X)
	sweep := math.Mod((a1-a0)*w.Turn+4*math.Pi, 2*math.Pi)
	if sweep < 1e-6 || sweep > 2*math.Pi-1e-6 {
		return
	}
	x0, y0 := f.p(in)
	x1, y1 := f.p(out)
	large, dir := "0", "1"
	if sweep > math.Pi {
		large = "1"
	}
	if w.Turn > 0 {
		dir = "0"
	}
	r := num(w.R * f.scale)
	c.tag("path", attrs{"d", "M" + num(x0) + " " + num(y0) + "A" + r + " " + r + " 0 " + large + " " + dir + " " + num(x1) + " " + num(y1)}, look)
}

// wheels draws drum and pulleys.
func (c *sheet) wheels() {
	for i, w := range c.s.Wheels {
		part := "redirect"
		if i == 0 {
			part = "drum"
		} else if i == c.s.Head {
			part = "head"
		}
		x, y := c.f.p(w.C)
		c.wheel(c.f, w, c.colour(part, ink), i == 0)
		r := math.Max(2, w.R*c.f.scale)
		c.markRect(x-r, y-r, x+r, y+r)
		if w.AtLower && w.R*c.f.scale > 3 {
			low := w
			low.C.Y -= c.s.Travel
			lx, ly := c.f.p(low.C)
			c.circle(lx, ly, math.Max(1.5, w.Bare/2*c.f.scale), stroke(ink, 0.6, "2 1.5"))
		}
	}
}

func (c *sheet) wheel(f frame, w Wheel, col string, drum bool) {
	x, y := f.p(w.C)
	r := math.Max(1.5, w.Bare/2*f.scale)
	dash := ""
	if !w.Known {
		dash = "3 2"
	}
	c.circle(x, y, r, stroke(col, wide-0.2, dash), attrs{"fill", col, "fill-opacity", ".05"})
	if drum {
		if fl := c.s.Flange / 2 * f.scale; fl > r+1 {
			c.circle(x, y, fl, stroke(col, narrow, dash))
		}
		c.circle(x, y, w.R*f.scale, stroke(c.colour("rope", massColour), narrow, ""))
	}
	if r > 4 {
		c.centreLine(x-r-3, y, x+r+3, y)
		c.centreLine(x, y-r-3, x, y+r+3)
	} else {
		c.circle(x, y, 0.8, attrs{"fill", col})
	}
}
