package variant

import (
	"math"
	"regexp"
	"strings"
	"testing"
	"time"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
	"duskweight/web/page"
)

// The sample's pictures: every one has a title, a sentence and its numbers, no attribute that the policy refuses, and no
// identifier twice on the page.
func TestPictures(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	for _, variant := range doc.Variants {
		r := g.Evaluate(variant)
		ids := map[string]bool{}
		pictures := picturesOf(g, r, 5, "/page", unit.Metric)
		if want := 3 + len(variant.Stores); len(pictures) < want { // day, flow, nights, and each store
			t.Errorf("%s: %d pictures, want at least %d", variant.Name, len(pictures), want)
		}
		for _, p := range pictures {
			if p.ID == "" || p.Title == "" || p.Say == "" || len(p.Rows) == 0 || !strings.HasPrefix(p.SVG, "<svg") || strings.Contains(p.SVG, "style=") || ids[p.ID] {
				t.Errorf("%s: %q", variant.Name, p.ID)
			}
			ids[p.ID] = true
			for _, row := range p.Rows {
				if len(row) != len(p.Head) {
					t.Errorf("%s, %s: a row of %d under a head of %d", variant.Name, p.ID, len(row), len(p.Head))
				}
				for _, cell := range row {
					if cell == "" {
						t.Errorf("%s, %s: a blank cell in %v", variant.Name, p.ID, row)
					}
				}
			}
		}
	}
}

// The worst week holds what the year says of it, and a "week" of the whole year holds the year.
func TestWeekHoldsTheYear(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	near := func(what string, got []float64, want unit.Energy) {
		t.Helper()
		if d := page.Sum(got)*3600 - float64(want); math.Abs(d) > 1e-9*float64(want) { // sums in another order
			t.Errorf("%s: %g J, want %g", what, page.Sum(got)*3600, float64(want))
		}
	}
	for _, variant := range doc.Variants {
		r := g.Evaluate(variant)
		near(variant.Name+": missing in the worst week", weekOf(g, r).Missing, r.Year.WorstWeek.Unmet)
		r.Year.WorstWeek = year.Span{From: 4000, Hours: 8760}
		w := weekOf(g, r)
		near(variant.Name+": wanted", w.Load, r.Year.Load)
		near(variant.Name+": sun", w.Sun, r.Year.Bus)
		near(variant.Name+": missing", w.Missing, r.Year.Unmet)
	}
}

// The parts of the flow add up to the sun of the year: what was taken came out, was lost or is still there.
func TestFlowCloses(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	for _, variant := range doc.Variants {
		y := g.Evaluate(variant).Year
		sum := y.Spilled
		for _, part := range []unit.Energy{y.Essential.Direct, y.Essential.Delivered, y.Nice.Direct, y.Nice.Delivered, y.Standing.Direct, y.Standing.Delivered, y.StoreStanding.Direct, y.StoreStanding.Delivered} {
			sum += part
		}
		for _, s := range y.Stores {
			sum += s.Loss + s.Change
		}
		if d := float64(sum-y.Bus) / float64(y.Bus); d > 1e-9 || d < -1e-9 { // sums of 8760 hours in another order
			t.Errorf("%s: off by %g of the sun", variant.Name, d)
		}
	}
}

// By the almanac the sun sets there, at 49.6° north and 6.2° east, at 20:38 by standard time in the middle of June
// (from memory). What to do today is told for a hoist that may hang, and for one that may not is that it may not.
func TestToday(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	told := map[string]string{}
	for _, v := range doc.Variants {
		r := g.Evaluate(v)
		told[string(r.Ready)+map[bool]string{true: " hoist", false: ""}[page.HasHoist(r)]] = strings.Join(todayOf(g, r, int(time.June)-1), "\n")
	}
	if told["yes"] != "" {
		t.Errorf("without a hoist: %q", told["yes"])
	}
	if told["no hoist"] != "Do not lift: the checks say do not hang." {
		t.Errorf("do not hang: %q", told["no hoist"])
	}
	if want := regexp.MustCompile(`^Lift between 0\d:00 and 1\d:00, .*\nLower after sunset, about 20:[34]0\. .*\nStop if the base moves, the motor is too hot to touch, or wind moves the mass\.$`); !want.MatchString(told["yes hoist"]) {
		t.Errorf("ready: %q", told["yes hoist"])
	}
}

func TestLongest(t *testing.T) {
	for want, hours := range map[[2]int]string{{0, 0}: "", {9, 12}: "2 9 10 11", {22, 24}: "22 23", {0, 3}: "0 1 2 5"} {
		in := " " + hours + " "
		if from, to := longest(func(h int) bool { return strings.Contains(in, " "+page.Itoa(h)+" ") }); from != want[0] || to != want[1] {
			t.Errorf("%q: %d to %d", hours, from, to)
		}
	}
}

// A lifted mass that runs down for less than it gives says so; a battery, and a mass that gives what it can, say nothing.
func TestWasted(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	s := g.Evaluate(doc.Variants[0]).Stores[0]
	if say := wastedBy(s, unit.Metric); !strings.Contains(say, "comes down at "+unit.Powers.Format(float64(s.Reservoir.DrawMin), unit.Metric)) {
		t.Errorf("%g of %g J given back: %q", float64(s.Year.Delivered), float64(s.RoundTrip.Val)*float64(s.Year.Taken), say)
	}
	s.Year.Delivered = unit.Energy(0.9 * float64(s.RoundTrip.Val) * float64(s.Year.Taken))
	if say := wastedBy(s, unit.Metric); say != "" {
		t.Errorf("a mass that gives what it can: %q", say)
	}
	if say := wastedBy(g.Evaluate(doc.Variants[1]).Stores[0], unit.Metric); say != "" {
		t.Errorf("a battery: %q", say)
	}
}
