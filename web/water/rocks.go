package water

import (
	"io"
	"net/http"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/page"
)

// The page Rocks, water or cells: /projects/{project}/rocks. It changes nothing; energy and height stand in the address.

// Names in the address.
const (
	nameEnergy = "energy"
	nameHeight = "height"
)

// What counts where nothing is typed: a height, and the energy of a night where that of the project is not known.
const (
	usualHeight = 5
	usualNight  = 500 * unit.WattHour
)

// rocksView is the page, ready to print.
type rocksView struct {
	URL     string
	Fields  []rocksField
	First   string
	Say     []string
	Picture page.PictureView
	OfWhat  string
}

// rocksField is one number to type, and what is wrong with it.
type rocksField struct{ ID, Label, Value, Problem string }

func (s *Pages) showRocks(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Project(r)
	if err != nil {
		return err
	}
	sys, err := s.Units(r.Context())
	if err != nil {
		return err
	}
	here := page.ProjectURL(p.ID) + "/rocks"
	f, err := s.ProjectFrame(r.Context(), p, "Rocks, water or cells", here)
	if err != nil {
		return err
	}
	return s.Show(w, r, http.StatusOK, f, rocksPage(rocksOf(r, s.Grounds.Of(p), here, sys)))
}

// sendRocks sends the numbers of the picture.
func (s *Pages) sendRocks(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Project(r)
	if err != nil {
		return err
	}
	sys, err := s.Units(r.Context())
	if err != nil {
		return err
	}
	return page.SendCSV(w, rocksOf(r, s.Grounds.Of(p), "", sys).Picture.Numbers())
}

// rocksOf reads what was typed and reckons.
func rocksOf(r *http.Request, g model.Ground, here string, sys unit.System) rocksView {
	night, of := float64(usualNight), "What a night of this project needs is not known yet, so we use a usual energy."
	if nights, ok := g.Nights(); ok && nights.MeanNight > 0 {
		night, of = float64(nights.MeanNight), "The energy is what lamps and devices of this project need in a mean night."
	}
	v := rocksView{URL: here, OfWhat: of}
	typed := func(name, label string, q unit.Quantity, usual float64) float64 {
		text := r.URL.Query().Get(name)
		f := rocksField{ID: name, Label: label + page.CommaUnit(q.Symbol(sys)), Value: text}
		si, known, err := q.Parse(text, sys)
		switch {
		case err != nil:
			f.Problem = err.Error()
		case known && si > 0 && q.Plausible(si):
			if name == nameEnergy {
				v.OfWhat = ""
			}
			usual = si
		case known:
			f.Problem = "Type a number that a home may have: " + q.Format(si, sys) + " is too small or too large."
		default:
			f.Value = q.Number(usual, sys)
		}
		if f.Problem != "" {
			f.Problem += " Until then " + q.Format(usual, sys) + " counts."
		}
		v.Fields = append(v.Fields, f)
		return usual
	}
	energy := typed(nameEnergy, "Energy of a night", unit.Energies, night)
	height := typed(nameHeight, "Height", unit.Heights, usualHeight)
	v.reckon(unit.Energy(energy), unit.Length(height), here+"/rocks.csv?"+r.URL.RawQuery, sys)
	return v
}

// reckon fills in sentences and picture.
func (v *rocksView) reckon(e unit.Energy, height unit.Length, csv string, sys unit.System) {
	is := model.Weigh(e, height)
	rock, water, charge := say.Mass(is.Rock).To(2).In(sys), say.Of(unit.BigVolumes, float64(is.Water)).To(2).In(sys), say.Charge(is.Charge).To(2).In(sys)
	if is.Rock >= 10*unit.Tonne && sys == unit.Metric {
		rock = page.Tonnes(is.Rock, sys)
	}
	what := say.That("%s from %s", say.Energy(e).To(2), say.Height(height).To(2)).In(sys)
	v.First = "For " + what + " you need " + rock + " of rock, or " + water + " of water. A battery of " + charge + " at 12.8 V gives the same."
	v.Say = []string{"Rock that falls kills. A tank that gives way kills. Children drown in open water.", "Water weighs as much as rock for the same work. It needs no rope and no brake.", "A small pump and turbine give back 10 to 25 %, a good hoist 40 to 60 %, a battery 80 to 95 %.",
		"Frost stops water.", "If you need water anyway, pump it by day: that saves more."}
	ofRock, ofWater, ofCells := is.Sides()
	cubes := draw.Cubes{Title: "Rock, water and a battery for " + what, Desc: "A person is on the left, " + say.Height(draw.PersonTall).In(sys) + " tall. Beside the person are cubes of rock, water and battery, all to one scale.",
		Each: []draw.Cube{{Side: ofRock, Look: "mass", Name: "rock", Value: rock}, {Side: ofWater, Look: "water", Name: "water", Value: water}, {Side: ofCells, Look: "cells", Name: "battery", Value: charge}}}
	length := func(l unit.Length) string { return say.Height(l).In(sys) }
	v.Picture = page.PictureView{ID: "rocks", Title: "To scale", Say: cubes.Desc, CSV: csv, Head: []string{"What", "How much", "Side of its cube"},
		Rows: [][]string{{"rock", rock, length(ofRock)}, {"water", water, length(ofWater)}, {"battery", charge, length(ofCells)}}}
	v.Picture.SVG = page.SvgOf(func(out io.Writer) error { return cubes.Draw(out) })
	v.Picture.Numbers = func() page.SheetOfNumbers {
		side := page.ScaleOf(unit.Lengths, sys)
		return page.SheetOfNumbers{Name: "rocks-water-cells", Head: []string{"what", side.Axis("side of its cube")},
			Rows: [][]any{{"rock", side.Of(float64(ofRock))}, {"water", side.Of(float64(ofWater))}, {"battery", side.Of(float64(ofCells))}}}
	}
}
