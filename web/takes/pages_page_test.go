package takes_test

import (
	"net/http"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/water"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// What keeps the year from being run is said once, not in a row for each thing that might be changed; where the year runs,
// every row says what is changed.
func TestWhatCannotBeTriedIsSaidOnce(t *testing.T) {
	s, doc := webtest.NewSite(t), catalog.Sample()
	doc.Variants[2].Stores = append(doc.Variants[2].Stores, model.Store{Water: &water.Water{}})
	p, vs := webtest.Create(t, s, "open", doc)
	ask := func(i int) string {
		w := webtest.Ask(s.Handler(), http.MethodGet, page.VariantURL(p.ID, vs[i].ID)+"/takes", nil)
		if w.Code != http.StatusOK {
			t.Fatal(w.Code)
		}
		return w.Body.String()
	}
	open := ask(2)
	if strings.Count(open, "Nothing can be tried yet: ") != 1 || strings.Contains(open, `<table class="takes">`) {
		t.Errorf("a year that cannot be run: %.1500s", webtest.Readable(open))
	}
	runs := ask(1)
	_, table, ok := strings.Cut(runs, `<table class="takes">`)
	if table, _, _ = strings.Cut(table, "</table>"); !ok || strings.Contains(table, `<th scope="row"></th>`) {
		t.Errorf("a row does not say what is changed: %s", table)
	}
}
