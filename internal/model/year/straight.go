package year

// straight is a store with straight curves, whose hour is one sum and one clamp: no threshold, no step, no idle losses,
// no fall near full, nothing locked. Every product that does not hang on the state is made off the chain x → x.
type straight struct {
	X        float64 // capacity
	pf, pd   float64 // W at the line
	gain     float64 // a_f·H: own joules for each watt offered over the hour
	cost     float64 // a_d·H: own joules for each watt asked over the hour
	perGain  float64 // 1/a_f
	perCost  float64 // 1/a_d
	keep     float64 // share that an hour of leak leaves
	standing float64 // W at the line
}

// straighten reports whether s is straight, and makes it so.
func straighten(s *store, standing float64) (straight, bool) {
	if s.pth > 0 || s.step || s.bf > 0 || s.bd > 0 || s.pmin > 0 || s.falls || s.cap > 0 ||
		len(s.noFill) > 0 || len(s.locked) > 0 || s.af <= 0 || s.ad <= 0 || s.X <= 0 {
		return straight{}, false
	}
	return straight{
		X: s.X, pf: s.pf, pd: s.pd,
		gain: s.af * hour, cost: s.ad * hour, perGain: 1 / s.af, perCost: 1 / s.ad,
		keep: s.keep, standing: standing,
	}, true
}

// run is what a stretch of hours came to.
type stretch struct {
	up      float64 // own joules put in
	leaked  float64 // own joules
	surplus float64 // W·h at the line: Σ of what was offered
	deficit float64 // W·h at the line: Σ of what was asked
	short   int     // hours in the list of those in which something is missing
}

// lack is an hour in which something is missing.
type lack struct {
	h     int32
	unmet float64 // J
}

// run goes through the hours from state x, writes each hour's last state to state and the hours in which something is
// missing to short, and returns the last state. bus, total and state have the same length, short at least that.
func (k *straight) run(bus, total, state []float64, short []lack, x float64) (float64, stretch) {
	total = total[:len(bus)]
	state = state[:len(bus)]
	X, pf, pd, gain, cost, per, standing := k.X, k.pf, k.pd, k.gain, k.cost, k.perCost, k.standing
	var up, surplus, deficit float64
	n := 0
	for h, b := range bus {
		s := b - total[h] - standing
		if s >= 0 {
			surplus += s
			if s > pf {
				s = pf
			}
			was := x
			x += s * gain
			if x > X {
				x = X
			}
			up += x - was
		} else {
			deficit -= s
			y := -s
			if y > pd {
				y = pd
			}
			x -= y * cost
			if x < 0 {
				short[n] = lack{int32(h), (-s-y)*hour - x*per}
				n++
				x = 0
			} else if -s > pd {
				short[n] = lack{int32(h), (-s - y) * hour}
				n++
			}
		}
		state[h] = x
	}
	return x, stretch{up: up, surplus: surplus, deficit: deficit, short: n}
}
