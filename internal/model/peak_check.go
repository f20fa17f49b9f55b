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
func (p *Peak) check(g Ground, v Variant) {
	p.Checks = p.inverterChecks(g.Project.Load)
	for _, b := range p.Banks {
		p.Checks = append(p.Checks, b.part.Peak(g, b)...)
	}
	for i, a := range g.Project.Load.Appliances {
		if a.Supply == load.SupplyDc && a.CableLen.Is && a.CableArea.Is && a.Running().Is && a.Count.Is {
			line := v.Controller.Line()
			amps := unit.Current(float64(a.Running().Val) * float64(a.Count.Val) / float64(line))
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
	run.Say = say.That("Up to %s run through the inverter together. Its rating must be a quarter more.", say.Power(unit.Power(p.VA)))
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
