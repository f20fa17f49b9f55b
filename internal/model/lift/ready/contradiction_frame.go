package ready

import (
	"fmt"
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// lightBeam is the least share of what a beam weighs by its size that its builder may give for it (our own judgement).
const lightBeam = 0.5

// askew is how far the pull on a fixed hook may be off the hook's own axis, rad (our own judgement: 5°).
const askew = 5 * math.Pi / 180

// frames are answers about beam, posts and top pulley that cannot both be true.
func frames(c Case) []reason.Reason {
	var out []reason.Reason
	h := c.Hoist
	add := func(path, beside string, text, mend say.Sentence) {
		out = append(out, reason.Reason{ID: "contradiction", Word: reason.NotKnown, Path: path, Beside: beside, Clears: reason.Answer, Say: text, Mend: mend, Source: source.Judgement.Whole()})
	}
	own := h.Structure.RestsOn == lift.RestsOnOwnPostsOnGround
	for i, p := range h.Structure.Posts {
		top := unit.Length(float64(p.Height.Val) * math.Cos(float64(p.Lean.Or(0))))
		if f := h.Site.FrameHeight; own && f.Is && p.Height.Is && top > f.Val*(1+1e-9) {
			add("site.frame_height_m", fmt.Sprintf("structure.posts[%d].height_m", i), say.That("Two answers contradict each other: a frame of %s, and a post in it of %s.", say.Height(f.Val), say.Height(top)), say.That("Measure again, and correct the wrong one."))
			break
		}
	}
	b := h.Structure.Beam
	timber := b.Kind == lift.MemberTimber || b.Kind == lift.MemberRoundPole
	if h.Structure.HangerFixing == lift.FixingThreadedIntoMetal && timber {
		add("structure.hanger_fixing", "structure.beam.kind", say.That("Two answers contradict each other: a hanger threaded into metal, and a beam of wood."), say.That("Look at the beam, and correct the wrong one."))
	}
	fixed := h.Structure.HangerFixing != "" && h.Structure.HangerFixing != lift.FixingRoundTheBeam
	if a := h.Structure.HangerAngle; fixed && h.Structure.HangerKind == lift.HangerHook && a.Is && a.Val > askew {
		add("structure.hanger_angle_rad", "structure.hanger_kind", say.That("A hook that is fastened to the beam cannot turn towards the rope: pulled from the side it withstands less than its label says, and how much less is not known."), say.That("Use an eye bolt with a shoulder, or hang the hook so that it turns."))
	}
	if own && timber && b.Support == lift.BeamBothEndsFixed {
		add("structure.beam.support", "structure.rests_on", say.That("The ends of a wooden beam on posts turn when it bends: they are not fixed."), say.That("Say that it lies on two supports."))
	}
	if m := b.OwnMass; m.Is {
		h.Structure.Beam.OwnMass = unit.Known[unit.Mass]{}
		if most := path.SidewaysOf(h, c.Plan.Drive).Beam; float64(m.Val) < lightBeam*float64(most) {
			add("structure.beam.own_mass_kg", "structure.beam.width_m", say.That("A beam of this size weighs about %s, and %s are given for it.", say.Mass(most), say.Mass(m.Val)), say.That("Leave the field empty: its size tells it."))
		}
	}
	if k := int(h.Reeving.LeadSheaves.Or(0)); k >= 1 && k <= len(h.Reeving.Sheaves) && h.Reeving.Sheaves[k-1].OnBase == unit.Yes {
		add(fmt.Sprintf("reeving.sheaves[%d].on_base", k-1), "reeving.lead_sheaves", say.That("Pulley %s from the drum is the top pulley, above the mass; it cannot be on the base.", k), say.That("Count the pulleys again, from the drum."))
	}
	return out
}
