package hoist

import (
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

func HoistOf(v store.Saved[model.Variant]) lift.Hoist { return *v.Value.Stores[0].Hoist }

func WordOf(t *testing.T, v model.Variant, id string) path.Word {
	t.Helper()
	for _, c := range path.Checks(*v.Stores[0].Hoist, lift.Compute(*v.Stores[0].Hoist)) {
		if c.ID == id {
			return c.Word
		}
	}
	t.Fatalf("no check %s", id)
	return ""
}

// Dry sand of 1600 kg/m³ weighs 1.6 kg a litre: a cubic metre is 1000 litres. A US gallon is 3.785411784 litres, so it is
// 6.0567 kg, 13.353 lb of 0.45359237 kg.
func TestHeavyAs(t *testing.T) {
	for sys, want := range map[unit.System]string{unit.Metric: "Weighs 1.6 kg a litre", unit.Imperial: "Weighs 13 lb a US gallon"} {
		if got := strings.ReplaceAll(heavyAs(1600, sys), unit.Space, " "); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
