package overview

import (
	"net/http"

	"duskweight/web/form"
	"duskweight/web/page"
)

// sendMenu sends what each variant comes to, by the address of the variant: the menu of the variants tells it when it is opened.
// It is asked for by a script, so that no other page has to work out every variant of its project.
func (s *Pages) sendMenu(w http.ResponseWriter, r *http.Request) error {
	a, err := s.ask(r)
	if err != nil {
		return err
	}
	says := map[string]string{}
	for i, v := range a.variants {
		says[page.VariantURL(a.project.ID, v.ID)] = page.ReadyOf(a.results[i], a.sys) + ", " + form.OrNotKnown(a.results[i].Verdict)
	}
	return page.WriteJSON(w, http.StatusOK, says)
}
