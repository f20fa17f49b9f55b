package draw

// paperDims draws the dimensions of the plan sheet: the travel beside the mass where there is room, the head at the right of
// the view, the span between the posts, and how far out the drive stands under the ground.
func (c *sheet) paperDims(p Paper) {
	right := c.f.x(c.s.bounds().X1) + dimRoom - 4
	for _, d := range c.s.Dims {
		switch {
		case !d.Upright && p.spanOver():
			c.level(d, c.f.y(d.From.Y)-10, c.f)
		case !d.Upright:
			c.between(d)
		case d.Column > 0:
			c.upright(d, right)
			right += dimRoom - 4
		}
	}
	for _, d := range c.s.Dims {
		if !d.Upright || d.Column > 0 || d.roomAbove(c.s) {
			continue
		}
		if c.s.travelInside(c.f.scale) {
			c.upright(d, c.f.x(c.s.Mass.X1)+dimRoom)
		} else {
			c.upright(d, right)
		}
	}
	if d := c.s.Out; d.Known {
		c.level(d, c.f.y(0)+19, c.f)
	}
}

// roomAbove reports whether a dimension is the room above the mass: on the sheet the note of the stops says it.
func (d Dim) roomAbove(s Scene) bool { return d.From.Y >= s.Mass.Y1 }

// between draws the span between two posts, a little over the mass at its lowest.
func (c *sheet) between(d Dim) {
	y := c.f.y(c.s.Mass.Y1-c.s.Travel) - 22
	ax, bx := c.f.x(d.From.X), c.f.x(d.To.X)
	text, w := d.Text, TextWidth(d.Text, letter)
	if w+8 > bx-ax {
		text, w = d.Short, TextWidth(d.Short, letter)
	}
	c.spanLine(ax, bx, y)
	c.markLine(ax, y, bx, y)
	x := ax + w/2 + 5
	c.text(x, y-4, text, letter, "middle", 0, attrs{"class", "halo"})
	c.text(x, y-4, text, letter, "middle", 0)
	c.markRect(x-w/2, y-15, x+w/2, y)
	c.underline(d, x-w/2, y-2, x+w/2, y-2)
}

// ChainText says how far drum, hole and foot pulley stand from each other, in words; nothing without a hole.
func (s Scene) ChainText() (out []string) {
	for i, d := range s.ChainDims {
		if s.HasHole {
			out = append(out, s.Chain[i].Name+" to "+s.Chain[i+1].Name+" "+d.Text)
		}
	}
	return out
}
