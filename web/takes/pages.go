// Package takes shows the page What it would take (…/takes below a variant) and panel and store together (…/sweep).
package takes

import (
	"context"
	"fmt"
	"math"
	"net/http"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct {
	*page.Site
	found page.Shared[page.ResultKey, found]
	swept page.Shared[page.ResultKey, search.Sweep]
}

// OfVariant hangs the pages below the address of the variant.
func (s *Pages) OfVariant(r chi.Router) {
	r.Get("/takes", s.Page(s.showTakes))
	r.Get("/sweep", s.Page(s.showSweep))
	r.Get("/sweep.csv", s.Page(s.sendSweepCSV))
	r.Get("/sweep-lines.csv", s.Page(s.sendContoursCSV))
}

// The page What it would take: /projects/{project}/variants/{variant}/takes. It asks the model some hundred times, so it
// is a page of its own and not a part of the answer that follows typing.

// takesView is the ways to carry the night, ready to print.
type takesView struct {
	Bands         []page.BandView
	Name, Say     string
	Rows          []takeRow
	Grows, Breaks bool // some row has one
	Season        seasonView
	Sweep         string // address
}

type takeRow struct {
	What, Answer, Grows string
	Breaks              string
}

func (s *Pages) showTakes(w http.ResponseWriter, r *http.Request) error {
	p, v, sys, err := s.VariantIn(r)
	if err != nil {
		return err
	}
	f, err := s.VariantFrame(r.Context(), p, v, "What it would take", page.VariantURL(p.ID, v.ID)+"/takes")
	if err != nil {
		return err
	}
	g := s.Grounds.Of(p)
	now := s.Results.Of(p, v)
	is, err := s.found.Of(r.Context(), s.Results.Key(p, v), func(ctx context.Context) (found, error) { return find(ctx, g, v.Value, now) })
	if err != nil {
		return page.LeftOr(r, err)
	}
	view := takesView{Name: v.Value.Name, Sweep: page.VariantURL(p.ID, v.ID) + "/sweep", Say: aimSay(is.aim, now.Year.Nights, sys)}
	if g.Sky == nil {
		view.Say = "The place is not known yet; without it there is no year to try."
	}
	view.Bands = []page.BandView{page.VariantBand(now, sys, s.LinksOf(p, v.Value, v.ID).To)}
	takes := is.takes
	if !now.Open.IsZero() { // one sentence for all of them
		view.Say, takes = "Nothing can be tried yet: "+now.Open.In(sys)+".", nil
	}
	for _, t := range takes {
		row := takeRowOf(t, sys)
		view.Rows = append(view.Rows, row)
		view.Grows, view.Breaks = view.Grows || row.Grows != "", view.Breaks || row.Breaks != ""
	}
	if b, ok := now.Facts.BatteryBeside(); ok && now.Verdict != model.CarriesNight {
		view.Rows = append(view.Rows, takeRow{What: "A battery beside it", Answer: "A battery of 12.8 V and " + unit.Charges.Format(float64(b), sys) + " holds what a mean night needs, when 80 % of its capacity is used. Add one on the page of the variant."})
	}
	view.Season = seasonOf(s.Tables.Stores, v.Value, now, is.levers, sys)
	return s.Show(w, r, http.StatusOK, f, takesPage(view))
}

// found is what the searches of the page come to. It is shared and not changed.
type found struct {
	takes  []search.Take
	aim    search.Aim
	levers []search.Lever // none where the year is not known, or no night is
}

func find(ctx context.Context, g model.Ground, v model.Variant, now model.VariantResult) (is found, err error) {
	if is.takes, is.aim, err = search.WhatItTakes(ctx, g, v, now); err != nil || !tried(now) {
		return is, err
	}
	is.levers, err = search.Levers(ctx, g, v, now)
	return is, err
}

// aimSay tells what is searched for.
func aimSay(a search.Aim, nights int, sys unit.System) string {
	share := unit.Percents.Format(search.Target, sys)
	const alone = "One thing is changed alone, and the rest stays as it is."
	if a.Made == 0 {
		return fmt.Sprintf("To have light in %s of the nights of the average year, in which every month is at its mean. %s", share, alone)
	}
	return fmt.Sprintf("To have %d of %d full nights, %s of them, in 9 of 10 made years. %s The search uses %d made years, and its result is confirmed on all %s.",
		int(math.Ceil(search.Target*float64(nights))), nights, share, alone, a.Tried, unit.Thousands(a.Made))
}

var takeNames = map[string]string{"panels": "More panels", "load": "The most the lamps may need"}

func takeRowOf(t search.Take, sys unit.System) takeRow {
	row := takeRow{What: takeNames[t.What], Grows: say.List("; ", t.Grows...).In(sys), Breaks: t.Breaks}
	if t.Lever != nil {
		row.What = t.Lever.More
	}
	if !t.Open.IsZero() {
		row.Answer = "Not known yet: " + t.Open.In(sys) + "."
		return row
	}
	if !t.Found {
		row.Answer = "No size is enough: " + t.WhyNot.In(sys) + "."
		return row
	}
	times := unit.Rounded(t.Factor, 3) + " × as much: "
	switch {
	case t.What == "load":
		row.Answer = page.Known(t.Load, unit.Energies, sys) + " in a mean night, " + unit.Rounded(t.Factor, 2) + " × as much as now."
	case t.Have:
		row.Answer = "This variant is enough as it is."
	case t.Lever != nil && t.Lever.Quantity == unit.Masses:
		row.Answer = times + page.Tonnes(unit.Mass(t.Size.Val), sys) + "."
	case t.Lever != nil:
		row.Answer = times + page.Known(t.Size, t.Lever.Quantity, sys) + "."
	case t.What == "panels":
		row.Answer = times + page.Known(t.Power, unit.Powers, sys) + "."
	}
	return row
}
