package draw

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
)

// Round numbers by hand: steps of 1, 2 and 5 times a power of ten, the first that is no smaller; tops of axes in four steps or
// fewer; ticks from the first whole step on.
func TestRoundNumbers(t *testing.T) {
	for v, want := range map[float64]float64{0: 1, -3: 1, 0.9: 1, 1: 1, 1.1: 2, 2: 2, 2.1: 5, 5: 5, 5.1: 10, 10: 10, 11: 20, 0.03: 0.05, 400: 500, math.Inf(1): 1, math.NaN(): 1} {
		if got := niceStep(v); math.Abs(got-want) > 1e-9*want {
			t.Errorf("a step of %g is %g, want %g", v, got, want)
		}
	}
	for v, want := range map[float64]float64{0: 1, -1: 1, 4: 4, 4.1: 6, 7: 8, 8: 8, 9: 10, 20: 20, 21: 30, 40.8: 60, 300: 300, 0.7: 0.8, 1: 1} {
		if got := niceTop(v); math.Abs(got-want) > 1e-9*want {
			t.Errorf("an axis to %g ends at %g, want %g", v, got, want)
		}
	}
	for _, c := range []struct {
		lo, hi float64
		n      int
		want   []float64
	}{{0, 8, 4, []float64{0, 2, 4, 6, 8}}, {300, 340, 4, []float64{300, 310, 320, 330, 340}}, {3, 11, 4, []float64{4, 6, 8, 10}}, {0, 60, 5, []float64{0, 20, 40, 60}}} {
		got := axis{lo: c.lo, hi: c.hi}.ticks(c.n)
		if len(got) != len(c.want) {
			t.Errorf("%g to %g: %v", c.lo, c.hi, got)
			continue
		}
		for i := range got {
			near(t, "tick", got[i], c.want[i], 1e-9)
		}
	}
	for v, want := range map[float64]string{0: "0", 0.001: "0.001", 0.00099: "0.00099", 9999999: "9\u00a0999\u00a0999", 1e7: "10\u00a0000\u00a0000", -1e7: "−10\u00a0000\u00a0000", 1.25e-9: "0.00000000125", 0.1 + 0.2: "0.3", 1e-4: "0.0001", 2.5: "2.5"} {
		if got := tick(v); got != want {
			t.Errorf("%g at an axis is %q, want %q", v, got, want)
		}
	}
	if got := (axis{lo: 0.5, hi: 200}).decades(); len(got) != 3 || got[0] != 1 || got[2] != 100 {
		t.Errorf("powers of ten from 0.5 to 200: %v", got)
	}
	near(t, "back from the paper", axis{lo: 10, hi: 1000, a: 0, b: 100, log: true}.value(50), 100, 1e-9)
	near(t, "back from the paper", axis{lo: 10, hi: 30, a: 100, b: 0}.value(25), 25, 1e-9)
}

// Coordinates have two decimals at most, no "-0" and no end: 10⁵ either way.
func TestCoordinates(t *testing.T) {
	for v, want := range map[float64]string{0: "0", -0.001: "0", 1.005: "1", 1.256: "1.26", -2.5: "-2.5", 100000: "100000", 100001: "100000", 99999.5: "99999.5", -100001: "-100000", -99999.5: "-99999.5", 120: "120", math.NaN(): "0", math.Inf(1): "100000", math.Inf(-1): "-100000"} {
		if got := num(v); got != want {
			t.Errorf("%g is written %s, want %s", v, got, want)
		}
	}
}

// The widths of letters are those of Helvetica, here by width, in thousandths (its AFM file, from memory).
func TestHelvetica(t *testing.T) {
	seen := 0
	for width, letters := range map[float64]string{278: " !,./:;I[\\]ft", 355: `"`, 556: "#$0123456789?L_abdeghnopqu", 889: "%", 667: "&ABEKPSVXY", 191: "'", 333: "()-`r", 389: "*", 584: "+<=>~",
		1015: "@", 722: "CDHNRUw", 611: "FTZ", 778: "GOQ", 500: "Jcksvxyz", 833: "Mm", 944: "W", 469: "^", 222: "ijl", 334: "{}", 260: "|"} {
		for _, r := range letters {
			near(t, string(r), TextWidth(string(r), 1000), 1.14*width, 1e-6)
			seen++
		}
	}
	if seen != 95 {
		t.Errorf("%d letters", seen)
	}
	near(t, "a wide script", TextWidth("夜", 10), 11.4, 1e-9)
	near(t, "a degree", TextWidth("°", 10), 4.56, 1e-9)
	near(t, "an accent", TextWidth("é", 10), 7.6038, 1e-9)
}

