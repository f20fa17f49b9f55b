package page

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/store"
	"duskweight/web/form"
)

// Entries that were refused wait in their fields: nothing that is printed or shown elsewhere has them. Overview and sheet say
// so.

// RefusedOn is a page on which refused entries wait.
type RefusedOn struct {
	URL, Page, Of string // Of is the variant that it belongs to; empty for a page of the project
	Count         int
}

// Link says how many wait where.
func (r RefusedOn) Link() form.LinkView {
	of := ""
	if r.Of != "" {
		of = " of " + form.Clip(r.Of, 40)
	}
	if r.Count == 1 {
		return form.LinkView{Text: fmt.Sprintf("A refused entry waits on “%s”%s: it does not count yet", r.Page, of), URL: r.URL}
	}
	return form.LinkView{Text: fmt.Sprintf("%d refused entries wait on “%s”%s: they do not count yet", r.Count, r.Page, of), URL: r.URL}
}

// RefusedEntries are the pages of a project and of some of its variants on which refused entries wait.
func (s *Site) RefusedEntries(ctx context.Context, p store.Saved[model.Project], variants ...store.Saved[model.Variant]) ([]RefusedOn, error) {
	drafts, err := s.Store.Drafts(ctx, store.Thing{Kind: store.ProjectKind, ID: p.ID})
	if err != nil {
		return nil, err
	}
	out := waitingOn(drafts, "", func(path string) (string, string) { return projectPageOf(p, path) })
	for _, v := range variants {
		if drafts, err = s.Store.Drafts(ctx, store.Thing{Kind: store.VariantKind, ID: v.ID}); err != nil {
			return nil, err
		}
		out = append(out, waitingOn(drafts, OrUnnamed(v.Value.Name), func(path string) (string, string) { return variantPageOf(s.Tables.Stores, p, v, path) })...)
	}
	return out, nil
}

// waitingOn counts the drafts by their page; page gives its address and its name.
func waitingOn(drafts map[string]string, of string, page func(string) (url, name string)) (out []RefusedOn) {
	count := map[RefusedOn]int{}
	for path := range drafts {
		url, name := page(path)
		count[RefusedOn{URL: url, Page: name, Of: of}]++
	}
	for on, n := range count {
		on.Count = n
		out = append(out, on)
	}
	slices.SortFunc(out, func(a, b RefusedOn) int { return strings.Compare(a.URL, b.URL) })
	return out
}

func projectPageOf(p store.Saved[model.Project], path string) (url, name string) {
	for _, one := range [][2]string{{"load", "Night load"}, {"money", "Money"}, {"shelf", "Parts shelf"}} {
		if model.Within(path, one[0]) {
			return ProjectURL(p.ID) + "/" + one[0], one[1]
		}
	}
	return ProjectURL(p.ID) + "/place", "Place and sun"
}

func variantPageOf(kinds Kinds, p store.Saved[model.Project], v store.Saved[model.Variant], path string) (url, name string) {
	for i, st := range v.Value.Stores {
		k := kinds.Of(st.Kind())
		if k.Row == nil || !model.Within(path, k.Row.Path(i)) {
			continue
		}
		for _, also := range k.Also {
			if model.Within(path, model.Join(k.Row.Path(i), also.URL)) {
				return StoreURL(p.ID, v.ID, i, also.URL), also.Text
			}
		}
		return StoreURL(p.ID, v.ID, i, k.Row.Key), k.Row.Title
	}
	if model.Within(path, "parts") {
		return VariantURL(p.ID, v.ID) + "/parts", "Buy and make"
	}
	return VariantURL(p.ID, v.ID), "Variant"
}
