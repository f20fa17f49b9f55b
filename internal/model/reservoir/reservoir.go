// Package reservoir is the one small type that every store is reduced to. The year run knows only this type; a new
// kind of store is a new reduction, not a new year run.
package reservoir

import (
	"math"

	"duskweight/internal/model/unit"
)

// Reservoir is a store seen from the line it hangs on. Its state x is in the store's own joules, 0 ≤ x ≤ Capacity
// (cells: joules in the cells at nominal voltage; hoist: m·g·z of the raised masses).
//
//	fill, offered S:  u = 0 if S < FillThreshold, else FillMax if FillStep, else min(S, FillMax);   dx/dt = FillGain·u − FillLoss
//	draw, asked L:    y = min(L, DrawMax);   −dx/dt = DrawGain·max(y, DrawMin) + DrawLoss;   what DrawMin exceeds L is lost
type Reservoir struct {
	Name     string
	Capacity unit.Energy // X, own joules

	FillThreshold unit.Power // P_th, at the line
	FillMax       unit.Power // P_f, at the line
	FillStep      bool       // fills at FillMax or not at all
	FillGain      float64    // a_f, own joules for each joule at the line
	FillLoss      unit.Power // b_f, own watts

	DrawMin  unit.Power // P_dmin, at the line: less cannot be drawn, the rest is heat
	DrawMax  unit.Power // P_d, at the line
	DrawGain float64    // a_d, own joules for each joule at the line
	DrawLoss unit.Power // b_d, own watts

	Standing unit.Power // at the line, all hours
	Aside    bool       // it is there for the electronics alone: what goes by the charge of the stores does not look at it
	Leak     float64    // 1/s

	// Acceptance: above AcceptFrom·Capacity the power that filling takes falls in a straight line from FillMax to
	// AcceptEnd·FillMax at full. Only 0 < AcceptFrom < 1 with AcceptEnd < 1 falls, and only without FillStep; the zero
	// value does not fall.
	AcceptFrom float64
	AcceptEnd  float64

	// By hour of the year, or nil: hours in which nothing is filled, and the share of Capacity that is locked (not
	// destroyed: it comes back when the lock goes).
	NoFill []bool
	Locked []float64

	// FillCap is the most that may be filled a day, own joules (a hoist that must rest between lifts); 0 is no cap.
	FillCap unit.Energy

	// Own is a source of the store's own, beside the line (a panel straight on the motor of a hoist); nil for none.
	Own *Source
}

// Source is what a source of a store's own brings, by hour of the year. In an hour in which it brings something the
// store takes from it and from nothing else, and gives nothing: one changeover switch stands between source and loads.
type Source struct {
	Power []float64 // W that it gives while the store takes it
	Fill  []float64 // own watts that come of it, never more than Power
}

// gain is own joules for each joule that the source gives over the year, 0 where it gives none.
func (s *Source) gain() float64 {
	in, out := 0.0, 0.0
	for h := range min(len(s.Power), len(s.Fill)) {
		in += s.Power[h]
		out += s.Fill[h]
	}
	if in <= 0 {
		return 0
	}
	return out / in
}

// Drawn returns what a full store gives at the line when y is asked for all the time: X·y/(a_d·max(y, P_dmin) + b_d).
func (r Reservoir) Drawn(y unit.Power) unit.Energy {
	y = min(y, r.DrawMax)
	d := r.DrawGain*float64(max(y, r.DrawMin)) + float64(r.DrawLoss)
	if d <= 0 || y <= 0 {
		return 0
	}
	return unit.Energy(float64(r.Capacity) * float64(y) / d)
}

// RoundTrip returns what comes back of what was put in, filling at FillMax and drawing y:
// (y/(a_d·max(y, P_dmin) + b_d))·((a_f·u − b_f)/u), u = P_f; with a source of its own the year's mean of that source on
// the way in. 0 when nothing goes in or comes out.
func (r Reservoir) RoundTrip(y unit.Power) float64 {
	y = min(y, r.DrawMax)
	u := float64(r.FillMax)
	d := r.DrawGain*float64(max(y, r.DrawMin)) + float64(r.DrawLoss)
	if d <= 0 || y <= 0 {
		return 0
	}
	if r.Own != nil {
		return float64(y) / d * r.Own.gain()
	}
	if u <= 0 {
		return 0
	}
	in := (r.FillGain*u - float64(r.FillLoss)) / u
	if in <= 0 {
		return 0
	}
	return float64(y) / d * in
}

// Fault says why r is no store that can stand in a year, in plain words, or "" where it can: a value that is no number
// or below zero, or energy made from nothing (more own joules than joules at the line on the way in, or fewer on the
// way out).
func (r Reservoir) Fault() string {
	for _, v := range []float64{
		float64(r.Capacity), float64(r.FillThreshold), float64(r.FillMax), r.FillGain, float64(r.FillLoss),
		float64(r.DrawMin), float64(r.DrawMax), r.DrawGain, float64(r.DrawLoss), float64(r.Standing), r.Leak,
		r.AcceptFrom, r.AcceptEnd, float64(r.FillCap),
	} {
		if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
			return "one of its numbers is below zero or no number"
		}
	}
	const trace = 1e-12
	if r.FillGain > 1+trace {
		return "more goes in than comes from the line"
	}
	if r.Own != nil && r.Own.fault(trace) {
		return "its own source gives something below zero, no number, or less than what goes in"
	}
	if r.DrawMax > 0 && r.DrawGain < 1-trace && r.DrawGain*float64(r.DrawMax)+float64(r.DrawLoss) < float64(r.DrawMax)*(1-trace) {
		return "more comes out than was in"
	}
	return ""
}

// fault reports whether the source gives something that cannot be, or less than what comes of it.
func (s *Source) fault(trace float64) bool {
	if len(s.Power) != len(s.Fill) {
		return true
	}
	for h, p := range s.Power {
		if f := s.Fill[h]; !(p >= 0 && f >= 0 && f <= p*(1+trace)) || math.IsInf(p, 0) {
			return true
		}
	}
	return false
}
