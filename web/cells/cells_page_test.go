package cells_test

import (
	"math"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// The cable of the sample by hand: 2 m of 4 mm² lose 2·2·I·0.017241·(1 + 0.00393·20)/4 volts; a fuse that is larger than
// its cable stands is said in words; without the days to last, the trade's way asks for them.
func TestCellCable(t *testing.T) {
	doc := catalog.Sample()
	c := model.CellsOf(model.Evaluate(doc, "").Variants[1].Stores[0])
	if got, want := float64(c.Line.Drop.Val), 2*2*float64(c.Line.Most)*0.017241*(1+0.00393*20)/4; math.Abs(got-want) > 1e-12 {
		t.Errorf("drop %g, want %g", got, want)
	}
	doc.Variants[1].Stores[0].Cells.Fuse = unit.Of[unit.Current](60)
	doc.Variants[1].Stores[0].Cells.Autonomy = unit.Known[unit.Ratio]{}
	s := webtest.NewSite(t)
	p, vs := webtest.Create(t, s, "fuse", doc)
	text := webtest.Readable(webtest.Ask(s.Handler(), "GET", page.StoreURL(p.ID, vs[1].ID, 0, "cells")+"?all=1", nil).Body.String())
	for _, want := range []string{"The fuse of 60 A lets the cable burn: it carries 32 A.", "Fuse to use", "The trade begins with the days without any sun", "Days without sun to last"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the page", want)
		}
	}
}
