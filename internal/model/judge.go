package model

import (
	"slices"
	"strings"

	"duskweight/internal/model/lift/ready"
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
	hoists  map[int]ready.Case // by the store's place
}

func judgementOf(g Ground, v Variant, r *VariantResult, on reason.Day) judgement {
	j := judgement{g, v, r, on, map[int]ready.Case{}}
	for i, s := range r.Stores {
		if h := HoistOf(s); h != nil {
			j.hoists[i] = h.readyCase(on)
		}
	}
	return j
}

// rule is one rule of a variant with its name in the table of rules. Its reasons have their paths inside the variant, or
// behind "load." inside the project.
type rule struct {
	name string
	look func(judgement) []reason.Reason
}

// rules are all rules of a variant, in the order of the rule book. Those of one hoist alone are in ready.Rules.
func rules() []rule {
	return slices.Concat([]rule{{"no_store", noStore}, {"not_computed", notComputed}}, hoistRules(), batteryRules(), lineRules())
}

// hoistRules are the rules that need nothing but a hoist and the origins of its values.
func hoistRules() []rule {
	out := []rule{{"typical", typicalValues}, {"measured_differs", measuredDiffers}}
	for _, r := range ready.Rules() {
		out = append(out, rule{r.Name, ofHoists(r)})
	}
	return out
}

// Judge says whether a variant may be hung and used, from its design, what it was computed to and the day on which proofs
// must be valid. It is the one judge: pages, sheet, search and evaluate read it.
func Judge(g Ground, v Variant, r *VariantResult, on reason.Day) Readiness {
	return judgeBy(rules(), judgementOf(g, v, r, on))
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

// judgeAlone judges the hoist at place i of a variant by the rules that need nothing else of it.
func (h *HoistResult) judgeAlone(v Variant, i int, on reason.Day) {
	alone := VariantResult{Stores: make([]StoreResult, i+1)}
	alone.Stores[i] = StoreResult{Kind: hoistKind, Part: h}
	j := judgeBy(hoistRules(), judgementOf(Ground{}, v, &alone, on))
	h.Ready, h.Because = j.Ready, j.Because
}

// ofHoists asks a rule of one hoist for each hoist of the variant.
func ofHoists(of ready.Rule) func(judgement) []reason.Reason {
	return func(j judgement) []reason.Reason {
		var out []reason.Reason
		for i, s := range j.result.Stores {
			if h := HoistOf(s); h != nil {
				out = append(out, inStore(HoistPath(i), of.Look(j.hoists[i]))...)
			}
		}
		return out
	}
}

// readyCase is a hoist as the rules of one hoist look at it.
func (h *HoistResult) readyCase(on reason.Day) ready.Case {
	fed := bySupply(h.Design)
	if h.Direct != nil && h.Direct.Known {
		fed = h.Direct.inFullSun(fed)
	}
	return ready.New(fed, h.Drive, h.Checks, h.Hazards, on)
}

// inStore moves paths inside a design to where it stands in the variant.
func inStore(at string, reasons []reason.Reason) []reason.Reason {
	for k := range reasons {
		reasons[k].Path = Join(at, reasons[k].Path)
	}
	return reasons
}

// noStore is a variant in which nothing stores energy.
func noStore(j judgement) []reason.Reason {
	if len(j.result.Stores) > 0 {
		return nil
	}
	return []reason.Reason{{ID: "no_store", Word: reason.NotKnown, Path: "stores", Clears: reason.Change,
		Say: say.That("There is no store in this variant yet."), Mend: say.That("Add a lifted mass or a battery."), Source: source.Derivation.Whole()}}
}

// notComputed is a battery of which too little is known.
func notComputed(j judgement) []reason.Reason {
	var out []reason.Reason
	for i, s := range j.result.Stores {
		if CellsOf(s) != nil && s.WhyNot != "" {
			out = append(out, reason.Reason{ID: "not_computed", Word: reason.NotKnown, Path: CellsPath(i), Clears: reason.Answer,
				Say: say.That("%s", s.WhyNot), Source: source.Derivation.Whole()})
		}
	}
	return out
}
