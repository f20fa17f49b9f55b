package cell

import "math"

// Ageing is how cells of a kind lose capacity on the shelf, beside the life at 25 °C that the kind or the user names. Only the
// shape of the published laws is used, 1 where off-grid banks live (nine tenths full, 25 °C): the laws themselves promise
// laboratory cells about twice the life that is found.
type Ageing struct {
	Halves     Typical     // K of warmth that halve the life; 0: by Activation
	Activation float64     // K: the rate follows exp(Activation·(1/298.15 − 1/T)); 0: warmth does not count
	Charge     chargeShape // how the state of charge counts
	Least      float64     // least rate, of that at 25 °C: cold adds little (source.Waldmann: lives are longest near 25 °C; the floor is our own judgement)
	Cap        float64     // years; no warranty goes further (our own judgement)
	Bend       float64     // z: the loss grows with the power z of time
}

// Activation temperatures of the rate: (E_a/R)/z for laws in which the loss grows with t^z.
const (
	phosphateActivation = 2 * 17126 / 8.314462618 // source.Naumann: E_a 17126 J/mol, √t
	cobaltActivation    = 6976 / 0.75             // source.Schmalstieg: 6976 K, t^0.75
)

// chargeShape is how the rate on the shelf depends on the state of charge.
type chargeShape int

const (
	flat      chargeShape = iota
	byCube                // source.Naumann: (1 + 2.8575(s − ½)³/0.60225)², 1 at nine tenths
	byVoltage             // source.Schmalstieg: (7.543 V(s) − 23.75)^(1/0.75), 1 at nine tenths
)

// of returns the rate at state of charge s, 0 to 1, as a multiple of that at nine tenths.
func (c chargeShape) of(s float64) float64 {
	switch c {
	case byCube:
		return cube(s) / cube(0.9)
	case byVoltage:
		return math.Pow(alpha(s)/alpha(0.9), 1/0.75)
	}
	return 1
}

func cube(s float64) float64 {
	x := s - 0.5
	k := 1 + 2.8575*x*x*x/0.60225
	return k * k
}

func alpha(s float64) float64 { return 7.543*restVoltage(s) - 23.75 }

// restAt and restOf are the voltage of a nickel–manganese–cobalt cell at rest over its state of charge (source.Schmalstieg).
var (
	restAt = [...]float64{0, 0.2, 0.4, 0.5, 0.6, 0.8, 1}
	restOf = [...]float64{3.331, 3.581, 3.650, 3.698, 3.775, 3.965, 4.162}
)

// restVoltage reads that table in straight lines.
func restVoltage(s float64) float64 {
	s = min(1, max(0, s))
	i := 0
	for s > restAt[i+1] {
		i++
	}
	return restOf[i] + (restOf[i+1]-restOf[i])*(s-restAt[i])/(restAt[i+1]-restAt[i])
}

// rate returns how fast cells at t °C age on the shelf, as a multiple of the rate at 25 °C and nine tenths full. They are never
// slower than Least.
func (a Ageing) rate(t, s float64) float64 {
	warm := math.Exp(a.Activation * (1/298.15 - 1/(t+273.15)))
	if a.Halves.Value != 0 {
		warm = math.Exp2((t - 25) / a.Halves.Value)
	}
	return max(a.Least, warm) * a.Charge.of(s)
}

// shelf returns the share of the life on the shelf that a year takes: charge is the state of charge and t the temperature, °C, by
// hour; without a temperature the cells stand at 25 °C.
func (r Resolved) shelf(charge, t []float64) float64 {
	if r.Calendar <= 0 {
		return 0
	}
	sum := 0.0
	for h, s := range charge {
		at := 25.0
		if len(t) > 0 {
			at = t[h%len(t)]
		}
		sum += r.Kind.Ages.rate(at, s)
	}
	return sum / float64(len(charge)) * float64(Year) / float64(r.Calendar)
}
