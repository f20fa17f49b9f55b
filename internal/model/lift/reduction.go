package lift

import (
	"math"

	"duskweight/internal/model/reservoir"
	"duskweight/internal/model/unit"
)

// reduce makes the small type of the hoist that the year run knows, or says why it cannot be made.
//
// Over several layers the gain of a passage is that of its whole travel and its loss follows from its time, so that
// filling at full power and drawing at full power take exactly the energies and times of the passage.
func (w *work) reduce() {
	d := w.d
	if d.WhyNot = w.whyNot(); d.WhyNot != "" {
		return
	}
	r := &reservoir.Reservoir{Name: w.h.Name, AcceptFrom: 1, AcceptEnd: 1}
	units := float64(w.h.Units.Or(1))
	r.Capacity = unit.Energy(units * w.m * unit.G * w.travel)
	w.draw(r)
	if w.h.Raise.Feed == FeedPanel {
		d.Draining = r
		d.WhyNot = "The panel feeds the motor straight: how fast it fills follows from the sun of every hour."
		return
	}
	w.fill(r, units)
	if !finite(r.FillGain, float64(r.FillLoss), float64(r.FillMax), float64(r.FillThreshold), r.DrawGain, float64(r.DrawLoss), float64(r.DrawMax), float64(r.Capacity), float64(r.FillCap)) {
		d.WhyNot = "The numbers of this hoist are too large or too small to compute with."
		return
	}
	d.Reservoir = r
}

// NotEnough is why a hoist is no store for want of inputs.
const NotEnough = "Not enough is known yet to say what this hoist stores."

// whyNot says why there is no store, empty where there is one.
func (w *work) whyNot() string {
	ra, lo := w.d.Raising, w.d.Lowering
	panel := w.h.Raise.Feed == FeedPanel
	switch {
	case ra.Gearless:
		return NotEnough
	case ra.Known && ra.Stalls:
		return "The motor stalls: nothing is lifted."
	case lo.Known && lo.RunsBack == DownNo:
		return "It does not come down by itself: nothing comes back."
	case lo.Known && !lo.Steady:
		return "It does not settle with these loads."
	case !ra.Known && !panel, !lo.Known, w.h.Raise.Feed == "":
		return NotEnough
	}
	return ""
}

// fill sets the filling side.
//
//	step-down drive: a_f = m·g·η_D/(c·K·I), b_f = (m·g/(c·K·I))·(I²·R + V_b·I + η_D·P_au),
//	P_th = P_au + (I²·R + V_b·I)/η_D with the greater of running and first push, P_f = P_au + V_max·I/η_D
//	relay: P_th = P_f = V·I/η_D + P_au, and a_f·P_f = m·g·v
func (w *work) fill(r *reservoir.Reservoir, units float64) {
	s, _ := w.supply()
	x := w.m * unit.G * w.travel
	r.FillMax = unit.Power(w.up.energy / w.up.time)
	if w.h.Raise.Feed == FeedDrive {
		i := math.Max(float64(w.d.Raising.Current), float64(w.d.Raising.FirstPush))
		r.FillThreshold = unit.Power(s.aux + (i*i*s.loop+i*w.vb)/s.eff)
		r.FillGain = w.up.gain
		r.FillLoss = unit.Power(math.Max(0, w.up.gain*w.up.energy-x) / w.up.time)
	} else {
		r.FillStep, r.FillThreshold = true, r.FillMax
		r.FillGain = x / w.up.energy
	}
	heat := w.d.HeatUp
	switch {
	case heat.TooHot:
		r.FillCap = unit.Energy(units * math.Max(1, 86400*heat.duty/w.up.time*x))
	case heat.PerDay.Is && heat.Rest.Val > 0:
		r.FillCap = unit.Energy(units * float64(heat.PerDay.Val) * x)
	}
}

// draw sets the drawing side: fixed loads take what they take, a governed converter gives what is asked between its
// least and its most voltage.
//
//	a_d = m·g/(c·K·η·I), b_d = (m·g/(c·K))·(I·R + V_b) + a_d·P_ad
//	governed: P_d = η·U_max·I − P_ad, P_dmin = max(0, η·U_min·I − P_ad)
func (w *work) draw(r *reservoir.Reservoir) {
	x := w.m * unit.G * w.travel
	r.DrawMax = unit.Power(math.Max(0, w.down.energy/w.down.time))
	r.DrawMin = r.DrawMax
	time := w.down.time
	if b, ok := w.governor(); ok {
		r.DrawMin, r.DrawMax, time = w.governed(b)
	}
	if w.down.gain > 0 {
		r.DrawGain = 1 / w.down.gain
	}
	if loss := x/time - r.DrawGain*float64(r.DrawMax); loss >= 0 || r.DrawMax == 0 {
		r.DrawLoss = unit.Power(math.Max(0, loss))
	} else { // a short way down stays where the lamps get a greater share than at the steady speed
		r.DrawGain = x / time / float64(r.DrawMax)
	}
}

// governor is the one governed converter, where it alone hangs on the motor beside clamps and such that take nothing.
func (w *work) governor() (DCLoad, bool) {
	if len(w.roots) == 0 || w.roots[0].holder < 0 {
		return DCLoad{}, false
	}
	l := w.h.Lower.Loads[w.roots[0].holder]
	return l, l.Kind == LoadGoverned
}

// governed returns least and most power and the time at the most: that of the whole travel less what it takes to come up to
// the set speed, when nothing is given. The least layer decides the most, the fullest the least.
func (w *work) governed(l DCLoad) (least, most unit.Power, time float64) {
	eta, aux := float64(l.Efficiency.Or(1)), float64(w.h.Lower.Auxiliary.Or(0))
	lo, hi := 0.0, math.Inf(1)
	for _, p := range w.down.points {
		u := w.kk*p.rotor - w.vb - p.current*w.r
		top := min(u, float64(l.MaxVoltage.Or(unit.Voltage(u))))
		bottom := min(top, float64(l.MinVoltage.Or(unit.Voltage(top))))
		hi = math.Min(hi, eta*top*p.current-aux)
		lo = math.Max(lo, eta*bottom*p.current-aux)
	}
	hi = math.Max(0, hi)
	lo = math.Min(lo, hi)
	x := w.m * unit.G
	if w.down.kept <= 0 {
		return 0, 0, w.down.time
	}
	for _, p := range w.down.points {
		a := 0.0
		if eta > 0 {
			a = x / (p.c * w.kk * eta * p.current)
		}
		b := x/(p.c*w.kk)*(p.current*w.r+w.vb) + a*aux
		time += w.down.kept * p.share * w.travel * x / (a*hi + b)
	}
	return unit.Power(lo), unit.Power(hi), time
}
