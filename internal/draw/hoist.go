package draw

import (
	"fmt"
	"io"
	"math"
	"slices"
)

// The paper of the side view, in units of the viewBox: at 70 mm of a printed sheet its letters are 2.4 mm high.
const (
	paperW   = 348.0
	letter   = 12.0
	viewTop  = 34.0
	viewH    = 296.0
	ground   = viewTop + viewH
	viewLeft = 14.0
	viewW    = paperW - viewLeft - 108
	detailY  = ground + 72
	detailH  = 150.0
)

// SVG draws the scene.
func SVG(s Scene, w io.Writer) error {
	h := detailY + detailH + 8
	told := s.failing()
	for i, m := range s.Marks {
		told = append(told, fmt.Sprintf("✕ %d %s", i+1, m.Say))
	}
	told = wrap(told, 11, paperW-2*viewLeft)
	notes := append(slices.Clip(told), wrap(s.Notes, 11, paperW-2*viewLeft)...)
	h += 15 * float64(len(notes))
	c := &sheet{pen: open(w, "hoist", paperW, h, s.Title, s.Desc), w: paperW, s: s, f: s.fit(viewLeft, viewTop, viewW, viewH)}
	c.groundLine()
	c.scenery()
	c.dims()
	c.where()
	c.keepMarks()
	c.stops()
	c.names()
	c.keepOut()
	c.marksPart(func(i int) string { return num(float64(i + 1)) })
	c.detail()
	for i, line := range notes {
		colour, class := ink, ""
		if i < len(told) {
			colour, class = failText, "bad"
		}
		c.text(viewLeft, detailY+detailH+14+15*float64(i), line, 11, "", 0, attrs{"fill", colour}, attrs{"class", class})
	}
	return c.close()
}

// scenery draws the scene itself, without letters.
func (c *sheet) scenery() {
	c.frameParts()
	c.basePart()
	c.massPart()
	c.ropePart()
	c.wheels()
	c.breakLines()
}

// sheet is the paper while the side view is drawn on it.
type sheet struct {
	*pen
	w     float64 // width of the paper
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
