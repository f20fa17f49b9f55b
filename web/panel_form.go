package web

import (
	"fmt"
	"slices"

	"duskweight/internal/model"
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

// shadeInputs are the shares of the light that trees or houses take from these panels, month by month, as one table.
func shadeInputs() part[panel.Array] {
	months := &group[panel.Array]{title: "Light taken"}
	for i, name := range monthNames {
		months.parts = append(months.parts, shadeInput(i, name))
	}
	return part[panel.Array]{group: &group[panel.Array]{title: "Shade by month", shape: shapeMonths, fold: true, brief: shadeInBrief, parts: []part[panel.Array]{{group: months}}}}
}

// shadeInput is one month's share. Empty counts as none, and twelve times none is no list at all.
func shadeInput(i int, name string) part[panel.Array] {
	in := newInput[panel.Array](fmt.Sprintf("shade[%d]", i), name, asNumber)
	in.hint, in.symbol, in.spare = "", unit.Percents.Symbol, true
	in.show = func(a *panel.Array, sys unit.System) string {
		if a.Shade == nil || a.Shade[i] == 0 {
			return ""
		}
		return typedForm(unit.Percents, a.Shade[i], sys)
	}
	in.read = func(a *panel.Array, text string, sys unit.System) error {
		v, _, err := readNumber[unit.Ratio](unit.Percents, text, sys)
		if err != nil {
			return err
		}
		var own [12]float64
		if a.Shade != nil {
			own = *a.Shade
		}
		own[i] = float64(v)
		a.Shade = nil
		if own != [12]float64{} {
			a.Shade = &own
		}
		return nil
	}
	in.value = func(a *panel.Array) (float64, bool) {
		if a.Shade == nil {
			return 0, false
		}
		return a.Shade[i], true
	}
	return finishNumber(in, unit.Percents, nil)
}

// shadeInBrief tells the month that has the most.
func shadeInBrief(a *panel.Array, sys unit.System) string {
	if a.Shade == nil {
		return "none"
	}
	return "up to " + unit.Percents.Format(slices.Max(a.Shade[:]), sys)
}

// dropEmptySheets takes away the data sheets that hold nothing.
func dropEmptySheets(v *model.Variant) {
	for i, a := range v.Panels {
		if a.Sheet != nil && *a.Sheet == (panel.Sheet{}) {
			v.Panels[i].Sheet = nil
		}
	}
}
