package page_test

import (
	"encoding/json"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/formtest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

func TestSaveThenShow(t *testing.T) {
	s := webtest.NewSite(t)
	mux, id := webtest.PanelSite(t, s)
	typed := webtest.OpenForm(t, s, id)
	typed.Set("panels[0].count", "5")
	w := webtest.Ask(mux, "POST", "/panels", typed)
	if w.Code != http.StatusSeeOther || w.Header().Get("Location") != "/panels" {
		t.Fatalf("%d %s", w.Code, w.Header().Get("Location"))
	}
	v := webtest.Stored(t, s, id)
	if v.Value.Panels[0].Count.Val != 5 || !strings.HasPrefix(v.Said, "Group of panels 1, How many: ") || !strings.HasSuffix(v.Said, "→ 5") {
		t.Errorf("%v, said %q", v.Value.Panels[0].Count, v.Said)
	}
	if body := webtest.Ask(mux, "GET", "/panels", nil).Body.String(); !strings.Contains(body, `value="5"`) || strings.Contains(body, "Error:") {
		t.Error("the page does not show what was saved")
	}
}

// A refused form changes nothing, comes back as typed with 422, and its texts are still there after a restart.
func TestRefusedIsKept(t *testing.T) {
	s := webtest.NewSite(t)
	mux, id := webtest.PanelSite(t, s)
	before := formtest.Dump(webtest.Stored(t, s, id))
	typed := webtest.OpenForm(t, s, id)
	typed.Set("panels[0].count", "<two>")
	typed.Set("panels[0].panel_w", "6,0 V")
	typed.Set("name", "A good name")
	typed.Set(form.NameDo, "add:panels")
	w := webtest.Ask(mux, "POST", "/panels", typed)
	body := w.Body.String()
	if w.Code != http.StatusUnprocessableEntity {
		t.Fatalf("%d, want 422", w.Code)
	}
	for _, want := range []string{"<title>Error: ", `value="&lt;two&gt;"`, `value="6,0 V"`, `aria-invalid="true"`, `href="#f-panels-0-count"`, `id="f-panels-0-count"`, "2 things cannot be taken", `id="f-panels-1-name"`} {
		if !strings.Contains(body, want) {
			t.Errorf("%q is not on the page", want)
		}
	}
	if after := formtest.Dump(webtest.Stored(t, s, id)); after != before {
		t.Errorf("the design changed:\n%s\n%s", before, after)
	}

	webtest.Restart(t, s)
	mux = webtest.PanelMux(s, id)
	body = webtest.Ask(mux, "GET", "/panels", nil).Body.String()
	for _, want := range []string{`value="&lt;two&gt;"`, `value="6,0 V"`, `value="A good name"`, "2 things cannot be taken", `id="f-panels-1-name"`} {
		if !strings.Contains(body, want) {
			t.Errorf("after a restart: %q is not on the page", want)
		}
	}

	typed.Del(form.NameDo)
	typed.Set("panels[]", "1")
	typed.Set("panels[0].count", "2")
	typed.Set("panels[0].panel_w", "60")
	if w := webtest.Ask(mux, "POST", "/panels", typed); w.Code != http.StatusSeeOther {
		t.Fatalf("mended: %d %s", w.Code, w.Body)
	}
	if drafts, err := s.Store.Drafts(t.Context(), store.Thing{Kind: store.VariantKind, ID: id}); err != nil || len(drafts) > 0 {
		t.Errorf("drafts are left: %v %v", drafts, err)
	}
	if got := webtest.Stored(t, s, id).Value; got.Name != "A good name" || got.Panels[0].Power.Val != 60 {
		t.Errorf("%+v", got)
	}
}

// A text that was refused and then put back as it was is no longer kept.
func TestDraftIsForgotten(t *testing.T) {
	s := webtest.NewSite(t)
	mux, id := webtest.PanelSite(t, s)
	typed := webtest.OpenForm(t, s, id)
	typed.Set("panels[0].count", "x")
	webtest.Ask(mux, "POST", "/panels", typed)
	typed = webtest.OpenForm(t, s, id)
	typed.Set("panels[0].panel_w", "y")
	webtest.Ask(mux, "POST", "/panels", typed)
	drafts, err := s.Store.Drafts(t.Context(), store.Thing{Kind: store.VariantKind, ID: id})
	if err != nil || len(drafts) != 1 || drafts["panels[0].panel_w"] != "y" {
		t.Errorf("%v %v", drafts, err)
	}
}

// Two pages on one variant: the later save gets a page with both versions, and nothing is overwritten.
func TestStaleSave(t *testing.T) {
	s := webtest.NewSite(t)
	mux, id := webtest.PanelSite(t, s)
	one, two := webtest.OpenForm(t, s, id), webtest.OpenForm(t, s, id)
	one.Set("panels[0].count", "7")
	two.Set("panels[0].count", "9")
	if w := webtest.Ask(mux, "POST", "/panels", one); w.Code != http.StatusSeeOther {
		t.Fatal(w.Code)
	}
	w := webtest.Ask(mux, "POST", "/panels", two)
	body := w.Body.String()
	if w.Code != http.StatusConflict || !strings.Contains(body, "<td>7</td>") || !strings.Contains(body, "<td>9</td>") || !strings.Contains(body, `href="/panels"`) {
		t.Errorf("%d %s", w.Code, body)
	}
	if got := webtest.Stored(t, s, id).Value.Panels[0].Count.Val; got != 7 {
		t.Errorf("%d was saved over 7", got)
	}
	if w := webtest.Ask(mux, "POST", "/panels", two, "Accept", "application/json"); w.Code != http.StatusConflict || !json.Valid(w.Body.Bytes()) {
		t.Errorf("to a script: %d %s", w.Code, w.Body)
	}
}

func TestAutosave(t *testing.T) {
	s := webtest.NewSite(t)
	mux, id := webtest.PanelSite(t, s)
	typed := webtest.OpenForm(t, s, id)
	typed.Set("panels[0].count", "4")
	w := webtest.Ask(mux, "POST", "/panels", typed, "Accept", "application/json")
	var got struct {
		Revision int64
		Say      string
	}
	if err := json.Unmarshal(w.Body.Bytes(), &got); err != nil || w.Code != http.StatusOK || got.Revision != webtest.Stored(t, s, id).Revision {
		t.Fatalf("%d %s %v", w.Code, w.Body, err)
	}
	typed.Set(form.NameRevision, strconv.FormatInt(got.Revision, 10))
	typed.Set("panels[0].count", "bad")
	if w := webtest.Ask(mux, "POST", "/panels", typed, "Accept", "application/json"); w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), `"id":"`+form.FieldID("panels[0].count")+`"`) {
		t.Errorf("%d %s", w.Code, w.Body)
	}
}

