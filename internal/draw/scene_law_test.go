package draw

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// The hoist of the tests by hand, mm: 240 kg as a cube of wet sand, 1.6 kg a litre, is 150 litres and 531.33 wide and
// high. The head stands at 5,200; its rope line is 64 beside its axis (half of 120 + 8), so the mass hangs with its middle
// there, and its top is 5,200 − 64 − 250 of room − 60 of hook = 4,826.
func TestMassByHand(t *testing.T) {
	s := Make(Plan{Hoist: hoist()})
	near(t, "width", s.Mass.X1-s.Mass.X0, 531.33, 0.01)
	near(t, "height", s.Mass.Y1-s.Mass.Y0, 531.33, 0.01)
	near(t, "middle", (s.Mass.X0+s.Mass.X1)/2, 64, 1e-9)
	near(t, "top", s.Mass.Y1, 4826, 1e-6)
	near(t, "hook", s.Rig.Y1-s.Mass.Y1, 0.55*60, 1e-6) // the rope ends a little over its middle
	// 400 wide it must be 150 litres/0.16 m² = 937.5 high; 300 wide no higher than three times that; 2 m wide no lower than
	// three tenths; with the height given, that high.
	for width, height := range map[float64]float64{400: 937.5, 300: 900, 2000: 600} {
		h := hoist()
		h.Site.LoadWidth = of(width)
		s := Make(Plan{Hoist: h})
		near(t, "width", s.Mass.X1-s.Mass.X0, width, 1e-9)
		near(t, "height", s.Mass.Y1-s.Mass.Y0, height, 1e-6)
		h.Site.LoadHeight = of(700)
		s = Make(Plan{Hoist: h})
		near(t, "its own height", s.Mass.Y1-s.Mass.Y0, 700, 1e-9)
	}
	// The drive knows the mass better than the pieces; a piece that is not known leaves it open.
	h := hoist()
	h.Mass = append(h.Mass, lift.Piece{Mass: unit.Of(unit.Mass(60))})
	if got := Make(Plan{Hoist: h}).Labels[0].Text; got != "300\u00a0kg" {
		t.Errorf("240 and 60 kg are %q", got)
	}
	if got := Make(Plan{Hoist: h, Drive: lift.Drive{Mass: unit.Of(unit.Mass(299))}}).Labels[0].Text; got != "299\u00a0kg" {
		t.Errorf("the drive's 299 kg are %q", got)
	}
	h.Mass[0].Mass.Is = false
	if s := Make(Plan{Hoist: h}); s.MassKnown || !strings.Contains(s.Labels[0].Text, "?") {
		t.Errorf("half a mass is told: %q", s.Labels[0].Text)
	}
}

// variants of a hoist in which the drive stands in other places.
func standing(t *testing.T, do func(name string, h lift.Hoist, s Scene)) {
	t.Helper()
	for lead := range 4 {
		for parts := 1; parts <= 4; parts++ {
			for _, where := range []string{"on_ground", "on_beam", "on_wall"} {
				for _, foot := range []string{"yes", "no"} {
					h := hoist()
					h.Reeving.LeadSheaves, h.Reeving.RopeParts = unit.Of(unit.Count(lead)), unit.Of(unit.Count(parts))
					h.Reeving.Sheaves[0].OnBase, h.Base.Where = unit.Answer(foot), lift.BaseWhere(where)
					h.Structure.Beam.Span = unit.Known[unit.Length]{}
					h.Base.Width = unit.Known[unit.Length]{}
					do(fmt.Sprintf("%d pulleys, %d ropes, %s, foot %s", lead, parts, where, foot), h, Make(Plan{Hoist: h}))
				}
			}
		}
	}
}