// Each line of energy has its name along it: turned as the line, over it, and as near as letters stand to a line they belong to.
func TestNamesAlongTheirLines(t *testing.T) {
	svg := drawn(t, func(b *strings.Builder) error { return MassHeight(someMass(), b) })
	p := flatten(t, svg)
	names := regexp.MustCompile(`<text x="([\d.]+)" y="([\d.]+)" font-size="11" fill="currentColor" text-anchor="middle" transform="rotate\(([-\d.]+) ([\d.]+) ([\d.]+)\)">([^<]+)<`).FindAllStringSubmatch(svg, -1)
	if len(names) != 3 {
		t.Fatalf("%d names", len(names))
	}
	for _, m := range names {
		v := numbers(t, m[1:6])
		if v[0] != v[3] || v[1] != v[4] {
			t.Errorf("%s: turned about another point", m[6])
		}
		best, over := math.Inf(1), false
		var turn float64
		for _, s := range p.shapes {
			if a := s.pts; s.of == "line" && a[0].X != a[1].X && a[0].Y != a[1].Y && s.from(Point{v[0], v[1]}) < best {
				best = s.from(Point{v[0], v[1]})
				turn = math.Atan2(a[1].Y-a[0].Y, a[1].X-a[0].X) * 180 / math.Pi
				over = v[1] < a[0].Y+(a[1].Y-a[0].Y)*(v[0]-a[0].X)/(a[1].X-a[0].X)
			}
		}
		near(t, m[6]+", turned", v[2], turn, 0.05)
		near(t, m[6]+", from its line", best, 4, 0.1)
		if !over {
			t.Errorf("%s stands under its line", m[6])
		}
	}
	for _, words := range []struct {
		text string
		turn string
	}{{"mass, kg", "-90"}} {
		if !regexp.MustCompile(`transform="rotate\(` + words.turn + ` [\d. ]+\)">` + words.text + `<`).MatchString(svg) {
			t.Errorf("%s is not turned by %s", words.text, words.turn)
		}
	}
	r := parse(t, svg)
	mass, height := r.text(t, "mass, kg"), r.text(t, "height of travel, m")
	near(t, "in the middle of its axis", (height.x0+height.x1)/2, (58+364)/2, 0.1)
	near(t, "in the middle of its axis", (mass.y0+mass.y1)/2, (14+256)/2, 0.1)
	if mass.x0 < 2 || mass.x1 > 24 {
		t.Errorf("the name of the upright axis stands at %v", mass.box)
	}
}

// Spots stand on the side of their points, at their heights where there is room, in a column each that is at most half of them.
func TestColumnsOfSpots(t *testing.T) {
	left, right := box{0, 0, 100, 400}, box{300, 0, 400, 400}
	spots := func(at ...float64) (out []placed) {
		for i, x := range at {
			out = append(out, placed{x: x, y: 20 + 100*float64(i)})
		}
		return out
	}
	sides := func(list []placed) (l, r int) {
		for _, p := range list {
			if p.box.x0 == 0 {
				l++
			} else {
				r++
			}
		}
		return l, r
	}
	for _, c := range []struct {
		at   []float64
		left int
	}{{[]float64{150, 250}, 1}, {[]float64{110, 150, 250}, 2}, {[]float64{150, 250, 260}, 1}, {[]float64{110, 120, 130, 140}, 2}, {[]float64{250, 260, 270, 280}, 2}, {[]float64{199, 201}, 1}, {[]float64{110, 120, 130}, 2}, {[]float64{210, 220, 230}, 1}, {nil, 0}} {
		if l, r := sides(columns(spots(c.at...), left, right)); l != c.left || l+r != len(c.at) {
			t.Errorf("points at %v: %d left, %d right", c.at, l, r)
		}
	}
	for _, p := range columns(spots(110, 290, 120), left, right) {
		near(t, "at the height of its point", (p.box.y0+p.box.y1)/2, math.Max(p.y, spotHigh/2), 1e-9)
	}
	close := []placed{{x: 110, y: 395}, {x: 120, y: 398}, {x: 280, y: 5}, {x: 290, y: 5}}
	for _, p := range columns(close, left, right) {
		if p.box.y1 > 400 || p.box.y0 < 0 || p.box.y1-p.box.y0 != spotHigh {
			t.Errorf("%v leaves its column", p.box)
		}
	}
	if gap := math.Abs(close[0].box.y0 - close[1].box.y0); gap != spotStep {
		t.Errorf("two at one place stand %g apart", gap)
	}
	for name, want := range map[string]string{"Drum, steel": "Drum", "Rope and hook": "Rope", "Motor": "Motor", "A, b and c": "A"} {
		if got := short(name); got != want {
			t.Errorf("%q is %q, want %q", name, got, want)
		}
	}
}

