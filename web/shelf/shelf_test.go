package shelf_test

import (
	"net/http"
	"net/url"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/shelf"
	"duskweight/web/webtest"
)

// From a hoist to the shelf, from the shelf to what fits, from there to a new variant with those parts.
func TestShelfToVariant(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	doc.Project.Shelf = model.Shelf{}
	p, vs := webtest.Create(t, s, "sample", doc)
	at := page.ProjectURL(p.ID) + "/shelf"
	sent := func(do string, more url.Values) int {
		t.Helper()
		body := webtest.Ask(s.Handler(), "GET", at, nil).Body.String()
		typed := url.Values{form.NameRevision: {regexp.MustCompile(`name="revision" value="(\d+)"`).FindStringSubmatch(body)[1]}, "v": {page.Itoa(int(vs[2].ID))}, "i": {"0"}}
		for k, v := range more {
			typed[k] = v
		}
		return webtest.Ask(s.Handler(), "POST", at+do, typed).Code
	}
	if code := sent("/put", nil); code != http.StatusSeeOther {
		t.Fatalf("put: %d", code)
	}
	if code := sent("/put", url.Values{"v": {"99"}}); code != http.StatusNotFound {
		t.Errorf("put of a hoist that is not there: %d", code)
	}
	saved, err := s.Store.Project(t.Context(), p.ID)
	if err != nil || len(saved.Value.Shelf.Motors) != 1 || len(saved.Value.Shelf.Stages) != 4 {
		t.Fatalf("%v: %+v", err, saved.Value.Shelf)
	}
	body := webtest.Ask(s.Handler(), "GET", at+"/fits?v="+page.Itoa(int(vs[2].ID))+"&i=0", nil).Body.String()
	for _, say := range []string{"of 64 combinations lift, come down by themselves and stay cool.", "other combinations do not work", "it does not lift the mass", "Use these", "What the hoist still needs"} {
		if !strings.Contains(body, say) {
			t.Errorf("%q is not on the page", say)
		}
	}
	parts := regexp.MustCompile(`name="parts" value="([^"]+)"`).FindStringSubmatch(body)
	if parts == nil {
		t.Fatal("no combination to take")
	}
	version := page.Itoa(int(vs[2].Revision))
	for _, no := range []string{"", "0 0 0", "0 0 0 0 9", "1 0 0 0", "0 0 0 0 -1", "x 0 0 0", "-2 0 0 0", strings.Repeat("0 ", 40)} {
		if code := sent("/use", url.Values{"parts": {no}, "variant": {version}}); code != http.StatusBadRequest {
			t.Errorf("%q: %d", no, code)
		}
	}
	if code := sent("/use", url.Values{"parts": {parts[1]}, "variant": {"99"}}); code != http.StatusConflict {
		t.Errorf("an old variant: %d", code)
	}
	if code := sent("/use", url.Values{"parts": {parts[1]}, "variant": {version}, form.NameRevision: {"1"}}); code != http.StatusConflict {
		t.Errorf("an old shelf: %d", code)
	}
	if code := sent("/use", url.Values{"parts": {parts[1]}, "variant": {version}, "do": {"new"}}); code != http.StatusSeeOther {
		t.Fatalf("use: %d", code)
	}
	all, err := s.Store.Variants(t.Context(), p.ID)
	if err != nil || len(all) != 4 {
		t.Fatalf("%v: %d variants", err, len(all))
	}
	c, _ := shelf.CombinationOf(parts[1], saved.Value.Shelf)
	want := c.With(saved.Value, vs[2].Value, 0).Stores[0].Hoist
	if got := all[3].Value.Stores[0].Hoist; !reflect.DeepEqual(got.Machine, want.Machine) || !reflect.DeepEqual(got.Train, want.Train) || got.Drum != want.Drum {
		t.Errorf("the new variant has other parts: %+v", got)
	}
	if strings.TrimSpace(shelf.Written(c)) != parts[1] {
		t.Errorf("%q became %q", parts[1], shelf.Written(c))
	}
	// the same parts as one change of the variant that they were tried in, which can be undone
	if code := sent("/use", url.Values{"parts": {parts[1]}, "variant": {version}}); code != http.StatusSeeOther {
		t.Fatalf("use these: %d", code)
	}
	now, err := s.Store.Variant(t.Context(), vs[2].ID)
	if err != nil || now.Revision != vs[2].Revision+1 || !reflect.DeepEqual(now.Value.Stores[0].Hoist.Machine, want.Machine) || !strings.HasPrefix(now.Said, "Parts of the shelf used: ") {
		t.Errorf("%v: revision %d, %q", err, now.Revision, now.Said)
	}
	if _, err := s.Store.Undo(t.Context(), p.ID, 0, s.Now()); err != nil {
		t.Fatal(err)
	}
	if back, err := s.Store.Variant(t.Context(), vs[2].ID); err != nil || !reflect.DeepEqual(back.Value, vs[2].Value) {
		t.Errorf("%v: the change is not undone", err)
	}
}