// What cannot be in one place is not drawn in one place: the mass does not meet the drive, the base or the posts on its
// way; wheels do not lie on one another; the drum's flanges turn clear of the board and of the weights.
func TestNothingInTheWay(t *testing.T) {
	apart := func(a, b Rect) bool { return a.X1 <= b.X0 || b.X1 <= a.X0 || a.Y1 <= b.Y0 || b.Y1 <= a.Y0 }
	standing(t, func(name string, h lift.Hoist, s Scene) {
		way := Rect{s.Mass.X0, s.Mass.Y0 - s.Travel, s.Mass.X1, s.Mass.Y1}
		if way.Y0 < -1e-6 {
			t.Errorf("%s: the mass goes %v mm into the ground", name, -way.Y0)
		}
		for _, list := range [][]Rect{s.Posts, s.Weights, {s.Board}, {s.Beam}} {
			for _, r := range list {
				if !apart(way, r) {
					t.Errorf("%s: the mass %v meets %v", name, way, r)
				}
			}
		}
		for i, w := range s.Wheels {
			r := w.R
			if i == 0 {
				r = s.Flange / 2
			}
			if w.Place == "base" && w.C.Y-w.R < 19.99 {
				t.Errorf("%s: %s is %v mm over the ground", name, w.Name, w.C.Y-w.R)
			}
			if w.Place != "mass" && !w.AtLower && !apart(Rect{w.C.X - r, w.C.Y - r, w.C.X + r, w.C.Y + r}, s.Mass) {
				t.Errorf("%s: %s meets the mass", name, w.Name)
			}
			for _, o := range s.Wheels[:i] {
				if d := math.Hypot(w.C.X-o.C.X, w.C.Y-o.C.Y); d < w.R+o.R-1e-6 {
					t.Errorf("%s: %s and %s, %v apart, lie on one another", name, o.Name, w.Name, d)
				}
			}
		}
		drum := s.Wheels[0]
		if s.HasBase && drum.Place == "base" {
			if gap := drum.C.Y - s.Flange/2 - s.Board.Y1; gap < 20-1e-6 {
				t.Errorf("%s: the flange is %v mm over the board", name, gap)
			}
			if drum.C.X-s.Flange/2 < s.Board.X0 {
				t.Errorf("%s: the drum stands beside its board", name)
			}
			for _, l := range s.Stand {
				near(t, name+": a bearing stands on the board", l.To.Y, s.Board.Y1, 1e-9)
				if math.Abs(l.To.X-drum.C.X) > s.Flange/2 || l.To.X < s.Board.X0 || l.To.X > s.Board.X1 {
					t.Errorf("%s: a bearing stands at %v beside the board", name, l.To.X)
				}
			}
		}
		for _, r := range s.Weights {
			near(t, name+": weights stand on the board", r.Y0, s.Board.Y1, 1e-9)
			if r.X0 < s.Board.X0 || r.X1 > s.Board.X1 || drum.Place == "base" && r.X1 > drum.C.X-s.Flange/2-20 {
				t.Errorf("%s: weights from %v to %v, the board from %v to %v", name, r.X0, r.X1, s.Board.X0, s.Board.X1)
			}
		}
		if s.HasHole {
			foot := s.Wheels[1]
			near(t, name+": the rope goes through the hole", s.Hole.X, foot.C.X-foot.R, 1e-6)
			if s.Board.Y0-(foot.C.Y+foot.R) < 19.99 || s.Hole.Y <= s.Board.Y0 || s.Hole.Y >= s.Board.Y1 || s.Hole.X <= s.Board.X0 || s.Hole.X >= s.Board.X1 {
				t.Errorf("%s: board %v, hole %v, foot pulley up to %v", name, s.Board, s.Hole, foot.C.Y+foot.R)
			}
		}
	})
}

