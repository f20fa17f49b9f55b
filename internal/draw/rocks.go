package draw

import (
	"io"
	"math"

	"duskweight/internal/model/unit"
)

// Cube is a thing that is drawn as a cube: its side, its look by the name in the style sheet, and the words below it.
type Cube struct {
	Side        unit.Length
	Look        string
	Name, Value string
}

// Cubes are things beside a person, all to one scale.
type Cubes struct {
	Title, Desc string
	Each        []Cube
}

// The paper of the picture.
const (
	cubesW, cubesH = 640.0, 300.0
	cubesEdge      = 16.0
)

// Draw draws them from left to right behind a person, on one ground.
func (c Cubes) Draw(out io.Writer) error {
	p := open(out, "cubes", cubesW, cubesH, c.Title, c.Desc)
	const ground = cubesH - 58
	highest, person := float64(PersonTall), float64(PersonTall)
	for _, one := range c.Each {
		highest = math.Max(highest, finite(float64(one.Side)))
	}
	room := (cubesW - 2*cubesEdge - 60) / math.Max(1, float64(len(c.Each)))
	scale := math.Min((ground-cubesEdge)/highest, (room-10)/highest)
	p.line(cubesEdge, ground, cubesW-cubesEdge, ground, stroke(ink, wide, ""))
	p.person(cubesEdge+30, ground, person*scale)
	p.text(cubesEdge+30, ground+20, "a person", 13, "middle", 0)
	for i, one := range c.Each {
		side := math.Max(leastBar, finite(float64(one.Side))*scale)
		x := cubesEdge + 60 + room*(float64(i)+0.5)
		p.rect(x-side/2, ground-side, side, side, attrs{"class", one.Look}, stroke(ink, narrow, ""))
		p.text(x, ground+20, one.Name, 14, "middle", 0)
		p.text(x, ground+40, one.Value, 14, "middle", 0)
	}
	return p.close()
}
