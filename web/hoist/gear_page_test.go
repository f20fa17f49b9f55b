package hoist_test

import (
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/hoist"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// A gearbox on the motor's label that is not in the train is put there with one button: it is the first stage, its efficiency
// is not known, and the motor page offers it no more. A stale page is told so.
func TestLabelGearIntoTrain(t *testing.T) {
	s := webtest.NewSite(t)
	doc := catalog.Sample()
	m := &doc.Variants[0].Stores[0].Hoist.Machine
	m.SheetVolts, m.SheetSpeed, m.SheetGear = unit.Of(unit.Voltage(12)), unit.Of(unit.AngularSpeed(10)), unit.Of(unit.Ratio(37))
	p, vs := webtest.Create(t, s, "sample", doc)
	at := page.StoreURL(p.ID, vs[0].ID, 0, "hoist")
	offered := func() bool {
		return strings.Contains(webtest.Ask(s.Handler(), "GET", at+"/motor", nil).Body.String(), "Put the gearbox into the train")
	}
	put := func(revision int64) int {
		return webtest.Ask(s.Handler(), "POST", at+"/gear", url.Values{form.NameRevision: {strconv.FormatInt(revision, 10)}}).Code
	}
	if !offered() {
		t.Fatal("not offered")
	}
	before := webtest.Stored(t, s, vs[0].ID)
	if code := put(before.Revision + 1); code != http.StatusConflict {
		t.Errorf("a stale page: %d", code)
	}
	if code := put(before.Revision); code != http.StatusSeeOther {
		t.Fatalf("%d", code)
	}
	was, is := hoist.HoistOf(before), hoist.HoistOf(webtest.Stored(t, s, vs[0].ID))
	first := is.Train.Stages[0]
	if len(is.Train.Stages) != len(was.Train.Stages)+1 || first.Kind != lift.StageBox || first.Ratio != unit.Of(unit.Ratio(37)) || first.Efficiency.Is {
		t.Errorf("%+v", is.Train.Stages)
	}
	if offered() {
		t.Error("offered again")
	}
}