// A square a part: settled ones first, what gives way last, with its sign; what is tight has its own.
func TestProgressCounts(t *testing.T) {
	for _, c := range [][4]int{{3, 1, 2, 7}, {0, 0, 0, 4}, {5, 0, 0, 5}, {2, 2, 0, 3}} {
		var b strings.Builder
		if err := Progress(c[0], c[1], c[2], c[3], "x", &b); err != nil {
			t.Fatal(err)
		}
		s := b.String()
		settled, bad, open := strings.Count(s, `"q1"`), strings.Count(s, `"q2"`), strings.Count(s, `"q0"`)
		tight, cross := strings.Count(s, wordSigns[path.Tight].d), strings.Count(s, wordSigns[path.GivesWay].d)
		if settled != c[0] || bad != c[2] || open != c[3]-c[0]-c[2] || tight != c[1] || cross != c[2] {
			t.Errorf("%v: %d settled, %d bad, %d open, %d tight, %d crosses", c, settled, bad, open, tight, cross)
		}
		p := flatten(t, s)
		i := 0
		for _, r := range p.shapes {
			if r.of != "rect" {
				continue
			}
			near(t, "a square", r.bounds().x0, 17*float64(i)+0.5, 1e-9)
			near(t, "as wide as high", r.bounds().x1-r.bounds().x0, r.bounds().y1-r.bounds().y0, 1e-9)
			if r.bounds().x1 > p.paper.x1 || r.bounds().y1 > p.paper.y1 {
				t.Errorf("square %d leaves the paper", i)
			}
			i++
		}
		for _, r := range p.shapes {
			if r.look["class"] == "qs" {
				b := r.bounds()
				if x := math.Mod(b.x0, 17); x < 1 || b.x1-17*math.Floor(b.x0/17) > 16 || b.y0 < 1 || b.y1 > 15 {
					t.Errorf("a sign at %v is in no square", b)
				}
			}
		}
	}
}

// A bar of 70 on a scale of 100 is 280 of 400 wide; pieces of 7 cut it nine times, 28 apart; past the scale it has a break.
func TestBarIsCut(t *testing.T) {
	bar := func(is, piece unit.Energy) (readBack, string) {
		svg := drawn(t, func(b *strings.Builder) error { return Bar{Is: is, Top: 100, Piece: piece, Look: "mass"}.Draw(b) })
		return parse(t, svg), svg
	}
	r, svg := bar(70, 7)
	near(t, "70 of 100", r.rects[0].bounds().x1, 280, 1e-9)
	cuts := looking(r.paths, "class", "cut")
	if len(cuts) != 9 || strings.Contains(svg, `"mark"`) {
		t.Fatalf("%d cuts", len(cuts))
	}
	for i, c := range cuts {
		near(t, "a cut", c.pts[0].X, 28*float64(i+1), 0.01)
		near(t, "from edge to edge", c.bounds().y0-r.rects[0].bounds().y0, 0, 1e-9)
		near(t, "from edge to edge", c.bounds().y1-r.rects[0].bounds().y1, 0, 1e-9)
	}
	for i, l := range r.lines[:5] {
		near(t, "a quarter of the scale", l.pts[0].X, 100*float64(i), 1e-9)
	}
	if _, svg := bar(100, 0); strings.Contains(svg, `"mark"`) || strings.Contains(svg, `"cut"`) {
		t.Error("a bar as long as its scale is broken or cut")
	}
	if r, svg := bar(101, 0); !strings.Contains(svg, `"mark"`) || r.rects[0].bounds().x1 != 400 {
		t.Error("a bar past its scale is whole")
	}
	if r, _ := bar(0.1, 0); r.rects[0].bounds().x1 != 1.2 {
		t.Error("a little is not seen")
	}
	if r, _ := bar(0, 0); len(r.rects) > 0 {
		t.Error("nothing is seen")
	}
	if _, svg := bar(100, 0.7); strings.Contains(svg, `"cut"`) { // 143 pieces would run together
		t.Error("cuts run together")
	}
	if _, svg := bar(98, 0.7); !strings.Contains(svg, `"cut"`) { // 140 pieces
		t.Error("140 pieces are not cut")
	}
	for lifts, want := range map[float64]float64{1: 1, 140: 1, 141: 10, 1400: 10, 1401: 100} {
		if got := PiecesOf(lifts); got != want {
			t.Errorf("%g lifts: %g a piece, want %g", lifts, got, want)
		}
	}
}

