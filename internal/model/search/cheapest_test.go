package search

import (
	"context"
	"errors"
	"math"
	"reflect"
	"slices"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
)

// cabin is the worked example with prices for panels and controller too, and its variant: 1 with a battery alone, 2 with a
// lifted mass.
func cabin(i int) (model.Ground, model.Variant) {
	doc := catalog.Sample()
	v := doc.Variants[i]
	v.Parts = append(v.Parts[:len(v.Parts):len(v.Parts)],
		cost.Part{Name: "Panel of 100 W", Of: cost.OfPanel, As: cost.AsPanel, Price: unit.Of[unit.Money](60), Low: unit.Of[unit.Money](45), High: unit.Of[unit.Money](80)},
		cost.Part{Name: "Controller", Of: cost.OfPanel, As: cost.AsController, Price: unit.Of[unit.Money](30)})
	return model.Prepare(doc.Project), v
}

func find(t testing.TB, g model.Ground, v model.Variant, workers int) Cheapest {
	t.Helper()
	c, err := CheapestOf(t.Context(), g, v, workers, nil)
	if err != nil || !c.WhyNot.IsZero() || len(c.Front) == 0 {
		t.Fatalf("%v, %s, %d on the front", err, c.WhyNot, len(c.Front))
	}
	return c
}

// What the search says of a plan is what the variant that is made of it comes to: nights, costs and bars, although the power at
// the line was computed for another number of panels.
func TestPlanIsItsVariant(t *testing.T) {
	for _, i := range []int{1, 2} {
		g, v := cabin(i)
		c := find(t, g, v, 2)
		for _, p := range append([]Plan{c.Today}, c.Front...) {
			w, ok := Made(g, v, p.Choice)
			if !ok {
				t.Fatalf("%v cannot be made", p.Choice)
			}
			if problems := model.CheckVariant(w); len(problems) > 0 {
				t.Fatalf("%v: %v", p.Choice, problems)
			}
			r := g.Evaluate(w)
			if r.Last.NightsFull != p.Nights {
				t.Errorf("%v: %d full nights, the variant has %d", p.Choice, p.Nights, r.Last.NightsFull)
			}
			for what, pair := range map[string][2]unit.Known[unit.Money]{"cost": {p.Cost, r.Cost.Whole}, "low": {p.Low, r.Cost.Low.Whole}, "high": {p.High, r.Cost.High.Whole}} {
				if !pair[0].Is || math.Abs(float64(pair[0].Val-pair[1].Val)) > 1e-6*float64(pair[1].Val) {
					t.Errorf("%v: %s %v, the variant has %v", p.Choice, what, pair[0], pair[1])
				}
			}
		}
		if now := g.Evaluate(v); c.Today.Nights != now.Last.NightsFull || math.Abs(float64(c.Today.Cost.Val-now.Cost.Whole.Val)) > 1e-9*float64(now.Cost.Whole.Val) {
			t.Errorf("today %v, the variant %d for %v", c.Today, now.Last.NightsFull, now.Cost.Whole)
		}
	}
}

// For every plan of the grid one of the front costs no more and gives no less, and none beats one of the front: all are run in
// full here, none ruled out.
func TestNothingBeatsTheFront(t *testing.T) {
	g, v := cabin(1)
	v.Panels = append(v.Panels[:0:0], v.Panels...)
	v.Panels[0].Count = unit.Of[unit.Count](2)
	c := find(t, g, v, 2)
	grid := gridOf(g, v, g.Evaluate(v))
	h := &hunt{grid: grid, workers: 2}
	if err := h.light(t.Context()); err != nil {
		t.Fatal(err)
	}
	var draft year.Draft
	tried := 0
	for i, turn := range grid.tilts {
		for k, panels := range grid.panels {
			for n, blocks := range grid.blocks {
				if testing.Short() && (i+k+n)%3 != 0 {
					continue
				}
				tried++
				p := h.tried(&draft, Choice{Panels: panels, Blocks: blocks, Factor: 1, Tilt: turn.angle, Turned: turn.turned})
				if !slices.ContainsFunc(c.Front, func(q Plan) bool { return q.Cost.Val <= p.Cost.Val && q.Nights >= p.Nights }) {
					t.Errorf("nothing on the front costs no more than %v and gives no less", p)
				}
				for _, q := range c.Front {
					if p.Cost.Val <= q.Cost.Val && p.Nights > q.Nights {
						t.Errorf("%v beats %v of the front", p, q)
					}
				}
			}
		}
	}
	if tried < 50 {
		t.Errorf("only %d plans were tried", tried)
	}
}

// The same numbers for any number of workers, to the last bit.
func TestCheapestForAnyWorkers(t *testing.T) {
	g, v := cabin(1)
	if one, three := find(t, g, v, 1), find(t, g, v, 3); !reflect.DeepEqual(one, three) {
		t.Errorf("one worker %v, three %v", one, three)
	}
}

