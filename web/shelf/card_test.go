package shelf_test

import (
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// The card of a part saves that part alone; that of a new one adds it, and adds nothing where nobody fills it; a part whose
// strength is not known says so on its plank.
func TestCardOfOnePart(t *testing.T) {
	s := webtest.NewSite(t)
	p, _ := webtest.Create(t, s, "sample", catalog.Sample())
	at := page.ProjectURL(p.ID) + "/shelf"
	had := p.Value.Shelf
	send := func(part string, typed url.Values) int {
		t.Helper()
		body := webtest.Ask(s.Handler(), "GET", at+"?part="+url.QueryEscape(part), nil).Body.String()
		sent := url.Values{}
		for _, m := range regexp.MustCompile(`<input[^>]*type="hidden"[^>]*>`).FindAllString(body, -1) {
			name, value := regexp.MustCompile(`name="([^"]*)"`).FindStringSubmatch(m), regexp.MustCompile(`value="([^"]*)"`).FindStringSubmatch(m)
			if name != nil && value != nil && (strings.HasSuffix(name[1], form.RowsSuffix) || name[1] == form.NameRevision) {
				sent.Set(name[1], value[1])
			}
		}
		for k, v := range typed {
			sent[k] = v
		}
		return webtest.Ask(s.Handler(), "POST", at+"?part="+url.QueryEscape(part), sent).Code
	}
	if code := send("ropes[1]", url.Values{"shelf.ropes[1].name": {"Old line"}, "shelf.ropes[1].rope.breaking_load_n": {""}}); code != http.StatusSeeOther {
		t.Fatalf("save: %d", code)
	}
	now, err := s.Store.Project(t.Context(), p.ID)
	if err != nil || now.Value.Shelf.Ropes[1].Name != "Old line" || now.Value.Shelf.Ropes[1].Rope.BreakingLoad.Is || now.Value.Shelf.Ropes[0] != had.Ropes[0] {
		t.Fatalf("%v: %+v", err, now.Value.Shelf.Ropes)
	}
	if body := webtest.Ask(s.Handler(), "GET", at, nil).Body.String(); !strings.Contains(body, "? kg") || strings.Contains(body, "<select") {
		t.Error("the rope of which the strength is not known does not say so, or the page shows fields")
	}
	next := "drums[" + page.Itoa(len(had.Drums)) + "]"
	if code := send(next, nil); code != http.StatusSeeOther {
		t.Fatalf("nothing filled: %d", code)
	}
	if code := send(next, url.Values{"shelf." + next + ".name": {"Third"}}); code != http.StatusSeeOther {
		t.Fatalf("a new part: %d", code)
	}
	now, err = s.Store.Project(t.Context(), p.ID)
	if n := len(now.Value.Shelf.Drums); err != nil || n != len(had.Drums)+1 || now.Value.Shelf.Drums[n-1].Name != "Third" || now.Value.Shelf.Parts() != had.Parts()+1 {
		t.Errorf("%v: %d drums, %d parts", err, n, now.Value.Shelf.Parts())
	}
	if code := send("drums[0]", url.Values{form.NameDo: {"remove:shelf.drums[0]"}}); code != http.StatusSeeOther {
		t.Fatalf("remove: %d", code)
	}
	if now, err = s.Store.Project(t.Context(), p.ID); err != nil || now.Value.Shelf.Drums[0].Name != had.Drums[1].Name || len(now.Value.Shelf.Motors) != len(had.Motors) {
		t.Errorf("%v: the first drum is %q", err, now.Value.Shelf.Drums[0].Name)
	}
}
