package web_test

import (
	"encoding/json"
	"net/http"
	"net/url"
	"os"
	"testing"

	"duskweight/web/webtest"
)

// hostile are names that a stranger's page, a rebinding name server or a careless parser could bring.
func hostile(t testing.TB) (hosts []string) {
	t.Helper()
	text, err := os.ReadFile("../testdata/hosts/hostile.json")
	if err == nil {
		err = json.Unmarshal(text, &hosts)
	}
	if err != nil {
		t.Fatal(err)
	}
	return hosts
}

func TestHostileHosts(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	webtest.Ask(h, "POST", "/sample", url.Values{})
	hosts, before := hostile(t), webtest.Fingerprint(t, s)
	for _, route := range webtest.EveryRoute(t, h) {
		for _, host := range hosts {
			w := webtest.Ask(h, route[0], route[1], url.Values{}, "Host", host)
			if w.Code != http.StatusMisdirectedRequest {
				t.Errorf("%s %s for %q: %d, want 421", route[0], route[1], host, w.Code)
			}
			if w.Header().Get("Content-Security-Policy") == "" {
				t.Errorf("%s %s for %q: no policy on the refusal", route[0], route[1], host)
			}
		}
	}
	if after := webtest.Fingerprint(t, s); after != before {
		t.Errorf("something changed:\n%s\n%s", before, after)
	}
	if len(hosts) < 40 {
		t.Errorf("%d hosts, want 40 or more", len(hosts))
	}
}

func TestOwnHosts(t *testing.T) {
	h := webtest.NewSite(t).Handler()
	for _, host := range []string{"localhost", "localhost:8807", "127.0.0.1", "127.0.0.1:1", "127.0.0.1:65535", "[::1]", "[::1]:8807"} {
		if w := webtest.Ask(h, "GET", "/", nil, "Host", host); w.Code != http.StatusOK {
			t.Errorf("%q: %d, want 200", host, w.Code)
		}
	}
}
