package page

import (
	"fmt"
	"net/http"
	"strconv"

	"github.com/go-chi/chi/v5"
)

// StoreURL is the page of one store of a variant.
func StoreURL(p, v int64, i int, kind string) string {
	return fmt.Sprintf("%s/%s/%d", VariantURL(p, v), kind, i)
}

func ProjectURL(id int64) string { return "/projects/" + strconv.FormatInt(id, 10) }

func VariantURL(project, id int64) string {
	return ProjectURL(project) + "/variants/" + strconv.FormatInt(id, 10)
}

// PathID reads a number from the address; what is no number is not found.
func PathID(r *http.Request, name string) (int64, error) {
	text := chi.URLParam(r, name)
	id, err := strconv.ParseInt(text, 10, 64)
	if err != nil || id <= 0 || strconv.FormatInt(id, 10) != text {
		return 0, ErrNotFound
	}
	return id, nil
}
