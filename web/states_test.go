package web

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/a-h/templ"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/browsertest"
)

// state is one state of one page: what stands in the frame, and what is inside.
type state struct {
	frame frame
	body  templ.Component
}

// pageStates are all states of the pages that hold no answer: empty, filled, refused, not known, failing, huge.
func pageStates() map[string]state {
	huge := strings.Repeat("A very long name without end ", 7)
	word := strings.Repeat("W", 200)
	projects := projectsView{
		Notices: []string{"No copy of your projects could be made at this start: the disk is full."}, ReadOnly: "This file can only be read.",
		Projects: []projectCard{
			{URL: "/projects/1", Name: "Barn", Revision: "1", Example: true, Variants: "3 variants", Changed: "today, 18:05"},
			{URL: "/projects/2", Name: huge, Revision: "9", Variants: "40 variants", Changed: "3 March 2026, 07:00"},
			{URL: "/projects/3", Name: word, Variants: "0 variants"},
		},
		Deleted: []deletedCard{{URL: "/projects/4", Name: word, When: "yesterday, 12:00"}},
	}
	f := panelForm()
	v := oneVariant()
	typed := sentBack(f, v, unit.Metric)
	typed.Set("panels[0].count", word)
	typed.Set("panels[1].panel_w", "1,500")
	typed.Set("name", "")
	typed.Set(nameDo, "add:panels")
	problems := f.read(typed, &v, unit.Metric)
	form := func(v formView, answer templ.Component, stale bool) templ.Component {
		v.Action, v.Try, v.Revision = "/x", "/x/try", "1"
		return editorPage(editorView{Title: "Panels", Form: v, Answer: answer, Stale: stale})
	}
	empty := model.Variant{}
	tabs := []tab{{Text: huge, URL: "/a"}, {Text: word, URL: "/b", Here: true}, {Text: "Compare", URL: "/c"}}
	return map[string]state{
		"projects, empty":   {frame{Title: "Projects"}, projectsPage(projectsView{})},
		"projects, huge":    {frame{Title: "Projects"}, projectsPage(projects)},
		"import, refused":   {frame{Title: "Projects", Refused: true}, projectsPage(projectsView{Import: importView{Problems: []problemView{{Label: "variants[0].stores[0].hoist." + word, Say: "There is no value of this name."}}, More: "And 12 more."}})},
		"settings":          {frame{Title: "Settings"}, settingsPage(settingsView{File: "/home/" + word + "/duskweight.db", Version: "1", Saved: true})},
		"settings, refused": {frame{Title: "Settings", Refused: true}, settingsPage(settingsView{Currency: word, Problem: "At most 12 letters.", ReadOnly: "This file can only be read.", Copied: copyRow{Name: "copy.db"}, Back: copyRow{Name: "a.db"}, Before: copyRow{Name: "b.db", URL: "/settings/copies/2"}, Copies: []copyRow{{Name: word + ".db", When: "today, 18:05", Size: "1.2 MiB", URL: "/settings/copies/1"}}})},
		"history, empty":    {frame{Title: "History", Tabs: tabs}, historyPage(historyView{Project: "Barn", URL: "/projects/1"})},
		"history, huge":     {frame{Title: "History", Tabs: tabs, Inner: tabs}, historyPage(historyView{Project: huge, URL: "/projects/1", Undo: stepView{"7", huge}, Redo: stepView{"8", word}, Rows: []historyRow{{When: "today, 18:05", What: word, Thing: huge, Number: "1000000"}}})},
		"form, empty":       {frame{Title: "Panels", Tabs: tabs}, form(f.view(&empty, nil, nil, unit.Metric), templ.Raw("<p>Nothing yet.</p>"), false)},
		"form, refused":     {frame{Title: "Panels", Tabs: tabs, Refused: true}, form(f.view(&v, typed, problems, unit.Imperial), templ.Raw(`<p data-headline>A learning piece.</p>`), true)},
		"form, no answer":   {frame{Title: "Panels"}, form(f.view(&v, url.Values{}, nil, unit.Imperial), nil, false)},
		"not found":         {frame{Title: "Not here"}, refused(refusal{Title: "Not here", Say: []string{"There is nothing at /" + word + "."}})},
		"problems":          {frame{Title: "Refused", Refused: true}, refused(refusal{Title: "Refused", Problems: model.Problems{{Path: word, Say: huge}}})},
		"conflict":          {frame{Title: "Conflict"}, refused(refusal{Title: "Conflict", Say: []string{"Changed meanwhile."}, Conflict: &conflict{Back: "/x", Rows: []conflictRow{{Label: huge, Saved: word, Yours: "not known"}}}})},
		"conflict, none":    {frame{Title: "Conflict"}, refused(refusal{Title: "Conflict", Conflict: &conflict{Back: "/x"}})},
	}
}

var (
	ids     = regexp.MustCompile(`\sid="([^"]*)"`)
	refs    = regexp.MustCompile(`\s(?:for|aria-describedby|aria-labelledby)="([^"]*)"`)
	inlined = regexp.MustCompile(`(?i)\sstyle=|\son[a-z]+="|javascript:|NaN|[+-]Inf\b`)
)

// Every state renders; ids are there once; what labels and notes point to exists; the policy has nothing to refuse.
func TestPageStates(t *testing.T) {
	s := newSite(t)
	for name, one := range pageStates() {
		w := httptest.NewRecorder()
		if err := s.show(w, httptest.NewRequest("GET", "/", nil), http.StatusOK, one.frame, one.body); err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		body := w.Body.String()
		seen := map[string]bool{}
		for _, m := range ids.FindAllStringSubmatch(body, -1) {
			if seen[m[1]] {
				t.Errorf("%s: two elements have the id %q", name, m[1])
			}
			seen[m[1]] = true
		}
		for _, m := range refs.FindAllStringSubmatch(body, -1) {
			if !seen[m[1]] {
				t.Errorf("%s: nothing has the id %q that is pointed to", name, m[1])
			}
		}
		if bad := inlined.FindString(body); bad != "" {
			t.Errorf("%s: %q", name, bad)
		}
		if strings.Contains(body, "<title>Error: ") != one.frame.Refused {
			t.Errorf("%s: the title does not say whether it was refused", name)
		}
	}
}

// Every state on the narrowest screen, one half of them dark, the other in forced colours: nothing to complain of and
// nothing sideways.
func TestBrowserStates(t *testing.T) {
	b := browsertest.Start(t)
	s := newSite(t)
	states := pageStates()
	mux := http.NewServeMux()
	mux.Handle("/static/", s.Handler())
	mux.Handle("/{state}", withHeaders(s.page(func(w http.ResponseWriter, r *http.Request) error {
		one := states[r.PathValue("state")]
		return s.show(w, r, http.StatusOK, one.frame, one.body)
	})))
	server := httptest.NewServer(mux)
	t.Cleanup(server.Close)
	dark, forced := browsertest.Phone, browsertest.Phone
	dark.Dark, forced.Forced = true, true
	tabs := []*browsertest.Tab{b.Open(t, dark), b.Open(t, forced)}
	n := 0
	for name := range states {
		tab := tabs[n%2]
		n++
		tab.Go(server.URL + "/" + url.PathEscape(name))
		tab.Clean()
		tab.Shot("state-" + strings.NewReplacer(" ", "-", ",", "").Replace(name))
		if wide := tab.Sideways(); wide > 0 {
			t.Errorf("%s is %d pixels too wide", name, wide)
		}
	}
}
