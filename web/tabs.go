package web

import (
	"context"

	"duskweight/internal/model"
	"duskweight/internal/store"
)

// projectTabs is the navigation of a project: its pages, its variants, compare. here is the address of the open page.
func (s *Site) projectTabs(ctx context.Context, p store.Saved[model.Project], here string) ([]tab, error) {
	variants, err := s.Store.VariantNames(ctx, p.ID)
	if err != nil {
		return nil, err
	}
	url := projectURL(p.ID)
	tabs := []tab{{Text: p.Value.Name, URL: url}, {Text: "Place and sun", URL: url + "/place"}, {Text: "Night load", URL: url + "/load"}, {Text: "Parts shelf", URL: url + "/shelf"}}
	for _, v := range variants {
		tabs = append(tabs, tab{Text: v.Name, URL: variantURL(p.ID, v.ID)})
	}
	if len(variants) > 1 {
		tabs = append(tabs, tab{Text: "Compare", URL: url + "/compare"})
	}
	return at(tabs, here), nil
}

// at marks the open page.
func at(tabs []tab, here string) []tab {
	for i := range tabs {
		tabs[i].Here = tabs[i].URL == here
	}
	return tabs
}
