package page

import "net/http"

// InLine answers the requests to its routes so many at a time and the others after them: work that takes seconds, or much
// memory, leaves the other pages their share. Who leaves the page while it waits has no answer.
func InLine(atOnce int) func(http.Handler) http.Handler {
	place := make(chan struct{}, atOnce)
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
