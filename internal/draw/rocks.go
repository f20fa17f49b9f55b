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

// The paper of the picture: so narrow that it is read on a phone as it is.
const (
	cubesW, cubesTall = 300.0, 170.0 // its width, and the height of the highest thing on it at most
	cubesEdge         = 8.0
	cubesGap          = 12.0
	cubesLetters      = 14.0
)

// Draw draws them from left to right behind a person, on one ground. Each has the room of its cube or of its words, whichever is
// wider; the scale is the largest at which all of them fit.
func (c Cubes) Draw(out io.Writer) error {
	const beside = "a person"
	needs := func(scale float64) (rooms []float64, sum float64) {
		rooms = []float64{TextWidth(beside, cubesLetters)}
		for _, one := range c.Each {
			rooms = append(rooms, math.Max(math.Max(leastBar, finite(float64(one.Side))*scale), math.Max(TextWidth(one.Name, cubesLetters), TextWidth(one.Value, cubesLetters))))
		}
		for _, r := range rooms {
			sum += r
		}
		return rooms, sum + cubesGap*float64(len(rooms)-1)
	}
	highest := float64(PersonTall)
	for _, one := range c.Each {
		highest = math.Max(highest, finite(float64(one.Side)))
	}
	least, most := 0.0, cubesTall/highest
	if _, sum := needs(most); sum > cubesW-2*cubesEdge {
		for range 40 { // halving: more than a picture shows
			if _, sum := needs((least + most) / 2); sum > cubesW-2*cubesEdge {
				most = (least + most) / 2
			} else {
				least = (least + most) / 2
			}
		}
		most = least
	}
	scale := most
	rooms, sum := needs(scale)
	ground := cubesEdge + highest*scale
	p := open(out, "cubes slim", cubesW, ground+48, c.Title, c.Desc)
	x := (cubesW - sum) / 2
	p.line(cubesEdge/2, ground, cubesW-cubesEdge/2, ground, stroke(ink, wide, ""))
	p.person(x+rooms[0]/2, ground, float64(PersonTall)*scale)
	p.text(x+rooms[0]/2, ground+19, beside, cubesLetters, "middle", 0)
	for i, one := range c.Each {
		x += rooms[i] + cubesGap
		side, mid := math.Max(leastBar, finite(float64(one.Side))*scale), x+rooms[i+1]/2
		p.rect(mid-side/2, ground-side, side, side, attrs{"class", one.Look}, stroke(ink, narrow, ""))
		p.text(mid, ground+19, one.Name, cubesLetters, "middle", 0)
		p.text(mid, ground+38, one.Value, cubesLetters, "middle", 0)
	}
	return p.close()
}
