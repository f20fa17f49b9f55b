package hoist

import (
	"errors"
	"net/http"
	"slices"
	"strconv"

	"duskweight/internal/catalog"
	"duskweight/internal/document"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// POST …/hoist/{i}/gear puts the gearbox of the motor's label into the train, as its first stage.

// boxView is a gearbox of the label that is not in the train yet; Ratio is empty where there is none.
type boxView struct{ Ratio, Action, Revision string }

func boxOf(h *model.HoistResult, sys unit.System, url string, revision int64) boxView {
	g, missing := lift.LabelGear(h.Design, h.Drive.Stages)
	if !missing {
		return boxView{}
	}
	return boxView{unit.GearRatios.Format(float64(g), sys) + " : 1", url + "/gear", strconv.FormatInt(revision, 10)}
}

// putGear saves the gearbox as one step that can be undone. Its efficiency is not known: nobody has said it yet.
func (s *Pages) putGear(w http.ResponseWriter, r *http.Request) error {
	at, err := s.rowsPlace(r)
	if err != nil {
		return err
	}
	_, revision, err := page.PostedForm(r)
	if err != nil {
		return err
	}
	ratio, missing := lift.LabelGear(*at.hoist(), lift.Compute(*at.hoist()).Stages)
	if !missing {
		return page.SeeOther(w, r, at.url)
	}
	next := document.Clone(at.variant.Value)
	h := next.Stores[at.i].Hoist
	h.Train.Stages = slices.Insert(h.Train.Stages, 0, lift.Stage{Kind: lift.StageBox, Ratio: unit.Of(ratio)})
	prefix := model.HoistPath(at.i)
	taken := catalog.Taken{Own: []string{"train.stages[0].kind", "train.stages[0].ratio"}, Stages: 1}
	next.Origins = originsTaken(next.Origins, prefix, taken, catalog.From{})
	table := form.Form[model.Variant]{Parts: form.Within(prefix, func(v *model.Variant) *lift.Hoist { return v.Stores[at.i].Hoist }, HoistForm()...)}
	edit := store.Edit{Revision: revision, Said: "The gearbox of the label, put into the train. " + form.Said(table.Differences(at.variant.Value, next, at.sys)), Settles: settledBy(prefix, taken)}
	_, err = s.Store.SaveVariant(r.Context(), at.variant.ID, next, edit, s.Now())
	if stale, ok := errors.AsType[*store.Stale[model.Variant]](err); ok {
		return &page.Conflict{Back: at.url, Rows: page.ConflictRows(table, stale.Current.Value, next, at.sys)}
	}
	if err != nil {
		return err
	}
	return page.SeeOther(w, r, page.FieldURL(at.url, prefix+".train.stages[0].efficiency"))
}
