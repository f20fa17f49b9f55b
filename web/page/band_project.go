package page

import (
	"fmt"
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
	"duskweight/web/form"
)

// mostOfProject is how many variants are told before all else on a page of a project: the worst, for the page is about something else.
const mostOfProject = 1

// ProjectBands are the states of the variants of a project, the worst first, for a page that is about all of them. What is
// left out is never worse than what is told, and its number is said.
func ProjectBands(results []model.VariantResult, project int64, variants []store.Saved[model.Variant], sys unit.System) (bands []BandView) {
	order := make([]int, len(results))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case results[a].Ready.Worse(results[b].Ready):
			return -1
		case results[b].Ready.Worse(results[a].Ready):
			return 1
		}
		return 0
	})
	for _, i := range order[:min(len(order), mostOfProject)] {
		b := VariantBand(results[i], sys, nil)
		b.Of = "“" + OrUnnamed(results[i].Name) + "”:"
		b.Link = form.LinkView{Text: "Reasons against it", URL: VariantURL(project, variants[i].ID) + "#against"}
		bands = append(bands, b)
	}
	if n := len(order) - mostOfProject; n > 0 {
		last := &bands[len(bands)-1]
		last.Why = fmt.Sprintf("%s %s not shown here; none of them is worse.", last.Why, Counted(n, "more variant"))
	}
	return bands
}
