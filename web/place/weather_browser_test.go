package place_test

import (
	"net/http"
	"net/http/httptest"
	"testing"

	"duskweight/web"
	"duskweight/web/browsertest"
	"duskweight/web/place"
	"duskweight/web/webtest"
)

// The page of a weather file as it is read, asked about and refused: nothing to complain of and nothing sideways.
func TestBrowserWeatherFile(t *testing.T) {
	b := browsertest.Start(t)
	_, h := weatherSite(t)
	bodies := map[string]string{
		"read":    webtest.Upload(h, place.WeatherURL, "file", place.Sample(t, "harbour-semicolons.csv")).Body.String(),
		"reading": readingBody(h),
		"slip":    webtest.Upload(h, place.WeatherURL, "file", lateFile()).Body.String(),
		"asks":    webtest.Upload(h, place.WeatherURL, "file", place.PlainYear("when,first,second,third", nil)).Body.String(),
		"refused": webtest.Upload(h, place.WeatherURL, "file", place.Sample(t, "two-wrong-cells.csv")).Body.String(),
		"choose":  webtest.Ask(h, "GET", place.WeatherURL, nil).Body.String(),
	}
	mux := http.NewServeMux()
	mux.Handle("/static/", h)
	mux.Handle("/{state}", web.WithHeaders(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		_, _ = w.Write([]byte(bodies[r.PathValue("state")]))
	})))
	server := httptest.NewServer(mux)
	t.Cleanup(server.Close)
	for size, look := range map[string]browsertest.Look{"wide": {}, "phone": browsertest.Phone} {
		tab := b.Open(t, look)
		for state := range bodies {
			tab.Go(server.URL + "/" + state)
			tab.Clean()
			tab.Shot("weather-" + state + "-" + size)
			if wide := tab.Sideways(); wide > 0 {
				t.Errorf("%s, %s: %d pixels too wide", state, size, wide)
			}
		}
	}
}

// readingBody is the page with the bar of a large file.
func readingBody(h http.Handler) string {
	at := webtest.Upload(h, place.WeatherURL, "file", minuteYear()).Header().Get("Location")
	return webtest.Ask(h, "GET", at, nil).Body.String()
}
