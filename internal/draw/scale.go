package draw

import (
	"html"
	"io"
	"math"
	"strings"
)

// Scale is what flows and what carries it, on one axis from nothing: a bar for each flow, a line for each limit.
type Scale struct {
	Title string // the same in words
	Unit  string // "A"
	Flows []ScaleMark
	Ends  []ScaleMark // limits
}

// ScaleMark is one value on the axis. Look is that of a bar: "sun" or "night"; pale where it lasts a moment only.
type ScaleMark struct {
	Say   string // "7.8 A from the sun"
	Value float64
	Look  string
	Pale  bool
}

// The paper of a scale.
const (
	scaleW    = 374.0
	scaleLeft = 10.0
	scaleRow  = 20.0
)

// Draw draws the scale. Letters that do not fit behind their bar end at the edge of the paper, over it.
func (s Scale) Draw(w io.Writer) error {
	top := 0.0
	for _, m := range append(append([]ScaleMark{}, s.Flows...), s.Ends...) {
		top = math.Max(top, finite(m.Value))
	}
	x := axis{lo: 0, hi: niceTop(math.Max(top*1.02, 1e-9)), a: scaleLeft, b: scaleW - 14}
	floor := 8 + scaleRow*float64(len(s.Flows)) + 17*float64(len(s.Ends)) + 4
	p := newPen(w)
	p.raw(`<svg class="scale" viewBox="0 0 %s %s" role="img" fill="none" aria-label="%s">`, num(scaleW), num(floor+22), html.EscapeString(s.Title))
	for i, v := range x.ticks(5) {
		at := x.at(v)
		p.line(at, 4, at, floor, attrs{"class", "hair"})
		text := tick(v)
		if i == 0 {
			text += " " + s.Unit
		}
		p.raw(`<text x="%s" y="%s" text-anchor="middle">%s</text>`, num(math.Max(at, 12)), num(floor+15), html.EscapeString(text))
	}
	p.line(x.a, floor, x.b, floor, stroke(ink, 1, ""))
	for i, m := range s.Flows {
		y := 8 + scaleRow*float64(i)
		p.rect(x.a, y, x.at(finite(m.Value))-x.a, 13, attrs{"class", strings.TrimSpace(m.Look + "f " + map[bool]string{true: "pale"}[m.Pale])})
		p.beside(m.Say, x.at(finite(m.Value)), y+11, "")
	}
	for i, m := range s.Ends {
		y := 8 + scaleRow*float64(len(s.Flows)) + 17*float64(i)
		at := x.at(finite(m.Value))
		p.line(at, y, at, floor, stroke(ink, 2.4, ""))
		p.beside(m.Say, at, y+11, "w")
	}
	return p.close()
}

// beside writes letters behind a place, or up to the edge of the paper where they do not fit.
func (p *pen) beside(text string, x, y float64, class string) {
	anchor := "start"
	x += 5
	if wide := TextWidth(text, 12); x+wide > scaleW-2 {
		anchor = "end"
		if class != "" && x-10-wide > 2 { // before its line
			x -= 10
		} else {
			x = scaleW - 2
		}
	}
	p.raw(`<text class="%s" x="%s" y="%s" text-anchor="%s">%s</text>`, strings.TrimSpace("halo "+class), num(x), num(y), anchor, html.EscapeString(text))
}
