package parts

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/cost"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

// TwoBills is a project of two variants with one part each and known years: by hand, the battery of 160 that lasts 8 years
// is dearer than the hoist of 500 from year 24 on.
func TwoBills(horizon int) model.Document {
	doc := catalog.Sample()
	doc.Variants = doc.Variants[:2]
	doc.Project.Money = cost.Terms{Horizon: unit.Of(unit.Count(horizon)), Rate: unit.Of[unit.Ratio](0.03), Upkeep: unit.Of[unit.Money](0)}
	doc.Variants[0].Parts = []cost.Part{{Name: "hoist", Of: "store", Price: unit.Of[unit.Money](500), Upkeep: unit.Of[unit.Money](2)}}
	doc.Variants[1].Parts = []cost.Part{{Name: "battery", Of: "store", Price: unit.Of[unit.Money](160), Life: unit.Of(8 * 365 * unit.Day), Upkeep: unit.Of[unit.Money](1)}}
	return doc
}

// A typed name never becomes anything but a name in a chart.
func TestLineNames(t *testing.T) {
	for _, name := range []string{"fn:boom", "--ink", "", strings.Repeat("W", 500)} {
		if n := page.LineName(0, name); strings.HasPrefix(n, "fn:") || strings.HasPrefix(n, "--") || len([]rune(n)) > 40 {
			t.Errorf("%q becomes %q", name, n)
		}
	}
}

// A number to look for is never rounded down, and what is there never up, in the unit that is read. By hand: 1 lbf·ft is
// 1.3558179 N·m, so 12.3 N·m are 9.0720 lbf·ft; 1 lb is 0.45359237 kg, so 264.2 kg are 582.46 lb; 1.241 m are 4.0715 ft;
// 1 psi is 6894.757 Pa, so 7 MPa are 1015.26 psi.
func TestLeastNeverLess(t *testing.T) {
	for _, c := range []struct {
		v           float64
		u           unit.Measure
		sys         unit.System
		least, most string
	}{
		{264.2 * 9.80665, "N", unit.Metric, "265 kg", "264 kg"}, {1001 * 9.80665, "N", unit.Metric, "1010 kg", "1000 kg"}, {12.31, "N·m", unit.Metric, "12.4 N·m", "12.3 N·m"},
		{2.001, "A", unit.Metric, "2.01 A", "2 A"}, {3, "A", unit.Metric, "3 A", "3 A"}, {2.5e-6, "m²", unit.Metric, "2.5 mm²", "2.5 mm²"}, {144000, "C", unit.Metric, "40 Ah", "40 Ah"},
		{1.241, "m", unit.Metric, "1.25 m", "1.24 m"}, {1.2344, "rad/s", unit.Metric, "1.24 rad/s", "1.23 rad/s"}, {1.2344, "1", unit.Metric, "1.24", "1.23"},
		{12.3, "N·m", unit.Imperial, "9.08 lbf·ft", "9.07 lbf·ft"}, {264.2 * 9.80665, "N", unit.Imperial, "583 lb", "582 lb"}, {1.241, "m", unit.Imperial, "4.08 ft", "4.07 ft"},
		{7e6, "Pa", unit.Imperial, "1020 psi", "1010 psi"},
	} {
		plain := strings.NewReplacer("\u00a0", " ")
		if got := plain.Replace(leastText(c.v, c.u, c.sys)); got != c.least {
			t.Errorf("at least %g %s prints %q, want %q", c.v, c.u, got, c.least)
		}
		w := model.Want{Unit: c.u}
		w.Stated.Val = unit.Ratio(c.v)
		if got := plain.Replace(shortText(w, c.sys)); got != c.most {
			t.Errorf("%g %s that is there prints %q, want %q", c.v, c.u, got, c.most)
		}
	}
}
