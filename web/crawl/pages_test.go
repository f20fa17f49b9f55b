package crawl_test

import (
	"fmt"
	"net/http"
	"net/url"
	"reflect"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/sun"
	"duskweight/web/form"
	"duskweight/web/formtest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// eachText calls do with every text of v that is no word of a closed list.
func eachText(v reflect.Value, do func(reflect.Value), tag reflect.StructTag) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			eachText(v.Elem(), do, tag)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			eachText(v.Index(i), do, tag)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				eachText(v.Field(i), do, f.Tag)
			}
		}
	case reflect.String:
		if tag.Get("enum") == "" {
			do(v)
		}
	}
}

// numbered sets every number of a document to what its range allows nearest to want, one at a time kept only where the
// document can still be taken.
func numbered(doc model.Document, want float64) model.Document {
	set := func(v any) {
		webtest.EachKnown(reflect.ValueOf(v), func(value, is reflect.Value, tag reflect.StructTag) {
			if !is.Bool() || strings.Contains(tag.Get("say"), "teeth") || strings.Contains(tag.Get("say"), "Teeth") {
				return
			}
			old := reflect.ValueOf(value.Interface())
			low, high, open := rangeOf(tag.Get("range"))
			x := min(max(want, low), high)
			if open && x <= low {
				return
			}
			if value.CanInt() {
				value.SetInt(int64(x))
			} else {
				value.SetFloat(x)
			}
			if len(model.Check(doc)) > 0 {
				value.Set(old)
			}
		}, "")
	}
	for i := range doc.Variants {
		set(&doc.Variants[i])
	}
	set(&doc.Project.Load)
	set(&doc.Project.Money)
	return doc
}

// rangeOf reads a range tag; open says whether its lower end is outside.
func rangeOf(tag string) (low, high float64, open bool) {
	low, high = -1e6, 1e6
	var a, b string
	if inner := strings.Trim(tag, "[]()"); inner != "" {
		a, b, _ = strings.Cut(inner, ",")
		_, _ = fmt.Sscan(a, &low)
		_, _ = fmt.Sscan(b, &high)
	}
	return low, high, strings.HasPrefix(tag, "(")
}

// pageDocuments are documents at the edges of what can be stored.
func pageDocuments(t *testing.T) map[string]model.Document {
	t.Helper()
	blank := func(stores ...model.Store) model.Document {
		return model.Document{Edition: 1, Project: model.Project{Name: "New", Place: sun.Place{Sky: "described"}},
			Variants: []model.Variant{{Name: "First", Controller: panel.Controller{Kind: "tracking"}, Stores: stores}}}
	}
	rows := blank(model.Store{Hoist: &lift.Hoist{Mass: make([]lift.Piece, 2), Reeving: lift.Reeving{Sheaves: make([]lift.Sheave, 2)}, Train: lift.Train{Stages: make([]lift.Stage, 2)}, Lower: lift.Lower{Loads: make([]lift.DCLoad, 2)}}})
	rows.Variants[0].Panels = make([]panel.Array, 2)
	rows.Project.Load.Standing = make([]load.Standing, 2)
	many := blank()
	for i := range 39 {
		v := catalog.Sample().Variants[i%3]
		v.Name = fmt.Sprintf("Variant %d", i)
		many.Variants = append(many.Variants, v)
	}
	many.Project = catalog.Sample().Project
	named := func(name string) model.Document {
		doc := catalog.Sample()
		eachText(reflect.ValueOf(&doc.Variants).Elem(), func(v reflect.Value) { v.SetString(name) }, "")
		eachText(reflect.ValueOf(&doc.Project.Load).Elem(), func(v reflect.Value) { v.SetString(name) }, "")
		doc.Project.Name, doc.Project.Place.Name = name, name
		return doc
	}
	return map[string]model.Document{
		"no variant":     {Edition: 1, Project: model.Project{Name: "New", Place: sun.Place{Sky: "described"}}, Variants: []model.Variant{}},
		"blank":          blank(),
		"blank stores":   blank(model.Store{Hoist: &lift.Hoist{}}, model.Store{Cells: &cell.Bank{Kind: "lfp", Role: "night"}}),
		"blank rows":     rows,
		"sample":         catalog.Sample(),
		"huge":           numbered(catalog.Sample(), 1e9),
		"tiny":           numbered(catalog.Sample(), 0),
		"heavy and high": numbered(catalog.Sample(), 1000),
		"one long word":  named(webtest.OneWord),
		"many words":     named(webtest.Novel),
		"tags":           named(`<script>alert("1")</script> & </textarea> 🪨`),
		"forty variants": many,
		"ones":           numbered(catalog.Sample(), 1),
	}
}

