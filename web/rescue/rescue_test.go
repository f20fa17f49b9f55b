package rescue_test

import (
	"bytes"
	"errors"
	"io"
	"log/slog"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/store"
	"duskweight/web"
	"duskweight/web/webtest"
)

// lostSite is the site of a data file of which spoil made something else: it held the worked example, a copy of it lies
// beside it, and the name of the project was changed after that. What is opened in the end is handed to then.
func lostSite(t *testing.T, spoil func([]byte) []byte, then ...func(*store.Store)) (s *web.Site, path string, spoilt []byte, opened func() *store.Store) {
	t.Helper()
	ctx := t.Context()
	path = filepath.Join(t.TempDir(), "duskweight.db")
	kept := must(t, func() (*store.Store, error) { return store.Open(ctx, path, webtest.TestNow) })
	p := must(t, func() (store.Saved[model.Project], error) {
		return kept.CreateProject(ctx, catalog.Sample(), "Made", webtest.TestNow)
	})
	must(t, func() (store.Backup, error) { return kept.Backup(ctx, webtest.TestNow) })
	p.Value.Name = "After the copy"
	must(t, func() (store.Saved[model.Project], error) {
		return kept.SaveProject(ctx, p.ID, p.Value, store.Edit{Revision: p.Revision}, webtest.TestNow.Add(time.Hour))
	})
	if err := kept.Close(); err != nil {
		t.Fatal(err)
	}
	spoilt = spoil(must(t, func() ([]byte, error) { return os.ReadFile(path) }))
	if err := os.WriteFile(path, spoilt, 0o600); err != nil {
		t.Fatal(err)
	}
	_, err := store.Open(ctx, path, webtest.TestNow)
	lost, ok := errors.AsType[*store.Lost](err)
	if !ok {
		t.Fatalf("the file is not lost: %v", err)
	}
	held := must(t, func() (*store.Rescue, error) { return store.OpenRescue(ctx, lost) })
	var now *store.Store
	s = must(t, func() (*web.Site, error) {
		return web.New(web.Config{Lost: held, File: path, Version: "test", Now: func() time.Time { return webtest.TestNow }, Log: slog.New(slog.NewTextHandler(io.Discard, nil)),
			Opened: func(s *store.Store) error {
				now = s
				for _, f := range then {
					f(s)
				}
				return nil
			}})
	})
	t.Cleanup(func() {
		if now != nil {
			now.Close()
		}
		held.Close()
	})
	return s, path, spoilt, func() *store.Store { return now }
}

// siteOf is the site of an open file.
func siteOf(t *testing.T, kept *store.Store) *web.Site {
	t.Helper()
	return must(t, func() (*web.Site, error) {
		return web.New(web.Config{Store: kept, File: kept.Path(), Version: "test", Now: func() time.Time { return webtest.TestNow }, Log: slog.New(slog.NewTextHandler(io.Discard, nil))})
	})
}

