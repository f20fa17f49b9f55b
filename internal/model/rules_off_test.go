package model_test

import (
	"encoding/json"
	"os"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
)

// more are plans for the rules that none of the unsafe plans rests on, with the bases of those.
func (p plans) more(t *testing.T) plans {
	t.Helper()
	data, err := os.ReadFile("../../testdata/unsafe/rules.json")
	if err != nil {
		t.Fatal(err)
	}
	var cases []plan
	if err := json.Unmarshal(data, &cases); err != nil {
		t.Fatal(err)
	}
	p.Cases = cases
	return p
}

// evaluatedPlan is a plan with what it was computed to.
type evaluatedPlan struct {
	plan   plan
	doc    model.Document
	ground model.Ground
	result *model.VariantResult
}

// evaluated are all plans that are not refused.
func evaluated(t *testing.T) []evaluatedPlan {
	t.Helper()
	p := readPlans(t)
	var out []evaluatedPlan
	for _, set := range []plans{p, p.more(t)} {
		for _, c := range set.Cases {
			doc, err := set.document(t, c)
			if err != nil {
				continue
			}
			r := model.Evaluate(doc, on)
			out = append(out, evaluatedPlan{c, doc, model.Prepare(doc.Project).At(on), &r.Variants[0]})
		}
	}
	return out
}

// The plans of ours get the word and the reason that the rule book gives them.
func TestPlansOfEachRule(t *testing.T) {
	longOnly(t)
	p := readPlans(t).more(t)
	for _, c := range p.Cases {
		doc, err := p.document(t, c)
		if err != nil {
			t.Errorf("%s: refused: %v", c.ID, err)
			continue
		}
		r := model.Evaluate(doc, on)
		if say := c.judged(r.Variants[0].Ready, r.Variants[0].Because); say != "" {
			t.Errorf("%s: %s", c.ID, say)
		}
	}
}

// Each rule that is switched off is missed by at least one plan: its word changes, or the reason that it wants is gone.
func TestEachRuleIsMissed(t *testing.T) {
	longOnly(t)
	all := evaluated(t)
	for _, name := range model.RuleNames() {
		missed := ""
		for _, x := range all {
			j := model.JudgeWithout(name, x.ground, x.doc.Variants[0], x.result, on)
			if x.plan.judged(j.Ready, j.Because) != "" {
				missed = x.plan.ID
				break
			}
		}
		if missed == "" {
			t.Errorf("no plan misses the rule %s", name)
		}
	}
}

// A test with 268 kg on the rope of a plan for 120 kg proves its part for 268 kg, and the plan for no more than it hangs: no
// other part was judged for more.
func TestProvenForNoMoreThanHangs(t *testing.T) {
	longOnly(t)
	seen := false
	for _, x := range evaluated(t) {
		for _, r := range x.result.Because {
			if r.Word != reason.Proven || !r.Mass.Is {
				continue
			}
			seen = true
			for _, s := range x.result.Stores {
				if h := model.HoistOf(s); h != nil && r.Mass.Val > h.Drive.Mass.Or(0) {
					t.Errorf("%s: proven up to %g kg, and the plan hangs %g", x.plan.ID, float64(r.Mass.Val), float64(h.Drive.Mass.Val))
				}
			}
		}
	}
	if !seen {
		t.Error("no plan is proven: the test is blind")
	}
}
