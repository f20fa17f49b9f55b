package web

import (
	"context"
	"net/http"
	"strconv"
	"sync"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// The page Lifted mass: /projects/{p}/variants/{v}/hoist/{i}, where i is the store's place in the variant.

// hoistPage is the editor of a hoist with what its answer and the parts that follow it are made from.
type hoistPage struct {
	editor[model.Variant]
	i      int // the store's place in its variant
	sys    unit.System
	labels map[string]string // of the inputs, by path
	ground model.Ground
}

// result computes the hoist of a design alone.
func (p hoistPage) result(v model.Variant) *model.HoistResult { return p.ground.Hoist(v, p.i) }

func (s *Site) hoistEditor(r *http.Request) (editor[model.Variant], error) {
	h, err := s.hoistOf(r)
	return h.editor, err
}

func (s *Site) hoistOf(r *http.Request) (hoistPage, error) {
	p, v, i, sys, err := s.storeOf(r, isHoist)
	if err != nil {
		return hoistPage{}, err
	}
	url := storeURL(p.ID, v.ID, i, "hoist")
	e := s.variantEditor(r.Context(), p, v, url, "Lifted mass")
	e.form.parts = within(model.StorePath(i, "hoist"), func(v *model.Variant) *lift.Hoist { return v.Stores[i].Hoist }, hoistInputs()...)
	linkRows(e.form.parts, url)
	for _, p := range e.form.parts {
		if p.group != nil && p.group.title == "Motor" {
			p.group.other = []linkView{{"The plate tells watts, volts, turns and amps at full load", url + "/motor#plate"}}
		}
	}
	h := hoistPage{e, i, sys, e.form.labels(v.Value), s.grounds.of(p)}
	h.answer = func(v model.Variant) (answer, error) {
		view := hoistViewOf(h.ground.Evaluate(v), i, sys, h.labels, url)
		view.Fits = projectURL(p.ID) + "/shelf/fits?" + hoistAt{Variant: e.saved, I: i}.query()
		return answer{first: view.Headline, facts: view.Facts, caution: view.First, body: hoistResults(view)}, nil
	}
	return h, nil
}

// hoistInputs is the form of a hoist, made once: its page asks for it with every key that is typed.
var hoistInputs = sync.OnceValue(hoistForm)

func isHoist(st model.Store) bool { return st.Hoist != nil }

// storeOf reads variant and store of the address; the first fitting store where the address names none.
func (s *Site) storeOf(r *http.Request, fits func(model.Store) bool) (p store.Saved[model.Project], v store.Saved[model.Variant], i int, sys unit.System, err error) {
	if p, v, sys, err = s.variantIn(r); err != nil {
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
		err = errNotFound
	}
	return
}

// variantEditor is an editor of a variant; the caller adds its form and its answer.
func (s *Site) variantEditor(ctx context.Context, p store.Saved[model.Project], v store.Saved[model.Variant], url, title string) editor[model.Variant] {
	return editor[model.Variant]{
		kind: store.VariantKind, saved: v, save: s.Store.SaveVariant, url: url, title: title,
		frame: func() (frame, error) { return s.variantFrame(ctx, p, v, title, url) },
		form:  form[model.Variant]{origins: func(v *model.Variant) *model.Origins { return &v.Origins }, check: model.CheckVariant},
	}
}

// labels gives the label of every input by its path.
func (f form[T]) labels(t T) map[string]string {
	out := map[string]string{}
	f.walk(f.parts, &t, func(in *input[T]) { out[in.path] = in.label })
	titles(f.parts, &t, out)
	return out
}

// titles adds the names of the lists, by their paths: a list can be missing too.
func titles[T any](parts []part[T], t *T, out map[string]string) {
	for _, p := range parts {
		switch {
		case p.group != nil:
			titles(p.group.parts, t, out)
		case p.list != nil:
			out[p.list.path] = p.list.title
			for i := range p.list.count(t) {
				titles(p.list.row(i), t, out)
			}
		}
	}
}
