package year

// straight is a store with straight curves, whose hour is one sum and one clamp: no threshold, no step, no idle losses,
// no fall near full, nothing locked. Every product that does not hang on the state is made off the chain from state to
// state, and nothing in it divides.
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

// straighten returns s as a straight store; ok is false where it is none.
func straighten(s *store, standing float64) (k straight, ok bool) {
	if s.pth > 0 || s.step || s.bf > 0 || s.bd > 0 || s.pmin > 0 || s.falls || s.cap > 0 ||
		len(s.noFill) > 0 || len(s.locked) > 0 || s.own != nil || s.af <= 0 || s.ad <= 0 || s.X <= 0 {
		return straight{}, false
	}
	return straight{
		X: s.X, pf: s.pf, pd: s.pd,
		gain: s.af * hour, cost: s.ad * hour, perGain: 1 / s.af, perCost: 1 / s.ad,
		keep: s.keep, standing: standing,
	}, true
}

// stretch is what a stretch of hours comes to with a straight store. Everything else follows from it and from the
// balance.
type stretch struct {
	surplus float64 // W·h at the line that were offered
	deficit float64 // W·h at the line that were asked
	above   float64 // W·h at the line that were offered above P_f
	over    float64 // own joules that found no room
	short   int     // hours in the list of those in which something is missing
}

// lack is an hour in which something is missing.
type lack struct {
	h     int
	unmet float64 // J
}

// run goes through the hours from state x, lists the hours in which something is missing in short, and returns the last
// state. first is the number of the first hour; bus and total have the same length, and short is at least as long.
// Hours of filling and of drawing have a loop each, for the sake of the branch predictor and of the registers.
func (k *straight) run(bus, total []float64, first int, short []lack, x float64) (float64, stretch) {
	if k.keep != 1 {
		return k.runLeaking(bus, total, first, short, x)
	}
	total = total[:len(bus)]
	short = short[:len(bus)]
	var surplus, deficit, above, over float64
	n := 0
	for h := 0; h < len(bus); {
		for ; h < len(bus); h++ {
			s := bus[h] - total[h] - k.standing
			if s < 0 {
				break
			}
			surplus += s
			if s > k.pf {
				above += s - k.pf
				s = k.pf
			}
			x += s * k.gain
			if x > k.X {
				over += x - k.X
				x = k.X
			}
		}
		for ; h < len(bus); h++ {
			s := bus[h] - total[h] - k.standing
			if s >= 0 {
				break
			}
			deficit -= s
			if s < -k.pd {
				u := (-s - k.pd) * hour
				x -= k.pd * k.cost
				if x < 0 {
					u -= x * k.perCost
					x = 0
				}
				short[n] = lack{first + h, u}
				n++
				continue
			}
			x += s * k.cost
			if x < 0 {
				short[n] = lack{first + h, -x * k.perCost}
				n++
				x = 0
			}
		}
	}
	return x, stretch{surplus: surplus, deficit: deficit, above: above, over: over, short: n}
}

// runLeaking is run with an hour of leak before each hour.
func (k *straight) runLeaking(bus, total []float64, first int, short []lack, x float64) (float64, stretch) {
	total = total[:len(bus)]
	short = short[:len(bus)]
	var surplus, deficit, above, over float64
	n := 0
	for h := range bus {
		x *= k.keep
		s := bus[h] - total[h] - k.standing
		if s >= 0 {
			surplus += s
			if s > k.pf {
				above += s - k.pf
				s = k.pf
			}
			x += s * k.gain
			if x > k.X {
				over += x - k.X
				x = k.X
			}
			continue
		}
		deficit -= s
		u := 0.0
		if s < -k.pd {
			u = (-s - k.pd) * hour
			s = -k.pd
		}
		x += s * k.cost
		if x < 0 {
			u -= x * k.perCost
			x = 0
		}
		if u > 0 {
			short[n] = lack{first + h, u}
			n++
		}
	}
	return x, stretch{surplus: surplus, deficit: deficit, above: above, over: over, short: n}
}
