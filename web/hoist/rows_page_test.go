package hoist_test

import (
	"fmt"
	"html"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web"
	"duskweight/web/form"
	"duskweight/web/formtest"
	"duskweight/web/hoist"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// rowsSite is the worked sample, with the address of its first hoist.
func rowsSite(t *testing.T) (s *web.Site, p store.Saved[model.Project], id int64, at string) {
	t.Helper()
	s = webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	return s, p, vs[0].ID, page.StoreURL(p.ID, vs[0].ID, 0, "hoist")
}

// taking posts a row; more are names and values.
func taking(t *testing.T, s *web.Site, id int64, at, kind, row string, more ...string) int {
	t.Helper()
	typed := url.Values{form.NameRevision: {strconv.FormatInt(webtest.Stored(t, s, id).Revision, 10)}, hoist.NameKind: {kind}, hoist.NameRow: {row}}
	for i := 0; i+1 < len(more); i += 2 {
		typed.Set(more[i], more[i+1])
	}
	return webtest.Ask(s.Handler(), "POST", at+"/take", typed).Code
}

// Every row of every kind is shown with its source and can be taken; one undo brings the design back.
func TestTakeEveryKind(t *testing.T) {
	s, p, id, at := rowsSite(t)
	for _, k := range catalog.Kinds() {
		here := webtest.Ask(s.Handler(), "GET", at+"/rows?kind="+k.Word, nil)
		body := here.Body.String()
		for _, wrong := range webtest.SoundPage(body) {
			t.Errorf("%s: %s", k.Word, wrong)
		}
		text := html.UnescapeString(webtest.Tags.ReplaceAllString(body, ""))
		for _, r := range k.Rows {
			if !strings.Contains(text, form.SentenceCase(r.Source)) || !strings.Contains(body, `value="`+r.ID+`"`) {
				t.Errorf("%s %s: row or source is not on the page", k.Word, r.ID)
			}
		}
		before := webtest.Stored(t, s, id)
		h := hoist.HoistOf(before)
		place := ""
		if places := k.Places(&h); len(places) > 0 {
			place = places[0].At
		}
		row := k.Rows[0]
		if code := taking(t, s, id, at, k.Word, row.ID, hoist.NameAt, place, catalog.AskVolume, "200 l", hoist.NameRead, map[bool]string{true: "yes"}[k.Word == "wear"]); code != http.StatusSeeOther {
			t.Errorf("%s %s: %d", k.Word, row.ID, code)
			continue
		}
		after := webtest.Stored(t, s, id)
		if !strings.HasPrefix(after.Said, "From the catalog: "+hoist.RowTitle(row, unit.Metric)+". ") {
			t.Errorf("%s: said %q", k.Word, after.Said)
		}
		if webtest.Ask(s.Handler(), "GET", at, nil).Code != http.StatusOK {
			t.Errorf("%s: the hoist's page is gone", k.Word)
		}
		steps, err := s.StepsOf(t.Context(), p.ID)
		if err != nil {
			t.Fatal(err)
		}
		if w := webtest.Ask(s.Handler(), "POST", page.ProjectURL(p.ID)+"/undo", url.Values{"seq": {steps.Undo.Seq}}); w.Code != http.StatusSeeOther {
			t.Fatalf("%s: undo %d", k.Word, w.Code)
		}
		if back := webtest.Stored(t, s, id); formtest.Dump(back.Value) != formtest.Dump(before.Value) {
			t.Errorf("%s: undo does not bring the design back", k.Word)
		}
	}
}

// A copied value carries its source; a strength that is read is the user's own; one that is neither is not known, and its
// check says so.
func TestTakeMarksAndStrength(t *testing.T) {
	s, _, id, at := rowsSite(t)
	const rope = "stores[0].hoist.rope."
	if code := taking(t, s, id, at, "rope", "polyester-three-strands-14-mm"); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	v := webtest.Stored(t, s, id)
	if h := hoist.HoistOf(v); h.Rope.BreakingLoad.Val < 28599 || h.Rope.BreakingLoad.Val > 28601 {
		t.Errorf("%v", h.Rope.BreakingLoad)
	}
	if o := v.Value.Origins[rope+"breaking_load_n"]; o.Kind != "catalog" || !strings.Contains(o.Source, "strength table of polyester rope") {
		t.Errorf("%+v", o)
	}
	if body := webtest.Ask(s.Handler(), "GET", at+"?part=rope", nil).Body.String(); !strings.Contains(body, "strength table of polyester rope") {
		t.Error("the source does not stand beside the value")
	}
	for _, c := range []struct {
		check string
		form  []string
	}{
		{"rope", []string{"rope", "nylon-three-strands-by-the-standard-16-mm"}},
		{"knot", []string{"rope", "nylon-three-strands-by-the-standard-16-mm"}},
		{"hanger", []string{"shackle", "1-2-inch", hoist.NameAt, "hanger"}},
		{"container", []string{"bag", "heavy-bag-for-many-trips-8-to-1"}},
		{"beam", []string{"timber", "softwood-c30", hoist.NameAt, "beam"}},
		{"post", []string{"timber", "softwood-c30", hoist.NameAt, "0"}},
		{"gear_tooth", []string{"teeth", "pla-printed", hoist.NameAt, "0"}},
		{"gear_tooth", []string{"teeth", "petg-printed", hoist.NameAt, "0"}},
		{"head_sheave", []string{"pulley", "fibre-rope-pulley-of-50-mm", hoist.NameAt, "0"}},
		{"shaft", []string{"steel", "s355", hoist.NameAt, "shaft"}},
	} {
		s, _, id, at := rowsSite(t)
		if w := hoist.WordOf(t, webtest.Stored(t, s, id).Value, c.check); w == path.NotKnown {
			t.Errorf("%s is not known before", c.check)
		}
		code := taking(t, s, id, at, c.form[0], c.form[1], c.form[2:]...)
		if c.check == "shaft" { // a row that gives a strength alone is not taken at all
			if code != http.StatusUnprocessableEntity {
				t.Errorf("%v: %d", c.form, code)
			}
			continue
		}
		if code != http.StatusSeeOther {
			t.Errorf("%v: %d", c.form, code)
			continue
		}
		if w := hoist.WordOf(t, webtest.Stored(t, s, id).Value, c.check); w != path.NotKnown {
			t.Errorf("%v: the check %s says %s", c.form, c.check, w)
		}
		if c.form[0] == "pulley" || c.form[0] == "bag" {
			continue // no row knows their label
		}
		if code := taking(t, s, id, at, c.form[0], c.form[1], append(c.form[2:], hoist.NameRead, "yes")...); code != http.StatusSeeOther {
			t.Errorf("%v: %d", c.form, code)
		}
		v := webtest.Stored(t, s, id).Value
		if w := hoist.WordOf(t, v, c.check); w == path.NotKnown && c.form[0] != "teeth" {
			t.Errorf("%v: read, and %s is still not known", c.form, c.check)
		}
		for path, o := range v.Origins {
			if strings.Contains(path, "breaking_load") || strings.Contains(path, "working_load") || strings.HasSuffix(path, ".class") || strings.Contains(path, "strength_pa") || strings.Contains(path, "yield") {
				t.Errorf("%v: %s is the user's own, not %+v", c.form, path, o)
			}
		}
	}
}

// A motor with its own gear moves the marks of the stages behind it.
func TestTakeMotorMovesMarks(t *testing.T) {
	s, _, id, at := rowsSite(t)
	if code := taking(t, s, id, at, "stage", "planetary-metal", hoist.NameAt, "1"); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	stage := func(i int) string { return fmt.Sprintf("stores[0].hoist.train.stages[%d].efficiency", i) }
	if o := webtest.Stored(t, s, id).Value.Origins; o[stage(1)].Kind != "typical" {
		t.Fatalf("%+v", o)
	}
	if code := taking(t, s, id, at, "motor", "car-wiper-motor-12-v-with-its-worm"); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	o := webtest.Stored(t, s, id).Value.Origins
	if o[stage(2)].Kind != "typical" || o[stage(1)].Kind != "" || !strings.Contains(o[stage(0)].Source, "motor") {
		t.Errorf("%+v", o)
	}
	if code := taking(t, s, id, at, "motor", "65-mm-motor-48-v"); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	v := webtest.Stored(t, s, id)
	if o := v.Value.Origins; o[stage(1)].Kind != "typical" || o[stage(2)].Kind != "" || o[stage(0)].Kind != "" || len(hoist.HoistOf(v).Train.Stages) != 4 {
		t.Errorf("%+v", o)
	}
	if o := v.Value.Origins["stores[0].hoist.machine.k_vs_rad"]; o.Kind != "catalog" {
		t.Errorf("a data sheet that was read: %+v", o)
	}
}

// What cannot be taken is said on the page, and nothing changes.
func TestTakeRefused(t *testing.T) {
	s, p, id, at := rowsSite(t)
	before := formtest.Dump(webtest.Stored(t, s, id))
	for _, c := range []struct {
		form []string
		code int
		say  string
	}{
		{[]string{"rope", ""}, 422, "Choose one."},
		{[]string{"rope", "gold-12-mm"}, 422, "Choose one."},
		{[]string{"gold", "x"}, 400, "no rows of that kind"},
		{[]string{"material", "concrete", hoist.NameAt, "mass"}, 422, "Give the volume."},
		{[]string{"material", "concrete", hoist.NameAt, "mass", catalog.AskVolume, "much"}, 422, "Volume"},
		{[]string{"stage", "planetary-metal", hoist.NameAt, "9"}, 422, "Choose where it goes."},
		{[]string{"stage", "planetary-metal", hoist.NameAt, "0", catalog.AskRatio, "0.5"}, 422, ""},
		{[]string{"wear", "polypropylene-worn-a-year-outdoors"}, 422, "only with your word"},
		{[]string{"shackle", "1-2-inch", hoist.NameAt, "eye"}, 422, "only with your word"},
		{[]string{"ending", "wire-rope-clips"}, 422, "for wire rope"},
		{[]string{"lamp", "white-lamp-of-20-ma", hoist.NameAt, "new", catalog.AskSeries, "0"}, 422, "1 to 1\u00a0000"},
		{[]string{"pulley", "fibre-rope-pulley-of-25-mm", hoist.NameAt, "new"}, 422, "pulleys"},
	} {
		typed := url.Values{form.NameRevision: {strconv.FormatInt(webtest.Stored(t, s, id).Revision, 10)}, hoist.NameKind: {c.form[0]}, hoist.NameRow: {c.form[1]}}
		for i := 2; i < len(c.form); i += 2 {
			typed.Set(c.form[i], c.form[i+1])
		}
		w := webtest.Ask(s.Handler(), "POST", at+"/take", typed)
		if w.Code != c.code || !strings.Contains(w.Body.String(), c.say) {
			t.Errorf("%v: %d, want %d with %q", c.form, w.Code, c.code, c.say)
		}
	}
	stale := url.Values{form.NameRevision: {"0"}, hoist.NameKind: {"rope"}, hoist.NameRow: {"polyester-three-strands-8-mm"}}
	if w := webtest.Ask(s.Handler(), "POST", at+"/take", stale); w.Code != http.StatusConflict {
		t.Errorf("a stale page: %d", w.Code)
	}
	if after := formtest.Dump(webtest.Stored(t, s, id)); after != before {
		t.Error("something changed")
	}
	for _, page := range []string{at + "/rows?kind=gold", page.StoreURL(p.ID, id, 1, "hoist") + "/rows", page.StoreURL(p.ID, id, 9, "hoist") + "/rows"} {
		if w := webtest.Ask(s.Handler(), "GET", page, nil); w.Code != http.StatusNotFound {
			t.Errorf("%s: %d", page, w.Code)
		}
	}
}

// Clips on fibre rope have no published share: the ending stays not known until the user gives one.
func TestClipsOnFibreRope(t *testing.T) {
	s, _, id, at := rowsSite(t)
	v := webtest.Stored(t, s, id).Value
	v.Stores[0].Hoist.Rope.Ending = "clips"
	v.Stores[0].Hoist.Rope.BreakingLoad = unit.Of[unit.Force](500e3)
	if w := hoist.WordOf(t, v, "knot"); w != path.NotKnown {
		t.Errorf("%s", w)
	}
	v.Stores[0].Hoist.Rope.KnotFactor = unit.Of[unit.Ratio](0.45)
	if w := hoist.WordOf(t, v, "knot"); w == path.NotKnown {
		t.Error("the user's own share is not used")
	}
	if code := taking(t, s, id, at, "ending", "fibre-rope-clips-or-clamps-on-fibre-rope"); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	if h := hoist.HoistOf(webtest.Stored(t, s, id)); h.Rope.Ending != "clips" || h.Rope.KnotFactor.Is {
		t.Errorf("%+v", h.Rope)
	}
}
