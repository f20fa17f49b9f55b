package crawl_test

import (
	"html"
	"net/http"
	"os"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/web"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// build is a hoist as somebody types it into the page, and what will truly go wrong with it.
type build struct {
	name  string
	typed string   // field = text, one a line; paths inside the hoist
	ready string   // what the plan may say
	says  []string // on the page, in these words
	words string   // id = word, blank between
}

var benchLink = regexp.MustCompile(`<a href="([^"]+)">Know your motor`)

var rowIndex = regexp.MustCompile(`^(.*)\[(\d+)\]\.[^\[\]]+$`)

// enter types a build into the page of a new hoist, sends the form as a browser does, and returns the page and its hoist.
func (b build) enter(t *testing.T, s *web.Site) (body string, r *model.HoistResult) {
	t.Helper()
	doc := model.Document{Edition: 1, Project: model.Project{Name: b.name, Place: sun.Place{Sky: "described"}},
		Variants: []model.Variant{{Name: "As built", Controller: panel.Controller{Kind: "tracking"}, Stores: []model.Store{{Hoist: &lift.Hoist{}}}}}}
	p, vs := webtest.Create(t, s, b.name, doc)
	here := page.VariantURL(p.ID, vs[0].ID) + "/hoist/0"
	sent, fields := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", here+"?depth=bench&all=1", nil).Body.String(), here)
	known := map[string]bool{}
	for _, f := range fields {
		known[f] = true
	}
	const at = "stores[0].hoist."
	rows := map[string]string{}
	for line := range strings.Lines(b.typed) {
		field, text, ok := strings.Cut(strings.TrimSpace(line), " =")
		if !ok {
			continue
		}
		text = strings.TrimSpace(text)
		if m := rowIndex.FindStringSubmatch(field); m != nil {
			rows[at+m[1]+form.RowsSuffix] = page.Itoa(int(m[2][0]-'0') + 1)
		} else if !known[at+field] {
			t.Fatalf("%s: the page has no field %s", b.name, field)
		}
		sent.Set(at+field, text)
	}
	for name, n := range rows {
		if !sent.Has(name) {
			t.Fatalf("%s: the page has no list %s", b.name, name)
		}
		sent.Set(name, n)
	}
	if w := webtest.Ask(s.Handler(), "POST", here, sent); w.Code != http.StatusSeeOther {
		t.Fatalf("%s: %d %s", b.name, w.Code, problemsOn(w.Body.String()))
	}
	body = webtest.Ask(s.Handler(), "GET", here+"?depth=bench&all=1", nil).Body.String()
	for line := range strings.Lines(b.typed) {
		if field, _, ok := strings.Cut(strings.TrimSpace(line), " ="); ok && !strings.Contains(body, `name="`+at+field+`"`) {
			t.Errorf("%s: the page has no field %s", b.name, field)
		}
	}
	v, err := s.Store.Variants(t.Context(), p.ID)
	if err != nil {
		t.Fatal(err)
	}
	return body, model.HoistOf(model.Ground{}.Evaluate(v[0].Value).Stores[0])
}

// problemsOn is what a refused page says on top.
func problemsOn(body string) string {
	at := strings.Index(body, `class="problems`)
	if at < 0 {
		at = 0
	}
	return plainOf(body[at:min(len(body), at+3000)])
}

// plainOf is the words of a page.
func plainOf(body string) string {
	return strings.Join(strings.Fields(html.UnescapeString(webtest.Tags.ReplaceAllString(body, " "))), " ")
}

// steady is what most of these builds have in common: a drive on the ground, one rope over one top pulley.
const steady = `
	rope.kind = polyester
	rope.diameter_m = 8 mm
	rope.breaking_load_n = 1100 kg
	rope.ending = figure_eight
	rope.outdoors = no
	reeving.rope_parts = 1
	reeving.lead_sheaves = 1
	reeving.sheave_efficiency = 87
	drum.diameter_m = 80 mm
	drum.width_m = 150 mm
	drum.flange_diameter_m = 130 mm
	drum.dead_wraps = 3
	travel_m = 3
	base.where = on_ground
	raise.feed = relay
	raise.voltage_v = 12
	machine.k_vs_rad = 0.0327
	machine.r_ohm = 0.346
	machine.i0_a = 0.336
	machine.j_kg_m2 = 2.1e-5 kg·m²
	machine.max_speed_rad_s = 5000 rpm
	train.stages[0].kind = box
	train.stages[0].ratio = 100
	train.stages[0].efficiency = 75
	train.stages[0].idle_torque_nm = 0.002 N·m
	lower.loads[0].kind = string
	lower.loads[0].threshold_v = 8
	lower.loads[0].slope_ohm = 0.5
	lower.loads[0].rated_current_a = 5
`

func TestBuilds(t *testing.T) {
	s := webtest.NewSite(t)
	for _, b := range amateurBuilds() {
		t.Run(b.name, func(t *testing.T) {
			body, r := b.enter(t, s)
			text := plainOf(body)
			if m := benchLink.FindStringSubmatch(body); m != nil { // one click away
				text += " " + plainOf(webtest.Ask(s.Handler(), "GET", m[1], nil).Body.String())
			}
			if os.Getenv("SHOW_BUILDS") != "" {
				t.Logf("%s: ready %s\n%s", b.name, r.Ready, text[strings.Index(text, "Lifted mass"):])
			}
			if string(r.Ready) != b.ready {
				t.Errorf("ready %q, want %q: %v", r.Ready, b.ready, r.Because)
			}
			for _, w := range b.says {
				if !strings.Contains(text, w) {
					t.Errorf("the page does not say %q", w)
				}
			}
			for _, pair := range strings.Fields(b.words) {
				id, want, _ := strings.Cut(pair, "=")
				if got := worstOf(r, id); string(got) != want {
					t.Errorf("%s is %q, want %q", id, got, want)
				}
			}
			if t.Failed() {
				for _, f := range r.Drive.Flags {
					t.Log(f.Bad, f.Path, f.Say)
				}
				for _, c := range r.Checks {
					t.Log(c.ID, "|", c.Part, "|", c.Word, "|", c.Say, c.Missing)
				}
				t.Logf("%+v\n%+v\n%+v", r.Drive.Raising, r.Drive.Lowering, r.Drive.LetGo)
			}
		})
	}
}

// worstOf is the worst word among the lines of an id.
func worstOf(r *model.HoistResult, id string) path.Word {
	for _, c := range r.Checks { // sorted
		if c.ID == id {
			return c.Word
		}
	}
	return "absent"
}
