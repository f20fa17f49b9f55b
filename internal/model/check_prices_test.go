package model_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// low ≤ price ≤ high, as far as they are known; the refusal stands at the end that is wrong.
func TestPricesInOrder(t *testing.T) {
	for _, c := range []struct{ low, price, high, refused string }{
		{"5", "5", "5", ""}, {"", "5", "9", ""}, {"5", "", "9", ""}, {"", "", "", ""},
		{"6", "5", "", "price_low"}, {"6", "", "5", "price_low"}, {"", "5", "4", "price_high"}, {"3", "5", "4", "price_high"},
	} {
		v := catalog.Sample().Variants[1]
		p := &v.Parts[0]
		for text, k := range map[*string]*unit.Known[unit.Money]{&c.low: &p.Low, &c.price: &p.Price, &c.high: &p.High} {
			*k = unit.Known[unit.Money]{}
			if *text != "" {
				*k = unit.Of(unit.Money((*text)[0] - '0'))
			}
		}
		got := ""
		for _, problem := range model.CheckVariant(v) {
			got += strings.TrimPrefix(problem.Path, "parts[0].")
		}
		if got != c.refused {
			t.Errorf("%q, %q, %q: refused at %q, want %q", c.low, c.price, c.high, got, c.refused)
		}
	}
}
