package ready

import (
	"testing"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

func m(x float64) unit.Known[unit.Length] { return unit.Of(unit.Length(x)) }

// room is a hoist whose sizes are round numbers: 3 m of travel, a mass of 0.5 m height and 0.4 m width, 0.2 m of pad, 0.5 m
// of room above, a top pulley of 0.2 m, two posts of 0.12 m, indoors.
func room() lift.Hoist {
	var h lift.Hoist
	h.Travel = m(3)
	h.Site = lift.Site{LoadHeight: m(0.5), LoadWidth: m(0.4), PadDepth: m(0.2), Outdoors: unit.No}
	h.Holds.RoomAbove = m(0.5)
	h.Reeving = lift.Reeving{LeadSheaves: unit.Of[unit.Count](1), Sheaves: []lift.Sheave{{Diameter: m(0.2)}}}
	h.Structure = lift.Structure{HeadHeight: m(5), RestsOn: lift.RestsOnOwnPostsOnGround, LeadAngle: unit.Of[unit.Angle](0.2),
		Posts: []lift.Post{{Height: m(9), Width: m(0.12)}}, Beam: lift.Beam{From: m(2), Span: m(4)}}
	h.Base = lift.Base{Where: lift.BaseOnGround, PullHeight: m(0), Width: m(0.1)}
	h.Drum = lift.Drum{Diameter: m(0.1), DeadWraps: unit.Of[unit.Count](3)}
	h.Rope = lift.Rope{Diameter: m(0.01), Length: m(100)}
	return h
}

// Geometry a millimetre (a tenth for the width) on either side, by hand from the rule book:
// height 3 + 0.5 + 0.2 of rig that nobody measured + 0.2 + 0.5 + 0.1 = 4.5 m; with a rig of 0.1 m 4.4 m; with two ropes the
// lower block of 0.15 m more.
// posts (4.9 + 0.1)/cos 0.2 = 5.1017 m.
// width 0.71·0.4 + 0.05 + half a post = 0.394 m; outdoors 3·tan 2.5° = 0.13098 m more.
// drive 0.334 + 0.05 = 0.384 m of head·tan 0.2: a head of 1.8943 m.
// rope 5 − 0.9 = 4.1 m down, 5/cos 0.2 = 5.1017 m to the drum, 3½ turns of π·0.11 m = 1.2095: 10.4112 m.
func TestClashBorders(t *testing.T) {
	for _, c := range []struct {
		id          string
		under, over float64
		change      func(h *lift.Hoist, x float64)
	}{
		{"geometry_height", 4.499, 4.5, func(h *lift.Hoist, x float64) { h.Structure.HeadHeight = m(x) }},
		{"geometry_height", 4.399, 4.4, func(h *lift.Hoist, x float64) { h.Structure.HeadHeight, h.Site.Rig = m(x), m(0.1) }},
		{"geometry_height", 4.649, 4.65, func(h *lift.Hoist, x float64) {
			h.Structure.HeadHeight, h.Reeving.RopeParts = m(x), unit.Of[unit.Count](2)
			h.Reeving.Sheaves = append(h.Reeving.Sheaves, lift.Sheave{Diameter: m(0.15)})
		}},
		{"geometry_posts", 5.101, 5.102, func(h *lift.Hoist, x float64) {
			h.Structure.HeadHeight = m(4.9)
			h.Structure.Posts[0] = lift.Post{Height: m(x), Width: m(0.12), Lean: unit.Of[unit.Angle](0.2)}
		}},
		{"geometry_width", 0.3939, 0.394, func(h *lift.Hoist, x float64) { h.Structure.Beam.From = m(x) }},
		{"geometry_width", 0.5249, 0.525, func(h *lift.Hoist, x float64) { h.Structure.Beam.From, h.Site.Outdoors = m(x), unit.Yes }},
		{"geometry_width", 0.7878, 0.788, func(h *lift.Hoist, x float64) {
			h.Structure.Beam.From, h.Structure.Beam.Span = unit.Known[unit.Length]{}, m(x)
		}},
		{"geometry_drive", 1.894, 1.895, func(h *lift.Hoist, x float64) { h.Structure.HeadHeight = m(x) }},
		{"geometry_rope", 10.411, 10.412, func(h *lift.Hoist, x float64) { h.Rope.Length, h.Site.Rig = m(x), m(0.2) }},
	} {
		for x, want := range map[float64]reason.Word{c.under: reason.No, c.over: reason.Yes} {
			h := room()
			c.change(&h, x)
			got := reason.Yes
			for _, k := range Clashes(h) {
				if k.ID == c.id {
					got = k.Word
				}
			}
			if got != want {
				t.Errorf("%s at %g m: %s, want %s", c.id, x, got, want)
			}
		}
	}
}
