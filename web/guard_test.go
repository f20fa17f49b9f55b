package web_test

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"duskweight/web"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// Every combination of what a browser says about a request of another origin, the kind of body and the method: none may
// change anything.
func TestForeignPagesChangeNothing(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	webtest.Ask(h, "POST", "/sample", url.Values{})
	before := webtest.Fingerprint(t, s)
	said := []struct{ site, origin string }{
		{"cross-site", "https://evil.example"},
		{"cross-site", "null"},
		{"cross-site", ""},
		{"same-site", "http://127.0.0.1:9999"},
		{"same-site", "http://localhost:8807"},
		{"same-site", ""},
		{"none", "https://evil.example"},
		{"same-origin", "https://evil.example"},
		{"", "https://evil.example"},
		{"", "null"},
		{"", "http://127.0.0.1:9999"},
		{"", "http://localhost:8807"},
		{"", "http://127.0.0.1:8807.evil.example"},
		{"", "https://127.0.0.1:8807"},
		{"", "http://127.0.0.1"},
		{"", "file://"},
		{"", "http://[::1]:8807"},
		{"", "garbage"},
		{"Same-Origin", "null"},
		{"same-origin,cross-site", ""},
		{"?", ""},
	}
	kinds := []string{"application/x-www-form-urlencoded", "multipart/form-data; boundary=x", "text/plain", "application/json", ""}
	paths := []string{"/sample", "/import", "/settings", "/settings/copy", "/projects/1/delete", "/projects/1/undo"}
	n := 0
	for _, method := range []string{"POST", "PUT", "PATCH", "DELETE"} {
		for _, one := range said {
			for _, kind := range kinds {
				for _, path := range paths {
					n++
					r := httptest.NewRequest(method, "http://127.0.0.1:8807"+path, strings.NewReader("units=imperial&currency=X&revision=1"))
					for name, value := range map[string]string{"Sec-Fetch-Site": one.site, "Origin": one.origin, "Content-Type": kind} {
						if value != "" {
							r.Header.Set(name, value)
						}
					}
					w := httptest.NewRecorder()
					h.ServeHTTP(w, r)
					if w.Code != http.StatusForbidden {
						t.Errorf("%s %s %q %q %q: %d, want 403", method, path, one.site, one.origin, kind, w.Code)
					}
				}
			}
		}
	}
	if after := webtest.Fingerprint(t, s); after != before {
		t.Errorf("something changed:\n%s\n%s", before, after)
	}
	if n < 100 {
		t.Errorf("%d combinations, want 100 or more", n)
	}
}

func TestOwnFormsPass(t *testing.T) {
	h := webtest.NewSite(t).Handler()
	form := url.Values{"units": {"imperial"}, "currency": {"EUR"}}
	for _, said := range [][]string{
		{"Sec-Fetch-Site", "same-origin", "Origin", "http://127.0.0.1:8807"},
		{"Sec-Fetch-Site", "same-origin", "Origin", "null"}, // what a browser sends under our referrer policy
		{"Sec-Fetch-Site", "same-origin"},
		{"Origin", "http://127.0.0.1:8807"},
		{}, // a program on this machine
	} {
		if w := webtest.Ask(h, "POST", "/settings", form, said...); w.Code != http.StatusSeeOther {
			t.Errorf("%q: %d, want 303", said, w.Code)
		}
	}
}

// GET changes nothing, whatever the page.
func TestGetChangesNothing(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	webtest.Ask(h, "POST", "/sample", url.Values{})
	before := webtest.Fingerprint(t, s)
	for _, route := range webtest.EveryRoute(t, h) {
		if web.Safe(route[0]) || route[0] == "HEAD" {
			webtest.Ask(h, "GET", route[1]+"?units=imperial&undo=1&delete=1", nil)
			webtest.Ask(h, "HEAD", route[1], nil)
		}
	}
	if after := webtest.Fingerprint(t, s); after != before {
		t.Errorf("something changed:\n%s\n%s", before, after)
	}
}

