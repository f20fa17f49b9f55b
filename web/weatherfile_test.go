package web

import (
	"bytes"
	"fmt"
	"math"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"duskweight/internal/document"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
	"duskweight/internal/weather"
)

const weatherURL = "/projects/1/place/file"

var tokens = regexp.MustCompile(`name="token" value="([^"]+)"`)

// weatherSite is a site with the worked example as project 1.
func weatherSite(t *testing.T) (*Site, http.Handler) {
	t.Helper()
	s := newSite(t)
	h := s.Handler()
	if w := ask(h, "POST", "/sample", url.Values{}); w.Code != http.StatusSeeOther {
		t.Fatal(w.Code)
	}
	return s, h
}

func sample(t *testing.T, name string) []byte {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("..", "testdata", "weather", name))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// plainYear is a table of our own making at 40° N, 12° E with seven tenths of the light outside the air: comma
// separated, times in UTC+1 at the start of the hour, and head and first column as given.
func plainYear(head string, change func(i int, row string) string) []byte {
	g := sun.NewGeometry(40*unit.Degree, 12*unit.Degree, unit.Hour)
	var b strings.Builder
	b.WriteString(head + "\n")
	at := time.Date(2021, 1, 1, 0, 0, 0, 0, time.UTC)
	for i := range sun.YearHours {
		row := fmt.Sprintf("%s,%.0f,%.0f,%.1f", at.Add(time.Duration(i)*time.Hour).Format("2006-01-02 15:04"), 0.7*g.Extra[i], 0.2*g.Extra[i], 10+5*math.Sin(float64(i)/1000))
		if change != nil {
			row = change(i, row)
		}
		b.WriteString(row + "\n")
	}
	return []byte(b.String())
}

func tokenOf(t *testing.T, body string) string {
	t.Helper()
	m := tokens.FindStringSubmatch(body)
	if m == nil {
		t.Fatalf("no token on the page: %s", textOf(body))
	}
	return m[1]
}

func textOf(body string) string {
	_, body, _ = strings.Cut(body, "<main")
	return strings.Join(strings.Fields(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(body, " ")), " ")
}

// A file that is understood is shown, and stored only when it is asked for; out and in again, its year is the same to
// the last bit.
func TestWeatherFileUsed(t *testing.T) {
	s, h := weatherSite(t)
	data := sample(t, "harbour-semicolons.csv")
	before := fingerprint(t, s)
	w := upload(h, weatherURL, "file", data)
	if w.Code != http.StatusOK || !strings.Contains(w.Body.String(), "Use this file") || !strings.Contains(w.Body.String(), "<svg") {
		t.Fatalf("%d %s", w.Code, textOf(w.Body.String()))
	}
	if fingerprint(t, s) != before {
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
	if w := ask(h, "POST", weatherURL+"/use", use); w.Code != http.StatusSeeOther || w.Header().Get("Location") != "/projects/1/place" {
		t.Fatalf("%d %s", w.Code, textOf(w.Body.String()))
	}
	p, err := s.Store.Project(t.Context(), 1)
	if err != nil || p.Value.Weather == nil || p.Value.Place.Sky != "file" || p.Revision != 2 {
		t.Fatalf("%v %+v", err, p.Value.Place)
	}
	sameYear(t, *p.Value.Weather, want)
	if w := ask(h, "GET", "/projects/1/history", nil); !strings.Contains(w.Body.String(), "Weather file: ") {
		t.Error("the history does not tell it")
	}
	if w := ask(h, "GET", "/projects/1/place", nil); w.Code != http.StatusOK || !strings.Contains(w.Body.String(), "/place/file") {
		t.Errorf("the place: %d", w.Code)
	}
	out := ask(h, "GET", "/projects/1/export.json", nil).Body.Bytes()
	if w := upload(h, "/import", "file", out); w.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", w.Code, textOf(w.Body.String()))
	}
	doc, err := document.Decode(out)
	if err != nil {
		t.Fatal(err)
	}
	again, err := s.Store.Project(t.Context(), 2)
	if err != nil {
		t.Fatal(err)
	}
	sameYear(t, *doc.Project.Weather, want)
	sameYear(t, *again.Value.Weather, want)
	if w := ask(h, "POST", weatherURL+"/use", use); w.Code != http.StatusGone {
		t.Errorf("used twice: %d", w.Code)
	}
}

