package page_test

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strings"
	"syscall"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/say"
	"duskweight/internal/store"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// Every kind of error has its page; what nobody foresaw is logged once and shows nothing of its own text.
func TestErrorsBecomePages(t *testing.T) {
	s := webtest.NewSite(t)
	var log bytes.Buffer
	s.Log = slog.New(slog.NewTextHandler(&log, nil))
	for _, one := range []struct {
		err  error
		code int
		say  string
	}{
		{model.Problems{{Path: "name", Say: say.Words("give it a name")}}, 422, "Give it a name."},
		{fmt.Errorf("wrapped: %w", model.Problems{{Path: "x", Say: say.Words("<b>bold</b>")}}), 422, "&lt;b&gt;"},
		{&page.Conflict{Back: "/back", Rows: []page.ConflictRow{{Label: "Travel", Saved: "4.5 m", Yours: "5 m"}}}, 409, "4.5 m"},
		{fmt.Errorf("wrapped: %w", store.ErrStale), 409, "Nothing of yours was saved over it"},
		{store.ErrNothing, 409, "nothing left"},
		{store.ErrNotFound, 404, "There is nothing at this address"},
		{page.ErrNotFound, 404, "There is nothing at this address"},
		{page.ErrWrongMethod, 405, "does not accept"},
		{&http.MaxBytesError{Limit: 1 << 20}, 413, "At most 1 024 KiB"},
		{page.BadRequest("A sentence."), 400, "A sentence."},
		{&fs.PathError{Op: "write", Path: "/backups/a.db", Err: syscall.ENOSPC}, 507, "no room left"},
		{&fs.PathError{Op: "write", Path: "/backups/a.db", Err: syscall.EIO}, 500, "may be damaged"},
		{fmt.Errorf("wrapped: %w", store.ErrReadOnly), 403, "is write-protected"},
		{page.ErrForeignPage, 403, "not ours"},
		{page.ErrNotAForm, 415, "Only a form"},
		{errors.New("secret: disk /dev/sda1 broken"), 500, "window where the program was started"},
	} {
		log.Reset()
		w := httptest.NewRecorder()
		s.Page(func(http.ResponseWriter, *http.Request) error { return one.err })(w, httptest.NewRequest("GET", "/some/page", nil))
		body := w.Body.String()
		if w.Code != one.code || !strings.Contains(body, one.say) {
			t.Errorf("%v: %d, want %d with %q", one.err, w.Code, one.code, one.say)
		}
		if strings.Contains(body, "secret") {
			t.Errorf("%v: its own text is on the page", one.err)
		}
		if logged := strings.Count(log.String(), "\n"); logged != map[bool]int{true: 1}[one.code >= 500] {
			t.Errorf("%v: %d lines in the log", one.err, logged)
		}
	}
}

func TestPanicBecomesAPage(t *testing.T) {
	s := webtest.NewSite(t)
	w := httptest.NewRecorder()
	s.Page(func(http.ResponseWriter, *http.Request) error { panic("secret") })(w, httptest.NewRequest("GET", "/", nil))
	if w.Code != http.StatusInternalServerError || strings.Contains(w.Body.String(), "secret") {
		t.Errorf("%d %s", w.Code, w.Body)
	}
}

func TestUnknownAddresses(t *testing.T) {
	h := webtest.NewSite(t).Handler()
	for _, path := range []string{"/nothing", "/projects/0", "/projects/x/history", "/projects/01/history", "/projects/99/history", "/projects/99999999999999999999/history", "/projects/1/export.json", "//", "/.git/config"} {
		if w := webtest.Ask(h, "GET", path, nil); w.Code != http.StatusNotFound {
			t.Errorf("%s: %d, want 404", path, w.Code)
		}
	}
	if w := webtest.Ask(h, "DELETE", "/settings", nil); w.Code != http.StatusMethodNotAllowed {
		t.Errorf("%d, want 405", w.Code)
	}
}
