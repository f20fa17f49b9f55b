package model

import (
	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
)

// usualStepDown is the efficiency of a step-down drive where nobody gave it, as its input current needs it: the low end of
// 0.90 to 0.94 (from memory).
const usualStepDown = 0.9

// Peak is what the line has to give when everything that may be on together is on while every hoist lifts.
type Peak struct {
	Run    load.Together // the moment that asks the most of the line
	Start  load.Together // the moment whose start does
	AC, VA float64       // most that runs through the inverter at once: W, and VA by the power factors
	ACMost float64       // most that the inverter gives for a start, W

	Hoists    unit.Power // of all hoists that the line feeds, lifting at once
	Line      unit.Power // at the line, running
	LineStart unit.Power
	Banks     []PeakBank // one for each battery that can be computed
	Checks    []LineCheck
}

// PeakBank is what one battery gives if it must carry the peak alone: the others may be empty, or not there yet.
type PeakBank struct {
	At             int // its place among the stores
	Rest           unit.Voltage
	Ohm            unit.Resistance // of cells and cable
	Current, Start unit.Current
	Voltage        unit.Voltage
	part           Part
	Carries        bool // false: it cannot give that power at any current; Current is that of the most it can
}

// of is the current of a battery at the peak; 0 for another store.
func (p Peak) of(s *StoreResult) unit.Current {
	for _, b := range p.Banks {
		if b.part == s.Part {
			return b.Current
		}
	}
	return 0
}

// worst is the battery whose voltage sags most; nil without a battery.
func (p Peak) worst() *PeakBank {
	var w *PeakBank
	for i, b := range p.Banks {
		if w == nil || b.Current/unit.Current(b.Rest) > w.Current/unit.Current(w.Rest) {
			w = &p.Banks[i]
		}
	}
	return w
}

// peak works out the peak of a variant. The line's losses, the standing draws and the hoists are the same in every moment, so
// the moment with the most at the line is that with the most current.
func (g Ground) peak(v Variant, stores []StoreResult) Peak {
	p := Peak{Hoists: hoistPower(v, stores)}
	idle := g.standing(v, stores) + p.Hoists
	line := func(ac, dc float64) unit.Power {
		return idle + g.Load.Losses.Line(unit.Power(ac), 0) + unit.Power(dc)
	}
	p.Line, p.LineStart = line(0, 0), line(0, 0)
	p.Run.Starts, p.Start.Starts = -1, -1
	for _, t := range g.Load.Peaks {
		if w := line(t.AC, t.DC); len(p.Run.On) == 0 || w > p.Line {
			p.Run, p.Line = t, w
		}
		ac := t.ACStart()
		if w := line(ac, t.StartPower()-ac); len(p.Start.On) == 0 || w > p.LineStart {
			p.Start, p.LineStart = t, w
		}
		p.AC, p.VA, p.ACMost = max(p.AC, t.AC), max(p.VA, t.Apparent), max(p.ACMost, ac)
	}
	for i, s := range stores {
		if c := CellsOf(s); c != nil && c.Resolved.WhyNot == "" {
			run, start := p.Line, p.LineStart
			if !c.Design.ForNight() { // it feeds the electronics alone: neither devices nor motors
				run = idle - p.Hoists + brakePower(stores)
				start = run
			}
			p.Banks = append(p.Banks, bankAt(i, c, run, start))
		}
	}
	return p
}

func bankAt(i int, c *CellsResult, run, start unit.Power) PeakBank {
	r := c.Resolved
	b := PeakBank{At: i, part: c, Rest: r.Rest(), Ohm: r.Internal() + r.CableOhm()}
	b.Current, b.Voltage, b.Carries = cell.Sag(b.Rest, b.Ohm, run)
	b.Start, _, _ = cell.Sag(b.Rest, b.Ohm, start)
	return b
}

// standing is what uses power all the time at the line, as far as it is known: project, inverter, variant, controller, stores.
func (g Ground) standing(v Variant, stores []StoreResult) unit.Power {
	project, _ := load.StandingPower(g.Project.Load.Standing)
	own, _ := load.StandingPower(v.Standing)
	sum := project + own + v.Controller.Standing()
	if g.Project.Load.HasInverter() {
		sum += g.Project.Load.Inverter.Idle.Or(0)
	}
	for _, s := range stores {
		if c := CellsOf(s); c != nil {
			sum += c.Resolved.Standing
		}
	}
	return sum
}

// hoistPower is what all hoists on the line use in the moment their motors start: V·I_av/η_D and what their brakes use.
func hoistPower(v Variant, stores []StoreResult) (sum unit.Power) {
	for _, s := range stores {
		h := HoistOf(s)
		if h == nil {
			continue
		}
		if i, ok := h.supplyCurrent(); ok {
			r := h.Design.Raise
			sum += unit.Power(r.Voltage.Val)*unit.Power(i)/unit.Power(driveEfficiency(r)) + r.Auxiliary.Or(0)
		}
	}
	return sum
}

// brakePower is what the brakes of all hoists use while they move.
func brakePower(stores []StoreResult) (sum unit.Power) {
	for _, s := range stores {
		if h := HoistOf(s); h != nil {
			sum += max(h.Design.Raise.Auxiliary.Or(0), h.Design.Lower.Auxiliary.Or(0))
		}
	}
	return sum
}

// supplyCurrent is I_av, the most current that the supply drives through the motor: its limit, or what wires and winding let
// through with the shaft held. False where the line does not feed the motor or neither is known.
func (r *HoistResult) supplyCurrent() (unit.Current, bool) {
	raise := r.Design.Raise
	if raise.Feed == lift.FeedPanel || raise.Feed == "" || !raise.Voltage.Is {
		return 0, false
	}
	m := r.Drive.Machine
	if !m.R.Is {
		return raise.CurrentLimit.Val, raise.CurrentLimit.Is
	}
	return lift.Available(raise.Voltage.Val, m.BrushDrop, m.R.Val+raise.WireR.Or(0), raise.CurrentLimit), true
}

// driveEfficiency is η_D of a supply: 1 for a relay that nobody measured, a low usual one for a drive.
func driveEfficiency(r lift.Raise) unit.Ratio {
	if r.Feed == lift.FeedRelay {
		return r.DriveEff.Or(1)
	}
	return r.DriveEff.Or(usualStepDown)
}
