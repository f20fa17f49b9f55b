package unit

import (
	"math"
	"math/big"
	"strconv"
	"strings"
)

// Space stands between thousands and before a unit: it does not break the line.
const Space = "\u00a0"

// Minus is the minus sign of shown numbers.
const Minus = "\u2212"

// Format returns si for reading, in q's unit under sys, rounded to q's significant digits: "0.118 Wh", "10 800 kg".
// A value that is not a number is "not known".
func (q Quantity) Format(si float64, sys System) string {
	if text, taped := q.taped(si, sys, q.digits, Nearest); taped {
		return text
	}
	return q.withSymbol(q.Number(si, sys), si, sys) + q.beside(si, sys)
}

// withSymbol puts q's unit behind a number that was printed of si.
func (q Quantity) withSymbol(n string, si float64, sys System) string {
	if q.dim.write != nil || math.IsNaN(si) || math.IsInf(si, 0) {
		return n
	}
	switch s := q.Symbol(sys); s {
	case "":
		return n
	case "°":
		return n + s
	default:
		return n + Space + s
	}
}

// Number is Format without the unit, for a column whose head has it.
func (q Quantity) Number(si float64, sys System) string {
	if math.IsNaN(si) || math.IsInf(si, 0) {
		return "not known"
	}
	if q.dim.write != nil {
		return q.dim.write(si)
	}
	v := q.shown[sys&1].fromSI(si)
	return Rounded(v, q.digitsFor(v, sys, q.digits))
}

// Rounded writes v with that many significant digits, never in powers of ten, thousands set apart, without zeros that say
// nothing. Whole digits before the point are kept as zeros: 123456 with 3 digits is 123 000.
func Rounded(v float64, digits int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "not known"
	}
	s := Apart(plain(strconv.FormatFloat(math.Abs(v), 'e', max(digits, 1)-1, 64)))
	if v < 0 && s != "0" {
		s = Minus + s
	}
	return s
}

// FormatFull returns si for an input of q: plain digits in q's unit under sys that Parse reads back to the very same
// float64. The unit stands in the field's label. A value that was given in the other system and has no short form in
// this one keeps its own unit: "2.8 m" in a field of feet, not 9.18635170603674482. For a value that is not a number
// it is "".
func (q Quantity) FormatFull(si float64, sys System) string {
	if math.IsNaN(si) || math.IsInf(si, 0) {
		return ""
	}
	if si == 0 {
		si = 0 // no minus zero
	}
	if q.dim.write != nil {
		if s := q.dim.write(si); q.sameBits(s, si, sys) {
			return s
		}
	}
	own := q.full(si, sys, sys)
	if len(own) <= 10 || q.Symbol(sys) == q.Symbol(1-sys&1) {
		return own
	}
	other := q.full(si, 1-sys&1, sys)
	if other != "" && len(other)+4 < len(own) {
		return other
	}
	return own
}

// full writes si in the unit of system in, to be read under sys.
func (q Quantity) full(si float64, in, sys System) string {
	m, tail := q.shown[in&1], ""
	if in != sys {
		tail = " " + m.symbol
	}
	v := m.fromSI(si)
	if m.symbol == "%" && math.Abs(v) <= 1+1e-12 && v != 0 {
		tail = " %" // a bare one would be asked back: see shareOrPercent
	}
	for _, d := range []int{14, 15, 16} { // 15, 16, 17 digits
		if s := plain(strconv.FormatFloat(v, 'e', d, 64)) + tail; q.sameBits(s, si, sys) {
			return s
		}
	}
	exact := m.exactFromSI(si)
	for d := 17; d <= 800; d++ {
		if s := q.decimal(exact, d) + tail; q.sameBits(s, si, sys) {
			return s
		}
	}
	return ""
}

func (q Quantity) sameBits(s string, si float64, sys System) bool {
	got, known, err := q.Parse(s, sys)
	return err == nil && known && got == si
}

// decimal writes an exact value with at least d significant digits.
func (q Quantity) decimal(v *big.Rat, d int) string {
	f, _ := v.Float64()
	lead := 0
	if f != 0 {
		lead = int(math.Floor(math.Log10(math.Abs(f))))
	}
	return trimZeros(v.FloatString(max(d-lead, 0)))
}

// fromSI converts for showing.
func (m *measure) fromSI(si float64) float64 {
	v, _ := m.exactFromSI(si).Float64()
	return v
}

func (m *measure) exactFromSI(si float64) *big.Rat {
	v := new(big.Rat).SetFloat64(si)
	if m.inverse {
		if v.Sign() == 0 {
			return v
		}
		return v.Quo(m.factor, v)
	}
	if m.offset != nil {
		v.Sub(v, m.offset)
	}
	return v.Quo(v, m.factor)
}

// plain writes the digits of "1.5e-05" without a power of ten: "0.000015".
func plain(s string) string {
	sign := ""
	if strings.HasPrefix(s, "-") {
		sign, s = "-", s[1:]
	}
	mant, exp, _ := strings.Cut(s, "e")
	e, _ := strconv.Atoi(exp)
	digits := strings.Replace(mant, ".", "", 1)
	point := 1 + e
	switch {
	case point <= 0:
		digits = "0." + strings.Repeat("0", -point) + digits
	case point >= len(digits):
		digits += strings.Repeat("0", point-len(digits))
	default:
		digits = digits[:point] + "." + digits[point:]
	}
	digits = trimZeros(digits)
	if digits == "0" {
		return "0"
	}
	return sign + digits
}

func trimZeros(s string) string {
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// WithUnit returns a typed text that names its unit, so that both systems read the same: a number alone is meant in q's
// unit under sys. A text that both read alike already, or that cannot be read, stays as it is.
func (q Quantity) WithUnit(text string, sys System) string {
	si, known, err := q.Parse(text, sys)
	if other, _, errOther := q.Parse(text, 1-sys&1); err != nil || !known || errOther == nil && other == si {
		return text
	}
	if long := strings.TrimSpace(text) + " " + q.Symbol(sys); q.means(long, si) {
		return long
	}
	return text
}

// WithoutUnit takes off the unit that WithUnit has put on for sys.
func (q Quantity) WithoutUnit(text string, sys System) string {
	if short, ok := strings.CutSuffix(text, " "+q.Symbol(sys)); ok && q.WithUnit(short, sys) == text {
		return short
	}
	return text
}

// means reports whether both systems read si from the text.
func (q Quantity) means(text string, si float64) bool {
	a, _, errA := q.Parse(text, Metric)
	b, _, errB := q.Parse(text, Imperial)
	return errA == nil && errB == nil && a == si && b == si
}

// Echo returns a typed value in both systems: "40 kg = 88.2 lb". Where both show the same unit it is said once.
func (q Quantity) Echo(si float64, sys System) string {
	one := q.Format(si, sys)
	if q.Symbol(Metric) == q.Symbol(Imperial) {
		return one
	}
	return one + " = " + q.Format(si, 1-sys&1)
}
