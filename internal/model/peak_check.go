package model

import (
	"duskweight/internal/model/cell"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// inverterReserve is the rating that an inverter needs over its running load (common practice).
const inverterReserve = 1.25

// lampDrop is the share of the line's voltage that a lamp's own cable may lose (common practice).
const lampDrop = 0.05

// check works out the checks of the peak.
func (p *Peak) check(g Ground, v Variant, stores []StoreResult) {
	p.Checks = p.inverterChecks(g.Project.Load)
	for _, b := range p.Banks {
		p.Checks = append(p.Checks, b.checks(g, *CellsOf(stores[b.At]))...)
	}
	for i, a := range g.Project.Load.Appliances {
		if a.Supply == load.SupplyDc && a.CableLen.Is && a.CableArea.Is && a.Power.Is && a.Count.Is {
			line := v.Controller.Line()
			amps := unit.Current(float64(a.Power.Val) * float64(a.Count.Val) / float64(line))
			drop := cell.Drop(a.CableLen.Val, amps, a.CableArea.Val, cell.HotCable)
			c := lineCheck("lamp_volts", atAppliance(i, "cable_area_m2"), unit.Voltages, float64(drop), lampDrop*float64(line), usualNearly)
			c.Say = say.That("The cable of %s loses %s, and %s are fine.", nameOf(a), say.Voltage(drop), say.Voltage(lampDrop*line).Down())
			p.Checks = append(p.Checks, c)
		}
	}
}

// inverterChecks are those of the inverter; none where nothing runs through it.
func (p *Peak) inverterChecks(l load.Load) []LineCheck {
	if p.AC <= 0 {
		return nil
	}
	run := lineCheck("inverter_run", "load.inverter.rated_w", unit.Powers, inverterReserve*p.VA, float64(l.Inverter.Rated.Or(0)), usualNearly)
	run.Say = say.That("Up to %s run through the inverter together.", say.Power(unit.Power(p.VA)))
	most, at := l.Inverter.Surge, "load.inverter.surge_w"
	if !most.Is && l.Inverter.Rated.Is && p.ACMost <= float64(l.Inverter.Rated.Val) {
		most, at = l.Inverter.Rated, "load.inverter.rated_w" // what it gives all day it gives for a start
	}
	start := lineCheck("inverter_start", at, unit.Powers, p.ACMost, float64(most.Or(0)), 1)
	start.Say = say.That("For a start the inverter has to give up to %s.", say.Power(unit.Power(p.ACMost)))
	return []LineCheck{run, start}
}

// startFuse is how many times its rating a fuse carries for as long as a start takes (from memory).
func startFuse(seconds float64) float64 {
	switch {
	case seconds < 1:
		return 2
	case seconds < 10:
		return 1.5
	}
	return 1
}

// checks are those of one battery.
func (b PeakBank) checks(g Ground, c CellsResult) []LineCheck {
	path := func(field string) string { return Join(CellsPath(b.At), field) }
	i := float64(b.Current)
	fuse := lineCheck("fuse", path("fuse_a"), unit.Currents, i, float64(c.Design.Fuse.Or(0)), fuseNearly)
	fuse.Say = say.That("Up to %s run through the battery's fuse.", say.Current(b.Current))
	out := []LineCheck{b.board(c), fuse}
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
		for k := range out {
			out[k].Say = say.Join(out[k].Say, say.That("At no current does this battery give that power through its cable."))
		}
	}
	return out
}

// board is the current of the management board; where its limit is not known, it is a question above half the capacity an hour.
func (b PeakBank) board(c CellsResult) LineCheck {
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
		k.Say = say.That("How much the battery and its board let through is not known, and up to %s flow.", say.Current(b.Current))
		return k
	}
	k.Say = say.That("Cells of this kind and size give %s, and up to %s flow.", say.Current(unit.Current(most)), say.Current(b.Current))
	return k
}

// startTime is how long the longest of the starts takes that may be the greatest, s.
func (b PeakBank) startTime(g Ground) (s float64) {
	for _, t := range g.Load.Peaks {
		s = max(s, t.StartTime)
	}
	return s
}

func nameOf(a load.Appliance) string {
	if a.Name == "" {
		return "an appliance"
	}
	return a.Name
}
