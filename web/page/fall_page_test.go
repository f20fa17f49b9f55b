package page_test

import (
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// Where the mass may fall the band says whether the fall zone is closed: behind a locked door with the controls outside and
// all else answered it is; with nothing round it, it is not; where nobody says what stands round it, that is not known. Where
// it may not fall the band says nothing of it.
func TestFallIsTold(t *testing.T) {
	var doc model.Document
	for _, p := range webtest.UnsafePlans(t) {
		if p.Ready == "yes" && len(p.Doc.Variants[0].Stores) > 0 && p.Doc.Variants[0].Stores[0].Hoist != nil {
			doc = p.Doc
			break
		}
	}
	if len(doc.Variants) == 0 {
		t.Fatal("no plan with a hoist is ready")
	}
	h := doc.Variants[0].Stores[0].Hoist
	h.Site.ControlsOutside, h.Site.FloorBelow = unit.Yes, lift.FloorSolidGround
	if !h.Site.PadDepth.Is || !h.Drum.DeadWraps.Is {
		t.Fatal("the plan leaves pad or turns open")
	}
	for _, c := range []struct {
		may     unit.Answer
		barrier lift.Barrier
		want    string
	}{{unit.Yes, lift.BarrierLockedRoom, "its fall zone is closed: nobody inside the room"}, {unit.Yes, lift.BarrierNone, "its fall zone is not closed: keep everybody away"},
		{unit.Yes, "", "whether its fall zone is closed is not known"}, {unit.No, lift.BarrierNone, ""}} {
		h.Site.MayFall, h.Site.Barrier = c.may, c.barrier
		b := page.VariantBand(model.Evaluate(doc, "2026-11-28").Variants[0], unit.Metric, nil)
		if !strings.Contains(b.Fall, c.want) || c.want == "" && b.Fall != "" {
			t.Errorf("%s, %q: %q, want %q", c.may, c.barrier, b.Fall, c.want)
		}
	}
}
