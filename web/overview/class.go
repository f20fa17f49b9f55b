package overview

import (
	"io"
	"net/http"
	"strconv"

	"duskweight/internal/draw"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The overview for a class: /projects/{p}?class=1. Large letters, no name of anything, nothing to save. The bars wait until
// somebody has guessed how many lifts a night takes; the danger does not wait.

// The names in the address.
const (
	nameClass = "class"
	nameGuess = "guess"
)

// classView is the page for a class, ready to print.
type classView struct {
	Bands        []page.BandView
	URL, ID      string // the project, and the variant that it is about
	Leave        string
	What         []string // what is lifted, and for how long the lamps burn
	Guess, Wrong string
	Answer       string
	Headline     string
	Bars         barsView
	Day          page.DayView
}

// classURL is the address for a class.
func classURL(a asked) string {
	u := page.ProjectURL(a.project.ID) + "?" + nameClass + "=1"
	if a.focus >= 0 {
		u += "&v=" + strconv.FormatInt(a.variants[a.focus].ID, 10)
	}
	return u
}

func (s *Pages) showClass(w http.ResponseWriter, r *http.Request, a asked) error {
	v := s.classOf(a, r.URL.Query().Get(nameGuess))
	f := page.Frame{Title: "How many lifts make one night?", Style: "overview.css", Script: "overview.js", Class: true, Refused: v.Wrong != ""}
	return s.Show(w, r, http.StatusOK, f, classPage(v))
}

// classOf prints the page; guess is the text that was typed, empty before.
func (s *Pages) classOf(a asked, guess string) classView {
	v := classView{URL: page.ProjectURL(a.project.ID), Leave: a.here(), Guess: guess}
	for i, r := range a.results {
		b := page.VariantBand(r, a.sys, nil)
		if b.Of = "Shown here:"; i != a.focus {
			b.Of = "Another variant:"
		}
		if i == a.focus || b.Bars || b.State == reason.No {
			v.Bands = append(v.Bands, b)
		}
	}
	if a.focus < 0 {
		return v
	}
	v.ID = strconv.FormatInt(a.variants[a.focus].ID, 10)
	r := a.results[a.focus]
	if len(r.Stores) > 0 && r.Facts.Lifts {
		v.What = append(v.What, s.Tables.Stores.StoreIs(r.Stores[0], a.sys).Value+" is lifted by day.")
	}
	if h, ok := a.ground.Load.LitHours(a.project.Value.Load).Value(); ok {
		v.What = append(v.What, "The lamps burn for "+form.Lasting(h)+" a night.")
	}
	n, known, err := unit.Ratios.Parse(guess, a.sys)
	switch {
	case guess == "":
		return v
	case err != nil || !known || n <= 0 || n > 1e6:
		v.Wrong = "Type how many lifts, from 1 to a million."
		return v
	}
	return s.opened(a, v, n)
}

// opened adds what stands there once somebody has guessed n lifts.
func (s *Pages) opened(a asked, v classView, n float64) classView {
	r := a.results[a.focus]
	b := r.Facts.Bars()
	v.Headline, _ = page.HeadlineOf(r, a.sys)
	is := ""
	if len(r.Stores) > 0 {
		is = s.Tables.Stores.StoreIs(r.Stores[0], a.sys).Value
	}
	v.Bars = barsOf(r, is, "", a.sys)
	v.Bars.Title = "One scale"
	guessed := unit.Rounded(n, 3) + " lifts"
	gives := b.Gives(n)
	row := barView{Name: "Your guess gives", Note: guessed, Value: page.Worked(gives, a.sys)}
	row.SVG = page.SvgOf(func(w io.Writer) error {
		return draw.Bar{Title: row.Name + " " + row.Value, Is: gives.Val, Top: b.Top, Look: "mass"}.Draw(w)
	})
	v.Bars.Each = append([]barView{row}, v.Bars.Each...)
	for i := range v.Bars.Each {
		v.Bars.Each[i].How = page.FactView{}
	}
	v.Answer = "You guessed " + guessed + ". "
	switch {
	case b.Lift.Is && b.Lift.Val <= 0:
		v.Answer += "One lift gives nothing back, so no number of lifts is enough."
	case b.Lifts.Is && b.Lifts.Val < 1.05:
		v.Answer += "One lift is enough for a usual night."
	case b.Lifts.Is:
		v.Answer += "A night needs " + lifts(b) + "."
	default:
		v.Answer += "The number of lifts is not known yet."
	}
	for _, st := range r.Stores {
		if tell := s.Tables.Stores.Of(st.Kind).Idea.Day; tell != nil {
			if day, ok := tell(a.ground, r, st, a.month, a.sys); ok {
				v.Day = day
				break
			}
		}
	}
	return v
}