func sameYear(t *testing.T, got, want sun.Series) {
	t.Helper()
	if got.Latitude != want.Latitude || got.Longitude != want.Longitude || got.UTCOffset != want.UTCOffset || got.Elevation != want.Elevation {
		t.Errorf("the place is %v %v, want %v %v", got.Latitude, got.Longitude, want.Latitude, want.Longitude)
	}
	for name, pair := range map[string][2][]float64{"GHI": {got.GHI, want.GHI}, "DHI": {got.DHI, want.DHI}, "air": {got.TAir, want.TAir}} {
		if len(pair[0]) != sun.YearHours {
			t.Fatalf("%s has %d hours", name, len(pair[0]))
		}
		for i := range pair[0] {
			if math.Float64bits(pair[0][i]) != math.Float64bits(pair[1][i]) {
				t.Fatalf("%s of hour %d is %v, want %v", name, i, pair[0][i], pair[1][i])
			}
		}
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
	known := withWeather(p.Value, y, said).Place
	if known.Latitude != p.Value.Place.Latitude || known.Name != p.Value.Place.Name {
		t.Error("what was typed is gone")
	}
	p.Value.Place = sun.Place{Sky: "described"}
	if got := withWeather(p.Value, y, said).Place; got.Latitude != unit.Of[unit.Angle](0.5) || got.Longitude != unit.Of[unit.Angle](0.2) ||
		got.Elevation != unit.Of[unit.Length](12) || got.UTCOffset != unit.Of[unit.Duration](3600) || got.Name != "Harbour" || got.Sky != "file" {
		t.Errorf("%+v", got)
	}
	if got := withWeather(p.Value, y, weather.Mapping{}).Place; got.Elevation.Is || got.UTCOffset.Is {
		t.Errorf("what the file does not say is known: %+v", got)
	}
	if p.Value.Weather != nil {
		t.Error("the stored project was written into")
	}
}

// A file that cannot be used is refused with line, column, value and reason, and nothing is stored.
func TestWeatherRefused(t *testing.T) {
	s, h := weatherSite(t)
	before := fingerprint(t, s)
	head := "time,ghi,dhi,temperature"
	place := "Latitude: 40\nLongitude: 12\nTime zone: 1\n"
	wrong := func(n int) []byte {
		return plainYear(place+head, func(i int, row string) string {
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
		"two wrong cells": {sample(t, "two-wrong-cells.csv"), []string{"Line 5, column 2 (GHI [W/m²]): &#34;12,x&#34; is not a number."}},
		"sixty of them":   {wrong(60), []string{"Line 5, column 2 (ghi): ", "Line 54, column 2", "And 10 more.", "&lt;b&gt;x"}},
		"zip":             {[]byte("PK\x03\x04" + strings.Repeat("x", 500)), []string{"zip archive"}},
		"bytes":           {append([]byte("abc"), make([]byte, 500)...), []string{"not a text file"}},
		"empty":           {nil, []string{"empty"}},
		"prose":           {[]byte("hello\nworld\n"), []string{"No column of air temperature"}},
		"a year of zeros": {plainYear(place+head, func(_ int, row string) string { return row[:16] + ",0,0,12.0" }), []string{"no sun in the whole year"}},
		"night and day":   {plainYear("Latitude: 40\nLongitude: 12\nTime zone: -11\n"+head, nil), []string{"while the sun is down"}},
	} {
		w := upload(h, weatherURL, "file", c.data)
		if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), "<title>Error: ") || strings.Contains(w.Body.String(), "Use this file") {
			t.Errorf("%s: %d", name, w.Code)
		}
		for _, say := range c.say {
			if !strings.Contains(w.Body.String(), say) {
				t.Errorf("%s: the page does not say %q: %s", name, say, clip(textOf(w.Body.String()), 700))
			}
		}
		if strings.Contains(w.Body.String(), "<b>x") || strings.Contains(w.Body.String(), "Line 55,") {
			t.Errorf("%s: text of the file is on the page as it is, or too much of it", name)
		}
	}
	for _, size := range []int{33, 65} {
		w := upload(h, weatherURL, "file", bytes.Repeat([]byte("1,2,3\n"), size<<20/6+1))
		if w.Code != http.StatusRequestEntityTooLarge || !strings.Contains(w.Body.String(), "larger than 32 MB") {
			t.Errorf("%d MB: %d %s", size, w.Code, clip(textOf(w.Body.String()), 300))
		}
	}
	if w := ask(h, "POST", weatherURL, url.Values{"file": {"x"}}); w.Code != http.StatusUnprocessableEntity {
		t.Errorf("no file: %d", w.Code)
	}
	if w := upload(h, "/projects/9/place/file", "file", nil); w.Code != http.StatusNotFound {
		t.Errorf("no project: %d", w.Code)
	}
	if fingerprint(t, s) != before {
		t.Error("something was stored")
	}
}

// A warning that the model gives is on the page before the file is taken.
func TestWeatherWarns(t *testing.T) {
	_, h := weatherSite(t)
	place := "Latitude: 40\nLongitude: 12\nTime zone: 1\n"
	late := plainYear(place+"time,ghi,dhi,temperature", func(i int, row string) string { return row[:14] + "30" + row[16:] })
	for name, c := range map[string]struct {
		data []byte
		say  string
	}{
		"a gap": {plainYear(place+"time,ghi,dhi,temperature", func(i int, row string) string { return map[bool]string{true: row[:17] + ",,3", false: row}[i == 12] }), "was missing for 1 hour from 1 January 12:00"},
		"below zero": {plainYear(place+"time,ghi,dhi,temperature", func(i int, row string) string {
			return map[bool]string{true: row[:16] + ",-2,-2,3", false: row}[i == 0]
		}), "below zero"},
		"estimated":      {plainYear(place+"time,ghi,wind,temperature", nil), "estimated from the clearness"},
		"half hours":     {late, "Read it another way"},
		"an hour's slip": {plainYear(strings.Replace(place, "zone: 1", "zone: 2", 1)+"time,ghi,dhi,temperature", nil), "minutes earlier"},
	} {
		w := upload(h, weatherURL, "file", c.data)
		if w.Code != http.StatusOK || !strings.Contains(w.Body.String(), c.say) {
			t.Errorf("%s: %d, not said: %q: %s", name, w.Code, c.say, clip(textOf(w.Body.String()), 900))
		}
	}
}

// A table without names that are known gets its columns from the form.
func TestWeatherMapping(t *testing.T) {
	s, h := weatherSite(t)
	before := fingerprint(t, s)
	w := upload(h, weatherURL, "file", plainYear("when,first,second,third", nil))
	body := w.Body.String()
	if w.Code != http.StatusOK || !strings.Contains(body, "Say what stands where") || !strings.Contains(body, "2: first") || strings.Contains(body, "Use this file") {
		t.Fatalf("%d %s", w.Code, clip(textOf(body), 900))
	}
	form := url.Values{"token": {tokenOf(t, body)}, "first": {"2"}, "delimiter": {","}, "comma": {"no"}, "radiation": {"W/m2"}, "thermo": {"C"}, "stamp": {"start"},
		"ghi": {"2"}, "dhi": {"3"}, "dni": {"-1"}, "temperature": {"4"}, "date": {"1"}, "time": {"-1"}, "latitude": {"40 N"}, "longitude": {"x"}, "offset": {"1"}}
	w = ask(h, "POST", weatherURL+"/columns", form)
	if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), "Longitude: ") || !strings.Contains(w.Body.String(), `value="40 N"`) {
		t.Fatalf("a wrong longitude: %d %s", w.Code, clip(textOf(w.Body.String()), 900))
	}
	form.Set("longitude", "12")
	form.Set("temperature", "-1")
	w = ask(h, "POST", weatherURL+"/columns", form)
	if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), "No column of air temperature") {
		t.Fatalf("no temperature: %d %s", w.Code, clip(textOf(w.Body.String()), 900))
	}
	form.Set("temperature", "4")
	form.Set("token", tokenOf(t, w.Body.String()))
	w = ask(h, "POST", weatherURL+"/columns", form)
	if w.Code != http.StatusOK || !strings.Contains(w.Body.String(), "Use this file") {
		t.Fatalf("%d %s", w.Code, clip(textOf(w.Body.String()), 900))
	}
	if fingerprint(t, s) != before {
		t.Error("something was stored")
	}
	if w = ask(h, "POST", weatherURL+"/use", url.Values{"token": {tokenOf(t, w.Body.String())}, "revision": {"1"}}); w.Code != http.StatusSeeOther {
		t.Errorf("%d %s", w.Code, textOf(w.Body.String()))
	}
}

