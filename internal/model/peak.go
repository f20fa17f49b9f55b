package model

import (
	"duskweight/internal/model/cell"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

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

	inverterRating say.Sentence // what the inverter gives all day and for a start
}

// PeakBank is what one battery gives if it must carry the peak alone: the others may be empty, or not there yet.
type PeakBank struct {
	At             int // its place among the stores
	Rest           unit.Voltage
	Ohm            unit.Resistance // of cells and cable
	Current, Start unit.Current
	Voltage        unit.Voltage
	part           Part
	Asked, Most    unit.Power // what is asked of it at the peak, and the most it can give at any current; 0 where nothing limits it
	Carries        bool       // false: it cannot give that power at any current; Current is that of the most it can
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
	p := Peak{}
	idle, brakes := g.standing(v), unit.Power(0) // what is on all the time, and with it what brakes use
	for _, s := range stores {
		w := s.Part.Wires()
		p.Hoists, brakes, idle = p.Hoists+w.Lifting, brakes+w.Brake, idle+w.Standing
	}
	line := func(ac, dc float64) unit.Power {
		return idle + p.Hoists + g.Load.Losses.Line(unit.Power(ac), 0) + unit.Power(dc)
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
	p.inverterRating = ratingOf(g.Project.Load.Inverter)
	at, all := banks(stores)
	for n, b := range all {
		run, start := p.Line, p.LineStart
		if !b.ForNight { // it feeds the electronics alone: neither devices nor motors
			run = idle + brakes
			start = run
		}
		p.Banks = append(p.Banks, b.at(at[n], stores[at[n]].Part, run, start))
	}
	return p
}

// at is the battery at place i of the stores, at the peak.
func (b *Bank) at(i int, part Part, run, start unit.Power) PeakBank {
	p := PeakBank{At: i, part: part, Rest: b.Rest, Ohm: b.Ohm, Asked: run}
	if b.Ohm > 0 { // at half its voltage: V²/(4R)
		p.Most = unit.Power(float64(b.Rest) * float64(b.Rest) / (4 * float64(b.Ohm)))
	}
	p.Current, p.Voltage, p.Carries = cell.Sag(b.Rest, b.Ohm, run)
	p.Start, _, _ = cell.Sag(b.Rest, b.Ohm, start)
	return p
}

// ratingOf is what an inverter gives all day, and for a start.
func ratingOf(v load.Inverter) say.Sentence {
	switch {
	case v.Present == unit.No:
		return say.Words("none")
	case v.Rated.Is && v.Surge.Is:
		return say.That("%s, %s", say.Power(v.Rated.Val), say.Power(v.Surge.Val))
	case v.Rated.Is:
		return say.That("%s", say.Power(v.Rated.Val))
	}
	return say.Sentence{}
}

// standing is what project, inverter, variant and controller use all the time at the line, as far as it is known.
func (g Ground) standing(v Variant) unit.Power {
	project, _ := load.StandingPower(g.Project.Load.Standing)
	own, _ := load.StandingPower(v.Standing)
	sum := project + own + v.Controller.Standing()
	if g.Project.Load.HasInverter() {
		sum += g.Project.Load.Inverter.Idle.Or(0)
	}
	return sum
}
