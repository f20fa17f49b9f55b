package cells

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// tabNames are the tabs of the answer as they stand in the address, the first the usual one.
var tabNames = []string{"life", "flow", "numbers"}

// tabWords are the tabs as they are read.
var tabWords = map[string]string{"life": "Life and nights", "flow": "Where it went", "numbers": "All numbers"}

// wentFirst are the figures of a year that are shown large, the last first.
var wentFirst = []string{"cycles", "lost", "out", "in"}

// benchView is the answer of the page as it is laid out.
type benchView struct {
	Tabs     []page.Tab
	Tab      string
	Headline string
	Large    []page.PairView
	Flags    []page.FlagView
	Life     lifeView
	Flow     *page.PictureView
	Year     []page.PairView
	All      cellsView
	Url      string
}

// lifeView is how long the battery lasts, and what its nights are while it wears.
type lifeView struct {
	Say  string
	Span string // SVG; dashed where the life is not known
	Top  string // end of its axis
	Worn []wornRow
}

// wornRow is a year of the battery with what is left of its capacity.
type wornRow struct{ Name, Note, Strip, Full, Of string }

// levelView is the charge level through the year.
type levelView struct {
	Picture *page.PictureView
	Facts   []page.PairView
	Days    form.LinkView // the days without sun that it shall last
	Said    string        // those days
	Week    *page.PictureView
	Open    string // address that shows the worst week; "" where there is none
	Shut    string
}

// benchAnswer prints the answer of a design with the places of the page that follow it.
func (h *cellsPage) benchAnswer(v model.Variant, at benchAt) (page.Answer, error) {
	whole := h.evaluate(v)
	b := h.benchOf(v, whole, at, nil)
	if at.part == "" { // the card follows what is saved
		b.open = h.benchOf(h.Saved.Value, h.whole(), at, nil).open
		b.open = min(b.open, len(b.states)-1)
	}
	say, squares := b.progress()
	view := b.view()
	return page.Answer{First: view.Headline, Bands: page.StoreBands(whole, h.i, h.sys, h.links(v)),
		Also: []page.Piece{{ID: "progress", Body: page.PartProgress(say, squares)}, {ID: "which", Body: whichBattery(h.batteries(whole))},
			{ID: "drawing", Body: plate(page.SvgOf(b.sketch().Draw), b.over60())}, {ID: "parts-list", Body: benchList(b.rows(), view.All.Against, at.url+"?"+page.NameAll+"=1")},
			{ID: "level", Body: chargeLevel(b.level())}},
		Body: benchResults(view)}, nil
}

// view prints the answer.
func (b *bench) view() benchView {
	v := benchView{Tab: b.at.show, Url: b.at.url, All: b.h.view(b.whole, b.v)}
	v.Headline = v.All.Headline
	for _, f := range v.All.Facts {
		v.Large = append(v.Large, page.PairView{Name: f.Label, Value: f.Value})
	}
	for _, name := range tabNames {
		v.Tabs = append(v.Tabs, page.Tab{Text: tabWords[name], URL: b.at.link(func(a *benchAt) { a.show = name }, "#answer"), Here: name == b.at.show})
	}
	switch b.at.show {
	case "life":
		v.Life = b.life()
	case "flow":
		v.Flow = b.flow()
		rows := slices.Clone(v.All.Year) // what went in and out is shown large
		slices.SortStableFunc(rows, func(a, b page.FigureRow) int {
			return cmp.Compare(slices.Index(wentFirst, b.ID), slices.Index(wentFirst, a.ID))
		})
		for _, row := range rows {
			v.Year = append(v.Year, page.PairView{Name: row.Name, Value: row.Value})
		}
	}
	return v
}

// life is how long the battery lasts.
func (b *bench) life() lifeView {
	l := b.c.Life
	v := lifeView{Say: "Not known yet: too little is known of the battery or of its year.", Span: draw.Span{}.Draw()}
	years := func(r unit.Ratio) string { return unit.Rounded(float64(r), 2) }
	if usual, ok := l.Years.Value(); ok && l.Known {
		low, high := l.YearsLow.Or(usual), l.YearsHigh.Or(usual)
		top := 5 * math.Ceil(float64(high)*1.1/5)
		v.Span = draw.Span{Low: float64(low), Usual: float64(usual), High: float64(high), Top: top, Known: true}.Draw()
		v.Top = unit.Rounded(top, 3) + " years"
		v.Say = fmt.Sprintf("About %s years until %s of its capacity is left; %s in a bad case, %s at most. Use causes %s %% of the wear, age the rest.",
			years(usual), unit.Percents.Format(b.c.Resolved.End(), b.h.sys), years(low), years(high), unit.Rounded(100*l.Wear/(l.Wear+l.Shelf+1e-300), 2))
	} else if l.Known {
		v.Say = "Nothing wears it in this year."
	}
	names := []string{"New", "Halfway", "Last year"}
	for i, w := range b.whole.Worn {
		if w.Nights == 0 || i >= len(names) {
			break
		}
		full := float64(w.NightsFull)
		row := wornRow{Name: names[i], Note: "capacity " + unit.Percents.Format(w.Share, b.h.sys), Full: page.Itoa(int(w.NightsFull)), Of: "of " + page.Itoa(int(w.Nights)) + " full",
			Strip: draw.Span{Low: full, Usual: full, High: full, Top: float64(w.Nights), Known: true}.Draw()}
		if y, ok := l.Years.Value(); ok && w.Part > 0 {
			row.Note += ", year " + page.Itoa(int(math.Max(1, math.Round(float64(y)*w.Part))))
		}
		v.Worn = append(v.Worn, row)
	}
	return v
}