// Trying computes and saves nothing, with scripts and without.
func TestTry(t *testing.T) {
	s := webtest.NewSite(t)
	mux, id := webtest.PanelSite(t, s)
	before := formtest.Dump(webtest.Stored(t, s, id))
	typed := webtest.OpenForm(t, s, id)
	typed.Set("name", "tried")
	typed.Set("panels[]", "2")
	if w := webtest.Ask(mux, "POST", "/panels/try", typed, "X-Part", "results"); w.Code != http.StatusOK || !strings.HasPrefix(w.Body.String(), "<p data-headline>2 groups of tried") {
		t.Errorf("%d %s", w.Code, w.Body)
	}
	if body := webtest.Ask(mux, "POST", "/panels/try", typed).Body.String(); !strings.Contains(body, "2 groups of tried") || !strings.Contains(body, "not saved yet") || !strings.Contains(body, `value="tried"`) {
		t.Error("without scripts the page does not show the answer for what was typed")
	}
	typed.Set("panels[0].count", "x")
	if w := webtest.Ask(mux, "POST", "/panels/try", typed, "X-Part", "results"); w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), "f-panels-0-count") {
		t.Errorf("%d %s", w.Code, w.Body)
	}
	w := webtest.Ask(mux, "POST", "/panels/try", typed)
	if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), `class="stale"`) || strings.Contains(w.Body.String(), "groups of tried") {
		t.Errorf("%d: the answer of before is not shown greyed", w.Code)
	}
	if after := formtest.Dump(webtest.Stored(t, s, id)); after != before {
		t.Error("trying saved something")
	}
}

