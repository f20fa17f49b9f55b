package page

import (
	"io"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// SceneOf is the side view of the hoist in millimetres, with what the judge refuses marked at its place.
func SceneOf(h *model.HoistResult, sys unit.System) draw.Scene {
	return draw.Make(draw.Plan{
		Hoist: h.Design, Drive: h.Drive, Checks: h.Checks, Because: h.Because, KeepOut: h.Hazards.KeepOut,
		Units: sys,
	})
}

// PaperScene is the side view for the plan sheet, with imperial lengths as an inch tape shows them.
func PaperScene(h *model.HoistResult, sys unit.System) draw.Scene {
	return draw.Make(draw.Plan{
		Hoist: h.Design, Drive: h.Drive, Checks: h.Checks, Because: h.Because, KeepOut: h.Hazards.KeepOut,
		Units: sys, Tape: true,
	})
}

// DrawingOf draws the hoist as SVG.
func DrawingOf(h *model.HoistResult, sys unit.System) string {
	return SvgOf(func(w io.Writer) error { return draw.SVG(SceneOf(h, sys), w) })
}
