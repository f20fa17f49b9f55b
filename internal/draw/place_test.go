package draw

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Each reason of the judge is marked where its thing stands: a height under the top pulley, a drive at the drum, a stop at the
// pulley, people on the ground under the mass. What is not refused, and what has no place, is not marked; each sentence once.
func TestMarksStandAtTheirThing(t *testing.T) {
	h := hoist()
	s := Make(Plan{Hoist: h})
	drum, head, mid := s.Wheels[0].C, s.Wheels[s.Head].C, (s.Mass.X0+s.Mass.X1)/2
	right := s.Posts[len(s.Posts)-1]
	for _, c := range []struct {
		id, path string
		want     Point
	}{
		{"geometry_drive", "", drum}, {"holds_count", "", drum}, {"never_lifts", "", drum}, {"free_drum", "holds.x", drum}, {"overspeed", "site.people", Point{mid, 0}}, {"stops", "", head}, {"overhoist", "", head},
		{"people_below", "", Point{mid, 0}}, {"geometry_height", "", Point{mid, (s.Mass.Y1 + head.Y) / 2}}, {"geometry_posts", "", Point{(right.X0 + right.X1) / 2, right.Y1}}, {"bracing", "", Point{(right.X0 + right.X1) / 2, right.Y1}},
		{"contradiction", "stores[0].hoist.site.frame_height_m", Point{(s.Beam.X0 + s.Beam.X1) / 2, s.Beam.Y0}},
		{"geometry_rope", "", Point{(s.Legs[0].From.X + s.Legs[0].To.X) / 2, (s.Legs[0].From.Y + s.Legs[0].To.Y) / 2}},
	} {
		r := reason.Reason{ID: c.id, Path: c.path, Word: reason.No, Say: say.Words("Said.")}
		marks := Make(Plan{Hoist: h, Because: []reason.Reason{r, r}}).Marks
		if len(marks) != 1 || math.Hypot(marks[0].At.X-c.want.X, marks[0].At.Y-c.want.Y) > 1e-9 || marks[0].Say != "Said." {
			t.Errorf("%s: %v, want it at %v", c.id, marks, c.want)
		}
		r.Word = reason.NotKnown
		if marks := Make(Plan{Hoist: h, Because: []reason.Reason{r}}).Marks; len(marks) != 0 {
			t.Errorf("%s is marked, and nobody knows it", c.id)
		}
	}
	for _, id := range []string{"contradiction", "not_a_reason"} {
		if marks := Make(Plan{Hoist: h, Because: []reason.Reason{{ID: id, Word: reason.No, Say: say.Words("Said.")}}}).Marks; len(marks) != 0 {
			t.Errorf("%s is marked at %v", id, marks)
		}
	}
	// The side of the mass that is nearer to its post.
	for _, off := range []float64{-200, 200} {
		h := hoist()
		h.Structure.Beam.From = of(1300 + off) // from the right support
		s := Make(Plan{Hoist: h, Because: []reason.Reason{{ID: "geometry_width", Word: reason.No, Say: say.Words("Said.")}}})
		want := s.Mass.X1
		if off > 0 {
			want = s.Mass.X0
		}
		if len(s.Posts) != 2 || len(s.Marks) != 1 || s.Marks[0].At.X != want {
			t.Errorf("%g mm to the left: %v, want %g", off, s.Marks, want)
		}
	}
}

