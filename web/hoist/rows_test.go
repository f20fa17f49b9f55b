package hoist

import (
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
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
