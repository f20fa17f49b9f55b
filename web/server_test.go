package web_test

import (
	"bufio"
	"bytes"
	"context"
	"io"
	"log/slog"
	"net"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"duskweight/internal/store"
	"duskweight/web"
	"duskweight/web/webtest"
)

// raw sends bytes to a running server and reads its answer.
func raw(t *testing.T, address, request string) *http.Response {
	t.Helper()
	conn, err := net.Dial("tcp", address)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { conn.Close() })
	if _, err := io.WriteString(conn, request); err != nil {
		t.Fatal(err)
	}
	answer, err := http.ReadResponse(bufio.NewReader(conn), nil)
	if err != nil {
		t.Fatal(err)
	}
	return answer
}

// What no page of ours sends passes the same guards as every other request: OPTIONS for the server as a whole (RFC 9110, section
// 9.3.7), and more before the body than is read (RFC 6585, section 5).
func TestOddRequestsAreGuarded(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	site := webtest.NewSite(t)
	server := web.Server(site.Handler(), site.Log)
	go func() { _ = server.Serve(l) }()
	t.Cleanup(func() { server.Close() })
	own := l.Addr().String()
	long := "X-Long: " + strings.Repeat("a", 9<<10) + "\r\n"
	for _, one := range []struct {
		request string
		code    int
	}{
		{"OPTIONS * HTTP/1.1\r\nHost: evil.example\r\n\r\n", http.StatusMisdirectedRequest},
		{"OPTIONS * HTTP/1.1\r\nHost: " + own + "\r\n\r\n", http.StatusNotFound},
		{"GET / HTTP/1.1\r\nHost: " + own + "\r\n" + long + "\r\n", http.StatusRequestHeaderFieldsTooLarge},
		{"GET /?find=" + strings.Repeat("a", 9<<10) + " HTTP/1.1\r\nHost: " + own + "\r\n\r\n", http.StatusRequestHeaderFieldsTooLarge},
		{"GET / HTTP/1.1\r\nHost: evil.example\r\n" + long + "\r\n", http.StatusMisdirectedRequest},
		{"GET / HTTP/1.1\r\nHost: " + own + "\r\nCookie: a=" + strings.Repeat("a", 6<<10) + "\r\n\r\n", http.StatusOK},
	} {
		answer := raw(t, own, one.request)
		if answer.StatusCode != one.code || answer.Header.Get("Content-Security-Policy") != web.Policy {
			t.Errorf("%.60q: %d with the policy %q, want %d", one.request, answer.StatusCode, answer.Header.Get("Content-Security-Policy"), one.code)
		}
	}
}

// HEAD is GET without its body (RFC 9110, section 9.3.2), on the pages of a variant too.
func TestHead(t *testing.T) {
	h := webtest.NewSite(t).Handler()
	webtest.Ask(h, "POST", "/sample", url.Values{})
	for _, at := range []string{"/", "/projects/1", "/projects/1/variants/1", "/projects/1/variants/1/hoist/0", "/projects/1/variants/1/sheet", "/projects/1/export.json", "/nothing", "/static/app.css"} {
		get, head := webtest.Ask(h, "GET", at, nil), webtest.Ask(h, "HEAD", at, nil)
		if head.Code != get.Code || head.Header().Get("Content-Type") != get.Header().Get("Content-Type") || head.Header().Get("Content-Length") != get.Header().Get("Content-Length") {
			t.Errorf("%s: HEAD %d %v, GET %d %v", at, head.Code, head.Header(), get.Code, get.Header())
		}
	}
	if w := webtest.Ask(h, "HEAD", "/settings/backup", nil); w.Code != webtest.Ask(h, "GET", "/settings/backup", nil).Code {
		t.Errorf("HEAD of what only POST does: %d", w.Code)
	}
}

// logged is a site with what it logs, and its file.
func logged(t *testing.T) (*web.Site, *bytes.Buffer, *store.Store) {
	t.Helper()
	kept, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "test.db"), webtest.TestNow)
	if err != nil {
		t.Fatal(err)
	}
	var log bytes.Buffer
	s, err := web.New(web.Config{Store: kept, Now: func() time.Time { return webtest.TestNow }, Version: "test", File: kept.Path(), Log: slog.New(slog.NewTextHandler(&log, nil))})
	if err != nil {
		t.Fatal(err)
	}
	return s, &log, kept
}

// The log says which page failed and why, and nothing that somebody typed: no name, no field, no address.
func TestLogHoldsNothingTyped(t *testing.T) {
	s, log, kept := logged(t)
	h := s.Handler()
	webtest.Ask(h, "POST", "/sample", url.Values{})
	webtest.Ask(h, "POST", "/projects/1/rename", url.Values{"name": {"Grandmother"}, "revision": {"1"}})
	if err := kept.Close(); err != nil {
		t.Fatal(err)
	}
	for _, one := range [][2]string{{"GET", "/projects/1?find=Grandmother"}, {"GET", "/?find=Grandmother"}, {"POST", "/projects/1/variants/1"}, {"POST", "/projects/1/rename"}, {"GET", "/projects/1/variants/1/Grandmother"}, {"GET", "/projects/1/history?of=Grandmother"}} {
		var form url.Values
		if one[0] == "POST" {
			form = url.Values{"name": {"Grandmother"}, "revision": {"1"}}
		}
		webtest.Ask(h, one[0], one[1], form)
	}
	said := log.String()
	if !strings.Contains(said, "page=/projects/{project}") || strings.Contains(said, "/projects/1") || strings.Contains(said, "Grandmother") {
		t.Errorf("the log says:\n%s", said)
	}
}

// A browser that leaves before its answer is no error of ours and not in the log.
func TestWhoLeavesIsNotLogged(t *testing.T) {
	s, log, kept := logged(t)
	defer kept.Close()
	h := s.Handler()
	webtest.Ask(h, "POST", "/sample", url.Values{})
	for _, at := range []string{"/", "/projects/1", "/projects/1/variants/1", "/projects/1/variants/1/takes", "/projects/1/history"} {
		ctx, leave := context.WithCancel(t.Context())
		leave()
		h.ServeHTTP(httptest.NewRecorder(), httptest.NewRequestWithContext(ctx, "GET", "http://127.0.0.1:8807"+at, nil))
	}
	if log.Len() > 0 {
		t.Errorf("the log says:\n%s", log)
	}
}

// Whoever watches over the program hears that all is well, and that it is not once nothing can be saved.
func TestHealthz(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	if w := webtest.Ask(h, "GET", "/healthz", nil); w.Code != http.StatusOK || w.Body.String() != "ok\n" {
		t.Errorf("%d %q", w.Code, w.Body)
	}
	if err := os.Rename(s.File, s.File+".gone"); err != nil {
		t.Fatal(err)
	}
	if w := webtest.Ask(h, "GET", "/healthz", nil); w.Code != http.StatusServiceUnavailable || !strings.Contains(w.Body.String(), "was moved") {
		t.Errorf("without its file: %d %q", w.Code, w.Body)
	}
}
