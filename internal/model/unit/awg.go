package unit

import (
	"math"
	"math/big"
	"strconv"
	"strings"
)

// The sizes of wire that shops of inch countries sell, by their number in the American wire gauge, thin to thick; 0 to −3 are
// written 1/0 to 4/0. Thinner ones go by twos (common practice).
var gauges = []int{30, 28, 26, 24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3}

// gaugeArea is the cross-section of a size, m²: d = 0.127 mm · 92^((36−n)/39). Source: ASTM B258-18, section 4.
func gaugeArea(n int) float64 {
	d := 0.127e-3 * math.Pow(92, float64(36-n)/39)
	return math.Pi / 4 * d * d
}

// gaugeSlack is how much more a cross-section in mm² may be than the size that is told for it: half of a last digit of three.
const gaugeSlack = 0.005

// Gauge is the size of wire, "AWG 10" or "AWG 2/0", that is not thinner than a cross-section and is nearest to it; "" where
// none is as thick, or the wire is thinner than those of homes.
func Gauge(a Area) string {
	if !(float64(a) > gaugeArea(gauges[0])/2) {
		return ""
	}
	for _, n := range gauges {
		if float64(a) <= gaugeArea(n)*(1+gaugeSlack) {
			return "AWG" + Space + gaugeName(n)
		}
	}
	return ""
}

func gaugeName(n int) string {
	if n <= 0 {
		return strconv.Itoa(1-n) + "/0"
	}
	return strconv.Itoa(n)
}

// beside is what stands behind a value of q for readers in inches: the gauge of a wire.
func (q Quantity) beside(si float64, sys System) string {
	if !q.gauge || sys != Imperial {
		return ""
	}
	if g := Gauge(Area(si)); g != "" {
		return " (" + g + ")"
	}
	return ""
}

// readGauge reads the size of a wire by its number: "AWG 10", "10 AWG", "2/0 AWG", "#6 AWG".
func readGauge(s string) (*big.Rat, bool, error) {
	low := strings.ToLower(s)
	if !strings.Contains(low, "awg") {
		return nil, false, nil
	}
	name := strings.TrimPrefix(strings.TrimSpace(strings.Replace(low, "awg", "", 1)), "#")
	for _, four := range [][2]string{{"0000", "4/0"}, {"000", "3/0"}, {"00", "2/0"}, {"0", "1/0"}} {
		if name == four[0] {
			name = four[1]
		}
	}
	for n := 40; n >= -3; n-- {
		if name == gaugeName(n) {
			return new(big.Rat).SetFloat64(gaugeArea(n)), true, nil
		}
	}
	return nil, false, Refusal(sayGauge)
}

const sayGauge = "This wire size cannot be read. Write it like AWG 10, AWG 2/0 or 6 mm²."
