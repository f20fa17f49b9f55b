package hoist

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// A travel of 4.5 m under a head pulley at 3 m cannot be built: the page of the hoist says so first, as what forbids it.
func TestHoistTellsClash(t *testing.T) {
	doc := catalog.Sample()
	doc.Variants[2].Stores[0].Hoist.Structure.HeadHeight = unit.Of[unit.Length](3)
	because := model.Evaluate(doc, "").Variants[2].Stores[0].Because
	list := page.ReasonsOf(because, unit.Metric, func(string) form.LinkView { return form.LinkView{} }).List
	if len(list) == 0 || list[0].State != reason.No || !strings.Contains(list[0].Say, "does not fit under the pulley") {
		t.Errorf("%+v", list)
	}
}
