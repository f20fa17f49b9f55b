package draw

import "strings"

// House draws what the program is about, for a reader who has no plan yet: panels on a roof, a mass that hangs in a frame, a
// battery beside it, and a lamp in the dark. Nothing in it is to scale.
func House() string {
	var w strings.Builder
	const wideAt, high, floor = 720.0, 410.0, 330.0
	p := open(&w, "house", wideAt, high, "A house with solar panels, a lifted mass, a battery and a lamp", "The mass hangs in a frame under the roof. How high it can go is the question.")
	p.rect(0, floor, wideAt, high-floor, attrs{"class", "earth"})
	houseSun(p, 95, floor)
	houseLamp(p, 255, floor)
	wall := stroke(ink, wide, "")
	p.rect(340, 155, 304, floor-155, attrs{"class", "wall"})
	p.path([]float64{340, floor, 340, 155}, false, wall)
	p.path([]float64{644, floor, 644, 155}, false, wall)
	p.path([]float64{322, 165, 492, 72, 662, 165}, false, stroke(ink, 2.4, ""))
	panel := stroke(ink, narrow, "")
	for i := range 3 {
		x, y := 350+30*float64(i), 146-16.4*float64(i)
		p.path([]float64{x, y, x + 28, y - 15.3, x + 20, y - 29, x - 8, y - 13.7}, true, attrs{"fill", sunColour}, panel)
	}
	houseHoist(p, floor)
	houseCells(p, floor)
	p.line(0, floor, wideAt, floor, stroke(ink, 2, ""))
	p.close()
	return w.String()
}

// houseSun is the sun, half gone.
func houseSun(p *pen, x, floor float64) {
	p.raw(`<path d="M%s %sA36 36 0 0 1 %s %sZ" fill="%s" stroke="%s" stroke-width="%s"/>`, num(x-36), num(floor), num(x+36), num(floor), sunColour, ink, num(narrow))
	for _, d := range [][4]float64{{-64, -18, -50, -14}, {-46, -50, -36, -39}, {0, -66, 0, -51}, {46, -50, 36, -39}, {64, -18, 50, -14}} {
		p.line(x+d[0], floor+d[1], x+d[2], floor+d[3], stroke(sunColour, 2.4, ""))
	}
}

// houseLamp is a lamp with its light.
func houseLamp(p *pen, x, floor float64) {
	p.path([]float64{x - 14, floor - 96, x + 14, floor - 96, x + 62, floor, x - 62, floor}, true, attrs{"fill", sunColour, "fill-opacity", "0.5"})
	p.line(x, floor, x, floor-92, stroke(ink, 2, ""))
	p.path([]float64{x - 13, floor - 118, x + 13, floor - 118, x + 22, floor - 96, x - 22, floor - 96}, true, attrs{"class", "mark"}, stroke(ink, wide, ""))
	p.circle(x, floor-94, 5, attrs{"fill", sunColour}, stroke(ink, narrow, ""))
}

// houseHoist is a frame with a mass on its rope, and the drive on the floor.
func houseHoist(p *pen, floor float64) {
	thin := stroke(ink, wide, "")
	p.line(404, floor, 404, 176, thin)
	p.line(566, floor, 566, 176, thin)
	p.rect(392, 164, 186, 12, attrs{"class", "mark"}, thin)
	p.circle(492, 190, 12, attrs{"class", "mark"}, thin)
	rope := stroke(massColour, 2, "")
	p.line(504, 190, 504, 214, rope)
	p.line(480, 192, 446, floor-20, rope)
	p.rect(484, 222, 42, 42, attrs{"fill", massColour, "fill-opacity", "0.25"}, rope)
	p.path([]float64{484, 222, 504, 210, 526, 222}, false, rope)
	p.circle(446, floor-16, 13, attrs{"class", "mark"}, thin)
	p.rect(414, floor-22, 22, 18, attrs{"class", "mark"}, thin)
	p.line(408, floor-2, 464, floor-2, stroke(ink, 2, ""))
	p.line(546, 226, 546, floor-4, stroke(ink, narrow, ""))
	p.arrow(546, 226, 0, -1)
	p.arrow(546, floor-4, 0, 1)
	p.text(551, 284, "?", 20, "start", 0)
}

// houseCells is a battery.
func houseCells(p *pen, floor float64) {
	thin := stroke(ink, wide, "")
	p.rect(596, floor-37, 32, 34, attrs{"class", "mark"}, thin)
	p.rect(599, floor-26, 26, 20, attrs{"fill", cellColour})
	p.rect(600, floor-42, 7, 5, thin)
	p.rect(617, floor-42, 7, 5, thin)
}
