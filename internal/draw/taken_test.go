package draw

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// What is drawn of a hoist takes its paper, so that no name is written on it: each point of each line lies in a piece that is
// taken, or three beside it. And what is taken has something drawn in it or close beside it: no paper is given away.
//
// Free are, with so many points at most, what letters may lie on: centre lines, the legs of the drum and of its board, where the block
// hangs at the lower stop, ends of short dimension lines and of their arrows, and the points of break lines.
func TestWhatIsDrawnTakesItsPaper(t *testing.T) {
	free := map[string]int{"line 0.5 10 2.5 1.5 2.5.7": 250, "line 0.8 ": 40, "line 1.6 ": 4, "circle 0.6 2 1.5": 40, "line 0.6 ": 6, "path  currentColor": 6, "path 0.6 ": 12}
	for name, p := range someHoists() {
		s := Make(p)
		var b strings.Builder
		c := &sheet{pen: open(&b, "hoist", paperW, 600, "x", ""), w: paperW, s: s, f: s.fit(viewLeft, viewTop, viewW, viewH)}
		c.groundLine()
		c.scenery()
		c.dims()
		c.where()
		if err := c.close(); err != nil {
			t.Fatal(err)
		}
		missed := map[string]int{}
		shapes := flatten(t, b.String()).shapes
		for _, s := range shapes {
			s.edges(func(from, to Point) {
				n := 1 + int(math.Hypot(to.X-from.X, to.Y-from.Y))
				for k := range n + 1 {
					q := along(Leg{from, to}, float64(k)/float64(n))
					in := false
					for _, o := range c.boxes {
						in = in || q.X >= o.x0-3 && q.X <= o.x1+3 && q.Y >= o.y0-3 && q.Y <= o.y1+3
					}
					if !in {
						missed[fmt.Sprint(s.of, " ", s.look["stroke-width"], " ", s.look["stroke-dasharray"], s.look["stroke-opacity"], s.look["fill"])]++
					}
				}
			})
		}
		for what, n := range missed {
			if most, ok := free[what]; !ok || n > most {
				t.Errorf("%s: %d points of %s take no paper", name, n, what)
			}
		}
		letters := textBoxes(t, b.String())
		for _, o := range c.boxes {
			short, long := Leg{Point{o.x0, (o.y0 + o.y1) / 2}, Point{o.x1, (o.y0 + o.y1) / 2}}, o.x1-o.x0
			if o.y1-o.y0 > long {
				short, long = Leg{Point{(o.x0 + o.x1) / 2, o.y0}, Point{(o.x0 + o.x1) / 2, o.y1}}, o.y1-o.y0
			}
			for k := range 11 {
				q, near := along(short, float64(k)/10), math.Inf(1)
				for _, s := range shapes {
					near = math.Min(near, s.from(q))
				}
				for _, x := range letters {
					near = math.Min(near, math.Hypot(math.Max(0, math.Max(x.x0-q.X, q.X-x.x1)), math.Max(0, math.Max(x.y0-q.Y, q.Y-x.y1))))
				}
				if most := (o.x1-o.x0+o.y1-o.y0-long)/2 + 3; near > most {
					t.Errorf("%s: %v is taken, and at %v nothing is drawn within %.1f", name, o, q, most)
					break
				}
			}
		}
	}
}
