package draw

import (
	"fmt"
	"io"
	"strings"
)

// The state of a night.
const (
	NotCounted   int8 = iota // the sun does not set
	Served                   // with light all night
	PartlyServed             // only the essential things had power
	Dark                     // hours without light
)

// monthNames and their days, January first.
var (
	monthNames = [12]string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"}
	monthDays  = [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
)

// Nights draws the year as twelve rows of squares, one for each night, with a sign in each: filled with a tick for a
// night with light, half for one in which only the essential things had power, an open square with a cross for hours
// without light, a dot where there was no night. Missing nights at the end are left out.
func Nights(state []int8, out io.Writer) error {
	const cell, left, top, count = 11.0, 34.0, 20.0, 40.0
	const w = left + 31*cell + count + 6
	const h = top + 12*(cell+2) + 44
	p := open(out, "nights", w, h, "The year of nights", nightsReading(state))
	for d := 1; d <= 31; d += 5 {
		p.text(left+(float64(d)-0.5)*cell, top-6, fmt.Sprint(d), 9.5, "middle", 0)
	}
	p.text(w-4, top-6, "light", 9.5, "end", 0)
	day := 0
	signs := signs{side: cell - 1, step: cell}
	for m, n := range monthDays {
		y := top + float64(m)*(cell+2)
		p.text(left-6, y+9, monthNames[m], 10.5, "end", 0)
		lit, all := 0, 0
		for d := range n {
			if day+d >= len(state) {
				break
			}
			signs.add(left+float64(d)*cell, y, state[day+d])
			if state[day+d] != NotCounted {
				all++
			}
			if state[day+d] == Served {
				lit++
			}
		}
		day += n
		if all > 0 {
			p.text(w-4, y+9, fmt.Sprintf("%d/%d", lit, all), 10, "end", 0)
		}
	}
	signs.draw(p)
	p.nightsKey(left, top+12*(cell+2)+10, cell-1, state)
	return p.close()
}

// signs gathers the squares of each state into one path, for a year of single ones would be most of a page. A night
// beside one of the same state is written from that one on, in the same few letters every time.
type signs struct {
	side, step float64            // of a square, and from one to the next
	squares    [4]strings.Builder // by state
	marks      [4]strings.Builder // what stands in each
	last       [4]struct{ x, y float64 }
}

// add puts down one night: a square and the sign in it.
func (g *signs) add(x, y float64, state int8) {
	if state < NotCounted || state > Dark {
		state = NotCounted
	}
	a, b, s := &g.squares[state], &g.marks[state], g.side
	next := b.Len() > 0 && g.last[state].y == y && g.last[state].x+g.step == x
	g.last[state].x, g.last[state].y = x, y
	begin := func(b *strings.Builder, atX, atY, stepX, stepY float64) {
		if next {
			fmt.Fprintf(b, "m%s %s", num(stepX), num(stepY))
		} else {
			fmt.Fprintf(b, "M%s %s", num(atX), num(atY))
		}
	}
	if state != NotCounted {
		begin(a, x, y, g.step, 0)
		fmt.Fprintf(a, "h%sv%sh-%sz", num(s), num(s), num(s))
	}
	switch state {
	case Served:
		begin(b, x+0.2*s, y+0.5*s, g.step-0.6*s, 0.3*s)
		fmt.Fprintf(b, "l%s %sl%s-%s", num(0.2*s), num(0.2*s), num(0.4*s), num(0.5*s))
	case PartlyServed:
		begin(b, x, y+s, g.step, 0)
		fmt.Fprintf(b, "h%sv-%sz", num(s), num(s))
	case Dark:
		begin(b, x+0.2*s, y+0.2*s, g.step, -0.6*s)
		fmt.Fprintf(b, "l%s %sm0-%sl-%s %s", num(0.6*s), num(0.6*s), num(0.6*s), num(0.6*s), num(0.6*s))
	default:
		begin(b, x+s/2-1, y+s/2, g.step-2, 0)
		b.WriteString("h2")
	}
}

func (g *signs) draw(p *pen) {
	looks := [4][2]attrs{
		NotCounted:   {nil, stroke(ink, 2, "")},
		Served:       {{"fill", loadColour}, stroke("#fff", 1.3, "")},
		PartlyServed: {stroke(loadColour, 0.8, ""), {"fill", loadColour, "fill-opacity", ".7"}},
		Dark:         {stroke(failColour, 0.8, ""), stroke(failColour, 1.3, "")},
	}
	for state, look := range looks {
		for i, d := range []string{g.squares[state].String(), g.marks[state].String()} {
			if d != "" {
				p.tag("path", attrs{"d", d}, look[i])
			}
		}
	}
}

// night draws one square of the key.
func (p *pen) night(x, y, s float64, state int8) {
	one := signs{side: s}
	one.add(x, y, state)
	one.draw(p)
}

// nightsKey explains the signs that occur.
func (p *pen) nightsKey(x, y, s float64, state []int8) {
	has := map[int8]bool{}
	for _, v := range state {
		has[v] = true
	}
	for _, k := range []struct {
		state int8
		say   string
	}{{Served, "full night"}, {PartlyServed, "essential only"}, {Dark, "hours without power"}, {NotCounted, "no night"}} {
		if !has[k.state] {
			continue
		}
		if x+TextWidth(k.say, 10)+s+6 > 34+31*11+46 {
			x, y = 34, y+16
		}
		p.night(x, y, s, k.state)
		p.text(x+s+4, y+s-1, k.say, 10, "start", 0)
		x += s + 16 + TextWidth(k.say, 10)
	}
}

// nightsReading is the text equivalent.
func nightsReading(state []int8) string {
	var lit, part, all int
	for _, v := range state {
		switch v {
		case Served:
			lit++
		case PartlyServed:
			part++
		}
		if v != NotCounted {
			all++
		}
	}
	s := fmt.Sprintf("%d of %d nights are full.", lit, all)
	if part > 0 {
		s += fmt.Sprintf(" In %d more the essential things have power.", part)
	}
	return s
}
