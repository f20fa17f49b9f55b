package overview

import (
	"fmt"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
	"duskweight/web/page"
)

// overviewView is a project at a glance, ready to print.
type overviewView struct {
	URL, Name string
	Example   bool
	Headline  string
	Lifts     string          // how many lifts of which variant make one night
	Bands     []page.BandView // of the variants that nothing may be hung or used of
	MoreBands string          // those that are left out
	Of        []page.Tab      // the variants that bars and day may be about; none where there is no choice
	Bars      barsView
	Day       page.DayView
	Cards     []variantCard
	Next      []nextView
	Fact      *page.FactView // what the sun leaves over
	Range     page.RangeView
	Compare   string
	Last      []lastChange

	ClassURL string // the same for a class, that guesses first

	Problems         []form.ProblemView
	Sliders          []slider
	Keep, Try        string // where the numbers are saved, and only tried
	Project, Variant string // the revisions that the page shows
	Tried            bool   // shown for numbers that are typed and not saved
}

// overviewOf prints a project.
func (s *Pages) overviewOf(a asked) overviewView {
	p := a.project
	u := page.ProjectURL(p.ID)
	v := overviewView{URL: u, Name: p.Value.Name, Example: p.Value.Example == unit.Yes}
	for i, saved := range a.variants {
		v.Cards = append(v.Cards, s.cardOf(a.results[i], p, saved.ID, a.sys))
	}
	v.Bands, v.MoreBands = dangers(a.results, a.variants, p, a.sys)
	v.ClassURL = classURL(a)
	v.Headline = projectHeadline(a.ground, a.results, a.sys)
	if a.ground.Sky != nil && len(a.variants) > 0 && a.ground.Load.ApplianceYear > 0 {
		v.Range = page.RangeLater(p.ID, a.variants[:min(len(a.variants), page.MostCompared)])
		v.Range.Get = true
	}
	if len(a.variants) > 1 {
		v.Compare = u + "/compare"
	}
	if a.focus >= 0 {
		s.inFocus(a, &v)
	}
	v.Next = s.nextSteps(a)
	return v
}

// inFocus prints bars and day of the variant that they are about.
func (s *Pages) inFocus(a asked, v *overviewView) {
	r, id := a.results[a.focus], a.variants[a.focus].ID
	q := fmt.Sprintf(".csv?v=%d", id)
	v.Fact = &page.FactsOf(r, a.sys)[1]
	is := ""
	if len(r.Stores) > 0 {
		is = s.Tables.Stores.StoreIs(r.Stores[0], a.sys).Value
	}
	v.Bars = barsOf(r, is, v.URL+"/bars"+q, a.sys)
	v.Lifts = liftsLine(r, len(a.results) > 1)
	for _, st := range r.Stores {
		tell := s.Tables.Stores.Of(st.Kind).Idea.Day
		if tell == nil {
			continue
		}
		if day, ok := tell(a.ground, r, st, a.month, a.sys); ok {
			v.Day = day
			v.Day.CSV = v.URL + "/day" + q
			break
		}
	}
	for i, one := range a.results {
		if one.Facts.Lifts {
			v.Of = append(v.Of, page.Tab{Text: page.OrUnnamed(one.Name), URL: fmt.Sprintf("%s?v=%d", v.URL, a.variants[i].ID), Here: i == a.focus})
		}
	}
	if len(v.Of) < 2 {
		v.Of = nil
	}
}

// liftsLine says how many lifts make one night.
func liftsLine(r model.VariantResult, named bool) string {
	b := r.Facts.Bars()
	of := ""
	if named {
		of = " of “" + form.Clip(page.OrUnnamed(r.Name), page.PaperName) + "”"
	}
	if b.Lift.Is && b.Lift.Val <= 0 {
		return "A full lift" + of + " gives nothing back."
	}
	if !b.Lifts.Is {
		return ""
	}
	if b.Lifts.Val < 1.05 {
		return "One lift" + of + " is enough for a usual night."
	}
	return lifts(b) + of + " make one night."
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
		b.Link = form.LinkView{Text: "Reasons against it", URL: page.VariantURL(p.ID, variants[i].ID) + "#against"}
		bands = append(bands, b)
	}
	return bands, more
}

// projectHeadline says the best verdict among the variants, and by which.
func projectHeadline(g model.Ground, results []model.VariantResult, sys unit.System) string {
	if g.Sky == nil {
		return "Enter where you are. Then the sun and the length of the nights are known."
	}
	if len(results) == 0 {
		return "There is no variant yet. Add one: something heavy, or a battery."
	}
	best := -1
	for i, r := range results {
		if best < 0 || model.RankOf(r.Verdict) > model.RankOf(results[best].Verdict) {
			best = i
		}
	}
	r := results[best]
	switch r.Verdict {
	case "":
		if i := slices.IndexFunc(results, func(r model.VariantResult) bool { return !r.Open.IsZero() }); i >= 0 {
			return results[i].Headline[0].In(sys)
		}
		return "Nothing is asked of the night yet."
	case model.CarriesNight, model.CarriesMost:
		return fmt.Sprintf("“%s” %s: %d of %d nights are full%s.", r.Name, r.Verdict, r.Last.NightsFull, r.Last.Nights, thanksTo(r))
	case model.CarriesEssentials:
		return fmt.Sprintf("“%s” carries the essentials: they have power in %d of %d nights%s.", r.Name, r.Last.NightsEssentialFull, r.Last.Nights, thanksTo(r))
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
