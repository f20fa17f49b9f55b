package draw

import (
	"io"
	"math"
	"slices"
	"strings"
)

// The paper of the side view, in units of the viewBox: at 78 mm of a printed sheet its letters are 2.5 mm high.
const (
	paperW   = 380.0
	letter   = 12.0
	viewTop  = 34.0
	viewH    = 330.0
	ground   = viewTop + viewH
	viewLeft = 14.0
	viewW    = paperW - viewLeft - 98
	detailY  = ground + 72
	detailH  = 150.0
)

// SVG draws the scene.
func SVG(s Scene, w io.Writer) error {
	h := detailY + detailH + 8
	notes := wrap(append(s.failing(), s.Notes...), 11, paperW-2*viewLeft)
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
	c.where()
	c.stops()
	c.names()
	c.keepOut()
	c.detail()
	for i, line := range notes {
		colour := ink
		if strings.HasPrefix(line, "✕") {
			colour = failText
		}
		c.text(viewLeft, detailY+detailH+14+15*float64(i), line, 11, "", 0, attrs{"fill", colour})
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

// look is how a block is drawn.
type look struct {
	colour string
	width  float64
	dash   string
	tint   string // opacity of the fill; empty: none
}

func (l look) line() attrs { return stroke(l.colour, l.width, l.dash) }

func (l look) fill() attrs {
	if l.tint == "" {
		return nil
	}
	return attrs{"fill", l.colour, "fill-opacity", l.tint}
}

// solid is the look of a part seen from outside.
func (c *sheet) solid(part string) look { return look{c.colour(part, ink), wide, "", ".07"} }

func (c *sheet) groundLine() {
	y := c.f.y(0)
	x0, x1 := viewLeft-8, viewLeft+viewW+8
	c.line(x0, y, x1, y, stroke(ink, wide, ""))
	for x := x0 + 8; x <= x1; x += 8 {
		c.line(x, y, x-5, y+5, stroke(ink, 0.6, ""))
	}
	c.markLine(x0, y+3, x1, y+3)
}

// block draws a rectangle of the scene, its sides left open where the travel is cut out.
func (c *sheet) block(r Rect, l look) {
	f := c.f
	x, w := f.x(r.X0), (r.X1-r.X0)*f.scale
	if f.cutTo <= f.cutFrom || r.Y0 >= f.cutFrom || r.Y1 <= f.cutTo {
		c.rect(x, f.y(r.Y1), w, f.y(r.Y0)-f.y(r.Y1), l.line(), l.fill())
		c.markRect(x, f.y(r.Y1), x+w, f.y(r.Y0))
		return
	}
	for _, part := range [][3]float64{{r.Y0, f.cutFrom, r.Y0}, {r.Y1, f.cutTo, r.Y1}} {
		end, cut := f.y(part[0]), f.y(part[1])
		c.rect(x, math.Min(end, cut), w, math.Abs(end-cut), l.fill())
		c.path([]float64{x, cut, x, end, x + w, end, x + w, cut}, false, l.line())
		c.markRect(x, end, x+w, cut)
	}
}

func (c *sheet) frameParts() {
	for _, r := range c.s.Posts {
		look := c.solid("post")
		if !c.s.PostsKnown {
			look.width, look.dash = narrow, dashed
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
	c.standOn(c.f, l)
}

// standOn draws a bearing's leg from the edge of the drum to what it stands on.
func (c *sheet) standOn(f frame, l Leg) {
	d := math.Hypot(l.To.X-l.From.X, l.To.Y-l.From.Y)
	r := c.s.Wheels[0].Bare / 2
	if d <= r {
		return
	}
	x0, y0 := f.p(Point{l.From.X + (l.To.X-l.From.X)*r/d, l.From.Y + (l.To.Y-l.From.Y)*r/d})
	x1, y1 := f.p(l.To)
	c.line(x0, y0, x1, y1, stroke(c.colour("drum", ink), narrow, ""))
}

// massPart draws the mass at the upper stop and, dashed, at the lower one.
func (c *sheet) massPart() {
	m := c.s.Mass
	col := c.colour("mass", massColour)
	c.block(m, look{col, wide + 0.4, "", ".2"})
	low := Rect{m.X0, m.Y0 - c.s.Travel, m.X1, m.Y1 - c.s.Travel}
	c.block(low, look{col, narrow + 0.3, dashed, ""})
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

// breakLines draws the two edges of what is cut out.
func (c *sheet) breakLines() {
	if c.f.cutTo <= c.f.cutFrom {
		return
	}
	for _, h := range []float64{c.f.cutFrom, c.f.cutTo} {
		y := c.f.y(h)
		var pts []float64
		b := c.s.bounds()
		x0, x1 := c.f.x(b.X0)-4, c.f.x(b.X1)+4
		for x := x0; x < x1; x += 26 {
			e := math.Min(x+26, x1)
			m := (x + e) / 2
			pts = append(pts, x, y, m-3, y, m-1.5, y-4, m+1.5, y+4, m+3, y, e, y)
		}
		c.path(pts, false, stroke(ink, 0.6, ""))
		c.markLine(x0, y, x1, y)
	}
}
