package lift

import (
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// heatMargin is what stays between a winding and its highest temperature, K (common practice).
const heatMargin = 20

// Body is a motor that heats as one body: thermal resistance to the air, time constant, the air.
type Body struct {
	Rth     unit.ThermalResistance
	Tau     unit.Duration
	Ambient unit.Celsius
}

// heating is a body under one current: x = α·R_th·I²·R_25 and the power at the air's temperature.
type heating struct{ x, full, tau float64 } // full: R_th·P_a, K

// heating returns x and R_th·P_a with P_a = I²·R_25·(1 + α·(T_a − 25)) + K·I_0·ω.
func (b Body) heating(i unit.Current, r25 unit.Resistance, friction unit.Power) heating {
	copper := float64(i) * float64(i) * float64(r25)
	pa := copper*(float64(CopperGrowth(b.Ambient))) + float64(friction)
	return heating{x: Alpha * float64(b.Rth) * copper, full: float64(b.Rth) * pa, tau: float64(b.Tau)}
}

// grown is (1 − e^(−(1−x)·t/τ))/(1 − x), which is t/τ for x = 1.
func (q heating) grown(t float64) float64 {
	if y := 1 - q.x; math.Abs(y) > 1e-12 {
		return -math.Expm1(-y*t/q.tau) / y
	}
	return t / q.tau
}

// until returns how long it may run from cold until it is allowed kelvin above the air:
// −τ'·ln(1 − ΔT·(1 − x)/(R_th·P_a)), τ' = τ/(1 − x). Not known: for ever.
func (q heating) until(allowed float64) unit.Known[unit.Duration] {
	if allowed <= 0 {
		return unit.Of[unit.Duration](0)
	}
	y := (1 - q.x) * allowed / q.full
	switch {
	case q.full <= 0 || y >= 1:
		return unit.Known[unit.Duration]{}
	case math.Abs(1-q.x) < 1e-12:
		return told[unit.Duration](q.tau * allowed / q.full)
	}
	return told[unit.Duration](-q.tau / (1 - q.x) * math.Log1p(-y))
}

// rest returns how long it must rest between runs of t so that ever so many of them stay under allowed kelvin: the
// last of them ends at A/(1 − E·D), A the rise of one run from cold, E = e^(−(1−x)·t/τ), D = e^(−rest/τ). Not known
// where one run alone is too much.
func (q heating) rest(t, allowed float64) unit.Known[unit.Duration] {
	once := q.full * q.grown(t)
	if once >= allowed {
		return unit.Known[unit.Duration]{}
	}
	rest := -q.tau * (math.Log1p(-once/allowed) + (1-q.x)*t/q.tau)
	return told[unit.Duration](math.Max(0, rest))
}

// thermal is a motor as one or two bodies under one current.
type thermal interface {
	rise(t float64) float64
	settled() (float64, bool)
	until(allowed float64) unit.Known[unit.Duration]
	rest(t, allowed float64) unit.Known[unit.Duration]
	share(allowed float64) float64 // of the time it may run, in short turns

	after(t float64, th [2]float64, on bool) [2]float64 // warmer than the air by th, running or standing for t
}

// rise returns how much warmer than the air, K, the winding is t seconds from cold:
// R_th·P_a·(1 − e^(−(1−x)·t/τ))/(1 − x), for any x.
func (q heating) rise(t float64) float64 { return q.full * q.grown(t) }

// settled returns R_th·P_a/(1 − x), K, and false for x ≥ 1: then the winding never settles.
func (q heating) settled() (float64, bool) { return q.full / (1 - q.x), q.x < 1 }

// share is ΔT/(R_th·P) with P at the allowed temperature.
func (q heating) share(allowed float64) float64 {
	return math.Min(1, allowed/(q.full+q.x*allowed))
}

// thermal builds the motor under a current at a speed; false where its thermal values are not known.
func (w *work) thermal(i, rotor float64) (thermal, bool) {
	m := w.h.Machine
	r1, ok1 := m.RthWinding.Value()
	t1, okT1 := m.TauWinding.Value()
	if !ok1 {
		w.lack("machine.rth_winding_k_w", "how hot the motor gets")
	}
	if !okT1 {
		w.lack("machine.tau_winding_s", "how fast the motor gets hot")
	}
	if !ok1 || !okT1 {
		return nil, false
	}
	ambient := w.h.Lower.Ambient.Or(25)
	friction := w.kk * w.i0 * rotor
	r2, ok2 := m.RthCase.Value()
	t2, okT2 := m.TauCase.Value()
	if ok2 && okT2 {
		return newTwoBody(i, w.r, friction, float64(ambient), float64(r1), float64(t1), float64(r2), float64(t2)), true
	}
	b := Body{Rth: r1, Tau: t1, Ambient: ambient}
	if ok2 {
		b.Rth += r2 // the winding's own short time constant: warmer sooner than it really gets
		w.lack("machine.tau_case_s", "how fast the whole motor gets hot; the winding's own time is used, the careful reading")
	}
	return b.heating(unit.Current(i), unit.Resistance(w.r), unit.Power(friction)), true
}

// heats fills both ways and how long joined wires are stood.
func (w *work) heats() {
	ra, lo := w.d.Raising, w.d.Lowering
	if ra.Known && !ra.Stalls {
		w.d.HeatUp = w.heat("raise", float64(ra.Current), float64(ra.Rotor), float64(ra.Time))
	}
	if lo.Known && lo.Steady {
		w.d.HeatDown = w.heat("lower", float64(lo.Current), float64(lo.Rotor), float64(lo.Time))
	}
	if g := &w.d.LetGo; g.JoinedSpeed.Is {
		if body, ok := w.thermal(float64(lo.Current), float64(g.JoinedRotor)); ok {
			if allowed, ok := w.allowed(); ok {
				g.JoinedFor = body.until(allowed)
			}
		}
	}
}

// allowed is how much warmer than the air the winding may get.
func (w *work) allowed() (float64, bool) {
	most, ok := w.h.Machine.MaxWinding.Value()
	if !ok {
		w.lack("machine.max_winding_c", "how long the motor may run and must rest")
		return 0, false
	}
	return float64(most) - float64(w.h.Lower.Ambient.Or(25)) - heatMargin, true
}

// heat is the winding over one run of t, and over ever so many.
func (w *work) heat(of string, i, rotor, t float64) Heat {
	h := Heat{Of: of}
	body, ok := w.thermal(i, rotor)
	if !ok {
		return h
	}
	_, h.TwoBody = body.(twoBody)
	ambient := float64(w.h.Lower.Ambient.Or(25))
	rise := body.rise(t)
	hot := math.Min(ambient+rise, 1e6) // past any meaning
	if math.IsNaN(hot) {
		return h
	}
	h.Known, h.Winding = true, unit.Celsius(hot)
	if end, settles := body.settled(); settles {
		h.Settles, h.Final = true, told[unit.Celsius](ambient+end)
	}
	if allowed, ok := w.allowed(); ok {
		w.rests(&h, body, t, rise, allowed)
	}
	return h
}

// inARow is how many runs of t follow each other from cold, with no rest, before the winding passes the allowed rise; not
// known where a thousand do.
func inARow(body thermal, t, allowed float64) unit.Known[unit.Count] {
	var th [2]float64
	for n := range 1000 {
		if th = body.after(t, th, true); th[0] > allowed {
			return unit.Of(unit.Count(n))
		}
	}
	return unit.Known[unit.Count]{}
}

// rests fills how long it may run, must rest, and how many runs a day that makes.
func (w *work) rests(h *Heat, body thermal, t, rise, allowed float64) {
	word := map[string]string{"raise": "Lifting", "lower": "Coming down"}[h.Of]
	if allowed <= 0 {
		h.TooHot = true
		w.caution("machine.max_winding_c", "The air round the motor is too warm for it to run at all.")
		return
	}
	h.Run = body.until(allowed)
	h.TooHot = rise >= allowed
	h.duty = body.share(allowed)
	if h.TooHot {
		run := say.Sentence{}
		if v, ok := h.Run.Value(); ok {
			run = say.That("The motor may run for %s; one travel lasts %s.", say.Time(v), say.Time(unit.Duration(t)))
		}
		hot := say.That("%s heats the winding to %s in one run, too much for the motor.", word, say.Temperature(h.Winding))
		w.caution("machine.max_winding_c", "%s", say.Join(hot, run))
		return
	}
	h.Rest = body.rest(t, allowed)
	h.Row = inARow(body, t, allowed)
	if v, ok := h.Rest.Value(); ok && v > 0 {
		n, _ := h.Row.Value()
		times := say.That("once")
		if n != 1 {
			times = say.That("%s times in a row", n)
		}
		w.caution("machine.max_winding_c", "%s: a cold motor withstands this %s. After that the motor must rest for %s after each run, or it gets too hot.", word, times, say.Time(v))
	}
	if v, ok := h.Rest.Value(); ok {
		h.PerDay = told[unit.Ratio](86400 / (t + float64(v)))
	}
}
