package draw

import (
	"math"

	"duskweight/internal/model/lift"
)

// base draws board, weights and the bearings of the drum.
func (b *builder) base() {
	s := &b.s
	drum := s.Wheels[0]
	if drum.Place == "beam" {
		s.Stand = append(s.Stand, Leg{drum.C, Point{drum.C.X, s.Beam.Y0}})
	}
	if b.h.Base.Where == lift.BaseOnWall && drum.Place == "base" && !b.foot {
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
	right := b.line + b.overhang()
	left := b.line - max(500, 5*s.Flange)
	if drum.Place == "base" {
		left = min(left, drum.C.X-1.2*s.Flange-200)
	}
	if b.foot {
		bottom = 2*s.Wheels[1].R + footGap
	}
	if w, ok := mm(b.h.Base.Width, 0); ok {
		left = right - w
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
