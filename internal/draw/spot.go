package draw

import (
	"cmp"
	"html"
	"math"
	"slices"
	"strings"

	"duskweight/internal/model/lift/path"
)

// Spot is a part in a picture that can be touched: a link to its card, with its sign, its name and a word about it.
type Spot struct {
	ID     string
	Name   string
	Subs   []string // a few words about it, the best first; the first that fits is written, none where none does
	Href   string
	Say    string // its word and what opens, for whoever does not see the sign; its name and words stand before
	Word   path.Word
	Here   bool // its card is open
	Around bool // it stands around the hoist, in no place of the scene
	At     Point
}

// Measures of a spot on the paper. Our own judgement: a target is at least 36 high.
const (
	spotHigh   = 38.0
	spotStep   = 41.0
	spotSign   = 10.0 // radius of the sign
	spotIndent = 28.0 // from the left edge to the letters
	spotName   = 12.5
	spotSub    = 11.0
)

// placed is a spot with its box on the paper and the point that its line leads to.
type placed struct {
	Spot
	box box
	x   float64 // of the point
	y   float64
	own bool // a line leads to the point
}

// sub is the best of the words that fits into a width.
func (s Spot) sub(width float64) string {
	for _, text := range s.Subs {
		if TextWidth(text, spotSub) <= width {
			return text
		}
	}
	return ""
}

// spot writes a placed spot as a link.
func (p *pen) spot(s placed) {
	class := "part"
	if s.Here {
		class += " sel"
	}
	b := s.box
	sub := s.sub(b.x1 - b.x0 - spotIndent - 2)
	p.raw(`<a class="%s" href="%s" id="part-%s" aria-label="%s"`, class, html.EscapeString(s.Href), html.EscapeString(s.ID), html.EscapeString(strings.TrimSpace(s.Name+" "+sub)+": "+s.Say))
	if s.Here {
		p.raw(` aria-current="true"`)
	}
	p.raw(">")
	p.rect(b.x0, b.y0, b.x1-b.x0, b.y1-b.y0, attrs{"class", "hit"})
	mid := (b.y0 + b.y1) / 2
	if s.own {
		from := b.x1 - 2
		if s.x < b.x0 {
			from = b.x0 + 2
		}
		to := mid
		if b.x0 <= s.x && s.x <= b.x1 { // above or below it
			from, to = math.Min(math.Max(s.x, b.x0+8), b.x1-8), b.y1
			if s.y < b.y0 {
				to = b.y0
			}
		}
		p.line(from, to, s.x, s.y, attrs{"class", "lead"})
	}
	p.sign(b.x0+spotSign+3, mid, s.Word)
	y := mid + 4
	if sub != "" {
		y = mid - 3
	}
	p.raw(`<text class="nm" x="%s" y="%s">%s</text>`, num(b.x0+spotIndent), num(y), html.EscapeString(s.Name))
	if sub != "" {
		p.raw(` <text class="s" x="%s" y="%s">%s</text>`, num(b.x0+spotIndent), num(mid+11), html.EscapeString(sub))
	}
	p.raw("</a>")
}

// wordSigns are the lines in the ring of each word: a hook, a stroke with its point, a cross, a question mark; for what is
// missing a plus in a dotted ring.
var wordSigns = map[path.Word]struct{ class, d string }{
	path.Holds:    {"ok", "M-4.2 .4 -1.2 3.6 4.4-3.6"},
	path.Tight:    {"warn", "M0-5V1.2M0 4.6V4.7"},
	path.GivesWay: {"bad", "M-3.7-3.7 3.7 3.7M3.7-3.7-3.7 3.7"},
	path.NotKnown: {"unk", "M-3-2.4C-3-6.4 3.2-6.2 3-2.4 2.9-.4 0-.4 0 1.8M0 4.9V5"},
	Missing:       {"non", "M-5 0H5M0-5V5"},
}

// sign draws the sign of a word. Ring, filling and line differ: it does without colour.
func (p *pen) sign(x, y float64, w path.Word) {
	s := wordSigns[w]
	p.raw(`<g class="mk %s" transform="translate(%s %s)"><circle r="%s"/><path d="%s"/></g>`, s.class, num(x), num(y), num(spotSign), s.d)
}

// Sign is the sign of a word alone, for lists.
func Sign(w path.Word) string {
	s := wordSigns[w]
	return `<svg class="m" viewBox="-11 -11 22 22" aria-hidden="true"><g class="mk ` + s.class + `"><circle r="10"/><path d="` + s.d + `"/></g></svg>`
}

// columns puts spots into two columns beside a picture, each spot on the side of its point, and none on another: at their
// points' heights where there is room, moved apart where there is not.
func columns(spots []placed, left, right box) []placed {
	slices.SortStableFunc(spots, func(a, b placed) int { return cmp.Compare(a.x, b.x) })
	middle := (left.x1 + right.x0) / 2
	half := (len(spots) + 1) / 2
	n := 0
	for n < len(spots) && spots[n].x < middle {
		n++
	}
	n = min(max(n, len(spots)-half), half)
	column(spots[:n], left)
	column(spots[n:], right)
	slices.SortStableFunc(spots, func(a, b placed) int { return cmp.Or(cmp.Compare(a.box.y0, b.box.y0), cmp.Compare(a.box.x0, b.box.x0)) })
	return spots // in the order of reading
}

// column stacks spots in the order of their points' heights.
func column(spots []placed, in box) {
	slices.SortStableFunc(spots, func(a, b placed) int { return cmp.Compare(a.y, b.y) })
	top := in.y0
	for i := range spots {
		y := math.Max(top, spots[i].y-spotHigh/2)
		spots[i].box = box{in.x0, y, in.x1, y + spotHigh}
		top = y + spotStep
	}
	bottom := in.y1
	for i := len(spots) - 1; i >= 0; i-- {
		if over := spots[i].box.y1 - bottom; over > 0 {
			spots[i].box.y0 -= over
			spots[i].box.y1 -= over
		}
		bottom = spots[i].box.y0 - (spotStep - spotHigh)
	}
}

// inColumn is how high a column of n spots is.
func inColumn(n int) float64 { return float64(n)*spotStep + 4 }

// short is a name as a picture has room for it: up to its first comma or "and".
func short(name string) string {
	name, _, _ = strings.Cut(name, ",")
	name, _, _ = strings.Cut(name, " and ")
	return name
}
