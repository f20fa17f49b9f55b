package draw

import (
	"fmt"
	"math"

	"duskweight/internal/model/unit"
)

// structure places the beam, what carries it and the hooks under it.
func (b *builder) structure() {
	s := &b.s
	st := b.h.Structure
	tall := 0.0
	for _, w := range s.Wheels {
		if w.Place == "beam" {
			tall = max(tall, w.C.Y+w.R)
		}
	}
	under := tall + max(40, 0.4*s.Wheels[s.Head].R)
	depth, _ := mm(st.Beam.Depth, 0)
	if depth == 0 {
		depth, _ = mm(st.Beam.Width, 140)
	}
	post := 100.0
	if len(st.Posts) > 0 {
		s.PostsKnown = true
		post, _ = mm(st.Posts[0].Width, post)
	}
	left, right := b.extent()
	left, right = left-b.clear-post, right+b.clear+post
	if span, ok := mm(st.Beam.Span, 0); ok {
		left, right = b.supports(span, left)
	}
	s.Beam = Rect{left - post, under, right + post, under + depth}
	for _, w := range s.Wheels {
		if w.Place == "beam" {
			s.Hangers = append(s.Hangers, Leg{w.C, Point{w.C.X, under}})
		}
	}
	if b.parts%2 == 0 {
		s.Hangers = append(s.Hangers, Leg{s.DeadEnd, Point{s.DeadEnd.X, under}})
	}
	b.carriers(left, right, post, under)
}

// extent is what must find room between the posts.
func (b *builder) extent() (left, right float64) {
	left, right = b.s.Mass.X0, b.s.Mass.X1
	for _, w := range b.s.Wheels {
		r := w.R
		if w.Name == "drum" {
			r = max(r, b.s.Flange/2)
		}
		if w.Place == "base" {
			r = max(2*w.R, 200)
		}
		left, right = min(left, w.C.X-r), max(right, w.C.X+w.R)
	}
	return left, right
}

// supports returns the places of the supports of a beam of known span: the pulley stands where the user says from the
// nearer one, taken as the right one, so that the drive has room on the left.
func (b *builder) supports(span, left float64) (float64, float64) {
	pull := (b.s.Mass.X0 + b.s.Mass.X1) / 2
	if b.h.Structure.Beam.Support == "cantilever" {
		return left, pull + span
	}
	from, ok := mm(b.h.Structure.Beam.From, span/2)
	if ok && from > span {
		from = span / 2
	}
	return pull + from - span, pull + from
}

// carriers draws posts down to the ground, or what the beam rests on.
func (b *builder) carriers(left, right, post, under float64) {
	s := &b.s
	cantilever := b.h.Structure.Beam.Support == "cantilever"
	switch b.h.Structure.RestsOn {
	case "concrete_or_masonry", "roof_truss", "joists", "living_tree", "balcony", "engineered_steel":
		if len(b.h.Structure.Posts) == 0 {
			if !cantilever {
				s.Stubs = append(s.Stubs, Rect{left - post, under - 2.2*post, left + post*0.2, under})
			}
			s.Stubs = append(s.Stubs, Rect{right - post*0.2, under - 2.2*post, right + post, under})
			return
		}
	}
	if !cantilever {
		s.Posts = append(s.Posts, Rect{left - post, 0, left, under})
	}
	s.Posts = append(s.Posts, Rect{right, 0, right + post, under})
}

// base draws board, weights and the bearings of the drum.
func (b *builder) base() {
	s := &b.s
	drum := s.Wheels[0]
	if drum.Place == "beam" {
		s.Stand = append(s.Stand, Leg{drum.C, Point{drum.C.X, s.Beam.Y0}})
	}
	if b.h.Base.Where == "on_wall" && drum.Place == "base" && !b.foot {
		if len(s.Posts) > 0 {
			s.Stand = append(s.Stand, Leg{drum.C, Point{s.Posts[0].X1, drum.C.Y}})
		}
		return
	}
	b.line = b.ropeLine()
	if math.IsNaN(b.line) {
		return
	}
	s.HasBase = true
	thick := b.board()
	bottom := footGap / 3
	right := b.line + max(60, 3*b.rope)
	left := b.line - max(500, 5*s.Flange)
	if drum.Place == "base" {
		left = min(left, drum.C.X-1.2*s.Flange-200)
	}
	if b.foot {
		bottom = 2*s.Wheels[1].R + footGap
	}
	if w, ok := mm(b.h.Base.Width, 0); ok {
		left = right - w
		if off, ok := mm(b.h.Base.PullOffset, 0); ok {
			left = b.line - off - w/2
		}
		right = left + w
	}
	s.Board = Rect{left, bottom, right, bottom + thick}
	if b.foot {
		f := s.Wheels[1]
		s.Hole, s.HasHole = Point{f.C.X - f.R, bottom + thick/2}, true
	}
	if drum.Place == "base" {
		for _, dx := range []float64{-0.45, 0.45} {
			s.Stand = append(s.Stand, Leg{drum.C, Point{drum.C.X + dx*s.Flange, s.Board.Y1}})
		}
	}
	b.weights(drum)
}

