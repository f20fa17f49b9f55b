package hoist

import (
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

func keepRows(h *model.HoistResult, sys unit.System) []page.PairView {
	z := h.Hazards
	keep := page.Known(z.KeepOut, unit.Heights, sys)
	if z.AtLeast && z.KeepOut.Is {
		keep = "at least " + keep + ": a size is missing"
	}
	rows := []page.PairView{{Name: "Keep out, all round", Value: keep}, {Name: "Circle under the mass", Value: page.Known(z.DropCircle, unit.Heights, sys)}, {Name: "If the frame falls over", Value: page.Known(z.ToppleRadius, unit.Heights, sys)},
		{Name: "Reach of a rope that breaks and whips", Value: page.Known(z.RecoilLine, unit.Heights, sys)}, {Name: "How the mass comes down without power", Value: z.ComesDown}}
	if z.UnderFloor != "" {
		rows = append(rows, page.PairView{Name: "Under the floor", Value: z.UnderFloor})
	}
	return rows
}
