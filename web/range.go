package web

import (
	"context"
	"fmt"
	"math"
	"net/http"
	"net/url"
	"runtime"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/store"
)

// The range of a headline: what a bad, a usual and a good year of nights with light come to. It takes longer than the
// answer, so it follows as a second one; without scripts a link leads to the page How sure.

// rangeView is a range, ready to print.
type rangeView struct {
	Follow string // where it comes from
	Link   string // the page How sure, with the same variants
	Lines  []rangeLine
	Pairs  []string // which has more nights with light, pair by pair
	Say    string   // instead of lines
	Room   string   // how many lines are kept free for it: "room3"
}

// rangeLine is one variant: the promise, and the range round it. Name is empty where there is only one.
type rangeLine struct{ Name, Nine, Range string }

// rangeLater is the place of a range that is still to come; chosen are the variants it is about.
func rangeLater(project int64, chosen []store.Saved[model.Variant]) rangeView {
	q := url.Values{}
	for _, c := range chosen {
		q.Add("v", fmt.Sprint(c.ID))
	}
	at := projectURL(project) + "/sure"
	return rangeView{Follow: at + "/said?" + q.Encode(), Link: at + "?" + q.Encode(), Room: "room" + itoa(len(chosen))}
}

// sendRange answers with the ranges of stored variants.
func (s *Site) sendRange(w http.ResponseWriter, r *http.Request) error {
	p, _, chosen, err := s.chosen(r)
	if err != nil {
		return err
	}
	v := rangeLater(p.ID, chosen)
	if !wantsPart(r) {
		return seeOther(w, r, v.Link)
	}
	variants := make([]model.Variant, len(chosen))
	for i, c := range chosen {
		variants[i] = c.Value
	}
	if err := fillRange(r.Context(), &v, s.grounds.of(p), variants, r.URL.Query().Has("pairs")); err != nil {
		return leftOr(r, err)
	}
	return s.write(w, r, http.StatusOK, rangeSaid(v))
}

// leftOr is no error where the page was left meanwhile.
func leftOr(r *http.Request, err error) error {
	if r.Context().Err() != nil {
		return nil
	}
	return err
}

// fillRange runs the years, and compares each pair of variants where that is asked for.
func fillRange(ctx context.Context, v *rangeView, g model.Ground, variants []model.Variant, pairs bool) error {
	if g.Sky == nil || g.Load.ApplianceYear <= 0 {
		v.Say = "No year can be tried yet: the place or the lamps are not known."
		return nil
	}
	sure, err := search.Years(ctx, g.Project, variants, usualYears, runtime.GOMAXPROCS(0), nil)
	if err != nil {
		return err
	}
	if sure.WhyOne != "" {
		v.Say = "There is one year only: " + sure.WhyOne + ". So there is no bad and no good year."
		return nil
	}
	for _, c := range sure.Variants {
		line := rangeLineOf(c, sure.Nights)
		if len(sure.Variants) > 1 {
			line.Name = orUnnamed(c.Name)
		}
		v.Lines = append(v.Lines, line)
	}
	if pairs {
		v.Pairs = pairsSaid(sure)
	}
	return nil
}

func rangeLineOf(c search.Certain, nights int) rangeLine {
	if c.WhyNot != "" {
		return rangeLine{Nine: "No year can be run: " + c.WhyNot + "."}
	}
	l := rangeLine{Nine: sentenceCase(nineSay(c, nights))}
	usual, good := math.Round(c.Light.Usual), math.Round(c.Light.Good)
	switch {
	case c.Light.Worst == c.Light.Best, c.Nine == nights:
	case float64(c.Nine) == usual && usual == good:
		l.Range = fmt.Sprintf("A bad, a usual and a good year have %.0f.", usual)
	default:
		l.Range = fmt.Sprintf("A bad year has %d, a usual year %.0f, a good year %.0f.", c.Nine, usual, good)
	}
	return l
}
