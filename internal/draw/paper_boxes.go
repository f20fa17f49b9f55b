package draw

// DriveBox is the larger picture of the drive on the plan sheet. It is not to scale: it shows what follows what.
type DriveBox struct {
	Stages  int  // of the gears
	Brake   bool // a spring brake is named
	Ratchet bool // a ratchet or a catch is named
	Lines   []Line
}

// driveLines is where the lines begin under the top of the box.
const driveLines = 60.0

// draw draws the box with its left upper corner at x, y and at most so many lines. It returns its lower edge.
func (d DriveBox) draw(p *pen, x, y float64, most int) float64 {
	lines := fold(d.Lines, boxWide-10)
	lines = lines[:min(len(lines), most)]
	h := driveLines + noteLine*float64(len(lines)) + 4
	p.rect(x, y, boxWide, h, stroke(ink, 0.8, ""))
	p.written(x+5, y+13, Line{"A, larger, not to scale", true}, "start")
	p.raw(`<g transform="translate(%s %s) scale(.405)">`, num(x+2), num(y+17))
	const axle = 46
	p.drive(axle, d.Stages)
	if d.Brake {
		p.brake(axle)
	}
	if d.Ratchet {
		p.ratchet(axle)
	}
	p.raw("</g>")
	for i, l := range lines {
		p.written(x+5, y+driveLines+noteLine*float64(i)+7, l, "start")
	}
	return y + h
}

// SwitchBox is the switch between day and night on the plan sheet.
type SwitchBox struct {
	Fused bool     // a fuse stands before the supply
	Shunt bool     // something stays on the motor for good
	Day   []string // the supply: "Panel", "24 V"
	Night []string // what the motor drives: "Lamps", "11.7 V"
	Lines []Line
}

// switchLines is where the lines begin under the top of the box.
const switchLines = 112.0

// high is the height of the box.
func (s SwitchBox) high() float64 {
	return switchLines + noteLine*float64(len(fold(s.Lines, boxWide-10))) + 4
}

// draw draws the box with its left upper corner at x, y. It returns its lower edge.
func (s SwitchBox) draw(p *pen, x, y float64) float64 {
	p.rect(x, y, boxWide, s.high(), stroke(ink, 0.8, ""))
	p.written(x+5, y+13, Line{"One switch, centre off", true}, "start")
	line := stroke(ink, 1.2, "")
	cx, cy := x+84, y+44
	p.path([]float64{x + 10, cy + 10, x + 19, cy - 10, x + 44, cy - 10, x + 35, cy + 10}, true, line)
	p.line(x+40, cy, cx-16, cy, line)
	if s.Fused {
		p.rect(x+50, cy-4, 15, 8, line, attrs{"class", "paperf"})
	}
	p.circle(cx, cy, 16, line)
	p.line(cx, cy+12, cx, cy-10, stroke(ink, 2, ""))
	for _, at := range [][2]float64{{cx - 16, cy}, {cx + 16, cy}, {cx, cy - 16}} {
		p.circle(at[0], at[1], 2.4, attrs{"fill", ink})
	}
	p.written(cx, cy-19, Line{"off", false}, "middle")
	p.line(cx+16, cy, x+123, cy, line)
	for _, lx := range []float64{x + 129, x + 142, x + 155} {
		p.circle(lx, cy, 6, line)
	}
	p.motor(cx, cy+45, s.Shunt)
	p.line(cx, cy+16, cx, cy+32, line)
	for i, l := range s.Day {
		p.written(x+5, cy+25+noteLine*float64(i), Line{shorten(l, noteSize, 70), i == 0}, "start")
	}
	for i, l := range s.Night {
		p.written(x+boxWide-4, cy+25+noteLine*float64(i), Line{shorten(l, noteSize, 70), i == 0}, "end")
	}
	for i, l := range fold(s.Lines, boxWide-10) {
		p.written(x+5, y+switchLines+noteLine*float64(i)+7, l, "start")
	}
	return y + s.high()
}

// motor draws the motor with what stays on it, dashed and crossed where nothing does.
func (p *pen) motor(x, y float64, shunt bool) {
	look := stroke(ink, 1.2, "")
	p.circle(x, y, 13, look)
	p.written(x, y+3.4, Line{"M", true}, "middle")
	if !shunt {
		look = stroke(failColour, 1.2, "3 2")
	}
	p.path([]float64{x + 13, y, x + 32, y, x + 32, y + 18, x, y + 18, x, y + 13}, false, look)
	p.rect(x+25, y+4, 14, 9, look, attrs{"class", "paperf"})
	if !shunt {
		p.path([]float64{x + 28, y + 4, x + 36, y + 13}, false, stroke(failColour, 2, ""))
		p.path([]float64{x + 28, y + 13, x + 36, y + 4}, false, stroke(failColour, 2, ""))
	}
}