// ropeLine is x where the rope goes up from the base; NaN where none does.
func (b *builder) ropeLine() float64 {
	for i, w := range b.s.Wheels {
		if w.Place != "base" {
			continue
		}
		if next := b.s.Wheels[min(i+1, len(b.s.Wheels)-1)]; next.Place == "base" {
			continue
		}
		return b.s.Legs[i].From.X
	}
	return math.NaN()
}

// weights stands on the board beside the drum; their size is for the eye, and follows the mass of the base.
func (b *builder) weights(drum Wheel) {
	s := &b.s
	x1 := s.Board.X1 - 20
	if drum.Place == "base" {
		x1 = drum.C.X - s.Flange/2 - 40
	}
	x0 := s.Board.X0 + 20
	if x1-x0 < 40 {
		return
	}
	h := 200.0
	if m, ok := b.h.Base.Mass.Value(); ok && m > 0 {
		h = math.Sqrt(float64(m) / guessDensity / 300)
	}
	h = min(max(h, 60), 0.4*max(s.Mass.Y1-s.Mass.Y0, 300))
	s.Weights = append(s.Weights, Rect{x0, s.Board.Y1, x1, s.Board.Y1 + h})
}

// dimension lists what is measured.
func (b *builder) dimension() {
	s := &b.s
	fall := Point{(s.Mass.X0 + s.Mass.X1) / 2, 0}
	top := Point{s.Mass.X1, s.Mass.Y1}
	low := Point{s.Mass.X1, s.Mass.Y1 - s.Travel}
	s.add(Dim{From: low, To: top, Upright: true, Known: s.TravelKnown}, "travel", s.Travel)
	if hook := s.Mass.Y1 + b.rig; b.lead > 0 || b.parts > 0 {
		axis := s.Wheels[s.Head]
		s.add(Dim{From: Point{fall.X, hook}, To: Point{axis.C.X + axis.R, axis.C.Y - axis.R}, Upright: true, Known: b.roomKnown}, "room", b.room)
	}
	head := b.head
	if v, ok := b.h.Structure.HeadHeight.Value(); ok {
		head = float64(v) * 1000
	}
	name := "head pulley"
	if b.lead == 0 {
		name = "drum axis"
	}
	s.add(Dim{From: Point{s.Mass.X1, 0}, To: s.Wheels[s.Head].C, Upright: true, Column: 1, Known: b.headKnown, Off: b.headOff}, name, head)
	if span, ok := mm(b.h.Structure.Beam.Span, 0); ok && len(s.Posts)+len(s.Stubs) > 0 {
		left, right := s.Beam.X0, s.Beam.X1
		switch {
		case len(s.Posts) == 2:
			left, right = s.Posts[0].X1, s.Posts[1].X0
		case b.h.Structure.Beam.Support == "cantilever":
			left, right = fall.X, fall.X+span
		default:
			left, right = fall.X, fall.X
		}
		if right-left > 0 {
			s.add(Dim{From: Point{left, s.Beam.Y1}, To: Point{right, s.Beam.Y1}, Known: true, Off: math.Abs(right-left-span) > 1e-6*span}, "span", span)
		}
	}
	if v, ok := b.p.KeepOut.Value(); ok && v > 0 {
		s.KeepOut = float64(v) * 1000
	}
	b.chain()
}

