package variant_test

import (
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// What is typed of season and snow reaches the year. By hand: of panels tilted by a tenth, of which somebody clears the snow,
// a quarter of the snow's share is lost that is lost otherwise, month by month; the groups keep their names, and none can be
// taken away here.
func TestSeasonPage(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	snow, times := [12]unit.Length{0.3, 0.2, 0.1}, [12]unit.Count{2, 2, 2}
	doc.Project.Place.SnowFall, doc.Project.Place.SnowTimes = &snow, &times
	v := &doc.Variants[1]
	v.Panels = append(v.Panels, v.Panels[0].Copy())
	v.Panels[0].Name, v.Panels[1].Name = "Roof", "Shed"
	v.Stores = nil
	p, vs := webtest.Create(t, s, "snow", doc)
	at := page.VariantURL(p.ID, vs[1].ID) + "/season"
	body := webtest.Ask(s.Handler(), "GET", at, nil).Body.String()
	if !strings.Contains(webtest.TextOf(body), "Snow takes") || strings.Contains(body, "remove:panels") || strings.Contains(body, "add:panels") || !strings.Contains(body, "<legend>Shed</legend>") {
		t.Errorf("the page of two groups under snow says %s", webtest.TextOf(body))
	}
	months := func() [][]string {
		rows, err := csv.NewReader(webtest.Ask(s.Handler(), "GET", at+"/months.csv", nil).Body).ReadAll()
		if err != nil || len(rows) != 13 {
			t.Fatalf("%d months: %v", len(rows), err)
		}
		return rows
	}
	tilts := "10, 20, 30, 40, 50, 60, 60, 50, 40, 30, 20, 10"
	sent, _ := webtest.FormAt(t, body, at)
	sent.Set("panels[0].tilt_by_month_rad", tilts)
	sent.Set("panels[1].tilt_by_month_rad", tilts)
	sent.Set("panels[1].snow_cleared", "yes")
	if w := webtest.Ask(s.Handler(), "POST", at, sent); w.Code != 303 {
		t.Fatalf("saved with %d: %s", w.Code, webtest.TextOf(w.Body.String()))
	}
	number := func(text string) float64 {
		x, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	for m, row := range months()[1:] {
		tilt := []float64{10, 20, 30, 40, 50, 60, 60, 50, 40, 30, 20, 10}[m]
		if math.Abs(number(row[2])-tilt) > 1e-9 {
			t.Errorf("month %d is tilted by %s", m+1, row[2])
		}
		lies, swept := number(row[3]), number(row[5])
		if (lies > 0) != (m <= 3) || math.Abs(swept-lies/4) > 1e-12 { // April still has a third of March's
			t.Errorf("month %d: snow takes %v, and cleared %v", m+1, lies, swept)
		}
	}
	for text, want := range map[string]string{"10, 20": "12", "10, 20, 30, 40, 50, 60, 60, 50, 40, 30, 20, 1000": "180"} {
		sent, _ := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", at, nil).Body.String(), at)
		sent.Set("panels[0].tilt_by_month_rad", text)
		w := webtest.Ask(s.Handler(), "POST", at, sent)
		if w.Code != 422 || !strings.Contains(webtest.TextOf(w.Body.String()), want) || !webtest.TypedBack(w.Body.String(), "panels[0].tilt_by_month_rad", text) {
			t.Errorf("%q: %d %s", text, w.Code, webtest.TextOf(w.Body.String()))
		}
	}
}