// A curve goes from its least to its most, or from zero; over the paper from end to end.
func TestCurveReadBack(t *testing.T) {
	c := Curve{Title: "x", X: []float64{10, 11, 12, 14}, Y: []float64{2, 6, 4, 3}, Look: "sun"}
	for _, zero := range []bool{false, true} {
		c.FromZ = zero
		lo, hi := c.Ends()
		if want := map[bool]float64{false: 2, true: 0}[zero]; lo != want || hi != 6 {
			t.Errorf("from zero %v: %g to %g", zero, lo, hi)
		}
		r := parse(t, drawn(t, func(b *strings.Builder) error { return c.Draw(b) }))
		pts := r.paths[0].pts
		s := scale{r.lines[0].pts[0].Y, lo, r.lines[2].pts[0].Y, hi}
		for i, p := range pts {
			near(t, "value", s.value(p.Y), c.Y[i], 0.002)
			near(t, "time", pts[0].X+(c.X[i]-10)/4*(pts[3].X-pts[0].X), p.X, 0.01)
		}
		if pts[0].X > 2 || pts[3].X < 398 || r.lines[0].pts[0].Y > 51 || r.lines[0].pts[0].Y < 45 || r.lines[2].pts[0].Y < 1 || r.lines[2].pts[0].Y > 8 {
			t.Errorf("the curve goes from %v to %v, between %v and %v", pts[0], pts[3], r.lines[2].pts[0], r.lines[0].pts[0])
		}
		near(t, "the line in the middle", r.lines[1].pts[0].Y, (r.lines[0].pts[0].Y+r.lines[2].pts[0].Y)/2, 0.01)
	}
	if lo, hi := (Curve{Y: []float64{3, 3}}).Ends(); lo != 3 || hi != 4 {
		t.Errorf("a level curve goes from %g to %g", lo, hi)
	}
	if lo, hi := (Curve{}).Ends(); lo != 0 || hi != 1 {
		t.Errorf("no curve goes from %g to %g", lo, hi)
	}
	if lo, hi := (Curve{FromZ: true, Y: []float64{-2, -1}}).Ends(); lo != 0 || hi != 1 {
		t.Errorf("a curve under zero goes from %g to %g", lo, hi)
	}
}

// Shares of a whole: half, a thousandth and less, more than all of it, and what has none.
func TestShareOfAFlow(t *testing.T) {
	for _, c := range []struct {
		part, whole unit.Energy
		want        string
	}{{50, 100, "50\u00a0%"}, {1, 1000, "0.1\u00a0%"}, {0.99, 1000, "under 0.1 %"}, {0, 100, "0\u00a0%"}, {5, 0, "–"}, {-1, 100, "–"}, {3, 400, "0.75\u00a0%"}} {
		if got := share(c.part, c.whole); got != c.want {
			t.Errorf("%g of %g: %q, want %q", float64(c.part), float64(c.whole), got, c.want)
		}
	}
}

