package hoist

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// The pages From the catalog: /projects/{p}/variants/{v}/hoist/{i}/rows?kind=rope shows the rows of one kind, POST
// …/hoist/{i}/take copies one into the design. A strength is copied only where its source stands behind it, or where
// the user has read it on the part.

// Names of the form.
const (
	nameKind = "kind"
	nameRow  = "row"
	nameAt   = "at"
	nameRead = "read"
)

// rowsPlace is the hoist that the address names, with everything that its pages of rows need.
type rowsPlace struct {
	project store.Saved[model.Project]
	variant store.Saved[model.Variant]
	i       int
	sys     unit.System
	url     string // of the hoist's page
}

func (p rowsPlace) hoist() *lift.Hoist { return p.variant.Value.Stores[p.i].Hoist }

func (s *Pages) rowsPlace(r *http.Request) (rowsPlace, error) {
	p, v, i, sys, err := s.StoreOf(r, page.IsHoist)
	if err != nil {
		return rowsPlace{}, err
	}
	return rowsPlace{p, v, i, sys, page.StoreURL(p.ID, v.ID, i, "hoist")}, nil
}

func (s *Pages) showRows(w http.ResponseWriter, r *http.Request) error {
	at, err := s.rowsPlace(r)
	if err != nil {
		return err
	}
	word := r.URL.Query().Get(nameKind)
	if word == "" {
		f, err := s.VariantFrame(r.Context(), at.project, at.variant, "From the catalog", at.url)
		if err != nil {
			return err
		}
		return s.Show(w, r, http.StatusOK, f, rowsIndex(at.url, rowLinks(at.url)))
	}
	k, ok := catalog.KindOf(word)
	if !ok {
		return page.ErrNotFound
	}
	return s.rowsOf(w, r, at, k, url.Values{}, nil)
}

// rowsOf prints the rows of a kind, with what was refused.
func (s *Pages) rowsOf(w http.ResponseWriter, r *http.Request, at rowsPlace, k catalog.Kind, typed url.Values, problems []form.ProblemView) error {
	f, err := s.VariantFrame(r.Context(), at.project, at.variant, k.Title, at.url)
	if err != nil {
		return err
	}
	status := http.StatusOK
	if len(problems) > 0 {
		f.Refused, status = true, http.StatusUnprocessableEntity
	}
	return s.Show(w, r, status, f, rowsPage(rowsViewOf(k, at, typed, problems)))
}

// takeRow copies a row into the design and saves it as one step that can be undone.
func (s *Pages) takeRow(w http.ResponseWriter, r *http.Request) error {
	at, err := s.rowsPlace(r)
	if err != nil {
		return err
	}
	typed, revision, err := page.PostedForm(r)
	if err != nil {
		return err
	}
	k, ok := catalog.KindOf(typed.Get(nameKind))
	if !ok {
		return page.BadRequest("The catalog has no rows of that kind.")
	}
	row, ok := k.Row(typed.Get(nameRow))
	if !ok {
		return s.rowsOf(w, r, at, k, typed, []form.ProblemView{{ID: "rows", Label: "The row", Say: "Choose one."}})
	}
	choice, problems := choiceOf(k, typed, at.sys)
	if len(problems) > 0 {
		return s.rowsOf(w, r, at, k, typed, problems)
	}
	return s.saveRow(w, r, at, k, row, choice, typed, revision)
}

func (s *Pages) saveRow(w http.ResponseWriter, r *http.Request, at rowsPlace, k catalog.Kind, row catalog.Row, choice catalog.Choice, typed url.Values, revision int64) error {
	next := document.Clone(at.variant.Value)
	taken, err := row.Take(next.Stores[at.i].Hoist, choice)
	if err != nil {
		return s.rowsOf(w, r, at, k, typed, []form.ProblemView{{ID: "rows", Label: rowName(row, at.sys), Say: form.Sentence(say.Why(err).In(at.sys))}})
	}
	if len(taken.Copied)+len(taken.Own) == 0 {
		return s.rowsOf(w, r, at, k, typed, []form.ProblemView{{ID: nameRead, Label: rowName(row, at.sys), Say: "This row gives a strength alone. It is copied only with your word that your part says so."}})
	}
	prefix := model.HoistPath(at.i)
	next.Origins = originsTaken(next.Origins, prefix, taken, row.From)
	table := form.Form[model.Variant]{Parts: form.Within(prefix, func(v *model.Variant) *lift.Hoist { return v.Stores[at.i].Hoist }, HoistForm()...)}
	if problems := model.CheckVariant(next); len(problems) > 0 {
		labels := table.Labels(next)
		var list []form.ProblemView
		for _, p := range problems {
			list = append(list, form.ProblemView{ID: "rows", Label: firstOf(labels[p.Path], rowName(row, at.sys)), Say: form.Sentence(p.Say.In(at.sys))})
		}
		return s.rowsOf(w, r, at, k, typed, list)
	}
	edit := store.Edit{Revision: revision, Said: "From the catalog: " + rowTitle(row, at.sys) + ". " + form.Said(table.Differences(at.variant.Value, next, at.sys)), Settles: settledBy(prefix, taken)}
	_, err = s.Store.SaveVariant(r.Context(), at.variant.ID, next, edit, s.Now())
	if stale, ok := errors.AsType[*store.Stale[model.Variant]](err); ok {
		return &page.Conflict{Back: at.url, Rows: page.ConflictRows(table, stale.Current.Value, next, at.sys)}
	}
	if err != nil {
		return err
	}
	return page.SeeOther(w, r, page.FieldURL(at.url, firstSet(prefix, taken)))
}

