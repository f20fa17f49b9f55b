package page

import (
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// DrawingOf draws the hoist as SVG, with what the judge refuses marked at its place.
func DrawingOf(h *model.HoistResult, sys unit.System) string {
	var b strings.Builder
	scene := draw.Make(draw.Plan{
		Hoist: h.Design, Drive: h.Drive, Checks: h.Checks, Because: h.Because, KeepOut: h.Hazards.KeepOut,
		Units: sys,
	})
	if err := draw.SVG(scene, &b); err != nil {
		return "" // a strings.Builder takes everything
	}
	return b.String()
}
