package hoist

import (
	"io"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

func massPicture(r model.VariantResult, s model.StoreResult, sys unit.System) (page.PictureView, bool) {
	h := model.HoistOf(s)
	if !h.Drive.Mass.Is {
		return page.PictureView{}, false
	}
	m := draw.MassAgainstHeight{Mass: h.Drive.Mass, Height: h.Design.Travel, Units: sys}
	for _, wh := range []float64{1, 10, 100, 1000} {
		m.Lines = append(m.Lines, draw.Energies{Energy: unit.Energy(wh) * unit.WattHour, Name: unit.Energies.Format(wh*3600, sys)})
	}
	v := page.PictureView{ID: "mass", Title: "Mass against height", Say: "Each line is one amount of energy, before losses.", Head: []string{"What", "Value"},
		Rows: [][]string{{"Mass today", page.Known(h.Drive.Mass, unit.Masses, sys)}, {"Travel today", page.Known(h.Design.Travel, unit.Heights, sys)}, {"Energy of one lift, before any loss", page.Known(h.Drive.RaiseEnergyMech, unit.Energies, sys)}}}
	if need, ok := r.Facts.NightAppliances.Value(); ok && need > 0 {
		all := need + r.Facts.NightStanding.Val
		m.Lines = append(m.Lines, draw.Energies{Energy: all, Name: "a night", Strong: true})
		v.Rows = append(v.Rows, []string{"What a night needs", unit.Energies.Format(float64(all), sys)})
		v.Say = "Each line is one amount of energy, before losses. The thick line is what a night needs; the ring is today’s design."
	}
	v.SVG = page.SvgOf(func(w io.Writer) error { return draw.MassHeight(m, w) })
	v.Numbers = func() page.SheetOfNumbers { return massNumbers(m, sys) }
	return v, true
}

// massNumbers is the heights at which masses have each energy of the picture, in the units of the page.
func massNumbers(m draw.MassAgainstHeight, sys unit.System) page.SheetOfNumbers {
	mass, height := page.ScaleOf(unit.Masses, sys), page.ScaleOf(unit.Lengths, sys)
	t := page.SheetOfNumbers{Name: "mass-against-height", Head: []string{"line", mass.Axis("mass"), height.Axis("height")}}
	if m.Mass.Is && m.Height.Is {
		t.Rows = append(t.Rows, []any{"today", mass.Of(float64(m.Mass.Val)), height.Of(float64(m.Height.Val))})
	}
	for _, l := range m.Lines {
		for _, kg := range []float64{10, 100, 1000, 10000, 100000} {
			t.Rows = append(t.Rows, []any{l.Name, mass.Of(kg), height.Of(float64(l.Energy) / (kg * unit.G))})
		}
	}
	return t
}
