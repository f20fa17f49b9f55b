package crawl_test

import (
	"html"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// checkIDs is the closed list of what may break.
var checkIDs = strings.Fields(`rope knot head_sheave hanger beam post container redirect_sheave base_uplift base_sliding base_overturning base_board
	ground shaft cross_pin set_screw coupling drum_hub drum_capacity dead_wraps fleet_angle bend_ratio gear_tooth case_fasteners holds stops overhoist slack brake_catch`)

var howOpens = regexp.MustCompile(`(?s)(<p class="wants">(?:[^<]|</?a[^>]*>)*</p>)?\s*<details class="how" id="check-[a-z]+\d+-([a-z_]+)">(.*?)</details>`)

// Every check of every kind opens on its page to formula, inputs and sources; one that is not known names each input that
// is missing, by its label, with a link that leads to a field of the page, or says in words what cannot be known.
func TestEveryCheckOpens(t *testing.T) {
	s := webtest.NewSite(t)
	seen, open := map[string]bool{}, map[string]bool{}
	for name, change := range map[string]func(*lift.Hoist){
		"as it is": func(*lift.Hoist) {},
		"nothing":  func(h *lift.Hoist) { *h = lift.Hoist{} },
		"two pulleys, a set screw, a bag, a coupling": func(h *lift.Hoist) {
			h.Reeving.LeadSheaves, h.Drum.HubFit, h.Drum.Coupling = unit.Of[unit.Count](2), "set_screw", ""
			h.Container = lift.Container{Kind: "bag"}
			h.Structure.RestsOn, h.Structure.RestsOnOK, h.Base.Ground = "roof_truss", "", "timber_floor"
		},
		"posts, and a brake that nothing is known of": func(h *lift.Hoist) {
			h.Structure.Posts, h.Structure.Beam.Support = []lift.Post{{}}, "cantilever"
			h.Rope.Stiffness, h.Holds.BrakeDelay = unit.Known[unit.Force]{}, unit.Known[unit.Duration]{}
		},
		"on the wall, a key, holds without figures": func(h *lift.Hoist) {
			h.Base.Where, h.Drum.HubFit = "on_wall", "key"
			h.Holds.Holds = []lift.Hold{{Kind: "spring_brake"}, {Kind: "rated_prop"}}
			h.Holds.UpperStops = []lift.Stop{{Kind: "limit_switch"}, {Kind: "limit_switch"}}
		},
	} {
		doc := catalog.Sample()
		change(doc.Variants[2].Stores[0].Hoist)
		doc.Variants = doc.Variants[2:]
		p, vs := webtest.Create(t, s, name, doc)
		page := page.VariantURL(p.ID, vs[0].ID) + "/hoist/0?all=1&depth=bench"
		body := webtest.Ask(s.Handler(), "GET", page, nil).Body.String()
		checks := model.HoistOf(model.Ground{}.Evaluate(vs[0].Value).Stores[0]).Lines()
		opened := howOpens.FindAllStringSubmatch(body, -1)
		if len(opened) != len(checks) {
			t.Fatalf("%s: %d of %d checks open", name, len(opened), len(checks))
		}
		for i, c := range checks {
			seen[c.ID] = true
			how := opened[i][3]
			text := squashed(plainOf(how))
			if opened[i][2] != c.ID || !strings.Contains(text, squashed(c.Formula)) || !strings.Contains(text, squashed("Source: "+c.Source.String())) {
				t.Errorf("%s, %s, %s: formula or source is not behind it", name, c.ID, c.Part)
			}
			for _, in := range c.Inputs {
				if !strings.Contains(text, squashed(in.Name)) {
					t.Errorf("%s, %s: input %q is not behind it", name, c.Part, in.Name)
				}
			}
			for _, r := range c.Also {
				if !strings.Contains(text, squashed(r.String())) {
					t.Errorf("%s, %s: source %q is not behind it", name, c.Part, r)
				}
			}
			if c.Word == path.NotKnown {
				open[c.ID] = true
				namesWhatIsMissing(t, name, page, body, opened[i][1], c) // in the row itself
			}
		}
	}
	for _, id := range checkIDs {
		if !seen[id] {
			t.Errorf("no page shows %s", id)
		}
		if !open[id] && id != "set_screw" && id != "stops" { // a set screw alone and fewer than two stops are never in doubt
			t.Errorf("%s is nowhere not known", id)
		}
	}
}

// squashed leaves spaces out: links to the glossary stand inside of words.
func squashed(s string) string { return strings.Join(strings.Fields(s), "") }

var linkTo = regexp.MustCompile(`<a href="([^"]*)">([^<]*)</a>`)

func namesWhatIsMissing(t *testing.T, name, page, body, how string, c path.Check) {
	t.Helper()
	links := linkTo.FindAllStringSubmatch(how, -1)
	if len(links) != len(c.Missing) {
		t.Errorf("%s, %s: %d links for %v", name, c.Part, len(links), c.Missing)
		return
	}
	if len(c.Missing) == 0 && len(strings.Fields(c.Say.String())) < 5 {
		t.Errorf("%s, %s: not known, and nothing says why: %q", name, c.Part, c.Say)
	}
	for i, l := range links {
		at, anchor, _ := strings.Cut(html.UnescapeString(l[1]), "#")
		switch {
		case at != page:
			t.Errorf("%s, %s: %s leads to %s", name, c.Part, c.Missing[i], l[1])
		case anchor != "" && !strings.Contains(body, `id="`+anchor+`"`):
			t.Errorf("%s, %s: %s leads to #%s, which is not on the page", name, c.Part, c.Missing[i], anchor)
		case l[2] == "" || strings.Contains(l[2], "a value of this page"):
			t.Errorf("%s, %s: %s is called %q", name, c.Part, c.Missing[i], l[2])
		}
	}
}

// One figure of a check has one rounding: what the table of a page or of the sheet says is pulled and allowed, the check's own sentence
// says too, which the band, the list and the card tell. What is allowed is a strength that is there: 2.669 MPa of it are 2.66 MPa.
func TestCheckSaysItsFigures(t *testing.T) {
	docs := map[string]model.Document{"example": catalog.Sample(), "cabin": catalog.Cabin()}
	for _, plan := range webtest.UnsafePlans(t) {
		docs[plan.ID] = plan.Doc
	}
	seen := 0
	for name, doc := range docs {
		for _, v := range doc.Variants {
			for i := range v.Stores {
				h := v.HoistAt(i)
				if h == nil {
					continue
				}
				for _, c := range path.Checks(*h, lift.Compute(*h)) {
					for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
						one := page.CheckViews([]path.Check{c}, "", sys, nil, "")[0]
						if !c.Use.Is || one.Counted || !strings.Contains(one.Say, "allowed") {
							continue
						}
						seen++
						for _, figure := range []string{one.Pulls, one.May} {
							if !strings.Contains(one.Say, figure) {
								t.Errorf("%s, %s: the table says %s, the sentence %q", name, c.Part, figure, one.Say)
							}
						}
					}
				}
			}
		}
	}
	if seen < 1000 {
		t.Errorf("only %d checks", seen)
	}
	of := func(v float64) unit.Amount { return unit.Amount{Val: v, In: unit.Pascals, Is: true} }
	if got := page.CheckViews([]path.Check{{Demand: of(1e6), Capacity: of(2 * 2.669e6), Wanted: 2}}, "", unit.Metric, nil, "")[0]; got.May != "2.66"+unit.Space+"MPa" || got.Pulls != "1"+unit.Space+"MPa" {
		t.Errorf("%s of %s", got.Pulls, got.May)
	}
}

// A case prints in its own unit, whatever the unit of the line that it stands in: a bag's factor is no weight.
func TestCasesInTheirOwnUnit(t *testing.T) {
	of := func(in unit.Measure, v float64) unit.Amount { return unit.Amount{Val: v, In: in, Is: true} }
	c := path.Check{ID: "container", Demand: unit.Amount{In: unit.Newtons}, Cases: []path.Case{
		{Name: "working", Demand: of(unit.Newtons, 1000), Capacity: of(unit.Newtons, 2000), Wanted: 1},
		{Name: "factor", Demand: of(unit.Pieces, 1), Capacity: of(unit.Pieces, 6), Wanted: 5}}}
	v := page.CheckViews([]path.Check{c}, "", unit.Metric, nil, "")
	if got := v[0].Cases[1]; got[1] != "1" || got[2] != "6" {
		t.Errorf("a factor is printed as %q", got)
	}
	if got := v[0].Cases[0]; got[1] != unit.Loads.Format(1000, unit.Metric) {
		t.Errorf("a force is printed as %q", got)
	}
}
