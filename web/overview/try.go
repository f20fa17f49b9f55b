package overview

import (
	"errors"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The numbers that may be tried on the overview: mass and height of the variant that the bars are about, and how long the
// lamps burn. Trying saves nothing; Keep these saves what was changed.

// The names in the form, beside those of the numbers.
const (
	nameHours   = "hours"
	nameWas     = "_was" // behind a name: the text that the field had
	nameProject = "project_revision"
	nameVariant = "variant_revision"
)

// slider is one number that may be tried, ready to print.
type slider struct {
	ID, Name, Label, Unit string
	Value, Was            string
	Least, Most, Step     string // of the slider, in the unit shown
	At                    string // where it stands
	Low, High, Note       string
	Problem               string
}

// dial is a number that may be tried, where it is in project or variant.
type dial struct {
	page.Tryable
	store int // the store's place in the variant; −1: how long the lamps burn
}

// hoursDial is how long the lamps burn: those with hours of their own go off earlier or later together.
var hoursDial = page.Tryable{Name: nameHours, Label: "Light at night", Quantity: unit.Hours, Least: 0.5 * 3600, Most: 12 * 3600, Low: "half an hour", High: "till dawn"}

// dials are the numbers that may be tried: those of the first store that has any, and the hours.
func (s *Pages) dials(a asked) (out []dial) {
	if a.focus < 0 {
		return nil
	}
	for i, st := range a.variants[a.focus].Value.Stores {
		if try := s.Tables.Stores.Of(st.Kind()).Idea.Try; len(try) > 0 {
			for _, t := range try {
				out = append(out, dial{t, i})
			}
			break
		}
	}
	if a.ground.Load.LitHours(a.project.Value.Load).Is {
		out = append(out, dial{hoursDial, -1})
	}
	return out
}

// of is the value of a number as it is stored.
func (a asked) of(d dial) (float64, bool) {
	if d.store < 0 {
		h := a.ground.Load.LitHours(a.project.Value.Load)
		return float64(h.Val), h.Is
	}
	return d.Of(a.variants[a.focus].Value.Stores[d.store])
}

// sliders prints the numbers that may be tried, with the texts that were typed.
func (s *Pages) sliders(a asked, typed url.Values, problems map[string]string) (out []slider) {
	for _, d := range s.dials(a) {
		si, known := a.of(d)
		text := ""
		if known {
			text = unit.Typed(d.Quantity.NumberTo(si, a.sys, 3, unit.Nearest))
		}
		scale := page.ScaleOf(d.Quantity, a.sys)
		least, most := scale.Of(d.Least), scale.Of(d.Most)
		step := 0.1
		if most-least > 60 {
			step = 1
		}
		v := slider{ID: "try-" + d.Name, Name: d.Name, Label: d.Label, Unit: scale.Unit, Value: text, Was: text, Low: d.Low, High: d.High, Problem: problems[d.Name],
			Least: unit.Rounded(least, 2), Most: unit.Rounded(most, 3), Step: unit.Rounded(step, 1), At: strconv.FormatFloat(max(least, min(most, scale.Of(si))), 'f', 2, 64)}
		v.Least, v.Most = unit.Typed(v.Least), unit.Typed(v.Most)
		if typed.Has(d.Name) {
			v.Value = typed.Get(d.Name)
		}
		if d.store < 0 {
			v.Note = "All lamps with hours of their own go off earlier or later together."
		} else if d.Note != nil {
			v.Note = d.Note(a.variants[a.focus].Value.Stores[d.store])
		}
		out = append(out, v)
	}
	return out
}

// change is what a form of numbers changes.
type change struct {
	variant, project string            // in words, for the history; empty where nothing changed
	problems         map[string]string // by the name of the field
}

// tried puts the numbers of a form into project and variant and works them out. What is typed as it was stays as it is, to
// the last digit.
func (s *Pages) tried(a *asked, typed url.Values) change {
	c := change{problems: map[string]string{}}
	for _, d := range s.dials(*a) {
		text := typed.Get(d.Name)
		if !typed.Has(d.Name) || text == typed.Get(d.Name+nameWas) {
			continue
		}
		was, known := a.of(d)
		si, is, err := d.Quantity.Parse(text, a.sys)
		switch {
		case err != nil:
			c.problems[d.Name] = form.Sentence(err.Error())
			continue
		case !is:
			c.problems[d.Name] = "Type a number."
			continue
		}
		said := d.Label + ": " + toText(d, was, known, a.sys) + " → " + toText(d, si, true, a.sys)
		if d.store < 0 {
			p := document.Clone(a.project.Value)
			p.Load = p.Load.Later(unit.Duration(si - was))
			a.project.Value, c.project = p, said
		} else {
			a.set(d, si)
			c.variant = strings.TrimPrefix(c.variant+", "+said, ", ")
		}
		if problems := a.wrong(s, d); len(problems) > 0 {
			c.problems[d.Name] = form.Sentence(problems[0].Say.In(a.sys))
		}
	}
	if len(c.problems) == 0 {
		a.again(c)
	}
	return c
}

func toText(d dial, si float64, known bool, sys unit.System) string {
	if !known {
		return "not known"
	}
	return d.Quantity.Format(si, sys)
}

// set puts a number into the variant in focus. What is typed is the user's own, whatever it was before.
func (a *asked) set(d dial, si float64) {
	v := document.Clone(a.variants[a.focus].Value)
	st, paths := d.Set(v.Stores[d.store], si)
	at := v.Stores[d.store].Kind().Path(d.store)
	for _, p := range paths {
		delete(v.Origins, model.Join(at, p))
	}
	v.Stores[d.store] = st
	a.variants = slices.Clone(a.variants)
	a.variants[a.focus].Value = v
}

// wrong is what a project or variant refuses of a number.
func (a asked) wrong(s *Pages, d dial) model.Problems {
	if d.store < 0 {
		return model.CheckProject(a.project.Value)
	}
	return model.CheckVariantOn(a.variants[a.focus].Value, reason.Today(s.Now()))
}

// again works out what changed: with another load every variant, else the one in focus.
func (a *asked) again(c change) {
	a.results = slices.Clone(a.results)
	if c.project != "" {
		a.ground = a.ground.Loaded(a.project.Value)
		for i, v := range a.variants {
			a.results[i] = a.ground.Evaluate(v.Value)
		}
	} else if c.variant != "" {
		a.results[a.focus] = a.ground.Evaluate(a.variants[a.focus].Value)
	}
}

// tryNumbers answers for numbers as they are typed, and saves nothing.
func (s *Pages) tryNumbers(w http.ResponseWriter, r *http.Request) error {
	a, err := s.ask(r)
	if err != nil {
		return err
	}
	if err := page.ParseForm(r); err != nil {
		return err
	}
	stored := a
	c := s.tried(&a, r.PostForm)
	if page.WantsPart(r) {
		if len(c.problems) > 0 {
			return s.Write(w, r, http.StatusUnprocessableEntity, notUsed(s.sliders(stored, r.PostForm, c.problems)))
		}
		v := s.overviewOf(a)
		v.Range = page.RangeView{} // it is that of what is saved
		return s.Write(w, r, http.StatusOK, answerParts(v))
	}
	return s.showTried(w, r, stored, a, c)
}

// showTried is the whole page with the numbers as they are typed.
func (s *Pages) showTried(w http.ResponseWriter, r *http.Request, stored, a asked, c change) error {
	status := http.StatusOK
	if len(c.problems) > 0 {
		status, a = http.StatusUnprocessableEntity, stored
	}
	v := s.overviewOf(a)
	if len(c.problems) == 0 {
		v.Range = page.RangeView{}
	}
	v.Sliders, v.Tried = s.sliders(stored, r.PostForm, c.problems), len(c.problems) == 0
	for _, one := range v.Sliders {
		if one.Problem != "" {
			v.Problems = append(v.Problems, form.ProblemView{ID: one.ID, Label: one.Label, Say: one.Problem})
		}
	}
	return s.showView(w, r, status, stored, v)
}

// keepNumbers saves the numbers that were changed, and comes back to the overview.
func (s *Pages) keepNumbers(w http.ResponseWriter, r *http.Request) error {
	a, err := s.ask(r)
	if err != nil {
		return err
	}
	if err := page.ParseForm(r); err != nil {
		return err
	}
	if a.focus < 0 {
		return page.ErrNotFound
	}
	project, badP := strconv.ParseInt(r.PostForm.Get(nameProject), 10, 64)
	variant, badV := strconv.ParseInt(r.PostForm.Get(nameVariant), 10, 64)
	if errors.Join(badP, badV) != nil {
		return page.BadRequest("The form does not say which revision it was made from. Open the page again.")
	}
	stored := a
	c := s.tried(&a, r.PostForm)
	if len(c.problems) > 0 {
		return s.showTried(w, r, stored, a, c)
	}
	if c.project != "" && project != a.project.Revision || c.variant != "" && variant != a.variants[a.focus].Revision {
		return store.ErrStale // before either is saved
	}
	v := a.variants[a.focus]
	switch {
	case c.variant != "" && c.project != "": // one press of the button is one step of undo
		of, whole := store.Edit{Revision: variant, Said: c.variant}, store.Edit{Revision: project, Said: c.project + "; " + c.variant}
		if err := s.Store.SaveTogether(r.Context(), v.ID, v.Value, of, a.project.ID, a.project.Value, whole, s.Now()); err != nil {
			return err
		}
	case c.variant != "":
		if _, err := s.Store.SaveVariant(r.Context(), v.ID, v.Value, store.Edit{Revision: variant, Said: c.variant}, s.Now()); err != nil {
			return err
		}
	case c.project != "":
		if _, err := s.Store.SaveProject(r.Context(), a.project.ID, a.project.Value, store.Edit{Revision: project, Said: c.project}, s.Now()); err != nil {
			return err
		}
	}
	return page.SeeOther(w, r, stored.here())
}

// here is the address of the page with the variant that its bars are about.
func (a asked) here() string {
	u := page.ProjectURL(a.project.ID)
	if a.focus >= 0 {
		u += "?v=" + strconv.FormatInt(a.variants[a.focus].ID, 10)
	}
	return u
}
