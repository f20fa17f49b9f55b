package unit

import (
	"math"
	"strconv"
)

// Round is the direction in which a shown number is rounded, in the unit that it is shown in.
type Round int

// The directions. A strength that must be bought is rounded up, one that is there is rounded down.
const (
	Nearest Round = iota
	Up
	Down
)

// slack is the relative error of a conversion that rounding up or down does not count as more: a few units in the last place
// of a float64 (own derivation: each of at most four roundings is half a unit, 1.1e-16).
const slack = 1e-14

// NumberTo returns si in q's unit under sys with that many significant digits, rounded in a direction, without the unit. Zero
// digits are whole numbers. A value that is not a number is "not known".
func (q Quantity) NumberTo(si float64, sys System, digits int, dir Round) string {
	if math.IsNaN(si) || math.IsInf(si, 0) {
		return "not known"
	}
	if q.dim.write != nil {
		return q.dim.write(si)
	}
	v := q.shown[sys&1].fromSI(si)
	return RoundedTo(v, q.digitsFor(v, sys, digits), dir)
}

// FormatTo is NumberTo with the unit.
func (q Quantity) FormatTo(si float64, sys System, digits int, dir Round) string {
	if text, taped := q.taped(si, sys, digits, dir); taped {
		return text
	}
	return q.withSymbol(q.NumberTo(si, sys, digits, dir), si, sys) + q.beside(si, sys)
}

// RoundedTo is Rounded in a direction. Zero digits are whole numbers.
func RoundedTo(v float64, digits int, dir Round) string {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return Rounded(v, digits)
	}
	if digits <= 0 {
		digits = max(1, 1+int(math.Floor(math.Log10(max(math.Abs(v), 1)))))
		if whole := math.Round(v); dir == Nearest {
			return Rounded(whole, len(strconv.FormatFloat(math.Abs(whole), 'f', 0, 64)))
		}
		v = directed(v, 1, dir)
		return Rounded(v, digits+1)
	}
	if dir != Nearest {
		v = directed(v, math.Pow(10, float64(digits-1)-math.Floor(math.Log10(math.Abs(v)))), dir)
		digits = 15 // it is round now
	}
	return Rounded(v, digits)
}

// directed rounds v to a multiple of 1/scale, away from or towards minus infinity.
func directed(v, scale float64, dir Round) float64 {
	x := v * scale
	if near := math.Round(x); math.Abs(x-near) <= slack*math.Abs(x) {
		return near / scale
	}
	if dir == Up {
		return math.Ceil(x) / scale
	}
	return math.Floor(x) / scale
}
