package page

import (
	"reflect"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/store"
)

// Results keeps what the last few saved variants come to, by project and variant, their revisions and the day: the pages of a
// variant that nobody changes work its year out once. What it returns is shared: pages read it and change nothing in it.
type Results struct {
	grounds *Grounds
	kept    recent[ResultKey, model.VariantResult]
}

// ResultKey names what a saved variant comes to on a day: the same key has the same answer, of any search that starts from the
// variant, too.
type ResultKey struct {
	project, projectRevision, variant, revision int64
	on                                          reason.Day
}

// resultsKept is how many are kept: two projects of eight variants. A result keeps the series of its hours, 70 KB each: two, and three for each store.
const resultsKept = 16

// Of returns what a saved variant comes to on this day.
func (r *Results) Of(p store.Saved[model.Project], v store.Saved[model.Variant]) model.VariantResult {
	g, key := r.grounds.Of(p), r.Key(p, v)
	if kept, ok := r.kept.find(key); ok {
		return kept
	}
	fresh := g.Evaluate(v.Value)
	r.kept.keep(key, fresh, resultsKept)
	return fresh
}

// Key names what a saved variant comes to today.
func (r *Results) Key(p store.Saved[model.Project], v store.Saved[model.Variant]) ResultKey {
	return ResultKey{p.ID, p.Revision, v.ID, v.Revision, reason.Today(r.grounds.now())}
}

// Typed returns what a variant comes to as it stands in a form; unchanged, that is the saved one.
func (r *Results) Typed(p store.Saved[model.Project], v store.Saved[model.Variant], typed model.Variant) model.VariantResult {
	if reflect.DeepEqual(typed, v.Value) {
		return r.Of(p, v)
	}
	return r.grounds.Of(p).Evaluate(typed)
}

// All returns what each of some variants of a project comes to, in their order.
func (r *Results) All(p store.Saved[model.Project], vs []store.Saved[model.Variant]) []model.VariantResult {
	out := make([]model.VariantResult, len(vs))
	for i, v := range vs {
		out[i] = r.Of(p, v)
	}
	return out
}
