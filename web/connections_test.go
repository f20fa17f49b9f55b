package web_test

import (
	"bufio"
	"fmt"
	"io"
	"mime"
	"net"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"duskweight/web"
	"duskweight/web/webtest"
)

// hurry is by how much the tests shorten the timeouts of the server.
const hurry = 50

// serving runs the server of a site, with its own timeouts or with shortened ones, and returns its address. A timeout that
// is not set stays so.
func serving(t *testing.T, s *web.Site, hurried bool) string {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	server := web.Server(s.Handler(), s.Log)
	if hurried {
		server.ReadHeaderTimeout /= hurry
		server.ReadTimeout /= hurry
		server.WriteTimeout /= hurry
		server.IdleTimeout /= hurry
	}
	go func() { _ = server.Serve(l) }()
	t.Cleanup(func() { server.Close() })
	return l.Addr().String()
}

func dialled(t *testing.T, address, said string) net.Conn {
	t.Helper()
	conn, err := net.Dial("tcp", address)
	if err == nil {
		t.Cleanup(func() { conn.Close() })
		_, err = io.WriteString(conn, said)
	}
	if err != nil {
		t.Fatal(err)
	}
	return conn
}

// Two hundred connections that say nothing, or end neither their header nor their body, keep nobody else waiting; the server
// ends each of them by itself, and a form of which half came changes nothing. Without a timeout the reads of this test do not
// return.
func TestSlowConnections(t *testing.T) {
	s := webtest.NewSite(t)
	address := serving(t, s, true)
	webtest.Ask(s.Handler(), "POST", "/sample", url.Values{})
	before := webtest.Fingerprint(t, s)
	var slow []net.Conn
	for i := range 200 {
		slow = append(slow, dialled(t, address, []string{
			"",
			"GET / HT",
			"GET / HTTP/1.1\r\nHost: " + address + "\r\nX-Slow: a",
			"POST /settings HTTP/1.1\r\nHost: " + address + "\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: 29\r\n\r\nunits=imperial",
		}[i%4]))
	}
	if answer := raw(t, address, "GET / HTTP/1.1\r\nHost: "+address+"\r\n\r\n"); answer.StatusCode != http.StatusOK {
		t.Errorf("beside slow connections: %d", answer.StatusCode)
	}
	for i, conn := range slow {
		if said, _ := io.ReadAll(conn); strings.HasPrefix(string(said), "HTTP/1.1 2") || strings.HasPrefix(string(said), "HTTP/1.1 3") {
			t.Errorf("connection %d was answered with %.60q", i, said)
		}
	}
	if after := webtest.Fingerprint(t, s); after != before {
		t.Error("half of a form has changed something")
	}
}

// Many small header lines are refused like a long one (RFC 6585, section 5), and so is one of 60 KB whose end
// has not come yet: nobody waits for it.
func TestHeaderFloods(t *testing.T) {
	address := serving(t, webtest.NewSite(t), false)
	for _, lines := range []int{900, 2000} { // 8 KiB are refused by us, 20 KiB by net/http
		var flood strings.Builder
		for i := range lines {
			fmt.Fprintf(&flood, "X-%d: a\r\n", i)
		}
		answer := raw(t, address, "GET / HTTP/1.1\r\nHost: "+address+"\r\n"+flood.String()+"\r\n")
		if answer.StatusCode != http.StatusRequestHeaderFieldsTooLarge {
			t.Errorf("%d lines: %d, want 431", lines, answer.StatusCode)
		}
	}
	endless := "GET / HTTP/1.1\r\nHost: " + address + "\r\n" + strings.Repeat("X-Flood: "+strings.Repeat("a", 1000)+"\r\n", 60)
	if code := raw(t, address, endless).StatusCode; code != http.StatusRequestHeaderFieldsTooLarge {
		t.Errorf("a header without an end: %d, want 431", code)
	}
}

// A request whose end can be read in two ways is refused (RFC 9112, section 6.3). One with a length and chunks is read by its
// chunks (section 6.1): what stands behind them is the next request, and no part of the form.
func TestTwoLengths(t *testing.T) {
	address := serving(t, webtest.NewSite(t), false)
	form := "POST /settings HTTP/1.1\r\nHost: " + address + "\r\nContent-Type: application/x-www-form-urlencoded\r\n"
	for _, lengths := range []string{"Content-Length: 5\r\nContent-Length: 6\r\n", "Content-Length: +5\r\n", "Content-Length: 5, 6\r\n", "Transfer-Encoding: chunked, identity\r\n", "Transfer-Encoding: x\r\n"} {
		if code := raw(t, address, form+lengths+"\r\na=b&c=").StatusCode; code != http.StatusBadRequest && code != http.StatusNotImplemented {
			t.Errorf("%q: %d, want a refusal", lengths, code)
		}
	}
	conn := dialled(t, address, form+"Content-Length: 200\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\nGET / HTTP/1.1\r\nHost: "+address+"\r\nConnection: close\r\n\r\n")
	r := bufio.NewReader(conn)
	for _, want := range []int{http.StatusBadRequest, http.StatusOK} { // the form has no fields; the page is whole
		answer, err := http.ReadResponse(r, nil)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := io.Copy(io.Discard, answer.Body); err != nil || answer.StatusCode != want {
			t.Errorf("%d %v, want %d", answer.StatusCode, err, want)
		}
	}
}

// TRACE echoes nothing (RFC 9110, section 9.3.8, leaves it to the server), and no folder or file of the source is served.
func TestNothingListed(t *testing.T) {
	h := webtest.NewSite(t).Handler()
	for _, path := range []string{"/", "/settings", "/static/"} {
		w := webtest.Ask(h, "TRACE", path, nil, "X-Secret", "echoed")
		if w.Code < 400 || strings.Contains(w.Body.String(), "echoed") {
			t.Errorf("TRACE %s: %d", path, w.Code)
		}
	}
	for _, path := range []string{"/.git/config", "/.git/", "/static/", "/static/fonts/", "/debug/pprof/", "/debug/vars", "/metrics", "/go.mod", "/duskweight.db", "/backups/"} {
		if w := webtest.Ask(h, "GET", path, nil); w.Code != http.StatusNotFound {
			t.Errorf("%s: %d, want 404", path, w.Code)
		}
	}
}

// Every answer with a body names its kind and, where it is text, that it is UTF-8; none lets pages of another origin read it, and none but what
// never changes may stay in a cache.
func TestKindsOfAnswers(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	webtest.Ask(h, "POST", "/sample", url.Values{})
	routes := webtest.EveryRoute(t, h)
	for _, a := range s.Assets.ByName {
		routes = append(routes, [2]string{"GET", a.Url})
	}
	for _, route := range routes {
		w := webtest.Ask(h, route[0], route[1], nil)
		for name := range w.Header() {
			if strings.HasPrefix(name, "Access-Control-") {
				t.Errorf("%s %s sends %s", route[0], route[1], name)
			}
		}
		if lasting := strings.HasPrefix(route[1], "/static/"); !lasting && w.Header().Get("Cache-Control") != "no-store" {
			t.Errorf("%s %s: Cache-Control is %q", route[0], route[1], w.Header().Get("Cache-Control"))
		}
		if w.Body.Len() == 0 {
			continue
		}
		kind, more, err := mime.ParseMediaType(w.Header().Get("Content-Type"))
		if text := strings.HasPrefix(kind, "text/") || strings.HasSuffix(kind, "xml"); err != nil || text && !strings.EqualFold(more["charset"], "utf-8") {
			t.Errorf("%s %s: %q", route[0], route[1], w.Header().Get("Content-Type"))
		}
	}
}