// A part without a price leaves the cost not known, and the search says which; the nights are told all the same.
func TestCheapestWithoutAPrice(t *testing.T) {
	g, v := cabin(1)
	v.Parts[0].Price = unit.Known[unit.Money]{}
	c := find(t, g, v, 2)
	if len(c.Lacks) != 1 || c.Lacks[0].Part != 0 || c.Best >= 0 || c.Today.Cost.Is || c.Front[0].Cost.Is || c.Front[0].Nights == 0 {
		t.Errorf("%+v", c)
	}
	v.Parts = v.Parts[:len(v.Parts)-2] // neither panel nor controller
	if c = find(t, g, v, 2); len(c.Lacks) != 2 || c.Lacks[1] != (Lack{Part: -1, As: cost.AsPanel}) {
		t.Errorf("%+v", c.Lacks)
	}
}

// Half of what the nights ask for is a nearer goal: the cheapest plan costs no more.
func TestCheapestAimsAtTheTarget(t *testing.T) {
	g, v := cabin(1)
	g.Project.Target = unit.Of[unit.Ratio](0.5)
	c := find(t, g, v, 2)
	if c.Needed != needed(0.5, c.Nights) || c.Best < 0 || c.Front[c.Best].Nights < c.Needed || c.Best > 0 && c.Front[c.Best-1].Nights >= c.Needed {
		t.Errorf("best is at %d of %v, of %d wanted", c.Best, c.Front, c.Needed)
	}
}

// A mass that is left out takes its own parts off the bill and leaves the battery's; twice the mass costs twice the rope.
func TestMassLeftOut(t *testing.T) {
	g, v := cabin(2)
	grid := gridOf(g, v, g.Evaluate(v))
	c := grid.now()
	price := func(parts []cost.Part, as cost.As) (sum unit.Money) {
		for _, p := range parts {
			if p.As == as {
				sum += p.Price.Val * unit.Money(p.Count.Or(1))
			}
		}
		return sum
	}
	rope, battery := price(v.Parts, cost.AsRope), price(v.Parts, cost.AsBattery)
	c.Factor = 2
	if w := grid.variant(c); rope <= 0 || price(w.Parts, cost.AsRope) != 2*rope || price(w.Parts, cost.AsDrive) != price(v.Parts, cost.AsDrive) || len(w.Stores) != len(v.Stores) {
		t.Errorf("twice the mass: rope %v of %v", price(w.Parts, cost.AsRope), rope)
	}
	c.Factor = 0
	w := grid.variant(c)
	if price(w.Parts, cost.AsRope) != 0 || price(w.Parts, cost.AsBattery) != battery || len(w.Stores) != len(v.Stores)-1 {
		t.Errorf("no mass: %d stores, rope %v, battery %v of %v", len(w.Stores), price(w.Parts, cost.AsRope), price(w.Parts, cost.AsBattery), battery)
	}
	if len(v.Stores) != 2 || v.Parts[0].Name != catalog.Sample().Variants[2].Parts[0].Name {
		t.Error("the variant itself was changed")
	}
}

// A search that is stopped says so.
func TestCheapestStops(t *testing.T) {
	g, v := cabin(1)
	if _, err := CheapestOf(ended(t), g, v, 2, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("%v, want that it was stopped", err)
	}
	ctx, stop := context.WithCancel(t.Context())
	seen := 0
	_, err := CheapestOf(ctx, g, v, 1, func(done, of int) {
		if seen++; done >= of {
			t.Error("it went on to the end")
		}
		stop()
	})
	if !errors.Is(err, context.Canceled) || seen == 0 {
		t.Errorf("stopped in the middle: %v, %d steps", err, seen)
	}
}

func BenchmarkCheapest(b *testing.B) {
	for _, i := range []int{1, 2} {
		g, v := cabin(i)
		v.Panels = append(v.Panels[:0:0], v.Panels...)
		v.Panels[0].Count.Val = 4
		b.Run(v.Name, func(b *testing.B) {
			for b.Loop() {
				c := find(b, g, v, 1)
				b.ReportMetric(float64(c.Tried), "plans")
			}
		})
	}
}

// A generator burns fuel in some of the plans. With the price of a litre each plan costs what the variant made of it comes to.
// Without it no plan has a cost, none is the best, and the price is asked for.
func TestCheapestCountsFuel(t *testing.T) {
	doc := catalog.Cabin()
	g, v := model.Prepare(doc.Project), doc.Variants[len(doc.Variants)-1]
	c := find(t, g, v, 2)
	if now := g.Evaluate(v); len(c.Lacks) != 0 || c.Best < 0 || !c.Today.Cost.Is || now.Year.Backup.Hours == 0 || math.Abs(float64(c.Today.Cost.Val-now.Cost.Whole.Val)) > 1e-6 {
		t.Errorf("with the price of a litre: %+v, best %d, today %v, as the variant %v in %d hours", c.Lacks, c.Best, c.Today.Cost, now.Cost.Whole, now.Year.Backup.Hours)
	}
	v.Backup.PricePerL = unit.Known[unit.Money]{}
	if c = find(t, g, v, 2); len(c.Lacks) != 1 || c.Lacks[0].Path != "backup.price_per_l" || c.Best >= 0 || c.Today.Cost.Is {
		t.Errorf("without it: %+v, best %d, today %v", c.Lacks, c.Best, c.Today.Cost)
	}
}
