package path

import (
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// No sentence over 25 words.
func TestSentencesAreShort(t *testing.T) {
	h := lift.Hoist{Rope: lift.Rope{Kind: "wire"}, Container: lift.Container{Kind: "bag"}, Drum: lift.Drum{HubMaterial: "printed"},
		Raise: lift.Raise{Voltage: unit.Of[unit.Voltage](100)}, Lower: lift.Lower{Loads: []lift.DCLoad{{Kind: "cell"}}}}
	z := HazardsOf(h, lift.Drive{})
	var all []string
	for _, c := range z.Cautions {
		all = append(all, c.Say)
	}
	for _, q := range append(z.Questions, z.Round...) {
		all = append(all, q.Ask, q.Say)
	}
	all = append(all, z.SwitchOrder...)
	for _, c := range append(Checks(h, lift.Drive{}), Checks(whole(), drive(whole()))...) {
		all = append(all, c.Say)
	}
	for _, s := range all {
		for _, x := range strings.FieldsFunc(s, func(r rune) bool { return r == '.' || r == ';' || r == '?' || r == ':' }) {
			if n := len(strings.Fields(x)); n > 25 {
				t.Errorf("%d words: %q", n, x)
			}
		}
	}
}

func TestAmounts(t *testing.T) {
	for _, x := range []struct {
		v    float64
		u, s string
	}{{2598.76, "N", "265 kg"}, {1.2e8, "Pa", "120 MPa"}, {22100, "Pa", "22.1 kPa"}, {.012, "m", "12 mm"}, {11.46, "m", "11.5 m"}, {1234567, "1", "1230000"},
		{0, "N", "0 kg"}, {71.63, "N·m", "71.6 N·m"}, {.02618, "rad", "1.5°"}, {.00001234, "1", "0.0000123"}} {
		if got := amount(x.v, x.u); got != x.s {
			t.Errorf("%g %s is %q, want %q", x.v, x.u, got, x.s)
		}
	}
}
