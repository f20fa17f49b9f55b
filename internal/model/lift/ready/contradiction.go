package ready

import (
	"math"

	"duskweight/internal/model/lift"
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
	add := func(path, beside, a, b string) {
		out = append(out, reason.Reason{ID: "contradiction", Word: reason.NotKnown, Path: path, Beside: beside, Clears: reason.Answer,
			Say: say.That("Two answers contradict each other: %s and %s.", a, b), Mend: say.That("Measure again, and correct the wrong one."), Source: source.Judgement.Whole()})
	}
	if f, head := h.Site.FrameHeight, h.Structure.HeadHeight; f.Is && head.Is && f.Val < head.Val {
		add("site.frame_height_m", "structure.head_height_m", "the height of the frame", "the height of the top pulley above it")
	}
	k := int(h.Reeving.LeadSheaves.Or(0))
	if k == 1 {
		head, base := h.Structure.LeadAngle, h.Base.RopeAngle
		if head.Is && base.Is && math.Abs(float64(head.Val-base.Val)) > sameAngle {
			add("base.rope_angle_rad", "structure.lead_line_angle_rad", "the angle of the rope at the base", "that at the top")
		}
		if len(h.Reeving.Sheaves) > 0 {
			if p := h.Reeving.Sheaves[0].Angle; p.Is && head.Is && math.Abs(float64(head.Val-p.Val)) > sameAngle {
				add("reeving.sheaves[0].angle_rad", "structure.lead_line_angle_rad", "the angle between the ropes at the pulley", "that at the top of the frame")
			}
		}
	}
	w, y := h.Site.LoadWidth, h.Site.LoadHeight
	if m, ok := c.Plan.Drive.Mass.Value(); ok && w.Is && y.Is && float64(m) > densest*float64(w.Val)*float64(w.Val)*float64(y.Val) {
		add("site.load_width_m", "mass", "the mass", "its size: nothing is that dense")
	}
	if h.Rope.Outdoors == unit.No && h.Site.Outdoors == unit.Yes {
		add("rope.outdoors", "site.outdoors", "a rope indoors", "a hoist outdoors")
	}
	if low := h.Base.Published(h.Site.Outdoors); low.Is && h.Base.Friction.Is && h.Base.Friction.Val > low.Val {
		r := reason.Reason{ID: "contradiction", Word: reason.NotKnown, Path: "base.friction", Clears: reason.Proof,
			Say:  say.That("A friction of %s is more than the %s that is published for this underside on concrete.", say.Times(h.Base.Friction.Val), say.Times(low.Val)),
			Mend: say.That("Use the published value, or pull the base with a scale until it slides."), Source: source.TemporaryWorks.Whole()}
		out = append(out, r)
	}
	out = append(out, standing(h)...)
	out = append(out, frames(c)...)
	out = append(out, instant(h)...)
	out = append(out, rotor(c)...)
	return append(out, impossible(h)...)
}

// hottest is the winding temperature above which no insulation is classed, °C (IEC 60085, class 250, from memory).
const hottest = 250

// leastJerk is the least factor by which any hoist loads its rope when it picks the mass up (φ2,min of class HC1).
const leastJerk = 1.05

// standing are answers about what carries and stands that cannot both be true.
func standing(h lift.Hoist) []reason.Reason {
	var out []reason.Reason
	add := func(path string, from source.Ref, text, mend say.Sentence) {
		out = append(out, reason.Reason{ID: "contradiction", Word: reason.NotKnown, Path: path, Clears: reason.Answer, Say: text, Mend: mend, Source: from})
	}
	if h.Base.Where == lift.BaseOnBeam && h.Reeving.LeadSheaves.Or(0) > 0 {
		add("base.where", source.Derivation.At("equilibrium of the base"), say.That("The drive is on the beam, and its rope runs over a pulley there. The pull is along the beam, and what holds the drive against it is not known."),
			say.That("Put the drum straight over the mass, or the drive on the ground."))
	}
	if h.Base.WeightsFixed == unit.No && h.Base.LoosePart.Is && h.Base.LoosePart.Val == 0 {
		add("base.weights_fixed", source.Judgement.Whole(), say.That("Two answers contradict each other: weights that are not fastened, and no loose weight."), say.That("Say how much of the base somebody could remove."))
	}
	if h.Base.WeightsFixed == unit.Yes && h.Base.LoosePart.Or(0) > 0 {
		add("base.weights_fixed", source.Judgement.Whole(), say.That("Two answers contradict each other: weights that are all fastened, and %s of them loose.", say.Mass(h.Base.LoosePart.Val)), say.That("Fasten every weight, or say that they are not fastened: loose weights do not count."))
	}
	if t := h.Machine.MaxWinding; t.Is && t.Val > hottest {
		add("machine.max_winding_c", source.FromMemory.At("IEC 60085"), say.That("No insulation of a winding is made for %s.", say.Temperature(t.Val)), say.That("Use the figure on the label, and %s where there is none.", say.Temperature(90)))
	}
	if f := h.Holds.Factor; f.Is && f.Val < leastJerk {
		add("holds.dynamic_factor", source.EN130012.Whole(), say.That("A factor for jerks of %s is less than that of the smoothest crane, %s.", say.Times(f.Val), say.Times(leastJerk)), say.That("Leave it empty, or use the factor of your hoist's class."))
	}
	fix, k := h.Structure.HangerFixing, h.Structure.Beam.Kind
	timber, steel := k == lift.MemberTimber || k == lift.MemberRoundPole, k == lift.MemberSteelTube || k == lift.MemberSteelRoundTube
	inWood := fix == lift.FixingBoltedThroughWood || fix == lift.FixingScrewedIntoWood
	if fix == lift.FixingAnchorInMasonry && (timber || steel) || inWood && steel {
		add("structure.hanger_fixing", source.Judgement.Whole(), say.That("Two answers contradict each other: how the hanger is fastened, and what the beam is made of."), say.That("Look at the beam, and correct the wrong one."))
	}
	return out
}
