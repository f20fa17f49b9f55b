package crawl_test

import (
	"fmt"
	"math"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"
	"time"

	"duskweight/internal/catalog"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// tableYear is a weather file: a year of hours with a half sine of light by day and air of t °C; change may rewrite the row of an
// hour.
func tableYear(head string, t float64, change func(hour int, row string) string) []byte {
	var b strings.Builder
	b.WriteString(head + "time,ghi,dhi,temperature\n")
	at := time.Date(2021, 1, 1, 0, 0, 0, 0, time.UTC)
	for h := range 8760 {
		light := 600 * max(0, math.Sin(math.Pi*(float64(h%24)-6)/12))
		row := fmt.Sprintf("%s,%.0f,%.0f,%.1f", at.Add(time.Duration(h)*time.Hour).Format("2006-01-02 15:04"), light, light/2, t)
		if change != nil {
			row = change(h, row)
		}
		b.WriteString(row + "\n")
	}
	return []byte(b.String())
}

// hereIs is the head of a weather file that says where it is from, 500 m above the sea.
const hereIs = "Latitude: 40\nLongitude: 12\nElevation: 500\nTime zone: 1\n"

// inOwnUnit is the height in a field of feet: a value without a short form in the unit of its field keeps its own, so that it
// is stored as it was read.
const inOwnUnit = `value="500 m"`

var weatherToken = regexp.MustCompile(`name="token" value="([^"]*)"`)

// What is said of a weather file, of one that is refused, and at the fields of its columns has no unit of the other system. By
// hand: 41 °C are 106 °F.
func TestUnitsOfWeather(t *testing.T) {
	t.Parallel()
	for word, sys := range map[string]unit.System{"imperial": unit.Imperial, "metric": unit.Metric} {
		t.Run(word, func(t *testing.T) {
			s := webtest.NewSite(t)
			if err := s.Store.SaveSettings(t.Context(), map[string]string{page.SettingUnits: word}); err != nil {
				t.Fatal(err)
			}
			p, _ := webtest.Create(t, s, "weather", catalog.Sample())
			w := &unitWalk{t: t, h: s.Handler(), sys: sys, told: map[string]bool{}}
			at := page.ProjectURL(p.ID) + "/place/file"
			hot := [2]string{"41 °C", "106 °F"}
			odd := func(h int, row string) string {
				return map[int]string{30: row[:16] + ",2500,5,20", 31: row[:16] + ",5,5,77", 32: row[:16] + ",x,5,20"}[h]
			}
			for name, c := range map[string]struct {
				data []byte
				code int
				says string
			}{
				"a hot year":  {tableYear(hereIs, 41, nil), http.StatusOK, hot[sys]},
				"wrong cells": {tableYear(hereIs, 20, func(h int, row string) string { return orRow(odd(h, row), row) }), http.StatusUnprocessableEntity, "is no air temperature"},
				"too bright":  {tableYear(hereIs, 20, func(h int, row string) string { return orRow(map[int]string{30: row[:16] + ",2500,5,20"}[h], row) }), http.StatusUnprocessableEntity, "2 500 W/m²"},
				"no place":    {tableYear("", 20, nil), http.StatusOK, "latitude"},
				"prose":       {[]byte("hello\nworld\n"), http.StatusUnprocessableEntity, "No column of air temperature"},
			} {
				got := webtest.Upload(w.h, at, "file", c.data)
				body := got.Body.String()
				if text := strings.ReplaceAll(webtest.TextOf(body), unit.Space, " "); got.Code != c.code || !strings.Contains(text, c.says) {
					t.Errorf("%s: %d, %q is not said in %s", name, got.Code, c.says, text[:min(len(text), 900)])
				}
				w.read(name, strings.ReplaceAll(body, inOwnUnit, ""), "text/html")
			}
			got := webtest.Upload(w.h, at, "file", tableYear(hereIs, 20, nil)).Body.String()
			if !strings.Contains(got, [2]string{`value="500"`, inOwnUnit}[sys]) {
				t.Error("the height above the sea is not in its field")
			}
			use := url.Values{"token": {weatherToken.FindStringSubmatch(got)[1]}, "revision": {page.Itoa(int(p.Revision))}}
			if used := webtest.Ask(w.h, "POST", at+"/use", use); used.Code != http.StatusSeeOther {
				t.Fatalf("%d", used.Code)
			}
			for _, to := range []string{at, page.ProjectURL(p.ID) + "/place"} {
				w.read(to, webtest.Ask(w.h, "GET", to, nil).Body.String(), "text/html")
			}
		})
	}
}

// orRow is a row that was changed, or the row as it was.
func orRow(changed, row string) string {
	if changed == "" {
		return row
	}
	return changed
}
