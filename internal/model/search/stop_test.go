package search

import (
	"context"
	"errors"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
)

// ended is a context that has ended.
func ended(t *testing.T) context.Context {
	ctx, stop := context.WithCancel(t.Context())
	stop()
	return ctx
}

// Work that is stopped says so, and does not go on: a search that ignores its context would come to an end and say nothing.
func TestEveryWorkerStops(t *testing.T) {
	doc := catalog.Sample()
	g := model.Prepare(doc.Project)
	v := doc.Variants[2]
	p, _ := doc.Project.Shelve(v, 0)
	laid := layout{p: p, v: v}
	if _, ok := laid.lay(t.Context()); !ok || len(laid.hung) == 0 {
		t.Fatal("nothing is laid out: the test proves nothing")
	}
	passed, _, _, err := laid.screen(t.Context(), 1)
	if err != nil || len(passed) == 0 {
		t.Fatalf("%d pass, %v", len(passed), err)
	}
	run, err := NewFits(t.Context(), g, p, v, 0, 1)
	if err != nil || run.Size() == 0 {
		t.Fatalf("%d to work out, %v", run.Size(), err)
	}
	for what, work := range map[string]func(context.Context) error{
		"laying out": func(ctx context.Context) error {
			if _, ok := (&layout{p: p, v: v}).lay(ctx); !ok {
				return ctx.Err()
			}
			return nil
		},
		"screening": func(ctx context.Context) error {
			_, _, _, err := laid.screen(ctx, 2)
			return err
		},
		"working out": func(ctx context.Context) error {
			return run.Until(ctx, len(passed), 2, nil)
		},
		"the nearest misses": func(ctx context.Context) error {
			_, err := run.Nearest(ctx, 2)
			return err
		},
		"what it takes": func(ctx context.Context) error {
			_, _, err := WhatItTakes(ctx, g, v, g.Evaluate(v))
			return err
		},
		"a sweep": func(ctx context.Context) error {
			_, err := SweepOf(ctx, g, v)
			return err
		},
		"years": func(ctx context.Context) error {
			_, err := Years(ctx, doc.Project, doc.Variants[:1], 2, 1, nil)
			return err
		},
	} {
		if err := work(ended(t)); !errors.Is(err, context.Canceled) {
			t.Errorf("%s: %v, want that it was stopped", what, err)
		}
	}
}

// A search that doubles and halves asks once at the most when it is stopped.
func TestDoublingStops(t *testing.T) {
	for _, reached := range []bool{false, true} {
		asked := 0
		smallest(ended(t), func(float64) bool { asked++; return reached })
		if asked > 1 {
			t.Errorf("asked %d times", asked)
		}
	}
	doc := catalog.Sample()
	v := doc.Variants[1]
	g := model.Prepare(doc.Project).Scaled(0.1)
	now := g.Evaluate(v)
	if share(now) < Target || share(g.Scaled(4).Evaluate(v)) < Target {
		t.Fatal("the sample's battery does not carry four times a tenth of its load: the test proves nothing")
	}
	if k := byLoad(&quest{ctx: ended(t), g: g, v: v, now: now}, true); k.Factor != 1 {
		t.Errorf("the load grew to %v times after the end", k.Factor)
	}
}
