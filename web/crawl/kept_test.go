package crawl_test

import (
	"reflect"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/web/webtest"
)

// Pages share what a saved variant comes to. After every page of the worked example was asked for, in metric and in imperial
// units, it still is what the model makes of the variant anew.
func TestPagesLeaveTheAnswerAsItIs(t *testing.T) {
	t.Parallel()
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	for _, units := range []string{"metric", "imperial"} {
		webtest.Ask(s.Handler(), "POST", "/settings", map[string][]string{"units": {units}})
		for _, url := range webtest.PagesOf(p, vs) {
			webtest.Ask(s.Handler(), "GET", url, nil)
		}
	}
	fresh := model.Prepare(p.Value).At(reason.Today(s.Now()))
	for _, v := range vs {
		if !reflect.DeepEqual(s.Results.Of(p, v), fresh.Evaluate(v.Value)) {
			t.Errorf("%s: a page changed the answer", v.Value.Name)
		}
	}
}
