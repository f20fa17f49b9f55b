package model

import (
	"duskweight/internal/model/cell"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// breaksDown is the check of a battery that cannot give the power of the peak at any current.
const breaksDown = "breaks_down"

// Peak are the checks of the battery where it carries the peak alone.
func (c *CellsResult) Peak(g Ground, b PeakBank) []LineCheck {
	path := func(field string) string { return Join(CellsPath(b.At), field) }
	i := float64(b.Current)
	fuse := lineCheck("fuse", path("fuse_a"), unit.Currents, i, float64(c.Design.Fuse.Or(0)), fuseNearly)
	fuse.Say = say.That("Up to %s run through the battery's fuse.", say.Current(b.Current))
	out := []LineCheck{c.board(b), fuse}
	if most := g.Load.Peaks; len(most) > 0 && b.Start > b.Current && c.Design.Fuse.Is {
		start := lineCheck("fuse_start", path("fuse_a"), unit.Currents, float64(b.Start), startFuse(b.startTime(g))*float64(c.Design.Fuse.Val), 1)
		start.Say = say.That("For a start up to %s run through the battery's fuse.", say.Current(b.Start))
		out = append(out, start)
	}
	if a, ok := c.Design.CableArea.Value(); ok {
		amps, _ := cell.Ampacity(a)
		cable := lineCheck("battery_cable", path("cable_area_m2"), unit.Currents, i, float64(amps), 1)
		cable.Say = say.That("Up to %s run through the battery's cable.", say.Current(b.Current))
		out = append(out, cable)
	}
	if g.Project.Load.HasInverter() {
		cut := g.Project.Load.Inverter.Cut.Or(cell.CutShare * g.Project.Load.Inverter.Input.Or(c.Resolved.Voltage))
		low := lineCheck("low_voltage", "load.inverter.cut_v", unit.Voltages, float64(cut), float64(b.Voltage), usualNearly)
		low.Say = say.That("The voltage falls to %s, and the inverter switches off at %s.", say.Voltage(b.Voltage), say.Voltage(cut))
		out = append(out, low)
	}
	if !b.Carries {
		most := lineCheck(breaksDown, path("internal_ohm"), unit.Powers, float64(b.Asked), float64(b.Most), 1)
		most.Say = say.That("At most %s can be drawn from this battery, and %s may be on at once: its voltage breaks down.", say.Power(b.Most), say.Power(b.Asked))
		for k := range out {
			out[k].Say = say.Join(out[k].Say, say.That("This battery cannot give that power through its cable at any current."))
		}
		out = append(out, most)
	}
	return out
}

// board is the current of the management board; where its limit is not known, it is a question above half the capacity an hour.
func (c *CellsResult) board(b PeakBank) LineCheck {
	path := Join(CellsPath(b.At), "board_max_a")
	if most, ok := c.Design.BoardMost.Value(); ok {
		k := lineCheck("board", path, unit.Currents, float64(b.Current), float64(most), usualNearly)
		k.Say = say.That("The board lets %s through, and up to %s flow.", say.Current(most), say.Current(b.Current))
		return k
	}
	most := float64(c.Resolved.DrawMost) / float64(c.Resolved.Voltage)
	k := lineCheck("board", path, unit.Currents, float64(b.Current), most, usualNearly)
	k.Word = Holds
	if half := c.Resolved.Charge.AmpereHours() / 2; float64(b.Current) > half { // more than half its capacity in an hour
		k.Word = NotKnown
		k.Say = say.That("How much current the battery and its board let through is not known, and up to %s flow.", say.Current(b.Current))
		return k
	}
	k.Say = say.That("Cells of this kind and size give %s, and up to %s flow.", say.Current(unit.Current(most)), say.Current(b.Current))
	return k
}
