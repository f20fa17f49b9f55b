package webtest

import (
	"fmt"
	"net/http/httptest"
	"testing"

	"duskweight/web"
	"duskweight/web/browsertest"
)

// Serve runs a fresh site on a port of this machine.
func Serve(t testing.TB) (*web.Site, string) {
	t.Helper()
	s := NewSite(t)
	srv := httptest.NewServer(s.Handler())
	t.Cleanup(srv.Close)
	return s, srv.URL
}

// Choose picks an option of a list.
func Choose(tab *browsertest.Tab, css, value string) {
	tab.Number(fmt.Sprintf("(() => { const s = document.querySelector(%q); s.value = %q; s.dispatchEvent(new Event('change', {bubbles: true})); return s.selectedIndex })()", css, value))
}
