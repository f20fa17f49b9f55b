package page

import (
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/store"
	"duskweight/web/form"
)

// PlanLinks leads from a path of a variant, or one behind "load." of its project, to the field on the page that asks for
// it. It reads the labels of a form when the first path leads there.
type PlanLinks struct {
	of      Tables
	project store.Saved[model.Project]
	variant model.Variant
	id      int64

	load, own map[string]string
	stores    map[int]map[string]string
}

// LinksOf leads to the fields of one variant, as it is typed.
func (s *Site) LinksOf(p store.Saved[model.Project], v model.Variant, id int64) *PlanLinks {
	return &PlanLinks{of: s.Tables, project: p, variant: v, id: id, stores: map[int]map[string]string{}}
}

// To is the link to the field of a path. Where the path is that of a part, it leads to the first field in it.
func (l *PlanLinks) To(at string) form.LinkView {
	if model.Within(at, "load") {
		if l.load == nil {
			f := form.Form[model.Project]{Parts: form.Within("load", func(p *model.Project) *load.Load { return &p.Load }, l.of.Load()...)}
			l.load = f.Labels(l.project.Value)
		}
		return fieldIn(at, l.load, ProjectURL(l.project.ID)+"/load")
	}
	for i, st := range l.variant.Stores {
		if k := l.of.Stores.Of(st.Kind()); k.Row != nil && model.Within(at, k.Row.Path(i)) {
			return l.inStore(at, i, k)
		}
	}
	if l.own == nil {
		l.own = form.Form[model.Variant]{Parts: l.of.Variant()}.Labels(l.variant)
	}
	if at == "stores" {
		return form.LinkView{Text: "Stores", URL: VariantURL(l.project.ID, l.id) + "#stores"}
	}
	if model.Within(at, "backup") {
		return fieldIn(at, l.own, VariantURL(l.project.ID, l.id)+"/backup")
	}
	if l.of.OfSeason != nil && l.of.OfSeason(at) {
		return fieldIn(at, l.own, VariantURL(l.project.ID, l.id)+"/season")
	}
	return fieldIn(at, l.own, VariantURL(l.project.ID, l.id))
}

// inStore leads to a field of store i, on its own page or on another page of its kind.
func (l *PlanLinks) inStore(at string, i int, k Kind) form.LinkView {
	here := StoreURL(l.project.ID, l.id, i, k.Row.Key)
	if l.stores[i] == nil {
		inside := map[string]string{}
		for path, label := range k.Inputs.Labels(l.variant.Stores[i]) {
			inside[model.Join(k.Row.Path(i), path)] = label
		}
		l.stores[i] = inside
	}
	for _, t := range k.Also {
		if model.Within(at, model.Join(k.Row.Path(i), t.URL)) {
			return form.LinkView{Text: t.Text, URL: FieldURL(StoreURL(l.project.ID, l.id, i, t.URL), at)}
		}
	}
	return fieldIn(at, l.stores[i], here)
}

// fieldIn is the link to a path on a page whose labels are given.
func fieldIn(at string, labels map[string]string, page string) form.LinkView {
	if labels[at] == "" && !strings.HasSuffix(at, "]") {
		var inside []string
		for path := range labels {
			if model.Within(path, at) {
				inside = append(inside, path)
			}
		}
		if len(inside) > 0 {
			at = slices.Min(inside)
		}
	}
	return FieldLink(at, labels, page)
}
