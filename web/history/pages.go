// Package history shows what was changed in a project, value by value (/projects/{project}/history), and takes changes
// back. It names no input itself: it tells changes by the tables of all forms.
package history

import (
	"net/http"
	"strconv"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct{ *page.Site }

// Routes hangs the pages at their addresses.
func (s *Pages) Routes(r chi.Router) {
	r.Get("/projects/{project}/history", s.Page(s.showHistory))
	r.Post("/projects/{project}/undo", s.Page(s.undo))
	r.Post("/projects/{project}/redo", s.Page(s.redo))
	r.Post("/projects/{project}/back", s.Page(s.back))
}

// The page History: /projects/{project}/history.

const (
	historyRows = 50 // changes on one page
	mostTold    = 8  // values that one change tells
)

func (s *Pages) showHistory(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Project(r)
	if err != nil {
		return err
	}
	sys, err := s.Units(r.Context())
	if err != nil {
		return err
	}
	before, err := strconv.ParseInt(r.URL.Query().Get("before"), 10, 64)
	if err != nil || before < 0 {
		before = 0
	}
	changes, err := s.Store.FullChanges(r.Context(), p.ID, before, historyRows+1)
	if err != nil {
		return err
	}
	steps, err := s.StepsOf(r.Context(), p.ID)
	if err != nil {
		return err
	}
	v := HistoryView{Project: p.Value.Name, URL: page.ProjectURL(p.ID), Undo: steps.Undo, Redo: steps.Redo}
	if len(changes) > historyRows {
		changes = changes[:historyRows]
		v.Older = v.URL + "/history?before=" + strconv.FormatInt(changes[historyRows-1].Seq, 10)
	}
	now, err := s.newest(r.Context(), p)
	if err != nil {
		return err
	}
	tables := onceEach(s.Tables)
	for _, c := range changes {
		row := s.historyRowOf(c, tables, sys)
		if c.Number < now[c.Thing] && !c.Deleted && s.Store.ReadOnly() == "" {
			row.Seq = strconv.FormatInt(c.Seq, 10)
		}
		v.Rows = append(v.Rows, row)
	}
	tabs, plans, err := s.ProjectTabs(r.Context(), p, "")
	if err != nil {
		return err
	}
	return s.Show(w, r, http.StatusOK, page.Frame{Title: "History of " + p.Value.Name, Tabs: tabs, Plans: plans}, HistoryPage(v)) // the page has the buttons itself
}

// historyRowOf says what a change changed, value by value, in the units of the page; where nothing that has a field
// changed, it is what was said when it was saved.
func (s *Pages) historyRowOf(c store.FullChange, of page.Tables, sys unit.System) HistoryRow {
	row := HistoryRow{When: s.When(c.At), Thing: c.Name, Number: strconv.FormatInt(c.Number, 10)}
	var told []string
	if !c.Created && !c.Deleted {
		told = changesOf(c, of, sys)
	}
	if len(told) == 0 {
		row.What = deedInWords(c.Change)
		return row
	}
	row.What = map[store.Action]string{store.Undone: "Undone", store.Redone: "Redone"}[c.Action]
	if n := len(told) - mostTold; n > 0 {
		told = append(told[:mostTold:mostTold], "and "+strconv.Itoa(n)+" more")
	}
	row.Told = told
	return row
}

func deedInWords(c store.Change) string {
	switch c.Action {
	case store.Undone:
		return "Undone: " + c.Said
	case store.Redone:
		return "Redone: " + c.Said
	}
	return c.Said
}
