package draw

import "duskweight/internal/model/lift"

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
	if b.h.Structure.Beam.Support == lift.BeamCantilever {
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
	cantilever := b.h.Structure.Beam.Support == lift.BeamCantilever
	switch b.h.Structure.RestsOn {
	case lift.RestsOnConcreteOrMasonry, lift.RestsOnRoofTruss, lift.RestsOnJoists, lift.RestsOnLivingTree, lift.RestsOnBalcony, lift.RestsOnEngineeredSteel:
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
