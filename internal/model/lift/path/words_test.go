package path

import (
	"strings"
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// No sentence over 25 words.
func TestSentencesAreShort(t *testing.T) {
	h := lift.Hoist{Rope: lift.Rope{Kind: "wire"}, Container: lift.Container{Kind: "bag"}, Drum: lift.Drum{HubMaterial: "printed"},
		Raise: lift.Raise{Voltage: unit.Of[unit.Voltage](100)}, Lower: lift.Lower{Loads: []lift.DCLoad{{Kind: "cell"}}}}
	z := HazardsOf(h, lift.Drive{})
	var all []string
	for _, c := range z.Cautions {
		all = append(all, c.Say.String())
	}
	for _, q := range append(z.Questions, z.Round...) {
		all = append(all, q.Ask, q.Say.String())
	}
	all = append(all, z.SwitchOrder...)
	for _, c := range append(Checks(h, lift.Drive{}), Checks(whole(), drive(whole()))...) {
		all = append(all, c.Say.String())
	}
	for _, s := range all {
		for _, x := range strings.FieldsFunc(s, func(r rune) bool { return r == '.' || r == ';' || r == '?' || r == ':' }) {
			if n := len(strings.Fields(x)); n > 25 {
				t.Errorf("%d words: %q", n, x)
			}
		}
	}
}

// The values of a check in the unit that a maker reads, by hand: 2598.76/9.80665 = 265; 265 kg/0.45359237 = 584.2 lb; 120 MPa/6894.757 Pa =
// 17 404 psi; 22.1 kPa = 3.205 psi; 12 mm = 0.4724 in; 11.46/0.0254 = 451.2 in, 37 ft 7.2 in; 71.63/1.3558179 = 52.83 lbf·ft.
func TestAmounts(t *testing.T) {
	for _, x := range []struct {
		v                float64
		u                unit.Measure
		metric, imperial string
	}{{2598.76, "N", "265 kg", "584 lb"}, {1.2e8, "Pa", "120 MPa", "17 400 psi"}, {22100, "Pa", "22.1 kPa", "3.21 psi"}, {.012, "m", "12 mm", "0.472 in"},
		{11.46, "m", "11.5 m", "37′ 7″"}, {1234567, "1", "1 230 000", "1 230 000"}, {0, "N", "0 kg", "0 lb"}, {71.63, "N·m", "71.6 N·m", "52.8 lbf·ft"},
		{.02618, "rad", "1.5°", "1.5°"}, {.00001234, "1", "0.0000123", "0.0000123"}} {
		got := say.That("%s", amountOf(x.v, x.u))
		if m, i := plainly(got), strings.ReplaceAll(got.In(unit.Imperial), unit.Space, " "); m != x.metric || i != x.imperial {
			t.Errorf("%g %s is %q and %q, want %q and %q", x.v, x.u, m, i, x.metric, x.imperial)
		}
	}
}

// plainly is a sentence in metric units with plain spaces.
func plainly(s say.Sentence) string { return strings.ReplaceAll(s.String(), unit.Space, " ") }

// What would mend a part is asked for only once it gives way, and behind what must be found out.
func TestNotKnownAsksFirst(t *testing.T) {
	for _, x := range []struct {
		mend remedy
		want string
	}{
		{change("Use a thicker rope."), "Not known: one input is missing. If it gives way: use a thicker rope."},
		{always("Look for its label.").and(change("Use a thicker rope.")), "Not known: one input is missing. Look for its label. If it gives way: use a thicker rope."},
		{change("Use a thicker rope.").and(always("It needs %s.", heavy(1001))), "Not known: one input is missing. If it gives way: use a thicker rope. It needs 103 kg."},
		{always("Look for its label."), "Not known: one input is missing. Look for its label."},
	} {
		if got := plainly(notKnownSay([]string{"rope.kind"}, x.mend)); got != x.want {
			t.Errorf("%q, want %q", got, x.want)
		}
	}
}
