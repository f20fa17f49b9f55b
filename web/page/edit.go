package page

import (
	"cmp"
	"context"
	"crypto/rand"
	"errors"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/a-h/templ"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
)

// Editor is a page with a form on one side and its answer on the other. A page makes one from the request; EditorAt
// hands it to showEditor (GET), saveEditor (POST) or TryEditor (POST …/try).
type Editor[T any] struct {
	Form   form.Form[T]
	Kind   store.Kind
	Saved  store.Saved[T]
	Save   func(context.Context, int64, T, store.Edit, time.Time) (store.Saved[T], error)
	Tidy   func(*T)                // takes out what the form made and nobody filled, before a save; nil for nothing
	Url    string                  // of the page; the form is posted to it, and …/try computes only
	Query  string                  // of …/try: what the answer shows that is no input, "?month=6"
	Frame  func() (Frame, error)   // asked for where a whole page is shown
	Style  string                  // the style sheet of this page alone; empty for none
	Script string                  // the script of this page alone; empty for none
	Units  unit.System             // those of the settings, read once a request
	Title  string                  // the page's heading; the frame's title where it is empty
	Above  templ.Component         // between heading and form; nil for none
	Below  templ.Component         // under the form; nil for none
	Answer func(T) (Answer, error) // what stands beside the form; nil for none

	// A page that shows one card of its form at a time.
	Card  func() string                                        // the query that names the card; the form is posted to it too; nil for none
	Grow  func(*T)                                             // gives the lists the rows that the card shows
	Next  func(url.Values) string                              // the query of the page that opens after a save; nil for none
	Where func(path string) string                             // the address of a field that the card does not show; nil for none
	Lay   func(v EditorView, refused []string) templ.Component // the page, in place of the form beside its answer; nil for that
}

// Answer is what stands beside a form. Its first line and figures stand over the form too, where there is no room beside it.
type Answer struct {
	First string
	Facts []FactView
	Bands []BandView // the states of what the page is about, before all else on it
	Body  templ.Component
	Also  []Piece // further places of the page that change with the answer
}

// Piece is a place of a page that a new answer fills again.
type Piece struct {
	ID   string // of the element
	Body templ.Component
}

// showEditor shows the form as it is stored, with the texts that were refused before still in their fields.
func showEditor[T any](s *Site, w http.ResponseWriter, r *http.Request, e Editor[T]) error {
	drafts, err := s.Store.Drafts(r.Context(), store.Thing{Kind: e.Kind, ID: e.Saved.ID})
	if err != nil {
		return err
	}
	t := document.Clone(e.Saved.Value)
	typed := e.Form.Own(drafts, &t, e.Units)
	var problems model.Problems
	if len(typed) > 0 { // what is stored is not blamed on the reader of the page
		problems = e.Form.Read(typed, &t, e.Units)
	}
	return e.page(s, w, r, http.StatusOK, e.view(&t, typed, problems, e.Units), e.Saved.Value, len(problems) > 0)
}

// saveEditor saves the form, or shows it again with every problem and keeps what was typed.
func saveEditor[T any](s *Site, w http.ResponseWriter, r *http.Request, e Editor[T]) error {
	typed, revision, err := PostedForm(r)
	if err != nil {
		return err
	}
	sys := form.UnitsOf(typed, e.Units)
	t, do := document.Clone(e.Saved.Value), typed.Get(form.NameDo)
	sent := keys(typed)
	problems := e.Form.Read(typed, &t, sys)
	if len(problems) > 0 {
		if err := s.keep(r.Context(), store.Thing{Kind: e.Kind, ID: e.Saved.ID}, sent, e.Form.Changed(typed, e.Saved.Value, t, sys)); err != nil {
			return err
		}
		view := e.view(&t, typed, problems, sys)
		if wantsJSON(r) {
			return WriteJSON(w, http.StatusUnprocessableEntity, map[string]any{"say": "Not saved.", "problems": view.Problems})
		}
		return e.page(s, w, r, http.StatusUnprocessableEntity, view, e.Saved.Value, true)
	}
	if e.Tidy != nil {
		e.Tidy(&t)
	}
	diffs := e.Form.Differences(e.Saved.Value, t, sys)
	edit := store.Edit{Revision: revision, Said: form.Said(diffs), Page: typed.Get(form.NamePage), Settles: sent}
	if len(diffs) == 1 {
		edit.Field = diffs[0].Field()
	}
	saved, err := e.Save(r.Context(), e.Saved.ID, t, edit, s.Now())
	if stale, ok := errors.AsType[*store.Stale[T]](err); ok {
		return &Conflict{Back: e.Url, Rows: ConflictRows(e.Form, stale.Current.Value, t, sys)}
	}
	if err != nil {
		return err
	}
	if wantsJSON(r) {
		steps, err := s.StepsOf(r.Context(), saved.Project)
		if err != nil {
			return err
		}
		return WriteJSON(w, http.StatusOK, map[string]any{"say": "Saved.", "revision": saved.Revision, "undo": steps.Undo, "redo": steps.Redo, "remarks": e.Form.Remarks(saved.Value, diffs, sys), "heads": e.Form.Heads(saved.Value, sys)})
	}
	to := e.Url
	if e.Next != nil {
		to += e.Next(typed)
	}
	return SeeOther(w, r, to+anchor(do, typed))
}

