package webtest

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"sync"
	"testing"

	"duskweight/web"
	"duskweight/web/browsertest"
)

// Serve runs a fresh site on a port of this machine. After Restart the same port answers from the reopened file.
func Serve(t testing.TB) (*web.Site, string) {
	t.Helper()
	s := NewSite(t)
	srv := httptest.NewServer(latest(s))
	t.Cleanup(srv.Close)
	return s, srv.URL
}

// latest hands each request to the site as it is by then.
func latest(s *web.Site) http.Handler {
	var lock sync.Mutex
	var of web.Site
	var now http.Handler
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		lock.Lock()
		if now == nil || of != *s {
			of, now = *s, s.Handler()
		}
		h := now
		lock.Unlock()
		h.ServeHTTP(w, r)
	})
}

// Choose picks an option of a list.
func Choose(tab *browsertest.Tab, css, value string) {
	tab.Number(fmt.Sprintf("(() => { const s = document.querySelector(%q); s.value = %q; s.dispatchEvent(new Event('change', {bubbles: true})); return s.selectedIndex })()", css, value))
}
