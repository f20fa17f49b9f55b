package projects_test

import (
	"bytes"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// Out and in again: the second export is the first to the last byte.
func TestExportImport(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	if w := webtest.Ask(h, "POST", "/sample", url.Values{}); w.Code != http.StatusSeeOther || w.Header().Get("Location") != "/projects/1" {
		t.Fatalf("%d %s", w.Code, w.Header().Get("Location"))
	}
	first := webtest.Ask(h, "GET", "/projects/1/export.json", nil)
	if first.Code != http.StatusOK || !strings.Contains(first.Header().Get("Content-Disposition"), "attachment") {
		t.Fatalf("%d %v", first.Code, first.Header())
	}
	if w := webtest.Upload(h, "/import", "file", first.Body.Bytes()); w.Code != http.StatusSeeOther || w.Header().Get("Location") != "/projects/2" {
		t.Fatalf("%d %s", w.Code, w.Body)
	}
	if second := webtest.Ask(h, "GET", "/projects/2/export.json", nil); !bytes.Equal(first.Body.Bytes(), second.Body.Bytes()) {
		t.Error("the second export is not the first")
	}
}

func TestImportRefused(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	good, err := document.Encode(catalog.Sample())
	if err != nil {
		t.Fatal(err)
	}
	for name, data := range map[string][]byte{
		"empty": nil, "not json": []byte("hello"), "a list": []byte("[]"), "cut off": good[:len(good)/2],
		"newer edition": bytes.Replace(good, []byte(`"duskweight": 1`), []byte(`"duskweight": 99`), 1),
		"unknown field": bytes.Replace(good, []byte(`"project": {`), []byte(`"project": {"colour":"<b>red</b>",`), 1),
		"no number":     bytes.Replace(good, []byte(`"travel_m": `), []byte(`"travel_m": 1e999, "x": `), 1),
		"deep":          []byte(strings.Repeat("[", 100000)),
		"a database":    []byte("SQLite format 3\x00"),
	} {
		w := webtest.Upload(h, "/import", "file", data)
		if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), "cannot be brought in") || !strings.Contains(w.Body.String(), "<title>Error: ") {
			t.Errorf("%s: %d", name, w.Code)
		}
		if strings.Contains(w.Body.String(), "<b>red") {
			t.Errorf("%s: text of the document is on the page as it is", name)
		}
	}
	if w := webtest.Ask(h, "POST", "/import", url.Values{"file": {"x"}}); w.Code != http.StatusBadRequest {
		t.Errorf("no file: %d, want 400", w.Code)
	}
	if all, err := s.Store.Projects(t.Context()); err != nil || len(all) > 0 {
		t.Errorf("something was brought in: %v %v", all, err)
	}
}

func TestDeleteAndBringBack(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	webtest.Ask(h, "POST", "/sample", url.Values{})
	body := webtest.Ask(h, "GET", "/", nil).Body.String()
	if !strings.Contains(body, catalog.Sample().Project.Name) || !strings.Contains(body, "worked example") || !strings.Contains(body, "today, 18:05") {
		t.Error("the list does not show the sample")
	}
	if w := webtest.Ask(h, "POST", "/projects/1/delete", url.Values{"revision": {"7"}}); w.Code != http.StatusConflict {
		t.Errorf("a stale delete: %d, want 409", w.Code)
	}
	if w := webtest.Ask(h, "POST", "/projects/1/delete", url.Values{"revision": {"1"}}); w.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", w.Code, w.Body)
	}
	if w := webtest.Ask(h, "GET", "/projects/1/history", nil); w.Code != http.StatusNotFound {
		t.Errorf("a deleted project is still there: %d", w.Code)
	}
	if body := webtest.Ask(h, "GET", "/", nil).Body.String(); !strings.Contains(body, "/projects/1/restore") || !strings.Contains(body, "Three answers give a first verdict") {
		t.Error("the list does not offer to bring it back")
	}
	if w := webtest.Ask(h, "POST", "/projects/1/restore", url.Values{}); w.Code != http.StatusSeeOther {
		t.Errorf("%d", w.Code)
	}
	if w := webtest.Ask(h, "GET", "/projects/1/history", nil); w.Code != http.StatusOK || !strings.Contains(w.Body.String(), "Project brought back") {
		t.Errorf("%d", w.Code)
	}
}

// Undo takes back what its page offered and nothing else; undo can be undone.
func TestUndoRedo(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	mux, id := webtest.PanelSite(t, s)
	typed := webtest.OpenForm(t, s, id)
	typed.Set("name", "Renamed")
	if w := webtest.Ask(mux, "POST", "/panels", typed); w.Code != http.StatusSeeOther {
		t.Fatal(w.Code)
	}
	undo, _, err := s.Store.Steps(t.Context(), 1)
	if err != nil || undo == nil {
		t.Fatal(undo, err)
	}
	body := webtest.Ask(h, "GET", "/projects/1/history", nil).Body.String()
	if !strings.Contains(body, "Undo: Renamed") || !strings.Contains(body, "→ Renamed") {
		t.Error("the history does not offer to undo")
	}
	seq := url.Values{"seq": {page.StepOf(undo).Seq}}
	if w := webtest.Ask(h, "POST", "/projects/1/undo", url.Values{"seq": {"1"}}); w.Code != http.StatusConflict {
		t.Errorf("undo of another change: %d, want 409", w.Code)
	}
	if w := webtest.Ask(h, "POST", "/projects/1/undo", seq); w.Code != http.StatusSeeOther || webtest.Stored(t, s, id).Value.Name == "Renamed" {
		t.Errorf("%d", w.Code)
	}
	if w := webtest.Ask(h, "POST", "/projects/1/undo", seq); w.Code != http.StatusConflict {
		t.Errorf("undo twice: %d, want 409", w.Code)
	}
	_, redo, err := s.Store.Steps(t.Context(), 1)
	if err != nil || redo == nil {
		t.Fatal(redo, err)
	}
	if w := webtest.Ask(h, "POST", "/projects/1/redo", url.Values{"seq": {page.StepOf(redo).Seq}}); w.Code != http.StatusSeeOther || webtest.Stored(t, s, id).Value.Name != "Renamed" {
		t.Errorf("%d", w.Code)
	}
	for _, bad := range []string{"", "x", "-1", "0"} {
		if w := webtest.Ask(h, "POST", "/projects/1/undo", url.Values{"seq": {bad}}); w.Code != http.StatusBadRequest {
			t.Errorf("%q: %d, want 400", bad, w.Code)
		}
	}
}
