package page

import (
	"context"

	"duskweight/internal/model"
	"duskweight/internal/store"
)

// plansView is the menu of the variants of a project.
type plansView struct {
	Here string // the variant of the open page; empty for none
	List []Tab  // the variants, and their comparison where there are several
	New  string // where a new one is made; empty for no menu
}

// ProjectTabs is the navigation of a project: its own pages, and its variants. here is the address of the open page, or of
// its variant.
func (s *Site) ProjectTabs(ctx context.Context, p store.Saved[model.Project], here string) ([]Tab, plansView, error) {
	variants, err := s.Store.VariantNames(ctx, p.ID)
	if err != nil {
		return nil, plansView{}, err
	}
	url := ProjectURL(p.ID)
	tabs := []Tab{{Text: p.Value.Name, URL: url}, {Text: "Place and sun", URL: url + "/place"}, {Text: "Night load", URL: url + "/load"}, {Text: "Parts shelf", URL: url + "/shelf"}}
	plans := plansView{New: url + "/variants"}
	for _, v := range variants {
		at := VariantURL(p.ID, v.ID)
		plans.List = append(plans.List, Tab{Text: OrUnnamed(v.Name), URL: at, Here: at == here})
		if at == here {
			plans.Here = OrUnnamed(v.Name)
		}
	}
	if len(variants) > 1 {
		compare := Tab{Text: "Compare", URL: url + "/compare", Here: here == url+"/compare"}
		plans.List = append(plans.List, compare)
		if compare.Here {
			plans.Here = compare.Text
		}
	}
	return at(tabs, here), plans, nil
}

// at marks the open page.
func at(tabs []Tab, here string) []Tab {
	for i := range tabs {
		tabs[i].Here = tabs[i].URL == here
	}
	return tabs
}
