package page

import (
	"context"
	"fmt"
	"math"
	"runtime"

	"duskweight/internal/model"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// Years keeps what the made years of the last few variants come to, by the revisions of project and variant, so that pages
// on which a usual and a bad year stand beside other answers stay quick.
type Years struct {
	kept recent[yearsKey, search.Sure] // each of one variant alone
}

type yearsKey struct{ project, projectRevision, variant, revision int64 }

func yearsOf(p store.Saved[model.Project], v store.Saved[model.Variant]) yearsKey {
	return yearsKey{p.ID, p.Revision, v.ID, v.Revision}
}

// yearsKept is how many variants are kept, some 30 KB each.
const yearsKept = 16

// Of returns the made years of each of the variants, their number that of the project. results are the variants' own
// answers. Years is 0 where they are not worked out yet and would take too long for a page: several weather files, and
// a motor straight on the panels, whose every hour is computed anew. The page How sure works those out.
func (y *Years) Of(ctx context.Context, p store.Saved[model.Project], vs []store.Saved[model.Variant], results []model.VariantResult) ([]search.Sure, error) {
	out := make([]search.Sure, len(vs))
	var fresh []store.Saved[model.Variant]
	var at []int
	for i, v := range vs {
		var there bool
		if out[i], there = y.kept.find(yearsOf(p, v)); !there && results[i].YearKnown && !takesLong(p.Value, results[i]) {
			fresh, at = append(fresh, v), append(at, i)
		}
	}
	if len(fresh) == 0 {
		return out, nil
	}
	variants := make([]model.Variant, len(fresh))
	for i, v := range fresh {
		variants[i] = v.Value
	}
	sure, err := search.Years(ctx, p.Value, variants, p.Value.MadeYears(), runtime.GOMAXPROCS(0), nil)
	if err != nil {
		return nil, err
	}
	y.Keep(p, fresh, sure)
	for i, k := range at {
		out[k] = sure.Alone(i)
	}
	return out, nil
}

// takesLong reports whether the years of a variant take some seconds.
func takesLong(p model.Project, r model.VariantResult) bool {
	for _, s := range r.Stores {
		if s.Reservoir != nil && s.Part.Beside() != nil {
			return true
		}
	}
	return len(p.Files()) > 1
}

// Keep keeps the years of saved variants; it must be all the years of the project, with parts exactly as typed.
func (y *Years) Keep(p store.Saved[model.Project], vs []store.Saved[model.Variant], sure search.Sure) {
	for i, v := range vs {
		if _, there := y.kept.find(yearsOf(p, v)); !there {
			y.kept.keep(yearsOf(p, v), sure.Alone(i), yearsKept)
		}
	}
}

// NightsOf are the full nights of a usual and of a bad year of one variant, rounded as on the page How sure, and the nights
// that count. known is false where there is no year, one year only, or where the years are not worked out yet.
func NightsOf(s search.Sure) (usual, bad, of int, known bool) {
	if s.Years == 0 || s.Nights == 0 || !s.WhyOne.IsZero() || len(s.Variants) != 1 || !s.Variants[0].WhyNot.IsZero() {
		return 0, 0, 0, false
	}
	c := s.Variants[0]
	return int(math.Round(c.Light.Usual)), s.BadNights(c), s.Nights, true
}

// UsualAndBad tells a usual and a bad year of one variant; nothing where they are not known.
func UsualAndBad(s search.Sure) string {
	usual, bad, of, known := NightsOf(s)
	if !known {
		return ""
	}
	years := unit.Thousands(s.Years) + " made years"
	if len(s.Real) > 0 {
		years = Counted(s.Years, "real year")
	}
	if usual == bad {
		return fmt.Sprintf("Of %s the usual and a bad one have %d of %d full nights.", years, usual, of)
	}
	return fmt.Sprintf("Of %s the usual one has %d of %d full nights, a bad one %d.", years, usual, of, bad)
}
