package draw

import (
	"encoding/xml"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"
)

// A picture read back from its SVG, so that a test can hold what is drawn against what was to be drawn.
type readBack struct {
	w, h    float64
	texts   []textBox
	lines   []mark
	rects   []mark
	paths   []mark
	circles []mark
}

// mark is one shape: its points on the paper, and how it looks.
type mark struct {
	pts  []Point
	look map[string]string
	r    float64 // of a circle
}

func (m mark) bounds() box {
	b := box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range m.pts {
		b = box{math.Min(b.x0, p.X-m.r), math.Min(b.y0, p.Y-m.r), math.Max(b.x1, p.X+m.r), math.Max(b.y1, p.Y+m.r)}
	}
	return b
}

// parse reads a picture back.
func parse(t *testing.T, svg string) readBack {
	t.Helper()
	r := readBack{texts: textBoxes(t, svg)}
	for d := xml.NewDecoder(strings.NewReader(svg)); ; {
		tok, err := d.Token()
		if err == io.EOF {
			return r
		}
		if err != nil {
			t.Fatal(err)
		}
		e, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		look := map[string]string{}
		for _, a := range e.Attr {
			look[a.Name.Local] = a.Value
		}
		n := func(name string) float64 {
			v, err := strconv.ParseFloat(look[name], 64)
			if err != nil {
				t.Fatalf("%s of a %s: %v", name, e.Name.Local, err)
			}
			return v
		}
		switch e.Name.Local {
		case "svg":
			f := strings.Fields(look["viewBox"])
			r.w, _ = strconv.ParseFloat(f[2], 64)
			r.h, _ = strconv.ParseFloat(f[3], 64)
		case "line":
			r.lines = append(r.lines, mark{pts: []Point{{n("x1"), n("y1")}, {n("x2"), n("y2")}}, look: look})
		case "rect":
			r.rects = append(r.rects, mark{pts: []Point{{n("x"), n("y")}, {n("x") + n("width"), n("y") + n("height")}}, look: look})
		case "circle":
			r.circles = append(r.circles, mark{pts: []Point{{n("cx"), n("cy")}}, look: look, r: n("r")})
		case "path":
			for _, pts := range strokes(t, look["d"]) {
				r.paths = append(r.paths, mark{pts: pts, look: look})
			}
		}
	}
}

// strokes are the points of the pieces of a path, each from a move to the next; curves in short pieces.
func strokes(t *testing.T, d string) (out [][]Point) {
	t.Helper()
	for _, one := range pieces(t, d) {
		out = append(out, one.pts)
	}
	return out
}

// text finds a text of the picture.
func (r readBack) text(t *testing.T, s string) textBox {
	t.Helper()
	for _, x := range r.texts {
		if x.text == s {
			return x
		}
	}
	t.Fatalf("no text %q", s)
	return textBox{}
}

// looking are the shapes of a list that look so.
func looking(list []mark, name, value string) (out []mark) {
	for _, m := range list {
		if m.look[name] == value {
			out = append(out, m)
		}
	}
	return out
}

// scale is a straight axis as the picture shows it: the values at its lines, and what lies between.
type scale struct{ p0, v0, p1, v1 float64 }

func (s scale) value(p float64) float64 { return s.v0 + (p-s.p0)*(s.v1-s.v0)/(s.p1-s.p0) }

// upright reads an upright axis off the picture between two heights: each number at its left end stands at the middle of
// a faint line across, and equal steps of the numbers are equal steps on the paper.
func (r readBack) upright(t *testing.T, from, to float64) scale {
	t.Helper()
	var at, v []float64
	for _, x := range r.texts {
		n, err := strconv.ParseFloat(x.text, 64)
		if err != nil || x.x1 > r.w/3 {
			continue
		}
		for _, l := range r.lines {
			a, b := l.pts[0], l.pts[1]
			if a.Y == b.Y && b.X-a.X > r.w/3 && a.Y >= from && a.Y <= to && math.Abs(a.Y-(x.y0+x.y1-0.1*x.size)/2) < 1 && a.X > x.x1 && a.X-x.x1 < 8 {
				at, v = append(at, a.Y), append(v, n)
			}
		}
	}
	if len(at) < 2 {
		t.Fatalf("%d numbers at an axis from %g to %g", len(at), from, to)
	}
	s := scale{at[0], v[0], at[len(at)-1], v[len(v)-1]}
	for i := range at {
		near(t, "an axis in equal steps", s.value(at[i]), v[i], 0.02*math.Abs((s.v1-s.v0)/(s.p1-s.p0)))
	}
	if s.p0 < s.p1 {
		t.Error("an axis that grows downwards")
	}
	return s
}

// height is how high a line of steps stands at x; the last piece that passes it.
func (m mark) height(t *testing.T, x float64) float64 {
	t.Helper()
	for i := len(m.pts) - 1; i > 0; i-- {
		a, b := m.pts[i-1], m.pts[i]
		if a.X != b.X && math.Min(a.X, b.X) <= x && x <= math.Max(a.X, b.X) {
			return a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X)
		}
	}
	t.Fatalf("a line that does not pass %g", x)
	return 0
}

// legend holds a text of the key against the sign before it: close by, at the same height, and of the look.
func (r readBack) legend(t *testing.T, text, name, value string) {
	t.Helper()
	x := r.text(t, text)
	for _, m := range append(looking(r.rects, name, value), looking(r.lines, name, value)...) {
		b := m.bounds()
		if gap := x.x0 - b.x1; gap > 2 && gap < 8 && b.x1-b.x0 > 8 && b.x1-b.x0 < 24 && math.Abs((b.y0+b.y1)/2-(x.y0+x.y1-0.1*x.size)/2) < 1.5 {
			return
		}
	}
	t.Errorf("no sign with %s %s before %q", name, value, text)
}