// flow is where the energy of the battery went in a year; nil where the year is not known.
func (b *bench) flow() *page.PictureView {
	y := b.st.Year
	if !b.st.InYear || y.Taken <= 0 {
		return nil
	}
	sys := b.h.sys
	f := draw.Flow{Name: "Where the energy of the battery went", Whole: draw.FlowPart{Name: "Put in, a year", Energy: y.Taken}, Parts: []draw.FlowPart{
		{Name: "given to lamps and devices", Energy: y.ToAppliances, Becomes: draw.ToLight},
		{Name: "given to what uses power all the time: heat", Energy: y.ToStanding, Becomes: draw.ToHeat},
		{Name: "lost on the way in", Energy: y.FillLoss, Becomes: draw.ToHeat},
		{Name: "lost on the way out", Energy: y.DrawLoss, Becomes: draw.ToHeat},
		{Name: "lost by itself", Energy: y.Leaked, Becomes: draw.ToHeat},
	}}
	v := page.PictureView{ID: "went", Title: f.Name, Head: []string{"A year", "Energy", "Share"}, SVG: page.SvgOf(f.Draw)}
	for _, p := range f.Parts {
		v.Rows = append(v.Rows, []string{p.Name, unit.BigEnergies.Format(float64(p.Energy), sys), unit.Percents.Format(float64(p.Energy/y.Taken), sys)})
	}
	v.Say = "Of what is put in, " + unit.Percents.Format(float64(y.Delivered/y.Taken), sys) + " is given back."
	return &v
}

// level is the charge level through the year with what the weather does to it, and the worst week where it is asked for.
func (b *bench) level() levelView {
	var v levelView
	if p, ok := page.StatePicture(b.whole, b.h.i); ok {
		p.Title, p.CSV = "Charge level through the year", page.VariantURL(b.h.project, b.h.Saved.ID)+"/"+p.ID+".csv"
		v.Picture = &p
	}
	if l := b.c.Life; l.Known {
		hours := func(n int) string { return page.Counted(n, "hour") }
		v.Facts = []page.PairView{{Name: "Frost, a year", Value: hours(l.BelowZero)}, {Name: "Too cold or too hot to charge", Value: hours(l.NoFillHours)},
			{Name: "Longest time without being full", Value: form.Lasting(l.NotFull)}, {Name: "Deepest discharge", Value: unit.Rounded(100*float64(l.Deepest), 2) + " %"}}
	}
	v.Days = form.LinkView{Text: "Days without sun to last", URL: page.FieldURL(b.at.url, model.Join(b.prefix, "autonomy_days"))}
	v.Said = page.Known(b.c.Design.Autonomy, unit.Ratios, b.h.sys)
	if b.whole.Year.WorstWeek.Unmet > 0 && b.whole.Year.Hourly != nil {
		if !b.at.week {
			v.Open = b.at.link(func(a *benchAt) { a.week = true }, "#week")
			return v
		}
		v.Shut = b.at.link(func(a *benchAt) { a.week = false }, "#level")
		p := page.WeekPicture(page.WeekOf(b.h.ground(), b.whole), b.h.sys)
		p.CSV = page.VariantURL(b.h.project, b.h.Saved.ID) + "/" + p.ID + ".csv"
		v.Week = &p
	}
	return v
}

// batteries are the batteries of a variant; the page draws one at a time.
func (h *cellsPage) batteries(whole model.VariantResult) (out []page.Tab) {
	for i, st := range whole.Stores {
		if model.CellsOf(st) == nil {
			continue
		}
		out = append(out, page.Tab{Text: page.OrUnnamed(st.Name), URL: page.StoreURL(h.project, h.Saved.ID, i, "cells"), Here: i == h.i})
	}
	for i := range out {
		out[i].Text = page.Itoa(i+1) + ": " + out[i].Text
	}
	return out
}