// choiceOf reads what was chosen beside the row.
func choiceOf(k catalog.Kind, typed url.Values, sys unit.System) (c catalog.Choice, problems []form.ProblemView) {
	c.At, c.Read = typed.Get(nameAt), typed.Get(nameRead) == "yes"
	bad := func(name string, err error) {
		problems = append(problems, form.ProblemView{ID: name, Label: askLabels[name], Say: form.Sentence(err.Error())})
	}
	for _, name := range k.Asks {
		var err error
		text := typed.Get(name)
		switch name {
		case catalog.AskRatio:
			c.Ratio, err = asked[unit.Ratio](unit.GearRatios, text, sys)
		case catalog.AskRated:
			c.Rated, err = asked[unit.Torque](unit.Torques, text, sys)
		case catalog.AskVolume:
			c.Volume, err = asked[unit.Volume](unit.Volumes, text, sys)
			if err == nil && (!c.Volume.Is || c.Volume.Val <= 0) {
				err = errors.New("give the volume")
			}
		case catalog.AskSeries:
			c.Series, err = asked[unit.Count](unit.Counts, text, sys)
		case catalog.AskRows:
			c.Rows, err = asked[unit.Count](unit.Counts, text, sys)
		}
		if err == nil && (name == catalog.AskSeries && c.Series.Is && (c.Series.Val < 1 || c.Series.Val > mostLamps) || name == catalog.AskRows && c.Rows.Is && (c.Rows.Val < 1 || c.Rows.Val > mostLamps)) {
			err = fmt.Errorf("1 to %s", unit.Thousands(mostLamps))
		}
		if err != nil {
			bad(name, err)
		}
	}
	return c, problems
}

// mostLamps is how many lamps in one row, or rows side by side, are taken at once.
const mostLamps = 1000

func asked[X unit.Number](q unit.Quantity, text string, sys unit.System) (unit.Known[X], error) {
	v, known, err := form.ReadNumber[X](q, text, sys)
	return unit.Known[X]{Val: v, Is: known}, err
}

// originsTaken marks what was copied from a row, and forgets the marks of what it replaced. Typical is what nobody
// published for this very part; what the user has read is the user's own.
func originsTaken(o model.Origins, prefix string, t catalog.Taken, f catalog.From) model.Origins {
	out := model.Origins{}
	stages := prefix + ".train.stages"
	for path, origin := range o {
		switch t.Stages {
		case 1:
			path = moveDown(path, stages)
		case -1:
			to, keep := form.MoveUp(path, stages, 0)
			if !keep {
				continue
			}
			path = to
		}
		out[path] = origin
	}
	for _, list := range [][]string{t.Copied, t.Own, t.Open, t.Gone} {
		for _, path := range list {
			for have := range out {
				if model.Within(have, model.Join(prefix, path)) {
					delete(out, have)
				}
			}
		}
	}
	kind := "catalog"
	if f.Memory {
		kind = "typical"
	}
	for _, path := range t.Copied {
		out[model.Join(prefix, path)] = model.Origin{Kind: model.OriginKind(kind), Source: f.Source}
	}
	return out
}

// moveDown renames a path for a new row before the first of a list.
func moveDown(path, list string) string {
	var i int
	if n, err := fmt.Sscanf(path, list+"[%d]", &i); n != 1 || err != nil {
		return path
	}
	return fmt.Sprintf("%s[%d]%s", list, i+1, path[len(fmt.Sprintf("%s[%d]", list, i)):])
}

// settledBy are the refused texts that a taking does away with.
func settledBy(prefix string, t catalog.Taken) []string {
	var out []string
	for _, list := range [][]string{t.Copied, t.Own, t.Open, t.Gone} {
		for _, path := range list {
			out = append(out, model.Join(prefix, path))
		}
	}
	return out
}

// firstSet is where the hoist's page opens after a taking.
func firstSet(prefix string, t catalog.Taken) string {
	for _, list := range [][]string{t.Open, t.Copied, t.Own} {
		if len(list) > 0 {
			return model.Join(prefix, list[0])
		}
	}
	return prefix
}

// rowName is the name of a row of the catalog in a reader's units.
func rowName(r catalog.Row, sys unit.System) string { return say.Marked(r.Name).In(sys) }

func rowTitle(r catalog.Row, sys unit.System) string {
	if r.Group == "" {
		return rowName(r, sys)
	}
	return r.Group + ", " + rowName(r, sys)
}

func firstOf(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// linkRows puts links to the rows of the catalog into the sections that they fill.
func linkRows[T any](parts []form.Part[T], hoist string) {
	for _, k := range catalog.Kinds() {
		for _, p := range parts {
			if p.Group != nil && p.Group.Title == k.Into {
				p.Group.Links = append(p.Group.Links, rowLink(hoist, k))
			}
		}
	}
}

func rowLink(hoist string, k catalog.Kind) form.LinkView {
	return form.LinkView{Text: k.Title, URL: hoist + "/rows?kind=" + k.Word}
}

func rowLinks(hoist string) (out []form.LinkView) {
	for _, k := range catalog.Kinds() {
		out = append(out, rowLink(hoist, k))
	}
	return out
}
