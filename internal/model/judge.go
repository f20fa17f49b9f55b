package model

import (
	"slices"
	"strings"

	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/say"
)

// Readiness is how a variant was judged: its word, the reasons with the worst first, and the same for each of its stores.
// A reason belongs to the store in whose design its path lies; one of the panels, the line or the loads belongs to the
// variant alone.
type Readiness struct {
	Ready   reason.Word
	Because []reason.Reason
	Stores  []StoreReadiness
}

// StoreReadiness is how one store was judged.
type StoreReadiness struct {
	Ready   reason.Word
	Because []reason.Reason
}

// judgement is what the rules of a variant look at: its design with what it was computed to, and the day.
type judgement struct {
	ground  Ground
	variant Variant
	result  *VariantResult
	on      reason.Day
}

// rule is one rule with its name in the table of rules. The paths of its reasons lie inside the variant, or behind "load."
// inside the project; those of a rule of one store lie inside the store's design.
type rule struct {
	name string
	look func(judgement) []reason.Reason
}

// rules are the rules of a variant that are about no one store: what it has, its line, panels, peak and loads. Those of one
// store are its part's.
func rules() []rule {
	return append([]rule{{"no_store", noStore}}, lineRules()...)
}

// Judge says whether a variant may be hung and used, from its design, what it was computed to and the day on which proofs
// must be valid. It is the one judge: pages, sheet, search and evaluate read it.
func Judge(g Ground, v Variant, r *VariantResult, on reason.Day) Readiness {
	j := judgement{g, v, r, on}
	return judgeBy(allRules(j), j)
}

// allRules are the rules of the variant and of each of its stores.
func allRules(j judgement) []rule {
	all := rules()
	for i, s := range j.result.Stores {
		all = append(all, inStore(s.Kind.Path(i), s.Part.Rules(j, i))...)
	}
	return all
}

func judgeBy(rules []rule, j judgement) Readiness {
	out := Readiness{Stores: make([]StoreReadiness, len(j.result.Stores))}
	for _, r := range rules {
		out.Because = append(out.Because, r.look(j)...)
	}
	reason.Sort(out.Because)
	out.Ready = reason.Of(out.Because)
	for i := range out.Stores {
		s := &out.Stores[i]
		for _, b := range out.Because {
			if strings.HasPrefix(b.Path, StorePath(i, "")) {
				s.Because = append(s.Because, b)
			}
		}
		s.Ready = reason.Of(s.Because)
	}
	return out
}

// judge writes the judgement into the result.
func (r *VariantResult) judge(g Ground, v Variant) {
	j := Judge(g, v, r, g.On)
	r.Ready, r.Because = j.Ready, j.Because
	for i := range r.Stores {
		s := &r.Stores[i]
		s.Ready, s.Because = j.Stores[i].Ready, j.Stores[i].Because
		s.Part.Take(j.Stores[i])
	}
}

// inStore are the rules of a store with the paths of their reasons moved to where it stands in the variant.
func inStore(at string, rules []rule) []rule {
	for k, r := range rules {
		rules[k].look = func(j judgement) []reason.Reason {
			out := slices.Clone(r.look(j))
			for n := range out {
				out[n].Path = Join(at, out[n].Path)
				if out[n].Beside != "" {
					out[n].Beside = Join(at, out[n].Beside)
				}
			}
			return out
		}
	}
	return rules
}

// noStore is a variant in which nothing stores energy.
func noStore(j judgement) []reason.Reason {
	if len(j.result.Stores) > 0 {
		return nil
	}
	return []reason.Reason{{ID: "no_store", Word: reason.NotKnown, Path: "stores", Clears: reason.Change,
		Say: say.That("There is no store in this variant yet."), Mend: say.That("Add a lifted mass or a battery."), Source: source.Derivation.Whole()}}
}
