package web

import (
	"fmt"
	"net/http"

	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
)

// The page Panel and store together: /projects/{project}/variants/{variant}/sweep.

// sweepView is the table of nights, ready to print.
type sweepView struct {
	Say, Best, Why string
	Store          string // over the names of the rows
	Panels         []string
	Rows           []sweepRow
	Back           linkView
}

type sweepRow struct {
	Name  string
	Cells []sweepCell
}

// sweepCell is one pair: its nights, the class of its band, and a sign that says the same without colour.
type sweepCell struct {
	Nights, Sign, Band, Cost string
	Today, Best              bool
}

func (s *Site) showSweep(w http.ResponseWriter, r *http.Request) error {
	p, v, sys, err := s.variantIn(r)
	if err != nil {
		return err
	}
	back := variantURL(p.ID, v.ID) + "/takes"
	f, err := s.variantFrame(r.Context(), p, v, "Panel and store together", back)
	if err != nil {
		return err
	}
	sweep, err := search.SweepOf(r.Context(), s.grounds.of(p), v.Value)
	if err != nil {
		return err
	}
	view := sweepViewOf(sweep, p.Value.Currency, sys)
	view.Back = linkView{"Back to what it would take", back}
	return s.show(w, r, http.StatusOK, f, sweepPage(view))
}

// sweepBands are the bands of nights with light, from the best: at least this share, its class and its sign.
var sweepBands = []struct {
	share            float64
	class, sign, say string
}{
	{search.Target, "band-4", "●", "at least 95 % of the nights"},
	{0.75, "band-3", "◕", "at least 75 %"},
	{0.5, "band-2", "◑", "at least half"},
	{0.1, "band-1", "◔", "at least a tenth"},
	{0, "band-0", "○", "less"},
}

func sweepViewOf(s search.Sweep, currency string, sys unit.System) sweepView {
	out := sweepView{Say: "Nights with light in a usual year. Panels grow with their controller; all else stays as it is."}
	if len(s.Cells) == 0 {
		out.Why = "There is no year to try yet: it takes a place, a night load, panels and a store."
		return out
	}
	out.Store = map[string]string{"battery": "Battery", "mass": "Mass, with its gears"}[s.Store]
	for _, c := range s.Cells[0] {
		out.Panels = append(out.Panels, panelPower(s, c.Panel, sys))
	}
	for _, cells := range s.Cells {
		row := sweepRow{Name: storeSize(s, cells[0].Size, sys)}
		for i := range cells {
			c := cells[i]
			cell := sweepCell{Nights: itoa(c.Nights), Today: c.Today, Best: s.Best != nil && c == *s.Best}
			for _, b := range sweepBands {
				if float64(c.Nights) >= b.share*float64(c.Of) {
					cell.Band, cell.Sign = b.class, b.sign
					break
				}
			}
			if c.Cost.Is {
				cell.Cost = unit.Rounded(float64(c.Cost.Val), 3) + " " + currency
			}
			row.Cells = append(row.Cells, cell)
		}
		out.Rows = append(out.Rows, row)
	}
	out.Best = bestPair(s, currency, sys)
	return out
}

func bestPair(s search.Sweep, currency string, sys unit.System) string {
	met, priced := false, false
	for _, row := range s.Cells {
		for _, c := range row {
			met, priced = met || c.Meets, priced || c.Cost.Is
		}
	}
	switch {
	case !met:
		return "No pair here has light in 95 % of the nights."
	case s.Best != nil:
		return fmt.Sprintf("The cheapest pair with light in 95 %% of the nights: %s of panel with %s, %s for all parts.",
			panelPower(s, s.Best.Panel, sys), storeSize(s, s.Best.Size, sys), unit.Rounded(float64(s.Best.Cost.Val), 3)+" "+currency)
	case !priced:
		return "Which pair is cheapest is not known: the panels or another part have no price in the list of parts."
	}
	return ""
}

// panelPower is the power of all panels times f.
func panelPower(s search.Sweep, f float64, sys unit.System) string {
	return unit.Powers.Format(f*float64(s.Power), sys)
}

// storeSize is the size of the store that grows, times f.
func storeSize(s search.Sweep, f float64, sys unit.System) string {
	if s.Store == "battery" {
		return known(grown(s.Charge, f), unit.Charges, sys)
	}
	return known(grown(s.Mass, f), unit.Masses, sys)
}

func grown[T unit.Number](k unit.Known[T], f float64) unit.Known[T] {
	k.Val *= T(f)
	return k
}
