package overview

import (
	"fmt"
	"io"
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// barView is one energy on the common scale.
type barView struct {
	Name, Note, SVG string
	Value, More     string
	How             page.FactView
}

// barsView is what a night needs, what one lift gives and what a small battery holds, on one scale.
type barsView struct {
	page.PictureView
	Scale string
	Each  []barView
}

// barsOf prints the bars of one variant; of is what hangs in it, in numbers.
func barsOf(r model.VariantResult, of, url string, sys unit.System) barsView {
	b, f := r.Facts.Bars(), page.FactsOf(r, sys)
	v := barsView{Scale: "from 0 to " + page.Worked(unit.Of(b.Top), sys)}
	v.ID, v.Title, v.CSV = "bars", "Three amounts", url
	v.Head = []string{"What", "Energy", "Note"}
	energy := func(k unit.Known[unit.Energy]) string { return page.Worked(k, sys) }
	each := draw.PiecesOf(float64(b.Lifts.Val))
	night := barView{Name: "A night needs", Note: f[0].Note, Value: energy(b.Night), How: f[0]}
	if b.Lifts.Is {
		night.More = lifts(b)
		if each > 1 {
			night.More += fmt.Sprintf("; one piece is %s lifts", unit.Thousands(int(each)))
		}
	}
	piece := unit.Energy(0)
	if b.Lift.Is {
		piece = b.Lift.Val * unit.Energy(each)
	}
	night.SVG = barSVG(draw.Bar{Is: b.Night.Val, Top: b.Top, Piece: piece, Look: "night"}, night)
	v.Each = append(v.Each, night, secondBar(r, b, f[2], of, sys))
	depth, volts := b.BatteryDepth()
	battery := barView{Name: "A battery of " + unit.Charges.Format(float64(b.Charge), sys) + " holds", Value: page.Worked(unit.Of(b.Battery), sys),
		Note: unit.Voltages.Format(float64(volts), sys) + ", " + unit.Percents.Format(float64(depth), sys) + " of it used"}
	if b.Nights.Is {
		battery.More = nights(b.Nights.Val)
	}
	battery.SVG = barSVG(draw.Bar{Is: b.Battery, Top: b.Top, Look: "cells"}, battery)
	v.Each = append(v.Each, battery)
	for _, row := range v.Each {
		v.Rows = append(v.Rows, []string{row.Name, row.Value, row.More})
	}
	v.Numbers = func() page.SheetOfNumbers { return barNumbers(r) }
	return v
}

// secondBar is what one lift gives; in a variant where nothing is lifted, what its own battery holds.
func secondBar(r model.VariantResult, b model.Bars, fact page.FactView, of string, sys unit.System) barView {
	if !r.Facts.Lifts {
		k, gives := r.Holds()
		v := barView{Name: k.Holds.Own, Note: of, Value: page.Worked(gives, sys), How: fact}
		v.SVG = barSVG(draw.Bar{Is: gives.Val, Top: b.Top, Look: k.Look}, v)
		return v
	}
	v := barView{Name: "One lift gives", Note: of, Value: page.Worked(b.Lift, sys), How: fact}
	switch t := r.Facts.LiftMinutes; {
	case b.Lift.Is && b.Lift.Val <= 0:
		v.Value, v.More = "nothing", whyNothing(r)
	case t.Is:
		v.More = "what your lamps use in " + form.Lasting(t.Val)
	}
	v.SVG = barSVG(draw.Bar{Is: b.Lift.Val, Top: b.Top, Look: "mass"}, v)
	return v
}

// whyNothing is why a lift gives nothing back, as far as its store says it.
func whyNothing(r model.VariantResult) string {
	for _, s := range r.Stores {
		if s.WhyNot != "" {
			return s.WhyNot
		}
	}
	return ""
}

func barSVG(b draw.Bar, v barView) string {
	b.Title = v.Name + " " + v.Value
	return page.SvgOf(func(w io.Writer) error { return b.Draw(w) })
}

// lifts is how many lifts make one night, with two digits.
func lifts(b model.Bars) string {
	if b.Lifts.Val < 1.05 {
		return "one lift is enough"
	}
	return unit.Rounded(float64(b.Lifts.Val), 2) + " lifts"
}

func nights(n unit.Ratio) string {
	text := unit.Rounded(float64(n), 2)
	if text == "1" {
		return "1 night"
	}
	return text + " nights"
}

// barNumbers are the bars in Wh.
func barNumbers(r model.VariantResult) page.SheetOfNumbers {
	b := r.Facts.Bars()
	wh := func(k unit.Known[unit.Energy]) float64 { return page.OrNone(k) / float64(unit.WattHour) }
	k, gives := r.Holds()
	second := []any{strings.ToLower(k.Holds.Say[:1]) + k.Holds.Say[1:], wh(gives)}
	if r.Facts.Lifts {
		second = []any{"one lift gives", wh(b.Lift)}
	}
	return page.SheetOfNumbers{Name: "one-scale", Head: []string{"what", "energy, Wh"},
		Rows: [][]any{{"a night needs", wh(b.Night)}, second, {"a battery of 12 Ah holds", wh(unit.Of(b.Battery))}}}
}
