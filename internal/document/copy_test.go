package document

import (
	"reflect"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
)

// A value goes with its mark, and nothing else changes; what is not there, or is of another kind, changes nothing.
func TestCopyInput(t *testing.T) {
	doc := catalog.Sample()
	src, dst := Clone(doc.Variants[1]), Clone(doc.Variants[2])
	src.Origins = model.Origins{"stores[0].cells.autonomy_days": {Kind: model.OriginTypical, Source: "here"}}
	dst.Origins = model.Origins{"panels[0].count": {Kind: model.OriginTypical}}
	before := Clone(dst)
	if err := CopyInput(&dst, "stores[1].cells.autonomy_days", src, "stores[0].cells.autonomy_days"); err != nil {
		t.Fatal(err)
	}
	if got := dst.Origins["stores[1].cells.autonomy_days"]; got.Source != "here" || len(dst.Origins) != 2 {
		t.Errorf("marks %+v", dst.Origins)
	}
	want := Clone(before)
	want.Stores[1].Cells.Autonomy, want.Origins = src.Stores[0].Cells.Autonomy, dst.Origins
	if !reflect.DeepEqual(dst, want) {
		t.Errorf("something else changed: %+v", dst)
	}
	src.Origins = nil
	if err := CopyInput(&dst, "stores[1].cells.autonomy_days", src, "stores[0].cells.autonomy_days"); err != nil || len(dst.Origins) != 1 {
		t.Errorf("the mark of what was there stays: %+v, %v", dst.Origins, err)
	}
	whole := Clone(dst)
	for _, x := range [][2]string{
		{"stores[7].cells.autonomy_days", "stores[0].cells.autonomy_days"}, {"stores[1].cells.autonomy_days", "stores[0].hoist.travel_m"}, {"stores[1].cells.autonomy_days", "stores[0].cells.type"},
		{"stores[-1].cells", "stores[0].cells"}, {"stores[1].cells.nothing", "stores[0].cells.nothing"}, {"name.first", "name"}, {"stores[one].cells", "stores[0].cells"}, {"", ""}, {"panels[", "panels["},
	} {
		if err := CopyInput(&dst, x[0], src, x[1]); err == nil {
			t.Errorf("%s from %s was copied", x[0], x[1])
		}
	}
	if !reflect.DeepEqual(dst, whole) {
		t.Error("a refused copy changed something")
	}
}
