package draw

import (
	"math"
	"strings"
)

// Small pictures beside a line of words: what they show stands in the line, so they have no name of their own.

// openSmall begins such a picture; fit is how it fills its place, "none" for stretched.
func openSmall(w *strings.Builder, class, fit string, wide, high float64) *pen {
	p := newPen(w)
	p.raw(`<svg xmlns="http://www.w3.org/2000/svg" class="%s" viewBox="0 0 %s %s" preserveAspectRatio="%s" aria-hidden="true" fill="none" stroke="none">`, class, num(wide), num(high), fit)
	return p
}

// Hung draws what hangs in a load step just off the ground; share is that of the whole mass, 1.25 at most. What is only to come
// is dashed.
func Hung(share float64, done bool) string {
	var w strings.Builder
	p := openSmall(&w, "rung-picture", "xMidYMid", 100, 66)
	const ground, off, tall = 60.0, 8.0, 26.4 // of the whole mass
	high := tall * math.Cbrt(math.Max(share, 0)) * 1.3
	half := high * 0.75
	look := stroke(massColour, 1.4, "")
	if !done {
		look = stroke(massColour, 1.4, "3 2.5")
	}
	p.line(50, 0, 50, ground-off-high, look)
	p.rect(50-half, ground-off-high, 2*half, high, look)
	p.line(8, ground, 92, ground, stroke(ink, 1.4, ""))
	for x := 18.0; x <= 90; x += 16 {
		p.line(x, ground, x-4, ground+5, stroke(ink, 0.6, ""))
	}
	p.close()
	return w.String()
}

// besideSpan is the part of a planned value that a picture of Beside shows on each side of it: ± 20 %.
const besideSpan = 0.2

// Beside draws a measured value beside the planned one; ratio is the one over the other. The middle line is as planned, the grey
// field ± 10 %; what lies beyond 20 % is an arrow at the edge, never a bar of wrong length.
func Beside(ratio float64) string {
	var w strings.Builder
	const wideAt, high, middle = 100.0, 20.0, 50.0
	p := openSmall(&w, "beside", "none", wideAt, high)
	at := func(off float64) float64 { return middle + off/besideSpan*40 }
	p.rect(at(-0.1), 0, at(0.1)-at(-0.1), high, attrs{"class", "okz"})
	for _, off := range []float64{-besideSpan, -0.1, 0.1, besideSpan} {
		p.line(at(off), 0, at(off), high, stroke(ink, 0.4, ""))
	}
	p.line(middle, 0, middle, high, stroke(ink, 1.6, ""))
	off := ratio - 1
	look := attrs{"fill", ink}
	if math.Abs(off) > 0.1 {
		look = attrs{"fill", failColour}
	}
	if x := at(off); math.Abs(off) <= besideSpan {
		p.line(middle, high/2, x, high/2, stroke(ink, 1.6, ""))
		p.rect(x-1.7, 3, 3.4, high-6, look)
	} else {
		way := math.Copysign(1, off)
		end := middle + way*48
		p.line(middle, high/2, end-way*6, high/2, stroke(ink, 1.6, ""))
		p.path([]float64{end, high / 2, end - way*8, 3, end - way*8, high - 3}, true, look)
	}
	p.close()
	return w.String()
}
