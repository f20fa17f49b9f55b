package unit

import (
	"math"
	"strconv"
)

// sixteenth is the finest mark of an inch tape, m.
const sixteenth = 0.0254 / 16

// Steps of a tape, in sixteenths of an inch.
const (
	TapeSixteenth = 1
	TapeInch      = 16
	TapeFoot      = 12 * 16
)

// Tape writes a length of at least zero, in m, as an inch tape shows it: feet, inches and sixteenths in lowest terms,
// "14′ 9-3/16″", "3-15/16″", "20′ 9″". It is rounded in a direction to whole steps, each so many sixteenths of an inch; to
// the nearest it is n = round(16·m/0.0254) sixteenths. A length that is not a number is "not known".
func Tape(l Length, step int, dir Round) string {
	v := float64(l)
	if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 || v > 1e6 {
		return "not known"
	}
	n := v / sixteenth / float64(step)
	switch near := math.Round(n); {
	case dir == Nearest || math.Abs(n-near) <= 1e-9*max(n, 1):
		n = near
	default:
		n = directed(n, 1, dir)
	}
	return tapeMarks(int(n) * step)
}

// tapeMarks writes so many sixteenths of an inch.
func tapeMarks(n int) string {
	feet, inches, part := n/TapeFoot, n%TapeFoot/TapeInch, n%TapeInch
	out := ""
	if feet > 0 {
		if out = strconv.Itoa(feet) + "′"; inches == 0 && part == 0 {
			return out
		}
		out += Space
	}
	if part == 0 {
		return out + strconv.Itoa(inches) + "″"
	}
	if feet > 0 || inches > 0 {
		out += strconv.Itoa(inches) + "-"
	}
	of := 16
	for part%2 == 0 {
		part, of = part/2, of/2
	}
	return out + strconv.Itoa(part) + "/" + strconv.Itoa(of) + "″"
}

// Bought writes the size of a thing as shops sell it, m: whole or half millimetres as millimetres, 32nds of an inch as
// inches, whatever the units of the reader, for a rope of 12 mm is no rope of 15/32″. A size that is both follows the
// reader, one that is neither is written in the reader's units as other small lengths are.
func Bought(l Length, sys System) string {
	v := float64(l)
	whole := func(step float64) bool {
		n := math.Round(v / step)
		return n >= 1 && math.Abs(v-n*step) <= 1e-7
	}
	metric, inch := whole(0.0005), whole(sixteenth/2) && v < 0.3048
	switch {
	case inch && (sys == Imperial || !metric):
		return inches32(int(math.Round(v / (sixteenth / 2))))
	case metric:
		return SmallLengths.Format(v, Metric)
	}
	return SmallLengths.Format(v, sys)
}

// inches32 writes so many 32nds of an inch.
func inches32(n int) string {
	if n%2 == 0 {
		return tapeMarks(n / 2)
	}
	if n < 32 {
		return strconv.Itoa(n) + "/32″"
	}
	return strconv.Itoa(n/32) + "-" + strconv.Itoa(n%32) + "/32″"
}
