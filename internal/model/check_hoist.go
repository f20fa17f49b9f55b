package model

import (
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// checkReeving returns what cannot be rigged: a drive on the ground with no pulley above, and a far end that the number
// of ropes at the mass does not lead to. From the last pulley above an odd number of ropes ends at the mass, an even one
// at the beam; with the drum itself above it is the same.
func checkReeving(h lift.Hoist) Problems {
	var ps Problems
	r := h.Reeving
	if h.Base.Where == lift.BaseOnGround && r.LeadSheaves.Is && r.LeadSheaves.Val == 0 {
		ps.Add("reeving.lead_sheaves", "a drive on the ground lifts over at least one pulley above the mass: count that one too")
	}
	if n := r.RopeParts; n.Is && (r.DeadEnd == lift.DeadEndMass && n.Val%2 == 0 || r.DeadEnd == lift.DeadEndBeam && n.Val%2 == 1) {
		ps.Add("reeving.dead_end", fmt.Sprintf("with %d ropes at the mass the far end of the rope is at the %s. Choose that here, or count the ropes again", n.Val,
			map[bool]string{true: "beam", false: "mass"}[n.Val%2 == 0]))
	}
	return ps
}

// checkMachine returns numbers of one motor that no motor can have together. What only disagrees is a flag of the result.
func checkMachine(m lift.Machine) Problems {
	var ps Problems
	if i, s := m.I0, m.SheetStall; i.Is && s.Is && i.Val >= s.Val {
		ps.Tell("machine.i0_a", say.That("the current without load (%s) must be smaller than the current with the shaft held (%s)", say.Current(i.Val), say.Current(s.Val)))
	}
	if c, s := m.MaxCurrent, m.SheetStall; c.Is && s.Is && c.Val >= s.Val {
		ps.Tell("machine.continuous_current_a", say.That("the current it withstands all day (%s) must be smaller than the current with the shaft held (%s)", say.Current(c.Val), say.Current(s.Val)))
	}
	if c, i := m.MaxCurrent, m.I0; c.Is && i.Is && i.Val >= c.Val {
		ps.Tell("machine.i0_a", say.That("the current without load (%s) must be smaller than the current it withstands all day (%s)", say.Current(i.Val), say.Current(c.Val)))
	}
	if v, r, i := m.SheetVolts, m.R, m.I0; v.Is && r.Is && i.Is && float64(i.Val)*float64(r.Val) >= float64(v.Val) {
		ps.Tell("machine.r_ohm", say.That("without load %s through %s needs %s, as much as the label's voltage: nothing is left to turn it", say.Current(i.Val), say.Resistance(r.Val), say.Voltage(unit.Voltage(float64(i.Val)*float64(r.Val)))))
	}
	if b, v := m.BrushDrop, m.SheetVolts; b.Is && v.Is && float64(b.Val) >= float64(v.Val) {
		ps.Add("machine.brush_drop_v", "the drop at the brushes must be smaller than the label's voltage")
	}
	if b, v := m.BrushHigh, m.SheetVolts; b.Is && v.Is && float64(b.Val) >= float64(v.Val) {
		ps.Add("machine.brush_drop_high_v", "the drop at the brushes must be smaller than the label's voltage")
	}
	if low, high := m.BrushLow, m.BrushHigh; low.Is && high.Is && low.Val > high.Val {
		ps.Add("machine.brush_drop_low_v", "the least drop at the brushes must not be more than the greatest")
	}
	return ps
}

// checkPosts returns shares that leave a part of the load to nobody.
func checkPosts(s lift.Structure) Problems {
	sum := 0.0
	for _, p := range s.Posts {
		if !p.Share.Is {
			return nil // counts as the whole
		}
		sum += float64(p.Share.Val)
	}
	if len(s.Posts) == 0 || s.RestsOn != lift.RestsOnOwnPostsOnGround || sum > 0.99 {
		return nil
	}
	var ps Problems
	ps.Tell("structure.posts[0].load_share", say.That("the posts carry %s of the load together: their shares must make 100 % or more", say.Share(unit.Ratio(sum)).To(3).Down()))
	return ps
}
