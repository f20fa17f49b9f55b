package draw

import (
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// The line of each part leads to that part: a pulley's to its axle, the hook's to the middle between axle and beam, the rope's onto
// the rope, the posts' into the post, a stop's to the corner of what it stops.
func TestAnchorsAtTheirParts(t *testing.T) {
	mid := func(r Rect) Point { return Point{(r.X0 + r.X1) / 2, (r.Y0 + r.Y1) / 2} }
	standing(t, func(name string, h lift.Hoist, s Scene) {
		at := s.anchors()
		is := func(id string, want Point) {
			if got, ok := at[id]; !ok || math.Hypot(got.X-want.X, got.Y-want.Y) > 1e-9 {
				t.Errorf("%s: %s at %v, want %v", name, id, got, want)
			}
		}
		is("mass", mid(s.Mass))
		is("beam", mid(s.Beam))
		is("cage", Point{s.Mass.X0, s.Mass.Y1})
		is("stop-1", Point{s.Mass.X1, s.Mass.Y1})
		is("stop-2", Point{s.Rig.X1, s.Rig.Y1})
		is("ends", mid(s.Rig))
		if s.Head > 0 {
			is("pulley", s.Wheels[s.Head].C)
		} else {
			is("pulley", mid(s.Rig))
		}
		for i, w := range s.Wheels {
			if i > 0 && i != s.Head {
				is("pulley-"+string(rune('0'+i)), w.C)
			}
		}
		if len(s.Hangers) > 0 {
			l := s.Hangers[0]
			is("eye", Point{(l.From.X + l.To.X) / 2, (l.From.Y + l.To.Y) / 2})
		}
		on := func(id string, l Leg, share float64) {
			p := at[id]
			if away(p, l.From, l.To) > 1e-6 || math.Abs(math.Hypot(p.X-l.From.X, p.Y-l.From.Y)/math.Hypot(l.To.X-l.From.X, l.To.Y-l.From.Y)-share) > 1e-9 {
				t.Errorf("%s: %s at %v is not on its rope from %v to %v", name, id, p, l.From, l.To)
			}
		}
		if s.Head > 0 {
			on("rope", s.Legs[s.Head-1], 0.6)
		}
		on("slack", s.Legs[0], 0.15)
		if n := len(s.Posts); n > 0 {
			p := s.Posts[n-1]
			is("posts", Point{(p.X0 + p.X1) / 2, p.Y0 + (p.Y1-p.Y0)/4})
		}
		if s.HasBase {
			is("board", Point{s.Board.X1, (s.Board.Y0 + s.Board.Y1) / 2})
		}
		switch {
		case len(s.Weights) > 0:
			is("weights", mid(s.Weights[0]))
		case s.HasBase:
			is("weights", Point{s.Board.X0, s.Board.Y1})
		}
	})
}

// In pounds and feet a line of energy is the same energy: mass times height times g, with a pound of 0.45359237 kg and a foot of
// 0.3048 m (both by definition), is 266,400 J for 74 Wh. The word of today's design lies on no such line.
func TestEnergyInPoundsAndFeet(t *testing.T) {
	m := someMass()
	m.Units = unit.Imperial
	r := parse(t, drawn(t, func(b *strings.Builder) error { return MassHeight(m, b) }))
	x, y := decadesOf(t, r, false), decadesOf(t, r, true)
	lines := 0
	for _, l := range looking(r.lines, "stroke-width", "2") {
		for _, p := range l.pts {
			near(t, "a night, J", math.Pow(10, x.value(p.X)+y.value(p.Y))*0.45359237*0.3048*9.80665/266400, 1, 0.002)
			lines++
		}
	}
	if lines != 2 {
		t.Errorf("%d ends of the line", lines)
	}
	for _, mass := range []float64{30, 100, 240, 700, 2000, 9000} {
		for _, height := range []float64{0.8, 2, 3.8, 9, 30} {
			m := someMass()
			m.Mass, m.Height = unit.Of(unit.Mass(mass)), unit.Of(unit.Length(height))
			svg := drawn(t, func(b *strings.Builder) error { return MassHeight(m, b) })
			r := parse(t, svg)
			word, at := r.text(t, "today"), looking(r.circles, "stroke", massColour)[0].pts[0]
			if word.x0 < 58 || word.x1 > r.w-16 || word.y0 < 14 || word.y1 > r.h-44 {
				t.Errorf("%g kg, %g m: today stands at %v", mass, height, word.box)
			}
			if gap := math.Max(word.x0-at.X, at.X-word.x1); gap < 6 || gap > 16 || math.Abs((word.y0+word.y1)/2-at.Y) > 20 {
				t.Errorf("%g kg, %g m: today stands at %v, its ring at %v", mass, height, word.box, at)
			}
			for _, s := range flatten(t, svg).shapes {
				if p := s.pts; s.of == "line" && p[0].X != p[1].X && p[0].Y != p[1].Y && s.lies(box{word.x0 + 1, word.y0 + 1, word.x1 - 1, word.y1 - 1}) {
					t.Errorf("%g kg, %g m: a line runs through today at %v", mass, height, word.box)
				}
			}
		}
	}
}
