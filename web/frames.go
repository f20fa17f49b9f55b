package web

import (
	"context"
	"fmt"
	"net/http"
	"sync"
	"time"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// project reads the project of the address.
func (s *Site) project(r *http.Request) (store.Saved[model.Project], error) {
	id, err := pathID(r, "project")
	if err != nil {
		return store.Saved[model.Project]{}, err
	}
	return s.Store.Project(r.Context(), id)
}

// variant reads the variant of the address, and its project.
func (s *Site) variant(r *http.Request) (store.Saved[model.Project], store.Saved[model.Variant], error) {
	p, err := s.project(r)
	if err != nil {
		return p, store.Saved[model.Variant]{}, err
	}
	id, err := pathID(r, "variant")
	if err != nil {
		return p, store.Saved[model.Variant]{}, err
	}
	v, err := s.Store.Variant(r.Context(), id)
	if err == nil && v.Project != p.ID {
		err = errNotFound
	}
	return p, v, err
}

// variantIn is variant with the units of the settings.
func (s *Site) variantIn(r *http.Request) (p store.Saved[model.Project], v store.Saved[model.Variant], sys unit.System, err error) {
	if p, v, err = s.variant(r); err == nil {
		sys, err = s.units(r.Context())
	}
	return p, v, sys, err
}

// chosen reads the project of the address, all its variants, and those that the address asks for.
func (s *Site) chosen(r *http.Request) (p store.Saved[model.Project], all, chosen []store.Saved[model.Variant], err error) {
	if p, err = s.project(r); err == nil {
		all, err = s.Store.Variants(r.Context(), p.ID)
	}
	return p, all, chosenVariants(all, r.URL.Query()["v"]), err
}

// storeURL is the page of one store of a variant.
func storeURL(p, v int64, i int, kind string) string {
	return fmt.Sprintf("%s/%s/%d", variantURL(p, v), kind, i)
}

// projectFrame is the frame of a page of a project; here is the address of the tab that is filled.
func (s *Site) projectFrame(ctx context.Context, p store.Saved[model.Project], title, here string) (frame, error) {
	tabs, err := s.projectTabs(ctx, p, here)
	if err != nil {
		return frame{}, err
	}
	steps, err := s.stepsOf(ctx, p.ID)
	steps.Back = here
	return frame{Title: title, Tabs: tabs, Steps: steps}, err
}

// stepsOf says what undo and redo would do in a project. Where nothing can be saved, nothing is offered.
func (s *Site) stepsOf(ctx context.Context, project int64) (stepsView, error) {
	v := stepsView{URL: projectURL(project)}
	if s.Store.ReadOnly() != "" {
		return v, nil
	}
	undo, redo, err := s.Store.Steps(ctx, project)
	v.Undo, v.Redo = stepOf(undo), stepOf(redo)
	return v, err
}

// variantFrame adds the pages of a variant.
func (s *Site) variantFrame(ctx context.Context, p store.Saved[model.Project], v store.Saved[model.Variant], title, here string) (frame, error) {
	u := variantURL(p.ID, v.ID)
	f, err := s.projectFrame(ctx, p, title+": "+v.Value.Name, u)
	f.Steps.Back = here
	f.Inner = []tab{{Text: "Variant", URL: u}}
	for i, st := range v.Value.Stores {
		switch {
		case st.Hoist != nil:
			f.Inner = append(f.Inner, tab{Text: "Lifted mass", URL: storeURL(p.ID, v.ID, i, "hoist")})
		case st.Cells != nil:
			f.Inner = append(f.Inner, tab{Text: "Battery", URL: storeURL(p.ID, v.ID, i, "cells")})
		}
	}
	for i, st := range v.Value.Stores {
		if st.Hoist != nil {
			f.Inner = append(f.Inner, tab{Text: "Tests and repairs", URL: storeURL(p.ID, v.ID, i, "trials")})
		}
	}
	f.Inner = append(f.Inner, tab{Text: "What it would take", URL: u + "/takes"}, tab{Text: "Buy and make", URL: u + "/parts"}, tab{Text: "Plan sheet", URL: u + "/sheet"})
	at(f.Inner, here)
	return f, err
}

// grounds keeps what the last few projects come to before any variant, by project and revision: a page that follows
// typing computes only what changed.
type grounds struct {
	now  func() time.Time
	mu   sync.Mutex
	kept []keptGround
}

type keptGround struct {
	project, revision int64
	ground            model.Ground
}

const groundsKept = 8

// of returns the ground of a stored project on this day.
func (g *grounds) of(p store.Saved[model.Project]) model.Ground {
	return g.keep(p).At(reason.Today(g.now()))
}

// keep returns the ground of a stored project on no day.
func (g *grounds) keep(p store.Saved[model.Project]) model.Ground {
	g.mu.Lock()
	for i, k := range g.kept {
		if k.project == p.ID && k.revision == p.Revision {
			copy(g.kept[1:i+1], g.kept[:i])
			g.kept[0] = k
			g.mu.Unlock()
			return k.ground
		}
	}
	g.mu.Unlock()
	fresh := keptGround{p.ID, p.Revision, model.Prepare(p.Value)}
	g.mu.Lock()
	defer g.mu.Unlock()
	g.kept = append([]keptGround{fresh}, g.kept...)
	g.kept = g.kept[:min(len(g.kept), groundsKept)]
	return fresh.ground
}
