// Package variant shows the page of a variant (/projects/{project}/variants/{variant}): its panels and its list of
// stores, what it gives in a year and on a day, what is missing. Each store has a room of its own.
package variant

import (
	"fmt"
	"net/http"
	"slices"
	"strconv"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct{ *page.Site }

// Routes hangs what makes a variant.
func (s *Pages) Routes(r chi.Router) {
	r.Post("/projects/{project}/variants", s.Page(s.addVariant))
}

// OfVariant hangs the pages below the address of the variant.
func (s *Pages) OfVariant(r chi.Router) {
	page.EditorAt(r, s.Site, "/", s.wholeVariantEditor)
	r.Post("/stores", s.Page(s.changeStores))
	page.EditorAt(r, s.Site, "/backup", s.backupEditor)
	r.Get("/backup/{picture}.csv", s.Page(s.sendBackupCSV))
	page.EditorAt(r, s.Site, "/season", s.seasonEditor)
	r.Get("/season/{picture}.csv", s.Page(s.sendSeasonCSV))
	r.Post("/delete", s.Page(s.deleteVariant))
	r.Get("/{picture}.csv", s.Page(s.sendVariantCSV))
}

// The page Variant: /projects/{project}/variants/{variant}.

func (s *Pages) wholeVariantEditor(r *http.Request) (page.Editor[model.Variant], error) {
	p, v, sys, err := s.VariantIn(r)
	if err != nil {
		return page.Editor[model.Variant]{}, err
	}
	return s.EditVariant(r, p, v, sys)
}

// EditVariant is the editor of a variant that was read already.
func (s *Pages) EditVariant(r *http.Request, p store.Saved[model.Project], v store.Saved[model.Variant], sys unit.System) (page.Editor[model.Variant], error) {
	url := page.VariantURL(p.ID, v.ID)
	e := s.VariantEditor(r.Context(), p, v, sys, url, "Variant")
	e.Title = v.Value.Name
	e.Form.Parts, e.Tidy = VariantForm(), DropEmptySheets
	e.Below = storeList(storeListOf(s.Tables.Stores, p, v))
	month := s.monthOf(r)
	if r.URL.Query().Has("month") {
		e.Query = fmt.Sprintf("?month=%d", month+1)
	}
	e.Answer = func(w model.Variant) (page.Answer, error) {
		g := s.Grounds.Of(p)
		r, links := s.Results.Typed(p, v, w), s.LinksOf(p, w, v.ID)
		view := variantViewOf(s.Tables.Stores, g, r, p.Value.Currency, month, url, sys)
		view.Managed = page.ManagedSays(g, w, r, p.Value.Currency, sys)
		for _, say := range page.BackupCautions(w) {
			view.Cautions = append(view.Cautions, page.FlagView{Say: say, Bad: true})
		}
		view.Missing = missingOf(links, view.missing, sys)
		view.Against = page.ReasonsOf(r.Because, sys, links.To)
		if slices.ContainsFunc(r.Stores, func(st model.StoreResult) bool { return st.Ready != r.Ready }) {
			view.States = page.EachStore(r, sys)
		}
		return page.Answer{First: view.Headline, Facts: view.Facts, Bands: []page.BandView{page.VariantBand(r, sys, links.To)}, Body: variantResults(view)}, nil
	}
	return e, nil
}

// monthOf is the month that the address names, 0 for January; the present one where it names none.
func (s *Pages) monthOf(r *http.Request) int {
	if m, err := strconv.Atoi(r.URL.Query().Get("month")); err == nil && m >= 1 && m <= 12 {
		return m - 1
	}
	return int(s.Now().Month()) - 1
}

// missingGroup is what is missing for one thing.
type missingGroup struct {
	For   string
	Links []form.LinkView
}

// mostMissing is how many of them stand open; more are a wall that nobody reads.
const mostMissing = 6

// missingOf links what is missing to the page that holds its field, the variant's own, a store's, or the night load, and
// gathers it by what it is needed for.
func missingOf(links *page.PlanLinks, ms []model.Missing, sys unit.System) []missingGroup {
	var out []missingGroup
	at := map[string]int{}
	for _, m := range ms {
		wants := m.Wants.In(sys)
		i, ok := at[wants]
		if !ok {
			i = len(out)
			at[wants] = i
			out = append(out, missingGroup{For: form.SentenceCase(wants)})
		}
		l := links.To(m.Path)
		if !slices.Contains(out[i].Links, l) {
			out[i].Links = append(out[i].Links, l)
		}
	}
	return out
}

// storeListView is the list of stores under the form of a variant.
type storeListView struct {
	URL, Revision string
	Stores        []storeCard
	Full          bool
	Kinds         page.Kinds // that may be added
}

type storeCard struct{ Name, Kind, URL, Index string }

func storeListOf(kinds page.Kinds, p store.Saved[model.Project], v store.Saved[model.Variant]) storeListView {
	out := storeListView{URL: page.VariantURL(p.ID, v.ID), Revision: fmt.Sprint(v.Revision), Full: len(v.Value.Stores) >= 8, Kinds: kinds}
	for i, st := range v.Value.Stores {
		k := st.Kind()
		c := storeCard{Index: page.Itoa(i), Name: st.Design().Name(), Kind: k.Title, URL: page.StoreURL(p.ID, v.ID, i, k.Key)}
		if c.Name == "" {
			c.Name = c.Kind
		}
		out.Stores = append(out.Stores, c)
	}
	return out
}

// changeStores adds, removes or moves up a store of a variant: field do is add: with the key of a kind, remove:1 or up:1.
func (s *Pages) changeStores(w http.ResponseWriter, r *http.Request) error {
	p, v, err := s.Variant(r)
	if err != nil {
		return err
	}
	typed, revision, err := page.PostedForm(r)
	if err != nil {
		return err
	}
	next := document.Clone(v.Value)
	said, err := storeChange(s.Tables.Stores, &next, typed.Get(form.NameDo))
	if err != nil {
		return err
	}
	if problems := model.CheckVariant(next); len(problems) > 0 {
		return problems
	}
	if _, err = s.Store.SaveVariant(r.Context(), v.ID, next, store.Edit{Revision: revision, Said: said}, s.Now()); err != nil {
		return err
	}
	return page.SeeOther(w, r, page.VariantURL(p.ID, v.ID)+"#stores")
}

func storeChange(kinds page.Kinds, v *model.Variant, do string) (string, error) {
	for _, k := range kinds {
		if do == "add:"+k.Row.Key {
			v.Stores = append(v.Stores, k.New())
			return k.Row.Title + " added", nil
		}
	}
	var i int
	switch {
	case scan(do, "remove:%d", &i) && i < len(v.Stores):
		v.Stores = append(v.Stores[:i:i], v.Stores[i+1:]...)
		v.Origins = v.Origins.Without("stores", i)
		return "Store removed", nil
	case scan(do, "up:%d", &i) && i > 0 && i < len(v.Stores):
		v.Stores[i-1], v.Stores[i] = v.Stores[i], v.Stores[i-1]
		v.Origins = originsSwapped(v.Origins, i-1, i)
		return "Order of the stores changed", nil
	}
	return "", page.BadRequest("This page has no such button.")
}

func scan(text, format string, i *int) bool {
	n, err := fmt.Sscanf(text, format, i)
	return n == 1 && err == nil && *i >= 0
}

func originsSwapped(o model.Origins, i, j int) model.Origins {
	out := model.Origins{}
	a, b := fmt.Sprintf("stores[%d]", i), fmt.Sprintf("stores[%d]", j)
	for path, origin := range o {
		switch {
		case model.Within(path, a):
			path = b + path[len(a):]
		case model.Within(path, b):
			path = a + path[len(b):]
		}
		out[path] = origin
	}
	return out
}

// addVariant makes a new variant: a copy of the one that field from names, or an empty one.
func (s *Pages) addVariant(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Project(r)
	if err != nil {
		return err
	}
	if err := page.ParseForm(r); err != nil {
		return err
	}
	variants, err := s.Store.Variants(r.Context(), p.ID)
	if err != nil {
		return err
	}
	v, said := model.Variant{Name: "New variant"}, "Variant added"
	v.Controller.Kind = panel.ControllerTracking
	for _, have := range variants {
		if r.PostForm.Get("from") == fmt.Sprint(have.ID) {
			v = document.Clone(have.Value)
			for _, st := range v.Stores {
				if k := s.Tables.Stores.Of(st.Kind()); k.Copied != nil {
					k.Copied(st)
				}
			}
			v.Name = page.FreeName(variants, have.Value.Name)
			said = "Copied from " + have.Value.Name
		}
	}
	saved, err := s.Store.CreateVariant(r.Context(), p.ID, v, said, s.Now())
	if err != nil {
		return err
	}
	return page.SeeOther(w, r, page.VariantURL(p.ID, saved.ID))
}

func (s *Pages) deleteVariant(w http.ResponseWriter, r *http.Request) error {
	p, v, err := s.Variant(r)
	if err != nil {
		return err
	}
	_, revision, err := page.PostedForm(r)
	if err != nil {
		return err
	}
	if err := s.Store.DeleteVariant(r.Context(), v.ID, revision, "Variant deleted: "+v.Value.Name, s.Now()); err != nil {
		return err
	}
	return page.SeeOther(w, r, page.ProjectURL(p.ID))
}
