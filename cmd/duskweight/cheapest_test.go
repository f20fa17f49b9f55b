package main

import (
	"encoding/json"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
)

// cheapest prints a front with rising costs and nights, the best of it, and the path of a price that is missing; a refused
// document ends with 1 and prints nothing.
func TestCheapestCommand(t *testing.T) {
	doc := catalog.Sample()
	doc.Variants = doc.Variants[1:2]
	v := &doc.Variants[0]
	v.Parts = append(v.Parts, cost.Part{Name: "Panel of 100 W", Of: cost.OfPanel, As: cost.AsPanel, Price: unit.Of[unit.Money](60)})
	type plan struct {
		Panels, Blocks *int
		Factor         *float64
		Tilt           *float64 `json:"tilt_rad"`
		Low            *float64 `json:"cost_low"`
		Cost           *float64 `json:"cost"`
		High           *float64 `json:"cost_high"`
		Nights         *int     `json:"nights_full"`
		Bad            *int     `json:"nights_p10"`
	}
	var got struct {
		Variants []struct {
			Name    string
			Needed  int `json:"nights_needed"`
			Front   []plan
			Best    *plan
			Missing []struct{ Path, As string } `json:"missing_prices"`
		}
	}
	ask := func() {
		t.Helper()
		data, err := document.Encode(doc)
		if err != nil {
			t.Fatal(err)
		}
		code, stdout, stderr := command(t, string(data), "cheapest", "-")
		if code != exitDone || stderr != "" {
			t.Fatalf("ends with %d: %s", code, stderr)
		}
		if err := json.Unmarshal([]byte(stdout), &got); err != nil || len(got.Variants) != 1 {
			t.Fatalf("%v: %s", err, stdout)
		}
	}
	ask()
	one := got.Variants[0]
	if one.Name != v.Name || len(one.Front) < 2 || one.Best == nil || *one.Best.Nights < one.Needed || len(one.Missing) != 0 {
		t.Fatalf("%+v", one)
	}
	for i, p := range one.Front {
		if p.Panels == nil || p.Blocks == nil || p.Factor == nil || p.Tilt == nil || p.Bad == nil || !(*p.Low <= *p.Cost && *p.Cost <= *p.High) {
			t.Errorf("place %d: %+v", i, p)
		}
		if i > 0 && !(*p.Cost > *one.Front[i-1].Cost && *p.Nights > *one.Front[i-1].Nights) {
			t.Errorf("place %d does not cost and give more than the one before", i)
		}
	}
	v.Parts[0].Price = unit.Known[unit.Money]{}
	ask()
	if one = got.Variants[0]; one.Best != nil || len(one.Missing) != 1 || one.Missing[0].Path != "parts[0].price" || one.Front[0].Cost != nil {
		t.Errorf("without a price: %+v", one)
	}

	if code, stdout, stderr := command(t, `{"duskweight":1}`, "cheapest", "-"); code != exitRefused || stdout != "" || stderr == "" {
		t.Errorf("a refused document ends with %d, prints %q and %q", code, stdout, stderr)
	}
	for _, args := range [][]string{{"cheapest"}, {"cheapest", "a", "b"}, {"cheapest", "-x", "-"}} {
		if code, _, _ := command(t, "", args...); code != exitUsage {
			t.Errorf("%v ends with %d", args, code)
		}
	}
}
