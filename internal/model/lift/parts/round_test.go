package parts

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Where one question about the place has no answer, its card asks that one alone; what only follows from another answer is
// not asked before that answer.
func TestRoundAsksWhatIsOpen(t *testing.T) {
	var answered lift.Hoist
	site := reflect.ValueOf(&answered.Site).Elem()
	field := map[string]reflect.Value{}
	for i := range site.NumField() {
		if site.Field(i).Kind() == reflect.String {
			site.Field(i).SetString("yes")
			field["site."+strings.Split(site.Type().Field(i).Tag.Get("json"), ",")[0]] = site.Field(i)
		}
	}
	if p := roundPart(answered); !slices.Equal(p.First, roundFirst[:mostRound]) {
		t.Errorf("with every answer it asks %v", p.First)
	}
	for _, path := range roundFirst {
		field[path].SetString("")
		if p := roundPart(answered); !slices.Equal(p.First, []string{path}) {
			t.Errorf("without %s it asks %v", path, p.First)
		}
		field[path].SetString("yes")
	}
	h := answered
	h.Site.SelfStart, h.Site.SelfStartGuard, h.Site.FloorBelow, h.Site.BelowSecured = unit.No, "", lift.FloorSolidGround, ""
	if p := roundPart(h); !slices.Equal(p.First, roundFirst[:mostRound]) {
		t.Errorf("nothing starts by itself and nothing lies below, and it asks %v", p.First)
	}
	if p := roundPart(lift.Hoist{}); len(p.First) != mostRound {
		t.Errorf("an empty card asks %d questions", len(p.First))
	}
}
