package compare_test

import (
	"net/http"
	"net/url"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// One input of one variant is written into another as one change, and everything else stays. A strength, a variant that changed meanwhile, and a part that is not there are refused, and then nothing is changed.
func TestOneInputIsCopied(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	p, vs := webtest.Create(t, s, "Copy", doc)
	at := page.ProjectURL(p.ID) + "/compare"
	body := webtest.Ask(s.Handler(), http.MethodGet, at, nil).Body.String()
	_, form, ok := strings.Cut(body, `id="copy-one"`)
	form, _, _ = strings.Cut(form, "</details>")
	if !ok || !strings.Contains(form, `value="Battery/autonomy_days"`) {
		t.Fatalf("no form that copies: %.600s", form)
	}
	for _, name := range []string{"hanger_working_load_n", "breaking_load_n"} {
		if strings.Contains(form, name) {
			t.Errorf("%s is offered", name)
		}
	}
	sent := url.Values{"input": {"Battery/autonomy_days"}}
	for _, m := range regexp.MustCompile(`name="(revision-\d+)" value="(\d+)"`).FindAllStringSubmatch(form, -1) {
		sent.Set(m[1], m[2])
	}
	from, to := vs[1], vs[2]
	sent.Set("from", page.Itoa(int(from.ID)))
	sent.Set("to", page.Itoa(int(to.ID)))
	if w := webtest.Ask(s.Handler(), http.MethodPost, at+"/copy", sent); w.Code != http.StatusSeeOther {
		t.Fatal(w.Code, w.Body.String())
	}
	now, err := s.Store.Variant(t.Context(), to.ID)
	if err != nil || now.Revision != to.Revision+1 {
		t.Fatal(err, now.Revision)
	}
	want := document.Clone(to.Value)
	want.Stores[1].Cells.Autonomy = from.Value.Stores[0].Cells.Autonomy
	if !want.Stores[1].Cells.Autonomy.Is || !reflect.DeepEqual(now.Value.Stores, want.Stores) {
		t.Errorf("the copy has %+v", now.Value.Stores[1].Cells)
	}
	for name, wrong := range map[string]url.Values{
		"changed meanwhile":   sent,
		"a strength":          {"input": {"Lifted mass/structure.hanger_working_load_n"}, "from": {page.Itoa(int(to.ID))}, "to": {page.Itoa(int(vs[0].ID))}, "revision-" + page.Itoa(int(vs[0].ID)): {"1"}},
		"no such part":        {"input": {"Lifted mass/travel_m"}, "from": {page.Itoa(int(vs[0].ID))}, "to": {page.Itoa(int(from.ID))}, "revision-" + page.Itoa(int(from.ID)): {"1"}},
		"into itself":         {"input": {"Battery/autonomy_days"}, "from": {page.Itoa(int(from.ID))}, "to": {page.Itoa(int(from.ID))}},
		"nothing of the name": {"input": {"Battery/nothing"}, "from": {page.Itoa(int(from.ID))}, "to": {page.Itoa(int(vs[0].ID))}, "revision-" + page.Itoa(int(vs[0].ID)): {"1"}},
	} {
		if w := webtest.Ask(s.Handler(), http.MethodPost, at+"/copy", wrong); w.Code < 400 || w.Code >= 500 {
			t.Errorf("%s: %d", name, w.Code)
		}
	}
	for _, v := range []int{0, 1} {
		if now, err := s.Store.Variant(t.Context(), vs[v].ID); err != nil || now.Revision != vs[v].Revision {
			t.Errorf("variant %d was changed: %v", v, err)
		}
	}
}
