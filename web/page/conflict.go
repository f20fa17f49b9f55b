package page

import (
	"duskweight/internal/model/unit"
	"duskweight/web/form"
)

// ConflictRows are the values in which what is stored now differs from what was typed.
func ConflictRows[T any](f form.Form[T], current, yours T, sys unit.System) []ConflictRow {
	var rows []ConflictRow
	for _, d := range f.Differences(current, yours, sys) {
		saved, typed := d.Sides()
		rows = append(rows, ConflictRow{Label: d.Label, Saved: saved, Yours: typed})
	}
	return rows
}
