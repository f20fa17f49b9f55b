package model_test

import (
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// One part, one figure: where a line of the plan gives way, the reason says what that line says, and its use, though the judge
// looks at the heaviest mass that the scale allows. Where only that gives way, the reason has figures of its own.
func TestReasonsSayTheirLines(t *testing.T) {
	all, same := readPlans(t), 0
	for _, c := range all.Cases {
		doc, err := all.document(t, c)
		if err != nil {
			continue
		}
		for _, s := range model.Evaluate(doc, on).Variants[0].Stores {
			h := model.HoistOf(s)
			if h == nil {
				continue
			}
			for _, k := range h.Checks {
				if k.Word != path.GivesWay || k.ID == "holds" {
					continue
				}
				said := strings.TrimSuffix(k.Say.In(unit.Metric), ".")
				for _, r := range h.Because {
					if r.ID != k.ID || r.Word != reason.No || !strings.Contains(r.Head.In(unit.Metric), k.Part) {
						continue
					}
					if same++; !strings.Contains(r.Say.In(unit.Metric), said) || r.Use != k.Use {
						t.Errorf("%s: the line says %q, use %v; the reason %q, use %v", c.ID, said, k.Use, r.Say.In(unit.Metric), r.Use)
					}
				}
			}
		}
	}
	if same < 5 {
		t.Errorf("only %d reasons have a line", same)
	}
}
