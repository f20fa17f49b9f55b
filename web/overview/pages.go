// Package overview shows the first page of a project (/projects/{project}): what it comes to, its variants, what to do
// next. The list of all projects is the room projects.
package overview

import (
	"fmt"
	"net/http"
	"slices"
	"strings"

	"github.com/go-chi/chi/v5"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// Pages are the pages of this room.
type Pages struct{ *page.Site }

// Routes hangs the page at its address.
func (s *Pages) Routes(r chi.Router) {
	r.Get("/projects/{project}", s.Page(s.showOverview))
}

// The page Overview: /projects/{project}.

// overviewView is a project at a glance, ready to print.
type overviewView struct {
	URL, Name string
	Example   bool
	Headline  string
	Best      string
	Bands     []page.BandView // of the variants that nothing may be hung or used of
	MoreBands string          // those that are left out
	Cards     []variantCard
	Next      []form.LinkView
	Facts     []page.FactView
	Range     page.RangeView
	Compare   string
	Revision  string
}

// variantCard is one variant at a glance.
type variantCard struct {
	ID, URL, SheetURL, Name string
	Sign, Verdict, Say      string
	State                   page.BandView
	By                      string // the store from which nearly everything came
	Rows                    []page.PairView
}

// verdictSigns stand before the word of a verdict.
var verdictSigns = map[string]string{model.CarriesNight: "✓", model.CarriesPart: "◐", model.LearningPiece: "○", "": "?"}

func (s *Pages) showOverview(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Project(r)
	if err != nil {
		return err
	}
	variants, err := s.Store.Variants(r.Context(), p.ID)
	if err != nil {
		return err
	}
	sys, err := s.Units(r.Context())
	if err != nil {
		return err
	}
	f, err := s.ProjectFrame(r.Context(), p, p.Value.Name, page.ProjectURL(p.ID))
	if err != nil {
		return err
	}
	v := overviewOf(s.Grounds.Of(p), p, variants, sys)
	wait, err := s.RefusedEntries(r.Context(), p, variants...)
	if err != nil {
		return err
	}
	for _, on := range slices.Backward(wait) {
		v.Next = slices.Insert(v.Next, 0, on.Link())
	}
	return s.Show(w, r, http.StatusOK, f, overviewPage(v))
}

func overviewOf(g model.Ground, p store.Saved[model.Project], variants []store.Saved[model.Variant], sys unit.System) overviewView {
	u := page.ProjectURL(p.ID)
	v := overviewView{URL: u, Name: p.Value.Name, Example: p.Value.Example == unit.Yes, Revision: fmt.Sprint(p.Revision)}
	results := make([]model.VariantResult, len(variants))
	for i, saved := range variants {
		results[i] = g.Evaluate(saved.Value)
		v.Cards = append(v.Cards, cardOf(results[i], p, saved.ID, sys))
	}
	v.Bands, v.MoreBands = dangers(results, variants, p, sys)
	v.Headline = projectHeadline(g, results, sys)
	if g.Sky != nil && len(variants) > 0 && g.Load.ApplianceYear > 0 {
		v.Range = page.RangeLater(p.ID, variants[:min(len(variants), page.MostCompared)])
	}
	if len(variants) > 1 {
		v.Compare = u + "/compare"
	}
	if len(results) > 0 {
		v.Facts = page.FactsOf(results[0], sys)[:2]
	}
	v.Next = nextSteps(g, p, variants, results, sys)
	return v
}

// mostDangers is how many variants are told before all else on the page.
const mostDangers = 3

// dangers are the bands of the variants that must not be built as they are, and how many are left out.
func dangers(results []model.VariantResult, variants []store.Saved[model.Variant], p store.Saved[model.Project], sys unit.System) (bands []page.BandView, more string) {
	n := 0
	for i, r := range results {
		if r.Ready != reason.No {
			continue
		}
		if n++; n > mostDangers {
			more = fmt.Sprintf("and %d more of the variants below", n-mostDangers)
			continue
		}
		b := page.VariantBand(r, sys, nil)
		b.Of = "“" + r.Name + "”:"
		b.Link = form.LinkView{Text: "What stands against it", URL: page.VariantURL(p.ID, variants[i].ID) + "#against"}
		bands = append(bands, b)
	}
	return bands, more
}

// projectHeadline says the best verdict among the variants, and by which.
func projectHeadline(g model.Ground, results []model.VariantResult, sys unit.System) string {
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
		if i := slices.IndexFunc(results, func(r model.VariantResult) bool { return !r.Open.IsZero() }); i >= 0 {
			return "Not known yet: " + results[i].Open.In(sys) + "."
		}
		return "Nothing is asked of the night yet."
	case model.CarriesNight:
		return fmt.Sprintf("“%s” carries the night: light in %d of %d nights%s.", r.Name, r.Year.NightsServed, r.Year.Nights, thanksTo(r))
	case model.CarriesPart:
		return fmt.Sprintf("The best of these carries part of the night: “%s”%s.", r.Name, thanksTo(r))
	}
	return "None of these carries the night. What you have here is a learning piece."
}

