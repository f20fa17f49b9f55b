package draw

import (
	"encoding/xml"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// shape is what a picture draws with one stroke of the pen, as a line of points on its paper: curves in short pieces, groups
// moved to their place.
type shape struct {
	pts  []Point
	shut bool
	look map[string]string
	of   string // its element
}

// picture is a picture read back for the laws that hold for all of them.
type picture struct {
	paper  box
	shapes []shape
}

// moved is where a group puts a point: scaled, then shifted.
type moved struct{ k, x, y float64 }

func (m moved) at(p Point) Point { return Point{m.k*p.X + m.x, m.k*p.Y + m.y} }

var (
	shifts = regexp.MustCompile(`translate\(([-\d.]+)[ ,]+([-\d.]+)\)`)
	scaled = regexp.MustCompile(`scale\(([-\d.]+)\)`)
)

func (m moved) then(transform string) moved {
	if v := shifts.FindStringSubmatch(transform); v != nil {
		x, _ := strconv.ParseFloat(v[1], 64)
		y, _ := strconv.ParseFloat(v[2], 64)
		m.x, m.y = m.x+m.k*x, m.y+m.k*y
	}
	if v := scaled.FindStringSubmatch(transform); v != nil {
		k, _ := strconv.ParseFloat(v[1], 64)
		m.k *= k
	}
	return m
}

// flatten reads a picture back. Letters are no shapes.
func flatten(t *testing.T, svg string) picture {
	t.Helper()
	var pic picture
	stack := []moved{{1, 0, 0}}
	for d := xml.NewDecoder(strings.NewReader(svg)); ; {
		tok, err := d.Token()
		if err == io.EOF {
			return pic
		}
		if err != nil {
			t.Fatal(err)
		}
		if _, ok := tok.(xml.EndElement); ok {
			stack = stack[:len(stack)-1]
		}
		e, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		look := map[string]string{}
		for _, a := range e.Attr {
			look[a.Name.Local] = a.Value
		}
		m := stack[len(stack)-1].then(look["transform"])
		stack = append(stack, m)
		n := func(name string) float64 { v, _ := strconv.ParseFloat(look[name], 64); return v }
		add := func(shut bool, pts ...Point) {
			for i := range pts {
				pts[i] = m.at(pts[i])
			}
			pic.shapes = append(pic.shapes, shape{pts, shut, look, e.Name.Local})
		}
		switch e.Name.Local {
		case "svg":
			v := numbers(t, strings.Fields(look["viewBox"]))
			pic.paper = box{v[0], v[1], v[0] + v[2], v[1] + v[3]}
		case "line":
			add(false, Point{n("x1"), n("y1")}, Point{n("x2"), n("y2")})
		case "rect":
			x, y, w, h := n("x"), n("y"), n("width"), n("height")
			add(true, Point{x, y}, Point{x + w, y}, Point{x + w, y + h}, Point{x, y + h})
		case "circle":
			add(true, round(Point{n("cx"), n("cy")}, n("r"), 0, 2*math.Pi)...)
		case "path":
			for _, s := range pieces(t, look["d"]) {
				add(s.shut, s.pts...)
			}
		}
	}
}

// round is an arc in pieces of 15° and less.
func round(c Point, r, from, to float64) (out []Point) {
	n := int(math.Ceil(math.Abs(to-from) / (math.Pi / 12)))
	for i := 0; i <= n; i++ {
		a := from + (to-from)*float64(i)/float64(max(n, 1))
		out = append(out, Point{c.X + r*math.Cos(a), c.Y + r*math.Sin(a)})
	}
	return out
}

var drawnWord = regexp.MustCompile(`[A-Za-z]|[-+]?(?:\d+\.?\d*|\.\d+)`)

// pieces reads a path after the grammar of SVG 2, section 9.3: M, L, H, V, C, S, Q, T, A and Z, absolute and relative.
func pieces(t *testing.T, d string) (out []shape) {
	t.Helper()
	words := drawnWord.FindAllString(d, -1)
	var at, start, control Point
	var c, before byte
	next := func() float64 {
		if len(words) == 0 {
			t.Fatalf("a path that ends too soon: %s", d)
		}
		v, err := strconv.ParseFloat(words[0], 64)
		if err != nil {
			t.Fatalf("%q in %s", words[0], d)
		}
		words = words[1:]
		return v
	}
	for len(words) > 0 {
		if w := words[0]; w[0] >= 'A' {
			c, words = w[0], words[1:]
		} else if c == 'M' {
			c = 'L'
		} else if c == 'm' {
			c = 'l'
		}
		rel := Point{}
		if c >= 'a' {
			rel = at
		}
		to := func() Point { x := next(); return Point{x + rel.X, next() + rel.Y} }
		big := c &^ 0x20
		if big != 'M' && big != 'Z' && (len(out) == 0 || before == 'Z') {
			out = append(out, shape{pts: []Point{at}})
		}
		var pts []Point
		switch big {
		case 'M':
			at = to()
			start = at
			out = append(out, shape{pts: []Point{at}})
		case 'L':
			pts = []Point{to()}
		case 'H':
			pts = []Point{{next() + rel.X, at.Y}}
		case 'V':
			pts = []Point{{at.X, next() + rel.Y}}
		case 'C', 'S', 'Q', 'T':
			a := at
			mirror := Point{2*at.X - control.X, 2*at.Y - control.Y}
			if !strings.ContainsRune(map[byte]string{'S': "CS", 'T': "QT"}[big], rune(before)) {
				mirror = at
			}
			var b, e Point
			switch big {
			case 'C':
				b, control, e = to(), to(), to()
			case 'S':
				b, control, e = mirror, to(), to()
			case 'Q', 'T': // a quadratic curve as the same cubic one
				control = mirror
				if big == 'Q' {
					control = to()
				}
				e = to()
			}
			for i := 1; i <= 8; i++ {
				u := float64(i) / 8
				v := 1 - u
				if big == 'Q' || big == 'T' {
					pts = append(pts, Point{v*v*a.X + 2*v*u*control.X + u*u*e.X, v*v*a.Y + 2*v*u*control.Y + u*u*e.Y})
					continue
				}
				pts = append(pts, Point{v*v*v*a.X + 3*v*v*u*b.X + 3*v*u*u*control.X + u*u*u*e.X, v*v*v*a.Y + 3*v*v*u*b.Y + 3*v*u*u*control.Y + u*u*u*e.Y})
			}
		case 'A':
			r := next()
			next()
			next()
			large, sweep := next() != 0, next() != 0
			pts = arc(at, to(), r, large, sweep)
		case 'Z':
			at = start
			out[len(out)-1].shut = true
		default:
			t.Fatalf("%q in a path", c)
		}
		if len(pts) > 0 {
			at = pts[len(pts)-1]
			out[len(out)-1].pts = append(out[len(out)-1].pts, pts...)
		}
		before = big
	}
	return out
}

// arc is an arc of a circle between two points; a radius that is too small grows until it reaches both (SVG 2, B.2.5).
func arc(a, b Point, r float64, large, sweep bool) []Point {
	dx, dy := b.X-a.X, b.Y-a.Y
	half := math.Hypot(dx, dy) / 2
	r = math.Max(r, half)
	if half == 0 {
		return []Point{b}
	}
	off := math.Sqrt(r*r - half*half)
	if large == sweep {
		off = -off
	}
	c := Point{(a.X+b.X)/2 - off*dy/2/half, (a.Y+b.Y)/2 + off*dx/2/half}
	from, to := math.Atan2(a.Y-c.Y, a.X-c.X), math.Atan2(b.Y-c.Y, b.X-c.X)
	if sweep && to < from {
		to += 2 * math.Pi
	}
	if !sweep && to > from {
		to -= 2 * math.Pi
	}
	return round(c, r, from, to)
}

func (s shape) bounds() box { return mark{pts: s.pts}.bounds() }

// edges are its straight pieces.
func (s shape) edges(do func(a, b Point)) {
	for i := 1; i < len(s.pts); i++ {
		do(s.pts[i-1], s.pts[i])
	}
	if n := len(s.pts); s.shut && n > 1 {
		do(s.pts[n-1], s.pts[0])
	}
}

// from is how far a point is from its line.
func (s shape) from(p Point) float64 {
	best := math.Inf(1)
	s.edges(func(a, b Point) { best = math.Min(best, away(p, a, b)) })
	return best
}

// away is how far a point is from a straight piece.
func away(p, a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	u := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		u = math.Min(1, math.Max(0, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/l))
	}
	return math.Hypot(p.X-a.X-u*dx, p.Y-a.Y-u*dy)
}

// holds reports whether a point lies inside of a closed shape.
func (s shape) holds(p Point) bool {
	in := false
	if s.shut {
		s.edges(func(a, b Point) {
			if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
				in = !in
			}
		})
	}
	return in
}

// meets reports whether two shapes touch: a point of one within near of the line of the other, lines that cross, or one that lies in the other.
func (s shape) meets(o shape, near float64) bool {
	p, q := s.bounds(), o.bounds()
	if p.x0 > q.x1+near || q.x0 > p.x1+near || p.y0 > q.y1+near || q.y0 > p.y1+near {
		return false
	}
	for _, a := range s.pts {
		if o.from(a) <= near || o.holds(a) {
			return true
		}
	}
	for _, a := range o.pts {
		if s.from(a) <= near || s.holds(a) {
			return true
		}
	}
	cross := false
	side := func(a, b, p Point) float64 { return (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X) }
	s.edges(func(a, b Point) {
		o.edges(func(c, d Point) {
			cross = cross || side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
		})
	})
	return cross
}