// Sizes that nobody gave, by hand: a beam of 140 mm, clear of the pulley by 40 mm or 0.4 of a large one's radius; posts of
// 100 mm, clear of the mass by their own width and 80 mm or 0.12 of the width of a wide one; all of it our own judgement.
func TestSizesByHand(t *testing.T) {
	h := hoist()
	h.Structure.Beam, h.Structure.Posts = lift.Beam{}, nil
	head := func(s Scene) float64 { return s.Wheels[s.Head].C.Y + s.Wheels[s.Head].R }
	s := Make(Plan{Hoist: h})
	near(t, "a beam", s.Beam.Y1-s.Beam.Y0, 140, 1e-9)
	near(t, "over the pulley", s.Beam.Y0-head(s), 40, 1e-9)
	near(t, "a post", s.Posts[1].X1-s.Posts[1].X0, 100, 1e-9)
	near(t, "beside the mass of 0.15 m³, a cube of 0.531 m", s.Posts[1].X0-s.Mass.X1, 80+100, 1e-9)
	h.Structure.Beam.Width, h.Reeving.Sheaves[1].Diameter, h.Site.LoadWidth = of(180), of(250), of(1000)
	s = Make(Plan{Hoist: h})
	near(t, "as deep as wide", s.Beam.Y1-s.Beam.Y0, 180, 1e-9)
	near(t, "over a pulley of 250 mm with a rope of 8", s.Beam.Y0-head(s), 0.4*129, 1e-9)
	near(t, "beside a mass of a metre", s.Posts[1].X0-s.Mass.X1, 120+100, 1e-9)
	h.Structure.Beam.Depth = of(220)
	near(t, "as deep as told", Make(Plan{Hoist: h}).Beam.Y1-Make(Plan{Hoist: h}).Beam.Y0, 220, 1e-9)
}

// All wheels lie inside of what the picture is fitted to, and so do posts, beam, base and the way of the mass.
func TestBoundsHoldAll(t *testing.T) {
	standing(t, func(name string, h lift.Hoist, s Scene) {
		b := s.bounds()
		in := func(what string, r Rect) {
			if r.X0 < b.X0-1e-9 || r.X1 > b.X1+1e-9 || r.Y1 > b.Y1+1e-9 {
				t.Errorf("%s: %s %v lies outside of %v", name, what, r, b)
			}
		}
		for _, w := range s.Wheels {
			in(w.Name, Rect{w.C.X - w.R, w.C.Y - w.R, w.C.X + w.R, w.C.Y + w.R})
		}
		for _, list := range [][]Rect{s.Posts, s.Weights, {s.Beam, s.Mass}} {
			for _, r := range list {
				in("a part", r)
			}
		}
		if s.HasBase {
			in("the board", s.Board)
		}
		if drum := s.Wheels[0]; s.HasBase && drum.Place == "base" && len(s.Stand) == 2 {
			near(t, name+": bearings under the flanges", s.Stand[1].To.X-s.Stand[0].To.X, 0.9*s.Flange, 1e-6)
			near(t, name+": as far to both sides", s.Stand[0].To.X+s.Stand[1].To.X, 2*drum.C.X, 1e-6)
		}
	})
}

// Where a piece of the height is cut out nothing solid is drawn between the two edges: posts and rope end at them, on both
// sides, at the same places across.
func TestCutLeavesAGap(t *testing.T) {
	h := hoist()
	h.Travel, h.Structure.HeadHeight = of(40000), unit.Known[unit.Length]{}
	s := Make(Plan{Hoist: h})
	f := s.fit(viewLeft, viewTop, viewW, viewH)
	lo, hi := f.y(f.cutFrom), f.y(f.cutTo) // lower and upper edge on the paper
	if lo-hi < 10 || lo-hi > 20 {
		t.Fatalf("a gap from %g to %g", lo, hi)
	}
	below, above := map[string]int{}, map[string]int{}
	for _, s := range flatten(t, drawn(t, func(b *strings.Builder) error { return SVG(s, b) })).shapes {
		if w := s.look["stroke-width"]; w != "1.6" && w != "1.9" || s.look["stroke-dasharray"] != "" {
			continue
		}
		s.edges(func(a, b Point) {
			if (a.Y > lo+0.01) != (b.Y > lo+0.01) && (a.Y < hi-0.01) != (b.Y < hi-0.01) && s.of != "rect" && !s.shut {
				t.Errorf("a stroke from %v to %v crosses the gap", a, b)
			}
			for _, p := range []Point{a, b} {
				at := fmt.Sprintf("%.1f", p.X)
				if math.Abs(p.Y-lo) < 0.02 {
					below[at]++
				}
				if math.Abs(p.Y-hi) < 0.02 {
					above[at]++
				}
			}
		})
	}
	if len(below) < 5 || len(below) != len(above) { // four sides of two posts, and the rope
		t.Errorf("strokes end below at %v, above at %v", below, above)
	}
	posts := 0
	for at := range below {
		if above[at] > 0 {
			posts++
		}
	}
	if posts < 4 {
		t.Errorf("%d sides of posts go on above: %v, %v", posts, below, above)
	}
}

