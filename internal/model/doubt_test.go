package model_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// A lift that took far more or less than the plan says for the same mass, travel and volts stops a ready plan; one that is
// close does not. The plan's own current for the sample's 120 kg at 24 V is 2.19 A and its time 2.9 min (TestSheet's page).
func TestDoubt(t *testing.T) {
	for _, c := range []struct {
		amps, minutes float64
		stops         string
	}{{2.3, 3, ""}, {3.2, 3.3, ""}, {3.4, 3, "The last lift took 3.4"}, {1.4, 3, "The last lift took 1.4"}, {2.2, 6.5, "The last lift took 6.5 minutes"}, {2.2, 1.3, "The last lift took 78 seconds"}} {
		doc := catalog.Sample()
		h := doc.Variants[2].Stores[0].Hoist
		h.Trials.Raises = []lift.RaiseTrial{{Mass: unit.Of[unit.Mass](120), Travel: h.Travel, Voltage: unit.Of[unit.Voltage](24), Current: unit.Of(unit.Current(c.amps)), Time: unit.Of(unit.Duration(c.minutes) * unit.Minute)}}
		r := model.Evaluate(doc, "").Variants[2]
		first := ""
		if len(reasonsSaid(r.Because)) > 0 {
			first = reasonsSaid(r.Because)[0]
		}
		if (r.Ready == "yes") != (c.stops == "") || !strings.HasPrefix(strings.ReplaceAll(first, unit.Space, " "), c.stops) {
			t.Errorf("%g A, %g min: %s, %q", c.amps, c.minutes, r.Ready, first)
		}
	}
}

// The label's numbers count in the plan that records are held against, as they do in the hoist: a typical constant that they
// replace does not. With K = (24 − 2·R)/(2π·3000/60) and the records' own mass both plans are the same.
func TestRecordsAreHeldAgainstTheHoist(t *testing.T) {
	doc := catalog.Sample()
	v := doc.Variants[2]
	h := v.Stores[0].Hoist
	h.Machine.SheetVolts, h.Machine.SheetSpeed = unit.Of[unit.Voltage](24), unit.Of(2500*unit.RevPerMinute)
	v.Origins = model.Origins{"stores[0].hoist.machine.k_vs_rad": {Kind: "typical"}}
	h.Trials.Raises = []lift.RaiseTrial{{Mass: unit.Of[unit.Mass](120), Travel: h.Travel, Voltage: h.Raise.Voltage}}
	plan := v.Measured(0).Runs[0].PlanCurrent
	hoist := model.Prepare(doc.Project).Hoist(v, 0).Drive
	if !plan.Is || plan.Val != hoist.Raising.Current || hoist.Machine.K.Val == h.Machine.K.Val {
		t.Errorf("the page of tests plans %v A, the hoist %v A", plan.Val, hoist.Raising.Current)
	}
}