func must[T any](t *testing.T, f func() (T, error)) T {
	t.Helper()
	v, err := f()
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// noSchema zeros the first page of a file: SQLite takes it for no database.
func noSchema(b []byte) []byte {
	b = bytes.Clone(b)
	clear(b[:4096])
	return b
}

// The page says what happened, lists what can be read and the copies, and nothing that is asked for changes a byte; every other
// address leads to it, and the guide is there.
func TestPageOfALostFile(t *testing.T) {
	for name, spoil := range map[string]func([]byte) []byte{"first page": noSchema, "emptied": func([]byte) []byte { return nil }, "a letter": func([]byte) []byte { return bytes.Repeat([]byte("Dear aunt, "), 900) }} {
		s, path, spoilt, opened := lostSite(t, spoil)
		h := s.Handler()
		w := webtest.Ask(h, "GET", "/", nil)
		body := w.Body.String()
		want := []string{"Your projects cannot be opened", "Duskweight has changed nothing", "1 project, ", "Go back to it", "Begin with an empty file"}
		want = append(want, map[string][]string{
			"first page": {"is damaged", "After the copy", "/rescue/projects/1/export.json"},
			"emptied":    {"is empty", "No project can be read"},
			"a letter":   {"a file that is not a database", "No project can be read"},
		}[name]...)
		for _, words := range want {
			if !strings.Contains(body, words) {
				t.Errorf("%s: %q is not on the page", name, words)
			}
		}
		if wrong := webtest.SoundPage(body); w.Code != http.StatusOK || len(wrong) > 0 {
			t.Errorf("%s: %d %q", name, w.Code, wrong)
		}
		for _, at := range []string{"/projects/1", "/settings", "/nothing", "/start"} {
			if w := webtest.Ask(h, "GET", at, nil); w.Code != http.StatusSeeOther || w.Header().Get("Location") != "/" {
				t.Errorf("%s: %s leads to %d %q", name, at, w.Code, w.Header().Get("Location"))
			}
		}
		if w := webtest.Ask(h, "GET", "/help/safety", nil); w.Code != http.StatusOK {
			t.Errorf("%s: the cautions: %d", name, w.Code)
		}
		if w := webtest.Ask(h, "GET", "/healthz", nil); w.Code != http.StatusServiceUnavailable || !strings.Contains(w.Body.String(), "The file with your projects") && name != "a letter" {
			t.Errorf("%s: the health is %d %q", name, w.Code, w.Body)
		}
		if w := webtest.Ask(h, "POST", "/sample", url.Values{}); w.Code != http.StatusNotFound {
			t.Errorf("%s: a new project: %d", name, w.Code)
		}
		for _, route := range webtest.EveryRoute(t, h) {
			if w := webtest.Ask(h, route[0], route[1], url.Values{}, "Host", "evil.example"); w.Code != http.StatusMisdirectedRequest {
				t.Errorf("%s: %v for a stranger's name: %d", name, route, w.Code)
			}
			if w := webtest.Ask(h, route[0], route[1], url.Values{}, "Sec-Fetch-Site", "cross-site"); w.Code != http.StatusForbidden {
				t.Errorf("%s: %v from a stranger's page: %d", name, route, w.Code)
			}
			if route[0] == "GET" {
				webtest.Ask(h, "GET", route[1], nil)
			}
		}
		if is, err := os.ReadFile(path); err != nil || !bytes.Equal(is, spoilt) || opened() != nil {
			t.Errorf("%s: the file was changed, %v", name, err)
		}
	}
}

// What is exported from a damaged file can be imported into a sound one, as it was saved last.
func TestExportOfALostFile(t *testing.T) {
	s, _, _, _ := lostSite(t, noSchema)
	w := webtest.Ask(s.Handler(), "GET", "/rescue/projects/1/export.json", nil)
	if w.Code != http.StatusOK {
		t.Fatal(w.Code)
	}
	sound := webtest.NewSite(t)
	if w := webtest.Upload(sound.Handler(), "/import", "file", w.Body.Bytes()); w.Code != http.StatusSeeOther {
		t.Fatalf("the import: %d", w.Code)
	}
	doc := must(t, func() (model.Document, error) { return sound.Store.Export(t.Context(), 1) })
	if doc.Project.Name != "After the copy" || len(doc.Variants) != len(catalog.Sample().Variants) {
		t.Errorf("%q with %d variants", doc.Project.Name, len(doc.Variants))
	}
	if w := webtest.Ask(s.Handler(), "GET", "/rescue/projects/9/export.json", nil); w.Code != http.StatusNotFound {
		t.Errorf("a project that is not there: %d", w.Code)
	}
}

// Going back hands on an open file that is like the copy, keeps the damaged one, and a second press does nothing more; an empty
// file is begun where that is chosen.
func TestChoices(t *testing.T) {
	for at, projects := range map[string]int{"/rescue/copies/1/restore": 1, "/rescue/empty": 0} {
		s, path, spoilt, opened := lostSite(t, noSchema)
		h := s.Handler()
		for range 2 {
			if w := webtest.Ask(h, "POST", at, url.Values{}); w.Code != http.StatusSeeOther {
				t.Fatalf("%s: %d", at, w.Code)
			}
		}
		list := must(t, func() ([]store.Listed, error) { return opened().Projects(t.Context()) })
		if len(list) != projects || projects > 0 && list[0].Name != catalog.Sample().Project.Name {
			t.Errorf("%s: %+v", at, list)
		}
		aside, err := filepath.Glob(path + ".set-aside-*Z")
		if err != nil || len(aside) != 1 {
			t.Fatalf("%s: kept %q", at, aside)
		}
		if is, err := os.ReadFile(aside[0]); err != nil || !bytes.Equal(is, spoilt) {
			t.Errorf("%s: the damaged file is not kept as it was, %v", at, err)
		}
		if n := strings.Join(opened().Notices(), " "); !strings.Contains(n, aside[0]) {
			t.Errorf("%s: the notices say %q", at, n)
		}
	}
}

// A copy that is damaged itself is not gone back to: the page says so, and another one can be chosen.
func TestDamagedCopy(t *testing.T) {
	s, path, spoilt, opened := lostSite(t, noSchema)
	copies := must(t, func() ([]store.Backup, error) { return store.Copies(path) })
	data := must(t, func() ([]byte, error) { return os.ReadFile(copies[0].Path) })
	if err := os.WriteFile(copies[0].Path, data[:len(data)-4096], 0o600); err != nil {
		t.Fatal(err)
	}
	if w := webtest.Ask(s.Handler(), "POST", "/rescue/copies/1/restore", url.Values{}); w.Code != http.StatusConflict || !strings.Contains(w.Body.String(), "This copy cannot be used") {
		t.Errorf("%d", w.Code)
	}
	if is, err := os.ReadFile(path); err != nil || !bytes.Equal(is, spoilt) || opened() != nil {
		t.Errorf("the file was changed, %v", err)
	}
}
