package sun

import "math"

// distribution is how the daily clearness K (irradiation over irradiation outside the atmosphere) of one month spreads
// round its mean: F(K) = (e^(γ·least) − e^(γK))/(e^(γ·least) − e^(γ·most)).
// source.Bendt.At("eq. 9"), source.HollandsHuget, as in source.DuffieBeckman.At("eq. 2.9.6–2.9.9").
type distribution struct {
	mean, least, most float64
	gamma             float64
	spread            float64 // standard deviation of the curve
}

// leastClearness is the darkest day of the curves (source.Bendt.At("K_T,min")).
const leastClearness = 0.05

// mostClearness returns the clearest day of a month with mean clearness k: source.HollandsHuget, as in
// source.DuffieBeckman.At("eq. 2.9.9"). Above 0.8, where no climate is, the fit turns down and is not used.
func mostClearness(k float64) float64 {
	k = min(k, 0.8)
	return 0.6313 + 0.267*k - 11.9*math.Pow(k-0.75, 8)
}

// distributionOf returns the curve of a month with mean clearness k. Outside of what the curve can make, a month is all
// of its mean: no spread.
func distributionOf(k float64) distribution {
	d := distribution{mean: k, least: leastClearness, most: mostClearness(k)}
	if k <= d.least || k >= d.most {
		d.least, d.most = min(k, d.least), max(k, d.most)
		return d
	}
	xi := (d.most - d.least) / (d.most - k)                                 // source.DuffieBeckman.At("eq. 2.9.8")
	d.gamma = -1.498 + (1.184*xi-27.182*math.Exp(-1.5*xi))/(d.most-d.least) // source.DuffieBeckman.At("eq. 2.9.7")
	d.gamma = min(d.gamma, 300)                                             // a month that is always clear: steep, but without overflow
	d.spread = d.deviation()
	return d
}

// flat tells that γ is so near 0 (K̄ near 0.394) that the curve is a straight line.
func (d distribution) flat() bool { return math.Abs(d.gamma*(d.most-d.least)) < 1e-6 }

// at returns the clearness below which the share u of the days lies, 0 ≤ u ≤ 1.
func (d distribution) at(u float64) float64 {
	if d.spread == 0 && d.gamma == 0 {
		return d.mean
	}
	width := d.most - d.least
	if d.flat() {
		return d.least + u*width
	}
	// written from the end that keeps digits: K = least + ln(1 + u (e^(γ·width) − 1))/γ
	var k float64
	if d.gamma > 0 {
		k = d.most + math.Log(u+(1-u)*math.Exp(-d.gamma*width))/d.gamma
	} else {
		k = d.least + math.Log1p(u*math.Expm1(d.gamma*width))/d.gamma
	}
	return min(max(k, d.least), d.most)
}

// deviation returns the standard deviation of the curve, from the moments of a cut exponential.
func (d distribution) deviation() float64 {
	w := d.most - d.least
	if d.flat() {
		return w / math.Sqrt(12)
	}
	// density of x = K − least on 0 … w is γ e^(γx)/(e^(γw) − 1): variance 1/γ² − w²/(4 sinh²(γw/2))
	s := math.Sinh(min(math.Abs(d.gamma*w)/2, 300))
	return math.Sqrt(max(0, 1/(d.gamma*d.gamma)-w*w/(4*s*s)))
}
