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

// refusedEntries leads to the pages of a project and of some of its variants on which refused entries wait.
func (s *Site) refusedEntries(ctx context.Context, p store.Saved[model.Project], variants ...store.Saved[model.Variant]) ([]linkView, error) {
	drafts, err := s.Store.Drafts(ctx, store.Thing{Kind: store.ProjectKind, ID: p.ID})
	if err != nil {
		return nil, err
	}
	out := waitingOn(drafts, "", func(path string) (string, string) { return projectPageOf(p, path) })
	for _, v := range variants {
		if drafts, err = s.Store.Drafts(ctx, store.Thing{Kind: store.VariantKind, ID: v.ID}); err != nil {
			return nil, err
		}
		out = append(out, waitingOn(drafts, " of "+orUnnamed(v.Value.Name), func(path string) (string, string) { return variantPageOf(p, v, path) })...)
	}
	return out, nil
}

// waitingOn counts the drafts by their page; page gives its address and its name.
func waitingOn(drafts map[string]string, of string, page func(string) (url, name string)) (out []linkView) {
	count, names := map[string]int{}, map[string]string{}
	for path := range drafts {
		url, name := page(path)
		count[url]++
		names[url] = name
	}
	for url, n := range count {
		say := fmt.Sprintf("%d refused entries wait on “%s”%s: they do not count yet", n, names[url], of)
		if n == 1 {
			say = fmt.Sprintf("A refused entry waits on “%s”%s: it does not count yet", names[url], of)
		}
		out = append(out, linkView{say, url})
	}
	slices.SortFunc(out, func(a, b linkView) int { return strings.Compare(a.URL, b.URL) })
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
