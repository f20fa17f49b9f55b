package unit

// Measure is what a value is counted in, where one list holds values of several kinds: the symbol of its SI unit.
type Measure string

// The measures of strengths, labels and sizes.
const (
	Newtons       Measure = "N"
	NewtonMetres  Measure = "N·m"
	NewtonsAMetre Measure = "N/m"
	Pascals       Measure = "Pa"
	Metres        Measure = "m"
	SquareMetres  Measure = "m²"
	CubicMetres   Measure = "m³"
	MetresFourth  Measure = "m⁴" // second moment of area
	MetresASecond Measure = "m/s"
	Kilograms     Measure = "kg"
	Radians       Measure = "rad"
	Amperes       Measure = "A"
	Volts         Measure = "V"
	Watts         Measure = "W"
	Coulombs      Measure = "C"
	Ohms          Measure = "Ω"
	Pieces        Measure = "1" // a plain number: a count or a share
)

// Amount is a value with its measure, in SI. It is known where Is says so; the measure stands without it.
type Amount struct {
	Val float64
	In  Measure
	Is  bool
}

// Known is the bare number, for an answer that names its unit beside it.
func (a Amount) Known() Known[Ratio] { return Known[Ratio]{Val: Ratio(a.Val), Is: a.Is} }
