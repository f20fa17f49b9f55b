package page

import (
	"context"
	"net/http"
	"strconv"
	"time"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// Project reads the project of the address.
func (s *Site) Project(r *http.Request) (store.Saved[model.Project], error) {
	id, err := PathID(r, "project")
	if err != nil {
		return store.Saved[model.Project]{}, err
	}
	return s.Store.Project(r.Context(), id)
}

// Variant reads the variant of the address, and its project.
func (s *Site) Variant(r *http.Request) (store.Saved[model.Project], store.Saved[model.Variant], error) {
	project, err := PathID(r, "project")
	if err != nil {
		return store.Saved[model.Project]{}, store.Saved[model.Variant]{}, err
	}
	variant, err := PathID(r, "variant")
	if err != nil {
		return store.Saved[model.Project]{}, store.Saved[model.Variant]{}, err
	}
	return s.Store.Design(r.Context(), project, variant)
}

// VariantIn is variant with the units of the settings.
func (s *Site) VariantIn(r *http.Request) (p store.Saved[model.Project], v store.Saved[model.Variant], sys unit.System, err error) {
	if p, v, err = s.Variant(r); err == nil {
		sys, err = s.Units(r.Context())
	}
	return p, v, sys, err
}

// Chosen reads the project of the address, all its variants, and those that the address asks for.
func (s *Site) Chosen(r *http.Request) (p store.Saved[model.Project], all, chosen []store.Saved[model.Variant], err error) {
	if p, err = s.Project(r); err == nil {
		all, err = s.Store.Variants(r.Context(), p.ID)
	}
	return p, all, ChosenVariants(all, r.URL.Query()["v"]), err
}

// ProjectFrame is the frame of a page of a project; here is the address of the tab that is filled.
func (s *Site) ProjectFrame(ctx context.Context, p store.Saved[model.Project], title, here string) (Frame, error) {
	tabs, plans, err := s.ProjectTabs(ctx, p, here)
	if err != nil {
		return Frame{}, err
	}
	steps, err := s.StepsOf(ctx, p.ID)
	steps.Back = here
	return Frame{Title: title, Tabs: tabs, Plans: plans, Steps: steps}, err
}

// StepsOf says what undo and redo would do in a project. Where nothing can be saved, nothing is offered.
func (s *Site) StepsOf(ctx context.Context, project int64) (stepsView, error) {
	v := stepsView{URL: ProjectURL(project)}
	if s.Store.ReadOnly() != "" {
		return v, nil
	}
	undo, redo, err := s.Store.Steps(ctx, project)
	v.Undo, v.Redo = StepOf(undo), StepOf(redo)
	return v, err
}

// VariantFrame adds the pages of a variant.
func (s *Site) VariantFrame(ctx context.Context, p store.Saved[model.Project], v store.Saved[model.Variant], title, here string) (Frame, error) {
	u := VariantURL(p.ID, v.ID)
	f, err := s.ProjectFrame(ctx, p, title+": "+v.Value.Name, u)
	f.Steps.Back = here
	for i, st := range v.Value.Stores {
		k := st.Kind()
		f.Inner = append(f.Inner, Tab{Text: k.Title, URL: StoreURL(p.ID, v.ID, i, k.Key)})
	}
	f.Inner = append(f.Inner, Tab{Text: "Panels and stores", URL: u})
	for i, st := range v.Value.Stores {
		for _, t := range s.Tables.Stores.Of(st.Kind()).Also {
			f.Inner = append(f.Inner, Tab{Text: t.Text, URL: StoreURL(p.ID, v.ID, i, t.URL)})
		}
	}
	f.Inner = append(f.Inner, Tab{Text: "Buy and make", URL: u + "/parts"}, Tab{Text: "Plan sheet", URL: u + "/sheet"})
	f.Answers = []Tab{{Text: "What it would take", URL: u + "/takes"}, {Text: "Panel and store together", URL: u + "/sweep"}, {Text: "Cheapest variant", URL: u + "/cheapest"},
		{Text: "How sure", URL: ProjectURL(p.ID) + "/sure?v=" + strconv.FormatInt(v.ID, 10)}}
	at(f.Answers, here)
	at(f.Inner, here)
	return f, err
}

// Grounds keeps what the last few projects come to before any variant, by project and revision: a page that follows
// typing computes only what changed.
type Grounds struct {
	now  func() time.Time
	kept recent[groundKey, model.Ground]
}

type groundKey struct{ project, revision int64 }

const groundsKept = 8

// Of returns the ground of a stored project on this day.
func (g *Grounds) Of(p store.Saved[model.Project]) model.Ground {
	return g.keep(p).At(reason.Today(g.now()))
}

// keep returns the ground of a stored project on no day.
func (g *Grounds) keep(p store.Saved[model.Project]) model.Ground {
	key := groundKey{p.ID, p.Revision}
	if kept, ok := g.kept.find(key); ok {
		return kept
	}
	fresh := model.Prepare(p.Value)
	g.kept.keep(key, fresh, groundsKept)
	return fresh
}
