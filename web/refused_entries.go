package web

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/store"
)

// Entries that were refused wait in their fields: nothing that is printed or shown elsewhere has them. Overview and sheet say
// so.

// refusedOn is a page on which refused entries wait.
type refusedOn struct {
	URL, Page, Of string // Of is the variant that it belongs to; empty for a page of the project
	Count         int
}

// link says how many wait where.
func (r refusedOn) link() linkView {
	of := ""
	if r.Of != "" {
		of = " of " + clip(r.Of, 40)
	}
	if r.Count == 1 {
		return linkView{fmt.Sprintf("A refused entry waits on “%s”%s: it does not count yet", r.Page, of), r.URL}
	}
	return linkView{fmt.Sprintf("%d refused entries wait on “%s”%s: they do not count yet", r.Count, r.Page, of), r.URL}
}

// refusedEntries are the pages of a project and of some of its variants on which refused entries wait.
func (s *Site) refusedEntries(ctx context.Context, p store.Saved[model.Project], variants ...store.Saved[model.Variant]) ([]refusedOn, error) {
	drafts, err := s.Store.Drafts(ctx, store.Thing{Kind: store.ProjectKind, ID: p.ID})
	if err != nil {
		return nil, err
	}
	out := waitingOn(drafts, "", func(path string) (string, string) { return projectPageOf(p, path) })
	for _, v := range variants {
		if drafts, err = s.Store.Drafts(ctx, store.Thing{Kind: store.VariantKind, ID: v.ID}); err != nil {
			return nil, err
		}
		out = append(out, waitingOn(drafts, orUnnamed(v.Value.Name), func(path string) (string, string) { return variantPageOf(p, v, path) })...)
	}
	return out, nil
}

// waitingOn counts the drafts by their page; page gives its address and its name.
func waitingOn(drafts map[string]string, of string, page func(string) (url, name string)) (out []refusedOn) {
	count := map[refusedOn]int{}
	for path := range drafts {
		url, name := page(path)
		count[refusedOn{URL: url, Page: name, Of: of}]++
	}
	for on, n := range count {
		on.Count = n
		out = append(out, on)
	}
	slices.SortFunc(out, func(a, b refusedOn) int { return strings.Compare(a.URL, b.URL) })
	return out
}

func projectPageOf(p store.Saved[model.Project], path string) (url, name string) {
	for _, one := range [][2]string{{"load", "Night load"}, {"money", "Money"}, {"shelf", "Parts shelf"}} {
		if model.Within(path, one[0]) {
			return projectURL(p.ID) + "/" + one[0], one[1]
		}
	}
	return projectURL(p.ID) + "/place", "Place and sun"
}

func variantPageOf(p store.Saved[model.Project], v store.Saved[model.Variant], path string) (url, name string) {
	for i := range v.Value.Stores {
		switch {
		case model.Within(path, model.StorePath(i, "hoist")+".trials"):
			return storeURL(p.ID, v.ID, i, "trials"), "Tests and repairs"
		case model.Within(path, model.StorePath(i, "hoist")):
			return storeURL(p.ID, v.ID, i, "hoist"), "Lifted mass"
		case model.Within(path, model.StorePath(i, "cells")):
			return storeURL(p.ID, v.ID, i, "cells"), "Battery"
		}
	}
	if model.Within(path, "parts") {
		return variantURL(p.ID, v.ID) + "/parts", "Buy and make"
	}
	return variantURL(p.ID, v.ID), "Variant"
}
