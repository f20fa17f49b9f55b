package draw

import (
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// lengthText is a length of the scene in the units of the reader.
func (s Scene) lengthText(mm float64) string {
	if s.tape && s.units == unit.Imperial {
		return unit.Tape(unit.Length(mm/1000), unit.TapeSixteenth, unit.Nearest)
	}
	return say.Taped(unit.Length(mm / 1000)).In(s.units)
}

// detail draws the drive larger: drum, rope line, hole and foot pulley with their chain of dimensions.
func (c *sheet) detail() {
	s := c.s
	drum := s.Wheels[0]
	reach := math.Max(drum.R, s.Flange/2)
	view := Rect{drum.C.X - reach, drum.C.Y - reach, drum.C.X + reach, drum.C.Y + reach}
	legs := 1
	if s.HasHole {
		foot := s.Wheels[1]
		view.X1 = math.Max(view.X1, foot.C.X+foot.R)
		view.Y0 = math.Min(view.Y0, foot.C.Y-foot.R)
		legs = 2
	} else if s.HasBase && drum.Place == "base" {
		view.Y0 = math.Min(view.Y0, s.Board.Y0)
	}
	pad := 0.06 * (view.X1 - view.X0)
	view = Rect{view.X0 - pad, view.Y0 - pad, view.X1 + pad, view.Y1 + pad}
	top, h := detailY+4, detailH-36
	w := 150.0
	left := (paperW - w) / 2
	if s.HasHole {
		left -= 20
	}
	scale := math.Min(w/(view.X1-view.X0), h/(view.Y1-view.Y0))
	f := frame{scale: scale, x0: left + (w-(view.X1-view.X0)*scale)/2 - view.X0*scale, y0: top + h + view.Y0*scale}

	c.rect(viewLeft-8, detailY-10, paperW-2*(viewLeft-8), detailH+6, stroke(ink, 0.6, ""))
	c.text(viewLeft, detailY+6, "A, larger", small, "start", 0, attrs{"font-weight", "600"})
	if s.HasBase && drum.Place == "base" {
		c.cutBoard(f, view)
	}
	c.ropeIn(f, legs, view)
	c.wheel(f, drum, c.colour("drum", ink), true)
	if s.HasHole {
		c.wheel(f, s.Wheels[1], c.colour("redirect", ink), false)
	}
	c.chainDims(f, top+h+16)
	c.diameters(f, drum)
}

// where draws the circle A in the main view.
func (c *sheet) where() {
	drum := c.s.Wheels[0]
	reach := math.Max(drum.R, c.s.Flange/2)
	x, y := c.f.p(drum.C)
	r := math.Max(14, reach*c.f.scale*1.5)
	c.circle(x, y, r, stroke(ink, 0.6, ""))
	c.markRect(x-r, y-r, x+r, y+r)
	w := TextWidth("A", letter)
	var at box
	for _, a := range []float64{2.4, 0.7, 3.9, 5.6, 3.1, 1.57, 3.5, 5.9, 2.4} { // the first again where none is free
		tx, ty := x+(r+8)*math.Cos(a), y-(r+8)*math.Sin(a)
		if at = (box{tx - w/2, ty - 6, tx + w/2, ty + 5}); c.free(at) {
			break
		}
	}
	c.text((at.x0+at.x1)/2, at.y1-1, "A", letter, "middle", 0, attrs{"font-weight", "600"})
	c.boxes = append(c.boxes, at)
}

// cutBoard draws the piece of the board that the detail shows.
func (c *sheet) cutBoard(f frame, view Rect) {
	s := c.s
	keep := s.Board
	edge := 30 / f.scale
	c.s.Board.X0, c.s.Board.X1 = math.Max(keep.X0, view.X0-edge), math.Min(keep.X1, view.X1+edge)
	c.boardPart(f, false)
	for _, l := range s.Stand {
		c.standOn(f, l)
	}
	c.s.Board = keep
}

// ropeIn draws the first pieces of rope, the last of them cut at the edge of the detail.
func (c *sheet) ropeIn(f frame, legs int, view Rect) {
	keep := c.s.Legs
	short := append([]Leg(nil), keep[:min(legs, len(keep))]...)
	if n := len(short) - 1; n >= 0 {
		l := &short[n]
		dx, dy := l.To.X-l.From.X, l.To.Y-l.From.Y
		d := math.Hypot(dx, dy)
		room := (view.Y1 - l.From.Y)
		if dy < 0 {
			room = l.From.Y - view.Y0
		}
		if dy == 0 {
			room = (view.X1 - view.X0) / 2
		}
		if most := math.Max(room, 0.2*(view.Y1-view.Y0)); d > most && d > 0 {
			l.To = Point{l.From.X + dx/d*most, l.From.Y + dy/d*most}
		}
	}
	c.s.Legs = short
	c.rope(f, 2.4, legs, false)
	c.s.Legs = keep
}

// chainDims draws drum – hole – foot pulley under the detail.
func (c *sheet) chainDims(f frame, y float64) {
	s := c.s
	n := len(s.ChainDims)
	for i, d := range s.ChainDims {
		ax, bx := f.x(d.From.X), f.x(d.To.X)
		for _, x := range []float64{ax, bx} {
			c.line(x, math.Min(f.y(d.From.Y), y-8), x, y+4, stroke(ink, 0.5, chain))
		}
		c.spanLine(ax, bx, y)
		text := s.Chain[i].Name + " – " + s.Chain[i+1].Name + " " + d.Text
		if i == 0 && n > 1 || n == 1 {
			c.text(ax-16, y+4, whole(text, d.Text, ax-16-viewLeft), small, "end", 0)
			continue
		}
		c.text(bx+16, y+4, whole(text, d.Text, paperW-viewLeft-bx-16), small, "start", 0)
	}
}

// whole is the small text where there is room for it, else its number alone: a number is never cut.
func whole(text, number string, room float64) string {
	if TextWidth(text, small) <= room {
		return text
	}
	return number
}

// diameters names drum and rope with leaders to the right.
func (c *sheet) diameters(f frame, drum Wheel) {
	s := c.s
	x := paperW - viewLeft - 104
	size := func(w Wheel) string {
		if !w.Known {
			return "?"
		}
		return s.lengthText(w.Bare)
	}
	lead := func(px, py, ty float64, text string) {
		c.line(px, py, x-12, ty, stroke(ink, 0.6, ""))
		c.line(x-12, ty, x-3, ty, stroke(ink, 0.6, ""))
		c.circle(px, py, 1.3, attrs{"fill", ink})
		c.text(x, ty+4, shorten(text, small, paperW-viewLeft-x), small, "start", 0)
	}
	cx, cy := f.p(drum.C)
	r := drum.Bare / 2 * f.scale
	lead(cx+r*math.Cos(0.8), cy-r*math.Sin(0.8), detailY+9, "drum ⌀ "+size(drum))
	if l := s.Legs[0]; len(s.Legs) > 0 {
		text := "rope ⌀ ?"
		if s.RopeKnown {
			text = "rope ⌀ " + s.lengthText(s.Rope)
		}
		px, py := f.p(l.From)
		if s.HasHole { // at the rope that goes up
			px, py = f.p(s.Legs[1].From)
			py -= 12
		}
		lead(px, py, detailY+31, text)
	}
	if s.HasHole {
		w := s.Wheels[1]
		wx, wy := f.p(w.C)
		wr := w.Bare / 2 * f.scale
		lead(wx+wr*math.Cos(0.5), wy-wr*math.Sin(0.5), math.Max(detailY+54, wy-wr*0.5), "pulley ⌀ "+size(w))
	}
}
