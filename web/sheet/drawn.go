package sheet

import (
	"slices"

	"duskweight/internal/model"
	"duskweight/web/page"
)

// The sheet draws one hoist, the first of the variant; the other stores have their own blocks on it (page.Kind).

// drawnHoist is the hoist that is drawn, nil for none, and how many more there are.
func drawnHoist(r model.VariantResult) (first *model.HoistResult, more int) {
	for _, s := range r.Stores {
		switch h := model.HoistOf(s); {
		case h != nil && first == nil:
			first = h
		case h != nil:
			more++
		}
	}
	return first, more
}

// fellSince reports whether a hoist fell or took a shock since every part was looked at.
func fellSince(r model.VariantResult) bool {
	return slices.ContainsFunc(r.Stores, func(s model.StoreResult) bool {
		h := model.HoistOf(s)
		return h != nil && page.LooksOwed(h.Checks) > 0
	})
}
