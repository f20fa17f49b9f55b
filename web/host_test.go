package web_test

import (
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"testing"

	"duskweight/web"
	"duskweight/web/webtest"
)

// hostile are names that a stranger's page, a rebinding name server or a careless parser could bring.
var hostile = []string{
	"", "evil.example", "evil.example:8807", "127.0.0.1.evil.example", "127.0.0.1.evil.example:8807",
	"localhost.evil.example", "localhost.", "localhost.:8807", "LOCALHOST", "Localhost:8807", "localhost.localdomain",
	"evil.localhost", "xlocalhost", "localhostx", "127.0.0.2", "127.0.0.2:8807", "127.1", "127.0.1", "2130706433",
	"0x7f000001", "0x7f.0.0.1", "0177.0.0.1", "0.0.0.0", "0.0.0.0:8807", "0", "127.0.0.1.", "127.0.0.1.:8807",
	"127.0.0.1:", "127.0.0.1:0", "127.0.0.1:00", "127.0.0.1:08807", "127.0.0.1:+8807", "127.0.0.1:-1", "127.0.0.1:65536",
	"127.0.0.1:99999999999999999999", "127.0.0.1:8807:8807", "127.0.0.1:http", "127.0.0.1:8807 ", " 127.0.0.1",
	"127.0.0.1:8807@evil.example", "evil.example@127.0.0.1", "user:pass@localhost", "127.0.0.1/evil", "127.0.0.1#evil",
	"127.0.0.1?evil", "127.0.0.1,evil.example", "127.0.0.1\tevil", "::1", "[::1", "::1]", "[::1].", "[::1]x", "[::1]:",
	"[::1]:0", "[0:0:0:0:0:0:0:1]", "[::0001]", "[::1%lo]", "[::1%25lo]:8807", "[::ffff:127.0.0.1]", "[::]", "[::2]",
	"[fe80::1]", "192.168.1.10:8807", "10.0.0.1", "169.254.169.254", "example.com", "xn--localhost-9za", "loсalhost",
	"127。0。0。1", "127.0.0.1%00", "127.0.0.1%2eevil.example", "null", "*", "localhost:8807,evil.example",
}

func TestHostileHosts(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	webtest.Ask(h, "POST", "/sample", url.Values{})
	before := webtest.Fingerprint(t, s)
	for _, route := range webtest.EveryRoute(t, h) {
		for _, host := range hostile {
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
	if len(hostile) < 40 {
		t.Errorf("%d hosts, want 40 or more", len(hostile))
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

// Whatever is taken as our own name is one of the three, and its port a number that a port can be.
func FuzzHost(f *testing.F) {
	for _, host := range hostile {
		f.Add(host)
	}
	f.Add("127.0.0.1:8807")
	f.Fuzz(func(t *testing.T, host string) {
		if !web.OwnHost(host) {
			return
		}
		name, port := host, ""
		if i := strings.LastIndexByte(host, ':'); i >= 0 && !strings.HasSuffix(host, "]") {
			name, port = host[:i], host[i+1:]
		}
		if n, err := strconv.Atoi(port); port != "" && (err != nil || n < 1 || n > 65535 || strconv.Itoa(n) != port) {
			t.Errorf("%q: port %q", host, port)
		}
		if name != "localhost" && name != "127.0.0.1" && name != "[::1]" {
			t.Errorf("%q: name %q", host, name)
		}
	})
}
