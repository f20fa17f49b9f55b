package page

import (
	"context"

	"duskweight/internal/model"
	"duskweight/internal/store"
)

// ProjectTabs is the navigation of a project: its pages, its variants, compare. here is the address of the open page.
func (s *Site) ProjectTabs(ctx context.Context, p store.Saved[model.Project], here string) ([]Tab, error) {
	variants, err := s.Store.VariantNames(ctx, p.ID)
	if err != nil {
		return nil, err
	}
	url := ProjectURL(p.ID)
	tabs := []Tab{{Text: p.Value.Name, URL: url}, {Text: "Place and sun", URL: url + "/place"}, {Text: "Night load", URL: url + "/load"}, {Text: "Parts shelf", URL: url + "/shelf"}}
	for _, v := range variants {
		tabs = append(tabs, Tab{Text: v.Name, URL: VariantURL(p.ID, v.ID)})
	}
	if len(variants) > 1 {
		tabs = append(tabs, Tab{Text: "Compare", URL: url + "/compare"})
	}
	return at(tabs, here), nil
}

// at marks the open page.
func at(tabs []Tab, here string) []Tab {
	for i := range tabs {
		tabs[i].Here = tabs[i].URL == here
	}
	return tabs
}
