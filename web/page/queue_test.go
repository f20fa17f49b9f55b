package page

import (
	"context"
	"net/http"
	"net/http/httptest"
	"sync"
	"sync/atomic"
	"testing"
)

// TestInLine runs work of a kind so many at a time on all its routes, and drops whoever left while they waited.
func TestInLine(t *testing.T) {
	for _, atOnce := range []int32{1, 2} {
		inLine(t, atOnce)
	}
}

func inLine(t *testing.T, atOnce int32) {
	t.Helper()
	line := InLine(int(atOnce))
	var here, most, done atomic.Int32
	hold := make(chan struct{})
	work := http.HandlerFunc(func(http.ResponseWriter, *http.Request) {
		now := here.Add(1)
		for was := most.Load(); now > was && !most.CompareAndSwap(was, now); was = most.Load() {
		}
		<-hold
		here.Add(-1)
		done.Add(1)
	})
	routes := []http.Handler{line(work), line(work)}
	var all sync.WaitGroup
	for i := range 6 {
		all.Go(func() {
			routes[i%2].ServeHTTP(httptest.NewRecorder(), httptest.NewRequest("GET", "/", nil))
		})
	}
	for here.Load() < atOnce {
	}
	left, leave := context.WithCancel(t.Context())
	leave()
	routes[0].ServeHTTP(httptest.NewRecorder(), httptest.NewRequest("GET", "/", nil).WithContext(left)) // comes back at once
	close(hold)
	all.Wait()
	if most.Load() != atOnce || done.Load() != 6 {
		t.Errorf("%d at a time, %d done", most.Load(), done.Load())
	}
}
