package unit

import "strconv"

// OfDegrees are v degrees, to the last bit as a field reads their digits: so a field shows the digits of a file, 39.83 and not
// 39.829999999999998.
func OfDegrees(v float64) Angle {
	if si, known, err := Angles.Parse(strconv.FormatFloat(v, 'f', -1, 64), Metric); err == nil && known {
		return Angle(si)
	}
	return Angle(v) * Degree
}