// What hangs is held: every wheel at the beam by a hook from its axis to the beam, the beam over its posts, and the posts
// from the ground to the beam.
func TestWhatHangsIsHeld(t *testing.T) {
	standing(t, func(name string, h lift.Hoist, s Scene) {
		held := map[Point]bool{}
		for _, l := range s.Hangers {
			near(t, name+": a hook ends at the beam", l.To.Y, s.Beam.Y0, 1e-9)
			near(t, name+": a hook hangs straight", l.To.X, l.From.X, 1e-9)
			held[l.From] = true
		}
		for _, w := range s.Wheels {
			if w.Place == "beam" && !held[w.C] {
				t.Errorf("%s: %s hangs on nothing", name, w.Name)
			}
			if w.Place == "beam" && s.Beam.Y0-(w.C.Y+w.R) < 39.99 {
				t.Errorf("%s: %s is %v under the beam", name, w.Name, s.Beam.Y0-(w.C.Y+w.R))
			}
		}
		near(t, name+": depth of the beam", s.Beam.Y1-s.Beam.Y0, 160, 1e-9)
		if len(s.Posts) != 2 {
			t.Fatalf("%s: %d posts", name, len(s.Posts))
		}
		for i, p := range s.Posts {
			near(t, name+": a post stands on the ground", p.Y0, 0, 1e-9)
			near(t, name+": and carries the beam", p.Y1, s.Beam.Y0, 1e-9)
			near(t, name+": as wide as it is", p.X1-p.X0, 100, 1e-9)
			if p.X0 < s.Beam.X0-1e-9 || p.X1 > s.Beam.X1+1e-9 {
				t.Errorf("%s: post %d stands beside the beam", name, i)
			}
			for _, w := range s.Wheels {
				if w.C.X-w.R < p.X1 && w.C.X+w.R > p.X0 && w.C.Y-w.R < p.Y1 {
					t.Errorf("%s: %s lies on post %d", name, w.Name, i)
				}
			}
		}
		if (h.Reeving.RopeParts.Val%2 == 0) != held[s.DeadEnd] {
			t.Errorf("%s: its far end is held: %v", name, held[s.DeadEnd])
		}
	})
}

// A span that is known is kept between the posts, with the pulley where the user says; a cantilever has one post, the span
// away from the pulley.
func TestSpanByHand(t *testing.T) {
	h := hoist()
	for from, want := range map[float64]float64{0: 1300, 1000: 1000, 3000: 1300} { // not known and more than the span: the middle
		h.Structure.Beam.From = unit.Known[unit.Length]{}
		if from > 0 {
			h.Structure.Beam.From = of(from)
		}
		s := Make(Plan{Hoist: h})
		pull := (s.Mass.X0 + s.Mass.X1) / 2
		near(t, "right post", s.Posts[1].X0-pull, want, 1e-9)
		near(t, "left post", pull-s.Posts[0].X1, 2600-want, 1e-9)
	}
	h.Structure.Beam.Support = "cantilever"
	s := Make(Plan{Hoist: h})
	if len(s.Posts) != 1 {
		t.Fatalf("%d posts under a cantilever", len(s.Posts))
	}
	near(t, "the post of a cantilever", s.Posts[0].X0-(s.Mass.X0+s.Mass.X1)/2, 2600, 1e-9)
	h.Structure.Posts, h.Structure.RestsOn = nil, "concrete_or_masonry"
	if s := Make(Plan{Hoist: h}); len(s.Stubs) != 1 || len(s.Posts) != 0 || s.PostsKnown {
		t.Errorf("in a wall: %d pieces of wall, %d posts", len(s.Stubs), len(s.Posts))
	}
	h.Structure.Beam.Support = ""
	s = Make(Plan{Hoist: h})
	if len(s.Stubs) != 2 {
		t.Fatalf("on two walls: %d pieces of wall", len(s.Stubs))
	}
	for _, r := range s.Stubs {
		near(t, "the wall carries the beam", r.Y1, s.Beam.Y0, 1e-9)
		if r.X1 <= s.Beam.X0 || r.X0 >= s.Beam.X1 || r.Y0 >= r.Y1 {
			t.Errorf("a wall %v beside the beam %v", r, s.Beam)
		}
	}
}

