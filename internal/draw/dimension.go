package draw

import "math"

// The dimension lines stand at a fixed distance from the view and from each other.
const (
	firstColumn = 18.0
	columnGap   = 40.0
	small       = 11.0
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
	if w+4 > length {
		c.text(x+6, (lo+hi)/2+4, text, letter, "start", 0)
		c.markRect(x+6, (lo+hi)/2-6, x+6+w, (lo+hi)/2+5)
		c.underline(d, x+6, (lo+hi)/2+6, x+6+w, (lo+hi)/2+6)
		return
	}
	c.text(x-4, (lo+hi)/2, text, letter, "middle", 90)
	c.markRect(x-4-letter, (lo+hi)/2-w/2, x-3, (lo+hi)/2+w/2)
	c.underline(d, x-2, (lo+hi)/2-w/2, x-2, (lo+hi)/2+w/2)
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
		c.line(e[0], e[1]+math.Copysign(3, y-e[1]), e[0], y+math.Copysign(4, y-e[1]), stroke(ink, 0.5, ""))
	}
	text := d.Text
	w := TextWidth(text, letter)
	if w+16 > bx-ax {
		text = d.Short
		w = TextWidth(text, letter)
	}
	c.spanLine(ax, bx, y)
	mid := (ax + bx) / 2
	mid = math.Min(math.Max(mid, 4+w/2), paperW-4-w/2)
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

// stops draws the two stop marks: a short thick line with a small flag at the height of the top of the mass.
func (c *sheet) stops() {
	m := c.s.Mass
	for _, st := range []struct {
		y    float64
		text string
	}{{m.Y1, "upper stop"}, {m.Y1 - c.s.Travel, "lower stop"}} {
		x, y := c.f.p(Point{m.X1, st.y})
		c.line(x+1, y, x+11, y, stroke(ink, 2.4, ""))
		c.markLine(x+1, y, x+11, y)
		w := TextWidth(st.text, small)
		b := c.f.x(c.s.bounds().X1) + firstColumn
		// Along the extension line, over it, where that is free; else wherever there is room.
		done := false
		for _, tx := range []float64{x + 3, (x+b)/2 - w/2, b - w - 6} {
			spot := box{tx, y - 13, tx + w, y - 3}
			if c.free(spot) {
				c.text(tx, y-4, st.text, small, "start", 0)
				c.boxes = append(c.boxes, spot)
				done = true
				break
			}
		}
		if !done {
			c.name(x+8, y-2, st.text, ink)
		}
	}
}

// keepOut draws where nobody may be while the mass is up.
func (c *sheet) keepOut() {
	s := c.s
	mid := (s.Mass.X0 + s.Mass.X1) / 2
	x := c.f.x(mid)
	y := c.f.y(0) + 36
	text := "keep-out ?"
	end := paperW - 12
	toScale := false
	if s.KeepOut > 0 {
		text = "nobody within " + s.lengthText(s.KeepOut)
		if e := c.f.x(mid + s.KeepOut); e <= paperW-12 {
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
	tx := math.Min(math.Max((x+end)/2, 4+w/2), paperW-4-w/2)
	c.text(tx, y+14, text, letter, "middle", 0)
}
