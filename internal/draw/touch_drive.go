package draw

import (
	"cmp"
	"html"
	"io"
	"math"
	"slices"
	"strings"
)

// DriveSketch is what the larger picture of the drive is drawn from. It is no picture to scale: it shows what follows what.
type DriveSketch struct {
	Stages int    // of the gears
	Title  string // "The drive, larger: 625 to 1"
	Spots  []Spot
}

// The paper of the drive and of the circuit.
const (
	driveW   = 404.0
	driveTop = 28.0
	axleY    = 76.0 // under the upper row of spots
)

// Draw draws motor, gears, shaft, drum and what holds the drum, with the parts as links above and below.
func (d DriveSketch) Draw(w io.Writer) error {
	var above, below []placed
	for _, s := range d.Spots {
		s.Name = short(s.Name)
		p := placed{Spot: s, own: true, x: driveX(s.ID), y: 22}
		if s.ID == "case" || strings.HasPrefix(s.ID, "hold-") {
			p.y = -22
			above = append(above, p)
		} else {
			below = append(below, p)
		}
	}
	byPoint := func(a, b placed) int { return cmp.Compare(a.x, b.x) }
	slices.SortStableFunc(above, byPoint)
	slices.SortStableFunc(below, byPoint)
	const across = 4
	upper := math.Ceil(float64(len(above)) / across)
	axle := driveTop + upper*spotStep + axleY - 28
	h := axle + 66 + math.Ceil(float64(len(below))/across)*spotStep
	p := openTouch(w, driveW, h, "The drive, larger. Every part is a link that opens its card.")
	p.raw(`<text class="s" x="8" y="18">%s</text>`, html.EscapeString(d.Title))
	p.drive(axle, d.Stages)
	p.brake(axle)
	p.ratchet(axle)
	gridOf(above, driveTop, across)
	gridOf(below, axle+60, across)
	for _, s := range append(above, below...) {
		s.y += axle
		p.spot(s)
	}
	return p.close()
}

// gridOf puts spots, from left to right by what they point at, into rows of n. A row that is not full stands with each spot over
// its own point, as far as its neighbours and the edges leave room.
func gridOf(spots []placed, top float64, n int) {
	width := driveW / float64(n)
	for row := 0; row*n < len(spots); row++ {
		line := spots[row*n : min((row+1)*n, len(spots))]
		y := top + float64(row)*spotStep
		free := driveW - width // the greatest left edge of the next spot to the left
		for i := len(line) - 1; i >= 0; i-- {
			x := min(max(line[i].x-width/2, float64(i)*width), free)
			line[i].box = box{x + 2, y, x + width - 2, y + spotHigh}
			free = x - width
		}
	}
}

// driveX is where a part of the drive stands on its axle.
func driveX(id string) float64 {
	switch id {
	case "motor":
		return 44
	case "gears":
		return 136
	case "case":
		return 160
	case "hold-1":
		return 229
	case "shaft":
		return 258
	case "drum":
		return 308
	}
	return 362 // every further hold
}

// drive draws motor, gears, shaft and drum on their axle.
func (p *pen) drive(y float64, stages int) {
	p.line(60, y, 392, y, stroke(ink, 2, ""))
	p.rect(14, y-22, 58, 44, attrs{"class", "steel", "rx", "5"})
	p.line(24, y-22, 24, y+22, stroke(ink, 1, ""))
	p.line(34, y-22, 34, y+22, stroke(ink, 1, ""))
	n := min(max(stages, 1), 5)
	for i := range n {
		r := 12 + 11*float64(i+1)/float64(n)
		x := 98 + (174-98)*(float64(i)+0.5)/float64(n)
		p.circle(x, y, r, attrs{"class", "paperf"})
		p.circle(x, y, r*0.55, stroke(ink, 1, "2 2"))
	}
	p.rect(84, y-30, 120, 60, stroke(ink, 1.2, ""), attrs{"rx", "3"})
	p.line(258, y-10, 258, y+10, stroke(ink, 3, ""))
	p.rect(278, y-22, 58, 44, attrs{"class", "wood"})
	for x := 284.0; x < 306; x += 5 {
		p.line(x, y-22, x, y+22, attrs{"class", "ropel"})
	}
	p.rect(270, y-34, 8, 68, attrs{"class", "steel"})
	p.rect(336, y-34, 8, 68, attrs{"class", "steel"})
}

// brake draws a brake on the axle.
func (p *pen) brake(y float64) {
	p.rect(224, y-30, 9, 60, attrs{"class", "paperf"})
	p.rect(236, y-38, 6, 18, attrs{"class", "steel"})
}

// ratchet draws the toothed wheel of a pawl beside the drum.
func (p *pen) ratchet(y float64) {
	p.path([]float64{356, y - 26, 364, y - 22, 366, y - 14, 373, y - 8, 371, y + 1, 373, y + 9, 366, y + 15, 364, y + 23, 356, y + 27}, true, attrs{"class", "paperf"})
}
