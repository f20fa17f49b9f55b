package page

import (
	"reflect"
	"slices"
	"sync"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/store"
)

// Results keeps what the last few saved variants come to, by project and variant, their revisions and the day: the pages of a
// variant that nobody changes work its year out once. What it returns is shared: pages read it and change nothing in it.
type Results struct {
	grounds *Grounds
	mu      sync.Mutex
	kept    []keptResult // the last one asked first
}

// ResultKey names what a saved variant comes to on a day: the same key has the same answer, of any search that starts from the
// variant, too.
type ResultKey struct {
	project, projectRevision, variant, revision int64
	on                                          reason.Day
}

type keptResult struct {
	key    ResultKey
	result model.VariantResult
}

// resultsKept is how many are kept: two projects of eight variants. A result keeps the series of its hours, 70 KB each: two, and three for each store.
const resultsKept = 16

// Of returns what a saved variant comes to on this day.
func (r *Results) Of(p store.Saved[model.Project], v store.Saved[model.Variant]) model.VariantResult {
	g, key := r.grounds.Of(p), r.Key(p, v)
	if k, ok := r.find(key); ok {
		return k.result
	}
	fresh := keptResult{key, g.Evaluate(v.Value)}
	r.mu.Lock()
	defer r.mu.Unlock()
	r.kept = append([]keptResult{fresh}, r.kept[:min(len(r.kept), resultsKept-1)]...)
	return fresh.result
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

// find returns a kept result and puts it first.
func (r *Results) find(key ResultKey) (keptResult, bool) {
	r.mu.Lock()
	defer r.mu.Unlock()
	i := slices.IndexFunc(r.kept, func(k keptResult) bool { return k.key == key })
	if i < 0 {
		return keptResult{}, false
	}
	k := r.kept[i]
	copy(r.kept[1:i+1], r.kept[:i])
	r.kept[0] = k
	return k, true
}