// A spot without words has its name alone, in the middle of its height; with words the name stands over them.
func TestWordsOfASpot(t *testing.T) {
	spot := func(subs ...string) string {
		return drawn(t, func(b *strings.Builder) error {
			p := openTouch(b, 300, 100, "x")
			p.spot(placed{Spot: Spot{ID: "a", Name: "Drum", Subs: subs, Href: "#", Word: path.Holds}, box: box{10, 20, 160, 20 + spotHigh}})
			return p.close()
		})
	}
	text := regexp.MustCompile(`<text class="(\w+)" x="([\d.]+)" y="([\d.]+)">([^<]*)<`)
	alone := text.FindAllStringSubmatch(spot(), -1)
	if len(alone) != 1 || alone[0][4] != "Drum" || alone[0][3] != "43" { // the middle of 20 to 58, and half a letter
		t.Errorf("%v", alone)
	}
	both := text.FindAllStringSubmatch(spot("80 mm"), -1)
	if len(both) != 2 || both[0][4] != "Drum" || both[1][4] != "80 mm" || both[0][2] != both[1][2] {
		t.Fatalf("%v", both)
	}
	y := numbers(t, []string{both[0][3], both[1][3]})
	if y[1]-y[0] < 11 || y[0] < 20+9 || y[1] > 58-3 {
		t.Errorf("two lines at %v in a box from 20 to 58", y)
	}
	if long := spot(strings.Repeat("wide ", 20), "short"); !strings.Contains(long, ">short<") || strings.Contains(long, ">wide") {
		t.Error("the words that fit are not taken")
	}
}

// A battery's picture by its circuit: the fuse lies in the line's wire, whose ends meet it above and below; what flows stands under
// the line, its name over it; the volts in the controller's window; the distance beside the fuse's wire.
func TestBatteryWires(t *testing.T) {
	s := BatterySketch{Blocks: 4, Panels: 2, Lamps: true, Volts: "12.8 V", Line: "the 12.8 V line", Flow: "sun 7.8 A", Row: "2 in a row", Near: "10 cm"}
	svg := drawn(t, func(b *strings.Builder) error { return s.Draw(b) })
	p := flatten(t, svg)
	var fuse box
	var wires []shape
	for _, s := range p.shapes {
		b := s.bounds()
		if s.of == "rect" && b.x1-b.x0 == 22 {
			fuse = b
		}
		if s.look["stroke-width"] == "1.6" && len(s.pts) == 2 && b.x0 == b.x1 && b.x0 > 450 && b.x0 < 480 {
			wires = append(wires, s)
		}
	}
	if len(wires) != 2 || wires[0].bounds().y0 != fuse.y1 || wires[1].bounds().y1 != fuse.y0 || (fuse.x0+fuse.x1)/2 != wires[0].pts[0].X || wires[1].bounds().y0 != lineY {
		t.Errorf("wires %v, the fuse %v, the line at %g", wires, fuse, lineY)
	}
	at := map[string][2]float64{}
	for _, m := range freeText.FindAllStringSubmatch(svg, -1) {
		v := numbers(t, m[1:3])
		at[m[4]] = [2]float64{v[0], v[1]}
	}
	for text, want := range map[string]box{"12.8 V": {358, 173, 414, 191}, "the 12.8 V line": {436, lineY - 14, 812, lineY}, "sun 7.8 A": {436, lineY + 9, 812, backY}, "10 cm": {300, fuse.y1, 436, 318}, "2 in a row": {60, 40, 250, 90}} {
		p, ok := at[text]
		if !ok || p[0] < want.x0 || p[0] > want.x1 || p[1] < want.y0+2 || p[1] > want.y1 {
			t.Errorf("%q stands at %v, want it in %v", text, p, want)
		}
	}
}

