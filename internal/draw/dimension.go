package draw

import "math"

// The dimension lines stand at a fixed distance from the view and from each other.
const (
	firstColumn = 18.0
	columnGap   = 72.0
	small       = 11.0
	tiny        = 10.0
)

// dims draws the dimensions: upright ones in columns to the right, the span above.
func (c *sheet) dims() {
	b := c.s.bounds()
	right := c.f.x(b.X1)
	for _, d := range c.s.Dims {
		if d.Upright {
			c.upright(d, right+firstColumn+columnGap*float64(d.Column))
		} else {
			c.level(d, c.f.y(d.From.Y)-14, c.f)
		}
	}
}

// upright draws one dimension along y at x.
func (c *sheet) upright(d Dim, x float64) {
	ax, ay := c.f.p(d.From)
	bx, by := c.f.p(d.To)
	for _, e := range [][2]float64{{ax, ay}, {bx, by}} {
		c.line(e[0]+3, e[1], x+4, e[1], stroke(ink, 0.5, ""))
		c.markLine(e[0]+3, e[1], x+4, e[1])
	}
	length := math.Abs(ay - by)
	lo, hi := math.Max(ay, by), math.Min(ay, by)
	text := d.Text
	if TextWidth(text, letter)+14 > length {
		text = d.Short
	}
	w := TextWidth(text, letter)
	if length < 18 {
		c.line(x, lo+12, x, hi-12, stroke(ink, 0.6, ""))
		c.arrow(x, lo, 0, -1)
		c.arrow(x, hi, 0, 1)
	} else {
		c.line(x, lo, x, hi, stroke(ink, 0.6, ""))
		c.arrow(x, lo, 0, 1)
		c.arrow(x, hi, 0, -1)
	}
	if c.f.cutTo > c.f.cutFrom && d.From.Y < c.f.cutFrom && d.To.Y > c.f.cutTo {
		// A broken part: its dimension line is drawn through, its number holds.
		m := (c.f.y(c.f.cutFrom) + c.f.y(c.f.cutTo)) / 2
		c.path([]float64{x - 3, m + 3, x + 3, m - 3}, false, stroke(ink, 0.6, ""))
	}
	c.markLine(x, lo, x, hi)
	mid := (lo + hi) / 2
	if c.f.cutTo > c.f.cutFrom && d.From.Y < c.f.cutFrom && d.To.Y > c.f.cutTo {
		mid = (hi + c.f.y(c.f.cutTo)) / 2
	}
	if w+4 > length {
		c.text(x+6, mid+4, text, letter, "start", 0)
		c.markRect(x+6, mid-6, x+6+w, mid+5)
		c.underline(d, x+6, mid+6, x+6+w, mid+6)
		return
	}
	c.text(x-4, mid, text, letter, "middle", 90)
	c.markRect(x-4-letter, mid-w/2, x-3, mid+w/2)
	c.underline(d, x-2, mid-w/2, x-2, mid+w/2)
}

// underline marks a number that the drawing does not match, as drafting has it.
func (c *sheet) underline(d Dim, x0, y0, x1, y1 float64) {
	if d.Off {
		c.line(x0, y0, x1, y1, stroke(ink, narrow, ""))
	}
}

// level draws one dimension along x at y.
func (c *sheet) level(d Dim, y float64, f frame) {
	ax, ay := f.p(d.From)
	bx, by := f.p(d.To)
	for _, e := range [][2]float64{{ax, ay}, {bx, by}} {
		out := math.Copysign(1, y-e[1])
		c.line(e[0], e[1]+3*out, e[0], y+4*out, stroke(ink, 0.5, ""))
		c.markLine(e[0], e[1]+3*out, e[0], y+4*out)
	}
	text := d.Text
	w := TextWidth(text, letter)
	if w+16 > bx-ax {
		text = d.Short
		w = TextWidth(text, letter)
	}
	c.spanLine(ax, bx, y)
	c.markLine(ax, y, bx, y)
	mid := (ax + bx) / 2
	mid = math.Min(math.Max(mid, 4+w/2), c.w-4-w/2)
	c.text(mid, y-4, text, letter, "middle", 0)
	c.markRect(mid-w/2, y-15, mid+w/2, y)
	c.underline(d, mid-w/2, y-2, mid+w/2, y-2)
}

