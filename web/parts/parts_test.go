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
