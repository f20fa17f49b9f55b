package model_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// No stage of any kind carries the mass on a strength that nobody gave: without teeth and without a label its check is not
// known and the plan is not ready, whatever else is known.
func TestEveryStageAsksForItsStrength(t *testing.T) {
	for _, kind := range []string{"planetary", "spur", "bevel", "worm", "belt", "chain", "strain_wave", "cycloid", "box", ""} {
		doc := catalog.Sample()
		h := doc.Variants[2].Stores[0].Hoist
		h.Train.Stages[3] = lift.Stage{Kind: lift.StageKind(kind), Ratio: unit.Of[unit.Ratio](5), Efficiency: unit.Of[unit.Ratio](.95), IdleTorque: unit.Of[unit.Torque](0)}
		r := model.Evaluate(doc, "").Variants[2]
		if r.Ready != "not_known" || !strings.Contains(strings.Join(reasonsSaid(r.Because), " "), "stage 4") && !strings.Contains(strings.Join(reasonsSaid(r.Because), " "), "of stage 4") {
			t.Errorf("%q: %s %q", kind, r.Ready, reasonsSaid(r.Because))
		}
		h.Train.Stages[3].Rated = unit.Of[unit.Torque](500)
		if r := model.Evaluate(doc, "").Variants[2]; r.Ready != "yes" {
			t.Errorf("%q with its label: %s %q", kind, r.Ready, reasonsSaid(r.Because))
		}
	}
}

// A part that was found damaged forbids hanging, whether the failure was a shock or not; renewed, it does not.
func TestDamagedForbids(t *testing.T) {
	for _, shock := range []string{"no", "yes", ""} {
		doc := catalog.Sample()
		h := doc.Variants[2].Stores[0].Hoist
		f := lift.Failure{Shock: unit.Answer(shock), Look: lift.Look{Rope: "damaged", Knots: "sound", Pulleys: "sound", Pins: "sound", Container: "sound", Base: "sound"}}
		h.Trials.Failures = []lift.Failure{f}
		if r := model.Evaluate(doc, "").Variants[2]; r.Ready != "no" {
			t.Errorf("shock %q, rope damaged: %s", shock, r.Ready)
		}
		h.Trials.Failures[0].Look.Rope = "renewed"
		if r := model.Evaluate(doc, "").Variants[2]; r.Ready != "yes" {
			t.Errorf("shock %q, rope renewed: %s %q", shock, r.Ready, reasonsSaid(r.Because))
		}
	}
}
