package draw

import (
	"bytes"
	"math"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// lengthOf is the length of the straight rope between drum and dead end, mm.
func lengthOf(s Scene) (sum float64) {
	for _, l := range s.Legs {
		sum += math.Hypot(l.To.X-l.From.X, l.To.Y-l.From.Y)
	}
	return sum
}

// A mass that goes down by its travel h on n ropes takes n·h of rope off the drum. All ropes at the mass hang upright, so
// the straight rope grows by that, whatever the hoist.
func TestLoweredTakesRope(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for range 200 {
		h := randomHoist(r)
		s := Make(Plan{Hoist: h})
		n := float64(h.Reeving.RopeParts.Val)
		if grown := lengthOf(s.lowered(0)) - lengthOf(s.lowered(1)); math.Abs(grown-n*s.Travel) > 1e-6*n*s.Travel {
			t.Fatalf("%v ropes, travel %v: the rope grows by %v", n, s.Travel, grown)
		}
		if low := s.lowered(0); math.Abs(s.Mass.Y0-low.Mass.Y0-s.Travel) > 1e-9*s.Travel {
			t.Fatalf("the mass comes down by %v of %v", s.Mass.Y0-low.Mass.Y0, s.Travel)
		}
	}
}

var barRect = regexp.MustCompile(`<rect x="0" y="2" width="([\d.]+)"`)

// A bar of half the scale is half as long as the paper is wide; one of twice the scale is as long as the paper and has a
// break mark; 7 Wh in pieces of 2 Wh have three cuts.
func TestBars(t *testing.T) {
	drawn := func(b Bar) string {
		var out bytes.Buffer
		if err := b.Draw(&out); err != nil {
			t.Fatal(err)
		}
		return out.String()
	}
	const wh = unit.WattHour
	for _, c := range []struct {
		is    unit.Energy
		width string
		mark  bool
	}{{60 * wh, "200", false}, {120 * wh, "400", false}, {240 * wh, "400", true}, {0.01 * wh, "1.2", false}} {
		svg := drawn(Bar{Title: "a", Is: c.is, Top: 120 * wh, Look: "night"})
		if m := barRect.FindStringSubmatch(svg); m == nil || m[1] != c.width || strings.Contains(svg, `class="mark"`) != c.mark {
			t.Errorf("%v J: %s", c.is, svg)
		}
	}
	if n := strings.Count(drawn(Bar{Is: 7 * wh, Top: 10 * wh, Piece: 2 * wh}), "V24"); n != 3 {
		t.Errorf("%d cuts", n)
	}
	if strings.Contains(drawn(Bar{Is: 0, Top: 10 * wh}), "<rect") {
		t.Error("nothing has a bar")
	}
	for lifts, each := range map[float64]float64{5: 1, 140: 1, 141: 10, 1400: 10, 15000: 1000} {
		if got := PiecesOf(lifts); got != each {
			t.Errorf("%v lifts: pieces of %v", lifts, got)
		}
	}
}

// A moment is drawn of every hoist, without a number that is none.
func TestMoments(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	for i := range 100 {
		h := randomHoist(r)
		if i == 0 {
			h = lift.Hoist{}
		}
		var out bytes.Buffer
		if err := (Moment{Scene: Make(Plan{Hoist: h}), Share: r.Float64(), Going: i%3 - 1, Sun: i%2 == 0, Lamps: i%2 == 1}).Draw(&out); err != nil || strings.Contains(out.String(), "NaN") {
			t.Fatal(err, out.String())
		}
	}
}
