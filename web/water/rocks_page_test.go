package water_test

import (
	"net/http"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// 500 Wh at 5 m are 67 t of rock, 92 m³ of water or 49 Ah; what cannot be typed is said, and the page shows numbers all the same.
func TestRocksPage(t *testing.T) {
	s := webtest.NewSite(t)
	p, _ := webtest.Create(t, s, "rocks", catalog.Sample())
	at := page.ProjectURL(p.ID) + "/rocks"
	for query, wants := range map[string][]string{
		"?energy=500+Wh&height=5":  {"For 500 Wh from 5 m you need 67 t of rock, or 92 m³ of water. A battery of 49 Ah at 12.8 V gives the same."},
		"?energy=words&height=5":   {"need", "of rock"},
		"?energy=500+Wh&height=-5": {"is too small or too large", "from 5 m"},
		"?energy=5e9&height=5":     {"of rock"},
		"":                         {"what lamps and devices of this project need in a mean night", "Children drown in open water"},
	} {
		got := webtest.Ask(s.Handler(), "GET", at+query, nil)
		body := got.Body.String()
		if got.Code != http.StatusOK {
			t.Fatalf("%s: %d", query, got.Code)
		}
		if wrong := webtest.SoundPage(body); len(wrong) > 0 {
			t.Errorf("%s: %v", query, wrong)
		}
		for _, want := range append(wants, "<title>Rock, water and a battery for", "<desc>A person is on the left") {
			if !strings.Contains(body, want) && !strings.Contains(webtest.Readable(body), want) {
				t.Errorf("%s: %q is not on the page", query, want)
			}
		}
	}
	if got := webtest.Ask(s.Handler(), "GET", at+"/rocks.csv?energy=500+Wh&height=5", nil); got.Code != http.StatusOK || !strings.Contains(got.Body.String(), "4.51") {
		t.Errorf("%d %s", got.Code, got.Body)
	}
}
