package shelf

import (
	"net/http"
	"slices"
	"strconv"
	"strings"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// newVariant is the button that keeps the variant and makes another one.
const newVariant = "new"

// useFit puts a combination of parts into the hoist that it was tried in, as one change that can be undone, or into a copy of
// its variant.
func (s *Pages) useFit(w http.ResponseWriter, r *http.Request) error {
	p, h, typed, revision, err := s.hoistPosted(r)
	if err != nil {
		return err
	}
	if revision != p.Revision || typed.Get("variant") != strconv.FormatInt(h.Variant.Revision, 10) {
		return store.ErrStale
	}
	c, ok := combinationOf(typed.Get("parts"), p.Value.Shelf)
	if !ok {
		return page.BadRequest("These parts are not on the shelf.")
	}
	variants, err := s.Store.Variants(r.Context(), p.ID)
	if err != nil {
		return err
	}
	next := document.Clone(c.With(p.Value, h.Variant.Value, h.I))
	next.Parts = withoutReplaced(next.Parts, c)
	if typed.Get(form.NameDo) != newVariant {
		if problems := model.CheckVariant(next); len(problems) > 0 {
			return problems
		}
		edit := store.Edit{Revision: h.Variant.Revision, Said: "Parts of the shelf used: " + partsSaid(c, p.Value.Shelf)}
		if _, err := s.Store.SaveVariant(r.Context(), h.Variant.ID, next, edit, s.Now()); err != nil {
			return err
		}
		return page.SeeOther(w, r, page.StoreURL(p.ID, h.Variant.ID, h.I, "hoist"))
	}
	next.Name = page.FreeName(variants, h.Variant.Value.Name)
	if problems := model.CheckVariant(next); len(problems) > 0 {
		return problems
	}
	made, err := s.Store.CreateVariant(r.Context(), p.ID, next, "Copied from "+h.Variant.Value.Name+", with parts of the shelf", s.Now())
	if err != nil {
		return err
	}
	return page.SeeOther(w, r, page.StoreURL(p.ID, made.ID, h.I, "hoist"))
}

// withoutReplaced takes the parts that a combination replaces from a list of parts, as far as the list says what they are.
func withoutReplaced(parts []cost.Part, c model.Combination) []cost.Part {
	gone := map[string]bool{"motor": c.Motor != model.Own, "gear": c.Stages != nil, "drum": c.Drum != model.Own, "rope": c.Rope != model.Own, "pulley": c.Pulley != model.Own}
	return slices.DeleteFunc(parts, func(p cost.Part) bool { return gone[string(p.As)] })
}

// written is a combination in the form of a page: motor, drum, rope, pulley, and the stages; -1 for the hoist's own.
func written(c model.Combination) string {
	var b strings.Builder
	for _, n := range []int{c.Motor, c.Drum, c.Rope, c.Pulley} {
		b.WriteString(page.Itoa(n) + " ")
	}
	for _, n := range c.Stages {
		b.WriteString(page.Itoa(n) + " ")
	}
	return strings.TrimSpace(b.String())
}

// combinationOf reads what written wrote; false where a part is not on the shelf.
func combinationOf(text string, s model.Shelf) (c model.Combination, ok bool) {
	ns := []int{}
	for word := range strings.FieldsSeq(text) {
		n, err := strconv.Atoi(word)
		if err != nil || len(ns) > 20 {
			return c, false
		}
		ns = append(ns, n)
	}
	if len(ns) < 4 {
		return c, false
	}
	for i, n := range ns {
		least, most := model.Own, len(s.Stages)
		if i < 4 {
			most = []int{len(s.Motors), len(s.Drums), len(s.Ropes), len(s.Pulleys)}[i]
		} else {
			least = 0
		}
		if n < least || n >= most {
			return c, false
		}
	}
	c = model.Combination{Motor: ns[0], Drum: ns[1], Rope: ns[2], Pulley: ns[3]}
	if len(ns) > 4 {
		c.Stages = ns[4:]
	}
	return c, true
}
