package draw

import (
	"math"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Tangent returns the straight rope that leaves wheel a and meets wheel b, each passed in its own turn. Where the
// wheels overlap so that there is none, the rope runs from centre to centre.
//
// With d from centre to centre, k = t_b·r_b − t_a·r_a and L = √(d² − k²), the rope's direction is u = (L·d − k·J·d)/d², J a
// quarter turn to the left, and each point of contact lies at c − t·r·J·u.
func Tangent(a, b Wheel) Leg {
	dx, dy := b.C.X-a.C.X, b.C.Y-a.C.Y
	k := b.Turn*b.R - a.Turn*a.R
	d2 := dx*dx + dy*dy
	if d2 <= k*k {
		return Leg{a.C, b.C}
	}
	l := math.Sqrt(d2 - k*k)
	ux, uy := (l*dx+k*dy)/d2, (l*dy-k*dx)/d2
	touch := func(w Wheel) Point { return Point{w.C.X + w.Turn*w.R*uy, w.C.Y - w.Turn*w.R*ux} }
	return Leg{touch(a), touch(b)}
}

// The turn of the rope, followed from the drum.
const (
	against = 1.0  // against the clock
	with    = -1.0 // with the clock
)

// sheave returns the i-th pulley from the drum, counted from 1, without its place.
func (b *builder) sheave(i int) Wheel {
	w := Wheel{Name: "pulley", Turn: with}
	w.Bare = max(10*b.rope, 60)
	if list := b.h.Reeving.Sheaves; i <= len(list) {
		w.Bare, w.Known = mm(list[i-1].Diameter, w.Bare)
	}
	w.R = (w.Bare + b.rope) / 2
	return w
}

// onBase reports whether lead pulley i < head stands on the base. Not known counts so for the first: it is the worse,
// as the base is then pulled up by two ropes.
func (b *builder) onBase(i int) bool {
	on := unit.Answer("")
	if list := b.h.Reeving.Sheaves; i <= len(list) {
		on = list[i-1].OnBase
	}
	return on == unit.Yes || on == "" && i == 1
}

// drumOnBeam reports whether the drum stands up at the beam.
func (b *builder) drumOnBeam() bool { return b.lead == 0 || b.h.Base.Where == lift.BaseOnBeam }

// reeve places wheels and rope. The top pulley, or the drum where it stands above the mass, has x = 0.
func (b *builder) reeve() {
	drum := Wheel{Name: "drum", Place: "base", Turn: against}
	drum.Bare, drum.Known = mm(b.h.Drum.Diameter, max(10*b.rope, 80))
	drum.R = (drum.Bare + b.rope) / 2
	if b.drumOnBeam() {
		drum.Place, drum.Turn = "beam", with
	}
	b.s.Flange, _ = mm(b.h.Drum.Flange, drum.Bare+6*b.rope)
	b.s.Flange = max(b.s.Flange, drum.Bare)

	lead := []Wheel{drum}
	for i := 1; i <= b.lead; i++ {
		w := b.sheave(i)
		w.Name, w.Place = "extra pulley", "beam"
		switch {
		case i == b.lead:
			w.Name = "top pulley"
		case b.onBase(i):
			w.Name, w.Place, w.Turn = "foot pulley", "base", against
		}
		lead = append(lead, w)
	}
	if len(lead) > 1 && lead[1].Place == "base" && drum.Place == "base" {
		lead[0].Turn = with // down through the board to the foot pulley
		b.foot = true
	}
	head := &lead[b.lead]
	b.fall(head)
	for i := b.lead - 1; i >= 0; i-- {
		b.place(&lead[i], lead[i+1], i+1 == b.lead)
	}
	b.s.Head = b.lead
	b.s.Wheels = append(lead, b.tackle(*head)...)
	for i := range b.s.Wheels {
		if i+1 < len(b.s.Wheels) {
			b.s.Legs = append(b.s.Legs, Tangent(b.s.Wheels[i], b.s.Wheels[i+1]))
		}
	}
	end := Wheel{C: b.s.DeadEnd, Turn: with}
	b.s.Legs = append(b.s.Legs, Tangent(b.s.Wheels[len(b.s.Wheels)-1], end))
}

// fall places the head and the mass under it, from what is known of heights.
func (b *builder) fall(head *Wheel) {
	block := 0.0
	if b.parts > 1 {
		block = 2 * b.sheave(b.lead+1).R
	}
	b.rig = block + max(60, 0.06*b.massH)
	want := b.travel + b.massH + b.rig + b.room + head.R
	b.head, b.headKnown = mm(b.h.Structure.HeadHeight, want+max(100, 0.03*b.travel))
	if b.headKnown && b.head < want {
		b.headOff = true
		b.head = want
	}
	head.C = Point{0, b.head}
	hang := head.R + b.spread()/2
	top := b.head - head.R - b.room - b.rig
	b.s.Travel = b.travel
	b.s.Mass = Rect{hang - b.massW/2, top - b.massH, hang + b.massW/2, top}
}

// spread returns how far apart the first and the last rope at the mass hang.
func (b *builder) spread() float64 {
	w := 0.0
	for j := 1; j < b.parts; j++ {
		w += 2 * b.sheave(b.lead+j).R
	}
	return w
}

// tackle places the pulleys between the ropes that carry the mass, and the dead end.
func (b *builder) tackle(head Wheel) []Wheel {
	var out []Wheel
	x := head.C.X + head.R
	top := b.s.Mass.Y1
	for j := 1; j < b.parts; j++ {
		w := b.sheave(b.lead + j)
		w.C.X = x + w.R
		if j%2 == 1 {
			w.Place, w.Turn, w.AtLower = "mass", against, true
			w.C.Y = top + b.rig - w.R
		} else {
			w.Place, w.Turn = "beam", with
			w.C.Y = head.C.Y
		}
		x += 2 * w.R
		out = append(out, w)
	}
	b.s.DeadEnd = Point{x, top + b.rig*0.55}
	if b.parts%2 == 0 {
		b.s.DeadEnd.Y = head.C.Y + head.R*0.4
	}
	if b.parts > 1 {
		b.s.Rig = Rect{head.C.X + head.R, top, x, top + b.rig*0.5}
	} else {
		b.s.Rig = Rect{x - b.rope, top, x + b.rope, b.s.DeadEnd.Y}
	}
	return out
}

// place puts wheel w before wheel next.
func (b *builder) place(w *Wheel, next Wheel, nextIsHead bool) {
	switch {
	case w.Place == "beam" && next.Place == "beam":
		x := next.C.X - next.R - w.R - max(60, 0.5*w.R)
		if nextIsHead && (w.Name == "extra pulley") {
			x = min(x, b.s.Mass.X0-b.clear-b.overhang()+w.R)
		}
		w.C = Point{x, next.C.Y + next.R - w.R}
	case w.Place == "beam": // down to a pulley on the base
		w.C = Point{next.C.X - next.R - w.R, b.head}
	case next.Place == "base" && w.Name == "drum":
		w.C = Point{next.C.X - next.R - w.R, b.drumHeight(2*next.R + footGap + b.board())}
	case next.Place == "base":
		w.C = Point{next.C.X - next.R - w.R - 0.5*w.R, next.C.Y - next.R + w.R}
	default:
		b.under(w, next, nextIsHead)
	}
}

// footGap is the room under the foot pulley and between it and the board, together.
const footGap = 60.0

// under puts the drum or the first foot pulley below wheel next. From the head the rope goes at the angle the user
// gives; where it is not known, or the rope would run into the mass, the base stands beside the mass.
func (b *builder) under(w *Wheel, next Wheel, nextIsHead bool) {
	y := footGap/3 + w.R
	if w.Name == "drum" {
		y = b.drumHeight(b.board() + 20)
	}
	line := next.C.X - next.R
	if !nextIsHead {
		w.C = Point{line - w.R, y}
		return
	}
	beside := min(line, b.s.Mass.X0-b.clear-b.overhang())
	if a, ok := b.h.Structure.LeadAngle.Value(); ok {
		sin, cos := math.Sincos(min(float64(a), 1.2))
		t := (next.C.Y + (next.R+w.R)*sin - y) / cos
		c := Point{next.C.X - (next.R+w.R)*cos - t*sin, y}
		if c.X+w.R <= b.s.Mass.X0-0.5*b.clear && float64(a) <= 1.2 && t > 0 {
			w.C = c
			b.angled = w.Name == "drum"
			return
		}
		b.aside = beside < line
	}
	w.C = Point{beside - w.R, y}
}

// overhang is how far the base reaches beyond the rope, towards the mass.
func (b *builder) overhang() float64 {
	w, wIs := mm(b.h.Base.Width, 0)
	off, offIs := b.h.Base.PullOffset.Value()
	if wIs && offIs && b.h.Base.Where != lift.BaseOnWall {
		return max(0, w/2-float64(off)*1000)
	}
	return max(60, 3*b.rope)
}

func (b *builder) board() float64 {
	t, _ := mm(b.h.Base.Board.Thickness, 40)
	return t
}

// drumHeight is the height of the drum's axis: the user's, or enough for its flanges above a board of that top.
func (b *builder) drumHeight(boardTop float64) float64 {
	least := boardTop + b.s.Flange/2 + 20
	h, known := mm(b.h.Base.PullHeight, least)
	if known && (h >= least || b.h.Base.Where == lift.BaseOnWall) {
		return h
	}
	return least
}
