package page

import (
	"fmt"

	"duskweight/internal/model"
	"duskweight/internal/store"
)

// FreeName puts a number behind a name, shortened where it is too long for that, until no variant has it.
func FreeName(variants []store.Saved[model.Variant], name string) string {
	taken := map[string]bool{}
	for _, v := range variants {
		taken[v.Value.Name] = true
	}
	for n := 2; ; n++ {
		if next := model.FitName(name, fmt.Sprintf(", %d", n)); !taken[next] {
			return next
		}
	}
}
