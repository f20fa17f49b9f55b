package page

import (
	"context"
	"net/http"
	"strconv"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
)

// StoreOf reads variant and store of the address; the first fitting store where the address names none.
func (s *Site) StoreOf(r *http.Request, fits func(model.Store) bool) (p store.Saved[model.Project], v store.Saved[model.Variant], i int, sys unit.System, err error) {
	if p, v, sys, err = s.VariantIn(r); err != nil {
		return
	}
	i = -1
	if text := chi.URLParam(r, "i"); text != "" {
		n, bad := strconv.Atoi(text)
		if bad == nil && n >= 0 && n < len(v.Value.Stores) && fits(v.Value.Stores[n]) {
			i = n
		}
	} else {
		for n, st := range v.Value.Stores {
			if fits(st) {
				i = n
				break
			}
		}
	}
	if i < 0 {
		err = ErrNotFound
	}
	return
}

// VariantEditor is an editor of a variant; the caller adds its form and its answer.
func (s *Site) VariantEditor(ctx context.Context, p store.Saved[model.Project], v store.Saved[model.Variant], sys unit.System, url, title string) Editor[model.Variant] {
	return Editor[model.Variant]{
		Kind: store.VariantKind, Saved: v, Save: s.Store.SaveVariant, Units: sys, Url: url, Title: title,
		Frame: func() (Frame, error) { return s.VariantFrame(ctx, p, v, title, url) },
		Form: form.Form[model.Variant]{Origins: func(v *model.Variant) *model.Origins { return &v.Origins },
			Check: func(v model.Variant) model.Problems { return model.CheckVariantOn(v, reason.Today(s.Now())) }},
	}
}

// ProjectEditor is an editor of a project; the caller adds its form and its answer.
func (s *Site) ProjectEditor(r *http.Request, path, title string) (Editor[model.Project], unit.System, error) {
	p, err := s.Project(r)
	if err != nil {
		return Editor[model.Project]{}, 0, err
	}
	sys, err := s.Units(r.Context())
	if err != nil {
		return Editor[model.Project]{}, 0, err
	}
	url := ProjectURL(p.ID) + path
	return Editor[model.Project]{
		Kind: store.ProjectKind, Saved: p, Save: s.Store.SaveProject, Units: sys, Url: url,
		Frame: func() (Frame, error) { return s.ProjectFrame(r.Context(), p, title, url) },
		Form:  form.Form[model.Project]{Origins: func(p *model.Project) *model.Origins { return &p.Origins }, Check: model.CheckProject},
	}, sys, nil
}