// TryEditor computes the answer for the form as it is typed, and saves nothing. A script gets the answer alone, without
// scripts it is the whole page.
func TryEditor[T any](s *Site, w http.ResponseWriter, r *http.Request, e Editor[T]) error {
	typed, _, err := PostedForm(r)
	if err != nil {
		return err
	}
	sys := form.UnitsOf(typed, e.Units)
	t := document.Clone(e.Saved.Value)
	problems := e.Form.Read(typed, &t, sys)
	if WantsPart(r) && len(problems) == 0 {
		answer, err := e.Answer(t)
		if err != nil {
			return err
		}
		return s.Write(w, r, http.StatusOK, answerPart(answer))
	}
	view := e.view(&t, typed, problems, sys)
	if WantsPart(r) {
		return s.Write(w, r, http.StatusUnprocessableEntity, reasons(view.Problems))
	}
	view.Unsaved = len(problems) == 0
	if len(problems) > 0 {
		return e.page(s, w, r, http.StatusUnprocessableEntity, view, e.Saved.Value, true)
	}
	return e.page(s, w, r, http.StatusOK, view, t, false)
}

// view prints the form for t, with what is saved beside what is only typed.
func (e Editor[T]) view(t *T, typed url.Values, problems model.Problems, sys unit.System) form.FormView {
	f := e.Form
	if len(typed) > 0 {
		saved := document.Clone(e.Saved.Value) // walking a form makes empty rows
		f.Stored = &saved
	}
	shown := t
	if e.Grow != nil {
		longer := document.Clone(*t)
		e.Grow(&longer)
		shown = &longer
	}
	v := f.View(shown, typed, problems, sys)
	if e.Where != nil {
		for i, p := range v.Problems {
			if p.ID == "main" {
				v.Problems[i].URL = e.Where(p.Path)
			}
		}
	}
	return v
}

// page prints form and answer. The answer is that of shown; stale greys it, because the form says something else.
func (e Editor[T]) page(s *Site, w http.ResponseWriter, r *http.Request, status int, v form.FormView, shown T, stale bool) error {
	card := ""
	if e.Card != nil {
		card = e.Card()
	}
	v.Action, v.Revision, v.Page = e.Url+card, strconv.FormatInt(e.Saved.Revision, 10), rand.Text()
	f, err := e.Frame()
	if err != nil {
		return err
	}
	f.Refused, f.Style, f.Script = len(v.Problems) > 0, e.Style, e.Script
	p := EditorView{Title: e.Title, Form: v, Stale: stale, Above: e.Above, Below: e.Below}
	if p.Title == "" {
		p.Title = f.Title
	}
	if e.Answer != nil {
		p.Form.Try = e.Url + "/try" + cmp.Or(card, e.Query)
		a, err := e.Answer(shown)
		if err != nil {
			return err
		}
		p.First, p.Facts, p.Bands, p.Answer, p.Also = a.First, a.Facts, a.Bands, a.Body, a.Also
	}
	if e.Lay != nil {
		f.Cards = true
		return s.Show(w, r, status, f, e.Lay(p, pathsOf(v.Problems)))
	}
	return s.Show(w, r, status, f, EditorPage(p))
}

// pathsOf are the paths of what was refused.
func pathsOf(problems []form.ProblemView) []string {
	out := make([]string, len(problems))
	for i, p := range problems {
		out[i] = p.Path
	}
	return out
}

// WantsPart reports whether live.js asks for the answer alone.
func WantsPart(r *http.Request) bool { return r.Header.Get("X-Part") == "results" }

// PostedForm reads a form and the revision that its page showed.
func PostedForm(r *http.Request) (url.Values, int64, error) {
	if err := ParseForm(r); err != nil {
		return nil, 0, err
	}
	revision, err := strconv.ParseInt(r.PostForm.Get(form.NameRevision), 10, 64)
	if err != nil {
		return nil, 0, BadRequest("The form does not say which revision it was made from. Open the page again.")
	}
	return r.PostForm, revision, nil
}

// ParseForm reads a form of either kind, within the limit of its route.
func ParseForm(r *http.Request) error {
	err := r.ParseForm()
	if err == nil && strings.HasPrefix(r.Header.Get("Content-Type"), "multipart/form-data") {
		err = r.ParseMultipartForm(ImportLimit)
	}
	if _, tooLarge := errors.AsType[*http.MaxBytesError](err); err != nil && !tooLarge {
		return BadRequest("The form cannot be read.")
	}
	return err
}

// keep stores texts that were refused, until their field is saved, and forgets older ones of the same form. A file that
// cannot be written to keeps none.
func (s *Site) keep(ctx context.Context, t store.Thing, sent []string, texts map[string]string) error {
	err := s.Store.SaveDrafts(ctx, t, texts, s.Now())
	if old := slices.DeleteFunc(sent, func(name string) bool { _, kept := texts[name]; return kept }); err == nil && len(old) > 0 {
		err = s.Store.ClearDrafts(ctx, t, old...)
	}
	if errors.Is(err, store.ErrReadOnly) || errors.Is(err, store.ErrMoved) {
		return nil
	}
	return err
}

// anchor is where the page opens again after a button of the form: at the new row, at the list, at the field.
func anchor(do string, typed url.Values) string {
	verb, path, ok := strings.Cut(do, ":")
	switch {
	case !ok:
		return ""
	case verb == "mine":
		return "#" + path
	case verb == PressPreset:
		return "#rows"
	case verb == PressNeed, verb == PressFree:
		return "#" + form.FieldID("parts")
	}
	list, _, isRow := form.SplitRow(path)
	switch n, err := strconv.Atoi(typed.Get(path + form.RowsSuffix)); {
	case verb == "remove" && isRow:
		path = list
	case verb == "add" && err == nil:
		path += "[" + strconv.Itoa(n-1) + "]"
	}
	return "#" + form.FieldID(path)
}

func keys(v url.Values) []string {
	out := make([]string, 0, len(v))
	for name := range v {
		out = append(out, name)
	}
	return out
}
