package load

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model/load"
	"duskweight/web/form"
)

// The field that asks for a share of the time says what it counts as when it is empty: all of the time.
func TestShareIfEmpty(t *testing.T) {
	p, seen := catalog.Sample(), 0
	form.Form[load.Load]{}.Walk(LoadForm(), &p.Project.Load, func(in *form.Input[load.Load]) {
		if strings.HasSuffix(in.Path, "share_on") {
			seen++
			if in.Hint != "if empty: 100 %" {
				t.Errorf("%s: %q", in.Path, in.Hint)
			}
		}
	})
	if seen == 0 {
		t.Error("no share was seen")
	}
}
