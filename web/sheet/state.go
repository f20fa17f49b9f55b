package sheet

import (
	"fmt"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// stateOf is the state of a variant's sheet: its band, a line for each store, and what else is to be said. It prints what is
// wrong; what to do about it stands on screen.
func stateOf(r model.VariantResult, sys unit.System) (v sheetState) {
	v.Band = page.VariantBand(r, sys, nil)
	v.Band.Why = form.Whole(v.Band.Why, 2*sheetText)
	if fellSince(r) && v.Band.State == reason.No {
		v.Band.Why += " It fell or took a shock, and not every part was looked at since."
	}
	if v.Band.State == reason.NotKnown {
		v.Band.Why = "" // it stands first in the list
	}
	v.Causes = causesOf(r, sys)
	v.Stores = page.EachStore(r, sys)
	if n := len(v.Stores) - sheetStores; n > 0 {
		v.Stores, v.More = v.Stores[:sheetStores], "and "+page.Counted(n, "more store")+", on screen"
	}
	for i := range v.Stores {
		v.Stores[i].Of = form.Clip(v.Stores[i].Of, page.PaperName)
	}
	return v
}

// narrow sets the lines of the stores in three columns, with short names and the bare word, where the page is full.
func (v *sheetState) narrow() {
	v.Narrow = true
	for i := range v.Stores {
		b := &v.Stores[i]
		b.Of = form.Clip(b.Of, 12)
		b.Word, b.Brief = b.Bare, b.Bare
	}
}

// causesOf is what is not known of a plan that is not ready, or what forbids one beside what its band says.
func causesOf(r model.VariantResult, sys unit.System) (out []string) {
	if !r.Ready.Worse(reason.Proven) {
		return nil
	}
	band, times := page.VariantBand(r, sys, nil), map[string]int{}
	for _, b := range r.Because {
		if say := b.Say.In(sys); b.Word == r.Ready && (r.Ready != reason.No || say != band.Why) {
			if r.Ready == reason.NotKnown { // what is missing for it stands on the page of the store
				say = b.Short().In(sys)
			}
			if times[say] == 0 {
				out = append(out, say)
			}
			times[say]++
		}
	}
	for i, say := range out {
		if n := times[say]; n > 1 { // of two hoists the same
			out[i] = fmt.Sprintf("%d ×: %s", n, say)
		}
	}
	room := page.PaperName
	switch n := len(out); {
	case n <= 2:
		room = 2 * sheetText
	case n <= 6:
		room = sheetText
	}
	for i, say := range out {
		out[i] = form.Clip(say, room)
	}
	if n := len(out); n > sheetCauses {
		out = append(out[:sheetCauses], fmt.Sprintf("and %d more, on screen", n-sheetCauses))
	}
	return out
}
