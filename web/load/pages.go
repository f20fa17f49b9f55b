// Package load shows the page Night load (/projects/{project}/load): the lamps and devices of a night, what is always on,
// and when they burn.
package load

import (
	"net/http"
	"reflect"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct{ *page.Site }

// Routes hangs the pages at their addresses.
func (s *Pages) Routes(r chi.Router) {
	page.EditorAt(r, s.Site, "/projects/{project}/load", s.loadEditor)
	r.Get("/projects/{project}/load/a-day.csv", s.Page(s.sendSumCSV))
	r.Get("/projects/{project}/load/{picture}.csv", s.Page(s.sendLoadCSV))
}

// The page Night load: /projects/{project}/load.

func (s *Pages) loadEditor(r *http.Request) (page.Editor[model.Project], error) {
	e, sys, err := s.ProjectEditor(r, "/load", "Night load")
	if err != nil {
		return e, err
	}
	e.Form.Parts = form.Within("load", func(p *model.Project) *load.Load { return &p.Load }, LoadForm()...)
	labels := e.Form.Labels(e.Saved.Value)
	variants, err := s.Store.Variants(r.Context(), e.Saved.ID)
	if err != nil {
		return e, err
	}
	at := loadAtOf(r.URL.Query(), e.Url)
	ground := s.Grounds.Of(e.Saved)
	day, _ := dayIn(ground, at.month)
	strips := &painter{saved: e.Saved.Value, day: ground.Day(day), asks: map[int][24]bool{}}
	e.Answer = func(p model.Project) (page.Answer, error) {
		g := s.Grounds.Of(e.Saved).Loaded(p) // the form changes the load alone
		typed := store.Saved[model.Project]{ID: e.Saved.ID, Value: p}
		v := loadViewOf(g, sys, labels, e.Url)
		v.choose(g, at.month, sys)
		results := s.Results.All(e.Saved, variants)
		if !reflect.DeepEqual(p, e.Saved.Value) {
			results = evaluated(g, variants)
		}
		v.Backups = backupLinks(e.Saved.ID, variants)
		v.Once = s.onceOf(g, typed, variants, results, sys)
		a := page.Answer{First: v.Headline, Facts: v.Facts, Bands: page.ProjectBands(results, e.Saved.ID, variants, sys), Body: loadWhole(v)}
		if !at.all {
			a.Body = loadResults(v)
			a.Also = []page.Piece{{ID: "night", Body: nightHead(v)}, {ID: "rows", Body: rowList(rowsOf(g, p, at, strips, sys))}, {ID: "also", Body: alsoList(alsoRows(g, p, at, sys))}, {ID: "once", Body: onceCard(v.Once)}}
		}
		return a, nil
	}
	e.Form.Press = pressPreset
	e.Style = "load.css"
	if !at.all {
		onCards(&e, at, sys)
		if err := page.ParseForm(r); err != nil {
			return e, err
		}
		strips.typed = r.PostForm
		strips.recall(r.URL.Query().Get(nameAsk))
		painted(&e, strips)
		e.Script = "strip.js"
	}
	return e, nil
}

// backupLinks lead to what helps out in each variant.
func backupLinks(project int64, variants []store.Saved[model.Variant]) (out []form.LinkView) {
	for _, v := range variants {
		kind := "no backup"
		if k := v.Value.Backup.Kind; k != "" {
			kind = form.WordFor(string(k))
		}
		out = append(out, form.LinkView{Text: v.Value.Name + ": " + kind, URL: page.VariantURL(project, v.ID) + "/backup"})
	}
	return out
}

// evaluated are the variants of a project with the load as it is typed.
func evaluated(g model.Ground, variants []store.Saved[model.Variant]) []model.VariantResult {
	out := make([]model.VariantResult, len(variants))
	for i, v := range variants {
		out[i] = g.Evaluate(v.Value)
	}
	return out
}

// sendLoadCSV sends the numbers of one picture of the night load as it is saved.
func (s *Pages) sendLoadCSV(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Project(r)
	if err != nil {
		return err
	}
	return page.SendPicture(w, r, loadViewOf(s.Grounds.Of(p), unit.Metric, nil, "").Pictures)
}
