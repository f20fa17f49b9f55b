package web

import (
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
)

// Tables holds the inputs table of every form, for the pages that tell of all of them: history, comparison, guide, and
// the links to a value that is missing. The page of a form makes its table; the site hands all of them on.
type Tables struct {
	Place   func(*model.Project) []part[model.Project]
	Load    func() []part[load.Load]
	Shelf   func() []part[model.Shelf]
	Money   func() []part[cost.Terms]
	Variant func() []part[model.Variant] // without the insides of its stores
	Parts   func() []part[model.Variant]
	Hoist   func() []part[lift.Hoist]
	Trials  func() []part[lift.Hoist]
	Cells   func() []part[cell.Bank]
}

// AllTables gathers the tables of all forms.
func AllTables() Tables {
	return Tables{
		Place: placeForm, Load: loadForm, Shelf: shelfForm, Money: moneyForm, Variant: variantForm, Parts: partsForm,
		Hoist: hoistForm, Trials: trialsForm, Cells: cellsForm,
	}
}
