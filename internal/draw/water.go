package draw

import (
	"io"
	"math"

	"duskweight/internal/model/unit"
)

// PersonTall is how tall the person is that stands in pictures to scale (our own judgement).
const PersonTall unit.Length = 1.7

// Water is a store of lifted water, drawn to scale: the upper tank, its pipe, pump and turbine, the water below, and a person.
type Water struct {
	Volume               unit.Volume
	Head                 unit.Length
	Surface              unit.Known[unit.Area]
	Inner                unit.Known[unit.Length]
	Tower                bool // it stands on posts; else on a slope
	VolumeText, HeadText string
}

// Side is the side of the tank as it is drawn: a square of its surface, or a cube where the surface is not known.
func (w Water) Side() unit.Length {
	if s, ok := w.Surface.Value(); ok && s > 0 {
		return unit.Length(math.Sqrt(float64(s)))
	}
	return unit.Length(math.Cbrt(float64(w.Volume)))
}

// deep is how deep the water stands in the tank.
func (w Water) deep() unit.Length {
	side := float64(w.Side())
	return unit.Length(float64(w.Volume) / (side * side))
}

// The paper of the picture.
const (
	waterW, waterH = 520.0, 330.0
	waterSlim      = 300.0 // a high tower alone needs no more, and then the picture is read on a phone as it is
	waterEdge      = 26.0  // free on each side
)

// Draw draws it. All lengths have one scale; the pipe is drawn thicker where it would not be seen.
func (w Water) Draw(out io.Writer) error {
	side, deep, head := float64(w.Side()), float64(w.deep()), float64(w.Head)
	bottom := math.Max(head-deep/2, 0) // of the water in the tank, over the turbine
	across, high := 2*side+2*float64(PersonTall)+0.4*side, math.Max(head+deep/2, float64(PersonTall))+1.1*deep
	scale := math.Min((waterW-2*waterEdge-70)/across, (waterH-2*waterEdge-14)/high)
	ground := waterH - waterEdge - deep*scale - 14
	sheet, class, needs := waterW, "pond", waterEdge+52+across*scale+math.Max(16, 0.2*side*scale)+14+waterEdge
	if needs <= waterSlim {
		sheet, class = waterSlim, "pond slim"
	}
	p := open(out, class, sheet, waterH, "Lifted water to scale: "+w.VolumeText+" at "+w.HeadText,
		"The upper tank is on the left, "+w.HeadText+" over the turbine. A pipe joins it to pump and turbine. The water below is right of them. A person beside them gives the scale.")
	x, look := waterEdge+52, stroke(ink, wide, "")
	top := ground - (bottom+deep)*scale
	tank := func(x, y float64) {
		p.rect(x, y, side*scale, deep*scale, attrs{"class", "water"}, look)
		p.path([]float64{x, y - 4, x, y + deep*scale, x + side*scale, y + deep*scale, x + side*scale, y - 4}, false, look)
	}
	w.stand(p, x, ground-bottom*scale, ground, side*scale)
	tank(x, top)
	out1 := x + side*scale
	pipe := math.Max(2, float64(w.Inner.Or(0.05))*scale)
	machine := out1 + math.Max(16, 0.2*side*scale)
	p.path([]float64{out1 - pipe/2, ground - bottom*scale, out1 + pipe, ground - bottom*scale, machine, ground - 6}, false, stroke(ink, pipe, ""))
	p.circle(machine, ground-6, 6, attrs{"class", "mark"}, look)
	lower := machine + 14
	tank(lower, ground)
	p.line(waterEdge, ground, sheet-waterEdge, ground, stroke(ink, narrow, ""))
	p.person(lower+side*scale+0.6*float64(PersonTall)*scale, ground, float64(PersonTall)*scale)
	p.line(waterEdge+40, ground-6, waterEdge+40, ground-6-head*scale, stroke(ink, narrow, ""))
	p.arrow(waterEdge+40, ground-6-head*scale, 0, -1)
	p.arrow(waterEdge+40, ground-6, 0, 1)
	p.text(waterEdge+34, ground-6-head*scale/2, w.HeadText, 13, "middle", 90)
	p.text(x, math.Max(14, top-9), w.VolumeText, 13, "start", 0)
	const machines = "pump and turbine"
	p.text(math.Max(machine+4, 4+TextWidth(machines, 12)), ground+20, machines, 12, "end", 0)
	return p.close()
}

// stand draws what carries the tank: posts, or a slope.
func (w Water) stand(p *pen, x, foot, ground, side float64) {
	if ground-foot < 1 {
		return
	}
	if !w.Tower {
		p.path([]float64{waterEdge, foot, x + side, foot, x + side + 12, ground, waterEdge, ground}, true, attrs{"fill", ink, "fill-opacity", "0.15"})
		return
	}
	for _, at := range []float64{x + 0.1*side, x + 0.9*side} {
		p.line(at, foot, at, ground, stroke(ink, wide, ""))
	}
	p.line(x+0.1*side, foot, x+0.9*side, ground, stroke(ink, narrow, ""))
}

// person draws a standing person of a height on the page, with the feet at x and y.
func (p *pen) person(x, y, tall float64) {
	look := stroke(ink, math.Max(1, tall/22), "")
	p.circle(x, y-0.92*tall, 0.08*tall, attrs{"fill", ink})
	p.line(x, y-0.84*tall, x, y-0.45*tall, look)
	p.path([]float64{x - 0.12*tall, y, x, y - 0.45*tall, x + 0.12*tall, y}, false, look)
	p.path([]float64{x - 0.17*tall, y - 0.5*tall, x, y - 0.78*tall, x + 0.17*tall, y - 0.5*tall}, false, look)
}
