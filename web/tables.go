package web

import (
	"duskweight/web/cells"
	"duskweight/web/compare"
	"duskweight/web/hoist"
	"duskweight/web/load"
	"duskweight/web/page"
	"duskweight/web/parts"
	"duskweight/web/place"
	"duskweight/web/shelf"
	"duskweight/web/trials"
	"duskweight/web/variant"
	"duskweight/web/water"
)

// AllTables gathers the tables of all forms.
func AllTables() page.Tables {
	return page.Tables{
		Place: place.PlaceForm, Load: load.LoadForm, Shelf: shelf.ShelfForm, Money: compare.MoneyForm, Variant: variant.WholeForm, OfSeason: variant.OnSeason, TidyVariant: variant.DropEmptySheets, Parts: parts.PartsForm,
		Stores: page.Kinds{hoist.Kind(trials.TrialsForm), cells.Kind(), water.Kind()},
	}
}
