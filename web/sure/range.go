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
	"duskweight/internal/store"
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
	sure, err := fillRange(r.Context(), &v, s.Grounds.Of(p), values(chosen), r.URL.Query().Has("pairs"), sys)
	if err != nil {
		return page.LeftOr(r, err)
	}
	if sure.Years > 0 {
		s.Years.Keep(p, chosen, sure)
	}
	return s.Write(w, r, http.StatusOK, rangeSaid(v))
}

// values are the variants as they are saved.
func values(saved []store.Saved[model.Variant]) []model.Variant {
	out := make([]model.Variant, len(saved))
	for i, v := range saved {
		out[i] = v.Value
	}
	return out
}

// fillRange runs the years and returns them, and compares each pair of variants where that is asked for.
func fillRange(ctx context.Context, v *page.RangeView, g model.Ground, variants []model.Variant, pairs bool, sys unit.System) (sure search.Sure, err error) {
	if g.Sky == nil || g.Load.ApplianceYear <= 0 {
		v.Say = "No year can be made yet: the place or the lamps are not known."
		return sure, nil
	}
	sure, err = search.Years(ctx, g.Project, variants, g.Project.MadeYears(), runtime.GOMAXPROCS(0), nil)
	if err != nil {
		return sure, err
	}
	if !sure.WhyOne.IsZero() {
		v.Say = "There is one year only: " + sure.WhyOne.In(sys) + ". So there is no bad and no good year."
		return sure, nil
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
	return sure, nil
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
		l.Range = fmt.Sprintf("A bad, a usual and a good year have %s.", unit.Whole(usual))
	default:
		l.Range = fmt.Sprintf("Usual year %s; one year in ten is under %d, one over %s.", unit.Whole(usual), c.Nine, unit.Whole(math.Floor(c.Light.Good)))
	}
	return l
}
