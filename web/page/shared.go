package page

import (
	"context"
	"fmt"
	"runtime/debug"
	"sync"
)

// Shared answers questions of one kind whose work takes seconds. Equal questions share one run, different ones run one after
// the other, and the last few answers are kept, so that a page, its tables and its pictures do the work once. K names all that
// an answer depends on: the same key has the same answer. What it returns is shared: nobody changes anything in it.
//
// A run goes on while anybody waits for it: who leaves the page ends it only where no other asks the same. The zero value is
// ready for use.
type Shared[K comparable, V any] struct {
	mu      sync.Mutex
	line    chan struct{} // holds one place
	running map[K]*sharedRun[V]
	kept    recent[K, V]
}

// sharedRun is one run that some wait for.
type sharedRun[V any] struct {
	done    chan struct{} // closed when value and err are there
	value   V
	err     error
	waiting int // how many wait, guarded by the lock of Shared
	stop    context.CancelFunc
}

// sharedKept is how many answers of a kind are kept.
const sharedKept = 8

// Of returns the answer to a question: the kept one, that of a run which goes on, or that of a new run of work. It returns the
// error of work, which is not kept, or that of ctx when it ends before the answer is there.
func (s *Shared[K, V]) Of(ctx context.Context, key K, work func(context.Context) (V, error)) (V, error) {
	s.mu.Lock()
	if value, ok := s.kept.find(key); ok {
		s.mu.Unlock()
		return value, nil
	}
	run := s.running[key]
	if run == nil {
		run = s.begin(ctx, key, work)
	}
	run.waiting++
	s.mu.Unlock()
	select {
	case <-run.done:
		s.leave(key, run)
		return run.value, run.err
	case <-ctx.Done():
		s.leave(key, run)
		var none V
		return none, ctx.Err()
	}
}

// begin starts a run in the line. The lock is held.
func (s *Shared[K, V]) begin(ctx context.Context, key K, work func(context.Context) (V, error)) *sharedRun[V] {
	if s.line == nil {
		s.line, s.running = make(chan struct{}, 1), map[K]*sharedRun[V]{}
	}
	ctx, stop := context.WithCancel(context.WithoutCancel(ctx))
	run := &sharedRun[V]{done: make(chan struct{}), stop: stop}
	s.running[key] = run
	go func() {
		defer stop()
		select {
		case s.line <- struct{}{}:
			run.value, run.err = unbroken(ctx, work)
			<-s.line
		case <-ctx.Done():
			run.err = ctx.Err()
		}
		s.mu.Lock()
		defer s.mu.Unlock()
		if s.running[key] == run {
			delete(s.running, key)
		}
		if run.err == nil {
			s.Keep(key, run.value)
		}
		close(run.done)
	}()
	return run
}

// Keep keeps an answer that was worked out elsewhere, bit by bit before somebody's eyes.
func (s *Shared[K, V]) Keep(key K, value V) { s.kept.keep(key, value, sharedKept) }

// leave takes one who waits away, and ends a run that nobody waits for any longer. Who asks the same after that begins anew.
func (s *Shared[K, V]) leave(key K, run *sharedRun[V]) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if run.waiting--; run.waiting > 0 {
		return
	}
	run.stop()
	if s.running[key] == run {
		delete(s.running, key)
	}
}

// unbroken does the work and makes an error of a panic, which would end the program here: no server stands round it.
func unbroken[V any](ctx context.Context, work func(context.Context) (V, error)) (value V, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("panic: %v\n%s", p, debug.Stack())
		}
	}()
	return work(ctx)
}