// The base as the user gives it: 700 wide, 25 thick, its pull 250 from the middle, so that it ends 100 beyond the rope; a
// rope that goes up at 0.2 from upright leaves the drum that way.
func TestBaseByHand(t *testing.T) {
	h := hoist()
	h.Base.Width, h.Base.Board.Thickness, h.Base.PullOffset = of(700), of(25), of(250)
	s := Make(Plan{Hoist: h})
	near(t, "width", s.Board.X1-s.Board.X0, 700, 1e-9)
	near(t, "thickness", s.Board.Y1-s.Board.Y0, 25, 1e-9)
	near(t, "beyond the rope", s.Board.X1-s.Legs[1].From.X, 100, 1e-6)
	near(t, "hole", s.Hole.Y, (s.Board.Y0+s.Board.Y1)/2, 1e-9)
	h.Base.PullHeight = of(900)
	near(t, "drum axis at its height", Make(Plan{Hoist: h}).Wheels[0].C.Y, 900, 1e-9)
	h.Base.PullHeight = of(50) // the flange would cut the board
	if s := Make(Plan{Hoist: h}); s.Wheels[0].C.Y-s.Flange/2 < s.Board.Y1 {
		t.Error("the drum turns in its board")
	}
	h = hoist()
	h.Reeving.LeadSheaves, h.Reeving.Sheaves[0].OnBase = unit.Of(unit.Count(1)), "no"
	for _, a := range []float64{0.3, 0.6} {
		h.Structure.LeadAngle = unit.Of(unit.Angle(a))
		l := Make(Plan{Hoist: h}).Legs[0]
		near(t, "angle of the rope", math.Atan2(l.To.X-l.From.X, l.To.Y-l.From.Y), a, 1e-9)
	}
	h.Structure.LeadAngle = unit.Of(unit.Angle(0)) // straight down from the head: into the mass
	s = Make(Plan{Hoist: h})
	if s.Wheels[0].C.X+s.Wheels[0].R > s.Mass.X0 || len(s.Notes) != 1 || !strings.Contains(s.Notes[0], "beside the mass") {
		t.Errorf("a drum at %v under a mass from %v: %q", s.Wheels[0].C.X, s.Mass.X0, s.Notes)
	}
	// Weights follow the mass of the base, √ of it: four times the mass, twice as high, between 60 and what there is room for.
	high := func(kg float64) float64 {
		h := hoist()
		h.Base.Width, h.Base.Mass = of(1500), unit.Of(unit.Mass(kg))
		w := Make(Plan{Hoist: h}).Weights
		return w[0].Y1 - w[0].Y0
	}
	near(t, "4 times", high(16)/high(4), 2, 1e-9)
	near(t, "of 16 kg", high(16), math.Sqrt(16/1600e-9/300), 1e-9)
	near(t, "of 1 g", high(0.001), 60, 1e-9)
	near(t, "of 100 t", high(1e5), 0.4*531.33, 0.01)
}

// What a check is about is what is marked, and a part with a cross has its name in the sentence.
func TestEachFailureIsMarked(t *testing.T) {
	for id, want := range map[string]string{"rope": "rope", "hanger": "top pulley or its hook", "beam": "beam", "post": "post", "container": "container", "redirect_sheave": "extra pulley", "base_sliding": "base", "shaft": "drum or drive"} {
		s := Make(Plan{Hoist: hoist(), Checks: []path.Check{{ID: id, Word: path.GivesWay}}})
		svg := drawn(t, func(b *strings.Builder) error { return SVG(s, b) })
		if !strings.Contains(svg, "✕ Gives way: "+want+".") {
			t.Errorf("%s: no %q", id, want)
		}
		crosses := 0
		for _, m := range looking(parse(t, svg).paths, "stroke", failColour) {
			if b := m.bounds(); len(m.pts) == 2 && math.Abs(b.x1-b.x0-8) < 0.01 && math.Abs(b.y1-b.y0-8) < 0.01 {
				crosses++
			}
		}
		if wantCrosses := map[bool]int{true: 2, false: 0}[id != "base_sliding"]; crosses != wantCrosses { // the base has it in its name
			t.Errorf("%s: %d strokes of a cross", id, crosses)
		}
		for _, word := range []path.Word{path.Tight, path.Holds, path.NotKnown} {
			if s := Make(Plan{Hoist: hoist(), Checks: []path.Check{{ID: id, Word: word}}}); len(s.Fails) != 0 {
				t.Errorf("%s %s is marked", id, word)
			}
		}
	}
}

