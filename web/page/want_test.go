package page

import (
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// A number to look for is never rounded down, and what is there never up, in the unit that is read. By hand: 1 lbf·ft is
// 1.3558179 N·m, so 12.3 N·m are 9.0720 lbf·ft; 1 lb is 0.45359237 kg, so 264.2 kg are 582.46 lb; 1.241 m are 48.858 in, 13.7 sixteenths over 4 ft;
// 1 psi is 6894.757 Pa, so 7 MPa are 1015.26 psi.
func TestLeastNeverLess(t *testing.T) {
	for _, c := range []struct {
		v           float64
		u           unit.Measure
		sys         unit.System
		least, most string
	}{
		{264.2 * 9.80665, "N", unit.Metric, "265 kg", "264 kg"}, {1001 * 9.80665, "N", unit.Metric, "1 010 kg", "1 000 kg"}, {12.31, "N·m", unit.Metric, "12.4 N·m", "12.3 N·m"},
		{2.001, "A", unit.Metric, "2.01 A", "2 A"}, {3, "A", unit.Metric, "3 A", "3 A"}, {2.5e-6, "m²", unit.Metric, "2.5 mm²", "2.5 mm²"}, {144000, "C", unit.Metric, "40 Ah", "40 Ah"},
		{1.241, "m", unit.Metric, "1.25 m", "1.24 m"}, {1.2344, "rad/s", unit.Metric, "1.24 rad/s", "1.23 rad/s"}, {1.2344, "1", unit.Metric, "1.24", "1.23"},
		{12.3, "N·m", unit.Imperial, "9.08 lbf·ft", "9.07 lbf·ft"}, {264.2 * 9.80665, "N", unit.Imperial, "583 lb", "582 lb"}, {1.241, "m", unit.Imperial, "4′ 0-7/8″", "4′ 0-13/16″"},
		{7e6, "Pa", unit.Imperial, "1 020 psi", "1 010 psi"},
	} {
		plain := strings.NewReplacer("\u00a0", " ")
		if got := plain.Replace(leastText(c.v, c.u, c.sys)); got != c.least {
			t.Errorf("at least %g %s prints %q, want %q", c.v, c.u, got, c.least)
		}
		w := model.Want{Unit: c.u}
		w.Stated.Val = unit.Ratio(c.v)
		if got := plain.Replace(ShortText(w, c.sys)); got != c.most {
			t.Errorf("%g %s that is there prints %q, want %q", c.v, c.u, got, c.most)
		}
	}
}
