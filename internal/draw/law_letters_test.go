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
)

// lies reports whether a stroke goes through a box.
func (s shape) lies(b box) bool {
	frame := shape{pts: []Point{{b.x0, b.y0}, {b.x1, b.y0}, {b.x1, b.y1}, {b.x0, b.y1}}, shut: true}
	hit := false
	for _, p := range s.pts {
		hit = hit || frame.holds(p)
	}
	side := func(a, b, p Point) float64 { return (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X) }
	s.edges(func(c, d Point) {
		frame.edges(func(a, b Point) {
			hit = hit || side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
		})
	})
	return hit
}

// lettersFree finds letters of a picture that lie on a stroke, on other letters or outside of the paper. Centre lines, thin and
// dashed, may run under them, and so may anything under letters with a halo.
func lettersFree(t *testing.T, name, svg string) {
	t.Helper()
	p, texts := flatten(t, svg), parse(t, svg).texts
	for i, x := range texts {
		if x.text == "A" || strings.HasPrefix(x.text, "span") && strings.Contains(svg, `class="halo"`) {
			continue
		}
		if x.x0 < 0 || x.y0 < 0 || x.x1 > p.paper.x1+0.01 || x.y1 > p.paper.y1+0.01 {
			t.Errorf("%s: %q leaves the paper", name, x.text)
		}
		for _, s := range p.shapes {
			if s.look["stroke-dasharray"] == "" && s.lies(box{x.x0 + 1.5, x.y0 + 1.5, x.x1 - 1.5, x.y1 - 1.5}) {
				t.Errorf("%s: %q at %v lies on a %s, %v", name, x.text, x.box, s.of, s.bounds())
			}
		}
		for _, o := range texts[:i] {
			if x.meets(o.box) {
				t.Errorf("%s: %q lies on %q", name, x.text, o.text)
			}
		}
	}
}

// No letters of a hoist lie on a stroke, whatever its reeving, its base, its travel and what gives way, and none on the plan
// sheet.
func TestLettersLieOnNothing(t *testing.T) {
	n := 0
	standing(t, func(name string, h lift.Hoist, s Scene) {
		if n++; n%5 != 0 {
			return
		}
		p := Plan{Hoist: h, KeepOut: unit.Of(unit.Length(1 + n%3))}
		if n%2 == 0 {
			for _, id := range []string{"rope", "post", "redirect_sheave"} {
				p.Checks = append(p.Checks, path.Check{ID: id, Word: path.GivesWay})
			}
		}
		if n%3 == 0 {
			p.Hoist.Travel, p.Hoist.Structure.HeadHeight = of(1500), of(3200)
		}
		lettersFree(t, name, drawn(t, func(b *strings.Builder) error { return SVG(Make(p), b) }))
	})
	for name, svg := range sketches(t) {
		if strings.HasPrefix(name, "paper") {
			lettersFree(t, name, svg)
		}
	}
}

// Ground is hatched from one end to the other, in equal steps: each stroke hangs at the line, to the left and down.
func TestGroundIsHatched(t *testing.T) {
	seen := map[string]bool{}
	for name, svg := range sketches(t) {
		sort := strings.Fields(name)[0]
		if sort != "battery" && sort != "hung" && sort != "trip" && sort != "hoist" && sort != "touch" && sort != "paper" {
			continue
		}
		p := flatten(t, svg)
		var line shape
		for _, s := range p.shapes {
			if b := s.bounds(); s.of == "line" && b.y0 == b.y1 && b.x1-b.x0 > 0.35*(p.paper.x1-p.paper.x0) && (s.look["stroke-width"] == "1.6" || sort == "hung") && (len(line.pts) == 0 || b.y0 > line.pts[0].Y) {
				line = s
			}
		}
		if len(line.pts) == 0 {
			t.Fatalf("%s: no ground", name)
		}
		var at []float64
		for _, s := range p.shapes {
			if s.of != "line" || s.look["stroke-width"] > "0.7" || s.look["class"] != "" || math.Abs(s.pts[0].Y-line.pts[0].Y) > 0.01 {
				continue
			}
			if dx, dy := s.pts[1].X-s.pts[0].X, s.pts[1].Y-s.pts[0].Y; dx < -3 && dx > -8 && dy > 4 && dy < 9 {
				at = append(at, s.pts[0].X)
			}
		}
		if len(at) < 4 {
			t.Fatalf("%s: %d strokes", name, len(at))
		}
		step := at[1] - at[0]
		for i := range at[1:] {
			near(t, name+": equal steps", at[i+1]-at[i], step, 0.02)
		}
		end := line.pts[1].X
		if sort == "battery" { // as far as the house
			end = 286
		}
		if step < 6 || step > 20 || at[0]-line.pts[0].X > step || at[0] < line.pts[0].X || end-at[len(at)-1] > step+8 || at[len(at)-1] > line.pts[1].X {
			t.Errorf("%s: strokes from %g to %g by %g under a ground from %g to %g", name, at[0], at[len(at)-1], step, line.pts[0].X, end)
		}
		seen[sort] = true
	}
	if len(seen) != 6 {
		t.Errorf("seen: %v", seen)
	}
}