// A stranger's picture, frame, script or style that points here gets nothing, on any route; a link that was followed does, and
// so do our own pages, an address that was typed, and a program that says nothing of itself.
func TestStrangersOnlyFollowLinks(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	webtest.Ask(h, "POST", "/sample", url.Values{})
	ask := func(path, site, mode, dest string) int {
		r := httptest.NewRequest("GET", "http://127.0.0.1:8807"+path, nil)
		for name, value := range map[string]string{"Sec-Fetch-Site": site, "Sec-Fetch-Mode": mode, "Sec-Fetch-Dest": dest} {
			if value != "" {
				r.Header.Set(name, value)
			}
		}
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		return w.Code
	}
	for _, route := range webtest.EveryRoute(t, h) {
		if route[0] != "GET" {
			continue
		}
		for _, site := range []string{"cross-site", "same-site", "Same-Origin", "?"} {
			for _, use := range [][2]string{{"no-cors", "image"}, {"cors", "empty"}, {"navigate", "iframe"}, {"navigate", "object"}, {"no-cors", "script"}, {"no-cors", "style"}, {"", ""}, {"navigate", ""}, {"no-cors", "document"}} {
				if code := ask(route[1], site, use[0], use[1]); code != http.StatusForbidden {
					t.Errorf("%s, %s %v: %d, want 403", route[1], site, use, code)
				}
			}
		}
	}
	for _, own := range [][3]string{{"cross-site", "navigate", "document"}, {"same-origin", "cors", "empty"}, {"same-origin", "no-cors", "image"}, {"none", "navigate", "document"}, {"", "", ""}} {
		if code := ask("/", own[0], own[1], own[2]); code != http.StatusOK {
			t.Errorf("%v: %d, want 200", own, code)
		}
	}
}

func TestOnlyForms(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	for _, kind := range []string{"", "text/plain", "application/json", "application/x-www-form-urlencoded-not", ";;;"} {
		r := httptest.NewRequest("POST", "http://127.0.0.1:8807/settings", strings.NewReader("units=imperial&currency=X"))
		r.Header.Set("Content-Type", kind)
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if w.Code != http.StatusUnsupportedMediaType {
			t.Errorf("%q: %d, want 415", kind, w.Code)
		}
	}
}

func TestBodiesAreLimited(t *testing.T) {
	h := webtest.NewSite(t).Handler()
	if w := webtest.Ask(h, "POST", "/settings", url.Values{"units": {"metric"}, "currency": {strings.Repeat("a", page.FormLimit)}}); w.Code != http.StatusRequestEntityTooLarge {
		t.Errorf("a form of more than 1 MiB: %d, want 413", w.Code)
	}
	if w := webtest.Upload(h, "/import", "file", make([]byte, page.ImportLimit)); w.Code != http.StatusRequestEntityTooLarge {
		t.Errorf("a document of more than 8 MiB: %d, want 413", w.Code)
	}
}

func TestHeaders(t *testing.T) {
	h := webtest.NewSite(t).Handler()
	for _, route := range webtest.EveryRoute(t, h) {
		head := webtest.Ask(h, route[0], route[1], nil).Header()
		for name, want := range map[string]string{
			"Content-Security-Policy":      web.Policy,
			"X-Content-Type-Options":       "nosniff",
			"Referrer-Policy":              "no-referrer",
			"Cross-Origin-Opener-Policy":   "same-origin",
			"Cross-Origin-Resource-Policy": "same-origin",
			"X-Frame-Options":              "DENY",
		} {
			if got := head.Get(name); got != want {
				t.Errorf("%s %s: %s is %q", route[0], route[1], name, got)
			}
		}
		if head.Get("Set-Cookie") != "" {
			t.Errorf("%s %s sets a cookie", route[0], route[1])
		}
	}
	if strings.Contains(web.Policy, "unsafe") || !strings.Contains(web.Policy, "default-src 'none'") {
		t.Error("the policy is open")
	}
	site := webtest.NewSite(t)
	if server := web.Server(site.Handler(), site.Log); server.ReadHeaderTimeout == 0 || server.ReadTimeout == 0 || server.WriteTimeout == 0 || server.IdleTimeout == 0 || server.MaxHeaderBytes > 16<<10 {
		t.Error("a timeout or the limit of headers is not set")
	}
}
