package model_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
)

// words are the closed list by which a part says what it is.
func words(t *testing.T) []string {
	t.Helper()
	f, ok := reflect.TypeFor[cost.Part]().FieldByName("As")
	if !ok {
		t.Fatal("no such field")
	}
	return strings.Split(f.Tag.Get("enum"), "|")[1:]
}

// Each need has a word of the list, and none has a price; each word of the list is needed by some plan.
func TestNeedsOfSample(t *testing.T) {
	doc := catalog.Sample()
	doc.Variants[0].Stores[0].Hoist.Drum.Coupling = "yes"
	doc.Variants[0].Stores[0].Hoist.Raise.Feed = "relay"
	doc.Variants[1].Stores[0].Cells.Kind = "flooded_lead" // acid asks for goggles
	doc.Variants[1].Stores = append(doc.Variants[1].Stores, pond().Variants[0].Stores...)
	r := model.Evaluate(doc, "")
	seen := map[string]bool{}
	for i, v := range doc.Variants {
		for _, n := range model.Needs(v, r.Variants[i]) {
			seen[string(n.As)] = true
			if !slices.Contains(words(t), string(n.As)) {
				t.Errorf("%s: %q is not a word of the list", n.Name, n.As)
			}
			if n.Name == "" || n.Count < 1 || !slices.Contains([]cost.PartOf{"store", "safety", "panel"}, n.Of) {
				t.Errorf("%+v", n)
			}
			if p := n.Part(); p.Price.Is || p.Number != "" {
				t.Errorf("%s comes with a price or a number of its own: %+v", n.Name, p)
			}
			for _, w := range n.Want {
				if v := float64(w.Least.Val); math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
					t.Errorf("%s wants %g", n.Name, v)
				}
			}
		}
	}
	for _, w := range words(t) {
		if !seen[w] {
			t.Errorf("nothing needs a %s", w)
		}
	}
}

func needed(t *testing.T, needs []model.Need, as cost.As) model.Need {
	t.Helper()
	for _, n := range needs {
		if n.As == as {
			return n
		}
	}
	t.Fatalf("no %s among the needs", as)
	return model.Need{}
}

// The number that matters is the border of the check: a rope with just that breaking load holds, and one with a
// hundredth less gives way.
func TestNumberThatMatters(t *testing.T) {
	doc := catalog.Sample()
	v := doc.Variants[0]
	n := needed(t, model.Needs(v, model.Evaluate(doc, "").Variants[0]), "rope")
	if !n.Want[0].Known() || n.Want[0].Unit != "N" {
		t.Fatalf("%+v", n)
	}
	for _, c := range []struct {
		share float64
		gives bool
	}{{1.0001, false}, {0.99, true}} {
		v.Stores[0].Hoist.Rope.BreakingLoad = unit.Of(unit.Force(c.share * float64(n.Want[0].Least.Val)))
		gives := false
		for _, ch := range model.HoistOf(model.Evaluate(doc, "").Variants[0].Stores[0]).Checks {
			gives = gives || (ch.ID == "rope" || ch.ID == "knot") && ch.Word == path.GivesWay
		}
		if gives != c.gives {
			t.Errorf("%g of the number: gives way %v", c.share, gives)
		}
	}
}

// Fuse and cable by hand: a panel of 100 W fills an empty battery of 12.5 V with 8 A, more than any hour of the year takes or
// gives; with a panel of 1 W it is the greatest hour. 25 W out of a 12.5 V battery for an hour are 2 A; 1.25 times that is 2.5 A, so a fuse of 3 A;
// 1.5 mm² carry it and lose 2·4 m·2 A·0.017241·(1 + 0.00393·20)/1.5 = 0.198 V of the 0.375 V that may be lost.
func TestFuseAndCableNeeded(t *testing.T) {
	doc := catalog.Sample()
	b := doc.Variants[1].Stores[0].Cells
	b.Voltage, b.CableLength, b.CableArea, b.Fuse = unit.Of[unit.Voltage](12.5), unit.Of[unit.Length](4), unit.Known[unit.Area]{}, unit.Known[unit.Current]{}
	r := model.Evaluate(doc, "").Variants[1]
	c := model.CellsOf(r.Stores[0])
	if got := float64(c.Line.Most); math.Abs(got-8) > 1e-12 {
		t.Errorf("greatest current %g, want 8", got)
	}
	few := doc.Variants[1]
	few.Panels = slices.Clone(few.Panels)
	few.Panels[0].Power, few.Panels[0].Sheet = unit.Of[unit.Power](1), nil
	f := model.Prepare(doc.Project).Evaluate(few)
	// Lamps of 7 and 4 × 0.5 W, the radio of 3 W, sensor and controller of 0.05 and 0.15 W together: 12.2 W. Without a cable
	// 0.05·12.5/50 = 0.0125 Ω: (12.5 − √(156.25 − 4·0.0125·12.2))/(2·0.0125) = 0.976954 A.
	if got := float64(model.CellsOf(f.Stores[0]).Line.Most); math.Abs(got-(12.5-math.Sqrt(156.25-4*0.0125*12.2))/(2*0.0125)) > 1e-9 {
		t.Errorf("greatest current %g with a tiny panel, want 0.97695", got)
	}
	l := c.Resolved.Line(2)
	if l.FuseTake.Val != 3 || math.Abs(float64(l.AreaTake.Val)-1.5e-6) > 1e-12 {
		t.Errorf("fuse %v, cable %v", l.FuseTake, l.AreaTake)
	}
	needs := model.Needs(doc.Variants[1], r)
	if n := needed(t, needs, "fuse"); n.Want[0].Least.Val != unit.Ratio(c.Line.FuseTake.Val) {
		t.Errorf("fuse %+v", n.Want)
	}
	b.CableLength = unit.Known[unit.Length]{}
	if n := needed(t, model.Needs(doc.Variants[1], model.Evaluate(doc, "").Variants[1]), "cable"); n.Want[0].Known() {
		t.Errorf("a cable without its length: %+v", n.Want)
	}
}

// Parts are matched by their word, each need once; what is left over is open.
func TestMatched(t *testing.T) {
	needs := []model.Need{{As: "rope"}, {As: "pulley"}, {As: "pulley"}, {As: "hold"}}
	of, open := model.Matched([]cost.Part{{As: "pulley"}, {}, {As: "rope"}, {As: "rope"}, {As: "pulley"}, {As: "fence"}}, needs)
	if !reflect.DeepEqual(of, []int{1, -1, 0, -1, 2, -1}) || !reflect.DeepEqual(open, []int{3}) {
		t.Errorf("of %v, open %v", of, open)
	}
}

// A plan of which nothing is known asks for its parts without a number that pretends.
func TestNeedsOfNothing(t *testing.T) {
	doc := catalog.Sample()
	h := doc.Variants[0].Stores[0].Hoist
	*h = lift.Hoist{}
	for _, n := range model.Needs(doc.Variants[0], model.Evaluate(doc, "").Variants[0]) {
		if n.As == "rope" || n.As == "pulley" || n.As == "base_weight" || n.As == "hold" {
			if n.Want[0].Known() {
				t.Errorf("%s: %+v", n.Name, n.Want)
			}
		}
	}
}
