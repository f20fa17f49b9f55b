package ready

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// fallZone is the word of a closed fall zone, which counts in place of a device against overspeed: the mass may fall, and
// nobody can be where it falls. path is the field that decides. Where nobody says that the mass may fall there is none.
func (c Case) fallZone() (word reason.Word, path string) {
	s := c.Hoist.Site
	if s.MayFall != unit.Yes {
		return reason.No, "site.may_fall"
	}
	word = reason.Yes
	take := func(w reason.Word, at string) {
		if w.Worse(word) {
			word, path = w, at
		}
	}
	switch s.Barrier {
	case lift.BarrierNone:
		take(reason.No, "site.barrier")
	case "":
		take(reason.NotKnown, "site.barrier")
	case lift.BarrierFence:
		take(c.fence(), "site.fence_radius_m")
	}
	take(reason.YesNo(s.ControlsOutside, unit.No), "site.controls_outside")
	if s.FloorBelow != lift.FloorSolidGround && s.BelowSecured != unit.Yes {
		take(reason.Tried(s.FloorBelow != "", true), "site.floor_below")
	}
	if !s.PadDepth.Is {
		take(reason.NotKnown, "site.pad_depth_m")
	}
	if !c.Hoist.Drum.DeadWraps.Is {
		take(reason.NotKnown, "drum.dead_wraps") // the rope's end must stay on a drum that runs free
	}
	return word, path
}

// fence sets the fence against the circles of drop and swing, and against the whole keep-out where the frame is not said to
// be braced.
func (c Case) fence() reason.Word {
	z := c.Hazards
	need := []unit.Known[unit.Length]{z.DropCircle, z.SwingRadius}
	if !c.Hoist.Structure.SidePull.Is {
		need = append(need, z.KeepOut)
	}
	if !c.Hoist.Site.FenceRadius.Is || z.AtLeast {
		return reason.NotKnown
	}
	for _, r := range need {
		if !r.Is {
			return reason.NotKnown
		}
		if r.Val > c.Hoist.Site.FenceRadius.Val {
			return reason.No
		}
	}
	return reason.Yes
}
