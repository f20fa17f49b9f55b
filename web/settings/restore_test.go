package settings_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"duskweight/web/webtest"
)

// Back to a copy by the page, and back from there by the button that the page then has.
func TestGoBackToACopy(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	webtest.Ask(h, "POST", "/sample", url.Values{})
	webtest.Ask(h, "POST", "/settings/copy", url.Values{})
	webtest.Ask(h, "POST", "/sample", url.Values{})
	w := webtest.Ask(h, "POST", "/settings/copies/1/restore", url.Values{})
	if w.Code != http.StatusSeeOther || w.Header().Get("Location") != "/settings?back=1&before=2#copies" {
		t.Fatalf("%d %s %s", w.Code, w.Header().Get("Location"), w.Body)
	}
	if all, err := s.Store.Projects(t.Context()); err != nil || len(all) != 1 {
		t.Errorf("%d projects, %v", len(all), err)
	}
	body := webtest.Ask(h, "GET", "/settings?back=1&before=2", nil).Body.String()
	if !strings.Contains(body, "Your data is now as in the copy") || !strings.Contains(body, "Undo: use again what was here before") || !strings.Contains(body, `action="/settings/copies/2/restore"`) {
		t.Error("the page does not offer to take it back")
	}
	webtest.Ask(h, "POST", "/settings/copies/2/restore", url.Values{})
	if all, err := s.Store.Projects(t.Context()); err != nil || len(all) != 2 {
		t.Errorf("taken back: %d projects, %v", len(all), err)
	}
	if w := webtest.Ask(h, "POST", "/settings/copies/99/restore", url.Values{}); w.Code != http.StatusNotFound {
		t.Errorf("a copy that is not there: %d", w.Code)
	}
}

// A copy is made before a document is brought in.
func TestCopyBeforeImport(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	webtest.Ask(h, "POST", "/sample", url.Values{})
	doc := webtest.Ask(h, "GET", "/projects/1/export.json", nil).Body.Bytes()
	if w := webtest.Upload(h, "/import", "file", doc); w.Code != http.StatusSeeOther {
		t.Fatal(w.Code)
	}
	copies, err := s.Store.Backups()
	if err != nil || len(copies) != 1 {
		t.Fatalf("%d copies, %v", len(copies), err)
	}
	if _, err := s.Store.Restore(t.Context(), copies[0].Path, webtest.TestNow); err != nil {
		t.Fatal(err)
	}
	if all, err := s.Store.Projects(t.Context()); err != nil || len(all) != 1 {
		t.Errorf("the copy was not made before: %d projects, %v", len(all), err)
	}
}
