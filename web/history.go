package web

import (
	"net/http"
	"strconv"

	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// The page History: /projects/{project}/history.

const (
	historyRows = 50 // changes on one page
	mostTold    = 8  // values that one change tells
)

func (s *Site) showHistory(w http.ResponseWriter, r *http.Request) error {
	p, err := s.project(r)
	if err != nil {
		return err
	}
	sys, err := s.units(r.Context())
	if err != nil {
		return err
	}
	before, err := strconv.ParseInt(r.URL.Query().Get("before"), 10, 64)
	if err != nil || before < 0 {
		before = 0
	}
	changes, err := s.Store.Story(r.Context(), p.ID, before, historyRows+1)
	if err != nil {
		return err
	}
	steps, err := s.stepsOf(r.Context(), p.ID)
	if err != nil {
		return err
	}
	v := historyView{Project: p.Value.Name, URL: projectURL(p.ID), Undo: steps.Undo, Redo: steps.Redo}
	if len(changes) > historyRows {
		changes = changes[:historyRows]
		v.Older = v.URL + "/history?before=" + strconv.FormatInt(changes[historyRows-1].Seq, 10)
	}
	for _, c := range changes {
		v.Rows = append(v.Rows, s.historyRowOf(c, sys))
	}
	tabs, err := s.projectTabs(r.Context(), p, "")
	if err != nil {
		return err
	}
	return s.show(w, r, http.StatusOK, frame{Title: "History of " + p.Value.Name, Tabs: tabs}, historyPage(v)) // the page has the buttons itself
}

// historyRowOf says what a change changed, value by value, in the units of the page; where nothing that has a field
// changed, it is what was said when it was saved.
func (s *Site) historyRowOf(c store.Chapter, sys unit.System) historyRow {
	row := historyRow{When: s.when(c.At), Thing: c.Name, Number: strconv.FormatInt(c.Number, 10)}
	var told []string
	if !c.Created && !c.Deleted {
		told = changesOf(c, s.tables, sys)
	}
	if len(told) == 0 {
		row.What = deedInWords(c.Change)
		return row
	}
	row.What = map[store.Deed]string{store.Undone: "Undone", store.Redone: "Redone"}[c.Deed]
	if n := len(told) - mostTold; n > 0 {
		told = append(told[:mostTold:mostTold], "and "+strconv.Itoa(n)+" more")
	}
	row.Told = told
	return row
}

func stepOf(c *store.Change) stepView {
	if c == nil {
		return stepView{}
	}
	return stepView{Seq: strconv.FormatInt(c.Seq, 10), What: clip(c.Name, 40) + ", " + clip(c.Said, 90)}
}

func deedInWords(c store.Change) string {
	switch c.Deed {
	case store.Undone:
		return "Undone: " + c.Said
	case store.Redone:
		return "Redone: " + c.Said
	}
	return c.Said
}
