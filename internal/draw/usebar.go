package draw

import (
	"math"
	"strings"
)

// UseBar returns a bar of use: the full frame is what the part may bear, and a bar over it is in the failing colour and
// runs past a mark. Not a number draws an empty frame with a question mark. The word beside it says the same; the bar
// is hidden from those who hear the page.
func UseBar(use float64) string {
	const w, h, full = 96.0, 10.0, 64.0
	var b strings.Builder
	p := openHidden(&b, "usebar", w, h)
	p.rect(0.5, 0.5, full-0.5, h-1, stroke(ink, narrow, ""), attrs{"stroke-opacity", ".55"})
	switch {
	case math.IsNaN(use):
		p.text(full/2, h-1.5, "?", 9, "middle", 0)
	case use > 1:
		long := math.Min(w-7, full*use)
		p.rect(1, 2, long-1, h-4, attrs{"fill", failColour, "class", "over"})
		p.line(full, 0, full, h, stroke(ink, 1.4, ""))
		if full*use > w-7 { // longer than there is room: an arrow
			p.path([]float64{w - 6, 1, w - 1, h / 2, w - 6, h - 1}, true, attrs{"fill", failColour})
		}
	case use > 0:
		p.rect(1, 2, math.Max(1, full*use-1), h-4, attrs{"fill", ink})
	}
	p.close() // a strings.Builder takes everything
	return b.String()
}
