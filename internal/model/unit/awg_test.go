package unit

import (
	"math"
	"strings"
	"testing"
)

// The areas of solid round wires as the table of ASTM B258-18 prints them (and NEC chapter 9, table 8, in mm²).
func TestGaugeAreas(t *testing.T) {
	for n, want := range map[int]float64{18: 0.823, 14: 2.08, 12: 3.31, 10: 5.261, 8: 8.37, 6: 13.30, 4: 21.15, 3: 26.67, 2: 33.62, 1: 42.41, 0: 53.49, -1: 67.43, -2: 85.01, -3: 107.2} {
		if got := gaugeArea(n) * 1e6; math.Abs(got-want) > 0.001*want {
			t.Errorf("AWG %s has %.4f mm², want %v", gaugeName(n), got, want)
		}
	}
}

// A wire that must be bought is never thinner than what is needed: the least of the table's sizes that has the area. An area of
// the table, in three digits, is its own size.
func TestGauge(t *testing.T) {
	for mm2, want := range map[float64]string{0.75: "AWG 18", 1.5: "AWG 14", 2.5: "AWG 12", 4: "AWG 10", 5.26: "AWG 10", 5.261: "AWG 10", 5.3: "AWG 8", 6: "AWG 8", 10: "AWG 6", 13.3: "AWG 6",
		16: "AWG 4", 25: "AWG 3", 35: "AWG 1", 50: "AWG 1/0", 53.5: "AWG 1/0", 67.4: "AWG 2/0", 70: "AWG 3/0", 107: "AWG 4/0", 120: "", 0.01: "", 0: "", -1: ""} {
		if got := strings.ReplaceAll(Gauge(Area(mm2*1e-6)), Space, " "); got != want {
			t.Errorf("%v mm² is %q, want %q", mm2, got, want)
		}
	}
	plain := func(s string) string { return strings.ReplaceAll(s, Space, " ") }
	for _, tc := range []struct{ got, want string }{
		{WireAreas.Format(6e-6, Metric), "6 mm²"}, {WireAreas.Format(6e-6, Imperial), "6 mm² (AWG 8)"}, {WireAreas.FormatTo(6.01e-6, Imperial, 2, Up), "6.1 mm² (AWG 8)"},
		{WireAreas.Format(400e-6, Imperial), "400 mm²"}, {WireAreas.Between(1.5e-6, 25e-6, Imperial), "1.5 to 25 mm² (AWG 14 to 3)"}, {WireAreas.Between(1.5e-6, 25e-6, Metric), "1.5 to 25 mm²"},
		{WireAreas.Number(6e-6, Imperial), "6"}, {SmallAreas.Format(6e-6, Imperial), "6 mm²"},
	} {
		if plain(tc.got) != tc.want {
			t.Errorf("%q, want %q", plain(tc.got), tc.want)
		}
	}
}

// A size can be typed by its number, in both systems: AWG 10 has 5.261 mm², 2/0 has 67.43 mm².
func TestGaugeIsRead(t *testing.T) {
	for text, want := range map[string]float64{"AWG 10": 5.261, "10 AWG": 5.261, "10awg": 5.261, "#6 AWG": 13.30, "AWG 2/0": 67.43, "2/0 awg": 67.43, "AWG 00": 67.43, "awg 0000": 107.2, "6": 6, "2.5 mm²": 2.5} {
		for _, sys := range []System{Metric, Imperial} {
			if got, known, err := WireAreas.Parse(text, sys); err != nil || !known || math.Abs(got*1e6-want) > 0.001*want {
				t.Errorf("%q is %v mm² (%v, %v), want %v", text, got*1e6, known, err, want)
			}
		}
	}
	for _, text := range []string{"AWG", "AWG 99", "AWG 5/0", "AWG 1.5", "AWG 10 12"} {
		if _, _, err := WireAreas.Parse(text, Imperial); err == nil || err.Error() != sayGauge {
			t.Errorf("%q: %v", text, err)
		}
	}
}