// The picture is to one scale, read back from it: the mass 531.33 wide, its dashed place 3,800 lower, the head's axis 5,200
// over the ground, the stops at the height of its top, the circle of 2 m to its edge.
func TestHoistReadBack(t *testing.T) {
	h := hoist()
	for _, keep := range []float64{1, 50} {
		r := parse(t, drawn(t, func(b *strings.Builder) error {
			return SVG(Make(Plan{Hoist: h, KeepOut: unit.Of(unit.Length(keep))}), b)
		}))
		masses := looking(r.rects, "stroke", massColour)
		up, low := masses[0].bounds(), masses[1].bounds()
		one := (up.x1 - up.x0) / 531.33 // units for a mm
		near(t, "as high as wide", up.y1-up.y0, up.x1-up.x0, 0.05)
		near(t, "travel", (low.y0-up.y0)/one, 3800, 1)
		near(t, "straight down", low.x0, up.x0, 0.01)
		var floor float64
		for _, l := range r.lines {
			if a, b := l.pts[0], l.pts[1]; a.Y == b.Y && l.look["stroke-width"] == "1.6" && b.X-a.X > 200 {
				floor = a.Y
			}
		}
		near(t, "top of the mass", (floor-up.y0)/one, 4826, 5)
		axes := 0
		for _, c := range r.circles {
			if math.Abs(c.r/one-60) < 1 && math.Abs((floor-c.pts[0].Y)/one-5200) < 5 && math.Abs((c.pts[0].X-(up.x0+up.x1)/2)/one+64) < 5 {
				axes++
			}
		}
		if axes != 1 {
			t.Errorf("%d top pulleys of 120 mm at 5,200 mm, 64 mm beside the rope", axes)
		}
		stops := 0
		for _, l := range looking(r.lines, "stroke-width", "2.4") {
			if a, b := l.pts[0], l.pts[1]; math.Abs(b.X-a.X-10) < 0.01 && (math.Abs(a.Y-up.y0) < 0.01 || math.Abs(a.Y-low.y0) < 0.01) && (b.X < up.x0 && up.x0-b.X < 2 || a.X > up.x1 && a.X-up.x1 < 2) {
				stops++
			}
		}
		if stops != 4 {
			t.Errorf("%d strokes at the stops", stops)
		}
		// The keep-out: an arrow at either end of a line from the middle of the mass; to scale where it has room.
		middle := (up.x0 + up.x1) / 2
		text := r.text(t, "nobody within "+say.Length(unit.Length(keep)).String())
		for _, l := range r.lines {
			a, b := l.pts[0], l.pts[1]
			if a.Y != b.Y || math.Abs(a.X-middle) > 0.01 || a.Y < floor+10 {
				continue
			}
			if end := middle + 1000*keep*one; end < r.w-12 {
				near(t, "keep-out", (b.X-a.X)/one, 1000*keep, 5)
			} else if b.X > r.w || b.X < r.w-20 {
				t.Errorf("a keep-out that has no room ends at %v of %v", b.X, r.w)
			}
			if text.y0 < a.Y || text.y0-a.Y > 10 {
				t.Errorf("%q stands %v under its line", text.text, text.y0-a.Y)
			}
		}
	}
}

// arrows are the points of the arrow heads: filled triangles of 7 units.
func arrows(r readBack) (out []Point) {
	for _, m := range looking(r.paths, "fill", ink) {
		if len(m.pts) == 3 {
			out = append(out, m.pts[0])
		}
	}
	return out
}

