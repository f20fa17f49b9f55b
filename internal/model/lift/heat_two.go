package lift

import (
	"math"

	"duskweight/internal/model/unit"
)

// twoBody is a motor as winding and case: the copper heats the winding, friction heats the case.
//
//	C1·dθ1/dt = P_c + α·I²·R_25·θ1 − (θ1 − θ2)/R1,   C1 = τ1/R1
//	C2·dθ2/dt = (θ1 − θ2)/R1 + P_f − θ2/R2,          C2 = τ2/R2
//
// θ over the air; P_c the copper loss with the winding at the air's temperature.
type twoBody struct {
	on, off    linear // running, standing
	p1, p2     float64
	r1, r2     float64
	grow, cond float64 // α·I²·R_25, P_c
	fric       float64
}

// linear is dθ/dt = A·θ + p for two temperatures; its A has real eigenvalues, for both couplings are positive.
type linear struct{ a, b, c, d float64 }

func newTwoBody(i, r25, friction, ambient, r1, tau1, r2, tau2 float64) twoBody {
	c1, c2 := tau1/r1, tau2/r2
	copper := i * i * r25
	q := twoBody{r1: r1, r2: r2, grow: Alpha * copper, cond: copper * float64(CopperGrowth(unit.Celsius(ambient))), fric: friction}
	q.off = linear{a: -1 / (r1 * c1), b: 1 / (r1 * c1), c: 1 / (r1 * c2), d: -(1/r1 + 1/r2) / c2}
	q.on = q.off
	q.on.a += q.grow / c1
	q.p1, q.p2 = q.cond/c1, friction/c2
	return q
}

// eigen returns the two rates, the faster growing first.
func (m linear) eigen() (s1, s2 float64) {
	half, root := (m.a+m.d)/2, math.Hypot((m.a-m.d)/2, math.Sqrt(m.b*m.c))
	return half + root, half - root
}

// after returns e^{A·t}·θ + ∫e^{A·s}·p ds, by the two rates.
func (m linear) after(t float64, th, p [2]float64) [2]float64 {
	s1, s2 := m.eigen()
	if s1 == s2 {
		s1 += 1e-12 * math.Abs(s1)
	}
	// projectors on the eigenvectors: P1 = (A − s2)/(s1 − s2), P2 = 1 − P1
	along := func(x [2]float64) (one, two [2]float64) {
		k := 1 / (s1 - s2)
		one = [2]float64{k * ((m.a-s2)*x[0] + m.b*x[1]), k * (m.c*x[0] + (m.d-s2)*x[1])}
		return one, [2]float64{x[0] - one[0], x[1] - one[1]}
	}
	t1, t2 := along(th)
	p1, p2 := along(p)
	e1, e2 := math.Exp(s1*t), math.Exp(s2*t)
	f1, f2 := integral(s1, t), integral(s2, t)
	var out [2]float64
	for j := range out {
		out[j] = e1*t1[j] + e2*t2[j] + f1*p1[j] + f2*p2[j]
	}
	return out
}

// integral is (e^{s·t} − 1)/s, t for s = 0.
func integral(s, t float64) float64 {
	if math.Abs(s*t) < 1e-12 {
		return t
	}
	return math.Expm1(s*t) / s
}

func (q twoBody) rise(t float64) float64 {
	return q.on.after(t, [2]float64{}, [2]float64{q.p1, q.p2})[0]
}

// settled is ((R1 + R2)·P_c + R2·P_f)/(1 − α·I²·R_25·(R1 + R2)).
func (q twoBody) settled() (float64, bool) {
	x := q.grow * (q.r1 + q.r2)
	return ((q.r1+q.r2)*q.cond + q.r2*q.fric) / (1 - x), x < 1
}

// until finds where the winding passes the allowed rise; from cold it only rises.
func (q twoBody) until(allowed float64) unit.Known[unit.Duration] {
	if allowed <= 0 {
		return unit.Of[unit.Duration](0)
	}
	if end, ok := q.settled(); ok && end <= allowed {
		return unit.Known[unit.Duration]{}
	}
	return told[unit.Duration](firstTime(1e9, func(t float64) bool { return q.rise(t) >= allowed }))
}

// rest finds the shortest rest after which ever so many runs of t stay under the allowed rise.
func (q twoBody) rest(t, allowed float64) unit.Known[unit.Duration] {
	if once := q.rise(t); math.IsNaN(once) || once >= allowed {
		return unit.Known[unit.Duration]{}
	}
	return told[unit.Duration](firstTime(1e9, func(rest float64) bool {
		peak, ok := q.peak(t, rest)
		return ok && peak <= allowed
	}))
}

// peak is the winding at the end of the last of ever so many runs of t with rests between: the fixed point of
// θ → e^{A·t}·e^{A0·rest}·θ + a. False where it grows without end.
func (q twoBody) peak(t, rest float64) (float64, bool) {
	step := func(th, p [2]float64) [2]float64 {
		return q.on.after(t, q.off.after(rest, th, [2]float64{}), p)
	}
	a := step([2]float64{}, [2]float64{q.p1, q.p2})
	u, v := step([2]float64{1, 0}, [2]float64{}), step([2]float64{0, 1}, [2]float64{})
	// M = [u v]; both eigenvalues under 1 for positive M: 1 − trace + det > 0 and trace < 2
	trace, det := u[0]+v[1], u[0]*v[1]-v[0]*u[1]
	d := 1 - trace + det
	if !(d > 0 && trace < 2) {
		return 0, false
	}
	return ((1-v[1])*a[0] + v[0]*a[1]) / d, true
}

func (q twoBody) share(allowed float64) float64 {
	hot := (q.r1+q.r2)*(q.cond+q.grow*allowed) + q.r2*q.fric
	return math.Min(1, allowed/hot)
}

// firstTime returns the least time, up to most, from which a condition that stays true once it is holds; infinite where
// it never does.
func firstTime(most float64, holds func(float64) bool) float64 {
	if holds(0) {
		return 0
	}
	hi := 1.0
	for !holds(hi) {
		if hi *= 2; hi > most {
			return math.Inf(1)
		}
	}
	lo := 0.0
	for range 200 {
		mid := (lo + hi) / 2
		if mid <= lo || mid >= hi {
			break
		}
		if holds(mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return hi
}
