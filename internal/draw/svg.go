package draw

import (
	"bufio"
	"fmt"
	"html"
	"io"
	"math"
	"strconv"
	"strings"
)

// The colours that mean something (the same everywhere), and the ink, which is the text colour of the page.
const (
	ink         = "currentColor"
	massColour  = "#A6598B"
	failColour  = "#D55E00" // lines
	failText    = "#B84F00" // letters
	sunColour   = "#E69F00"
	loadColour  = "#0072B2"
	cellColour  = "#009E73"
	waterColour = "#3A8FC8"
)

// kindLook is how what a kind of store holds is drawn: its colour and the dashes of its line.
type kindLook struct{ colour, dash string }

// lookOf is the look of that name; that of cells where several kinds are drawn as one.
func lookOf(name string) kindLook {
	if l, ok := looks[name]; ok {
		return l
	}
	return looks["cells"]
}

var looks = map[string]kindLook{"cells": {cellColour, "7 2"}, "mass": {massColour, "2 2"}, "water": {waterColour, "7 2 2 2"}}

// Line widths after ISO 128-2: wide, and narrow at half of it.
const (
	wide   = 1.6
	narrow = 0.8
)

// Dashes: hidden and other places of a part, centre lines.
const (
	dashed = "5 3"
	chain  = "10 2.5 1.5 2.5"
)

// pen writes SVG. It never writes a number that is not finite.
type pen struct{ w *bufio.Writer }

// attrs is a list of names and values.
type attrs []string

// num writes a coordinate with at most two decimals.
func num(v float64) string {
	switch {
	case math.IsNaN(v):
		v = 0
	case v > 1e5:
		v = 1e5
	case v < -1e5:
		v = -1e5
	}
	s := strconv.FormatFloat(v, 'f', 2, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" || s == "" {
		return "0"
	}
	return s
}

func newPen(out io.Writer) *pen { return &pen{w: bufio.NewWriter(out)} }

// open begins a picture of w × h units with its name for those who do not see it.
func open(out io.Writer, class string, w, h float64, title, desc string) *pen {
	p := newPen(out)
	p.raw(`<svg xmlns="http://www.w3.org/2000/svg" class="draw %s" viewBox="0 0 %s %s" role="img" fill="none" stroke="none" font-family="%s">`, class, num(w), num(h), face)
	p.raw("<title>%s</title>", html.EscapeString(title))
	if desc != "" {
		p.raw("<desc>%s</desc>", html.EscapeString(desc))
	}
	return p
}

// face is the letters: the system's own.
const face = "system-ui, 'Segoe UI', 'Noto Sans', Helvetica, Arial, sans-serif"

func (p *pen) close() error {
	p.raw("</svg>")
	return p.w.Flush()
}

func (p *pen) raw(format string, args ...any) { fmt.Fprintf(p.w, format, args...) }

// tag writes an empty element.
func (p *pen) tag(name string, a ...attrs) {
	p.w.WriteString("<" + name)
	for _, list := range a {
		for i := 0; i+1 < len(list); i += 2 {
			if list[i+1] != "" {
				p.raw(` %s="%s"`, list[i], html.EscapeString(list[i+1]))
			}
		}
	}
	p.w.WriteString("/>")
}

// stroke is the look of a line.
func stroke(colour string, width float64, dash string) attrs {
	return attrs{"stroke", colour, "stroke-width", num(width), "stroke-dasharray", dash}
}

func (p *pen) line(x0, y0, x1, y1 float64, look ...attrs) {
	p.tag("line", append([]attrs{{"x1", num(x0), "y1", num(y0), "x2", num(x1), "y2", num(y1)}}, look...)...)
}

func (p *pen) rect(x, y, w, h float64, look ...attrs) {
	p.tag("rect", append([]attrs{{"x", num(x), "y", num(y), "width", num(math.Max(0, w)), "height", num(math.Max(0, h))}}, look...)...)
}

func (p *pen) circle(x, y, r float64, look ...attrs) {
	p.tag("circle", append([]attrs{{"cx", num(x), "cy", num(y), "r", num(math.Max(0, r))}}, look...)...)
}

// path writes a path from points in pairs; shut closes it.
func (p *pen) path(points []float64, shut bool, look ...attrs) {
	if len(points) < 4 {
		return
	}
	x, y := num(points[0]), num(points[1])
	var d strings.Builder
	d.WriteString("M" + x + " " + y)
	for i := 2; i+1 < len(points); i += 2 {
		toX, toY := num(points[i]), num(points[i+1])
		switch {
		case toX == x && toY == y:
		case toY == y:
			d.WriteString("H" + toX)
		case toX == x:
			d.WriteString("V" + toY)
		default:
			d.WriteString("L" + toX + " " + toY)
		}
		x, y = toX, toY
	}
	if shut {
		d.WriteString("Z")
	}
	p.tag("path", append([]attrs{{"d", d.String()}}, look...)...)
}

// text writes one line of text; turn is in degrees against the clock.
func (p *pen) text(x, y float64, s string, size float64, anchor string, turn float64, more ...attrs) {
	if s == "" {
		return
	}
	rot := ""
	if turn != 0 {
		rot = "rotate(" + num(-turn) + " " + num(x) + " " + num(y) + ")"
	}
	fill := ink
	var rest []attrs
	for _, m := range more {
		if len(m) == 2 && m[0] == "fill" {
			fill = m[1]
			continue
		}
		rest = append(rest, m)
	}
	p.raw(`<text x="%s" y="%s" font-size="%s" fill="%s"`, num(x), num(y), num(size), fill)
	if anchor != "" {
		p.raw(` text-anchor="%s"`, anchor)
	}
	if rot != "" {
		p.raw(` transform="%s"`, rot)
	}
	for _, list := range rest {
		for i := 0; i+1 < len(list); i += 2 {
			if list[i+1] != "" {
				p.raw(` %s="%s"`, list[i], html.EscapeString(list[i+1]))
			}
		}
	}
	p.raw(">%s</text>", html.EscapeString(strings.ToValidUTF8(s, "?")))
}

// arrow draws a filled arrowhead with its point at x, y, coming from the direction (dx, dy).
func (p *pen) arrow(x, y, dx, dy float64) {
	l := math.Hypot(dx, dy)
	if l == 0 || math.IsNaN(l) || math.IsInf(l, 0) {
		return
	}
	dx, dy = dx/l, dy/l
	const long, half = 7.0, 1.4
	p.path([]float64{x, y, x - long*dx - half*dy, y - long*dy + half*dx, x - long*dx + half*dy, y - long*dy - half*dx}, true, attrs{"fill", ink})
}
