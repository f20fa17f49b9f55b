package page

import (
	"context"
	"net/http"
	"net/http/httptest"
	"sync"
	"sync/atomic"
	"testing"
)

// TestInLine runs work of a kind once at a time on all its routes, and drops whoever left while they waited.
func TestInLine(t *testing.T) {
	line := InLine()
	var here, most, done atomic.Int32
	hold := make(chan struct{})
	work := http.HandlerFunc(func(http.ResponseWriter, *http.Request) {
		most.Store(max(most.Load(), here.Add(1)))
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
	for here.Load() == 0 {
	}
	left, leave := context.WithCancel(t.Context())
	leave()
	routes[0].ServeHTTP(httptest.NewRecorder(), httptest.NewRequest("GET", "/", nil).WithContext(left)) // comes back at once
	close(hold)
	all.Wait()
	if most.Load() != 1 || done.Load() != 6 {
		t.Errorf("%d at a time, %d done", most.Load(), done.Load())
	}
}
