package place_test

import (
	"bytes"
	"fmt"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"duskweight/internal/document"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/weather"
	"duskweight/web"
	"duskweight/web/form"
	"duskweight/web/place"
	"duskweight/web/webtest"
)

// weatherSite is a site with the worked example as project 1.
func weatherSite(t *testing.T) (*web.Site, http.Handler) {
	t.Helper()
	s := webtest.NewSite(t)
	h := s.Handler()
	if w := webtest.Ask(h, "POST", "/sample", url.Values{}); w.Code != http.StatusSeeOther {
		t.Fatal(w.Code)
	}
	return s, h
}

func tokenOf(t *testing.T, body string) string {
	t.Helper()
	m := place.Tokens.FindStringSubmatch(body)
	if m == nil {
		t.Fatalf("no token on the page: %s", webtest.TextOf(body))
	}
	return m[1]
}

// A file that is understood is shown, and stored only when it is asked for; out and in again, its year is the same to
// the last bit.
func TestWeatherFileUsed(t *testing.T) {
	s, h := weatherSite(t)
	data := place.Sample(t, "harbour-semicolons.csv")
	before := webtest.Fingerprint(t, s)
	w := webtest.Upload(h, place.WeatherURL, "file", data)
	if w.Code != http.StatusOK || !strings.Contains(w.Body.String(), "Use this file") || !strings.Contains(w.Body.String(), "<svg") {
		t.Fatalf("%d %s", w.Code, webtest.TextOf(w.Body.String()))
	}
	if webtest.Fingerprint(t, s) != before {
		t.Error("something was stored before it was asked for")
	}
	want, report, err := weather.Read(bytes.NewReader(data), weather.Mapping{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	if year := unit.YearIrradiations.Format(float64(report.GHI), unit.Metric); !strings.Contains(w.Body.String(), year) {
		t.Errorf("the page does not say that a year has %s", year)
	}
	use := url.Values{"token": {tokenOf(t, w.Body.String())}, "revision": {"1"}}
	if w := webtest.Ask(h, "POST", place.WeatherURL+"/use", use); w.Code != http.StatusSeeOther || w.Header().Get("Location") != "/projects/1/place" {
		t.Fatalf("%d %s", w.Code, webtest.TextOf(w.Body.String()))
	}
	p, err := s.Store.Project(t.Context(), 1)
	if err != nil || p.Value.Weather == nil || p.Value.Place.Sky != "file" || p.Revision != 2 {
		t.Fatalf("%v %+v", err, p.Value.Place)
	}
	place.SameYear(t, *p.Value.Weather, want)
	if w := webtest.Ask(h, "GET", "/projects/1/history", nil); !strings.Contains(w.Body.String(), "Weather file: ") {
		t.Error("the history does not tell it")
	}
	if w := webtest.Ask(h, "GET", "/projects/1/place", nil); w.Code != http.StatusOK || !strings.Contains(w.Body.String(), "/place/file") {
		t.Errorf("the place: %d", w.Code)
	}
	out := webtest.Ask(h, "GET", "/projects/1/export.json", nil).Body.Bytes()
	if w := webtest.Upload(h, "/import", "file", out); w.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", w.Code, webtest.TextOf(w.Body.String()))
	}
	doc, err := document.Decode(out)
	if err != nil {
		t.Fatal(err)
	}
	again, err := s.Store.Project(t.Context(), 2)
	if err != nil {
		t.Fatal(err)
	}
	place.SameYear(t, *doc.Project.Weather, want)
	place.SameYear(t, *again.Value.Weather, want)
	if w := webtest.Ask(h, "POST", place.WeatherURL+"/use", use); w.Code != http.StatusGone {
		t.Errorf("used twice: %d", w.Code)
	}
}

// What a project does not know of its place comes from the file; what it knows stays.
func TestWeatherFillsPlace(t *testing.T) {
	s, _ := weatherSite(t)
	p, err := s.Store.Project(t.Context(), 1)
	if err != nil {
		t.Fatal(err)
	}
	y := sun.Series{Name: "Harbour", Latitude: 0.5, Longitude: 0.2, Elevation: 12, UTCOffset: 3600}
	said := weather.Mapping{Elevation: unit.Of[unit.Length](12), UTCOffset: unit.Of(unit.Hour)}
	known := place.WithWeather(p.Value, y, said).Place
	if known.Latitude != p.Value.Place.Latitude || known.Name != p.Value.Place.Name {
		t.Error("what was typed is gone")
	}
	p.Value.Place = sun.Place{Sky: "described"}
	if got := place.WithWeather(p.Value, y, said).Place; got.Latitude != unit.Of[unit.Angle](0.5) || got.Longitude != unit.Of[unit.Angle](0.2) ||
		got.Elevation != unit.Of[unit.Length](12) || got.UTCOffset != unit.Of[unit.Duration](3600) || got.Name != "Harbour" || got.Sky != "file" {
		t.Errorf("%+v", got)
	}
	if got := place.WithWeather(p.Value, y, weather.Mapping{}).Place; got.Elevation.Is || got.UTCOffset.Is {
		t.Errorf("what the file does not say is known: %+v", got)
	}
	if p.Value.Weather != nil {
		t.Error("the stored project was written into")
	}
}

// A file that cannot be used is refused with line, column, value and reason, and nothing is stored.
func TestWeatherRefused(t *testing.T) {
	s, h := weatherSite(t)
	before := webtest.Fingerprint(t, s)
	head := "time,ghi,dhi,temperature"
	where := "Latitude: 40\nLongitude: 12\nTime zone: 1\n"
	wrong := func(n int) []byte {
		return place.PlainYear(where+head, func(i int, row string) string {
			if i < n {
				return row[:17] + "<b>x</b>,1,2"
			}
			return row
		})
	}
	for name, c := range map[string]struct {
		data []byte
		say  []string
	}{
		"two wrong cells": {place.Sample(t, "two-wrong-cells.csv"), []string{"Line 5, column 2 (GHI [W/m²]): &#34;12,x&#34; is not a number."}},
		"sixty of them":   {wrong(60), []string{"Line 5, column 2 (ghi): ", "Line 54, column 2", "And 10 more.", "&lt;b&gt;x"}},
		"zip":             {[]byte("PK\x03\x04" + strings.Repeat("x", 500)), []string{"zip archive"}},
		"bytes":           {append([]byte("abc"), make([]byte, 500)...), []string{"not a text file"}},
		"empty":           {nil, []string{"empty"}},
		"prose":           {[]byte("hello\nworld\n"), []string{"No column of air temperature"}},
		"a year of zeros": {place.PlainYear(where+head, func(_ int, row string) string { return row[:16] + ",0,0,12.0" }), []string{"no sun in the whole year"}},
		"night and day":   {place.PlainYear("Latitude: 40\nLongitude: 12\nTime zone: -11\n"+head, nil), []string{"while the sun is down"}},
	} {
		w := webtest.Upload(h, place.WeatherURL, "file", c.data)
		if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), "<title>Error: ") || strings.Contains(w.Body.String(), "Use this file") {
			t.Errorf("%s: %d", name, w.Code)
		}
		for _, say := range c.say {
			if !strings.Contains(w.Body.String(), say) {
				t.Errorf("%s: the page does not say %q: %s", name, say, form.Clip(webtest.TextOf(w.Body.String()), 700))
			}
		}
		if strings.Contains(w.Body.String(), "<b>x") || strings.Contains(w.Body.String(), "Line 55,") {
			t.Errorf("%s: text of the file is on the page as it is, or too much of it", name)
		}
	}
	for _, size := range []int{33, 65} {
		w := webtest.Upload(h, place.WeatherURL, "file", bytes.Repeat([]byte("1,2,3\n"), size<<20/6+1))
		if w.Code != http.StatusRequestEntityTooLarge || !strings.Contains(w.Body.String(), "larger than 32 MB") {
			t.Errorf("%d MB: %d %s", size, w.Code, form.Clip(webtest.TextOf(w.Body.String()), 300))
		}
	}
	if w := webtest.Ask(h, "POST", place.WeatherURL, url.Values{"file": {"x"}}); w.Code != http.StatusUnprocessableEntity {
		t.Errorf("no file: %d", w.Code)
	}
	if w := webtest.Upload(h, "/projects/9/place/file", "file", nil); w.Code != http.StatusNotFound {
		t.Errorf("no project: %d", w.Code)
	}
	if webtest.Fingerprint(t, s) != before {
		t.Error("something was stored")
	}
}