// Every page of every document at the edges: there, whole, and without a word that only a programmer reads.
func TestEveryPage(t *testing.T) {
	t.Parallel()
	s := webtest.NewSite(t)
	docs := pageDocuments(t)
	names := make([]string, 0, len(docs))
	for name := range docs {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		p, vs := webtest.Create(t, s, name, docs[name])
		for _, units := range []string{"metric", "imperial"} {
			if w := webtest.Ask(s.Handler(), "POST", "/settings", url.Values{"units": {units}, "currency": {"EUR"}}); w.Code >= 400 {
				t.Fatal(w.Code)
			}
			if units == "imperial" && name != "sample" && name != "blank stores" && name != "huge" {
				continue
			}
			some := vs
			if name != "sample" && len(vs) > 1 { // with everything in it
				some = vs[2:3]
			}
			for _, page := range webtest.PagesOf(p, some) {
				w := webtest.Ask(s.Handler(), "GET", page, nil)
				if w.Code != http.StatusOK {
					t.Errorf("%s, %s: %d", name, page, w.Code)
					continue
				}
				for _, wrong := range webtest.SoundPage(w.Body.String()) {
					t.Errorf("%s, %s, %s: %s", name, units, page, wrong)
				}
			}
		}
	}
	for _, page := range []string{"/", "/start", "/settings", "/help", "/help/words", "/help/hoist"} {
		for _, wrong := range webtest.SoundPage(webtest.Ask(s.Handler(), "GET", page, nil).Body.String()) {
			t.Errorf("%s: %s", page, wrong)
		}
	}
}

// What webtest.SoundPage looks for is found.
func TestSoundPageFinds(t *testing.T) {
	whole := `<title>A</title><h1>A</h1><label for="a">A</label><input id="a" name="stores[0].x"><label>B <input name="b"></label><input type="hidden" name="c">`
	if wrong := webtest.SoundPage(whole); len(wrong) > 0 {
		t.Errorf("a whole page: %v", wrong)
	}
	for _, bad := range []string{`<h1>B</h1>`, `<p>NaN m</p>`, `<p>+Inf</p>`, `<p>%!d(string=x)</p>`, `<p>&lt;nil&gt;</p>`, `<p>stores[0].hoist is empty</p>`, `<p style="x">a</p>`, `<input name="d">`, `<svg><text>NaN</text></svg>`, `<select id="q">`} {
		if len(webtest.SoundPage(whole+bad)) == 0 {
			t.Errorf("%s is not found", bad)
		}
	}
	if len(webtest.SoundPage(`<h1>A</h1>`)) == 0 {
		t.Error("a page without title is not found")
	}
}

// nasty are texts that people and programs put into fields.
var nasty = []string{"0", "-1", "-0", "1e9", "1e999", "NaN", "Inf", "", " ", "38 kg", "1,5", "1.000.000,5", "0x10", strings.Repeat("A novel. ", 555), "🪨⚖️", `<script>alert("1")</script>`, "a\x00b", "\xff\xfe", "%d%s%!", "../../etc", "\u202ereversed"}

