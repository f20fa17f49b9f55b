package page

import (
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/store"
)

// TestFreeName gives each copy a name that no other has and that a document may hold, however long the first one is.
func TestFreeName(t *testing.T) {
	for _, name := range []string{"Barrel", strings.Repeat("字", model.MaxName), strings.Repeat("ab ", 66) + "ab"} {
		all := []store.Saved[model.Variant]{{Value: model.Variant{Name: name}}}
		taken := map[string]bool{name: true}
		for range model.MaxVariants {
			next := model.Variant{Name: FreeName(all, name)}
			if taken[next.Name] {
				t.Fatalf("%q is taken", next.Name)
			}
			if ps := model.CheckVariant(next); len(ps.Under("name")) > 0 {
				t.Fatalf("%d letters: %v", len([]rune(next.Name)), ps)
			}
			taken[next.Name] = true
			all = append(all, store.Saved[model.Variant]{Value: next})
		}
	}
}
