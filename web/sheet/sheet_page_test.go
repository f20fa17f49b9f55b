package sheet_test

import (
	"fmt"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/cost"
	"duskweight/web/page"
	"duskweight/web/sheet"
	"duskweight/web/webtest"
)

// Parts that do not fit are counted, never lost without a word.
func TestSheetParts(t *testing.T) {
	const lines = 14
	room := lines*sheet.PlainType.Row + .1
	for _, n := range []int{0, 1, 13, 14, 15, 200} {
		rows, more := sheet.BuildRows(make([]cost.Part, n), "EUR", sheet.PlainType, room)
		want, said := n, ""
		if n > lines { // the words take the room of two rows
			want, said = lines-2, fmt.Sprintf("and %d more", n-lines+2)
		}
		if len(rows) != want || !strings.HasPrefix(more, said) || (more == "") != (said == "") {
			t.Errorf("%d parts: %d rows and %q", n, len(rows), more)
		}
	}
	if rows, more := sheet.BuildRows([]cost.Part{{Name: webtest.OneWord}, {Name: webtest.OneWord}}, "EUR", sheet.PlainType, 15); len(rows) != 1 || !strings.HasPrefix(more, "and 1 more") {
		t.Errorf("two parts of two lines in 15 mm: %d rows and %q", len(rows), more)
	}
}

// The sheet of a battery alone says how it is joined: the controller finds the battery's voltage before the sun reaches it.
func TestSheetOfBatteryHasItsOrder(t *testing.T) {
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "sample", catalog.Sample())
	sheet := webtest.Ask(s.Handler(), "GET", page.VariantURL(p.ID, vs[1].ID)+"/sheet", nil).Body.String()
	battery, panels := strings.Index(sheet, "Battery to the controller"), strings.Index(sheet, "panels last")
	if battery < 0 || panels < battery {
		t.Errorf("the battery is joined at %d, the panels at %d of the sheet", battery, panels)
	}
}
