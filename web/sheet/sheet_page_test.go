package sheet_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// The sheet of a battery alone says how it is joined: the controller finds the battery's voltage before the sun reaches it.
func TestSheetOfBatteryHasItsOrder(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	sheet := webtest.Ask(s.Handler(), "GET", page.VariantURL(p.ID, vs[1].ID)+"/sheet", nil).Body.String()
	battery, panels := strings.Index(sheet, "Connect the battery to the controller"), strings.Index(sheet, "the panels last")
	if battery < 0 || panels < battery {
		t.Errorf("the battery is joined at %d, the panels at %d of the sheet", battery, panels)
	}
}
