// Package webtest is for tests of the rooms from outside: a whole site on a real file, requests as a browser sends them,
// and what reads the pages that come back.
package webtest

import (
	"bytes"
	"fmt"
	"io"
	"log/slog"
	"mime/multipart"
	"net/http"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"duskweight/internal/store"
	"duskweight/web"
	"duskweight/web/formtest"
)

// TestNow is a clock that tests can read back.
var TestNow = time.Date(2026, 3, 21, 18, 5, 0, 0, time.UTC)

// NewSite is a site on a real file.
func NewSite(t testing.TB) *web.Site {
	t.Helper()
	kept, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "test.db"), TestNow)
	if err != nil {
		t.Fatal(err)
	}
	s := siteOn(t, kept)
	t.Cleanup(func() {
		if err := s.Store.Close(); err != nil {
			t.Error(err)
		}
	})
	return s
}

// Restart closes the file and opens it again, as the next start would.
func Restart(t *testing.T, s *web.Site) {
	t.Helper()
	path := s.Store.Path()
	if err := s.Store.Close(); err != nil {
		t.Fatal(err)
	}
	again, err := store.Open(t.Context(), path, TestNow)
	if err != nil {
		t.Fatal(err)
	}
	*s = *siteOn(t, again)
}

func siteOn(t testing.TB, kept *store.Store) *web.Site {
	t.Helper()
	s, err := web.New(web.Config{Store: kept, Now: func() time.Time { return TestNow }, Version: "test", File: kept.Path(), Log: slog.New(slog.NewTextHandler(io.Discard, nil))})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Ask sends a request as a browser on this machine would.
func Ask(h http.Handler, method, path string, form url.Values, headers ...string) *httptest.ResponseRecorder {
	var body io.Reader
	if form != nil {
		body = strings.NewReader(form.Encode())
	}
	r := httptest.NewRequest(method, "http://127.0.0.1:8807"+path, body)
	if form != nil {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	for i := 0; i+1 < len(headers); i += 2 {
		if headers[i] == "Host" {
			r.Host = headers[i+1]
			continue
		}
		r.Header.Set(headers[i], headers[i+1])
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

// Upload sends files in a form.
func Upload(h http.Handler, path, field string, files ...[]byte) *httptest.ResponseRecorder {
	var b bytes.Buffer
	m := multipart.NewWriter(&b)
	for i, data := range files {
		part, _ := m.CreateFormFile(field, fmt.Sprintf("document%d.json", i+1))
		_, _ = part.Write(data)
	}
	_ = m.Close()
	r := httptest.NewRequest("POST", "http://127.0.0.1:8807"+path, &b)
	r.Header.Set("Content-Type", m.FormDataContentType())
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

// Fingerprint is everything a request could have changed.
func Fingerprint(t *testing.T, s *web.Site) string {
	t.Helper()
	var b strings.Builder
	add := func(v any, err error) {
		if err != nil {
			t.Fatal(err)
		}
		b.WriteString(strings.TrimSpace(strings.ReplaceAll(formtest.Dump(v), "\n", " ")) + "\n")
	}
	ctx := t.Context()
	living, err := s.Store.Projects(ctx)
	add(living, err)
	deleted, err := s.Store.DeletedProjects(ctx)
	add(deleted, err)
	set, err := s.Store.Settings(ctx)
	add(set, err)
	copies, err := s.Store.Backups()
	add(copies, err)
	for _, p := range living {
		history, err := s.Store.FullChanges(ctx, p.ID, 0, 1000)
		add(history, err)
	}
	return b.String()
}
