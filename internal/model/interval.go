package model

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Interval is the range in which a known value must lie, as a `range` tag writes it: "(0,5]" is more than 0 and at
// most 5.
type Interval struct {
	Low, High         float64
	LowOpen, HighOpen bool
}

// ParseInterval reads a `range` tag.
func ParseInterval(tag string) (Interval, error) {
	bad := func() (Interval, error) { return Interval{}, fmt.Errorf("model: %q is not an interval", tag) }
	if len(tag) < 5 || !strings.ContainsRune("[(", rune(tag[0])) || !strings.ContainsRune("])", rune(tag[len(tag)-1])) {
		return bad()
	}
	low, high, ok := strings.Cut(tag[1:len(tag)-1], ",")
	if !ok {
		return bad()
	}
	a, errA := strconv.ParseFloat(low, 64)
	b, errB := strconv.ParseFloat(high, 64)
	if errA != nil || errB != nil || !(a <= b) {
		return bad()
	}
	return Interval{a, b, tag[0] == '(', tag[len(tag)-1] == ')'}, nil
}

// Holds reports whether x lies in the interval. NaN and infinities never do.
func (i Interval) Holds(x float64) bool {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return false
	}
	return (x > i.Low || !i.LowOpen && x == i.Low) && (x < i.High || !i.HighOpen && x == i.High)
}

// String says the interval in words: "more than 0 and at most 5".
func (i Interval) String() string { return i.As(plain).String() }

// As is the sentence of String with its limits given by a function, which is told the direction that leads into the interval.
func (i Interval) As(limit func(float64, unit.Round) any) say.Sentence {
	if i.Low == i.High {
		return say.That("%s", limit(i.Low, unit.Nearest))
	}
	low, high := "at least ", "at most "
	if i.LowOpen {
		low = "more than "
	}
	if i.HighOpen {
		high = "less than "
	}
	return say.That(low+"%s and "+high+"%s", limit(i.Low, unit.Up), limit(i.High, unit.Down))
}

// plain writes a number as the document would: no exponent where the number is short without one.
func plain(x float64, _ unit.Round) any {
	if a := math.Abs(x); a != 0 && (a < 1e-6 || a >= 1e16) {
		return strconv.FormatFloat(x, 'g', -1, 64)
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}