func TestFormWithoutRevision(t *testing.T) {
	s := webtest.NewSite(t)
	mux, id := webtest.PanelSite(t, s)
	for _, revision := range []string{"", "x", "1e9", "-"} {
		typed := webtest.OpenForm(t, s, id)
		typed.Set(form.NameRevision, revision)
		if w := webtest.Ask(mux, "POST", "/panels", typed); w.Code != http.StatusBadRequest {
			t.Errorf("%q: %d, want 400", revision, w.Code)
		}
	}
}

// A form that is sent back as it came changes nothing: no step of the history, on any page of the sample.
func TestUnchangedPagesAddNoStep(t *testing.T) {
	s := webtest.NewSite(t)
	webtest.Ask(s.Handler(), "POST", "/sample", url.Values{})
	for _, at := range []string{
		"/projects/1/place?all=1", "/projects/1/place?part=means", "/projects/1/place?part=climate", "/projects/1/place?part=where", "/projects/1/load?all=1", "/projects/1/load?part=standing", "/projects/1/money", "/projects/1/shelf?all=1", "/projects/1/variants/1", "/projects/1/variants/2", "/projects/1/variants/3",
		"/projects/1/variants/1/hoist/0", "/projects/1/variants/2/cells/0", "/projects/1/variants/1/parts", "/projects/1/variants/1/trials/0?all=1", "/projects/1/variants/1/trials/0?part=least",
	} {
		before, _ := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", at, nil).Body.String(), at)
		w := webtest.Ask(s.Handler(), "POST", at, before)
		after, _ := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", at, nil).Body.String(), at)
		if was, is := before.Get(form.NameRevision), after.Get(form.NameRevision); w.Code != http.StatusSeeOther || is != was {
			t.Errorf("%s: status %d, revision %s after %s", at, w.Code, is, was)
		}
	}
}

// A form of which one field is refused saves nothing. The page says of each changed field what is saved, which is what was
// there before, in the answer and when the page is opened again; a script is told which fields are refused, and why.
func TestSavedIsSaved(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	at := page.VariantURL(p.ID, vs[0].ID)
	const power, count = "panels[0].panel_w", "panels[0].count"
	sent, _ := webtest.FormAt(t, webtest.Ask(s.Handler(), "GET", at, nil).Body.String(), at)
	was := sent.Get(power)
	sent.Set(power, "0.3105 kW")
	sent.Set(count, "many")
	for name, body := range map[string]string{"the answer": webtest.Ask(s.Handler(), "POST", at, sent).Body.String(), "the page again": webtest.Ask(s.Handler(), "GET", at, nil).Body.String()} {
		text := webtest.Readable(body)
		if strings.Contains(text, "Saved: 310") || !strings.Contains(text, "Saved: "+was+" W") {
			t.Errorf("%s does not say that %s W is saved", name, was)
		}
		if !strings.Contains(body, `value="0.3105 kW"`) {
			t.Errorf("%s does not keep what was typed", name)
		}
	}
	w := webtest.Ask(s.Handler(), "POST", at, sent, "Accept", "application/json")
	var got struct {
		Problems []struct{ ID, Label, Say string }
	}
	if err := json.Unmarshal(w.Body.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	if w.Code != http.StatusUnprocessableEntity || len(got.Problems) != 1 || got.Problems[0].ID != form.FieldID(count) || !strings.HasPrefix(got.Problems[0].Say, "This is not a number.") {
		t.Errorf("%d, %+v", w.Code, got)
	}
}
