package shelf

import (
	"net/http"
	"net/url"
	"slices"
	"strconv"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/store"
	"duskweight/web/page"
)

// Panels and batteries of the shelf do not change how a hoist moves: they are added to a variant, or copied from one.

// intoView is a variant that the part of an open card can be added to.
type intoView struct {
	Name, Variant, Revision string
}

// forHome reports whether the parts of a list are added to a variant and not tried in a hoist.
func forHome(list string) bool { return list == "panels" || list == "batteries" }

// into are the variants that a part can be added to; none for a part of a hoist.
func (t shelfTop) into(at spareAt) []intoView {
	if !forHome(at.list) {
		return nil
	}
	return t.Variants
}

// withHome are the variants that have panels or a battery which could lie on the shelf.
func withHome(p model.Project, variants []store.Saved[model.Variant]) (out []intoView) {
	for _, v := range variants {
		if _, n := p.ShelveHome(v.Value); n > 0 {
			out = append(out, intoOf(v))
		}
	}
	return out
}

// intosOf are all variants.
func intosOf(variants []store.Saved[model.Variant]) (out []intoView) {
	for _, v := range variants {
		out = append(out, intoOf(v))
	}
	return out
}

// intoOf is a variant with the revision that the page shows.
func intoOf(v store.Saved[model.Variant]) intoView {
	return intoView{page.OrUnnamed(v.Value.Name), strconv.FormatInt(v.ID, 10), strconv.FormatInt(v.Revision, 10)}
}

// variantPosted reads a form that is about a variant of the project, and the revision of the project that its page showed.
func (s *Pages) variantPosted(r *http.Request) (p store.Saved[model.Project], v store.Saved[model.Variant], typed url.Values, revision int64, err error) {
	if p, err = s.Project(r); err != nil {
		return p, v, typed, revision, err
	}
	if typed, revision, err = page.PostedForm(r); err != nil {
		return p, v, typed, revision, err
	}
	all, err := s.Store.Variants(r.Context(), p.ID)
	if err != nil {
		return p, v, typed, revision, err
	}
	i := slices.IndexFunc(all, func(o store.Saved[model.Variant]) bool { return strconv.FormatInt(o.ID, 10) == typed.Get("v") })
	if i < 0 {
		return p, v, typed, revision, page.ErrNotFound
	}
	return p, all[i], typed, revision, nil
}

// shelveHome puts the panels and batteries of a variant on the shelf.
func (s *Pages) shelveHome(w http.ResponseWriter, r *http.Request) error {
	p, v, _, revision, err := s.variantPosted(r)
	if err != nil {
		return err
	}
	next, n := document.Clone(p.Value).ShelveHome(v.Value)
	if problems := model.CheckProject(next); len(problems) > 0 {
		return problems
	}
	if n > 0 {
		said := page.Counted(n, "part") + " of " + page.OrUnnamed(v.Value.Name) + " put on the shelf"
		if _, err := s.Store.SaveProject(r.Context(), p.ID, next, store.Edit{Revision: revision, Said: said}, s.Now()); err != nil {
			return err
		}
	}
	return page.SeeOther(w, r, page.ProjectURL(p.ID)+"/shelf")
}

// addSpare adds the panels or the battery of a card to a variant, as one change that can be undone, and leads to the page on
// which what is still asked of them is asked.
func (s *Pages) addSpare(w http.ResponseWriter, r *http.Request) error {
	p, v, typed, revision, err := s.variantPosted(r)
	if err != nil {
		return err
	}
	if revision != p.Revision || typed.Get("variant") != strconv.FormatInt(v.Revision, 10) {
		return store.ErrStale
	}
	at, ok := placeOf(typed.Get(namePart), p.Value.Shelf)
	if !ok || !forHome(at.list) || at.i >= counts(p.Value.Shelf)[at.list] {
		return page.BadRequest("This part is not on the shelf.")
	}
	next, to := document.Clone(v.Value), page.VariantURL(p.ID, v.ID)
	if at.list == "panels" {
		next = p.Value.WithPanels(next, at.i)
	} else {
		next = p.Value.WithCells(next, at.i)
		i := len(next.Stores) - 1
		to = page.StoreURL(p.ID, v.ID, i, next.Stores[i].Kind().Key)
	}
	if problems := model.CheckVariant(next); len(problems) > 0 {
		return problems
	}
	edit := store.Edit{Revision: v.Revision, Said: "From the shelf: " + spareName(p.Value.Shelf, at.list, at.i)}
	if _, err := s.Store.SaveVariant(r.Context(), v.ID, next, edit, s.Now()); err != nil {
		return err
	}
	return page.SeeOther(w, r, to)
}
