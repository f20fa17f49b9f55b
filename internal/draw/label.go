package draw

import (
	"math"
	"strings"
)

// box is a piece of the paper that is taken.
type box struct{ x0, y0, x1, y1 float64 }

func (a box) meets(b box) bool {
	return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1
}

func (c *sheet) markRect(x0, y0, x1, y1 float64) {
	c.boxes = append(c.boxes, box{math.Min(x0, x1), math.Min(y0, y1), math.Max(x0, x1), math.Max(y0, y1)})
}

// markLine takes the paper under a line, in short pieces where it is slanted.
func (c *sheet) markLine(x0, y0, x1, y1 float64) {
	n := 1
	if x0 != x1 && y0 != y1 {
		n = min(60, 1+int(math.Hypot(x1-x0, y1-y0)/6))
	}
	for i := range n {
		a, b := float64(i)/float64(n), float64(i+1)/float64(n)
		c.markRect(x0+a*(x1-x0)-1, y0+a*(y1-y0)-1, x0+b*(x1-x0)+1, y0+b*(y1-y0)+1)
	}
}

func (c *sheet) free(b box) bool {
	if b.x0 < 2 || b.x1 > c.w-2 || b.y0 < 2 {
		return false
	}
	for _, o := range c.boxes {
		if b.meets(o) {
			return false
		}
	}
	return true
}

// name writes a label beside a point where nothing is in its way: to the right, to the left, above, below, then
// further off with a thin line to the point. Where there is no room at all it is left out: the text of the picture has
// it.
func (c *sheet) name(x, y float64, text, colour string, more ...attrs) bool {
	return c.nameBetween(x, x, y, text, colour, more...)
}

// nameBetween is name for a part from one side to the other: what stands right of it begins at its right side, and what stands
// left of it at its left one. What is over or under it begins in its middle.
func (c *sheet) nameBetween(left, right, y float64, text, colour string, more ...attrs) bool {
	w := TextWidth(text, letter)
	for _, d := range []float64{8, 16, 26, 38, 52, 68, 86, 106} {
		for _, dir := range [][2]float64{{1, 0}, {-1, 0}, {1, -1}, {-1, -1}, {1, 1}, {-1, 1}, {0, -1}, {0, 1}} {
			x := (left + right + dir[0]*(right-left)) / 2
			ax, ay := x+dir[0]*d, y+dir[1]*d
			b := box{ax - w/2, ay - 6, ax + w/2, ay + 5}
			anchor := "middle"
			switch {
			case dir[0] > 0:
				b.x0, b.x1, anchor = ax, ax+w, "start"
			case dir[0] < 0:
				b.x0, b.x1, anchor = ax-w, ax, "end"
			}
			if !c.free(b) {
				continue
			}
			if d > 12 {
				c.line(x+dir[0]*3, y+dir[1]*3, ax-dir[0]*2, ay-dir[1]*4, stroke(ink, 0.6, ""))
			}
			c.text(ax, ay+4, text, letter, anchor, 0, append(more, attrs{"fill", colour})...)
			c.boxes = append(c.boxes, b)
			return true
		}
	}
	return false
}

// names writes the names of the parts.
func (c *sheet) names() {
	s := c.s
	for _, l := range s.Labels {
		x, y := c.f.p(l.At)
		if i := strings.HasPrefix(l.Text, "base"); i {
			c.baseName(x, l.Text)
			continue
		}
		c.massName(x, y, l.Text)
	}
	c.failMarks()
}

// massName writes the mass in its block, or beside it.
func (c *sheet) massName(x, y float64, text string) {
	m := c.s.Mass
	w, h := (m.X1-m.X0)*c.f.scale, (m.Y1-m.Y0)*c.f.scale
	if tw := TextWidth(text, letter); tw+6 <= w && h > letter+3 {
		c.text(x, y+4, text, letter, "middle", 0, attrs{"font-weight", "600"})
		return
	}
	// Under it, beside the centre line.
	tw, under := TextWidth(text, letter), c.f.y(m.Y0)+15
	if spot := (box{x + 5, under - 10, x + 5 + tw, under + 2}); !c.free(box{c.f.x(m.X1) + 8, y - 6, c.f.x(m.X1) + 8 + tw, y + 5}) && c.free(spot) {
		c.text(x+5, under, text, letter, "start", 0, attrs{"font-weight", "600"})
		c.boxes = append(c.boxes, spot)
		return
	}
	c.nameBetween(c.f.x(m.X0), c.f.x(m.X1), y, text, ink, attrs{"font-weight", "600"})
}

