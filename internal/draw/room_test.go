package draw

import (
	"math"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
)

// Under the larger drive the distances have their names where the paper has room for them, and their number alone where not; no
// letter leaves the frame. Seen over drums and pulleys of all sizes, in both systems.
func TestNamesOfTheChainWhereThereIsRoom(t *testing.T) {
	named, bare := 0, 0
	for _, drum := range []float64{30, 80, 150, 300, 600} {
		for _, pulley := range []float64{30, 90, 200, 500} {
			for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
				h := hoist()
				h.Drum.Diameter, h.Drum.Flange, h.Reeving.Sheaves[0].Diameter = of(drum), of(1.5*drum), of(pulley)
				s := Make(Plan{Hoist: h, Units: sys})
				if len(s.ChainDims) != 2 {
					t.Fatalf("%d distances", len(s.ChainDims))
				}
				var under []textBox // from left to right
				for _, x := range textBoxes(t, drawn(t, func(b *strings.Builder) error { return SVG(s, b) })) {
					if x.y0 > detailY && (strings.HasSuffix(x.text, s.ChainDims[0].Text) || strings.HasSuffix(x.text, s.ChainDims[1].Text)) && !strings.Contains(x.text, "⌀") {
						under = append(under, x)
					}
				}
				if len(under) != 2 || under[0].x1 > under[1].x0 {
					t.Fatalf("drum of %g, pulley of %g mm: %v", drum, pulley, under)
				}
				for i, x := range under {
					name := s.Chain[i].Name + " – " + s.Chain[i+1].Name + " " + s.ChainDims[i].Text
					room := x.x1 - viewLeft
					if i == 1 {
						room = paperW - viewLeft - x.x0
					}
					if fits := TextWidth(name, small) <= room+1e-9; fits != (x.text == name) || x.x0 < 0 || x.x1 > paperW {
						t.Errorf("drum of %g, pulley of %g mm: %q at %v", drum, pulley, x.text, x.box)
					}
					if x.text == name {
						named++
					} else {
						bare++
					}
				}
			}
		}
	}
	if named < 10 || bare < 10 {
		t.Errorf("%d with their name, %d without", named, bare)
	}
}

// The axes of the plans by hand: nights from the full ten under the least to what is needed or the most, but 20 at least and never
// under none; costs from nothing to the dearest end.
func TestAxesOfPlans(t *testing.T) {
	for _, c := range []struct {
		nights    []float64
		needed    int
		low, high float64
	}{
		{[]float64{341, 360}, 350, 340, 360}, {[]float64{341, 359}, 350, 339, 359}, {[]float64{350}, 352, 332, 352}, {[]float64{349.9, 350.2}, 0, 331, 351}, {[]float64{3, 5}, 10, 0, 10},
		{[]float64{200, 300}, 340, 200, 340}, {[]float64{0}, 0, 0, 1},
	} {
		f := Front{Needed: c.needed, Today: FrontPlan{Nights: c.nights[0], High: 700}}
		for _, n := range c.nights {
			f.Plans = append(f.Plans, FrontPlan{Nights: n, High: 900})
		}
		for _, paper := range frontPapers {
			x, y := f.axes(paper)
			if x.lo != c.low || x.hi != c.high || y.lo != 0 || y.hi != 900 || x.a <= paper.left || x.b >= paper.wide-paper.right || y.b >= y.a {
				t.Errorf("%v, %d needed: %+v, %+v", c.nights, c.needed, x, y)
			}
		}
	}
}

// A list of plain axes: what stands at a place comes back from it, straight and by logarithm, and ticks are round and inside.
func TestAxesGoBothWays(t *testing.T) {
	for _, x := range []axis{{lo: 0, hi: 24, a: 46, b: 368}, {lo: -12, hi: 31, a: 300, b: 20}, {lo: 0.5, hi: 200, a: 58, b: 364, log: true}, {lo: 10, hi: 1e5, a: 256, b: 14, log: true}, {lo: 7, hi: 7.5, a: 0, b: 1}} {
		for _, share := range []float64{0, 0.2, 0.5, 1} {
			p := x.a + share*(x.b-x.a)
			near(t, "there and back", x.at(x.value(p)), p, 1e-9)
		}
		near(t, "its beginning", x.value(x.a), x.lo, 1e-9)
		near(t, "its end", x.value(x.b), x.hi, 1e-6)
		if x.log {
			continue
		}
		ticks := x.ticks(4)
		if len(ticks) < 2 || len(ticks) > 7 || ticks[0] < x.lo-1e-9 || ticks[len(ticks)-1] > x.hi+1e-9 {
			t.Errorf("%+v: ticks %v", x, ticks)
		}
		step := ticks[1] - ticks[0]
		if ticks[0]-step >= x.lo-1e-9 || ticks[len(ticks)-1]+step <= x.hi+1e-9 {
			t.Errorf("%+v: a tick is missing at an end of %v", x, ticks)
		}
		for i, v := range ticks {
			near(t, "whole steps", math.Mod(math.Abs(v)+step/2, step), step/2, 1e-9)
			if i > 0 {
				near(t, "even steps", v-ticks[i-1], step, 1e-9)
			}
		}
	}
	for v, want := range map[float64]string{0: "0", 1e-3: "0.001", 9.99e-4: "0.000999", 1e7: "10\u00a0000\u00a0000", 9999999: "9\u00a0999\u00a0999", -2.5: "−2.5", 0.1 + 0.2: "0.3"} {
		if got := tick(v); got != want {
			t.Errorf("%v is written %s, want %s", v, got, want)
		}
	}
	for s, want := range map[float64]float64{1: 1, 1.01: 2, 2: 2, 2.1: 5, 5: 5, 5.1: 10, 0.03: 0.05, 740: 1000, 0: 1, -3: 1, math.Inf(1): 1} {
		near(t, "a round step", niceStep(s), want, 1e-12)
	}
}

