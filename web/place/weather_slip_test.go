package place_test

import (
	"fmt"
	"math"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/place"
	"duskweight/web/webtest"
)

// lateFile is a year whose sun runs early by an hour and fifteen minutes less the place's hour: its place lies 3.75° west of
// the middle of its time zone by what the head says, and its rows are those of the middle.
func lateFile() []byte {
	return place.PlainYear("Latitude: 40\nLongitude: 8.25\nTime zone: 1\ntime,ghi,dhi,temperature", nil)
}

// A sun that runs early is asked about before the file is used, with the best fit beside it and nothing chosen; what is
// answered is read so, and what is not stays not known and is said. By hand: 12° − 8.25° = 3.75° of longitude are 15 minutes.
func TestSlipIsAsked(t *testing.T) {
	s, h := weatherSite(t)
	upload := func() string {
		w := webtest.Upload(h, place.WeatherURL, "file", lateFile())
		if w.Code != http.StatusOK {
			t.Fatalf("%d %s", w.Code, form.Clip(webtest.TextOf(w.Body.String()), 900))
		}
		return w.Body.String()
	}
	body := upload()
	for _, say := range []string{"Why does the sun of this file run early?", "about 15 minutes earlier", "Best fit: 15.", `name="minutes" value="15"`, "The file is right as it is"} {
		if !strings.Contains(strings.ReplaceAll(body, unit.Space, " "), say) {
			t.Errorf("the page does not say %q: %s", say, form.Clip(webtest.TextOf(body), 1500))
		}
	}
	if strings.Contains(body, "checked") || strings.Index(body, "Why does the sun") > strings.Index(body, "Use this file") {
		t.Error("something is chosen beforehand, or asked after the file is used")
	}
	answer := func(why, minutes string) (int, string) {
		w := webtest.Ask(h, "POST", place.WeatherURL+"/slip", url.Values{"token": {tokenOf(t, upload())}, "why": {why}, "minutes": {minutes}})
		return w.Code, w.Body.String()
	}
	use := func(body, revision string) float64 {
		t.Helper()
		w := webtest.Ask(h, "POST", place.WeatherURL+"/use", url.Values{"token": {tokenOf(t, body)}, "revision": {revision}})
		p, err := s.Store.Project(t.Context(), 1)
		if w.Code != http.StatusSeeOther || err != nil {
			t.Fatalf("%d %v %s", w.Code, err, webtest.TextOf(w.Body.String()))
		}
		said := strings.Contains(webtest.Ask(h, "GET", "/projects/1/place", nil).Body.String(), "the reason is not known: panels that face east are judged too well")
		if said != p.Value.Weather.Slip.Is {
			t.Errorf("left open %v, said %v", p.Value.Weather.Slip.Is, said)
		}
		if !p.Value.Weather.Slip.Is {
			return 0
		}
		return float64(p.Value.Weather.Slip.Val) / 60
	}
	first := upload()
	if left := use(first, "1"); math.Abs(left+15) > 1 {
		t.Errorf("left open: %.1f minutes", left)
	}
	for _, c := range [][2]string{{"", ""}, {"move", "soon"}, {"move", "721"}, {"move", "NaN"}, {"noon", ""}} {
		if code, _ := answer(c[0], c[1]); code != http.StatusBadRequest {
			t.Errorf("%q: %d", c, code)
		}
	}
	revision := []string{"2", "3"}
	for i, c := range [][2]string{{"move", "15"}, {"leave", ""}} {
		code, body := answer(c[0], c[1])
		if code != http.StatusOK || strings.Contains(body, "Why does the sun of this file") {
			t.Fatalf("%q: %d, asked again", c, code)
		}
		if left := use(body, revision[i]); left != 0 {
			t.Errorf("%q: %.1f minutes are left open", c, left)
		}
	}
}

// Stamps that say they end their hours and do not are set right by the answer that is offered first.
func TestSlipOfStamps(t *testing.T) {
	_, h := weatherSite(t)
	data := place.PlainYear("Latitude: 40\nLongitude: 12\nTime zone: 1\nperiod_end,ghi,dhi,temperature", nil)
	w := webtest.Upload(h, place.WeatherURL, "file", data)
	body := strings.ReplaceAll(w.Body.String(), unit.Space, " ")
	if w.Code != http.StatusOK || !strings.Contains(body, "The time stands at the start of its hour (0 minutes left), the best fit") {
		t.Fatalf("%d %s", w.Code, form.Clip(webtest.TextOf(body), 1500))
	}
	w = webtest.Ask(h, "POST", place.WeatherURL+"/slip", url.Values{"token": {tokenOf(t, body)}, "why": {"start"}, "minutes": {"60"}})
	if w.Code != http.StatusOK || strings.Contains(w.Body.String(), "Why does the sun") || !strings.Contains(w.Body.String(), "Use this file") {
		t.Errorf("%d %s", w.Code, form.Clip(webtest.TextOf(w.Body.String()), 1500))
	}
}

