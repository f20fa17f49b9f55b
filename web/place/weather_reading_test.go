package place_test

import (
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"duskweight/web/form"
	"duskweight/web/place"
	"duskweight/web/webtest"
)

// minuteYear is the plain year in rows of a minute, each with the light of its hour.
func minuteYear() []byte {
	var b strings.Builder
	b.WriteString("Latitude: 40\nLongitude: 12\nTime zone: 1\ntime,ghi,dhi,temperature\n")
	for row := range strings.Lines(string(place.PlainYear("", nil))) {
		if row = strings.TrimSpace(row); row == "" {
			continue
		}
		for m := range 60 {
			fmt.Fprintf(&b, "%s%02d%s\n", row[:14], m, row[16:])
		}
	}
	return []byte(b.String())
}

// A year of minutes is read with a bar: the upload leads to a page that says how far it is and comes again by itself without a
// script, until the year is there and can be used. Nothing of another project is shown.
func TestYearOfMinutes(t *testing.T) {
	s, h := weatherSite(t)
	before := webtest.Fingerprint(t, s)
	data := minuteYear()
	begun := time.Now()
	w := webtest.Upload(h, place.WeatherURL, "file", data)
	at := w.Header().Get("Location")
	if w.Code != http.StatusSeeOther || !strings.HasPrefix(at, place.WeatherURL+"/reading?token=") {
		t.Fatalf("%d %q %s", w.Code, at, form.Clip(webtest.TextOf(w.Body.String()), 500))
	}
	if w := webtest.Ask(h, "GET", strings.Replace(at, "/1/", "/9/", 1), nil); w.Code != http.StatusNotFound {
		t.Errorf("no such project: %d", w.Code)
	}
	if w := webtest.Ask(h, "GET", place.WeatherURL+"/reading?token=x", nil); w.Code != http.StatusGone {
		t.Errorf("no such file: %d", w.Code)
	}
	bars := 0
	for {
		w = webtest.Ask(h, "GET", at, nil)
		if w.Header().Get("Refresh") == "" {
			break
		}
		bars++
		if body := w.Body.String(); w.Code != http.StatusOK || !strings.Contains(body, "<progress") || !strings.Contains(body, "is being read") || strings.Contains(body, "Use this file") {
			t.Fatalf("%d %s", w.Code, form.Clip(webtest.TextOf(body), 500))
		}
		if time.Since(begun) > time.Minute {
			t.Fatal("it is not read after a minute")
		}
	}
	body := w.Body.String()
	if bars == 0 || w.Code != http.StatusOK || !strings.Contains(body, "Use this file") || !strings.Contains(body, "Rows, one every 1 minutes") {
		t.Fatalf("%d bars, %d %s", bars, w.Code, form.Clip(webtest.TextOf(body), 900))
	}
	t.Logf("%d MB, %d bars, %v", len(data)>>20, bars, time.Since(begun).Round(time.Millisecond))
	if webtest.Fingerprint(t, s) != before {
		t.Error("something was stored before it was asked for")
	}
	if w := webtest.Ask(h, "POST", place.WeatherURL+"/use", url.Values{"token": {tokenOf(t, body)}, "revision": {"1"}}); w.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", w.Code, webtest.TextOf(w.Body.String()))
	}
}
