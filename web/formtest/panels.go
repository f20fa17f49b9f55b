// Package formtest is a form, a variant for it and what a browser sends of it, for tests that need no site.
package formtest

import (
	"encoding/json"
	"net/url"
	"strconv"

	"duskweight/internal/model"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
)

// PanelForm is a small form of a variant, with a list, a fold, a choice and a typical value.
func PanelForm() form.Form[model.Variant] {
	gamma := func(a *panel.Array) *unit.Known[unit.PerKelvin] { return &a.Gamma }
	return form.Form[model.Variant]{
		Parts: []form.Part[model.Variant]{
			form.Text("name", "Name", func(v *model.Variant) *string { return &v.Name }),
			form.Rows("panels", "Panels", "group of panels", 3, func(v *model.Variant) *[]panel.Array { return &v.Panels }, panel.Array{Name: "new"},
				form.Text("name", "Place", func(a *panel.Array) *string { return &a.Name }),
				form.Number("count", "How many", unit.Counts, func(a *panel.Array) *unit.Known[unit.Count] { return &a.Count }),
				form.Number("panel_w", "Power of one", unit.Powers, func(a *panel.Array) *unit.Known[unit.Power] { return &a.Power }),
				form.Folded("Heat", "",
					form.Number("gamma_per_k", "Change with temperature", unit.PerKelvins, gamma),
					form.Word("cell_temperature", "Method for the cell temperature", func(a *panel.Array) *panel.CellModel { return &a.Cell }))),
		},
		Origins: func(v *model.Variant) *model.Origins { return &v.Origins },
		Check:   model.CheckVariant,
	}
}

// OneVariant is a variant for PanelForm: two groups of panels, with typical values.
func OneVariant() model.Variant {
	return model.Variant{
		Name: "A", Controller: panel.Controller{Kind: panel.ControllerTracking},
		Panels: []panel.Array{
			{Name: "roof", Count: unit.Of[unit.Count](2), Power: unit.Of[unit.Power](100), Cell: panel.CellFaiman},
			{Name: "wall", Count: unit.Of[unit.Count](1), Power: unit.Of[unit.Power](50), Gamma: unit.Of[unit.PerKelvin](-0.004), Cell: panel.CellFaiman},
		},
		Origins: model.Origins{"panels[1].gamma_per_k": {Kind: model.OriginTypical, Source: "x"}, "panels[0].count": {Kind: model.OriginTypical}},
	}
}

// SentBack is what a browser sends when nobody typed anything.
func SentBack(f form.Form[model.Variant], v model.Variant, sys unit.System) url.Values {
	typed := url.Values{}
	var collect func([]form.PartView)
	collect = func(parts []form.PartView) {
		for _, p := range parts {
			switch {
			case p.Field != nil:
				typed.Set(p.Field.Path, p.Field.Value)
			case p.Group != nil:
				collect(p.Group.Parts)
			case p.List != nil:
				typed.Set(p.List.Path+form.RowsSuffix, strconv.Itoa(p.List.Count))
				for _, r := range p.List.Rows {
					collect(r.Parts)
				}
			}
		}
	}
	collect(f.View(&v, nil, nil, sys).Parts)
	return typed
}

// Dump is v as JSON, to compare.
func Dump(v any) string {
	b, err := json.Marshal(v)
	if err != nil {
		return err.Error()
	}
	return string(b)
}