// A warning that the model gives is on the page before the file is taken.
func TestWeatherWarns(t *testing.T) {
	_, h := weatherSite(t)
	where := "Latitude: 40\nLongitude: 12\nTime zone: 1\n"
	late := place.PlainYear(where+"time,ghi,dhi,temperature", func(i int, row string) string { return row[:14] + "30" + row[16:] })
	for name, c := range map[string]struct {
		data []byte
		say  string
	}{
		"a gap": {place.PlainYear(where+"time,ghi,dhi,temperature", func(i int, row string) string { return map[bool]string{true: row[:17] + ",,3", false: row}[i == 12] }), "was missing for 1 hour from 1 January 12:00"},
		"below zero": {place.PlainYear(where+"time,ghi,dhi,temperature", func(i int, row string) string {
			return map[bool]string{true: row[:16] + ",-2,-2,3", false: row}[i == 0]
		}), "below zero"},
		"estimated":      {place.PlainYear(where+"time,ghi,wind,temperature", nil), "estimated from the clearness"},
		"half hours":     {late, "Read it another way"},
		"an hour's slip": {place.PlainYear(strings.Replace(where, "zone: 1", "zone: 2", 1)+"time,ghi,dhi,temperature", nil), "minutes earlier"},
	} {
		w := webtest.Upload(h, place.WeatherURL, "file", c.data)
		if w.Code != http.StatusOK || !strings.Contains(w.Body.String(), c.say) {
			t.Errorf("%s: %d, not said: %q: %s", name, w.Code, c.say, form.Clip(webtest.TextOf(w.Body.String()), 900))
		}
	}
}

