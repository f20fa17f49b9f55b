package web

import (
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
)

// panelSheetInputs are the values of a panel's data sheet. A panel without any gets an empty sheet, which counts as none.
func panelSheetInputs() []part[panel.Array] {
	type a = panel.Array
	sheet := func(a *a) *panel.Sheet {
		if a.Sheet == nil {
			a.Sheet = &panel.Sheet{}
		}
		return a.Sheet
	}
	return []part[a]{
		number("sheet.voc_v", "Voltage, open", unit.Voltages, func(a *a) *unit.Known[unit.Voltage] { return &sheet(a).Voc }, hint[a]("Voc")),
		number("sheet.isc_a", "Current, wires joined", unit.Currents, func(a *a) *unit.Known[unit.Current] { return &sheet(a).Isc }, hint[a]("Isc")),
		number("sheet.vmp_v", "Voltage, best point", unit.Voltages, func(a *a) *unit.Known[unit.Voltage] { return &sheet(a).Vmp }, hint[a]("Vmp")),
		number("sheet.imp_a", "Current, best point", unit.Currents, func(a *a) *unit.Known[unit.Current] { return &sheet(a).Imp }, hint[a]("Imp")),
		number("sheet.alpha_isc_per_k", "Current with temperature", unit.PerKelvins, func(a *a) *unit.Known[unit.PerKelvin] { return &sheet(a).Alpha }, hint[a]("above zero")),
		number("sheet.beta_voc_per_k", "Voltage with temperature", unit.PerKelvins, func(a *a) *unit.Known[unit.PerKelvin] { return &sheet(a).Beta }, hint[a]("below zero")),
		number("sheet.cells_in_series", "Cells in a row", unit.Counts, func(a *a) *unit.Known[unit.Count] { return &sheet(a).Cells }),
		number("sheet.panels_in_series", "Panels in a row", unit.Counts, func(a *a) *unit.Known[unit.Count] { return &sheet(a).Series }),
	}
}