// The picture that can be touched: the arrow of the travel goes from the lower edge of the mass above to that below, its points
// outward, and its number stands beside its middle.
func TestTravelArrow(t *testing.T) {
	s := Make(Plan{Hoist: hoist()})
	svg := drawn(t, func(b *strings.Builder) error { return Touch(s, nil, b) })
	r := parse(t, svg)
	line := looking(r.lines, "class", "dim")
	var heads []mark
	for _, m := range looking(r.paths, "fill", ink) {
		if len(m.pts) == 3 {
			heads = append(heads, m)
		}
	}
	if len(line) != 1 || len(heads) != 2 {
		t.Fatalf("%d lines, %d heads", len(line), len(heads))
	}
	a, b := line[0].pts[0], line[0].pts[1]
	for i, end := range []Point{a, b} {
		h := heads[i]
		near(t, "its point", math.Hypot(h.pts[0].X-end.X, h.pts[0].Y-end.Y), 0, 0.02)
		for _, p := range h.pts[1:] {
			if p.Y < math.Min(a.Y, b.Y) || p.Y > math.Max(a.Y, b.Y) {
				t.Errorf("a head at %v points inward", h.pts)
			}
			near(t, "a head of 7", math.Abs(p.Y-end.Y), 7, 0.02)
		}
	}
	m := regexp.MustCompile(`<text class="d" text-anchor="middle" x="([\d.]+)" y="([\d.]+)" transform="rotate\(-90 ([\d.]+) ([\d.]+)\)">travel`).FindStringSubmatch(svg)
	if m == nil {
		t.Fatal("the travel is not told")
	}
	v := numbers(t, m[1:])
	near(t, "beside its middle", v[1], (a.Y+b.Y)/2, 0.02)
	if v[0] != v[2] || v[1] != v[3] || a.X-v[0] < 3 || a.X-v[0] > 6 {
		t.Errorf("the number at %v, its line at %g", v, a.X)
	}
}

