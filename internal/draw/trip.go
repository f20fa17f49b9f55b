package draw

import (
	"io"
	"math"
	"strconv"
)

// Trip is the hoist from the side with the parts that move marked, for a script that moves them: the mass with what it hangs
// by as one group, the ropes that grow as lines.
type Trip struct{ Scene Scene }

// The paper of a trip.
const (
	tripW = 240.0
	tripH = 400.0
)

// Draw draws the hoist with its mass at the lower stop. The group "moves" goes up by data-way units of the paper from there,
// and with it the moving end of each line "grows".
func (t Trip) Draw(w io.Writer) error {
	p := open(w, "trip", tripW, tripH, "The hoist from the side", "The mass goes from the lower stop to the upper and down again.")
	f := t.Scene.whole(glowX+glowR+4, 12, tripW-glowX-glowR-22, tripH-30)
	c := &sheet{pen: p, s: t.Scene.lowered(0), f: f}
	c.line(4, f.y(0), tripW-4, f.y(0), stroke(ink, wide, ""))
	for x := 14.0; x < tripW-4; x += 12 {
		c.line(x, f.y(0), x-5, f.y(0)+6, stroke(ink, 0.6, ""))
	}
	c.frameParts()
	c.basePart()
	c.stopMarks(t.Scene)
	c.tripRope()
	for i, w := range c.s.Wheels {
		if !w.AtLower {
			c.tripWheel(w, i == 0)
		}
	}
	p.raw(`<g class="moves" data-way="%s">`, num(t.Scene.Travel*f.scale))
	c.hanging()
	for i, w := range c.s.Wheels {
		if w.AtLower {
			c.tripWheel(w, false)
			c.turn(f, w, c.s.Legs[i-1].To, c.s.Legs[i].From, c.ropeLook())
		}
	}
	p.raw("</g>")
	c.glow()
	return c.close()
}

// ropeLook is how the rope is drawn.
func (c *sheet) ropeLook() attrs { return stroke(c.colour("rope", massColour), wide+0.3, "") }

// tripRope draws the rope; where one end hangs at the mass, the line says which.
func (c *sheet) tripRope() {
	last := len(c.s.Legs) - 1
	for i, l := range c.s.Legs {
		x0, y0 := c.f.p(l.From)
		x1, y1 := c.f.p(l.To)
		end := ""
		switch {
		case c.s.Wheels[i].AtLower:
			end = "y1"
		case i == last && c.s.endMoves(), i < last && c.s.Wheels[i+1].AtLower:
			end = "y2"
		}
		if end == "" {
			c.line(x0, y0, x1, y1, c.ropeLook())
		} else {
			c.line(x0, y0, x1, y1, c.ropeLook(), attrs{"class", "grows", "data-end", end})
		}
		if i > 0 && !c.s.Wheels[i].AtLower {
			c.turn(c.f, c.s.Wheels[i], c.s.Legs[i-1].To, l.From, c.ropeLook())
		}
	}
}

// tripWheel draws a wheel. The drum has a cross that turns with it: data-turn is how far, in degrees for a unit of the paper.
func (c *sheet) tripWheel(w Wheel, drum bool) {
	x, y := c.f.p(w.C)
	r := math.Max(1.5, w.Bare/2*c.f.scale)
	c.circle(x, y, r, stroke(ink, 1.2, ""), attrs{"class", "mark"})
	if !drum {
		return
	}
	r = math.Max(r, 5)
	ropes := 1.0
	for _, other := range c.s.Wheels[c.s.Head+1:] {
		if other.Place == "mass" || other.Place == "beam" {
			ropes++
		}
	}
	turn := ropes * 180 / math.Pi / math.Max(w.R*c.f.scale, 0.5)
	c.raw(`<g class="turns" data-x="%s" data-y="%s" data-turn="%s">`, num(x), num(y), num(w.Turn*turn))
	c.line(x-r, y, x+r, y, stroke(ink, 1.2, ""))
	c.line(x, y-r, x, y+r, stroke(ink, 1.2, ""))
	c.raw("</g>")
}

// stopMarks draws where the top of the mass ends, above and below.
func (c *sheet) stopMarks(s Scene) {
	for _, y := range []float64{c.f.y(s.Mass.Y1), c.f.y(s.Mass.Y1 - s.Travel)} {
		x := c.f.x(s.Mass.X1) + 5
		c.line(x, y, x+14, y, stroke(ink, 1, "4 3"))
	}
}

// The lamp of a trip: where it stands, and how far it shines.
const glowX, glowR = 22.0, 18.0

// glow is a lamp that a script lights on the way down.
func (c *sheet) glow() {
	x, y := glowX, c.f.y(0)-60
	c.line(x, y+8, x, c.f.y(0), stroke(ink, narrow, ""))
	c.circle(x, y, glowR, attrs{"class", "lit", "fill", sunColour, "fill-opacity", ".4"})
	c.circle(x, y, 8, stroke(ink, 1, ""), attrs{"class", "mark"})
	c.circle(x, y, 8, stroke(ink, 1, ""), attrs{"class", "lit", "fill", sunColour})
}

// Curve is one value over the time of a trip, from zero or from its least up to its most, with a cursor. It has no letters:
// what it shows stands beside it.
type Curve struct {
	Title string
	X, Y  []float64
	FromZ bool   // the axis begins at zero
	Look  string // "night", "sun" or the look of a kind
}

// The paper of a curve.
const (
	curveW = 400.0
	curveH = 52.0
)

// Draw draws the curve.
func (v Curve) Draw(w io.Writer) error {
	p := open(w, "curve", curveW, curveH, v.Title, "")
	if n := len(v.X); n > 1 && len(v.Y) == n {
		lo, hi := v.Ends()
		x, y := axis{lo: v.X[0], hi: math.Max(v.X[n-1], v.X[0]+1e-9), a: 1, b: curveW - 1}, axis{lo: lo, hi: hi, a: curveH - 3, b: 4}
		for _, at := range []float64{lo, (lo + hi) / 2, hi} {
			p.line(0, y.at(at), curveW, y.at(at), stroke(ink, 0.6, ""), attrs{"stroke-opacity", ".2"})
		}
		pts := make([]float64, 0, 2*n)
		for i := range v.X {
			pts = append(pts, x.at(finite(v.X[i])), y.at(finite(v.Y[i])))
		}
		p.path(pts, false, stroke(Bar{Look: v.Look}.colour(), 1.5, ""), attrs{"stroke-linejoin", "round"})
	}
	p.tag("line", attrs{"class", "cursor", "x1", "1", "x2", "1", "y1", "0", "y2", strconv.Itoa(int(curveH))}, stroke(ink, 1, ""))
	return p.close()
}

// Ends are the ends of the axis: from zero, or from a little below the least where that is far from zero.
func (v Curve) Ends() (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, y := range v.Y {
		lo, hi = math.Min(lo, finite(y)), math.Max(hi, finite(y))
	}
	if v.FromZ || len(v.Y) == 0 {
		lo, hi = 0, math.Max(hi, 0)
	}
	if hi-lo < 1e-9*math.Max(1, math.Abs(hi)) {
		hi = lo + 1
	}
	return lo, hi
}
