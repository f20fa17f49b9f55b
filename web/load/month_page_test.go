package load_test

import (
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

var (
	checkedHour = regexp.MustCompile(`name="` + regexp.QuoteMeta(radio) + `\.hours" value="(\d+)"[^>]*? checked`)
	allOfIt     = regexp.MustCompile(`(?s)<div class="all-of-it".*?</span>\s*</div>`)
)

// The strips show the 21st of the month that the address names, by default of the longest night. The sum is that of the day, by
// hand: a radio of 4 W from 18 to 21:30, in December alone, needs 4 W × 3.5 h = 14 Wh, and nothing in June.
func TestMonthOfTheStrips(t *testing.T) {
	s, doc := webtest.NewSite(t), battery(t)
	doc.Project.Load = load.Load{Appliances: []load.Appliance{
		{Name: "Radio", Power: unit.Of[unit.Power](4), Count: unit.Of[unit.Count](1), From: unit.Of[unit.Duration](18 * 3600), To: unit.Of[unit.Duration](21.5 * 3600), Months: []unit.Count{12}, Supply: load.SupplyDc, Priority: load.PriorityNice},
		{Name: "Pump", Power: unit.Of[unit.Power](100), Count: unit.Of[unit.Count](1), From: unit.Of[unit.Duration](9 * 3600), To: unit.Of[unit.Duration](16 * 3600), Waits: unit.Yes, DayEnergy: unit.Of[unit.Energy](3.6e5), Supply: load.SupplyDc, Priority: load.PriorityNice},
	}}
	p, _ := webtest.Create(t, s, "months", doc)
	at := page.ProjectURL(p.ID) + "/load"
	for query, want := range map[string][]string{
		"":          {"All of it, December", "14 Wh in the dark", "21 December: the most is 4 W, from 18:00."},
		"?month=12": {"All of it, December", "14 Wh in the dark"},
		"?month=6":  {"All of it, June", "0 Wh in the dark", "21 June: nothing is switched on."},
		"?month=13": {"All of it, December"},
	} {
		body := webtest.Ask(s.Handler(), http.MethodGet, at+query, nil).Body.String()
		sum := strings.Join(strings.Fields(strings.ReplaceAll(webtest.Readable(allOfIt.FindString(body)), "\u00a0", " ")), " ")
		for _, w := range want {
			if !strings.Contains(strings.ReplaceAll(sum, "\u202f", " "), w) {
				t.Errorf("%q does not say %q: %q", query, w, sum)
			}
		}
		if strings.Count(body, `class="waits"`) != 1 || !strings.Contains(body, "Hatched:") {
			t.Errorf("%q: %d rows wait for the sun, want the pump", query, strings.Count(body, `class="waits"`))
		}
		csv := webtest.Ask(s.Handler(), http.MethodGet, at+"/a-day.csv"+query, nil)
		rows := strings.Split(strings.TrimSpace(csv.Body.String()), "\n")
		lamp := map[bool]string{true: "18,no,0,0", false: "18,yes,0,4"}[query == "?month=6"]
		if csv.Code != http.StatusOK || len(rows) != 25 || rows[19] != lamp {
			t.Errorf("%q: %d, %d rows of numbers: %q, want %q at 18", query, csv.Code, len(rows), csv.Body.String(), lamp)
		}
		if query == "?month=6" && !strings.Contains(body, "/load?month=6&amp;part=appliances%5B0%5D#card") {
			t.Error("the links of the rows lose the month")
		}
	}
}

// A lamp from dusk for 5 hours has other hours in June than in December. Saving the page of a month with its hours as it shows
// them changes nothing, whichever month it is.
func TestMonthIsSavedAsItIsShown(t *testing.T) {
	s, doc := webtest.NewSite(t), battery(t)
	lamp := load.Appliance{Name: "Lamp", Power: unit.Of[unit.Power](5), Count: unit.Of[unit.Count](1), FromDusk: unit.Of(5 * unit.Hour), Supply: load.SupplyDc, Priority: load.PriorityNice}
	doc.Project.Load = load.Load{Appliances: []load.Appliance{lamp}}
	p, _ := webtest.Create(t, s, "dusk", doc)
	seen := map[string]bool{}
	for _, query := range []string{"?month=6", "?month=12", ""} {
		at := page.ProjectURL(p.ID) + "/load" + query
		if strings.Contains(webtest.Ask(s.Handler(), http.MethodGet, at, nil).Body.String(), "Hatched:") {
			t.Error("hatching is explained where nothing is hatched")
		}
		var hours []string
		for _, m := range checkedHour.FindAllStringSubmatch(webtest.Ask(s.Handler(), http.MethodGet, at, nil).Body.String(), -1) {
			hours = append(hours, m[1])
		}
		seen[strings.Join(hours, " ")] = true
		now, err := s.Store.Project(t.Context(), p.ID)
		if err != nil {
			t.Fatal(err)
		}
		webtest.Ask(s.Handler(), http.MethodPost, at, url.Values{form.NameRevision: {page.Itoa(int(now.Revision))}, radio + ".strip": {"1"}, radio + ".hours": hours})
		now, err = s.Store.Project(t.Context(), p.ID)
		if err != nil || now.Value.Load.Appliances[0].FromDusk != lamp.FromDusk || now.Value.Load.Appliances[0].From.Is {
			t.Errorf("%q: hours %v as shown, saved %+v, %v", query, hours, now.Value.Load.Appliances[0], err)
		}
	}
	if len(seen) != 2 {
		t.Errorf("June and December show %v", seen)
	}
}

// An inverter that nothing else keeps company is named as what uses power all the time: the cabin's uses 6 W with nothing plugged in.
func TestIdleInverterIsNamed(t *testing.T) {
	s := webtest.NewSite(t)
	p, _ := webtest.Create(t, s, "cabin", catalog.Cabin())
	body := webtest.Ask(s.Handler(), http.MethodGet, page.ProjectURL(p.ID)+"/load", nil).Body.String()
	if want := "the inverter alone, 6 W day and night"; !strings.Contains(strings.ReplaceAll(webtest.Readable(body), "\u00a0", " "), want) {
		t.Errorf("%q is not said", want)
	}
}
