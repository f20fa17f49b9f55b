package model

import (
	"duskweight/internal/model/load"
	"duskweight/internal/say"
)

// withhold takes the verdict back while an essential appliance counts as nothing: without it a verdict would promise too much,
// whatever it is.
func (r *VariantResult) withhold(l load.Load) {
	if left := uncounted(l); r.Open.IsZero() && !left.IsZero() {
		r.Verdict, r.Open, r.uncounted = "", left, true
	}
}

// uncounted says which essential appliance counts as nothing, and how many more; nothing where all are counted.
func uncounted(l load.Load) say.Sentence {
	all := l.Uncounted()
	switch n := len(all); n {
	case 0:
		return say.Sentence{}
	case 1:
		return all[0]
	case 2:
		return say.That("%s. One more essential device is not counted either", all[0])
	default:
		return say.That("%s. %s more essential devices are not counted either", all[0], n-1)
	}
}
