package page

import (
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// Tryable is a number of a store that the overview lets its reader try: a slider with its field.
type Tryable struct {
	Name        string // in the form
	Label       string
	Quantity    unit.Quantity
	Least, Most float64 // of the slider, SI; the field takes what the design takes
	Low, High   string  // what such a size is, at the ends of the slider
	Of          func(st model.Store) (si float64, known bool)
	Set         func(st model.Store, si float64) (model.Store, []string) // with the paths inside the store that it changed
	Note        func(st model.Store) string                              // what else moves with it; "" for nothing
}