// A managed day is read back: each strip by its own top, which stands beside it; what did not run in boxes on top of what did;
// the charge from empty to full, its marks at their charge.
func TestManagedDayReadBack(t *testing.T) {
	d := someManaged()
	r := parse(t, drawn(t, func(b *strings.Builder) error { return d.Draw(b) }))
	names := []string{"sun", "what runs", "backup", "charge of the stores"}
	var floors []float64
	for _, l := range looking(r.lines, "stroke-width", "1") {
		floors = append(floors, l.pts[0].Y)
		near(t, "a floor", l.pts[0].X, 46, 1e-9)
		near(t, "a floor", l.pts[1].X, 358, 1e-9)
	}
	if len(floors) != 4 {
		t.Fatalf("%d strips", len(floors))
	}
	hour := func(h float64) float64 { return 46 + 13*h }
	tops := []string{"300 W", "100 W", "100 W", "100 %"} // 95 W are the most that was wanted
	most := []float64{300, 100, 100, 1}
	for i, name := range names {
		x := r.text(t, name)
		if x.y1 > floors[i]-62 || x.y1 < floors[i]-72 || x.x0 != 46 {
			t.Errorf("%s stands at %v, its floor at %g", name, x.box, floors[i])
		}
		found := false
		for _, top := range r.texts {
			found = found || top.text == tops[i] && math.Abs((top.y0+top.y1-0.1*top.size)/2-(floors[i]-62)) < 1.5 && top.x1 < 46
		}
		if !found {
			t.Errorf("no %q at the top of %s", tops[i], name)
		}
	}
	for i, v := range [][]float64{d.Sun, d.Runs, d.Backup} {
		m := looking(r.paths, "fill", []string{sunColour, loadColour, ink}[i])[0]
		for h, want := range v {
			near(t, names[i], (floors[i]-m.height(t, hour(float64(h)+0.5)))/62*most[i], want, most[i]/2000)
		}
	}
	line := looking(r.paths, "stroke", cellColour)[0]
	for h, want := range d.Charge {
		near(t, "charge", (floors[3]-line.pts[h].Y)/62, want, 0.0002)
		near(t, "at the end of its hour", line.pts[h].X, hour(float64(h+1)), 0.01)
	}
	for dash, want := range map[string][3]float64{"4 3": {5, 55, 95}, "2 2": {20, 50, 80}} { // the hour, from and to, W
		m := looking(r.rects, "stroke-dasharray", dash)
		if len(m) != 1 {
			t.Fatalf("%d boxes of what did not run", len(m))
		}
		b := m[0].bounds()
		near(t, "its hour", b.x0, hour(want[0]), 0.01)
		near(t, "an hour long", b.x1, hour(want[0]+1), 0.01)
		near(t, "on top of what ran", (floors[1]-b.y1)/62*100, want[1], 0.05)
		near(t, "as much as asked", (floors[1]-b.y0)/62*100, want[2], 0.05)
	}
	for i, at := range []float64{0.3, 0.25} {
		var level mark
		for _, l := range looking(r.lines, "stroke-dasharray", "4 3") {
			if math.Abs((floors[3]-l.pts[0].Y)/62-at) < 0.001 {
				level = l
			}
		}
		if level.pts == nil {
			t.Fatalf("no level at %g", at)
		}
		x := r.text(t, d.Marks[i].Say)
		gap := level.pts[0].Y - x.y1
		if i == 1 { // close under the other one: its words stand under its line
			gap = x.y0 - level.pts[0].Y
		}
		if gap < 0 || gap > 4 || i == 0 && x.x1 != 358 || i == 1 && (x.x0 < 46 || x.x0 > 52) {
			t.Errorf("%q stands at %v, its level at %g", x.text, x.box, level.pts[0].Y)
		}
	}
	if s := d.Say(unit.Metric); !strings.Contains(s, "Dashed boxes are devices that wait.") || !strings.Contains(s, "The backup gives 100\u00a0Wh.") || !strings.Contains(s, "switches off 30\u00a0Wh") || !strings.Contains(s, "may wait used 20\u00a0Wh") {
		t.Error(s)
	}
	if s := (ManagedDay{Name: "x"}).Say(unit.Metric); strings.Contains(s, "boxes") || strings.Contains(s, "backup") {
		t.Error(s)
	}
}
