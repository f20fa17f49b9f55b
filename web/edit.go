package web

import (
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
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// editor is a page with a form on one side and its answer on the other. A page makes one from the request; editorAt
// hands it to showEditor (GET), saveEditor (POST) or tryEditor (POST …/try).
type editor[T any] struct {
	form   form[T]
	kind   store.Kind
	saved  store.Saved[T]
	save   func(context.Context, int64, T, store.Edit, time.Time) (store.Saved[T], error)
	tidy   func(*T)                // takes out what the form made and nobody filled, before a save; nil for nothing
	url    string                  // of the page; the form is posted to it, and …/try computes only
	query  string                  // of …/try: what the answer shows that is no input, "?month=6"
	frame  func() (frame, error)   // asked for where a whole page is shown
	title  string                  // the page's heading; the frame's title where it is empty
	above  templ.Component         // between heading and form; nil for none
	below  templ.Component         // under the form; nil for none
	answer func(T) (answer, error) // what stands beside the form; nil for none
}

// answer is what stands beside a form. Its first line and figures stand over the form too, where there is no room beside it.
type answer struct {
	first   string
	facts   []factView
	caution string // that must not be overlooked; empty for none
	body    templ.Component
}

// namePage is the field with the random name that a page gets when it is made; saves of one field from one page within
// a minute are one step of the history.
const namePage = "page"

// nameUnits is the field with the system of units that the page was printed in: what is typed there is meant in it,
// though the settings were changed in another window meanwhile.
const nameUnits = "units"

var unitsWords = map[unit.System]string{unit.Metric: "metric", unit.Imperial: "imperial"}

// unitsOf is the system in which a posted form was typed.
func unitsOf(typed url.Values, now unit.System) unit.System {
	for sys, word := range unitsWords {
		if typed.Get(nameUnits) == word {
			return sys
		}
	}
	return now
}

// showEditor shows the form as it is stored, with the texts that were refused before still in their fields.
func showEditor[T any](s *Site, w http.ResponseWriter, r *http.Request, e editor[T]) error {
	drafts, err := s.Store.Drafts(r.Context(), store.Thing{Kind: e.kind, ID: e.saved.ID})
	if err != nil {
		return err
	}
	sys, err := s.units(r.Context())
	if err != nil {
		return err
	}
	t := document.Clone(e.saved.Value)
	typed := e.form.own(drafts, &t, sys)
	problems := e.form.read(typed, &t, sys)
	if len(typed) == 0 {
		problems = nil // what is stored is not blamed on the reader of the page
	}
	return e.page(s, w, r, http.StatusOK, e.form.view(&t, typed, problems, sys), e.saved.Value, len(problems) > 0)
}

// saveEditor saves the form, or shows it again with every problem and keeps what was typed.
func saveEditor[T any](s *Site, w http.ResponseWriter, r *http.Request, e editor[T]) error {
	typed, revision, err := postedForm(r)
	if err != nil {
		return err
	}
	sys, err := s.units(r.Context())
	if err != nil {
		return err
	}
	sys = unitsOf(typed, sys)
	t, do := document.Clone(e.saved.Value), typed.Get(nameDo)
	sent := keys(typed)
	problems := e.form.read(typed, &t, sys)
	if len(problems) > 0 {
		if err := s.keep(r.Context(), store.Thing{Kind: e.kind, ID: e.saved.ID}, sent, e.form.changed(typed, e.saved.Value, t, sys)); err != nil {
			return err
		}
		if wantsJSON(r) {
			return writeJSON(w, http.StatusUnprocessableEntity, map[string]any{"say": "Not saved.", "problems": problems})
		}
		return e.page(s, w, r, http.StatusUnprocessableEntity, e.form.view(&t, typed, problems, sys), e.saved.Value, true)
	}
	if e.tidy != nil {
		e.tidy(&t)
	}
	diffs := e.form.differences(e.saved.Value, t, sys)
	edit := store.Edit{Revision: revision, Said: said(e.form.told(e.saved.Value, t, sys)), Page: typed.Get(namePage), Settles: sent}
	if len(diffs) == 1 {
		edit.Field = diffs[0].path
	}
	saved, err := e.save(r.Context(), e.saved.ID, t, edit, s.Now())
	if stale, ok := errors.AsType[*store.Stale[T]](err); ok {
		return &conflict{Back: e.url, Rows: conflictRows(e.form, stale.Current.Value, t, sys)}
	}
	if err != nil {
		return err
	}
	if wantsJSON(r) {
		steps, err := s.stepsOf(r.Context(), saved.Project)
		if err != nil {
			return err
		}
		return writeJSON(w, http.StatusOK, map[string]any{"say": "Saved.", "revision": saved.Revision, "undo": steps.Undo, "redo": steps.Redo, "remarks": e.form.remarks(saved.Value, diffs, sys), "heads": e.form.heads(saved.Value, sys)})
	}
	return seeOther(w, r, e.url+anchor(do, typed))
}

// tryEditor computes the answer for the form as it is typed, and saves nothing. A script gets the answer alone, without
// scripts it is the whole page.
func tryEditor[T any](s *Site, w http.ResponseWriter, r *http.Request, e editor[T]) error {
	typed, _, err := postedForm(r)
	if err != nil {
		return err
	}
	sys, err := s.units(r.Context())
	if err != nil {
		return err
	}
	sys = unitsOf(typed, sys)
	t := document.Clone(e.saved.Value)
	problems := e.form.read(typed, &t, sys)
	if wantsPart(r) && len(problems) == 0 {
		answer, err := e.answer(t)
		if err != nil {
			return err
		}
		return s.write(w, r, http.StatusOK, answer.body)
	}
	view := e.form.view(&t, typed, problems, sys)
	if wantsPart(r) {
		return s.write(w, r, http.StatusUnprocessableEntity, reasons(view.Problems))
	}
	view.Unsaved = len(problems) == 0
	if len(problems) > 0 {
		return e.page(s, w, r, http.StatusUnprocessableEntity, view, e.saved.Value, true)
	}
	return e.page(s, w, r, http.StatusOK, view, t, false)
}

// page prints form and answer. The answer is that of shown; stale greys it, because the form says something else.
func (e editor[T]) page(s *Site, w http.ResponseWriter, r *http.Request, status int, v formView, shown T, stale bool) error {
	v.Action, v.Revision, v.Page = e.url, strconv.FormatInt(e.saved.Revision, 10), rand.Text()
	f, err := e.frame()
	if err != nil {
		return err
	}
	f.Refused = len(v.Problems) > 0
	p := editorView{Title: e.title, Form: v, Stale: stale, Above: e.above, Below: e.below}
	if p.Title == "" {
		p.Title = f.Title
	}
	if e.answer != nil {
		p.Form.Try = e.url + "/try" + e.query
		a, err := e.answer(shown)
		if err != nil {
			return err
		}
		p.First, p.Facts, p.Caution, p.Answer = a.first, a.facts, a.caution, a.body
	}
	return s.show(w, r, status, f, editorPage(p))
}

// wantsPart reports whether live.js asks for the answer alone.
func wantsPart(r *http.Request) bool { return r.Header.Get("X-Part") == "results" }

// postedForm reads a form and the revision that its page showed.
func postedForm(r *http.Request) (url.Values, int64, error) {
	if err := parseForm(r); err != nil {
		return nil, 0, err
	}
	revision, err := strconv.ParseInt(r.PostForm.Get(nameRevision), 10, 64)
	if err != nil {
		return nil, 0, badRequest("The form does not say which revision it was made from. Open the page again.")
	}
	return r.PostForm, revision, nil
}

// parseForm reads a form of either kind, within the limit of its route.
func parseForm(r *http.Request) error {
	err := r.ParseForm()
	if err == nil && strings.HasPrefix(r.Header.Get("Content-Type"), "multipart/form-data") {
		err = r.ParseMultipartForm(importLimit)
	}
	if _, tooLarge := errors.AsType[*http.MaxBytesError](err); err != nil && !tooLarge {
		return badRequest("The form cannot be read.")
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
	if errors.Is(err, store.ErrReadOnly) {
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
	case verb == pressNeed, verb == pressFree:
		return "#" + fieldID("parts")
	}
	list, _, isRow := splitRow(path)
	switch n, err := strconv.Atoi(typed.Get(path + rowsSuffix)); {
	case verb == "remove" && isRow:
		path = list
	case verb == "add" && err == nil:
		path += "[" + strconv.Itoa(n-1) + "]"
	}
	return "#" + fieldID(path)
}

// remarks are what is said of changed values outside of what is usual, by the id of their field.
func (f form[T]) remarks(t T, diffs []difference, sys unit.System) map[string]string {
	out := map[string]string{}
	for _, d := range diffs {
		if in := findInput(f.parts, &t, d.path); in != nil {
			if say := in.remarkOn(&t, sys); say != "" {
				out[fieldID(d.path)] = say
			}
		}
	}
	return out
}

func keys(v url.Values) []string {
	out := make([]string, 0, len(v))
	for name := range v {
		out = append(out, name)
	}
	return out
}

// own picks the drafts that this form holds, as they are shown in a system of units.
func (f form[T]) own(drafts map[string]string, t *T, sys unit.System) url.Values {
	typed := url.Values{}
	for path, text := range drafts {
		if list, isCount := strings.CutSuffix(path, rowsSuffix); isCount && findList(f.parts, t, list) != nil {
			typed.Set(path, text)
		}
	}
	longer := document.Clone(*t)
	f.read(typed, &longer, unit.Metric)
	for path, text := range drafts {
		if in := findInput(f.parts, &longer, path); in != nil {
			if in.q != nil {
				text = in.q.WithoutUnit(text, sys)
			}
			typed.Set(path, text)
		}
	}
	return typed
}

// changed picks the typed texts that differ from what is stored: the drafts to keep. now is what was read of them, with
// their rows. A number alone gets the unit that it is meant in, for the page may be opened in the other system next.
func (f form[T]) changed(typed url.Values, stored, now T, sys unit.System) map[string]string {
	out := map[string]string{}
	shown := map[string]string{}
	f.walk(f.parts, &stored, func(in *input[T]) { shown[in.path] = in.show(&stored, sys) })
	for path, sent := range typed {
		if strings.HasSuffix(path, rowsSuffix) || path == nameConfirm || path == nameDo || path == nameRevision || path == namePage || path == nameUnits {
			if l := findList(f.parts, &stored, strings.TrimSuffix(path, rowsSuffix)); l != nil && strconv.Itoa(l.count(&stored)) != sent[0] {
				out[path] = sent[0]
			}
			continue
		}
		if have, ok := shown[path]; ok && sameText(sent[0], have) {
			continue
		}
		out[path] = sent[0]
		if in := findInput(f.parts, &now, path); in != nil && in.q != nil {
			out[path] = in.q.WithUnit(sent[0], sys)
		}
	}
	return out
}

// walk visits every input, in the rows that t has.
func (f form[T]) walk(parts []part[T], t *T, visit func(*input[T])) {
	for _, p := range parts {
		switch {
		case p.input != nil:
			visit(p.input)
		case p.group != nil:
			f.walk(p.group.parts, t, visit)
		case p.list != nil:
			for i := range p.list.count(t) {
				f.walk(p.list.row(i), t, visit)
			}
		}
	}
}

// difference is one value that two versions do not share, in words.
type difference struct{ path, label, old, new string }

// differences lists what differs between two versions, in the order of the form.
func (f form[T]) differences(old, new T, sys unit.System) []difference {
	old, new = document.Clone(old), document.Clone(new) // walking a form makes empty rows
	type shown struct{ label, text string }
	before := map[string]shown{}
	f.walk(f.parts, &old, func(in *input[T]) { before[in.path] = shown{in.label, in.text(&old, sys)} })
	var out []difference
	after := map[string]bool{}
	f.walk(f.parts, &new, func(in *input[T]) {
		after[in.path] = true
		if now := in.text(&new, sys); now != before[in.path].text {
			out = append(out, difference{in.path, in.label, before[in.path].text, now})
		}
	})
	f.walk(f.parts, &old, func(in *input[T]) {
		if b := before[in.path]; !after[in.path] && b.text != "" {
			out = append(out, difference{in.path, in.label, b.text, ""})
		}
	})
	return out
}

// text is a value with its unit, in words.
func (in *input[T]) text(t *T, sys unit.System) string {
	shown := in.show(t, sys)
	if in.kind == asChoice {
		return wordFor(shown)
	}
	if u := in.symbol(sys); u != "" && shown != "" {
		return shown + " " + u
	}
	return shown
}

// conflictRows are the values in which what is stored now differs from what was typed.
func conflictRows[T any](f form[T], current, yours T, sys unit.System) []conflictRow {
	var rows []conflictRow
	for _, d := range f.differences(current, yours, sys) {
		rows = append(rows, conflictRow{Label: d.label, Saved: orNotKnown(d.old), Yours: orNotKnown(d.new)})
	}
	return rows
}

func orNotKnown(text string) string {
	if text == "" {
		return "not known"
	}
	return text
}

// told tells a change line by line, as the history does: "Stage 2, Ratio to 1: 3 → 4", "Hold 1 added".
func (f form[T]) told(old, new T, sys unit.System) []string {
	old, new = document.Clone(old), document.Clone(new) // walking a form makes empty rows
	return differ(valuesOf(f.parts, &old, "", sys), valuesOf(f.parts, &new, "", sys), "")
}

// said is a change in one line: the first difference, and how many more.
func said(lines []string) string {
	if len(lines) == 0 {
		return "Confirmed as it is"
	}
	switch n := len(lines) - 1; n {
	case 0:
		return lines[0]
	case 1:
		return lines[0] + ", and one more"
	default:
		return lines[0] + ", and " + strconv.Itoa(n) + " more"
	}
}

func short(text string) string {
	if runes := []rune(strings.ReplaceAll(text, "\n", " ")); len(runes) > 60 {
		return string(runes[:59]) + "…"
	}
	return text
}
