package store

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"reflect"
	"testing"
	"time"

	"duskweight/internal/model"
)

// twin is a second telling of what the store must do, kept as whole states: what every variant was after each step.
// A step that joins takes the newest state's place; undo and redo walk along.
type twin struct {
	states []map[int64]string // what each living variant's name is
	at     int
	joins  string // page and field of the newest step, while it can be joined
	began  time.Time
}

func (w *twin) now() map[int64]string { return w.states[w.at] }

// change makes a step, or joins the newest one.
func (w *twin) change(id int64, name, joins string, at time.Time) {
	if name != "" && w.now()[id] == name {
		return
	}
	next := map[int64]string{}
	for k, v := range w.now() {
		next[k] = v
	}
	next[id] = name
	if name == "" {
		delete(next, id)
	}
	if joins != "" && joins == w.joins && at.Sub(w.began) < time.Minute {
		w.states[w.at] = next
		return
	}
	w.states = append(w.states[:w.at+1], next)
	w.at++
	w.joins, w.began = joins, at
}

// tab is a page that was opened some time ago.
type tab struct {
	page     string
	id       int64
	revision int64
}

// TestInterleavings lets three pages save, make, delete, undo and redo as they like: nothing is overwritten unseen, and
// the store is always in the state that its twin is in.
func TestInterleavings(t *testing.T) {
	for seed := range uint64(often(6, 40)) {
		r := rand.New(rand.NewPCG(seed, 3))
		s := fresh(t)
		ctx := t.Context()
		p, v := sampled(t, s)
		w := &twin{states: []map[int64]string{{v.ID: v.Value.Name}}}
		tabs := []tab{{"a", v.ID, v.Revision}, {"b", v.ID, v.Revision}, {"c", v.ID, v.Revision}}
		clock, stale, joined := noon, 0, 0
		for step := range 250 {
			clock = clock.Add(time.Duration(r.IntN(40)) * time.Second)
			tab := &tabs[r.IntN(len(tabs))]
			switch r.IntN(10) {
			case 0: // a page is opened
				vs := must[[]Saved[model.Variant]](t)(s.Variants(ctx, p.ID))
				if len(vs) > 0 {
					v := vs[r.IntN(len(vs))]
					tab.id, tab.revision = v.ID, v.Revision
				}
			case 1:
				v := must[Saved[model.Variant]](t)(s.CreateVariant(ctx, p.ID, model.Variant{Name: fmt.Sprint("made ", step)}, "", clock))
				tab.id, tab.revision = v.ID, v.Revision
				w.change(v.ID, v.Value.Name, "", clock)
			case 2:
				_, err := s.Undo(ctx, p.ID, 0, clock)
				if (err == nil) != (w.at > 0) {
					t.Fatalf("seed %d step %d: undo %v at %d", seed, step, err, w.at)
				}
				if err == nil {
					w.at, w.joins = w.at-1, ""
				}
			case 3:
				_, err := s.Redo(ctx, p.ID, 0, clock)
				if (err == nil) != (w.at < len(w.states)-1) {
					t.Fatalf("seed %d step %d: redo %v at %d of %d", seed, step, err, w.at, len(w.states))
				}
				if err == nil {
					w.at, w.joins = w.at+1, ""
				}
			case 4:
				current := must[Saved[model.Variant]](t)(newestOf(s, tab.id))
				err := s.DeleteVariant(ctx, tab.id, tab.revision, "", clock)
				if fits := current.Revision == tab.revision && !current.Deleted; fits != (err == nil) || !fits && !errors.Is(err, ErrStale) {
					t.Fatalf("seed %d step %d: delete %v", seed, step, err)
				} else if fits {
					w.change(tab.id, "", "", clock)
				}
			default:
				current := must[Saved[model.Variant]](t)(newestOf(s, tab.id))
				name, field := fmt.Sprint("name ", r.IntN(50)), fmt.Sprint(r.IntN(2))
				got, err := s.SaveVariant(ctx, tab.id, model.Variant{Name: name}, Edit{Revision: tab.revision, Page: tab.page, Field: field}, clock)
				if fits := current.Revision == tab.revision && !current.Deleted; fits != (err == nil) || !fits && !errors.Is(err, ErrStale) {
					t.Fatalf("seed %d step %d: save %v", seed, step, err)
				} else if !fits {
					stale++
					continue
				}
				before := len(w.states)
				w.change(tab.id, name, fmt.Sprint(tab.id, tab.page, field), clock)
				if len(w.states) == before && got.Revision != tab.revision {
					joined++
				}
				tab.revision = got.Revision
			}
			if step%50 == 49 {
				s = reopened(t, s)
			}
			is := map[int64]string{}
			for _, v := range must[[]Saved[model.Variant]](t)(s.Variants(ctx, p.ID)) {
				is[v.ID] = v.Value.Name
			}
			if !reflect.DeepEqual(is, w.now()) {
				t.Fatalf("seed %d step %d: the store has %v, the twin %v", seed, step, is, w.now())
			}
		}
		if stale == 0 || joined == 0 {
			t.Errorf("seed %d: %d stale saves, %d joined: the test is blind", seed, stale, joined)
		}
	}
}

// newestOf reads a variant, deleted or not.
func newestOf(s *Store, id int64) (v Saved[model.Variant], err error) {
	tx, err := s.reader.Begin()
	if err != nil {
		return v, err
	}
	defer tx.Rollback()
	r, err := newest(context.Background(), tx, Thing{VariantKind, id})
	if err != nil {
		return v, err
	}
	return s.variants().unpack(context.Background(), tx, r)
}
