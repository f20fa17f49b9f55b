package model_test

import (
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
)

// noDevice are the ids of rules of line, battery and loads that are about no thing in the wiring: place and air of a
// battery, what its cells are, and whom it harms when a device stops.
var noDevice = []string{"harm", "place", "air", "cells_mixed", "freezes"}

// What the rules of electricity check and what the wiring draws are the same: in each case of line, battery and loads, and in
// each unsafe plan, every reason of those rules is about exactly one device, and that device has its word or a worse one; and
// each kind of device is forbidden or not known in some plan: none is drawn that nothing checks.
func TestWiringDrawsWhatIsChecked(t *testing.T) {
	longOnly(t)
	drawn, judged := map[model.DeviceKind]bool{}, map[model.DeviceKind]bool{}
	look := func(id string, g model.Ground, v model.Variant, r *model.VariantResult) {
		circuit := r.Circuit(v)
		for _, d := range circuit {
			drawn[d.Kind] = true
			judged[d.Kind] = judged[d.Kind] || d.Word.Worse(reason.Proven)
		}
		for _, b := range model.ElectricReasons(g, v, r) {
			var at []model.DeviceKind
			for _, d := range circuit {
				if d.Asks(b) {
					at = append(at, d.Kind)
				}
				if d.Asks(b) && b.Word.Worse(d.Word) {
					t.Errorf("%s: %s is drawn as %s, and the judge says %s %s", id, d.Kind, d.Word, b.ID, b.Word)
				}
			}
			water := strings.Contains(b.Path, "].water") // tank, pipe and what they stand on are no wiring
			if want := !slices.Contains(noDevice, b.ID) && !water; want != (len(at) == 1) {
				t.Errorf("%s: %s %s at %s is about %v", id, b.ID, b.Word, b.Path, at)
			}
		}
	}
	for id, doc := range model.LineDocuments(t) {
		r := model.Evaluate(doc, on)
		look(id, r.Ground, doc.Variants[0], &r.Variants[0])
	}
	for _, p := range evaluated(t) {
		look(p.plan.ID, p.ground, p.doc.Variants[0], p.result)
	}
	for kind := range drawn {
		if !judged[kind] {
			t.Errorf("%s is drawn, and nothing checks it in any plan", kind)
		}
	}
	for _, kind := range model.DeviceKinds() {
		if !drawn[kind] {
			t.Errorf("no plan has a %s", kind)
		}
	}
}