// thanksTo names the store behind a verdict, where nearly everything came from one of several.
func thanksTo(r model.VariantResult) string {
	if by := page.NearlyAllBy(r); by != "" {
		return ", nearly all of it out of “" + by + "”"
	}
	return ""
}

func cardOf(r model.VariantResult, p store.Saved[model.Project], id int64, sys unit.System) variantCard {
	u := page.VariantURL(p.ID, id)
	c := variantCard{ID: fmt.Sprint(id), URL: u, SheetURL: u + "/sheet", Name: r.Name, Sign: verdictSigns[r.Verdict], Verdict: form.SentenceCase(r.Verdict)}
	if r.Verdict == "" {
		c.Verdict = "Not known yet"
	}
	c.Say = page.GivenBy(r, sys)
	if _, more := page.HeadlineOf(r, sys); len(more) > 0 {
		c.Say = strings.TrimSpace(c.Say + " " + more[0])
	}
	nights, cost := "not known", fmt.Sprintf("%d of %d parts priced", r.Cost.Priced, r.Cost.Parts)
	if r.YearKnown && r.Open.IsZero() {
		nights = fmt.Sprintf("%d of %d", r.Year.NightsServed, r.Year.Nights)
	}
	if all, ok := r.Cost.Capital.Value(); ok {
		cost = unit.Rounded(float64(all), 3) + " " + p.Value.Currency
	} else if r.Cost.Parts == 0 {
		cost = "no parts yet"
	}
	c.Rows = []page.PairView{{Name: "Nights with light", Value: nights}, {Name: "Breaks first", Value: page.BreaksFirst(r)}, {Name: "Cost of the listed parts", Value: cost}}
	c.State, c.By = page.VariantBand(r, sys, nil), form.Clip(page.NearlyAllBy(r), page.PaperName)
	return c
}

// nextSteps are at most four things that would help most, each with its page.
func nextSteps(g model.Ground, p store.Saved[model.Project], variants []store.Saved[model.Variant], results []model.VariantResult, sys unit.System) []form.LinkView {
	u := page.ProjectURL(p.ID)
	var out []form.LinkView
	add := func(text, url string) { out = append(out, form.LinkView{Text: text, URL: url}) }
	if g.Sky == nil {
		add("Say where you are and how your sky is", u+"/place")
	} else if g.Sky.Rough {
		add("The sky is rough: take a starter climate or type twelve monthly means", u+"/place")
	}
	if g.Sky != nil && g.Load.ApplianceYear <= 0 {
		add("Say which lamps shall burn, and for how long", u+"/load")
	}
	for i, r := range results {
		v := page.VariantURL(p.ID, variants[i].ID)
		switch n := len(r.Missing); {
		case len(variants[i].Value.Stores) == 0:
			add("Add a store to “"+r.Name+"”", v+"#stores")
		case n == 1:
			add("“"+r.Name+"”: one input is missing", v+"#missing")
		case n > 1:
			add(fmt.Sprintf("“%s”: %d inputs are missing", r.Name, n), v+"#missing")
		}
		if at, hours := r.Uncharged(); hours > 0 {
			add(fmt.Sprintf("“%s”: in %d hours of the year its battery is too cold or too hot to charge. Say where it stands", r.Name, hours),
				page.StoreURL(p.ID, variants[i].ID, at, r.Stores[at].Kind.Key)+"#"+form.FieldID(r.Stores[at].Kind.Path(at)+".place"))
		}
	}
	if len(out) == 0 && len(variants) > 1 {
		add("Compare the variants side by side", u+"/compare")
	}
	return out[:min(len(out), 4)]
}
