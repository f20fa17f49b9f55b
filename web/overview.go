package web

import (
	"fmt"
	"net/http"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// The page Overview: /projects/{project}.

// overviewView is a project at a glance, ready to print.
type overviewView struct {
	URL, Name string
	Example   bool
	Headline  string
	Best      string
	Cards     []variantCard
	Next      []linkView
	Facts     []factView
	Compare   string
	Revision  string
}

// variantCard is one variant at a glance.
type variantCard struct {
	ID, URL, SheetURL, Name, Verdict, Headline, Revision string
	More                                                 []string
	Ready                                                string
	Rows                                                 []pairView
}

func (s *Site) showOverview(w http.ResponseWriter, r *http.Request) error {
	p, err := s.project(r)
	if err != nil {
		return err
	}
	variants, err := s.Store.Variants(r.Context(), p.ID)
	if err != nil {
		return err
	}
	sys, err := s.units(r.Context())
	if err != nil {
		return err
	}
	f, err := s.projectFrame(r.Context(), p, p.Value.Name, projectURL(p.ID))
	if err != nil {
		return err
	}
	return s.show(w, r, http.StatusOK, f, overviewPage(overviewOf(s.grounds.of(p), p, variants, sys)))
}

func overviewOf(g model.Ground, p store.Saved[model.Project], variants []store.Saved[model.Variant], sys unit.System) overviewView {
	u := projectURL(p.ID)
	v := overviewView{URL: u, Name: p.Value.Name, Example: p.Value.Example == "yes", Revision: fmt.Sprint(p.Revision)}
	results := make([]model.VariantResult, len(variants))
	for i, saved := range variants {
		results[i] = g.Evaluate(saved.Value)
		v.Cards = append(v.Cards, cardOf(results[i], p.ID, saved, sys))
	}
	v.Headline = projectHeadline(g, results)
	if len(variants) > 1 {
		v.Compare = u + "/compare"
	}
	if len(results) > 0 {
		v.Facts = factsOf(results[0], sys)[:2]
	}
	v.Next = nextSteps(g, p, variants, results)
	return v
}

// projectHeadline says the best verdict among the variants, and by which.
func projectHeadline(g model.Ground, results []model.VariantResult) string {
	if g.Sky == nil {
		return "Say where you are, and the sun and the length of the nights are known."
	}
	if len(results) == 0 {
		return "There is no variant yet. Add one: something heavy, or a battery."
	}
	best := -1
	rank := map[string]int{"": 0, model.LearningPiece: 1, model.CarriesPart: 2, model.CarriesNight: 3}
	for i, r := range results {
		if best < 0 || rank[r.Verdict] > rank[results[best].Verdict] {
			best = i
		}
	}
	r := results[best]
	switch r.Verdict {
	case "":
		return "Nothing is asked of the night yet."
	case model.CarriesNight:
		return fmt.Sprintf("“%s” carries the night: light in %d of %d nights.", r.Name, r.Year.NightsServed, r.Year.Nights)
	case model.CarriesPart:
		return fmt.Sprintf("The best of these carries part of the night: “%s”.", r.Name)
	}
	return "None of these carries the night. What you have here is a learning piece."
}

func cardOf(r model.VariantResult, project int64, saved store.Saved[model.Variant], sys unit.System) variantCard {
	u := variantURL(project, saved.ID)
	c := variantCard{ID: fmt.Sprint(saved.ID), URL: u, SheetURL: u + "/sheet", Name: r.Name, Verdict: r.Verdict, Ready: readyWords[r.Ready], Revision: fmt.Sprint(saved.Revision)}
	c.Headline, c.More = headlineOf(r)
	if r.YearKnown {
		c.Rows = append(c.Rows, pairView{"Nights with light", fmt.Sprintf("%d of %d", r.Year.NightsServed, r.Year.Nights)})
	}
	c.Rows = append(c.Rows, pairView{"Cost of all parts", fmt.Sprintf("%d of %d parts priced", r.Cost.Priced, r.Cost.Parts)}, pairView{"Plan sheet", c.Ready})
	for _, s := range r.Stores {
		if s.Hoist != nil && len(s.Hoist.Checks) > 0 && s.Hoist.Checks[0].Use.Is {
			first := s.Hoist.Checks[0]
			c.Rows = append(c.Rows, pairView{"Breaks first", first.Part + ", " + useText(float64(first.Use.Val))})
		}
	}
	return c
}

// nextSteps are at most four things that would help most, each with its page.
func nextSteps(g model.Ground, p store.Saved[model.Project], variants []store.Saved[model.Variant], results []model.VariantResult) []linkView {
	u := projectURL(p.ID)
	var out []linkView
	add := func(text, url string) { out = append(out, linkView{text, url}) }
	if g.Sky == nil {
		add("Say where you are and how your sky is", u+"/place")
	} else if g.Sky.Rough {
		add("The sky is rough: take a starter climate or type twelve monthly means", u+"/place")
	}
	if g.Sky != nil && g.Load.ApplianceYear <= 0 {
		add("Say which lamps shall burn, and for how long", u+"/load")
	}
	for i, r := range results {
		v := variantURL(p.ID, variants[i].ID)
		switch n := len(r.Missing); {
		case len(variants[i].Value.Stores) == 0:
			add("Add a store to “"+r.Name+"”", v+"#stores")
		case r.Ready == "no" && len(r.Reasons) > 0:
			add("“"+r.Name+"”: "+r.Reasons[0], v)
		case n > 0:
			add(fmt.Sprintf("“%s”: %d inputs are missing or typical", r.Name, n), v+"#missing")
		}
	}
	if len(out) == 0 && len(variants) > 1 {
		add("Compare the variants side by side", u+"/compare")
	}
	return out[:min(len(out), 4)]
}
