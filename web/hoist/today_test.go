package hoist

import (
	"regexp"
	"strings"
	"testing"
	"time"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// todayIn is what to do on a day of June with the first hoist of a variant.
func todayIn(g model.Ground, r model.VariantResult) []string {
	for _, s := range r.Stores {
		if model.HoistOf(s) != nil {
			return today(g, r, s, int(time.June)-1)
		}
	}
	return nil
}

// By the almanac the sun sets there, at 49.6° north and 6.2° east, at 20:38 by standard time in the middle of June
// (from memory). What to do today is told for a hoist that may hang, and for one that may not is that it may not.
func TestToday(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	told := map[string]string{}
	for _, v := range doc.Variants {
		r := g.Evaluate(v)
		told[string(r.Ready)+map[bool]string{true: " hoist", false: ""}[r.Facts.Lifts]] = strings.Join(todayIn(g, r), "\n")
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

// A lifted mass that runs down for less than it gives says so; one that gives what it can says nothing.
func TestWasted(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	s := g.Evaluate(doc.Variants[0]).Stores[0]
	if say := wasted(s, unit.Metric); !strings.Contains(say, "comes down at "+unit.Powers.Format(float64(s.Reservoir.DrawMin), unit.Metric)) {
		t.Errorf("%g of %g J given back: %q", float64(s.Year.Delivered), float64(s.RoundTrip.Val)*float64(s.Year.Taken), say)
	}
	s.Year.Delivered = unit.Energy(0.9 * float64(s.RoundTrip.Val) * float64(s.Year.Taken))
	if say := wasted(s, unit.Metric); say != "" {
		t.Errorf("a mass that gives what it can: %q", say)
	}
}