// spanLine is the line with its two arrows, from outside where it is short.
func (c *sheet) spanLine(ax, bx, y float64) {
	if bx-ax < 18 {
		c.line(ax-12, y, bx+12, y, stroke(ink, 0.6, ""))
		c.arrow(ax, y, 1, 0)
		c.arrow(bx, y, -1, 0)
		return
	}
	c.line(ax, y, bx, y, stroke(ink, 0.6, ""))
	c.arrow(ax, y, -1, 0)
	c.arrow(bx, y, 1, 0)
}

// stops draws the stop marks: short thick lines on both sides at the height of the top of the mass, and their names
// along the extension line, over or under it, where nothing is in the way.
func (c *sheet) stops() {
	m := c.s.Mass
	left, right := c.f.x(m.X0), c.f.x(m.X1)
	end := c.f.x(c.s.bounds().X1) + firstColumn
	for _, st := range []struct {
		y    float64
		text string
	}{{m.Y1, "upper stop"}, {m.Y1 - c.s.Travel, "lower stop"}} {
		y := c.f.y(st.y)
		for _, e := range []float64{right + 1, left - 11} {
			c.line(e, y, e+10, y, stroke(ink, 2.4, ""))
			c.markLine(e, y, e+10, y)
		}
		w := TextWidth(st.text, tiny)
		if !c.firstFree(st.text, w, [][2]float64{
			{right + 12, y - 4}, {right + 12, y + 12}, {(right+end)/2 - w/2, y - 4}, {(right+end)/2 - w/2, y + 12},
			{end - w - 6, y - 4}, {end - w - 6, y + 12}, {left - w - 3, y - 4}, {left - w - 3, y + 12}, {left - w - 14, y + 4}, {end + 7, y + 3.5}, {end + 7, y + 12},
		}) {
			c.name(right+8, y-2, st.text, ink)
		}
	}
}

// firstFree writes a small text at the first of the places, given by its left end on the base line, that is free.
func (c *sheet) firstFree(text string, w float64, places [][2]float64) bool {
	for _, at := range places {
		spot := box{at[0], at[1] - 8, at[0] + w, at[1] + 1}
		if c.free(spot) {
			c.text(at[0], at[1], text, tiny, "start", 0)
			c.boxes = append(c.boxes, spot)
			return true
		}
	}
	return false
}

// keepOut draws where nobody may be while the mass is up.
func (c *sheet) keepOut() {
	s := c.s
	mid := (s.Mass.X0 + s.Mass.X1) / 2
	x := c.f.x(mid)
	y := c.f.y(0) + 36
	text := "keep-out ?"
	end := c.w - 12
	toScale := false
	if s.KeepOut > 0 {
		text = "nobody within " + s.lengthText(s.KeepOut)
		if e := c.f.x(mid + s.KeepOut); e <= c.w-12 {
			end, toScale = e, true
		}
	}
	c.centreLine(x, c.f.y(0)+6, x, y+4)
	c.line(x, y, end, y, stroke(ink, 0.6, ""))
	c.arrow(x, y, -1, 0)
	c.arrow(end, y, 1, 0)
	if toScale {
		c.line(end, c.f.y(0)-10, end, y+4, stroke(ink, narrow, chain))
	} else {
		m := end - 16
		c.path([]float64{m - 3, y + 4, m, y - 4}, false, stroke(ink, 0.6, ""))
		c.path([]float64{m, y + 4, m + 3, y - 4}, false, stroke(ink, 0.6, ""))
	}
	w := TextWidth(text, letter)
	tx := math.Min(math.Max((x+end)/2, 4+w/2), c.w-4-w/2)
	c.text(tx, y+14, text, letter, "middle", 0)
}
