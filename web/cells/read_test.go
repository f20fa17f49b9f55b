package cells

import (
	"math"
	"testing"

	"duskweight/internal/draw"
)

// What stands on a label fits into its frame and its meaning onto the paper, in both systems of units, and the thing has a drawing.
func TestReadingsFit(t *testing.T) {
	for id, r := range read {
		if draw.Thing(r.Thing) == "" || r.Title == "" || r.Without == "" || len(r.Lines) == 0 {
			t.Errorf("%s: something is missing of %+v", id, r)
		}
		for _, l := range r.Lines {
			if wide := math.Max(draw.TextWidth(l.Metric, 12), draw.TextWidth(l.Imperial, 12)); wide > 86 {
				t.Errorf("%s: %q is %.0f wide, the frame has room for 86", id, l.Metric, wide)
			}
			if wide := draw.TextWidth(l.Means, 12); wide > 176 {
				t.Errorf("%s: %q is %.0f wide, the paper has room for 176", id, l.Means, wide)
			}
		}
	}
}
