package draw

import "strings"

// stripStart is the clock hour at which a strip begins: noon and night both stand whole in it.
const stripStart = 8

// Strip draws a day of one lamp or device from 8 to 8, as high in each hour as its mean power is of its greatest. Dark hours are
// grey; what is not known is dashed and never drawn as off.
func Strip(watts [24]float64, dark [24]bool, known bool) string {
	var w strings.Builder
	const cell, high = 20.0, 24.0
	p := openSmall(&w, "strip", "none", 24*cell, high)
	most := 0.0
	for _, v := range watts {
		most = max(most, v)
	}
	for i := range 24 {
		h, x := (stripStart+i)%24, float64(i)*cell
		if dark[h] {
			p.rect(x, 0, cell, high, attrs{"class", "dark"})
		}
		if known && watts[h] > 0 {
			up := high * watts[h] / most
			p.rect(x, high-up, cell, up, attrs{"fill", loadColour})
		}
		if i > 0 {
			p.line(x, 0, x, high, attrs{"class", "hour"})
		}
	}
	frame := stroke(ink, 1, "")
	if !known {
		frame = stroke(ink, 1.4, "5 4")
	}
	p.rect(0.5, 0.5, 24*cell-1, high-1, frame)
	p.close()
	return w.String()
}
