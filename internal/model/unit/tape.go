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

// The lengths that are told in feet and inches: from half an inch up, for a sixteenth of less is no measure of it, and under
// 100 ft, for no tape of a workshop is longer (common practice).
const (
	shortestTaped = 0.0127
	longestTaped  = 100 * 0.3048
	foot          = 0.3048
)

// TapeReads reports whether a length is told in feet and inches to readers in inches.
func TapeReads(l Length) bool {
	size := math.Abs(float64(l))
	return size >= shortestTaped && size < longestTaped
}

// byTape returns q told in feet and inches, from a foot up to whole steps, each so many sixteenths of an inch.
func (q Quantity) byTape(step int) Quantity { q.tape = step; return q }

// Taped reports whether lengths of q are told in feet and inches under sys.
func (q Quantity) Taped(sys System) bool { return q.tape > 0 && sys == Imperial }

// taped writes a length as an inch tape shows it, where q is told so. Three digits are q's own step, more are sixteenths. Two digits
// are whole inches from a foot up, one digit is whole feet from three feet up. Under a foot every step but the last is a sixteenth.
func (q Quantity) taped(si float64, sys System, digits int, dir Round) (string, bool) {
	size := math.Abs(si)
	if !q.Taped(sys) || !TapeReads(Length(si)) {
		return "", false
	}
	step := TapeSixteenth
	switch {
	case digits == 1 && size >= 3*foot:
		step = TapeFoot
	case digits == 1 || digits == 2 && size >= foot:
		step = TapeInch
	case digits == 3 && size >= foot:
		step = q.tape
	}
	return tapeTo(si, step, dir), true
}

// tapeTo is Tape of a length that may be less than zero.
func tapeTo(si float64, step int, dir Round) string {
	if si >= 0 {
		return Tape(Length(si), step, dir)
	}
	switch dir {
	case Up:
		dir = Down
	case Down:
		dir = Up
	}
	return Minus + Tape(Length(-si), step, dir)
}

// tapedLimit is one end of a usual range, rounded to a round mark: whole inches from a foot up, quarters from an inch up.
func (q Quantity) tapedLimit(si float64, sys System, dir Round) (string, bool) {
	size := math.Abs(si)
	if _, taped := q.taped(si, sys, q.digits, dir); !taped {
		return "", false
	}
	step := TapeSixteenth
	switch {
	case size >= foot:
		step = TapeInch
	case size >= 0.0254:
		step = TapeInch / 4
	}
	return tapeTo(si, step, dir), true
}
