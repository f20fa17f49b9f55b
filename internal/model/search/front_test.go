package search

import (
	"encoding/json"
	"os"
	"testing"

	"duskweight/internal/model/unit"
)

// The front and the best of eleven plans, of an independent calculation of the same rule.
func TestFrontAgainstReference(t *testing.T) {
	data, err := os.ReadFile("../../../../shared/reference/home-checks.json")
	if err != nil {
		t.Skip("the reference values are not here: ", err)
	}
	var checks []struct {
		ID     string `json:"id"`
		Inputs struct {
			Plans  [][2]float64 `json:"plans_cost_nights"`
			Nights int          `json:"nights_counted"`
			OfTen  float64      `json:"target_of_10"`
		} `json:"inputs"`
		Expected struct {
			Front [][2]float64 `json:"front"`
			Best  [2]float64   `json:"best"`
		} `json:"expected"`
	}
	if err := unmarshalOnly(data, "pareto", &checks); err != nil {
		t.Fatal(err)
	}
	if len(checks) != 1 {
		t.Fatalf("%d checks of that name", len(checks))
	}
	c := checks[0]
	var plans []Plan
	for _, p := range c.Inputs.Plans {
		plans = append(plans, Plan{Cost: unit.Of(unit.Money(p[0])), Nights: int(p[1])})
	}
	got := front(plans)
	if len(got) != len(c.Expected.Front) {
		t.Fatalf("%d on the front, want %d", len(got), len(c.Expected.Front))
	}
	for i, want := range c.Expected.Front {
		if float64(got[i].Cost.Val) != want[0] || float64(got[i].Nights) != want[1] {
			t.Errorf("place %d: %v, want %v", i, got[i], want)
		}
	}
	b := firstWith(got, c.Inputs.OfTen/10, c.Inputs.Nights)
	if b < 0 || float64(got[b].Cost.Val) != c.Expected.Best[0] || float64(got[b].Nights) != c.Expected.Best[1] {
		t.Errorf("best is at %d, want %v", b, c.Expected.Best)
	}
}

// unmarshalOnly reads the objects of a list that have an id; the others have other keys.
func unmarshalOnly(data []byte, id string, out any) error {
	var all []json.RawMessage
	if err := json.Unmarshal(data, &all); err != nil {
		return err
	}
	var mine []json.RawMessage
	for _, one := range all {
		var named struct{ ID string }
		if err := json.Unmarshal(one, &named); err != nil {
			return err
		}
		if named.ID == id {
			mine = append(mine, one)
		}
	}
	again, err := json.Marshal(mine)
	if err != nil {
		return err
	}
	return json.Unmarshal(again, out)
}

// Of two plans that cost the same and give the same, the one with fewer panels stands on the front, then the flatter one.
func TestFrontTies(t *testing.T) {
	plan := func(panels int, tilt unit.Angle) Plan {
		return Plan{Choice: Choice{Panels: panels, Tilt: tilt}, Cost: unit.Of[unit.Money](100), Nights: 300}
	}
	got := front([]Plan{plan(4, 0.2), plan(3, 0.9), plan(3, 0.5)})
	if len(got) != 1 || got[0].Panels != 3 || got[0].Tilt != 0.5 {
		t.Errorf("%v", got)
	}
}

// 347 of 365 nights are 95 %: 346.75. Of 300, a third is 100 and not 101.
func TestNeeded(t *testing.T) {
	for _, c := range []struct {
		share        float64
		nights, want int
	}{{0.95, 365, 347}, {1, 365, 365}, {1.0 / 3, 300, 100}, {0.001, 365, 1}} {
		if got := needed(c.share, c.nights); got != c.want {
			t.Errorf("%g of %d: %d, want %d", c.share, c.nights, got, c.want)
		}
	}
}

// Without costs: 3 panels with 2 batteries reach the nights, and so do 2 with 4; 4 with 2 and 3 with 4 have more of something and
// less of nothing.
func TestFewest(t *testing.T) {
	plan := func(panels, blocks, nights int) Plan {
		return Plan{Choice: Choice{Panels: panels, Blocks: blocks, Factor: 1}, Nights: nights}
	}
	plans := []Plan{plan(4, 2, 360), plan(3, 2, 350), plan(3, 4, 362), plan(2, 4, 347), plan(2, 2, 300)}
	if got := fewest(plans, 347); len(got) != 2 || got[0] != plan(2, 4, 347) || got[1] != plan(3, 2, 350) {
		t.Errorf("%v", got)
	}
	if got := fewest(plans, 365); len(got) != 1 || got[0] != plan(3, 4, 362) {
		t.Errorf("where none reaches them: %v", got)
	}
}

// Today is among the numbers that are tried, and they end at the most.
func TestCounts(t *testing.T) {
	for _, c := range []struct{ now, most, n int }{{1, 3, 3}, {4, 12, 12}, {1, 12, 12}, {7, 21, 12}, {50, 150, 12}, {13, 39, 12}} {
		got := counts(c.now, c.most)
		if len(got) != c.n || got[len(got)-1] != c.most {
			t.Errorf("%d to %d: %v", c.now, c.most, got)
		}
		there := false
		for i, x := range got {
			there = there || x == c.now
			if x < 1 || i > 0 && x <= got[i-1] {
				t.Errorf("%d to %d: %v", c.now, c.most, got)
			}
		}
		if !there {
			t.Errorf("%d is not in %v", c.now, got)
		}
	}
}
