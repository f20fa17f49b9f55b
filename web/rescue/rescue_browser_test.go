package rescue_test

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"sync/atomic"
	"testing"

	"duskweight/internal/store"
	"duskweight/web/browsertest"
)

// The page of a lost file is sound on every screen, with what it offers within reach of a thumb.
func TestBrowserLostFile(t *testing.T) {
	b := browsertest.Start(t)
	s, _, _, _ := lostSite(t, noSchema)
	at := httptest.NewServer(s.Handler())
	defer at.Close()
	for name, look := range map[string]browsertest.Look{"phone": browsertest.Phone, "screen": {}, "dark": {Dark: true}, "forced": {Forced: true}, "no scripts": {NoScripts: true}} {
		tab := b.Open(t, look)
		tab.Go(at.URL + "/")
		if !look.NoScripts { // the checker is a script
			tab.Clean()
		}
		tab.Shot("rescue-" + strings.ReplaceAll(name, " ", "-"))
		if n := tab.Sideways(); n != 0 {
			t.Errorf("%s: %d pixels too wide", name, n)
		}
		if got := tab.Text("main"); !strings.Contains(got, "After the copy") {
			t.Errorf("%s: the page says %q", name, got)
		}
	}
}

// With scripts off somebody goes back to a copy with one press, and the same address shows the projects of that copy.
func TestBrowserGoesBack(t *testing.T) {
	b := browsertest.Start(t)
	var pages atomic.Pointer[http.Handler]
	show := func(h http.Handler) { pages.Store(&h) }
	s, _, _, opened := lostSite(t, noSchema, func(kept *store.Store) { show(siteOf(t, kept).Handler()) })
	show(s.Handler())
	at := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) { (*pages.Load()).ServeHTTP(w, r) }))
	defer at.Close()
	tab := b.Open(t, browsertest.Look{NoScripts: true})
	tab.Go(at.URL + "/projects/1") // a bookmark
	tab.Follow(`form[action="/rescue/copies/1/restore"] button`)
	if got := tab.Text("main"); !strings.Contains(got, "Your projects are those of the spare copy") || !strings.Contains(got, "is kept") || strings.Contains(got, "After the copy") {
		t.Errorf("after going back the page says %q", got)
	}
	if opened() == nil {
		t.Error("nothing was opened")
	}
}
