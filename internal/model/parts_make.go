package model

import (
	"fmt"
	"slices"

	"duskweight/internal/model/cost"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// madeNeeds are the parts of a hoist that are made: drum, gears, beam, posts, base. Their sizes are the design's.
func madeNeeds(h lift.Hoist) []Need {
	out := []Need{drumNeed(h.Drum)}
	for i, s := range h.Train.Stages {
		if s.Kind != lift.StageBox && !s.Rated.Is { // those with a rating are bought by it
			out = append(out, stageNeed(i, s))
		}
	}
	if h.Reeving.LeadSheaves.Is && h.Reeving.LeadSheaves.Val > 0 || h.Structure.Beam.Kind != "" {
		out = append(out, beamNeed(h.Structure.Beam))
	}
	for i, p := range h.Structure.Posts {
		out = append(out, postNeed(i, p))
	}
	if h.Base.Where != lift.BaseOnBeam && h.Base.Where != lift.BaseOnWall {
		out = append(out, baseNeed(h.Base))
	}
	return out
}

// sized keeps the sizes that are given: at least one, so that what is not known is said.
func sized(s ...Size) []Size {
	out := slices.DeleteFunc(slices.Clone(s), func(x Size) bool { return !x.Value.Is && x.Text == "" })
	if len(out) == 0 {
		return s[:1]
	}
	return out
}

func drumNeed(d lift.Drum) Need {
	return Need{As: cost.AsDrum, Name: "Drum on its shaft", Of: cost.OfStore, Make: true, Count: 1, Sizes: append([]Size{
		{Name: "bare drum, diameter", Value: ratio(d.Diameter), Unit: unit.Metres, Tape: true}, {Name: "between the flanges", Value: ratio(d.Width), Unit: unit.Metres, Tape: true}},
		given(Size{Name: "flanges, across", Value: ratio(d.Flange), Unit: unit.Metres, Tape: true}, Size{Name: "turns that stay on", Value: ratio(d.DeadWraps), Unit: unit.Pieces},
			Size{Name: "hub", Text: string(d.HubMaterial)}, Size{Name: "hub, across", Value: ratio(d.HubOuter), Unit: unit.Metres}, Size{Name: "hub on the shaft by", Text: string(d.HubFit)},
			Size{Name: "shaft, across", Value: ratio(d.ShaftDiameter), Unit: unit.Metres}, Size{Name: "between its bearings", Value: ratio(d.BearingSpan), Unit: unit.Metres},
			Size{Name: "cross pin, across", Value: ratio(d.PinDiameter), Unit: unit.Metres}, Size{Name: "key, wide", Value: ratio(d.KeyWidth), Unit: unit.Metres}, Size{Name: "key, long", Value: ratio(d.KeyLength), Unit: unit.Metres})...)}
}

// given keeps the sizes that are known.
func given(s ...Size) []Size {
	return slices.DeleteFunc(s, func(x Size) bool { return !x.Value.Is && x.Text == "" })
}

func stageNeed(i int, s lift.Stage) Need {
	n := Need{As: cost.AsGear, Name: fmt.Sprintf("Gear stage %d", i+1), Of: cost.OfStore, Count: 1, Make: s.Tooth.Material == lift.ToothPrinted}
	if i == 0 {
		n.Name += ", at the motor"
	}
	n.Sizes = sized(Size{Name: "ratio, turns in for one out", Value: ratio(s.Ratio), Unit: unit.Pieces}, Size{Name: "kind", Text: string(s.Kind)},
		Size{Name: "sun gear, teeth", Value: ratio(s.SunTeeth), Unit: unit.Pieces}, Size{Name: "planet, teeth", Value: ratio(s.PlanetTeeth), Unit: unit.Pieces}, Size{Name: "ring, teeth", Value: ratio(s.RingTeeth), Unit: unit.Pieces},
		Size{Name: "planets", Value: ratio(s.Planets), Unit: unit.Pieces}, Size{Name: "module", Value: ratio(s.Tooth.Module), Unit: unit.Metres}, Size{Name: "width of the teeth", Value: ratio(s.Tooth.FaceWidth), Unit: unit.Metres},
		Size{Name: "teeth of", Text: string(s.Tooth.Material)}, Size{Name: "layers", Text: string(s.Tooth.Layers)})
	return n
}

func beamNeed(b lift.Beam) Need {
	return Need{As: cost.AsBeam, Name: "Beam", Of: cost.OfStore, Make: true, Count: 1, Sizes: sized(
		Size{Name: "span", Value: ratio(b.Span), Unit: unit.Metres, Tape: true}, Size{Name: "kind", Text: string(b.Kind)}, Size{Name: "class, stamped on it", Text: string(b.Class)},
		Size{Name: "wide", Value: ratio(b.Width), Unit: unit.Metres, Tape: true}, Size{Name: "height of the section", Value: ratio(b.Depth), Unit: unit.Metres, Tape: true}, Size{Name: "wall", Value: ratio(b.Wall), Unit: unit.Metres},
		Size{Name: "length on the support, each end", Value: ratio(b.Bearing), Unit: unit.Metres, Tape: true}, Size{Name: "largest hole", Value: ratio(b.Hole), Unit: unit.Metres})}
}

func postNeed(i int, p lift.Post) Need {
	return Need{As: cost.AsPost, Name: fmt.Sprintf("Post %d", i+1), Of: cost.OfStore, Make: true, Count: 1, Sizes: sized(
		Size{Name: "free height", Value: ratio(p.Height), Unit: unit.Metres, Tape: true}, Size{Name: "kind", Text: string(p.Kind)}, Size{Name: "class, stamped on it", Text: string(p.Class)},
		Size{Name: "smaller side", Value: ratio(p.Width), Unit: unit.Metres, Tape: true}, Size{Name: "larger side", Value: ratio(p.Depth), Unit: unit.Metres, Tape: true}, Size{Name: "wall", Value: ratio(p.Wall), Unit: unit.Metres},
		Size{Name: "ends held", Text: string(p.Fixing)}, Size{Name: "area of its foot", Value: ratio(p.FootArea), Unit: unit.SquareMetres})}
}

func baseNeed(b lift.Base) Need {
	return Need{As: cost.AsBaseBoard, Name: "Base board", Of: cost.OfStore, Make: true, Count: 1, Sizes: sized(
		Size{Name: "thickness", Value: ratio(b.Board.Thickness), Unit: unit.Metres}, Size{Name: "width, across the bending", Value: ratio(b.Board.Width), Unit: unit.Metres, Tape: true},
		Size{Name: "from the drum's screws to the nearest weight", Value: ratio(b.Board.Arm), Unit: unit.Metres, Tape: true}, Size{Name: "base, wide in the direction of the pull", Value: ratio(b.Width), Unit: unit.Metres, Tape: true},
		Size{Name: "height where the rope leaves", Value: ratio(b.PullHeight), Unit: unit.Metres, Tape: true})}
}
