package page

import (
	"net/http"
	"strings"

	"github.com/go-chi/chi/v5"
)

// EditorAt hangs a page with a form at an address: GET shows it, POST saves it, POST …/try computes only.
func EditorAt[T any](r chi.Router, s *Site, at string, open func(*http.Request) (Editor[T], error)) {
	do := func(answer func(*Site, http.ResponseWriter, *http.Request, Editor[T]) error) http.HandlerFunc {
		return s.Page(func(w http.ResponseWriter, r *http.Request) error {
			e, err := open(r)
			if err != nil {
				return err
			}
			return answer(s, w, r, e)
		})
	}
	r.Get(at, do(showEditor[T]))
	r.Post(at, do(saveEditor[T]))
	r.Post(strings.TrimSuffix(at, "/")+"/try", do(TryEditor[T]))
}