// Nasty texts in every field of every form of the sample, alone and all at once: taken or refused, never a failure; a
// refused form changes nothing, and what was typed is there again, also after a restart.
func TestNastyTexts(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	at := page.VariantURL(p.ID, vs[2].ID)
	pages := []string{page.ProjectURL(p.ID) + "/place?all=1", page.ProjectURL(p.ID) + "/load?all=1", page.ProjectURL(p.ID) + "/money", page.ProjectURL(p.ID) + "/shelf?all=1", at, at + "/parts", at + "/hoist/0?depth=bench&all=1", at + "/cells/1?all=1"}
	things := func() string {
		project, err := s.Store.Project(t.Context(), p.ID)
		if err != nil {
			t.Fatal(err)
		}
		return formtest.Dump(project) + formtest.Dump(webtest.Stored(t, s, vs[2].ID))
	}
	var kept [][3]string // page, field, text
	for _, page := range pages {
		sent, fields := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", page, nil).Body.String(), page)
		saved, refusedOnes := 0, 0
		try := func(change map[string]string) int {
			typed := url.Values{}
			for k, v := range sent {
				typed[k] = v
			}
			for k, v := range change {
				typed.Set(k, v)
			}
			before := things()
			w := webtest.Ask(s.Handler(), "POST", page, typed)
			switch w.Code {
			case http.StatusSeeOther:
				saved++
				undone := webtest.Ask(s.Handler(), "GET", page, nil)
				if undone.Code != http.StatusOK {
					t.Errorf("%s: after %.60q: %d", page, change, undone.Code)
				}
				sent, _ = webtest.FormAt(t, undone.Body.String(), page)
				for k, v := range typed { // back to what it was, for the next one
					if _, changed := change[k]; !changed && k != form.NameRevision {
						sent[k] = v
					}
				}
			case http.StatusUnprocessableEntity:
				refusedOnes++
				if after := things(); after != before {
					t.Errorf("%s: refused %.80q and still saved something", page, change)
				}
			default:
				t.Errorf("%s: %.80q: %d", page, change, w.Code)
			}
			return w.Code
		}
		few := 1 + len(fields)/20 // a long form takes several at once, each text in turn
		for i := 0; i < len(fields); i += few {
			change := map[string]string{}
			for _, field := range fields[i:min(i+few, len(fields))] {
				change[field] = nasty[i/few%len(nasty)]
			}
			try(change)
		}
		for _, text := range nasty {
			all := map[string]string{}
			for _, field := range fields[:min(len(fields), 1+600_000/(4+len(text))/2)] { // what is larger than a form may be is refused unread
				all[field] = text
			}
			try(all)
		}
		if saved == 0 || refusedOnes == 0 {
			t.Errorf("%s: %d saved and %d refused; both should happen", page, saved, refusedOnes)
		}
		number := fields[slices.IndexFunc(fields, func(f string) bool {
			return strings.HasSuffix(f, "_w") || strings.HasSuffix(f, "_rad") || strings.HasSuffix(f, "_m") || strings.HasSuffix(f, "_v") || strings.HasSuffix(f, ".price") || strings.HasSuffix(f, "_year")
		})]
		text := `38 <kg> "of" stone`
		if code := try(map[string]string{number: text}); code != http.StatusUnprocessableEntity {
			t.Errorf("%s: %q in %s: %d", page, text, number, code)
		}
		kept = append(kept, [3]string{page, number, text})
		if !webtest.TypedBack(webtest.Ask(s.Handler(), "GET", page, nil).Body.String(), number, text) {
			t.Errorf("%s: the refused text of %s does not come back", page, number)
		}
	}
	webtest.Restart(t, s)
	for _, k := range kept {
		w := webtest.Ask(s.Handler(), "GET", k[0], nil)
		if w.Code != http.StatusOK || !webtest.TypedBack(w.Body.String(), k[1], k[2]) {
			t.Errorf("%s: after a restart the refused text of %s does not come back (%d)", k[0], k[1], w.Code)
		}
	}
}
