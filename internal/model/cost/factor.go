package cost

import "math"

// The compound interest factors. n is in years, i is the real rate; i = 0 is the limit, never a division by zero.
// (Blank & Tarquin, Engineering Economy, ch. 2; CRF as in every handbook.)

// PresentWorth returns what one unit of money at the end of year t is worth today: (1 + i)^−t.
func PresentWorth(i, t float64) float64 { return math.Exp(-t * math.Log1p(i)) }

// Annuity returns what one unit of money at the end of each of n years is worth today: (1 − (1 + i)^−n)/i; n for i = 0.
func Annuity(i, n float64) float64 {
	if i == 0 {
		return n
	}
	return -math.Expm1(-n*math.Log1p(i)) / i
}

// CRF is the capital recovery factor, the yearly payment that a debt of one takes: i(1 + i)^n/((1 + i)^n − 1); 1/n for
// i = 0.
func CRF(i, n float64) float64 { return 1 / Annuity(i, n) }
