package draw

import (
	"io"
	"math"
)

// The paper of the side view, in units of the viewBox: at 78 mm of a printed sheet its letters are 2.5 mm high.
const (
	paperW   = 380.0
	letter   = 12.0
	viewTop  = 34.0
	viewH    = 330.0
	ground   = viewTop + viewH
	viewLeft = 14.0
	viewW    = paperW - viewLeft - 92
	detailY  = ground + 62
	detailH  = 150.0
)

// SVG draws the scene.
func SVG(s Scene, w io.Writer) error {
	h := detailY + detailH + 8
	notes := wrap(s.Notes, 11, paperW-2*viewLeft)
	h += 15 * float64(len(notes))
	c := &sheet{pen: open(w, "hoist", paperW, h, s.Title, s.Desc), s: s, f: s.fit(viewLeft, viewTop, viewW, viewH)}
	c.groundLine()
	c.frameParts()
	c.basePart()
	c.massPart()
	c.ropePart()
	c.wheels()
	c.breakLines()
	c.dims()
	c.stops()
	c.names()
	c.keepOut()
	c.detail()
	for i, line := range notes {
		c.text(viewLeft, detailY+detailH+14+15*float64(i), line, 11, "", 0)
	}
	return c.close()
}

// sheet is the paper while the side view is drawn on it.
type sheet struct {
	*pen
	s     Scene
	f     frame
	boxes []box // what is in the way of labels
}

// colour returns the ink, or the failing colour where the part gives way, with the width of the line.
func (c *sheet) colour(part, usual string) string {
	if c.s.Fails[part] {
		return failColour
	}
	return usual
}

// solid is the look of a part seen from outside.
func (c *sheet) solid(part string) attrs {
	col := c.colour(part, ink)
	return attrs{"stroke", col, "stroke-width", num(wide), "stroke-linejoin", "miter", "fill", col, "fill-opacity", ".07"}
}

func (c *sheet) groundLine() {
	y := c.f.y(0)
	x0, x1 := viewLeft-8, viewLeft+viewW+8
	c.line(x0, y, x1, y, stroke(ink, wide, ""))
	for x := x0 + 8; x <= x1; x += 8 {
		c.line(x, y, x-5, y+5, stroke(ink, 0.6, ""))
	}
	c.markLine(x0, y+3, x1, y+3)
}

// box of the scene on the paper, cut where the travel is cut out.
func (c *sheet) block(r Rect, look attrs) {
	f := c.f
	x, w := f.x(r.X0), (r.X1-r.X0)*f.scale
	if f.cutTo > f.cutFrom && r.Y0 < f.cutFrom && r.Y1 > f.cutTo {
		for _, part := range []Rect{{r.X0, r.Y0, r.X1, f.cutFrom}, {r.X0, f.cutTo, r.X1, r.Y1}} {
			c.rect(x, f.y(part.Y1), w, f.y(part.Y0)-f.y(part.Y1), append(attrs{"stroke", "none"}, "fill", look[7], "fill-opacity", look[9]))
			c.line(x, f.y(part.Y0), x, f.y(part.Y1), look[:4])
			c.line(x+w, f.y(part.Y0), x+w, f.y(part.Y1), look[:4])
			c.markRect(x, f.y(part.Y1), x+w, f.y(part.Y0))
		}
		c.line(x, f.y(r.Y1), x+w, f.y(r.Y1), look[:4])
		c.line(x, f.y(r.Y0), x+w, f.y(r.Y0), look[:4])
		return
	}
	c.rect(x, f.y(r.Y1), w, f.y(r.Y0)-f.y(r.Y1), look)
	c.markRect(x, f.y(r.Y1), x+w, f.y(r.Y0))
}

func (c *sheet) frameParts() {
	for _, r := range c.s.Posts {
		look := c.solid("post")
		if !c.s.PostsKnown {
			look = append(look, "stroke-dasharray", dashed)
			look[3] = num(narrow)
		}
		c.block(r, look)
	}
	c.block(c.s.Beam, c.solid("beam"))
	for _, r := range c.s.Stubs {
		c.hatch(r)
	}
	for _, l := range c.s.Hangers {
		x0, y0 := c.f.p(l.From)
		x1, y1 := c.f.p(l.To)
		c.line(x0, y0, x1, y1, stroke(c.colour("head", ink), wide, ""))
		c.markLine(x0, y0, x1, y1)
	}
}

// hatch draws a piece of what the beam rests on, cut open.
func (c *sheet) hatch(r Rect) {
	x0, y0, x1, y1 := c.f.x(r.X0), c.f.y(r.Y1), c.f.x(r.X1), c.f.y(r.Y0)
	c.rect(x0, y0, x1-x0, y1-y0, stroke(ink, wide, ""))
	for d := 4.0; d < (x1-x0)+(y1-y0); d += 5 {
		ax, ay := math.Min(x0+d, x1), y0+math.Max(0, d-(x1-x0))
		bx, by := x0+math.Max(0, d-(y1-y0)), math.Min(y0+d, y1)
		c.line(ax, ay, bx, by, stroke(ink, 0.5, ""))
	}
	c.markRect(x0, y0, x1, y1)
}

