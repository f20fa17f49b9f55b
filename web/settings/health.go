package settings

import (
	"errors"
	"net/http"

	"duskweight/internal/store"
)

// health answers whoever watches over the program, a container say: 200 where a project could be read and saved now, 503 with
// the reason where not. What else is wrong is an error as on every page.
func (s *Pages) health(w http.ResponseWriter, r *http.Request) error {
	err := s.Store.Health(r.Context())
	if errors.Is(err, store.ErrReadOnly) || errors.Is(err, store.ErrMoved) || errors.Is(err, store.ErrWait) {
		http.Error(w, err.Error(), http.StatusServiceUnavailable)
		return nil
	}
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	_, _ = w.Write([]byte("ok\n"))
	return nil
}
