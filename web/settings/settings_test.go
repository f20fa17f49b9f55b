package settings_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
	"duskweight/web/webtest"
)

// Settings are on the disk: another program that opens the file reads them back.
func TestSettingsAreDurable(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	if sys, err := s.Units(t.Context()); err != nil || sys != unit.Metric {
		t.Fatal("the first start is not metric", err)
	}
	w := webtest.Ask(h, "POST", "/settings", url.Values{"units": {"imperial"}, "currency": {" Rs "}})
	if w.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", w.Code, w.Body)
	}
	webtest.Restart(t, s)
	body := webtest.Ask(s.Handler(), "GET", w.Header().Get("Location"), nil).Body.String()
	for _, want := range []string{`value="imperial" checked`, `value="Rs"`, "Saved.", s.Store.Path()} {
		if !strings.Contains(body, want) {
			t.Errorf("%q is not on the page", want)
		}
	}
	if sys, err := s.Units(t.Context()); err != nil || sys != unit.Imperial {
		t.Error("the units are lost", err)
	}
}

func TestSettingsRefused(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	w := webtest.Ask(h, "POST", "/settings", url.Values{"units": {"imperial"}, "currency": {"a very long label"}})
	body := w.Body.String()
	if w.Code != http.StatusUnprocessableEntity || !strings.Contains(body, `value="a very long label"`) || !strings.Contains(body, `aria-invalid="true"`) || !strings.Contains(body, `value="imperial" checked`) {
		t.Errorf("%d %s", w.Code, body)
	}
	if w := webtest.Ask(h, "POST", "/settings", url.Values{"units": {"cubits"}}); w.Code != http.StatusBadRequest {
		t.Errorf("%d, want 400", w.Code)
	}
	if set, err := s.Store.Settings(t.Context()); err != nil || len(set) > 0 {
		t.Errorf("something was saved: %v %v", set, err)
	}
}

func TestCopies(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	webtest.Ask(h, "POST", "/sample", url.Values{})
	w := webtest.Ask(h, "POST", "/settings/copy", url.Values{})
	if w.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", w.Code, w.Body)
	}
	if body := webtest.Ask(h, "GET", strings.TrimSuffix(w.Header().Get("Location"), "#copies"), nil).Body.String(); !strings.Contains(body, "Made and checked") || !strings.Contains(body, "/settings/copies/1") {
		t.Error("the page does not show the copy")
	}
	for _, one := range [][2]string{{"GET", "/settings/copies/1"}, {"POST", "/settings/download"}} {
		w := webtest.Ask(h, one[0], one[1], url.Values{})
		if w.Code != http.StatusOK || !strings.HasPrefix(w.Body.String(), "SQLite format 3\x00") || !strings.Contains(w.Header().Get("Content-Disposition"), "attachment") {
			t.Errorf("%s %s: %d %v", one[0], one[1], w.Code, w.Header())
		}
	}
	for _, name := range []string{"2", "01", "-1", "x", "..%2f..%2ftest.db"} {
		if w := webtest.Ask(h, "GET", "/settings/copies/"+name, nil); w.Code != http.StatusNotFound {
			t.Errorf("%s: %d, want 404", name, w.Code)
		}
	}
}
