package web

import (
	"fmt"
	"io"
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// Pictures that need no script: SVG of package draw, each with a title and the sentence that reads it.

func svgOf(d func(io.Writer) error) string {
	var b strings.Builder
	if err := d(&b); err != nil {
		return "" // a strings.Builder takes everything
	}
	return b.String()
}

// picturesOf are the pictures of a variant's year: every night, a typical day of the poorest month, and for a hoist its
// mass against its height.
func picturesOf(r model.VariantResult, sys unit.System) []pictureView {
	if !r.YearKnown || r.Year.Nights == 0 {
		return nil
	}
	out := []pictureView{nightsPicture(r), dayPicture(r)}
	for _, s := range r.Stores {
		if s.Hoist != nil && s.Hoist.Drive.Mass.Is {
			return append(out, massPicture(r, s.Hoist, sys))
		}
	}
	return out
}

func nightsPicture(r model.VariantResult) pictureView {
	states := make([]int8, len(r.Year.NightLog))
	for d, n := range r.Year.NightLog {
		switch {
		case !n.Counted:
			states[d] = draw.NotCounted
		case n.Served:
			states[d] = draw.Served
		case n.Essential:
			states[d] = draw.PartlyServed
		default:
			states[d] = draw.Dark
		}
	}
	return pictureView{Title: "The nights of the year", Say: fmt.Sprintf("Light all night in %d of %d nights; the essential things in %d.", r.Year.NightsServed, r.Year.Nights, r.Year.NightsEssential),
		SVG: svgOf(func(w io.Writer) error { return draw.Nights(states, w) })}
}

// dayPicture is the typical day of the month that leaves the least sun over.
func dayPicture(r model.VariantResult) pictureView {
	m := max(r.Facts.SurplusMonth, 1) - 1
	d := draw.TypicalDay{Name: "A usual day in " + monthNames[m], Sun: make([]float64, 24), Load: make([]float64, 24)}
	stored := make([]float64, 24)
	for h, c := range r.Year.Typical[m] {
		d.Sun[h], d.Load[h] = float64(c.Bus), float64(c.Load)
		for _, x := range c.State {
			stored[h] += float64(x)
		}
	}
	if len(r.Year.Stores) > 0 {
		d.Stored = stored
	}
	for _, s := range r.Stores {
		d.Mass = d.Mass || s.InYear && s.Hoist != nil && len(r.Year.Stores) == 1
	}
	return pictureView{Title: d.Name, Say: "Sun at the line and load in watts, mean of each hour of the month that leaves the least sun over; below, what is stored in watt-hours.",
		SVG: svgOf(func(w io.Writer) error { return draw.Day(d, w) })}
}

func massPicture(r model.VariantResult, h *model.HoistResult, sys unit.System) pictureView {
	m := draw.MassAgainstHeight{Mass: h.Drive.Mass, Height: h.Design.Travel}
	if sys == unit.Imperial {
		m.MassUnit, m.MassTitle, m.HeightUnit, m.HeightTitle = unit.Pound, "mass, lb", unit.Foot, "height of travel, ft"
	}
	lines := []float64{1, 10, 100, 1000}
	for _, wh := range lines {
		m.Lines = append(m.Lines, draw.Energies{Energy: unit.Energy(wh) * unit.WattHour, Name: unit.Energies.Format(wh*3600, sys)})
	}
	say := "Each line is one energy, before any loss."
	if need, ok := r.Facts.NightAppliances.Value(); ok && need > 0 {
		all := need + r.Facts.NightStanding.Val
		m.Lines = append(m.Lines, draw.Energies{Energy: all, Name: "a night", Strong: true})
		say = "Each line is one energy, before any loss; one of them is what a night needs."
	}
	return pictureView{Title: "Mass against height", Say: say, SVG: svgOf(func(w io.Writer) error { return draw.MassHeight(m, w) })}
}
