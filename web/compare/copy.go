package compare

import (
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// copyView is the form that copies one input of one variant into another. A strength or a rating is not among them: it is
// read on the part that hangs there.
type copyView struct {
	Action    string
	Inputs    []copyInput
	Variants  []copyVariant
	Withheld  bool // inputs that differ and are read on a part
	Revisions []page.HiddenValue
}

type copyInput struct{ Key, Name string }

type copyVariant struct{ ID, Name string }

// Names of the form.
const (
	nameInput = "input"
	nameFrom  = "from"
	nameTo    = "to"
)

// copyOf lists the inputs that differ and may be copied.
func (v *compareView) copyOf(groups []compareGroup, chosen []store.Saved[model.Variant], action string) {
	c := copyView{Action: action}
	for _, g := range groups {
		for _, r := range g.Rows {
			switch {
			case !r.Differs || r.key == "":
			case r.labelled:
				c.Withheld = true
			default:
				part, _, _ := strings.Cut(r.key, "/")
				c.Inputs = append(c.Inputs, copyInput{r.key, part + ": " + r.Name})
			}
		}
	}
	for _, s := range chosen {
		id := strconv.FormatInt(s.ID, 10)
		c.Variants = append(c.Variants, copyVariant{id, s.Value.Name})
		c.Revisions = append(c.Revisions, page.HiddenValue{Name: "revision-" + id, Value: strconv.FormatInt(s.Revision, 10)})
	}
	v.Copy = c
}

// copyInput writes one input of one variant into another, as one change that can be taken back.
func (s *Pages) copyInput(w http.ResponseWriter, r *http.Request) error {
	p, all, _, err := s.Chosen(r)
	if err != nil {
		return err
	}
	sys, err := s.Units(r.Context())
	if err != nil {
		return err
	}
	pick := func(name string) (store.Saved[model.Variant], bool) {
		i := slices.IndexFunc(all, func(v store.Saved[model.Variant]) bool { return strconv.FormatInt(v.ID, 10) == r.PostFormValue(name) })
		if i < 0 {
			return store.Saved[model.Variant]{}, false
		}
		return all[i], true
	}
	from, known := pick(nameFrom)
	to, there := pick(nameTo)
	if !known || !there || from.ID == to.ID {
		return page.BadRequest("Choose two variants: the one that has the value, and another that gets it.")
	}
	if r.PostFormValue("revision-"+strconv.FormatInt(to.ID, 10)) != strconv.FormatInt(to.Revision, 10) {
		return store.ErrStale
	}
	two := []store.Saved[model.Variant]{from, to}
	for _, g := range inputGroups(s.Tables, two, true, sys) {
		for _, row := range g.Rows {
			if row.key != r.PostFormValue(nameInput) {
				continue
			}
			if row.labelled {
				return page.BadRequest("A strength or a rating is read on the part itself. It is not copied.")
			}
			next := document.Clone(to.Value)
			if row.at[0] == "" || row.at[1] == "" || document.CopyInput(&next, row.at[1], from.Value, row.at[0]) != nil {
				return page.BadRequest(fmt.Sprintf("One of the two variants has no such part. Add it to %q first.", to.Value.Name))
			}
			if problems := model.CheckVariant(next); len(problems) > 0 {
				return problems
			}
			edit := store.Edit{Revision: to.Revision, Said: form.Clip(row.Name+" copied from "+from.Value.Name, 120)}
			if _, err := s.Store.SaveVariant(r.Context(), to.ID, next, edit, s.Now()); err != nil {
				return err
			}
			return page.SeeOther(w, r, page.ProjectURL(p.ID)+"/compare?"+r.URL.RawQuery+"#inputs")
		}
	}
	return page.BadRequest("There is no such input in both variants.")
}