// In words, by hand: the rope leaves the drum of 80 mm at its side and goes through the hole, so with a rope of 8 mm the hole is 44 mm
// from the drum's axle; it meets the pulley of 90 mm at its side, 49 mm from its axle. Without a hole there is nothing to say.
func TestChainInWords(t *testing.T) {
	got := Make(Plan{Hoist: hoist()}).ChainText()
	if want := "drum to hole 44\u00a0mm, hole to foot pulley 49\u00a0mm"; strings.Join(got, ", ") != want {
		t.Errorf("%q", got)
	}
	h := hoist()
	h.Reeving.LeadSheaves = unit.Of(unit.Count(1))
	if s := Make(Plan{Hoist: h}); len(s.ChainDims) == 0 || len(s.ChainText()) != 0 {
		t.Errorf("without a hole: %q", s.ChainText())
	}
}

// A way of the sun is cut where it goes behind the hill, and where it leaves the picture at one side and comes again at the other: by
// hand, of a hill 0.2 high from −1 to 1 and flat beyond.
func TestRunsOfAWay(t *testing.T) {
	hill := []SkyPoint{{-1, 0.2}, {1, 0.2}}
	count := func(path []SkyPoint) (lengths []int) {
		for _, run := range runs(path, hill) {
			lengths = append(lengths, len(run))
		}
		return lengths
	}
	for _, c := range []struct {
		path []SkyPoint
		want []int
	}{
		{[]SkyPoint{{-2, 0.1}, {-1.5, 0.1}, {0, 0.1}, {1.5, 0.1}, {2, 0.1}}, []int{2, 2}},
		{[]SkyPoint{{-0.5, 0.2}, {0, 0.3}, {0.5, 0.2}}, []int{3}},                         // on the hill it is seen
		{[]SkyPoint{{-0.5, 0.199}, {0, 0.3}, {0.5, 0.199}}, nil},                          // one point alone is no way
		{[]SkyPoint{{2.5, 1}, {3, 1}, {-3, 1}, {-2.5, 1}}, []int{2, 2}},                   // over the edge
		{[]SkyPoint{{-1.5, 1}, {1.5, 1}}, []int{2}},                                       // less than half a turn
		{[]SkyPoint{{-2, 0}, {-1.5, -0.1}, {-1.2, 0}, {-1.1, 0.1}}, []int{2}}, {nil, nil}, // under the flat
	} {
		if got := count(c.path); len(got) != len(c.want) || len(got) > 0 && got[0] != c.want[0] || len(got) > 1 && got[1] != c.want[1] {
			t.Errorf("%v: runs of %v, want %v", c.path, got, c.want)
		}
	}
	slope := []SkyPoint{{-1, 0}, {1, 0.4}, {1, 0.8}, {2, 0.8}}
	for east, want := range map[float64]float64{-1: 0, 0: 0.2, 0.5: 0.3, 1: 0.4, 1.5: 0.8, 2: 0.8, 2.1: 0, -1.1: 0} {
		near(t, "the height of the hill", upAt(slope, east), want, 1e-12)
	}
}

// An arrow is seven long and points where it is told, from whatever length it comes; one from nowhere is not drawn.
func TestArrowsPoint(t *testing.T) {
	for _, to := range [][2]float64{{1, 0}, {0, -3}, {-300, 400}} {
		var b strings.Builder
		p := open(&b, "x", 100, 100, "x", "")
		p.arrow(50, 50, to[0], to[1])
		_ = p.close()
		pts := parse(t, b.String()).paths[0].pts
		l := math.Hypot(to[0], to[1])
		mid := Point{(pts[1].X + pts[2].X) / 2, (pts[1].Y + pts[2].Y) / 2}
		near(t, "the point, x", pts[0].X, 50, 0)
		near(t, "the point, y", pts[0].Y, 50, 0)
		near(t, "from where, x", mid.X, 50-7*to[0]/l, 0.01)
		near(t, "from where, y", mid.Y, 50-7*to[1]/l, 0.01)
		near(t, "how wide", math.Hypot(pts[1].X-pts[2].X, pts[1].Y-pts[2].Y), 2.8, 0.02)
	}
	for _, to := range [][2]float64{{0, 0}, {math.NaN(), 1}, {math.Inf(1), 0}} {
		var b strings.Builder
		p := open(&b, "x", 100, 100, "x", "")
		p.arrow(50, 50, to[0], to[1])
		_ = p.close()
		if strings.Contains(b.String(), "<path") {
			t.Errorf("an arrow from %v", to)
		}
	}
}
