package web

import (
	"fmt"
	"net/http"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
)

// The page What it would take: /projects/{project}/variants/{variant}/takes. It asks the model some hundred times, so it
// is a page of its own and not a part of the answer that follows typing.

// takesView is the ways to carry the night, ready to print.
type takesView struct {
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

func (s *Site) showTakes(w http.ResponseWriter, r *http.Request) error {
	p, v, sys, err := s.variantIn(r)
	if err != nil {
		return err
	}
	f, err := s.variantFrame(r.Context(), p, v, "What it would take", variantURL(p.ID, v.ID)+"/takes")
	if err != nil {
		return err
	}
	g := s.grounds.of(p)
	now := g.Evaluate(v.Value)
	takes, err := search.WhatItTakes(r.Context(), g, v.Value, now)
	if err != nil {
		return err
	}
	view := takesView{Name: v.Value.Name, Sweep: variantURL(p.ID, v.ID) + "/sweep", Say: fmt.Sprintf("To have light in %s of the nights, with one thing changed alone and the rest as it is.", unit.Percents.Format(search.Target, sys))}
	if g.Sky == nil {
		view.Say = "The place is not known yet; without it there is no year to try."
	}
	for _, t := range takes {
		row := takeRowOf(t, sys)
		view.Rows = append(view.Rows, row)
		view.Grows, view.Breaks = view.Grows || row.Grows != "", view.Breaks || row.Breaks != ""
	}
	if b, ok := now.Facts.NightBattery.Value(); ok && now.Verdict != model.CarriesNight && !slices.ContainsFunc(takes, func(t search.Take) bool { return t.What == "battery" }) {
		view.Rows = append(view.Rows, takeRow{What: "A battery beside it", Answer: "12.8 V and " + unit.Charges.Format(float64(b), sys) + " hold what one mean night needs, 80 % of it used. Add one on the page of the variant."})
	}
	if view.Season, err = seasonOf(r.Context(), g, v.Value, now, sys); err != nil {
		return err
	}
	return s.show(w, r, http.StatusOK, f, takesPage(view))
}

var takeNames = map[string]string{"mass": "A heavier mass", "height": "A greater height", "battery": "A larger battery", "panels": "More panels", "load": "The most the lamps may need"}

func takeRowOf(t search.Take, sys unit.System) takeRow {
	row := takeRow{What: takeNames[t.What], Grows: strings.Join(t.Grows, "; "), Breaks: t.Breaks}
	if t.Open != "" {
		row.Answer = "Not known yet: " + t.Open + "."
		return row
	}
	if !t.Found {
		row.Answer = "None would do: " + t.WhyNot + "."
		return row
	}
	times := unit.Rounded(t.Factor, 3) + " × as much: "
	switch {
	case t.What == "load":
		row.Answer = known(t.Load, unit.Energies, sys) + " in a mean night, " + unit.Rounded(t.Factor, 2) + " × as much as now."
	case t.Have:
		row.Answer = "It is enough as it is."
	case t.What == "mass":
		row.Answer = times + tonnes(t.Mass.Val, sys) + "."
	case t.What == "height":
		row.Answer = times + known(t.Height, unit.Lengths, sys) + "."
	case t.What == "battery":
		row.Answer = times + known(t.Charge, unit.Charges, sys) + "."
	case t.What == "panels":
		row.Answer = times + known(t.Power, unit.Powers, sys) + "."
	}
	return row
}