// A table without names that are known gets its columns from the form.
func TestWeatherMapping(t *testing.T) {
	s, h := weatherSite(t)
	before := webtest.Fingerprint(t, s)
	w := webtest.Upload(h, place.WeatherURL, "file", place.PlainYear("when,first,second,third", nil))
	body := w.Body.String()
	if w.Code != http.StatusOK || !strings.Contains(body, "Say what each column of") || !strings.Contains(body, "2: first") || strings.Contains(body, "Use this file") {
		t.Fatalf("%d %s", w.Code, form.Clip(webtest.TextOf(body), 900))
	}
	table := url.Values{"token": {tokenOf(t, body)}, "first": {"2"}, "delimiter": {","}, "comma": {"no"}, "radiation": {"W/m2"}, "thermo": {"C"}, "stamp": {"start"},
		"ghi": {"2"}, "dhi": {"3"}, "dni": {"-1"}, "temperature": {"4"}, "date": {"1"}, "time": {"-1"}, "latitude": {"40 N"}, "longitude": {"x"}, "offset": {"1"}}
	w = webtest.Ask(h, "POST", place.WeatherURL+"/columns", table)
	if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), "Longitude: ") || !strings.Contains(w.Body.String(), `value="40 N"`) {
		t.Fatalf("a wrong longitude: %d %s", w.Code, form.Clip(webtest.TextOf(w.Body.String()), 900))
	}
	table.Set("longitude", "12")
	table.Set("temperature", "-1")
	w = webtest.Ask(h, "POST", place.WeatherURL+"/columns", table)
	if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), "No column of air temperature") {
		t.Fatalf("no temperature: %d %s", w.Code, form.Clip(webtest.TextOf(w.Body.String()), 900))
	}
	table.Set("temperature", "4")
	table.Set("token", tokenOf(t, w.Body.String()))
	w = webtest.Ask(h, "POST", place.WeatherURL+"/columns", table)
	if w.Code != http.StatusOK || !strings.Contains(w.Body.String(), "Use this file") {
		t.Fatalf("%d %s", w.Code, form.Clip(webtest.TextOf(w.Body.String()), 900))
	}
	if webtest.Fingerprint(t, s) != before {
		t.Error("something was stored")
	}
	if w = webtest.Ask(h, "POST", place.WeatherURL+"/use", url.Values{"token": {tokenOf(t, w.Body.String())}, "revision": {"1"}}); w.Code != http.StatusSeeOther {
		t.Errorf("%d %s", w.Code, webtest.TextOf(w.Body.String()))
	}
}

