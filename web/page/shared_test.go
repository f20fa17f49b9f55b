package page

import (
	"context"
	"errors"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"
)

// Ten equal questions are one run, later ones are answered from what is kept, and different ones run one at a time.
func TestSharedRunsOnce(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var s Shared[int, int]
		var runs, here, most atomic.Int32
		ask := func(key int) {
			got, err := s.Of(t.Context(), key, func(context.Context) (int, error) {
				runs.Add(1)
				most.Store(max(most.Load(), here.Add(1)))
				time.Sleep(time.Second)
				here.Add(-1)
				return key * 10, nil
			})
			if err != nil || got != key*10 {
				t.Errorf("%d: %d, %v", key, got, err)
			}
		}
		var all sync.WaitGroup
		for i := range 30 {
			all.Go(func() { ask(i % 3) })
		}
		all.Wait()
		for i := range 3 {
			ask(i)
		}
		if runs.Load() != 3 || most.Load() != 1 {
			t.Errorf("%d runs, %d at a time", runs.Load(), most.Load())
		}
		for i := range sharedKept {
			ask(10 + i)
		}
		if ask(0); runs.Load() != 3+sharedKept+1 {
			t.Errorf("%d runs: %d answers are kept, the oldest goes", runs.Load(), sharedKept)
		}
	})
}

// Who leaves ends the run only where nobody else waits for it; an answer that failed is not kept.
func TestSharedStops(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var s Shared[string, int]
		var runs, stopped int
		work := func(ctx context.Context) (int, error) {
			runs++
			select {
			case <-time.After(time.Second):
				return 7, nil
			case <-ctx.Done():
				stopped++
				return 0, ctx.Err()
			}
		}
		one, leave := context.WithCancel(t.Context())
		var all sync.WaitGroup
		all.Go(func() {
			if _, err := s.Of(one, "same", work); !errors.Is(err, context.Canceled) {
				t.Error(err)
			}
		})
		all.Go(func() {
			if got, err := s.Of(t.Context(), "same", work); got != 7 || err != nil {
				t.Error(got, err)
			}
		})
		synctest.Wait()
		leave()
		all.Wait()
		if runs != 1 || stopped != 0 {
			t.Errorf("%d runs, %d stopped", runs, stopped)
		}

		alone, leave := context.WithCancel(t.Context())
		all.Go(func() { _, _ = s.Of(alone, "alone", work) })
		synctest.Wait()
		leave()
		all.Wait()
		synctest.Wait()
		if runs != 2 || stopped != 1 {
			t.Errorf("%d runs, %d stopped", runs, stopped)
		}
		if got, err := s.Of(t.Context(), "alone", work); got != 7 || err != nil || runs != 3 {
			t.Error("a run that was stopped is kept:", got, err, runs)
		}
	})
}

// A panic in the work is an error of all who wait, and the next question is answered.
func TestSharedPanic(t *testing.T) {
	var s Shared[int, int]
	if _, err := s.Of(t.Context(), 1, func(context.Context) (int, error) { panic("out of cells") }); err == nil || !strings.Contains(err.Error(), "out of cells") {
		t.Error(err)
	}
	if got, err := s.Of(t.Context(), 1, func(context.Context) (int, error) { return 5, nil }); got != 5 || err != nil {
		t.Error(got, err)
	}
}
