package page_test

import (
	"html"
	"strings"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift/ready"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
	"duskweight/web/webtest"
)

// In each unsafe plan the drawing marks what does not fit, as the judge's own geometry says it: in words first, and in a
// note. Whatever the geometry refuses is marked, in each of its five ways; a plan that it lets pass has no such mark.
func TestDrawingMarksClashes(t *testing.T) {
	marked := map[string]bool{}
	for _, p := range webtest.UnsafePlans(t) {
		for _, s := range model.Evaluate(p.Doc, "2026-11-28").Variants[0].Stores {
			h := model.HoistOf(s)
			if h == nil {
				continue
			}
			svg := html.UnescapeString(page.DrawingOf(h, unit.Metric))
			_, rest, _ := strings.Cut(svg, "<desc>")
			desc, _, _ := strings.Cut(rest, "</desc>")
			refused := map[string]bool{}
			for _, k := range ready.Clashes(h.Design) {
				refused[k.ID] = k.Word == reason.No
			}
			for _, b := range h.Because {
				if !strings.HasPrefix(b.ID, "geometry_") {
					continue
				}
				if got := strings.Contains(desc, b.Say.String()); got != refused[b.ID] {
					t.Errorf("%s: %s is marked: %v, refused: %v", p.ID, b.ID, got, refused[b.ID])
				}
				marked[b.ID] = marked[b.ID] || refused[b.ID]
			}
			if n := strings.Count(svg, `class="mark"`); n != strings.Count(desc, "Mark ") || len(refused) == 0 && strings.Contains(desc, "does not fit under") {
				t.Errorf("%s: %d marks, and %q", p.ID, n, desc)
			}
		}
	}
	for _, id := range reason.Order() {
		if strings.HasPrefix(id, "geometry_") && !marked[id] {
			t.Errorf("no plan is refused by %s", id)
		}
	}
}
