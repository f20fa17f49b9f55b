package draw

import "io"

// ChainSketch is what a small picture of a combination is drawn from: motor, gears, drum and mass one behind the other. It is
// no picture to scale; Motor and Drum are shares of the largest one, so that two pictures beside each other can be told apart.
type ChainSketch struct {
	Stages      int // 0 draws the shaft alone
	Worm        bool
	Motor, Drum float64 // 0 to 1
}

// Draw draws the sketch. It says nothing that does not stand beside it in words, and is hidden from whoever hears the page.
func (c ChainSketch) Draw(out io.Writer) error {
	p := newPen(out)
	p.raw(`<svg class="sketch" viewBox="0 0 230 92" aria-hidden="true">`)
	p.path([]float64{52, 62, 208, 62}, false, attrs{"class", "shaft"})
	half := 9 + 8*max(0, min(1, c.Motor))
	long := 26 + 18*max(0, min(1, c.Motor))
	p.rect(52-long, 62-half, long, 2*half, attrs{"class", "steel", "rx", "5"})
	for k := 1.0; k <= 3; k++ {
		p.line(52-long*k/4, 62-half, 52-long*k/4, 62+half, attrs{"class", "thin"})
	}
	p.gears(c.Stages, c.Worm)
	tall := 10 + 8*max(0, min(1, c.Drum))
	p.rect(154, 62-tall-6, 5, 2*tall+12, attrs{"class", "steel"})
	p.rect(159, 62-tall, 40, 2*tall, attrs{"class", "wood"})
	p.rect(199, 62-tall-6, 5, 2*tall+12, attrs{"class", "steel"})
	for x := 165.0; x <= 177; x += 6 {
		p.line(x, 62-tall, x, 62+tall, attrs{"class", "rope"})
	}
	p.path([]float64{180, 62 - tall, 216, 8, 224, 8, 224, 28}, false, attrs{"class", "rope"})
	p.circle(219, 9, 5, attrs{"class", "shaft"})
	p.rect(217, 28, 13, 13, attrs{"class", "mass"})
	return p.close()
}

// gears draws a case with so many wheels, or a worm on its wheel.
func (p *pen) gears(stages int, worm bool) {
	if stages == 0 {
		return
	}
	p.rect(66, 40, 74, 44, attrs{"class", "paper", "rx", "3"})
	if worm {
		p.path([]float64{74, 48, 132, 48}, false, attrs{"class", "shaft"})
		p.circle(103, 66, 13, attrs{"class", "steel"})
		for x := 82.0; x <= 124; x += 8 {
			p.line(x-2, 44, x+2, 52, attrs{"class", "thin"})
		}
		return
	}
	wheels := make([]float64, min(stages, 5)) // their radii, each larger than the one before
	all := 0.0
	for i := range wheels {
		wheels[i] = 6 + 8*float64(i+1)/float64(len(wheels))
		all += 2 * wheels[i]
	}
	last := 2 * wheels[len(wheels)-1]
	closer := 1.0 // they touch, or lie over one another where the case has no room for that
	if all > wheelsWide {
		closer = (wheelsWide - last) / (all - last)
	}
	x := 66 + (74-(closer*(all-last)+last))/2 // in the middle of the case
	for _, r := range wheels {
		p.circle(x+r, 62, r, attrs{"class", "steel"})
		p.circle(x+r, 62, 2.5, attrs{"class", "thin"})
		x += 2 * r * closer
	}
}

// wheelsWide is the room of the wheels in their case.
const wheelsWide = 68.0