// Small things: the lamp of the house is the same on both sides; hair lines of a span at each quarter, from edge to edge like the
// line of the usual; the numbers of a scale under their lines on its paper; a text that is exactly as wide as its room stays.
func TestSmallPlaces(t *testing.T) {
	p := flatten(t, House())
	for _, s := range p.shapes {
		if b := s.bounds(); len(s.pts) == 4 && s.shut && s.of == "path" && b.y0 > 200 && b.x0 > 180 && b.x1 < 330 {
			near(t, "a side of the lamp", s.pts[0].X+s.pts[1].X, 510, 1e-9)
			near(t, "a side of the lamp", s.pts[2].X+s.pts[3].X, 510, 1e-9)
			if math.Abs(s.pts[0].Y-s.pts[1].Y)+math.Abs(s.pts[2].Y-s.pts[3].Y) > 1e-9 || s.pts[1].X-s.pts[0].X > s.pts[2].X-s.pts[3].X {
				t.Errorf("the lamp is %v", s.pts)
			}
		}
	}
	for _, known := range []bool{false, true} {
		r := parse(t, Span{Low: 100, Usual: 200, High: 300, Top: 400, Limit: 350, Known: known}.Draw())
		for i, want := range []float64{0.5, 50.5, 100.5, 150.5, 199.5} {
			l := r.lines[i]
			if l.pts[0] != (Point{want, 0}) || l.pts[1] != (Point{want, 22}) {
				t.Errorf("hair line %d goes from %v to %v", i, l.pts[0], l.pts[1])
			}
		}
		if known {
			for i, want := range []float64{100, 175} {
				l := r.lines[5+i]
				if l.pts[0] != (Point{want, 0}) || l.pts[1] != (Point{want, 22}) {
					t.Errorf("line %d goes from %v to %v", i, l.pts[0], l.pts[1])
				}
			}
			for _, m := range r.rects {
				if b := m.bounds(); b.y0 != 3 || b.y1 != 19 {
					t.Errorf("a bar from %g to %g of 22", b.y0, b.y1)
				}
			}
		}
	}
	svg := drawn(t, func(b *strings.Builder) error {
		return Scale{Unit: "A", Title: "x", Flows: []ScaleMark{{Say: "7.8 A", Value: 7.8, Look: "sun"}, {Say: "39 A", Value: 39, Look: "night"}}, Ends: []ScaleMark{{Say: "15 A", Value: 15}}}.Draw(b)
	})
	pic := flatten(t, svg)
	floor := 0.0
	for _, s := range pic.shapes {
		if b := s.bounds(); s.of == "line" && b.y0 == b.y1 {
			floor = b.y0
		}
		if b := s.bounds(); b.y1 > pic.paper.y1 || b.x1 > pic.paper.x1 {
			t.Errorf("%v leaves the paper", b)
		}
	}
	for _, m := range regexp.MustCompile(`<text x="[\d.]+" y="([\d.]+)" text-anchor="middle">\d`).FindAllStringSubmatch(svg, -1) {
		if y := numbers(t, m[1:])[0]; y < floor+10 || y > pic.paper.y1-2 {
			t.Errorf("a number at %g, the axis at %g, the paper ends at %g", y, floor, pic.paper.y1)
		}
	}
	if w := TextWidth("drum – hole 300 mm", small); whole("drum – hole 300 mm", "300 mm", w) != "drum – hole 300 mm" || whole("drum – hole 300 mm", "300 mm", w-0.01) != "300 mm" {
		t.Error("a text as wide as its room is not whole, or one that is wider is")
	}
	for off, colour := range map[float64]string{1.099: ink, 1.101: failColour, 0.901: ink, 0.899: failColour} {
		if s := Beside(off); strings.Contains(s, failColour) != (colour == failColour) {
			t.Errorf("%g of what was planned has the wrong colour", off)
		}
	}
	for _, ratio := range []float64{0.85, 1, 1.15} {
		r := parse(t, Beside(ratio))
		b := r.rects[1].bounds()
		near(t, "a measured value", (b.x0+b.x1)/2, 50+(ratio-1)*200, 0.01)
		near(t, "the planned one in the middle of its field", r.rects[0].bounds().x0+r.rects[0].bounds().x1, 100, 0.01)
		last := r.lines[len(r.lines)-1]
		near(t, "joined to the middle", last.pts[0].X, 50, 0.01)
		near(t, "joined to the value", last.pts[1].X, (b.x0+b.x1)/2, 0.01)
	}
}

// Where nothing stays on the motor for good its box on the sheet is crossed out, from corner to corner.
func TestShuntIsCrossedOut(t *testing.T) {
	for _, shunt := range []bool{false, true} {
		svg := drawn(t, func(b *strings.Builder) error {
			p := open(b, "x", 100, 100, "x", "")
			p.motor(40, 40, shunt)
			return p.close()
		})
		p := flatten(t, svg)
		var shunts box
		var strokes []shape
		for _, s := range p.shapes {
			if s.of == "rect" {
				shunts = s.bounds()
			}
			if s.of == "path" && len(s.pts) == 2 {
				strokes = append(strokes, s)
			}
		}
		if want := map[bool]int{false: 2, true: 0}[shunt]; len(strokes) != want {
			t.Errorf("shunt %v: %d strokes", shunt, len(strokes))
		}
		for _, s := range strokes {
			b := s.bounds()
			near(t, "from the top", b.y0, shunts.y0, 0.01)
			near(t, "to the bottom", b.y1, shunts.y1, 0.01)
			near(t, "in the middle", b.x0+b.x1, shunts.x0+shunts.x1, 0.01)
			if b.x0 < shunts.x0 || b.x1 > shunts.x1 || b.x1-b.x0 < 6 {
				t.Errorf("a stroke %v of the box %v", b, shunts)
			}
		}
		// The wire goes out of the motor's side, down through the box, and back into its foot.
		for _, s := range p.shapes {
			if s.of == "path" && len(s.pts) == 5 {
				want := []Point{{53, 40}, {72, 40}, {72, 58}, {40, 58}, {40, 53}}
				for i, at := range s.pts {
					near(t, "the wire", math.Hypot(at.X-want[i].X, at.Y-want[i].Y), 0, 1e-9)
				}
			}
		}
	}
}
