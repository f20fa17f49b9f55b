package overview

import (
	"fmt"
	"slices"
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/web/form"
	"duskweight/web/page"
)

// nextView is one thing to do: what is wrong, where a reason says it, and the place that mends it.
type nextView struct {
	Say  string
	Link form.LinkView
}

// mostNext is how many steps are told at once.
const mostNext = 4

// nextSteps are the things that help most, the most dangerous first: the first reason of the judge against each variant that
// may not be built as it is, the worst variant first. Then what is missing for an answer, and last what makes it better.
func (s *Pages) nextSteps(a asked) []nextView {
	u := page.ProjectURL(a.project.ID)
	var out []nextView
	add := func(text, url string) { out = append(out, nextView{Link: form.LinkView{Text: text, URL: url}}) }
	g := a.ground
	if g.Sky == nil {
		add("Enter where you are and how your sky is", u+"/place")
	}
	out = append(out, s.openReasons(a)...)
	if g.Sky != nil && g.Load.ApplianceYear <= 0 {
		add("Say which lamps shall burn, and for how long", u+"/load")
	}
	for i, r := range a.results {
		v := page.VariantURL(a.project.ID, a.variants[i].ID)
		switch n := len(r.Missing); {
		case len(a.variants[i].Value.Stores) == 0:
			add("Add a store to “"+r.Name+"”", v+"#stores")
		case n == 1:
			add("“"+r.Name+"”: one input is missing", v+"#missing")
		case n > 1:
			add(fmt.Sprintf("“%s”: %d inputs are missing", r.Name, n), v+"#missing")
		}
		if at, hours := r.Uncharged(); hours > 0 && r.Stores[at].Kind.Stands != "" {
			k := r.Stores[at].Kind
			add(fmt.Sprintf("“%s”: in %s of the year %s. Say where the %s is", r.Name, page.Counted(hours, "hour"), k.Idle, strings.ToLower(k.Title)),
				page.StoreURL(a.project.ID, a.variants[i].ID, at, k.Key)+"#"+form.FieldID(model.Join(k.Path(at), k.Stands)))
		}
	}
	if g.Sky != nil && g.Sky.Rough {
		add("The sky is rough: choose a starter climate or type twelve monthly means", u+"/place")
	}
	if len(out) == 0 && len(a.variants) > 1 {
		add("Compare the variants side by side", u+"/compare")
	}
	return out[:min(len(out), mostNext)]
}

// openReasons are the first reasons against the variants, the worst variant first, with the field that decides each.
func (s *Pages) openReasons(a asked) (out []nextView) {
	order := make([]int, len(a.results))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(x, y int) int {
		switch {
		case a.results[x].Ready.Worse(a.results[y].Ready):
			return -1
		case a.results[y].Ready.Worse(a.results[x].Ready):
			return 1
		}
		return 0
	})
	for _, i := range order {
		r := a.results[i]
		if !r.Ready.Worse(reason.Proven) || len(r.Because) == 0 {
			continue
		}
		band := page.VariantBand(r, a.sys, s.LinksOf(a.project, a.variants[i].Value, a.variants[i].ID).To)
		if band.Link.URL == "" {
			continue
		}
		out = append(out, nextView{Say: "“" + form.Clip(page.OrUnnamed(r.Name), page.PaperName) + "”: " + form.Sentence(a.short(r, band)), Link: band.Link})
	}
	return out
}

// short is the reason that a band tells, in few words: the band itself has its figures and what to do.
func (a asked) short(r model.VariantResult, band page.BandView) string {
	for _, why := range r.Because {
		if why.Say.In(a.sys) == band.Why {
			return why.Short().In(a.sys)
		}
	}
	return band.Why
}
