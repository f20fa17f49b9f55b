package page

import (
	"fmt"
	"net/http"
	"net/url"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/store"
)

// The page Compare: /projects/{project}/compare?v=1&v=2. Two to four variants side by side.

const MostCompared = 4

type CompareChoice struct {
	ID, Name string
	Chosen   bool
}

// ChosenVariants picks the variants of the address, at most four; the first four where it names none.
func ChosenVariants(all []store.Saved[model.Variant], ids []string) []store.Saved[model.Variant] {
	var out []store.Saved[model.Variant]
	for _, v := range all {
		if len(ids) == 0 || slices.Contains(ids, fmt.Sprint(v.ID)) {
			out = append(out, v)
		}
	}
	return out[:min(len(out), MostCompared)]
}

// NamingChosen is the query of an address that names those variants.
func NamingChosen(chosen []store.Saved[model.Variant]) url.Values {
	q := url.Values{}
	for _, v := range chosen {
		q.Add("v", fmt.Sprint(v.ID))
	}
	return q
}

// LeftOr is no error where the page was left meanwhile.
func LeftOr(r *http.Request, err error) error {
	if r.Context().Err() != nil {
		return nil
	}
	return err
}
