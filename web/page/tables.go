package page

import (
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/web/form"
)

// Tables holds the inputs table of every form, for the pages that tell of all of them: history, comparison, guide, and
// the links to a value that is missing. The page of a form makes its table; the site hands all of them on.
type Tables struct {
	Place   func(*model.Project) []form.Part[model.Project]
	Load    func() []form.Part[load.Load]
	Shelf   func() []form.Part[model.Shelf]
	Money   func() []form.Part[model.Project]
	Variant func() []form.Part[model.Variant] // without the insides of its stores
	// OfSeason reports whether a path of a variant stands on its page of season, dust and snow.
	OfSeason func(path string) bool
	// TidyVariant takes out of a variant what its form made and nobody filled.
	TidyVariant func(*model.Variant)
	Parts       func() []form.Part[model.Variant]
	Stores      Kinds
}
