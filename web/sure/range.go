package sure

import (
	"context"
	"fmt"
	"math"
	"net/http"
	"runtime"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// sendRange answers with the ranges of stored variants.
func (s *Pages) sendRange(w http.ResponseWriter, r *http.Request) error {
	p, _, chosen, err := s.Chosen(r)
	if err != nil {
		return err
	}
	v := page.RangeLater(p.ID, chosen)
	if !page.WantsPart(r) {
		return page.SeeOther(w, r, v.Link)
	}
	sys, err := s.Units(r.Context())
	if err != nil {
		return err
	}
	variants := make([]model.Variant, len(chosen))
	for i, c := range chosen {
		variants[i] = c.Value
	}
	if err := fillRange(r.Context(), &v, s.Grounds.Of(p), variants, r.URL.Query().Has("pairs"), sys); err != nil {
		return page.LeftOr(r, err)
	}
	return s.Write(w, r, http.StatusOK, rangeSaid(v))
}

// fillRange runs the years, and compares each pair of variants where that is asked for.
func fillRange(ctx context.Context, v *page.RangeView, g model.Ground, variants []model.Variant, pairs bool, sys unit.System) error {
	if g.Sky == nil || g.Load.ApplianceYear <= 0 {
		v.Say = "No year can be made yet: the place or the lamps are not known."
		return nil
	}
	sure, err := search.Years(ctx, g.Project, variants, g.Project.MadeYears(), runtime.GOMAXPROCS(0), nil)
	if err != nil {
		return err
	}
	if !sure.WhyOne.IsZero() {
		v.Say = "There is one year only: " + sure.WhyOne.In(sys) + ". So there is no bad and no good year."
		return nil
	}
	for _, c := range sure.Variants {
		line := rangeLineOf(c, sure.Nights, sys)
		if len(sure.Real) > 0 && c.WhyNot.IsZero() {
			line = page.RangeLine{Nine: form.SentenceCase(realSay(c, sure))}
		}
		if len(sure.Variants) > 1 {
			line.Name = page.OrUnnamed(c.Name)
		}
		v.Lines = append(v.Lines, line)
	}
	if pairs {
		v.Pairs = pairsSaid(sure)
	}
	return nil
}

func rangeLineOf(c search.Certain, nights int, sys unit.System) page.RangeLine {
	if !c.WhyNot.IsZero() {
		return page.RangeLine{Nine: "No year can be run: " + c.WhyNot.In(sys) + "."}
	}
	l := page.RangeLine{Nine: form.SentenceCase(nineSay(c, nights))}
	usual, good := math.Round(c.Light.Usual), math.Round(c.Light.Good)
	switch {
	case c.Light.Worst == c.Light.Best, c.Nine == nights:
	case float64(c.Nine) == usual && usual == good:
		l.Range = fmt.Sprintf("A bad, a usual and a good year have %.0f.", usual)
	default:
		l.Range = fmt.Sprintf("Usual year %.0f; one year in ten is under %d, one over %.0f.", usual, c.Nine, math.Floor(c.Light.Good))
	}
	return l
}
