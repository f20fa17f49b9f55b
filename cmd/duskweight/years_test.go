package main

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
)

// evaluate -years N puts N years beside each variant whose year is known, with quantiles that are those of the years
// themselves (definition 7, worked again here) and sums that agree with each other; without the flag there is null.
func TestEvaluateManyYears(t *testing.T) {
	doc := catalog.Sample()
	doc.Variants = append(doc.Variants[:2:2], doc.Variants[0])
	doc.Variants[2].Panels = nil
	data, err := document.Encode(doc)
	if err != nil {
		t.Fatal(err)
	}
	answer := func(args ...string) []any {
		code, stdout, stderr := command(t, string(data), append([]string{"evaluate"}, args...)...)
		if code != 0 {
			t.Fatal(stderr)
		}
		var a object
		if err := json.Unmarshal([]byte(stdout), &a); err != nil {
			t.Fatal(err)
		}
		return a["variants"].([]any)
	}
	for _, v := range answer("-") {
		if y, ok := v.(object)["years"]; !ok || y != nil {
			t.Fatalf("years without the flag: %v", y)
		}
	}
	vs := answer("--years", "21", "-")
	if vs[2].(object)["years"] != nil {
		t.Error("a variant without panels has years")
	}
	for _, v := range vs[:2] {
		y := v.(object)["years"].(object)
		each := y["each"].([]any)
		if y["of"] != "made" || y["basis"] != "means" || y["n"] != 21.0 || len(each) != 21 {
			t.Fatalf("%v years of %v by %v, %d of them", y["n"], y["of"], y["basis"], len(each))
		}
		for key, rounded := range map[string]func(float64) float64{"nights": math.Floor, "night_share": nil, "unmet_j": nil,
			"longest_gap_h": func(x float64) float64 { return 24 * math.Ceil(x/24) }, "gaps": math.Ceil, "gaps_3": math.Ceil} {
			var all []float64
			for _, e := range each {
				all = append(all, e.(object)[key].(float64))
			}
			slices.Sort(all)
			q := y[key].(object)
			for name, want := range map[string]float64{"least": all[0], "p10": all[2], "p50": all[10], "p90": all[18], "most": all[20]} { // of 21, the tenths are years themselves
				if rounded != nil {
					want = rounded(want)
				}
				if q[name] != want {
					t.Errorf("%s of %s: %v, want %v", name, key, q[name], want)
				}
			}
		}
		for _, e := range each {
			e := e.(object)
			if lit, gaps, longest := e["nights"].(float64), e["gaps"].(float64), e["longest_gap_h"].(float64)/24; (gaps == 0) != (lit == 365) || longest > 365-lit || gaps*longest < 365-lit {
				t.Errorf("%v full nights, %v gaps, the longest of %v", lit, gaps, longest)
			}
		}
	}
	if code, _, _ := command(t, string(data), "evaluate", "-years", "-3", "-"); code != exitUsage {
		t.Errorf("a number of years below zero ends with %d", code)
	}
}
