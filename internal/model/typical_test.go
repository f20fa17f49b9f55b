package model_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
)

// A plan that is ready is not ready any more once a value that it hangs on is only typical, and is again when that is
// confirmed; one that only moves energy, or belongs to another store, changes nothing. A plan that gives way stays so.
func TestTypicalValuesAreNotReady(t *testing.T) {
	doc := catalog.Sample()
	ground := model.Prepare(doc.Project)
	v := doc.Variants[2]
	ready := func(origins model.Origins) model.VariantResult {
		v.Origins = origins
		return ground.Evaluate(v)
	}
	if r := ready(nil); r.Ready != "yes" {
		t.Fatalf("without marks it is %q: %v", r.Ready, r.Reasons)
	}
	typical := model.Origin{Kind: "typical", Source: "from memory"}
	for path, want := range map[string]string{
		"stores[0].hoist.drum.dead_wraps":            "not_known",
		"stores[0].hoist.reeving.rope_parts":         "not_known",
		"stores[0].hoist.machine.max_winding_c":      "not_known",
		"stores[0].hoist.train.stages[0].efficiency": "not_known",
		"stores[0].hoist.raise.drive_efficiency":     "yes",
		"stores[0].hoist.lower.auxiliary_w":          "yes",
		"stores[1].cells.usable_depth":               "yes",
		"panels[0].tilt_rad":                         "yes",
	} {
		r := ready(model.Origins{path: typical})
		if r.Ready != want || (want == "yes") != (len(r.Reasons) == 0) {
			t.Errorf("%s typical: %q, want %q; %v", path, r.Ready, want, r.Reasons)
		}
		for _, kind := range []string{"catalog", "measured"} {
			if r := ready(model.Origins{path: {Kind: kind}}); r.Ready != "yes" {
				t.Errorf("%s %s: %q", path, kind, r.Ready)
			}
		}
	}
	r := ready(model.Origins{"stores[0].hoist.drum.dead_wraps": typical, "stores[0].hoist.travel_m": typical})
	if len(r.Reasons) != 1 || !strings.Contains(r.Reasons[0], "2 typical values") {
		t.Errorf("%v", r.Reasons)
	}
	v = doc.Variants[0]
	if r := ready(model.Origins{"stores[0].hoist.drum.dead_wraps": typical}); r.Ready != "no" {
		t.Errorf("what gives way is %q with a typical value", r.Ready)
	}
}