// Rows on the clock on the wall, whose times do not show it, are asked about, and read in standard time by the answer.
func TestDaylightIsAsked(t *testing.T) {
	_, h := weatherSite(t)
	var summer []string
	data := place.PlainYear("Latitude: 40\nLongitude: 12\nTime zone: 1\ntime,ghi,dhi,temperature", func(i int, row string) string {
		if i < 86*24 || i >= 303*24 {
			return row
		}
		summer = append(summer, row[16:])
		if i == 86*24 {
			return row[:16] + ",0,0,10"
		}
		return row[:16] + summer[len(summer)-2]
	})
	w := webtest.Upload(h, place.WeatherURL, "file", data)
	body := w.Body.String()
	at := strings.Index(body, `value="summer,`)
	if w.Code != http.StatusOK || at < 0 || !strings.Contains(body, "run late in one half of the year?") || !strings.Contains(body, "The rows keep daylight saving time from 2") {
		t.Fatalf("%d %s", w.Code, form.Clip(webtest.TextOf(body), 1500))
	}
	answer := strings.SplitN(body[at+7:], `"`, 2)[0]
	w = webtest.Ask(h, "POST", place.WeatherURL+"/slip", url.Values{"token": {tokenOf(t, body)}, "why": {answer}, "minutes": {"0"}})
	if body := w.Body.String(); w.Code != http.StatusOK || strings.Contains(body, "Why does the sun") || !strings.Contains(body, "are read as daylight saving time") {
		t.Errorf("%s: %d %s", answer, w.Code, form.Clip(webtest.TextOf(body), 1500))
	}
}

// epwYear is the plain year as an hourly weather file (.epw), of which each hour is stamped with its end.
func epwYear() []byte {
	var b strings.Builder
	b.WriteString("LOCATION,Harbour,-,NWH,made,0,40,12,1,12\nDESIGN CONDITIONS,0\nDATA PERIODS,1,1,Data,Sunday,1/1,12/31\n")
	i := 0
	for row := range strings.Lines(string(place.PlainYear("", nil))) {
		f := strings.Split(strings.TrimSpace(row), ",")
		if len(f) < 4 {
			continue
		}
		fmt.Fprintf(&b, "2021,%s,%s,%d,60,x,%s,0,70,101300,0,0,300,%s,0,%s\n", f[0][5:7], f[0][8:10], i%24+1, f[3], f[1], f[2])
		i++
	}
	return []byte(b.String())
}

// A file whose layout says how it is to be read may be read another way too: with its times at the start of the hour its sun is
// an hour late, and this is asked.
func TestAnyLayoutAnotherWay(t *testing.T) {
	_, h := weatherSite(t)
	w := webtest.Upload(h, place.WeatherURL, "file", epwYear())
	body := w.Body.String()
	if w.Code != http.StatusOK || !strings.Contains(body, "Read it another way") || !strings.Contains(body, `<option value="end" selected>`) || strings.Contains(body, "Why does the sun") {
		t.Fatalf("%d %s", w.Code, form.Clip(webtest.TextOf(body), 1500))
	}
	typed := url.Values{"token": {tokenOf(t, body)}}
	for _, m := range regexp.MustCompile(`<select id="map-[a-z]+" name="([a-z]+)">((?s:.*?))</select>`).FindAllStringSubmatch(body, -1) {
		if chosen := regexp.MustCompile(`<option value="([^"]*)" selected`).FindStringSubmatch(m[2]); chosen != nil {
			typed.Set(m[1], chosen[1])
		}
	}
	for _, m := range regexp.MustCompile(`<input id="map-[a-z]+" name="([a-z]+)" value="([^"]*)"`).FindAllStringSubmatch(body, -1) {
		typed.Set(m[1], m[2])
	}
	typed.Set("stamp", "start")
	w = webtest.Ask(h, "POST", place.WeatherURL+"/columns", typed)
	if body := w.Body.String(); w.Code != http.StatusOK || !strings.Contains(body, "Use this file") || !strings.Contains(body, "The time stands at the end of its hour (0 minutes left)") {
		t.Errorf("%d %s", w.Code, form.Clip(webtest.TextOf(body), 1500))
	}
}

// A file that does not say where it is from is asked about, with the project's own place and clock in the fields. The worked
// example lies at 49.6° N, 6.1° E.
func TestOwnPlaceIsOffered(t *testing.T) {
	s, h := weatherSite(t)
	p, err := s.Store.Project(t.Context(), 1)
	if err != nil {
		t.Fatal(err)
	}
	w := webtest.Upload(h, place.WeatherURL, "file", place.PlainYear("time,ghi,dhi,temperature", nil))
	body := w.Body.String()
	latitude := unit.Latitudes.FormatFull(float64(p.Value.Place.Latitude.Val), unit.Metric)
	if w.Code != http.StatusOK || !strings.Contains(body, "These are your project&#39;s place and clock") || !strings.Contains(body, `name="latitude" value="`+latitude+`"`) || strings.Contains(body, "Use this file") {
		t.Errorf("%d, latitude %s: %s", w.Code, latitude, form.Clip(webtest.TextOf(body), 1500))
	}
}

// A year of degrees Fahrenheit that does not say so is asked about, with °F chosen in the form and nothing read yet.
func TestFahrenheitIsOffered(t *testing.T) {
	_, h := weatherSite(t)
	hot := place.PlainYear("Latitude: 40\nLongitude: 12\nTime zone: 1\ntime,ghi,dhi,temperature", func(i int, row string) string {
		return row[:strings.LastIndex(row, ",")] + ",68.5"
	})
	w := webtest.Upload(h, place.WeatherURL, "file", hot)
	body := w.Body.String()
	if w.Code != http.StatusOK || !strings.Contains(body, `<option value="F" selected>`) || !strings.Contains(body, "no air is as warm or as cold") || strings.Contains(body, "Use this file") {
		t.Errorf("%d %s", w.Code, form.Clip(webtest.TextOf(body), 1500))
	}
}
