package hoist

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// A travel of 4.5 m under a head pulley at 3 m cannot be built: the page of the hoist says so, as bad.
func TestHoistTellsClash(t *testing.T) {
	doc := catalog.Sample()
	doc.Variants[2].Stores[0].Hoist.Structure.HeadHeight = unit.Of[unit.Length](3)
	v := hoistViewOf(model.Evaluate(doc, "").Variants[2], 0, unit.Metric, nil, "")
	if n := len(v.Flags); n == 0 || !v.Flags[n-1].Bad || !strings.Contains(v.Flags[n-1].Say, "head pulley") {
		t.Errorf("%+v", v.Flags)
	}
}
