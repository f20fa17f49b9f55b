package place_test

import (
	"bytes"
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"duskweight/web/place"
	"duskweight/web/webtest"
)

// tableOf is a table of the hours of years, with its place in the head of the file.
func tableOf(lat float64, from, to int) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "# latitude: %v\n# longitude: 12\n# utc offset: 1\ntimestamp,ghi (W/m2),dhi (W/m2),air temperature (C)\n", lat)
	for at := time.Date(from, 1, 1, 0, 0, 0, 0, time.UTC); at.Year() <= to; at = at.Add(time.Hour) {
		up := 0
		if h := at.Hour(); h >= 9 && h < 15 {
			up = 400 + at.Year()%100
		}
		fmt.Fprintf(&b, "%s,%d,%d,%d\n", at.Format("2006-01-02 15:04"), up, up/2, int(at.Month()))
	}
	return b.Bytes()
}

// Several years of one file and of several files are listed, used together, added to those that are there, and refused
// together where two are of one year or of another place; part years are named.
func TestSeveralYearsUsed(t *testing.T) {
	s, h := weatherSite(t)
	saved := func(want int, sky string, revision int64) {
		t.Helper()
		p, err := s.Store.Project(t.Context(), 1)
		if err != nil || len(p.Value.Files()) != want || string(p.Value.Place.Sky) != sky || p.Revision != revision {
			t.Fatalf("%v: %d files, sky %s, revision %d", err, len(p.Value.Files()), p.Value.Place.Sky, p.Revision)
		}
	}
	w := webtest.Upload(h, place.WeatherURL, "file", tableOf(40, 2014, 2016))
	body := w.Body.String()
	if w.Code != http.StatusOK || !strings.Contains(body, "Use these years") || !strings.Contains(body, "2015") {
		t.Fatalf("%d %s", w.Code, webtest.TextOf(body))
	}
	saved(0, "monthly", 1)
	use := url.Values{"token": {tokenOf(t, body)}, "revision": {"1"}}
	if w := webtest.Ask(h, "POST", place.WeatherURL+"/use", use); w.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", w.Code, webtest.TextOf(w.Body.String()))
	}
	saved(3, "files", 2)
	// two more files, of which one is a part year; they may be added
	w = webtest.Upload(h, place.WeatherURL, "file", tableOf(40, 2017, 2017), tableOf(40, 2018, 2018)[:100_000])
	body = w.Body.String()
	if w.Code != http.StatusOK || !strings.Contains(body, "Keep the 3 years") || !strings.Contains(body, "document2.json") {
		t.Fatalf("%d %s", w.Code, webtest.TextOf(body))
	}
	use = url.Values{"token": {tokenOf(t, body)}, "revision": {"2"}, "add": {"yes"}}
	if w := webtest.Ask(h, "POST", place.WeatherURL+"/use", use); w.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", w.Code, webtest.TextOf(w.Body.String()))
	}
	saved(4, "files", 3)
	for name, files := range map[string][][]byte{"one year twice": {tableOf(40, 2014, 2014), tableOf(40, 2014, 2014)}, "another place": {tableOf(40, 2014, 2014), tableOf(45, 2015, 2015)}} {
		w := webtest.Upload(h, place.WeatherURL, "file", files...)
		if body := w.Body.String(); strings.Contains(body, "Use these years") || !strings.Contains(body, "These years cannot be used together") {
			t.Errorf("%s: %d %s", name, w.Code, webtest.TextOf(body))
		}
	}
	saved(4, "files", 3)
}
