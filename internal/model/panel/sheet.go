package panel

import (
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Typical temperature coefficients of crystalline silicon, as shares; common practice.
const (
	typicalAlpha unit.PerKelvin = 0.0005
	typicalBeta  unit.PerKelvin = -0.003
)

// Complete tells that the four points every data sheet prints are known: without them there is no curve.
func (s Sheet) Complete() bool { return unit.AllKnown(s.Isc, s.Voc, s.Imp, s.Vmp) }

// sheet is the known values under the symbols of source.DeSoto.
type sheet struct {
	isc, voc, imp, vmp float64
	alpha, beta        float64 // A/K, V/K
}

// Fit finds the one-diode circuit that runs through the sheet's short circuit, best point and open circuit, has its
// most power at the best point, and loses open voltage with temperature as the sheet says: source.DeSoto.At("eq. 3–7").
// Where no circuit does all five, the last gives way: it is the least certain number of a sheet. An error is a sentence
// that says which values cannot belong together.
func (s Sheet) Fit() (Diode, error) {
	if !s.Complete() {
		return Diode{}, say.Refuse("the curve needs short-circuit current, open-circuit voltage, and current and voltage at the best point")
	}
	v := sheet{isc: float64(s.Isc.Val), voc: float64(s.Voc.Val), imp: float64(s.Imp.Val), vmp: float64(s.Vmp.Val)}
	v.alpha = v.isc * float64(s.Alpha.Or(typicalAlpha))
	v.beta = v.voc * float64(s.Beta.Or(typicalBeta))
	if err := v.sane(); err != nil {
		return Diode{}, err
	}
	if n, known := s.Cells.Value(); known {
		if per := v.voc / float64(n); per < 0.3 || per > 1.5 {
			return Diode{}, say.Refuse("%s cells in series make %s from each cell at open circuit; a cell makes 0.5 to 0.8 V. Look at the number of cells", n, say.Voltage(unit.Voltage(per)))
		}
	}
	return v.fit()
}

// mostFill is a share that no panel reaches of open voltage times short current, at its best point: from memory.
const mostFill = 0.9

// sane refuses sheets whose points are in the wrong order or whose curve would have an impossible shape.
func (s sheet) sane() error {
	fill := s.imp * s.vmp / (s.isc * s.voc)
	switch {
	case s.imp >= s.isc:
		return say.Refuse("the current at the best point (%s) must be less than the short-circuit current (%s)", amps(s.imp), amps(s.isc))
	case s.vmp >= s.voc:
		return say.Refuse("the voltage at the best point (%s) must be less than the open-circuit voltage (%s)", volts(s.vmp), volts(s.voc))
	case fill > mostFill:
		return say.Refuse("power at the best point over open voltage times short current is %s; no panel is above %s. Look at the four values", say.Times(unit.Ratio(fill)), say.Times(mostFill))
	case s.imp <= s.isc/2 || s.vmp <= s.voc/2:
		return say.Refuse("the best point (%s, %s) is not on a panel's curve: with one diode both are above half of %s and %s", volts(s.vmp), amps(s.imp), volts(s.voc), amps(s.isc))
	}
	return nil
}

func volts(v float64) say.Amount { return say.Voltage(unit.Voltage(v)) }

func change(perKelvin float64) say.Amount { return say.Of(unit.PerKelvins, perKelvin) }

func amps(i float64) say.Amount { return say.Current(unit.Current(i)) }

// fit searches A: for each A the other four follow (circuit); the open voltage's fall with temperature grows with A.
func (s sheet) fit() (Diode, error) {
	// A from voc/40 (the open voltage of a cell comes near its band gap, 1.12 V/0.0257 V = 44) to voc/5
	const steps = 200
	least, most := s.voc/40, s.voc/5
	at := func(k int) float64 { return least * math.Pow(most/least, float64(k)/steps) }
	first, last := -1, -1
	for k := 0; k <= steps; k++ {
		if _, ok := s.circuit(at(k)); ok {
			if first < 0 {
				first = k
			}
			last = k
		} else if first >= 0 {
			break
		}
	}
	if first < 0 {
		return Diode{}, say.Refuse("no curve of a panel runs through these four values: %s open, %s short, %s and %s at the best point", volts(s.voc), amps(s.isc), volts(s.vmp), amps(s.imp))
	}
	low, high := at(first), at(last)
	d, _ := s.circuit(low)
	if s.fall(d) <= s.beta {
		return d, s.far(d)
	}
	if top, _ := s.circuit(high); s.fall(top) >= s.beta {
		return top, s.far(top)
	}
	for range 60 {
		a := (low + high) / 2
		mid, ok := s.circuit(a)
		if !ok {
			break
		}
		d = mid
		if s.fall(d) > s.beta {
			low = a
		} else {
			high = a
		}
	}
	return d, s.far(d)
}

// fall returns dVoc/dT of a circuit, V/K, over ten kelvins: source.DeSoto.At("eq. 7").
func (s sheet) fall(d Diode) float64 {
	const step = 10
	return float64(d.At(referenceLight, 25+step).OpenVoltage()-d.OpenVoltage()) / step
}

// far refuses a sheet whose stated fall of the open voltage is out of reach by more than half: then something is
// mistyped, a sign or a per cent. Our own judgement.
func (s sheet) far(d Diode) error {
	if f := s.fall(d); math.Abs(f-s.beta) > math.Abs(f)/2 {
		return say.Refuse("the open voltage's change with temperature (%s) does not fit the other values, which make %s. Look at its sign and unit",
			change(s.beta/s.voc), change(f/s.voc))
	}
	return nil
}

// circuit returns the circuit for a given A that meets the four points, or false where none has Rs ≥ 0 and Leak ≥ 0.
// For given A and Rs the three points are linear in IL, I0 and Leak; Rs follows from the most power at the best point.
func (s sheet) circuit(a float64) (Diode, bool) {
	steepest := (s.voc - s.vmp) / s.imp
	const steps = 64
	var low, high, before float64
	found := false
	for k := range steps {
		rs := steepest * float64(k) / steps
		c, ok := s.linear(a, rs)
		if !ok {
			before = math.NaN()
			continue
		}
		r := s.slopeError(c)
		if r == 0 || (k > 0 && before*r < 0) {
			low, high = steepest*float64(max(k-1, 0))/steps, rs
			found = true
			break
		}
		before = r
	}
	if !found {
		return Diode{}, false
	}
	at, _ := s.linear(a, low)
	below := math.Signbit(s.slopeError(at))
	for range 60 {
		rs := (low + high) / 2
		c, ok := s.linear(a, rs)
		if !ok {
			return Diode{}, false
		}
		at = c
		if math.Signbit(s.slopeError(c)) == below {
			low = rs
		} else {
			high = rs
		}
	}
	if at.Leak < 0 {
		return Diode{}, false
	}
	return Diode{Curve: at, Alpha: s.alpha}, true
}

// slopeError is I − V·(−dI/dV) at the best point, which is 0 where power is most.
func (s sheet) slopeError(c Curve) float64 { return s.imp - s.vmp*c.slope(s.vmp, s.imp) }

// linear solves short circuit, open circuit and best point (source.DeSoto.At("eq. 3–5")) for IL, I0 and Leak.
func (s sheet) linear(a, rs float64) (Curve, bool) {
	whole := math.Expm1(s.voc / a)
	short := math.Expm1(s.isc*rs/a) / whole
	best := math.Expm1((s.vmp+s.imp*rs)/a) / whole
	// j = I0·whole:  j(1 − short) + Leak(voc − isc·rs) = isc
	//                j(best − short) + Leak(vmp + imp·rs − isc·rs) = isc − imp
	a11, a12 := 1-short, s.voc-s.isc*rs
	a21, a22 := best-short, s.vmp+s.imp*rs-s.isc*rs
	det := a11*a22 - a12*a21
	if math.Abs(det) < 1e-12*s.voc {
		return Curve{}, false
	}
	j := (s.isc*a22 - a12*(s.isc-s.imp)) / det
	leak := (a11*(s.isc-s.imp) - a21*s.isc) / det
	c := Curve{I0: j / whole, Rs: rs, Leak: leak, A: a}
	c.IL = j + s.voc*leak
	return c, j > 0
}
