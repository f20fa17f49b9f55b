package page

import "net/http"

// InLine answers the requests to its routes one after the other: work that takes seconds runs once at a time, and leaves
// the other pages their share of the processor. Who leaves the page while it waits has no answer.
func InLine() func(http.Handler) http.Handler {
	place := make(chan struct{}, 1)
	return func(next http.Handler) http.Handler {
		return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			select {
			case place <- struct{}{}:
				defer func() { <-place }()
				next.ServeHTTP(w, r)
			case <-r.Context().Done():
			}
		})
	}
}
