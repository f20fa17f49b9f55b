package draw

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Note names a part in the drawing of the plan sheet, with its size and what its label says.
type Note struct {
	Part string // an id as the drawing that can be touched has it: "rope", "pulley-2", "stop-1"
	Head string // "Rope polyester 12 mm"
	Text string // "reel 2 000 kg, 16 m"
	Bad  bool   // the part gives way
}

// noted is a note with its lines and its place.
type noted struct {
	Note
	lines  []Line
	x, y   float64 // of the part
	top, h float64
	number string // where it stands in the key and not beside the view
}

// rightParts stand right of the view; all others left, where there is room.
func rightPart(id string) bool {
	return id == "mass" || id == "cage" || id == "posts" || strings.HasPrefix(id, "stop-")
}

// Key are the notes for which there is no room beside the view: they are numbered in the drawing, and listed under it.
func (p Paper) Key() (out []Note) {
	f, _ := p.frame()
	_, _, keyed := p.lay(f)
	for _, n := range keyed {
		n.Head = n.number + " " + n.Head
		out = append(out, n.Note)
	}
	return out
}

// lay puts the notes into two columns beside the view, each near the height of its part. What does not fit is numbered, the
// further pulleys first.
func (p Paper) lay(f frame) (left, right, keyed []noted) {
	anchors := p.Scene.anchors()
	for _, n := range p.Notes {
		a, drawn := anchors[n.Part]
		if !drawn {
			a = anchors["mass"]
		}
		one := noted{Note: n}
		one.x, one.y = f.p(a)
		wide := noteWide
		if rightPart(n.Part) {
			wide = rightWide
		}
		one.lines = n.lines(wide - 4)
		one.h = noteLine * float64(len(one.lines))
		if rightPart(n.Part) {
			right = append(right, one)
		} else {
			left = append(left, one)
		}
	}
	v := p.view()
	left, keyed = stack(left, edge+2, v.y1-6, keyed)
	right, keyed = stack(right, edge+2, v.y1-5*noteLine, keyed)
	return left, right, keyed
}

// lines are the lines of a note: at most two of its head and three more.
func (n Note) lines(width float64) []Line {
	head := n.Head
	if n.Bad {
		head = "✕ " + head
	}
	out := fold([]Line{{head, true}}, width)
	out = out[:min(len(out), 2)]
	more := fold([]Line{{n.Text, false}}, width)
	if n.Bad {
		more = append([]Line{{"gives way", true}}, more...)
	}
	return append(out, more[:min(len(more), 3)]...)
}

// noteGap stands between two notes.
const noteGap = 5.0

// stack puts notes into a column between two heights, in the order of their parts' heights.
func stack(notes []noted, top, bottom float64, keyed []noted) (placed, all []noted) {
	for {
		need := 0.0
		for _, n := range notes {
			need += n.h + noteGap
		}
		if need <= bottom-top+noteGap || len(notes) == 0 {
			break
		}
		i := len(notes) - 1
		for k, n := range notes {
			if strings.HasPrefix(n.Part, "pulley-") {
				i = k
			}
		}
		n := notes[i]
		n.number = strconv.Itoa(len(keyed) + 1)
		keyed = append(keyed, n)
		notes = slices.Delete(notes, i, i+1)
	}
	slices.SortStableFunc(notes, func(a, b noted) int { return cmp.Compare(a.y, b.y) })
	y := top
	for i := range notes {
		notes[i].top = math.Max(y, notes[i].y-notes[i].h/2)
		y = notes[i].top + notes[i].h + noteGap
	}
	for i := len(notes) - 1; i >= 0; i-- {
		notes[i].top = math.Min(notes[i].top, bottom-notes[i].h)
		bottom = notes[i].top - noteGap
	}
	return notes, keyed
}

// widest is the width of the widest of some lines.
func widest(lines []Line) (w float64) {
	for _, l := range lines {
		w = math.Max(w, boldWider*TextWidth(l.Text, noteSize))
	}
	return w
}

// notes writes them, each with a line to its part.
func (c *sheet) notes(left, right, keyed []noted) {
	for i, n := range append(slices.Clone(left), right...) {
		x, from := edge+2, 0.0
		if i >= len(left) {
			x = c.w - edge - boxWide - rightWide - 2
			from = x - 3
		} else {
			from = x + boldWider*TextWidth(n.lines[0].Text, noteSize) + 4
		}
		c.markRect(x-2, n.top, x+widest(n.lines)+2, n.top+n.h+2)
		c.line(from, n.top+6, n.x, n.y, stroke(ink, 0.5, ""))
		c.markLine(from, n.top+6, n.x, n.y)
		c.circle(n.x, n.y, 1.4, attrs{"fill", ink})
		for k, l := range n.lines {
			c.written(x, n.top+noteLine*float64(k)+9, l, "start")
		}
	}
	for _, n := range keyed {
		c.name(n.x, n.y, n.number, ink, attrs{"font-weight", "600"})
	}
}