// Every dimension has an arrow at the height of each of its ends, and its text beside its line.
func TestDimensionsReadBack(t *testing.T) {
	s := Make(Plan{Hoist: hoist()})
	f := s.fit(viewLeft, viewTop, viewW, viewH)
	svg := drawn(t, func(b *strings.Builder) error { return SVG(s, b) })
	r := parse(t, svg)
	tips := arrows(r)
	for _, d := range s.Dims {
		text := d.Text
		if !strings.Contains(svg, ">"+text+"<") { // where there is no room, the number alone
			text = d.Short
		}
		x := r.text(t, text)
		ax, ay := f.p(d.From)
		bx, by := f.p(d.To)
		found := 0
		for _, p := range tips {
			if d.Upright && (math.Abs(p.Y-ay) < 0.02 || math.Abs(p.Y-by) < 0.02) && (math.Abs(p.X-x.x1) < 14 || math.Abs(p.X-x.x0) < 14) ||
				!d.Upright && (math.Abs(p.X-ax) < 0.02 || math.Abs(p.X-bx) < 0.02) && math.Abs(p.Y-x.y1) < 8 {
				found++
			}
		}
		if found < 2 {
			t.Errorf("%s: %d arrows", d.Text, found)
		}
		if gap := tips[0].X - x.x1; d.Upright && text == d.Text && !beside(tips, x, 1, 4) {
			t.Errorf("%s stands %v from its line", d.Text, gap)
		}
		if mid := (x.y0 + x.y1) / 2; d.Upright && math.Abs(mid-(ay+by)/2) > 4 {
			t.Errorf("%s stands at %v, its line from %v to %v", d.Text, mid, ay, by)
		}
	}
}

// beside reports whether a text ends so far before one of the points.
func beside(tips []Point, x textBox, least, most float64) bool {
	for _, p := range tips {
		if gap := p.X - x.x1; gap >= least && gap <= most {
			return true
		}
	}
	return false
}

// Where the rope turns round a wheel it lies on it: the middle of the arc that is drawn, worked out from its ends, its radius
// and its two flags as the SVG standard defines them (implementation notes, conversion from endpoint to centre), is the axis
// of a wheel.
func TestRopeLiesOnItsWheels(t *testing.T) {
	turned := 0 // neither half a turn nor none, where the flags do not matter
	for _, angle := range []float64{0.2, 0.7} {
		for lead := 1; lead <= 3; lead++ {
			h := hoist()
			h.Reeving.LeadSheaves, h.Reeving.Sheaves[0].OnBase = unit.Of(unit.Count(lead)), "no"
			h.Structure.LeadAngle = unit.Of(unit.Angle(angle))
			turned += arcsOnWheels(t, h)
		}
	}
	if turned < 6 {
		t.Errorf("%d arcs that are not half a turn", turned)
	}
}

// arcsOnWheels checks every arc of a picture, and counts those that are not half a turn.
func arcsOnWheels(t *testing.T, h lift.Hoist) (turned int) {
	t.Helper()
	s := Make(Plan{Hoist: h})
	f := s.fit(viewLeft, viewTop, viewW, viewH)
	svg := drawn(t, func(b *strings.Builder) error { return SVG(s, b) })
	arcs := regexp.MustCompile(`d="M(\S+) (\S+)A(\S+) \S+ 0 ([01]) ([01]) (\S+) ([^"]+)"`).FindAllStringSubmatch(svg, -1)
	for _, a := range arcs {
		n := func(i int) float64 {
			v, err := strconv.ParseFloat(a[i], 64)
			if err != nil {
				t.Fatal(err)
			}
			return v
		}
		x0, y0, r, x1, y1 := n(1), n(2), n(3), n(6), n(7)
		if y0 > detailY {
			continue // the detail has another scale
		}
		d2 := (x1-x0)*(x1-x0) + (y1-y0)*(y1-y0)
		if r*r/d2 > 0.3 {
			turned++
		}
		k := math.Sqrt(math.Max(0, r*r/d2-0.25))
		if a[4] == a[5] {
			k = -k
		}
		cx, cy := (x0+x1)/2-k*(y1-y0), (y0+y1)/2+k*(x1-x0)
		on := false
		for _, w := range s.Wheels {
			wx, wy := f.p(w.C)
			on = on || math.Hypot(cx-wx, cy-wy) < 0.3
		}
		if !on {
			t.Errorf("an arc round %v, %v, where no wheel is", cx, cy)
		}
	}
	return turned
}

