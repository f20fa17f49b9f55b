package model_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// A problem that stands without its field says what is wrong with what, in the reader's units: 1000 m/0.3048 = 3280.8 ft,
// which is rounded into the range, 2000 m/0.3048 = 6561.68 ft. A document is told in SI, beside its key.
func TestProblemWhole(t *testing.T) {
	v := catalog.Sample().Variants[0]
	h := *v.HoistAt(0)
	h.Travel, h.Rope.Kind = unit.Of[unit.Length](2000), "hemp"
	v.Stores = []model.Store{{Hoist: &h}}
	ps := model.CheckVariant(v).Under("stores[0].hoist.travel_m")
	if len(ps) != 1 {
		t.Fatal(ps)
	}
	plain := func(s string) string { return strings.ReplaceAll(s, unit.Space, " ") }
	for sys, want := range map[unit.System]string{
		unit.Metric:   "Height of travel, lower stop to upper stop: must be more than 0 m and at most 1 000 m; it is 2 000 m",
		unit.Imperial: "Height of travel, lower stop to upper stop: must be more than 0 ft and at most 3 280 ft; it is 6 561.68 ft",
	} {
		if got := plain(ps.Whole()[0].Say.In(sys)); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if got, want := ps[0].String(), "stores[0].hoist.travel_m: must be more than 0 and at most 1000; it is 2000"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	word := model.CheckVariant(v).Under("stores[0].hoist.rope.kind")
	if len(word) != 1 || !word[0].Whole().Is(word[0].Say) {
		t.Errorf("a word that is not in its list: %v", word)
	}
}
