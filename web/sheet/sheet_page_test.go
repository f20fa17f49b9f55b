package sheet_test

import (
	"fmt"
	"strings"
	"testing"

	"duskweight/internal/model/cost"
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