// baseName writes the base under the ground.
func (c *sheet) baseName(x float64, text string) {
	w := TextWidth(text, letter)
	x = math.Min(math.Max(x, 4+w/2), c.w-4-w/2)
	y := c.f.y(0) + 20
	c.text(x, y, text, letter, "middle", 0, attrs{"fill", c.colour("base", ink)})
	c.markRect(x-w/2, y-10, x+w/2, y+3)
}

// failing says in words what gives way: colour alone says nothing.
func (s Scene) failing() []string {
	words := map[string]string{"beam": "beam", "head": "top pulley or its hook", "drum": "drum or drive", "mass": "container", "post": "post", "base": "base", "rope": "rope", "redirect": "extra pulley"}
	var out []string
	for _, part := range []string{"head", "rope", "beam", "post", "mass", "redirect", "drum", "base"} {
		if s.Fails[part] {
			out = append(out, words[part])
		}
	}
	if len(out) == 0 {
		return nil
	}
	return []string{"✕ Gives way: " + strings.Join(out, ", ") + "."}
}

// failMarks sets a cross beside each part that gives way.
func (c *sheet) failMarks() {
	s := c.s
	mid := func(r Rect) Point { return Point{(r.X0 + r.X1) / 2, (r.Y0 + r.Y1) / 2} }
	at := map[string]Point{"beam": {s.Beam.X0 + 0.8*(s.Beam.X1-s.Beam.X0), mid(s.Beam).Y}, "head": s.Wheels[s.Head].C, "drum": s.Wheels[0].C, "mass": {s.Mass.X0, s.Mass.Y1}}
	if len(s.Posts) > 0 {
		p := s.Posts[0]
		at["post"] = Point{p.X1, p.Y0 + 0.7*(p.Y1-p.Y0)}
	}
	if l := s.Legs[max(0, min(s.Head, len(s.Legs))-1)]; len(s.Legs) > 0 {
		at["rope"] = Point{l.From.X + 0.3*(l.To.X-l.From.X), l.From.Y + 0.3*(l.To.Y-l.From.Y)}
	}
	for i, w := range s.Wheels {
		if i > 0 && i != s.Head {
			at["redirect"] = w.C
		}
	}
	for _, part := range []string{"head", "rope", "beam", "post", "mass", "redirect", "drum"} {
		if q, ok := at[part]; ok && s.Fails[part] {
			x, y := c.f.p(q)
			c.cross(x, y, part == "beam")
		}
	}
}

// cross sets a cross at a point, or close beside it.
func (c *sheet) cross(x, y float64, here bool) {
	for _, d := range [][2]float64{{11, 0}, {-11, 0}, {11, -11}, {-11, -11}, {0, -13}, {11, 11}, {-11, 11}, {16, 0}, {-16, 0}} {
		if b := (box{x + d[0] - 4, y + d[1] - 4, x + d[0] + 4, y + d[1] + 4}); !here && c.free(b) {
			x, y = x+d[0], y+d[1]
			c.boxes = append(c.boxes, b)
			break
		}
	}
	c.path([]float64{x - 4, y - 4, x + 4, y + 4}, false, stroke(failColour, 2, ""))
	c.path([]float64{x - 4, y + 4, x + 4, y - 4}, false, stroke(failColour, 2, ""))
}

// wrap breaks sentences into lines of a width, never between a number and its unit: the space there does not break.
func wrap(sentences []string, size, width float64) []string {
	var out []string
	for _, s := range sentences {
		line := ""
		for _, word := range strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == '\n' || r == '\t' }) {
			if next := strings.TrimSpace(line + " " + word); line != "" && TextWidth(next, size) > width {
				out = append(out, line)
				line = word
			} else {
				line = next
			}
		}
		if line != "" {
			out = append(out, line)
		}
	}
	return out
}
