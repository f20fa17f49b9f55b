package lift

import "slices"

// piece is a stretch of e = K·ω − V_b over which the current of the loads grows in a straight line.
type piece struct {
	to     float64 // where it ends, V
	ref    float64 // somewhere on the line, V
	at     float64 // the current there, A
	slope  float64 // A/V
	on     []branch
	holder int
	r      float64
}

// reaching is the power that reaches the lamps at so many volts beside ref, W.
func (p piece) reaching(beside float64) float64 {
	i := p.at + p.slope*beside
	return root{u: p.ref + beside - p.r*i, holder: p.holder}.reaching(p.on, i)
}

// samples is into how many pieces the way to the steady speed is cut where a constant power makes the current a curve. The
// error of straight pieces falls with its square.
const samples = 400

// pieces are the stretches from rest, at a voltage of minus the drop at the brushes, to the steady speed: between two voltages
// where something begins to conduct, or cut fine.
func (t terminals) pieces(brush float64) []piece {
	var out []piece
	if brush > 0 { // nothing flows yet
		out = append(out, piece{ref: -brush, on: t.even, holder: -1, r: t.r})
	}
	knots := t.knots()
	for k, from := range knots[:len(knots)-1] {
		third := (knots[k+1] - from) / 3
		one, two := t.at(from+third), t.at(from+2*third)
		slope := (two.i - one.i) / third
		out = append(out, piece{to: knots[k+1], ref: from, at: one.i - slope*third, slope: slope, on: two.on, holder: two.holder, r: t.r})
	}
	return out
}

// knots are where the pieces meet, from 0 to the steady speed.
func (t terminals) knots() []float64 {
	knots := []float64{0, t.balance}
	for _, bs := range [][]branch{t.even, t.all} {
		for _, u := range append(thresholds(bs, t.top), t.top) {
			knots = append(knots, u+t.r*taken(bs, u))
		}
	}
	if t.powered() {
		for k := 1; k < samples; k++ {
			knots = append(knots, t.balance*float64(k)/samples)
		}
		knots = append(knots, t.start)
		for step := t.balance / samples; step > 1e-9*t.balance; step /= 2 { // there the current bends most
			knots = append(knots, t.start+step)
		}
	}
	return upTo(knots, t.balance)
}

// upTo sorts voltages from 0 to the highest and leaves out those outside and those that lie on one another.
func upTo(es []float64, highest float64) []float64 {
	slices.Sort(es)
	out := []float64{0}
	for _, e := range es {
		if e > out[len(out)-1]+1e-13*highest && e < highest*(1-1e-13) {
			out = append(out, e)
		}
	}
	return append(out, highest)
}