// A token waits ten minutes, for its own project, and only the last four do.
func TestWeatherToken(t *testing.T) {
	s, h := weatherSite(t)
	now := testNow
	s.Now = func() time.Time { return now }
	before := fingerprint(t, s)
	data := sample(t, "harbour-semicolons.csv")
	read := func() string { return tokenOf(t, upload(h, weatherURL, "file", data).Body.String()) }
	use := func(path, token string) int {
		return ask(h, "POST", path, url.Values{"token": {token}, "revision": {"1"}}).Code
	}
	first := read()
	now = now.Add(weatherWaits)
	if w := ask(h, "POST", weatherURL+"/use", url.Values{"token": {first}, "revision": {"1"}}); w.Code != http.StatusGone || !strings.Contains(w.Body.String(), "no longer in memory") {
		t.Errorf("too late: %d", w.Code)
	}
	second := read()
	for range weatherKept {
		read()
	}
	if code := use(weatherURL+"/use", second); code != http.StatusGone {
		t.Errorf("the fifth last: %d", code)
	}
	if w := ask(h, "POST", "/sample", url.Values{}); w.Code != http.StatusSeeOther {
		t.Fatal(w.Code)
	}
	if code := use("/projects/2/place/file/use", read()); code != http.StatusGone {
		t.Errorf("another project's: %d", code)
	}
	if code := use(weatherURL+"/use", "") + use(weatherURL+"/columns", "none"); code != 2*http.StatusGone {
		t.Errorf("no token: %d", code)
	}
	if w := ask(h, "POST", weatherURL+"/use", url.Values{"token": {read()}, "revision": {"7"}}); w.Code != http.StatusConflict {
		t.Errorf("a late page: %d", w.Code)
	}
	if p, err := s.Store.Project(t.Context(), 1); err != nil || p.Revision != 1 || p.Value.Weather != nil || before == "" {
		t.Errorf("something was stored: %v", err)
	}
}

// The reference files go the whole way.
func TestWeatherReferenceFiles(t *testing.T) {
	files, _ := filepath.Glob(filepath.Join("..", "..", "shared", "reference", "weather", "*.*"))
	if len(files) == 0 {
		t.Skip("LEFT OUT: the reference weather files are not beside the repository")
	}
	_, h := weatherSite(t)
	for i, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		w := upload(h, weatherURL, "file", data)
		if w.Code != http.StatusOK || inlined.MatchString(w.Body.String()) {
			t.Errorf("%s: %d %s", filepath.Base(file), w.Code, clip(textOf(w.Body.String()), 900))
			continue
		}
		if w := ask(h, "POST", weatherURL+"/use", url.Values{"token": {tokenOf(t, w.Body.String())}, "revision": {fmt.Sprint(i + 1)}}); w.Code != http.StatusSeeOther {
			t.Errorf("%s: %d %s", filepath.Base(file), w.Code, textOf(w.Body.String()))
		}
	}
}
