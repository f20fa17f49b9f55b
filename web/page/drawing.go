package page

import (
	"strings"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// DrawingOf draws the hoist as SVG.
func DrawingOf(h *model.HoistResult, sys unit.System) (svg string, clashes []string) {
	var b strings.Builder
	scene := draw.Make(draw.Plan{
		Hoist: h.Design, Drive: h.Drive, Checks: h.Checks, KeepOut: h.Hazards.KeepOut,
		Units: sys,
	})
	if err := draw.SVG(scene, &b); err != nil {
		return "", nil // a strings.Builder takes everything
	}
	return b.String(), scene.Clashes
}
