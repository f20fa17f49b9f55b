package crawl_test

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
	"duskweight/web"
	"duskweight/web/browsertest"
	"duskweight/web/form"
	"duskweight/web/formtest"
	"duskweight/web/history"
	"duskweight/web/page"
	"duskweight/web/projects"
	"duskweight/web/rescue"
	"duskweight/web/settings"
	"duskweight/web/webtest"
)

// state is one state of one page: what stands in the frame, and what is inside.
type state struct {
	frame page.Frame
	body  templ.Component
}

// pageStates are all states of the pages that hold no answer: empty, filled, refused, not known, failing, huge.
func pageStates() map[string]state {
	huge := strings.Repeat("A very long name without end ", 7)
	word := strings.Repeat("W", 200)
	home := projects.ProjectsView{
		Notices: []string{"No copy of your projects could be made at this start: the disk is full."},
		List: projects.ListView{All: 3, Found: 3, Find: word, Before: "/?page=1", Rows: []projects.ProjectRow{
			{URL: "/projects/1", Name: "Barn", Revision: "1", Example: true, About: "3 variants", Changed: "today, 18:05", Known: true, Best: projects.BestView{Name: word, Sign: "✓", Word: "Carries the night", Nights: "351 of 365 nights full"},
				States: []projects.StateView{{Class: "no", Sign: "✕", Word: "DO NOT HANG", Name: huge}}, More: "and 37 more"},
			{URL: "/projects/2", Name: huge, Revision: "9", About: "40 variants · " + word, Changed: "3 March 2026, 07:00"},
			{URL: "/projects/3", Name: word, About: "0 variants", Known: true},
		}},
		Deleted: []projects.DeletedCard{{URL: "/projects/4", Name: word, When: "yesterday, 12:00"}},
	}
	f := formtest.PanelForm()
	v := formtest.OneVariant()
	typed := formtest.SentBack(f, v, unit.Metric)
	typed.Set("panels[0].count", word)
	typed.Set("panels[1].panel_w", "1,500")
	typed.Set("name", "")
	typed.Set(form.NameDo, "add:panels")
	problems := f.Read(typed, &v, unit.Metric)
	table := func(v form.FormView, answer templ.Component, stale bool) templ.Component {
		v.Action, v.Try, v.Revision = "/x", "/x/try", "1"
		return page.EditorPage(page.EditorView{Title: "Panels", Form: v, Answer: answer, Stale: stale})
	}
	empty := model.Variant{}
	tabs := []page.Tab{{Text: huge, URL: "/a"}, {Text: word, URL: "/b", Here: true}, {Text: "Compare", URL: "/c"}}
	return map[string]state{
		"projects, empty":   {page.Frame{Title: "Projects"}, projects.ProjectsPage(projects.ProjectsView{})},
		"projects, huge":    {page.Frame{Title: "Projects"}, projects.ProjectsPage(home)},
		"import, refused":   {page.Frame{Title: "Projects", Refused: true}, projects.ProjectsPage(projects.ProjectsView{Import: projects.ImportView{Problems: []form.ProblemView{{Label: "variants[0].stores[0].hoist." + word, Say: "There is no value of this name."}}, More: "And 12 more."}})},
		"settings":          {page.Frame{Title: "Settings"}, settings.SettingsPage(settings.SettingsView{File: "/home/" + word + "/duskweight.db", Version: "1", Saved: true})},
		"settings, refused": {page.Frame{Title: "Settings", Refused: true}, settings.SettingsPage(settings.SettingsView{Currency: word, Problem: "At most 12 letters.", Copied: settings.CopyRow{Name: "copy.db"}, Back: settings.CopyRow{Name: "a.db"}, Before: settings.CopyRow{Name: "b.db", URL: "/settings/copies/2"}, Copies: []settings.CopyRow{{Name: word + ".db", When: "today, 18:05", Size: "1.2 MiB", URL: "/settings/copies/1"}}})},
		"rescue, damaged": {page.Frame{Title: "Your projects cannot be opened"}, rescue.RescuePage(rescue.View{Say: "The file with your projects is damaged.", Found: word, File: "/home/" + word + "/duskweight.db", There: true,
			Projects: []rescue.ProjectRow{{URL: "/rescue/projects/1/export.json", Name: huge, When: "today, 18:05", Variants: "3 variants", Short: []string{huge, "A variant cannot be read."}}, {URL: "/rescue/projects/2/export.json", Name: word, When: "today, 18:05", Variants: "0 variants"}},
			Lost:     []string{"Project “" + word + "” cannot be read."},
			Copies:   []rescue.CopyRow{{Number: "2", Name: word + ".db", When: "today, 18:05", Size: "1.2 MiB", Holds: "2 projects", URL: "/rescue/copies/2"}, {Number: "1", Name: "a.db", When: "not known", Size: "12 bytes", URL: "/rescue/copies/1", Unsound: true}}})},
		"rescue, missing": {page.Frame{Title: "Your projects cannot be opened"}, rescue.RescuePage(rescue.View{Say: "The file with your projects is not at its place.", Found: "no such file", File: "/a.db", Locked: true})},
		"rescue, unread":  {page.Frame{Title: "Your projects cannot be opened"}, rescue.RescuePage(rescue.View{Say: "The file with your projects is damaged.", Found: "the disk", File: "/a.db", There: true, Unread: true})},
		"history, empty":  {page.Frame{Title: "History", Tabs: tabs}, history.HistoryPage(history.HistoryView{Project: "Barn", URL: "/projects/1"})},
		"history, huge":   {page.Frame{Title: "History", Tabs: tabs, Inner: tabs}, history.HistoryPage(history.HistoryView{Project: huge, URL: "/projects/1", Undo: page.StepView{Seq: "7", What: huge}, Redo: page.StepView{Seq: "8", What: word}, Rows: []history.HistoryRow{{When: "today, 18:05", What: word, Thing: huge, Number: "1000000"}}})},
		"form, empty":     {page.Frame{Title: "Panels", Tabs: tabs}, table(f.View(&empty, nil, nil, unit.Metric), templ.Raw("<p>Nothing yet.</p>"), false)},
		"form, refused":   {page.Frame{Title: "Panels", Tabs: tabs, Refused: true}, table(f.View(&v, typed, problems, unit.Imperial), templ.Raw(`<p data-headline>A learning piece.</p>`), true)},
		"form, no answer": {page.Frame{Title: "Panels"}, table(f.View(&v, url.Values{}, nil, unit.Imperial), nil, false)},
		"not found":       {page.Frame{Title: "Not here"}, page.Refused(page.Refusal{Title: "Not here", Say: []string{"There is nothing at /" + word + "."}})},
		"problems":        {page.Frame{Title: "Refused", Refused: true}, page.Refused(page.Refusal{Title: "Refused", Problems: []form.ProblemView{{Label: word, Say: huge}}})},
		"conflict":        {page.Frame{Title: "Conflict"}, page.Refused(page.Refusal{Title: "Conflict", Say: []string{"Changed meanwhile."}, Conflict: &page.Conflict{Back: "/x", Rows: []page.ConflictRow{{Label: huge, Saved: word, Yours: "not known"}}}})},
		"conflict, none":  {page.Frame{Title: "Conflict"}, page.Refused(page.Refusal{Title: "Conflict", Conflict: &page.Conflict{Back: "/x"}})},
	}
}

var (
	ids  = regexp.MustCompile(`\sid="([^"]*)"`)
	refs = regexp.MustCompile(`\s(?:for|aria-describedby|aria-labelledby)="([^"]*)"`)
)

// Every state renders; ids are there once; what labels and notes point to exists; the policy has nothing to refuse.
func TestPageStates(t *testing.T) {
	s := webtest.NewSite(t)
	for name, one := range pageStates() {
		w := httptest.NewRecorder()
		if err := s.Show(w, httptest.NewRequest("GET", "/", nil), http.StatusOK, one.frame, one.body); err != nil {
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
		if bad := webtest.Inlined.FindString(body); bad != "" {
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
	t.Parallel()
	b := browsertest.Start(t)
	s := webtest.NewSite(t)
	states := pageStates()
	mux := http.NewServeMux()
	mux.Handle("/static/", s.Handler())
	mux.Handle("/{state}", web.WithHeaders(s.Page(func(w http.ResponseWriter, r *http.Request) error {
		one := states[r.PathValue("state")]
		return s.Show(w, r, http.StatusOK, one.frame, one.body)
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