// A token waits ten minutes, for its own project, and only the last four do.
func TestWeatherToken(t *testing.T) {
	s, h := weatherSite(t)
	now := webtest.TestNow
	s.Now = func() time.Time { return now }
	before := webtest.Fingerprint(t, s)
	data := place.Sample(t, "harbour-semicolons.csv")
	read := func() string { return tokenOf(t, webtest.Upload(h, place.WeatherURL, "file", data).Body.String()) }
	use := func(path, token string) int {
		return webtest.Ask(h, "POST", path, url.Values{"token": {token}, "revision": {"1"}}).Code
	}
	first := read()
	now = now.Add(place.WeatherWaits)
	if w := webtest.Ask(h, "POST", place.WeatherURL+"/use", url.Values{"token": {first}, "revision": {"1"}}); w.Code != http.StatusGone || !strings.Contains(w.Body.String(), "no longer in memory") {
		t.Errorf("too late: %d", w.Code)
	}
	second := read()
	for range place.WeatherKept {
		read()
	}
	if code := use(place.WeatherURL+"/use", second); code != http.StatusGone {
		t.Errorf("the fifth last: %d", code)
	}
	if w := webtest.Ask(h, "POST", "/sample", url.Values{}); w.Code != http.StatusSeeOther {
		t.Fatal(w.Code)
	}
	if code := use("/projects/2/place/file/use", read()); code != http.StatusGone {
		t.Errorf("another project's: %d", code)
	}
	if code := use(place.WeatherURL+"/use", "") + use(place.WeatherURL+"/columns", "none"); code != 2*http.StatusGone {
		t.Errorf("no token: %d", code)
	}
	if w := webtest.Ask(h, "POST", place.WeatherURL+"/use", url.Values{"token": {read()}, "revision": {"7"}}); w.Code != http.StatusConflict {
		t.Errorf("a late page: %d", w.Code)
	}
	if p, err := s.Store.Project(t.Context(), 1); err != nil || p.Revision != 1 || p.Value.Weather != nil || before == "" {
		t.Errorf("something was stored: %v", err)
	}
}

// The reference files go the whole way.
func TestWeatherReferenceFiles(t *testing.T) {
	files, _ := filepath.Glob(filepath.Join("..", "..", "..", "shared", "reference", "weather", "*.*"))
	if len(files) == 0 {
		t.Skip("LEFT OUT: the reference weather files are not beside the repository")
	}
	_, h := weatherSite(t)
	for i, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		w := webtest.Upload(h, place.WeatherURL, "file", data)
		if w.Code != http.StatusOK || webtest.Inlined.MatchString(w.Body.String()) {
			t.Errorf("%s: %d %s", filepath.Base(file), w.Code, form.Clip(webtest.TextOf(w.Body.String()), 900))
			continue
		}
		if w := webtest.Ask(h, "POST", place.WeatherURL+"/use", url.Values{"token": {tokenOf(t, w.Body.String())}, "revision": {fmt.Sprint(i + 1)}}); w.Code != http.StatusSeeOther {
			t.Errorf("%s: %d %s", filepath.Base(file), w.Code, webtest.TextOf(w.Body.String()))
		}
	}
}