// add completes a dimension with its texts.
func (s *Scene) add(d Dim, name string, value float64) {
	d.Short = s.length(unit.Length(value / 1000))
	if !d.Known {
		d.Short = "?"
	}
	d.Text = d.Short
	if name != "" {
		d.Text = name + " " + d.Short
	}
	s.Dims = append(s.Dims, d)
}

// chain measures drum – hole – foot pulley, or drum – rope line where there is no foot pulley.
func (b *builder) chain() {
	s := &b.s
	drum := s.Wheels[0]
	s.Chain = []Station{{"drum", drum.C.X}}
	at := drum.C.Y
	switch {
	case b.foot:
		foot := s.Wheels[1]
		s.Chain = append(s.Chain, Station{"hole", s.Hole.X}, Station{"foot pulley", foot.C.X})
		s.chainDim(0, at, drum.Known)
		s.chainDim(1, at, foot.Known)
	case b.angled:
		s.Chain = append(s.Chain, Station{"rope", s.Legs[0].From.X})
		s.chainDim(0, at, drum.Known)
	default:
		s.Chain = append(s.Chain, Station{"rope", drum.C.X + drum.R})
		s.chainDim(0, at, drum.Known)
	}
}

func (s *Scene) chainDim(i int, y float64, known bool) {
	d := Dim{From: Point{s.Chain[i].X, y}, To: Point{s.Chain[i+1].X, y}, Known: known}
	d.Short = s.length(unit.Length((d.To.X - d.From.X) / 1000))
	if !known {
		d.Short = "?"
	}
	d.Text = d.Short
	s.ChainDims = append(s.ChainDims, d)
}

// label names the parts.
func (b *builder) label() {
	s := &b.s
	m, known := b.mass()
	text := "mass ?"
	if known {
		text = b.p.Mass(unit.Mass(m))
	}
	s.Labels = append(s.Labels, Label{Point{(s.Mass.X0 + s.Mass.X1) / 2, (s.Mass.Y0 + s.Mass.Y1) / 2}, text, s.Fails["mass"]})
	if s.HasBase {
		text = "base ?"
		if v, ok := b.h.Base.Mass.Value(); ok {
			text = "base " + b.p.Mass(v)
		}
		if s.Fails["base"] {
			text += " ✕"
		}
		s.Labels = append(s.Labels, Label{Point{(s.Board.X0 + s.Board.X1) / 2, s.Board.Y0}, text, s.Fails["base"]})
	}
	b.notes()
}

// notes says where the drawing does not match the numbers.
func (b *builder) notes() {
	s := &b.s
	if b.headOff {
		s.Notes = append(s.Notes, "The travel does not fit under the head pulley: the pulley is drawn higher than you say.")
	}
	if b.aside {
		s.Notes = append(s.Notes, "The drive is drawn beside the mass. At the angle you give, the rope to the drum or the base would be in the way of the mass.")
	}
	if b.parts != int(b.h.Reeving.RopeParts.Or(1)) || b.lead != int(b.h.Reeving.LeadSheaves.Or(1)) {
		s.Notes = append(s.Notes, "Not all pulleys are drawn.")
	}
	if end := b.h.Reeving.DeadEnd; b.partsKnown && (end == "beam" && b.parts%2 == 1 || end == "mass" && b.parts%2 == 0) {
		s.Notes = append(s.Notes, "With this number of ropes at the mass, the far end of the rope lands on the other side than you say.")
	}
}

// describe writes the text equivalent.
func (b *builder) describe() {
	s := &b.s
	s.Title = "The hoist as designed, seen from the side"
	m, known := b.mass()
	mass := "A mass that is not known"
	if known {
		mass = "A mass of " + b.p.Mass(unit.Mass(m))
	}
	travel := "a height that is not known"
	if s.TravelKnown {
		travel = s.length(unit.Length(s.Travel / 1000))
	}
	drum := "a drum of unknown diameter"
	if s.Wheels[0].Known {
		drum = "a drum of " + s.length(unit.Length(s.Wheels[0].Bare/1000))
	}
	s.Desc = fmt.Sprintf("%s hangs on %s and travels %s. %s between mass and drum; %s.",
		mass, count(b.parts, "rope", "ropes"), travel, count(b.lead, "pulley", "pulleys"), drum)
	for _, d := range s.Dims {
		if d.Column == 1 && d.Known {
			s.Desc += " Its axis stands at " + d.Short + "."
		}
	}
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
