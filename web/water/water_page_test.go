package water_test

import (
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/model/water"
	"duskweight/web/form"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// A store of water is added by its button, filled on its page, and its answer stands there in the reader's units: 10 m³ at 12 m
// are 1 174 680 J, 326 Wh, of which 127 come back; 11.66 m are left over the turbine.
func TestWaterPage(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "water", catalog.Sample())
	h, at := s.Handler(), page.VariantURL(p.ID, vs[0].ID)
	n := len(vs[0].Value.Stores)
	sent := url.Values{form.NameRevision: {strconv.FormatInt(vs[0].Revision, 10)}, form.NameDo: {"add:water"}}
	if got := webtest.Ask(h, "POST", at+"/stores", sent); got.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", got.Code, got.Body)
	}
	here := page.StoreURL(p.ID, vs[0].ID, n, "water")
	body := webtest.Ask(h, "GET", here, nil).Body.String()
	if wrong := webtest.SoundPage(body); len(wrong) > 0 {
		t.Error(wrong)
	}
	if text := strings.Join(strings.Fields(webtest.Readable(body)), " "); !strings.Contains(text, "how much water it holds is missing. Water in the tank") {
		t.Errorf("an empty store does not say what is missing, with the field of it: %s", text)
	}
	sent, _ = webtest.FormAt(t, body, here)
	path := model.WaterPath(n) + "."
	for field, v := range map[string]string{"volume_m3": "10", "head_m": "12", "pump.rated_w": "200", "pump.efficiency": "40 %", "turbine.flow_m3_s": "72", "turbine.efficiency": "40 %",
		"pipe.length_m": "40", "pipe.inner_m": "50", "covered": "no", "stands_on": "tower", "lower_water": "tank", "surface_m2": "5"} {
		sent.Set(path+field, v)
	}
	if got := webtest.Ask(h, "POST", here, sent); got.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", got.Code, webtest.Readable(got.Body.String()))
	}
	body = webtest.Ask(h, "GET", here, nil).Body.String()
	if wrong := webtest.SoundPage(body); len(wrong) > 0 {
		t.Error(wrong)
	}
	text := webtest.Readable(body)
	for _, want := range []string{"326 Wh", "A full tank gives 130 Wh: 10 000 kg of water at 12 m.", "You get back 15 %", "Children drown in open water", "structural engineer", "54.8 W", "The person is 1.7 m tall"} {
		if !strings.Contains(strings.ReplaceAll(text, "\u202f", " "), want) {
			t.Errorf("%q is not on the page: %s", want, text)
		}
	}
	for _, want := range []string{"<title>Lifted water to scale", "<desc>The upper tank"} {
		if !strings.Contains(body, want) {
			t.Errorf("the drawing has no %s", want)
		}
	}
	if got := webtest.Ask(h, "GET", here+"/drawing.csv", nil); got.Code != http.StatusOK || !strings.Contains(got.Body.String(), "12") {
		t.Errorf("%d %s", got.Code, got.Body)
	}
	if got := webtest.Stored(t, s, vs[0].ID).Value.Stores[n].Water; got.Turbine.Flow != unit.Of[unit.Flow](0.0012) || got.Stands != water.OnTower {
		t.Errorf("%+v", got)
	}
}
