package load_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/web"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// night is a project with one radio from 18 to 21:30, typical, and its page.
type night struct {
	t  *testing.T
	s  *web.Site
	id int64
	at string
}

const radio = "load.appliances[0]"

func radioNight(t *testing.T) night {
	s, doc := webtest.NewSite(t), battery(t)
	doc.Project.Load.Appliances = []load.Appliance{{Name: "Radio", Power: unit.Of[unit.Power](4), Count: unit.Of[unit.Count](1), From: unit.Of[unit.Duration](18 * 3600), To: unit.Of[unit.Duration](21.5 * 3600), Supply: load.SupplyDc, Priority: load.PriorityNice}}
	doc.Project.Origins = model.Origins{radio + ".from_s": {Kind: model.OriginTypical, Source: "x"}, radio + ".power_w": {Kind: model.OriginTypical, Source: "x"}}
	p, _ := webtest.Create(t, s, "night", doc)
	return night{t, s, p.ID, page.ProjectURL(p.ID) + "/load"}
}

// paint sends the strip of the radio with these hours on, as the page without a script does.
func (n night) paint(do string, hours ...string) (to string) {
	n.t.Helper()
	r := webtest.Ask(n.s.Handler(), http.MethodPost, n.at, n.sent(do, hours...))
	if r.Code != http.StatusSeeOther {
		n.t.Fatalf("%v: %d: %s", hours, r.Code, webtest.Tags.ReplaceAllString(r.Body.String(), " "))
	}
	return r.Header().Get("Location")
}

func (n night) sent(do string, hours ...string) url.Values {
	return url.Values{form.NameRevision: {page.Itoa(int(n.saved().Revision))}, form.NameDo: {do}, radio + ".strip": {"1"}, radio + ".hours": hours}
}

func (n night) saved() (saved struct {
	Revision int64
	model.Project
}) {
	n.t.Helper()
	p, err := n.s.Store.Project(n.t.Context(), n.id)
	if err != nil {
		n.t.Fatal(err)
	}
	saved.Revision, saved.Project = p.Revision, p.Value
	return saved
}

func (n night) body(at string) string {
	return webtest.Ask(n.s.Handler(), http.MethodGet, at, nil).Body.String()
}

// What the strip shows is sent back and changes nothing; an earlier beginning is saved and keeps the half hour at the end, is
// the reader's own from then on, and leaves the power typical.
func TestPaintedHoursAreSaved(t *testing.T) {
	n := radioNight(t)
	if body := n.body(n.at); strings.Count(body, `name="load.appliances[0].hours"`) != 24 || !strings.Contains(body, `h n e2"`) {
		t.Errorf("24 hours and a half one: %s", body)
	}
	before := n.saved().Revision
	n.paint("", "18", "19", "20", "21")
	if n.saved().Revision != before {
		t.Error("what was shown was saved as a change")
	}
	n.paint("", "16", "17", "18", "19", "20", "21")
	p := n.saved()
	if a := p.Load.Appliances[0]; a.From.Val != 16*3600 || a.To.Val != 21.5*3600 {
		t.Errorf("from %v to %v", a.From, a.To)
	}
	if _, typical := p.Origins[radio+".from_s"]; typical || p.Origins[radio+".power_w"].Kind != model.OriginTypical {
		t.Errorf("%+v", p.Origins)
	}
}

// A second run asks before it is anything: the page that comes shows it and the question, and saves nothing. A yes copies the
// radio with its typical power, a no leaves it as it was.
func TestSecondRunAsks(t *testing.T) {
	n := radioNight(t)
	before := n.saved().Revision
	hours := []string{"18", "19", "20", "21", "6", "7"}
	to := n.paint("", hours...)
	body := n.body(strings.TrimSuffix(to, "#rows"))
	if !strings.Contains(body, "Add it as a second row?") || n.saved().Revision != before {
		t.Fatalf("%s: %s", to, webtest.Tags.ReplaceAllString(body, " "))
	}
	for _, h := range hours {
		if !strings.Contains(body, `value="`+h+`" id="h-0-`+h+`" aria-label="`+h+" to "+page.Itoa(map[string]int{"18": 19, "19": 20, "20": 21, "21": 22, "6": 7, "7": 8}[h])+`" checked`) {
			t.Errorf("%s is not shown as painted", h)
		}
	}
	n.paint("one:"+radio, hours...)
	if n.saved().Revision != before || strings.Contains(n.body(n.at), "second row?") {
		t.Error("left out, and still there")
	}
	n.paint("second:"+radio, hours...)
	p := n.saved()
	if len(p.Load.Appliances) != 2 {
		t.Fatalf("%d rows", len(p.Load.Appliances))
	}
	if a, b := p.Load.Appliances[0], p.Load.Appliances[1]; a.To.Val != 21.5*3600 || b.From.Val != 6*3600 || b.To.Val != 8*3600 || b.Name != "Radio" || b.Power != a.Power {
		t.Errorf("%+v and %+v", a, b)
	}
	if p.Origins["load.appliances[1].power_w"].Kind != model.OriginTypical {
		t.Errorf("the power of the copy: %+v", p.Origins)
	}
}

// A painted hour comes back with the answer while one draws, and nothing is saved by that.
func TestPaintedHourIsAnswered(t *testing.T) {
	n := radioNight(t)
	before := n.saved().Revision
	part := webtest.Ask(n.s.Handler(), http.MethodPost, n.at+"/try", n.sent("", "18", "19"), "X-Part", "results").Body.String()
	if !strings.Contains(part, `data-swap="rows"`) || !strings.Contains(part, "18:00 to 20:00") || n.saved().Revision != before {
		t.Errorf("%.600s", part)
	}
}

// Of thirteen rows the six that need the most stand on the page and a link to the others; of twelve all do.
func TestManyRowsAreFew(t *testing.T) {
	for n, want := range map[int]int{12: 12, 13: 6} {
		s, doc := webtest.NewSite(t), battery(t)
		one := doc.Project.Load.Appliances[0]
		doc.Project.Load.Appliances = nil
		for i := range n {
			one.Name, one.Power = "Lamp "+page.Itoa(i), unit.Of(unit.Power(1+i))
			doc.Project.Load.Appliances = append(doc.Project.Load.Appliances, one)
		}
		p, _ := webtest.Create(t, s, "many", doc)
		at := page.ProjectURL(p.ID) + "/load"
		body := webtest.Ask(s.Handler(), http.MethodGet, at, nil).Body.String()
		if rows := strings.Count(body, `<fieldset class="hours"`); rows != want || n == 13 && (!strings.Contains(body, "7 more, which need less") || strings.Contains(body, "Lamp 6:") || !strings.Contains(body, "Lamp 12:")) {
			t.Errorf("%d: %d rows", n, rows)
		}
		if all := strings.Count(webtest.Ask(s.Handler(), http.MethodGet, at+"?more=1", nil).Body.String(), `<fieldset class="hours"`); all != n {
			t.Errorf("all of %d: %d rows", n, all)
		}
	}
}
