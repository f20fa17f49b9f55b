package guide

import (
	"cmp"

	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/typical"
)

// typicalPage is the list of one form's numbers for the guide.
type typicalPage struct {
	Title string
	Rows  []typicalRow
}

// typicalRow is one number: what is typical of it, what is usual, and the source or the reason for having none.
type typicalRow struct{ Label, Typical, Usual, Source string }

// typicalPages lists what is usual for every number that has a typical value, and for those without one why not.
func typicalPages(of page.Tables, sys unit.System) []typicalPage {
	out := []typicalPage{
		{"Place and sun", rowsOf(of.Place(&model.Project{}), &model.Project{Place: sun.Place{Horizon: make([]sun.Horizon, 1)}}, sys)},
		{"Night load", rowsOf(of.Load(), &load.Load{Appliances: make([]load.Appliance, 1), Standing: make([]load.Standing, 1)}, sys)},
		{"Panels, controller and backup", rowsOf(of.Variant(), &model.Variant{Panels: make([]panel.Array, 1)}, sys)},
	}
	for _, k := range of.Stores {
		for _, p := range k.Inputs.Usual() {
			out = append(out, typicalPage{p.Title, typicalRows(p.Rows, sys)})
		}
	}
	return append(out, typicalPage{"Parts and money", append(rowsOf(of.Parts(), &model.Variant{Parts: make([]cost.Part, 1)}, sys), rowsOf(of.Money(), &model.Project{}, sys)...)})
}

func rowsOf[T any](parts []form.Part[T], t *T, sys unit.System) []typicalRow {
	return typicalRows(form.UsualsOf(parts, t), sys)
}

func typicalRows(usuals []form.UsualOf, sys unit.System) []typicalRow {
	var rows []typicalRow
	for _, u := range usuals {
		rows = append(rows, typicalRowOf(u.Usual, u.Label, sys))
	}
	return rows
}

func typicalRowOf(u typical.Usual, label string, sys unit.System) typicalRow {
	row := typicalRow{Label: label, Typical: "none", Usual: cmp.Or(u.Between(sys), "–"), Source: u.Why}
	if u.Why == typical.WhyStrength {
		row.Usual = "–"
	}
	if u.Typical() {
		row.Typical, row.Source = u.Quantity.Format(u.Take, sys), u.Source().String()
	}
	return row
}
