package draw

import (
	"fmt"
	"math"
	"strings"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

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
	name := "top pulley"
	if b.lead == 0 {
		name = "drum axis"
	}
	s.add(Dim{From: Point{s.Mass.X1, 0}, To: s.Wheels[s.Head].C, Upright: true, Column: 1, Known: b.headKnown, Off: b.headOff}, name, head)
	if span, ok := mm(b.h.Structure.Beam.Span, 0); ok && len(s.Posts)+len(s.Stubs) > 0 {
		var left, right float64
		switch {
		case len(s.Posts) == 2:
			left, right = s.Posts[0].X1, s.Posts[1].X0
		case b.h.Structure.Beam.Support == lift.BeamCantilever:
			left, right = fall.X, fall.X+span
		default:
			left, right = fall.X, fall.X
		}
		if right-left > 0 {
			s.add(Dim{From: Point{left, s.Beam.Y1}, To: Point{right, s.Beam.Y1}, Known: true, Off: math.Abs(right-left-span) > 1e-6*span}, "span", span)
		}
	}
	if drum := s.Wheels[0]; b.angled && b.headKnown && !b.headOff && drum.Place == "base" {
		s.Out = Dim{From: Point{drum.C.X, 0}, To: fall, Known: true, Text: s.lengthText(fall.X - drum.C.X)}
		s.Out.Short = s.Out.Text
	}
	if v, ok := b.p.KeepOut.Value(); ok && v > 0 {
		s.KeepOut = float64(v) * 1000
	}
	b.chain()
}

// add completes a dimension with its texts.
func (s *Scene) add(d Dim, name string, value float64) {
	d.Short = s.lengthText(value)
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
	d.Short = s.lengthText(d.To.X - d.From.X)
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
		text = say.Mass(unit.Mass(m)).In(b.p.Units)
	}
	s.Labels = append(s.Labels, Label{Point{(s.Mass.X0 + s.Mass.X1) / 2, (s.Mass.Y0 + s.Mass.Y1) / 2}, text, s.Fails["mass"]})
	if s.HasBase {
		text = "base ?"
		if v, ok := b.h.Base.Mass.Value(); ok {
			text = say.That("base %s", say.Mass(v)).In(b.p.Units)
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
		s.Notes = append(s.Notes, "The top pulley is drawn higher than you say, so that the travel fits under it.")
	}
	if b.aside {
		s.Notes = append(s.Notes, "The drive is drawn beside the mass, further out than the angle of the rope to the drum says.")
	}
	if b.parts != int(b.h.Reeving.RopeParts.Or(1)) || b.lead != int(b.h.Reeving.LeadSheaves.Or(1)) {
		s.Notes = append(s.Notes, "Not all pulleys are drawn.")
	}
	if end := b.h.Reeving.DeadEnd; b.partsKnown && (end == lift.DeadEndBeam && b.parts%2 == 1 || end == lift.DeadEndMass && b.parts%2 == 0) {
		s.Notes = append(s.Notes, "With this number of ropes at the mass, the far end of the rope lands on the other side than you say.")
	}
}

// describe writes the text equivalent.
func (b *builder) describe() {
	s := &b.s
	s.Title = "The hoist as designed, seen from the side"
	m, known := b.mass()
	mass, travel, drum := say.That("A mass that is not known"), say.That("a height that is not known"), say.That("a drum of unknown diameter")
	if known {
		mass = say.That("A mass of %s", say.Mass(unit.Mass(m)))
	}
	if s.TravelKnown {
		travel = say.That("%s", say.Taped(unit.Length(s.Travel/1000)))
	}
	if s.Wheels[0].Known {
		drum = say.That("a drum of %s", say.Taped(unit.Length(s.Wheels[0].Bare/1000)))
	}
	desc := say.That("%s hangs on %s and travels %s. %s between mass and drum; %s.",
		mass, say.Plural(b.parts, "rope", "ropes"), travel, say.Plural(b.lead, "pulley", "pulleys"), drum)
	for _, d := range s.Dims {
		if d.Column == 1 && d.Known {
			desc = say.Join(desc, say.That("Its axis is at %s.", d.Short))
		}
	}
	s.Desc = desc.In(b.p.Units)
	if len(s.Marks) > 0 { // the danger first
		var said []string
		for i, m := range s.Marks {
			said = append(said, fmt.Sprintf("Mark %d: %s", i+1, m.Say))
		}
		s.Desc = strings.Join(said, " ") + " " + s.Desc
	}
}
