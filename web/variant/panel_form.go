package variant

import (
	"fmt"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// panelSheetInputs are the values of a panel's data sheet. A panel without any gets an empty sheet, which counts as none.
func panelSheetInputs() []form.Part[panel.Array] {
	type a = panel.Array
	sheet := func(a *a) *panel.Sheet {
		if a.Sheet == nil {
			a.Sheet = &panel.Sheet{}
		}
		return a.Sheet
	}
	return form.Within("sheet", sheet, page.PanelSheetForm()...)
}

// shadeInputs are the shares of the light that trees or houses take from these panels, month by month, as one table.
func shadeInputs() form.Part[panel.Array] {
	months := &form.Group[panel.Array]{Title: "Sunlight lost"}
	for i, name := range form.MonthNames {
		months.Parts = append(months.Parts, shadeInput(i, name))
	}
	return form.Part[panel.Array]{Group: &form.Group[panel.Array]{Title: "Shade by month", Shape: form.ShapeMonths, Fold: true, Brief: shadeInBrief, Parts: []form.Part[panel.Array]{{Group: months}}}}
}

// shadeInput is one month's share. Empty counts as none, and twelve times none is no list at all.
func shadeInput(i int, name string) form.Part[panel.Array] {
	in := form.NewInput[panel.Array](fmt.Sprintf("shade[%d]", i), name, form.AsNumber)
	in.Hint, in.Symbol, in.Spare = "", unit.Percents.Symbol, true
	in.Show = func(a *panel.Array, sys unit.System) string {
		if a.Shade == nil || a.Shade[i] == 0 {
			return ""
		}
		return form.TypedForm(unit.Percents, a.Shade[i], sys)
	}
	in.Read = func(a *panel.Array, text string, sys unit.System) error {
		v, _, err := form.ReadNumber[unit.Ratio](unit.Percents, text, sys)
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
	in.Value = func(a *panel.Array) (float64, bool) {
		if a.Shade == nil {
			return 0, false
		}
		return a.Shade[i], true
	}
	return form.FinishNumber(in, unit.Percents, nil)
}

// shadeInBrief tells the month that has the most.
func shadeInBrief(a *panel.Array, sys unit.System) string {
	if a.Shade == nil {
		return "none"
	}
	return "up to " + unit.Percents.Format(slices.Max(a.Shade[:]), sys)
}

// DropEmptySheets takes away the data sheets that hold nothing.
func DropEmptySheets(v *model.Variant) {
	for i, a := range v.Panels {
		if a.Sheet != nil && *a.Sheet == (panel.Sheet{}) {
			v.Panels[i].Sheet = nil
		}
	}
}
