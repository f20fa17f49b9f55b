package draw

// widths are the advance widths of a common sans-serif face (the metric of Helvetica), in thousandths of the size, for
// the characters from space to tilde. Every label is measured with this one table.
var widths = [95]uint16{
	278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
	556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
	1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
	667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
	333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
	556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
}

// TextWidth returns the width of a text at a font size, in the same unit. Faces differ; the widest that systems
// ship set small labels about fourteen in a hundred wider, so that is added.
func TextWidth(s string, size float64) float64 {
	sum := 0.0
	for _, r := range s {
		switch {
		case r >= ' ' && r <= '~':
			sum += float64(widths[r-' '])
		case r == '°' || r == '·':
			sum += 400
		case r >= 0x1100: // wide scripts
			sum += 1000
		default:
			sum += 667
		}
	}
	return sum / 1000 * size * 1.14
}

// shorten cuts a text to a width and marks the cut.
func shorten(s string, size, width float64) string {
	if TextWidth(s, size) <= width {
		return s
	}
	r := []rune(s)
	for len(r) > 1 && TextWidth(string(r)+"…", size) > width {
		r = r[:len(r)-1]
	}
	return string(r) + "…"
}
