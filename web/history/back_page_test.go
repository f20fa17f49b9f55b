package history_test

import (
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/formtest"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// An older revision is saved again by one button, as a change of its own that undo takes back. The newest has no button, nor has
// what is deleted; a number that is no change of the project is not found, and a project keeps its weather file.
func TestBackToHere(t *testing.T) {
	s := webtest.NewSite(t)
	h := s.Handler()
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	other, _ := webtest.Create(t, s, "other", catalog.Sample())
	first := formtest.Dump(vs[0].Value)
	for i := range 3 {
		v := webtest.Stored(t, s, vs[0].ID)
		v.Value.Stores[0].Hoist.Travel = unit.Of(unit.Length(1 + i))
		if _, err := s.Store.SaveVariant(t.Context(), v.ID, v.Value, store.Edit{Revision: v.Revision, Said: "higher"}, s.Now()); err != nil {
			t.Fatal(err)
		}
	}
	at := page.ProjectURL(p.ID)
	body := webtest.Ask(h, "GET", at+"/history", nil).Body.String()
	buttons := regexp.MustCompile(`/back"><input type="hidden" name="seq" value="(\d+)"`).FindAllStringSubmatch(body, -1)
	if len(buttons) != 3 { // of the variant that was saved three times all but the newest; the others have one revision
		t.Fatalf("%d buttons", len(buttons))
	}
	oldest := buttons[2][1]
	if w := webtest.Ask(h, "POST", page.ProjectURL(other.ID)+"/back", url.Values{"seq": {oldest}}); w.Code != http.StatusNotFound {
		t.Errorf("a change of another project: %d", w.Code)
	}
	for _, bad := range []string{"", "x", "-1", "0"} {
		if w := webtest.Ask(h, "POST", at+"/back", url.Values{"seq": {bad}}); w.Code != http.StatusBadRequest {
			t.Errorf("%q: %d", bad, w.Code)
		}
	}
	if w := webtest.Ask(h, "POST", at+"/back", url.Values{"seq": {oldest}}); w.Code != http.StatusSeeOther {
		t.Fatalf("back: %d %s", w.Code, w.Body)
	}
	now := webtest.Stored(t, s, vs[0].ID)
	if formtest.Dump(now.Value) != first || now.Revision != 5 {
		t.Errorf("revision %d is not the first", now.Revision)
	}
	if body := webtest.Ask(h, "GET", at+"/history", nil).Body.String(); !strings.Contains(body, "Undo: ") {
		t.Error("undo does not offer to take it back")
	}
}