// Turns of rope lie on their drum: straight down from edge to edge, in equal steps, three or more; seams part a panel, cuts a
// battery and lines a motor in the same way.
func TestTurnsLieOnTheirDrum(t *testing.T) {
	for name, most := range map[string]int{"shelf drums": 4, "shelf ropes": 8, "shelf motors": 5, "chain 1 false 1": 3, "drive 2": 5, "battery 4": 3} {
		class := map[string]string{"shelf motors": "thin", "drive 2": "ropel", "battery 4": "cellcut"}[name]
		if class == "" {
			class = "rope"
		}
		p := flatten(t, sketches(t)[name])
		var at []float64
		var span box
		for _, s := range p.shapes {
			if b := s.bounds(); s.look["class"] == class && s.of == "line" && b.x0 == b.x1 {
				at, span = append(at, b.x0), b
			}
		}
		if len(at) != most {
			t.Errorf("%s: %d turns, want %d", name, len(at), most)
			continue
		}
		on := false
		for _, s := range p.shapes {
			b := s.bounds()
			room := math.Min(at[0]-b.x0, b.x1-at[len(at)-1])
			on = on || s.of == "rect" && math.Abs(b.y0-span.y0) < 0.01 && math.Abs(b.y1-span.y1) < 0.01 && room > 0
		}
		if !on {
			t.Errorf("%s: turns from %g to %g, %v, on nothing as high", name, at[0], at[len(at)-1], span)
		}
		for i := range at[2:] {
			near(t, name+": equal steps", at[i+2]-at[i+1], at[1]-at[0], 0.02)
		}
	}
}

