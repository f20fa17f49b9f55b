package ready

import (
	"math"

	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// densest is the density above which no mass of iron or lead can be, kg/m³: lead has 11,340.
const densest = 11400

// sameAngle is how far two angles of one rope may differ, rad (our own judgement).
const sameAngle = 0.05

// contradictions are answers that cannot both be true.
func contradictions(c Case) []reason.Reason {
	var out []reason.Reason
	h := c.Hoist
	add := func(path, a, b string) {
		out = append(out, reason.Reason{ID: "contradiction", Word: reason.NotKnown, Path: path, Clears: reason.Answer,
			Say: say.That("Two answers do not go together: %s and %s.", a, b), Mend: say.That("Measure again, and correct the wrong one."), Source: source.Judgement.Whole()})
	}
	if f, head := h.Site.FrameHeight, h.Structure.HeadHeight; f.Is && head.Is && f.Val < head.Val {
		add("site.frame_height_m", "the height of the frame", "the height of the head pulley above it")
	}
	k := int(h.Reeving.LeadSheaves.Or(0))
	if k == 1 {
		head, base := h.Structure.LeadAngle, h.Base.RopeAngle
		if head.Is && base.Is && math.Abs(float64(head.Val-base.Val)) > sameAngle {
			add("base.rope_angle_rad", "the angle of the rope at the base", "that at the top")
		}
		if len(h.Reeving.Sheaves) > 0 {
			if p := h.Reeving.Sheaves[0].Angle; p.Is && head.Is && math.Abs(float64(head.Val-p.Val)) > sameAngle {
				add("reeving.sheaves[0].angle_rad", "the angle between the ropes at the pulley", "that at the top of the frame")
			}
		}
	}
	w, y := h.Site.LoadWidth, h.Site.LoadHeight
	if m, ok := c.Plan.Drive.Mass.Value(); ok && w.Is && y.Is && float64(m) > densest*float64(w.Val)*float64(w.Val)*float64(y.Val) {
		add("site.load_width_m", "the mass", "its size: nothing is that dense")
	}
	if h.Rope.Outdoors == unit.No && h.Site.Outdoors == unit.Yes {
		add("rope.outdoors", "a rope that hangs indoors", "a hoist that stands outdoors")
	}
	if low := h.Base.Published(h.Site.Outdoors); low.Is && h.Base.Friction.Is && h.Base.Friction.Val > low.Val {
		r := reason.Reason{ID: "contradiction", Word: reason.NotKnown, Path: "base.friction", Clears: reason.Proof,
			Say:  say.That("A friction of %s is more than the %s that is published for this underside on concrete.", say.Times(h.Base.Friction.Val), say.Times(low.Val)),
			Mend: say.That("Use the published value, or pull the base with a scale until it slides."), Source: source.TemporaryWorks.Whole()}
		out = append(out, r)
	}
	return append(out, impossible(h)...)
}
