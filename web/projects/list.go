package projects

import (
	"cmp"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"time"

	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/page"
)

// The list of projects, fifty a page, found by a part of a name and ordered by name or by the last change.

// Names in the address.
const (
	nameFind = "q"
	nameSort = "sort"
	namePage = "page"
)

const (
	aPage    = 50                     // projects
	atOnce   = 150 * time.Millisecond // to work out what is not known yet; the rest follows (our own judgement)
	mostTold = 3                      // states of a project
)

// ListView is one page of the list, ready to print.
type ListView struct {
	Rows          []ProjectRow
	All, Found    int
	Find, Sort    string
	Title         string
	Before, After string // pages; empty for none
	Place         string // "51 to 100 of 1 002"
	Follow        string // what is not worked out yet comes from there; empty for nothing
}

// ProjectRow is one project.
type ProjectRow struct {
	URL, Name, About string
	Revision         string
	Example          bool
	Changed          string // "today, 18:05"
	Known            bool   // it is worked out
	Best             BestView
	States           []StateView
	More             string // "and 2 more"
}

// BestView is the variant that carries the most nights.
type BestView struct{ Name, Sign, Word, Nights string }

// StateView is the state of one variant's sheet.
type StateView struct {
	Class, Sign, Word, Name string
}

// listOf reads the part of the list that the address names; whole works everything out, however long that takes.
func (s *Pages) listOf(r *http.Request, whole bool) (ListView, error) {
	living, err := s.Store.Projects(r.Context())
	if err != nil {
		return ListView{}, err
	}
	sys, err := s.Units(r.Context())
	if err != nil {
		return ListView{}, err
	}
	q := r.URL.Query()
	v := ListView{All: len(living), Find: strings.TrimSpace(q.Get(nameFind)), Sort: q.Get(nameSort)}
	found := slices.DeleteFunc(living, func(p store.Listed) bool { return !holds(p, v.Find) })
	if v.Sort == "name" {
		slices.SortStableFunc(found, func(a, b store.Listed) int { return cmp.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)) })
	} else {
		v.Sort = ""
	}
	v.Found = len(found)
	part, n := v.part(q.Get(namePage))
	end := time.Now().Add(atOnce)
	for _, p := range found[part : part+n] {
		row, err := s.rowOf(r, p, whole || time.Now().Before(end), sys)
		if err != nil {
			return v, page.LeftOr(r, err)
		}
		if !row.Known {
			v.Follow = "/verdicts" + v.query(part/aPage)
		}
		v.Rows = append(v.Rows, row)
	}
	return v, nil
}

// part is where the page of that number begins and how many projects it has; it sets the links to the pages beside it.
func (v *ListView) part(text string) (from, n int) {
	last := max(v.Found-1, 0) / aPage
	at, err := strconv.Atoi(text)
	if err != nil {
		at = 1
	}
	at = min(max(at-1, 0), last)
	if at > 0 {
		v.Before = "/" + v.query(at-1)
	}
	if at < last {
		v.After = "/" + v.query(at+1)
	}
	from = at * aPage
	n = min(aPage, v.Found-from)
	switch {
	case last > 0:
		v.Place = page.Itoa(from+1) + " to " + page.Itoa(from+n) + " of " + unit.Thousands(v.Found)
	case v.Find != "":
		v.Place = page.Counted(v.Found, "project") + " of " + unit.Thousands(v.All)
	}
	return from, n
}

// query is the address of a page of the list, counted from nothing.
func (v ListView) query(at int) string {
	q := url.Values{}
	if v.Find != "" {
		q.Set(nameFind, v.Find)
	}
	if v.Sort != "" {
		q.Set(nameSort, v.Sort)
	}
	if at > 0 {
		q.Set(namePage, strconv.Itoa(at+1))
	}
	if len(q) == 0 {
		return ""
	}
	return "?" + q.Encode()
}

// holds reports whether a project is found by a text: in its name, its place or the name of a variant, in any case of letters.
func holds(p store.Listed, find string) bool {
	find = strings.ToLower(find)
	return slices.ContainsFunc(append([]string{p.Name, p.Place}, p.Variants...), func(s string) bool { return strings.Contains(strings.ToLower(s), find) })
}

// rowOf prints one project. What is not remembered is worked out if there is time.
func (s *Pages) rowOf(r *http.Request, p store.Listed, hasTime bool, sys unit.System) (ProjectRow, error) {
	row := ProjectRow{URL: page.ProjectURL(p.ID), Name: p.Name, Example: p.Example, Revision: strconv.FormatInt(p.Revision, 10), Changed: s.When(p.At)}
	row.About = page.Counted(len(p.Variants), "variant")
	if p.Place != "" {
		row.About += " · " + p.Place
	}
	key := verdictKey{p.ID, p.Last, reason.Today(s.Now())}
	all, known := s.verdicts.get(key)
	if !known && hasTime {
		var err error
		if all, err = s.workOut(r.Context(), p.ID); err != nil {
			return row, err
		}
		s.verdicts.put(key, all)
		known = true
	}
	row.Known = known
	row.tell(all, sys)
	return row, nil
}

// tell says what the variants of a project come to: the best for the night, and the states of their sheets, the worst first.
func (row *ProjectRow) tell(all []verdict, sys unit.System) {
	for i, v := range all {
		if i == 0 || v.nights > all[0].nights {
			all[0], all[i] = all[i], all[0] // the order of the rest follows from their states
		}
	}
	if len(all) > 0 {
		row.Best = all[0].best()
	}
	slices.SortStableFunc(all, func(a, b verdict) int {
		if a.ready == b.ready {
			return 0
		}
		if a.ready.Worse(b.ready) {
			return -1
		}
		return 1
	})
	for i, v := range all {
		if i == mostTold {
			row.More = "and " + page.Itoa(len(all)-mostTold) + " more"
			break
		}
		row.States = append(row.States, v.state(sys))
	}
}