// The detail is to a scale of its own: by the drum of 80 mm, its rope line 4 mm further out, the hole 44 mm from its axis
// and the foot pulley 49 mm on, each between two arrows under it, each with a line to its name.
func TestDetailReadBack(t *testing.T) {
	r := parse(t, drawn(t, func(b *strings.Builder) error { return SVG(Make(Plan{Hoist: hoist()}), b) }))
	var wheels []mark
	for _, c := range r.circles {
		if c.pts[0].Y > detailY && c.r > 3 {
			wheels = append(wheels, c)
		}
	}
	if len(wheels) != 4 { // drum, flange, rope line; foot pulley
		t.Fatalf("%d circles", len(wheels))
	}
	drum, flange, line, foot := wheels[0], wheels[1], wheels[2], wheels[3]
	one := drum.r / 40
	near(t, "flange", flange.r/one, 70, 0.1)
	near(t, "rope line", line.r/one, 44, 0.1)
	near(t, "foot pulley", foot.r/one, 45, 0.1)
	near(t, "drum – hole – foot pulley", (foot.pts[0].X-drum.pts[0].X)/one, 44+49, 0.1)
	middle := (drum.pts[0].X - flange.r + foot.pts[0].X + foot.r) / 2
	if math.Abs(middle-r.w/2) > 25 {
		t.Errorf("the detail stands at %v of %v", middle, r.w)
	}
	var tips []Point
	for _, p := range arrows(r) {
		if p.Y > foot.pts[0].Y+foot.r {
			tips = append(tips, p)
		}
	}
	if len(tips) != 4 {
		t.Fatalf("%d arrows under the detail", len(tips))
	}
	near(t, "drum – hole", (tips[1].X-tips[0].X)/one, 44, 0.1)
	near(t, "hole – foot pulley", (tips[3].X-tips[2].X)/one, 49, 0.1)
	near(t, "under the drum", tips[0].X, drum.pts[0].X, 0.01)
	for name, at := range map[string]mark{"drum ⌀ 80\u00a0mm": drum, "pulley ⌀ 90\u00a0mm": foot} {
		x := r.text(t, name)
		mid := (x.y0 + x.y1 - 0.1*x.size) / 2
		led := false
		for _, l := range r.lines {
			a, b := l.pts[0], l.pts[1]
			if math.Abs(math.Hypot(a.X-at.pts[0].X, a.Y-at.pts[0].Y)-at.r) < 0.02 && math.Abs(b.Y-mid) < 1 && b.X < x.x0 {
				led = true
			}
		}
		if !led {
			t.Errorf("no line from the rim to %q", name)
		}
	}
	r.text(t, "rope ⌀ 8\u00a0mm")
}

// Where there is room for the scene it is centred in it and stands on the ground; where it is cut, the mass stays at least
// 20 units small, the smallest that is drawn.
func TestFitByHand(t *testing.T) {
	for _, travel := range []float64{1000, 3800, 20000, 80000} {
		h := hoist()
		h.Travel, h.Structure.HeadHeight = of(travel), unit.Known[unit.Length]{}
		s := Make(Plan{Hoist: h})
		f := s.fit(10, 20, 200, 300)
		b := s.bounds()
		near(t, "ground", f.y(b.Y0), 320, 1e-9)
		near(t, "centred", (f.x(b.X0)+f.x(b.X1))/2, 110, 1e-6)
		if f.x(b.X0) < 10-1e-6 || f.y(b.Y1) < 20-1e-6 {
			t.Errorf("travel %v runs out: left %v, top %v", travel, f.x(b.X0), f.y(b.Y1))
		}
		if f.x(b.X0) > 10+1e-6 && f.y(b.Y1) > 20+1e-6 {
			t.Errorf("travel %v leaves room on both sides: left %v, top %v", travel, f.x(b.X0), f.y(b.Y1))
		}
		if f.cutTo > f.cutFrom {
			if got := f.scale * (s.Mass.X1 - s.Mass.X0); math.Abs(got-20) > 1e-6 && f.x(b.X0) > 10+1e-6 && f.cutTo-f.cutFrom < s.Travel*0.5 {
				t.Errorf("travel %v: the mass is drawn %v wide", travel, got)
			}
			if f.cutFrom < s.baseTop() || f.cutFrom < s.Mass.Y1-s.Travel || f.cutTo > s.Mass.Y0 {
				t.Errorf("travel %v: cut from %v to %v, through what is not empty", travel, f.cutFrom, f.cutTo)
			}
		} else if travel == 80000 {
			t.Error("80 m are not cut")
		}
	}
}
