package sheet

import (
	"fmt"
	"slices"

	"duskweight/internal/draw"
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
	var rest string
	if v.Causes, rest = causesOf(r, sys); rest != "" {
		v.Causes, v.unnumbered = append(v.Causes, rest+"."), 1
	}
	v.Stores = page.EachStore(r, sys)
	if n := len(v.Stores) - sheetStores; n > 0 {
		v.Stores, v.More = v.Stores[:sheetStores], "and "+page.Counted(n, "more store")+", on screen"
	}
	for i := range v.Stores {
		v.Stores[i].Of = form.Clip(v.Stores[i].Of, page.PaperName)
	}
	return v
}

// narrow shortens the lines of the stores to short names and the bare word, where the page is full.
func (v *sheetState) narrow() {
	for i := range v.Stores {
		b := &v.Stores[i]
		b.Of = form.Clip(b.Of, 18)
		b.Word, b.Brief = b.Bare, b.Bare
	}
}

// reasonsOf are the sentences of a plan's worst reasons, the one of its band first, each once, with how many times it is said.
func reasonsOf(r model.VariantResult, sys unit.System) (out []string, times map[string]int) {
	times = map[string]int{}
	if !r.Ready.Worse(reason.Proven) {
		return nil, times
	}
	add := func(say string) {
		if times[say] == 0 {
			out = append(out, say)
		}
		times[say]++
	}
	band := page.VariantBand(r, sys, nil)
	if r.Ready == reason.No {
		add(band.Why)
	}
	for _, b := range r.Because {
		switch {
		case b.Word != r.Ready:
		case r.Ready == reason.NotKnown: // what is missing for it stands on the page of the store
			add(b.Short().In(sys))
		case b.Say.In(sys) != band.Why:
			add(b.Say.In(sys))
		}
	}
	return out, times
}

// causesOf is what is not known of a plan that is not ready, or what forbids one beside what its band says: with the band at
// most sheetCauses; and how many more there are, with what is not known of one that is forbidden.
func causesOf(r model.VariantResult, sys unit.System) (out []string, rest string) {
	all, times := reasonsOf(r, sys)
	from := 0
	if r.Ready == reason.No && len(all) > 0 {
		from = 1
	}
	for _, say := range all[from:] {
		if n := times[say]; n > 1 { // of two hoists the same
			say = fmt.Sprintf("%d ×: %s", n, say)
		}
		out = append(out, say)
	}
	room := sheetText
	if r.Ready == reason.No || len(out) <= 2 {
		room = sheetReason
	}
	for i, say := range out {
		out[i] = form.Clip(say, room)
	}
	if n := len(out); n > sheetCauses-from {
		out, rest = out[:sheetCauses-from], fmt.Sprintf("and %d more, on screen", n-sheetCauses+from)
	}
	if n, say := page.ThingsNotKnown(r.Because); n > 0 && r.Ready == reason.No {
		if rest != "" {
			rest += "; "
		}
		rest += say
	}
	return out, rest
}

// Number is the number of the i-th cause under a band that tells the first; "" where they have none.
func (v sheetState) Number(i int) string {
	if v.Band.State != reason.No || i >= len(v.Causes)-v.unnumbered {
		return ""
	}
	return page.Itoa(i + 2)
}

// numbersOf are the numbers that the reasons of the drawing's marks have in the list of the sheet; "" for one that the list
// has no room for, and for the first, which the band tells.
func numbersOf(marks []draw.Mark, r model.VariantResult, sys unit.System) (out []string) {
	all, _ := reasonsOf(r, sys)
	for _, m := range marks {
		number := ""
		if i := slices.Index(all, m.Say); i > 0 && i < sheetCauses && len(all) > 1 {
			number = page.Itoa(i + 1)
		}
		out = append(out, number)
	}
	return out
}
