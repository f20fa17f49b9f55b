package draw

import (
	"html"
	"io"
	"math"
	"strconv"
	"strings"
)

// The side view that can be touched: the scene to scale in the middle, the parts at its sides.
const (
	touchW    = 424.0
	touchSide = 126.0 // width of a column of parts
	touchTop  = 8.0
	touchLow  = 44.0  // under the ground
	touchH    = 476.0 // at the highest, but for many parts
)

// Touch draws the scene with its parts as links beside it. What stands around the hoist stands below the ground.
func Touch(s Scene, spots []Spot, w io.Writer) error {
	var beside, below []placed
	at := s.anchors()
	for _, one := range spots {
		one.Name = short(one.Name)
		p, drawn := at[one.ID]
		switch {
		case one.Around:
			below = append(below, placed{Spot: one})
		case drawn:
			one.At = p
			beside = append(beside, placed{Spot: one, own: true})
		default: // beside the ground, without a line
			beside = append(beside, placed{Spot: one})
		}
	}
	b := s.bounds()
	const wide, highest = touchW - 2*touchSide - 20, touchH - touchLow - 40
	tall := (b.Y1 - b.Y0) * math.Min(wide/math.Max(b.X1-b.X0, 1), highest/math.Max(b.Y1-b.Y0, 1))
	low := math.Max(touchTop+inColumn((len(beside)+1)/2), 40+tall)
	h := low + touchLow
	c := &sheet{pen: openTouch(w, touchW, h, "The hoist from the side. Every part is a link that opens its card."), w: touchW, s: s, f: s.fit(touchSide+10, 34, wide, low-40)}
	c.ground(4, touchW-4, c.f.y(0))
	c.scenery()
	c.travel()
	for i := range beside {
		beside[i].x, beside[i].y = c.f.p(beside[i].At)
	}
	left, right := box{4, touchTop, 4 + touchSide, low - 6}, box{touchW - 4 - touchSide, touchTop, touchW - 4, low - 6}
	for _, p := range columns(beside, left, right) {
		c.spot(p)
	}
	for i, p := range below {
		x := 4 + float64(i)*(touchW-8)/float64(len(below))
		p.box = box{x, h - spotHigh - 2, x + (touchW-8)/float64(len(below)) - 4, h - 2}
		c.spot(p)
	}
	return c.close()
}

// openTouch begins a picture of links.
func openTouch(out io.Writer, w, h float64, say string) *pen {
	p := newPen(out)
	p.raw(`<svg xmlns="http://www.w3.org/2000/svg" class="draw touch" viewBox="0 0 %s %s" role="group" fill="none" stroke="none" aria-label="%s">`, num(w), num(h), html.EscapeString(say))
	return p
}

// ground draws the ground, hatched.
func (c *sheet) ground(x0, x1, y float64) {
	c.line(x0, y, x1, y, stroke(ink, wide, ""))
	for x := x0 + 12; x <= x1; x += 16 {
		c.line(x, y, x-5, y+6, stroke(ink, 0.6, ""))
	}
}

// travel writes how far the mass goes, beside it.
func (c *sheet) travel() {
	for _, d := range c.s.Dims {
		if !d.Upright || !strings.HasPrefix(d.Text, "travel") {
			continue
		}
		x := c.f.x(c.s.Mass.X1) + 9
		y0, y1 := c.f.y(c.s.Mass.Y0), c.f.y(c.s.Mass.Y0-c.s.Travel)
		c.line(x, y0, x, y1, attrs{"class", "dim"})
		c.arrow(x, y0, 0, -1)
		c.arrow(x, y1, 0, 1)
		mid := (y0 + y1) / 2
		if math.Abs(y1-y0) > TextWidth(d.Text, 12)+8 {
			c.raw(`<text class="d" text-anchor="middle" x="%s" y="%s" transform="rotate(-90 %s %s)">%s</text>`, num(x-4), num(mid), num(x-4), num(mid), html.EscapeString(d.Text))
		}
		return
	}
}

// anchors are the points of the parts in the scene, by their ids.
func (s Scene) anchors() map[string]Point {
	mid := func(r Rect) Point { return Point{(r.X0 + r.X1) / 2, (r.Y0 + r.Y1) / 2} }
	at := map[string]Point{
		"mass": mid(s.Mass), "cage": {s.Mass.X0, s.Mass.Y1}, "ends": mid(s.Rig), "beam": mid(s.Beam),
		"stop-1": {s.Mass.X1, s.Mass.Y1}, "stop-2": {s.Rig.X1, s.Rig.Y1},
	}
	for i, w := range s.Wheels {
		switch {
		case i == s.Head && i > 0:
			at["pulley"] = w.C
			at["eye"] = Point{w.C.X, w.C.Y + w.R}
		case i > 0:
			at["pulley-"+strconv.Itoa(i)] = w.C
		}
	}
	if s.Head == 0 {
		at["pulley"] = mid(s.Rig)
	}
	if len(s.Hangers) > 0 {
		at["eye"] = Point{(s.Hangers[0].From.X + s.Hangers[0].To.X) / 2, (s.Hangers[0].From.Y + s.Hangers[0].To.Y) / 2}
	}
	if len(s.Legs) > 0 {
		l := s.Legs[max(0, min(s.Head, len(s.Legs))-1)]
		at["rope"] = along(l, 0.6)
		at["slack"] = along(s.Legs[0], 0.15)
	}
	if n := len(s.Posts); n > 0 {
		p := s.Posts[n-1]
		at["posts"] = Point{(p.X0 + p.X1) / 2, p.Y0 + 0.25*(p.Y1-p.Y0)}
	}
	if len(s.Weights) > 0 {
		at["weights"] = mid(s.Weights[0])
	}
	if s.HasBase {
		at["board"] = Point{s.Board.X1, (s.Board.Y0 + s.Board.Y1) / 2}
		if len(s.Weights) == 0 {
			at["weights"] = Point{s.Board.X0, s.Board.Y1}
		}
	}
	return at
}

// along is the point at a share of a leg.
func along(l Leg, share float64) Point {
	return Point{l.From.X + share*(l.To.X-l.From.X), l.From.Y + share*(l.To.Y-l.From.Y)}
}