func (c *sheet) basePart() {
	if !c.s.HasBase {
		for _, l := range c.s.Stand {
			c.stand(l)
		}
		return
	}
	for _, r := range c.s.Weights {
		c.block(r, c.solid("base"))
	}
	c.boardPart(c.f, true)
	for _, l := range c.s.Stand {
		c.stand(l)
	}
	// Feet under the board.
	b := c.s.Board
	for _, x := range []float64{b.X0 + 0.04*(b.X1-b.X0), b.X1 - 0.04*(b.X1-b.X0)} {
		c.line(c.f.x(x), c.f.y(b.Y0), c.f.x(x), c.f.y(0), stroke(c.colour("base", ink), wide, ""))
	}
}

// boardPart draws the board with its hole.
func (c *sheet) boardPart(f frame, mark bool) {
	b := c.s.Board
	parts := []Rect{b}
	if c.s.HasHole {
		gap := math.Max(8, 1.2/f.scale)
		parts = []Rect{{b.X0, b.Y0, c.s.Hole.X - gap, b.Y1}, {c.s.Hole.X + gap, b.Y0, b.X1, b.Y1}}
	}
	for _, r := range parts {
		c.rect(f.x(r.X0), f.y(r.Y1), (r.X1-r.X0)*f.scale, math.Max(1.2, (r.Y1-r.Y0)*f.scale), attrs{"fill", c.colour("base", ink), "fill-opacity", ".75"})
	}
	if mark {
		c.markRect(f.x(b.X0), f.y(b.Y1), f.x(b.X1), f.y(b.Y0))
	}
}

func (c *sheet) stand(l Leg) {
	x0, y0 := c.f.p(l.From)
	x1, y1 := c.f.p(l.To)
	c.line(x0, y0, x1, y1, stroke(c.colour("drum", ink), narrow, ""))
	c.markLine(x0, y0, x1, y1)
}

// massPart draws the mass at the upper stop and, dashed, at the lower one.
func (c *sheet) massPart() {
	m := c.s.Mass
	col := c.colour("mass", massColour)
	c.block(m, attrs{"stroke", col, "stroke-width", num(wide + 0.4), "", "", "fill", col, "fill-opacity", ".2"})
	low := Rect{m.X0, m.Y0 - c.s.Travel, m.X1, m.Y1 - c.s.Travel}
	c.block(low, attrs{"stroke", col, "stroke-width", num(narrow + 0.3), "stroke-dasharray", dashed, "fill", col, "fill-opacity", "0"})
	r := c.s.Rig
	x0, y0, x1, y1 := c.f.x(r.X0), c.f.y(r.Y1), c.f.x(r.X1), c.f.y(r.Y0)
	mid := c.f.x((m.X0 + m.X1) / 2)
	c.path([]float64{x0, y0, x1, y0, mid, y1}, true, stroke(col, narrow, ""))
	c.markRect(x0, y0, x1, y1)
	c.centreLine(mid, c.f.y(m.Y1)-3, mid, c.f.y(m.Y0-c.s.Travel)+6)
}

func (c *sheet) centreLine(x0, y0, x1, y1 float64) {
	c.line(x0, y0, x1, y1, stroke(ink, 0.5, chain), attrs{"stroke-opacity", ".7"})
}

// ropePart draws the rope: straight pieces and the turns round the wheels between them.
func (c *sheet) ropePart() {
	c.rope(c.f, wide+0.3, len(c.s.Legs), true)
}

func (c *sheet) rope(f frame, width float64, legs int, mark bool) {
	col := c.colour("rope", massColour)
	look := attrs{"stroke", col, "stroke-width", num(width), "stroke-linecap", "butt", "stroke-linejoin", "round"}
	for i, l := range c.s.Legs[:min(legs, len(c.s.Legs))] {
		c.leg(f, l, look, mark)
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
		if w.AtLower {
			low := w
			low.C.Y -= c.s.Travel
			lx, ly := c.f.p(low.C)
			c.circle(lx, ly, math.Max(1.5, w.Bare/2*c.f.scale), stroke(ink, 0.6, dashed))
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

// breakLines draws the two edges of what is cut out.
func (c *sheet) breakLines() {
	if c.f.cutTo <= c.f.cutFrom {
		return
	}
	for _, h := range []float64{c.f.cutFrom, c.f.cutTo} {
		y := c.f.y(h)
		var pts []float64
		b := c.s.bounds()
		x0, x1 := c.f.x(b.X0)-6, c.f.x(b.X1)+6
		for x := x0; x < x1; x += 26 {
			e := math.Min(x+26, x1)
			m := (x + e) / 2
			pts = append(pts, x, y, m-3, y, m-1.5, y-4, m+1.5, y+4, m+3, y, e, y)
		}
		c.path(pts, false, stroke(ink, 0.6, ""))
		c.markLine(x0, y, x1, y)
	}
}
