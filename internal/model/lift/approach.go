package lift

import "math"

// What a speed that comes near its end as e^−y has done after y time constants.

// logOver is −ln(1 − x)/x.
func logOver(x float64) float64 {
	if math.Abs(x) < 1e-9 {
		return 1 + x/2
	}
	return -math.Log1p(-x) / x
}

// small is the y under which the functions below are summed as a series: their closed forms lose digits there.
const small = 0.5

// first is φ_1(y) = (1 − e^−y)/y, the mean of e^−s for s from 0 to y.
func first(y float64) float64 {
	if math.Abs(y) < 1e-9 {
		return 1 - y/2
	}
	return -math.Expm1(-y) / y
}

// second is φ_2(y) = (1 − φ_1(y))/y = 1/2! − y/3! + y²/4! − …
func second(y float64) float64 {
	if math.Abs(y) >= small {
		return (1 - first(y)) / y
	}
	sum, term := 0.0, 0.5
	for k := 3.0; k < 20; k++ {
		sum, term = sum+term, -term*y/k
	}
	return sum
}

// square is (1 − 2·φ_1(y) + φ_1(2y))/y², the mean of (s·φ_1(s·y))² for s from 0 to 1:
// Σ (−y)^(k−2)·(2^k − 2)/(k + 1)! from k = 2 on.
func square(y float64) float64 {
	if math.Abs(y) >= small {
		return (1 - 2*first(y) + first(2*y)) / (y * y)
	}
	sum, term := 0.0, 1.0/6
	for k := 2.0; k < 24; k++ {
		sum, term = sum+term*(math.Exp2(k)-2), -term*y/(k+2)
	}
	return sum
}