// The scale bar of the sheet tells the scale: at 1 : 50 a metre is 20 mm, 64 units of 3.2 a millimetre.
func TestScaleBar(t *testing.T) {
	svg := sketches(t)["paper 0"]
	m := regexp.MustCompile(`scale 1 : ([\d.]+)`).FindStringSubmatch(svg)
	if m == nil {
		t.Fatal("no scale")
	}
	n, err := strconv.ParseFloat(m[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	r := parse(t, svg)
	bar := looking(r.lines, "class", "scale-bar")[0]
	wide := bar.pts[1].X - bar.pts[0].X
	var said textBox
	for _, x := range r.texts {
		if x.x0 > bar.pts[1].X && x.x0 < bar.pts[1].X+8 && math.Abs(x.y1-bar.pts[0].Y) < 8 {
			said = x
		}
	}
	number, in, _ := strings.Cut(said.text, "\u00a0")
	v, err := strconv.ParseFloat(number, 64)
	if in == "mm" {
		v /= 1000
	}
	if err != nil || in != "m" && in != "mm" {
		t.Fatalf("%q beside the bar", said.text)
	}
	near(t, "the bar, mm of paper", wide/3.2, v*1000/n, 0.02)
	if wide < 12 {
		t.Errorf("a bar of %g, where a longer round one has room", wide)
	}
	ends := 0
	for _, l := range r.lines {
		if a, b := l.pts[0], l.pts[1]; a.X == b.X && a.Y < bar.pts[0].Y && b.Y > bar.pts[0].Y && b.Y-a.Y < 12 && (math.Abs(a.X-bar.pts[0].X) < 0.01 || math.Abs(a.X-bar.pts[1].X) < 0.01) {
			ends++
		}
	}
	if ends != 2 {
		t.Errorf("%d ends of the bar", ends)
	}
}

// The two boxes of the sheet hold their letters, line under line under the picture, and stand one under the other.
func TestBoxesHoldTheirLetters(t *testing.T) {
	for name, svg := range sketches(t) {
		if !strings.HasPrefix(name, "paper") {
			continue
		}
		r := parse(t, svg)
		var boxes []box
		for _, m := range r.rects {
			if b := m.bounds(); math.Abs(b.x1-b.x0-boxWide) < 0.02 {
				boxes = append(boxes, b)
			}
		}
		if len(boxes) != 2 || boxes[0].y1 > boxes[1].y0 || boxes[0].x1 > r.w || boxes[1].y1 > r.h {
			t.Fatalf("%s: boxes at %v", name, boxes)
		}
		for i, words := range [][]string{{"A, larger, not to scale", "motor", "gears"}, {"One switch, centre off", "off", "M", "Panel", "24 V", "Lamps", "11.7 V", "fuse"}} {
			at := map[string]textBox{}
			for _, w := range words {
				x := r.text(t, w)
				at[w] = x
				if b := boxes[i]; x.x0 < b.x0+2 || x.x1 > b.x1-2 || x.y0 < b.y0+2 || x.y1 > b.y1-1 {
					t.Errorf("%s: %q at %v leaves its box %v", name, w, x.box, b)
				}
			}
			if i == 0 {
				near(t, "line under line", at["gears"].y1-at["motor"].y1, 10.6, 0.02)
				if gap := boxes[0].y1 - at["gears"].y1; gap > 12 {
					t.Errorf("%s: %g free under the last line", name, gap)
				}
			} else {
				near(t, "line under line", at["24 V"].y1-at["Panel"].y1, 10.6, 0.02)
				near(t, "by day and by night", at["Lamps"].y1, at["Panel"].y1, 0.02)
				if gap := boxes[1].y1 - at["fuse"].y1; gap > 12 || at["fuse"].y0 < at["24 V"].y1+10 {
					t.Errorf("%s: the lines begin at %v, %g free under them", name, at["fuse"].box, gap)
				}
			}
		}
		// The switch: three contacts on its ring, left, right and above, and the motor under it.
		var ring, motor mark
		for _, c := range r.circles {
			if c.r == 16 {
				ring = c
			}
			if c.r == 13 {
				motor = c
			}
		}
		var contacts []string
		for _, c := range looking(r.circles, "fill", ink) {
			if c.r == 2.4 {
				contacts = append(contacts, fmt.Sprintf("%.0f %.0f", c.pts[0].X-ring.pts[0].X, c.pts[0].Y-ring.pts[0].Y))
			}
		}
		if strings.Join(contacts, ", ") != "-16 0, 16 0, 0 -16" || motor.pts[0].X != ring.pts[0].X || motor.pts[0].Y-motor.r < ring.pts[0].Y+ring.r {
			t.Errorf("%s: ring %v, motor %v, contacts %v", name, ring, motor, contacts)
		}
		if off := r.text(t, "off"); math.Abs((off.x0+off.x1)/2-ring.pts[0].X) > 0.1 || off.y1 > ring.pts[0].Y-16 {
			t.Errorf("%s: off stands at %v", name, off.box)
		}
		lamps := 0
		for _, c := range r.circles {
			if c.r == 6 && c.pts[0].Y == ring.pts[0].Y && c.pts[0].X > ring.pts[0].X+16 && c.pts[0].X+6 < boxes[1].x1 {
				lamps++
			}
		}
		if lamps != 3 {
			t.Errorf("%s: %d lamps beside the switch", name, lamps)
		}
	}
}

// A trip moves as the ropes do: the mass goes from stop to stop, the drum turns by the rope that it takes, and each line that
// grows does so at its lower end, which hangs at the mass.
func TestTripMoves(t *testing.T) {
	for parts := 1; parts <= 3; parts++ {
		h := hoist()
		h.Reeving.RopeParts = unit.Of(unit.Count(parts))
		s := Make(Plan{Hoist: h})
		svg := drawn(t, func(b *strings.Builder) error { return Trip{s}.Draw(b) })
		r := parse(t, svg)
		value := func(name string) float64 {
			m := regexp.MustCompile(name + `="([-\d.]+)"`).FindStringSubmatch(svg)
			if m == nil {
				t.Fatalf("no %s", name)
			}
			return numbers(t, m[1:])[0]
		}
		stops := looking(r.lines, "stroke-dasharray", "4 3")
		if len(stops) != 2 {
			t.Fatalf("%d stops", len(stops))
		}
		way := value("data-way")
		near(t, "from stop to stop", stops[1].pts[0].Y-stops[0].pts[0].Y, way, 0.02)
		scale := way / 3800 // a travel of 3.8 m
		near(t, "the drum takes so much rope", math.Abs(value("data-turn"))*math.Pi/180*s.Wheels[0].R*scale, float64(parts), 0.01*float64(parts))
		x, y := value("data-x"), value("data-y")
		var cross int
		for _, l := range r.lines {
			if math.Abs(l.pts[0].X+l.pts[1].X-2*x) < 0.02 && math.Abs(l.pts[0].Y+l.pts[1].Y-2*y) < 0.02 && (l.pts[0].X == l.pts[1].X) != (l.pts[0].Y == l.pts[1].Y) {
				cross++
			}
		}
		if cross != 2 {
			t.Errorf("%d ropes: %d strokes of the cross", parts, cross)
		}
		grows := 0
		for _, l := range looking(r.lines, "class", "grows") {
			end, other := l.pts[0], l.pts[1]
			if l.look["data-end"] == "y2" {
				end, other = other, end
			}
			if end.Y <= other.Y {
				t.Errorf("%d ropes: a line grows at its upper end", parts)
			}
			grows++
		}
		if grows != parts {
			t.Errorf("%d ropes: %d lines grow", parts, grows)
		}
	}
}
