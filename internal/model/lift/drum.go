package lift

import (
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// How far a layer of rope rises on the drum, in rope diameters: torque is counted as if each layer lay on top of the
// one below, length, speed and energy as if it sank into its grooves (common practice).
const (
	RiseTorque = 1.0
	RiseLength = 0.87
)

// mostLayers is where winding stops being a drum. More is not computed.
const mostLayers = 200

// leastDeadWraps are the turns that stay on the drum where the design does not say (common practice: three).
const leastDeadWraps = 3

// LayerRadius returns the radius of the rope's middle in layer j = 1, 2, …: (D + d)/2 + λ·d·(j − 1).
func LayerRadius(drum, rope unit.Length, rise float64, j int) unit.Length {
	return (drum+rope)/2 + unit.Length(rise*float64(j-1))*rope
}

// Wraps returns how many turns lie side by side in a layer.
func Wraps(width, rope unit.Length) int {
	// a width of ten ropes must give ten: 0.06/0.006 is not exactly 10
	return int(math.Min(math.Floor(float64(width/rope)+1e-9), 1e9))
}

// layer is a layer of rope that the travel uses: its radii and its share of the travel.
type layer struct {
	torque, length, share float64
}

// layersOf returns the layers that a travel of rope uses after the dead turns, first used first: the radius for torque,
// the radius for length, the share of the travel. Nil where it takes more than 200.
func layersOf(drum, rope, travel unit.Length, wraps, dead int) []layer {
	var used []layer
	left := float64(travel)
	for j := 1; j <= mostLayers; j++ {
		free := float64(max(0, wraps-dead))
		dead = max(0, dead-wraps)
		l := layer{torque: float64(LayerRadius(drum, rope, RiseTorque, j)), length: float64(LayerRadius(drum, rope, RiseLength, j))}
		here := math.Min(left, free*2*math.Pi*l.length)
		if here > 0 {
			l.share = here / float64(travel)
			used = append(used, l)
		}
		if left -= here; left <= 1e-12*float64(travel) {
			return used
		}
	}
	return nil
}

// winding fills how the rope lies on the drum and the torques at it.
func (w *work) winding() {
	h := w.h
	drum, okD := h.Drum.Diameter.Value()
	rope, okR := h.Rope.Diameter.Value()
	travel, okT := h.Travel.Value()
	if !okD {
		w.lack("drum.diameter_m", "torque, speed and current")
	}
	if !okR {
		w.lack("rope.diameter_m", "torque, speed and current")
	}
	if !okT {
		w.lack("travel_m", "energy, times and the rope on the drum")
	}
	w.travel = float64(travel)
	if okT && w.n > 0 {
		w.d.Winding.Wound = unit.Of(unit.Length(float64(w.n) * w.travel))
	}
	if okD && okR {
		if drum < rope {
			w.caution("drum.diameter_m", "The drum is thinner than its rope. Rope does not bend like that: it breaks early and winds badly.")
		}
		w.layers = w.wind(drum, rope)
	}
	w.ropeAtHand(drum, rope, okD && okR)
	if len(w.layers) == 0 || !w.haveRope {
		return
	}
	w.fullest().torques(w)
}

// fullest is the layer that is wound with the mass at the top.
func (w *work) fullest() layer { return w.layers[len(w.layers)-1] }

// torques sets what the drum feels in this layer.
func (l layer) torques(w *work) {
	w.d.DrumTorqueUp = told[unit.Torque](w.drumUp(l.torque))
	w.d.DrumTorqueDown = told[unit.Torque](w.drumDown(l.torque))
}

func (w *work) drumUp(r float64) float64   { return w.fUp*r + w.bearing }
func (w *work) drumDown(r float64) float64 { return w.fDown*r - w.bearing }

// wind lays the rope on the drum. With no width it is one layer, and that is said.
func (w *work) wind(drum, rope unit.Length) []layer {
	win := &w.d.Winding
	first := layer{torque: float64(LayerRadius(drum, rope, RiseTorque, 1)), length: float64(LayerRadius(drum, rope, RiseLength, 1)), share: 1}
	win.RadiusFirst, win.RadiusLast = unit.Of(unit.Length(first.torque)), unit.Of(unit.Length(first.torque))
	width, ok := w.h.Drum.Width.Value()
	if !ok {
		w.lack("drum.width_m", "how many layers the rope lies in; one is assumed")
		return []layer{first}
	}
	if !win.Wound.Is {
		return []layer{first}
	}
	win.WrapsPerLayer = Wraps(width, rope)
	if win.WrapsPerLayer < 1 {
		win.Fits = unit.No
		w.caution("drum.width_m", "The drum is narrower than its rope.")
		return nil
	}
	dead, okDead := w.h.Drum.DeadWraps.Value()
	if !okDead {
		w.lack("drum.dead_wraps", "whether the drum holds the rope; three turns are assumed")
		dead = leastDeadWraps
	}
	used := layersOf(drum, rope, win.Wound.Val, win.WrapsPerLayer, int(dead))
	if used == nil {
		win.Fits = unit.No
		w.caution("drum.width_m", "The rope would lie in more than %s layers. This drum is far too small.", mostLayers)
		return nil
	}
	w.fit(drum, rope, used, okDead)
	return used
}

// fit says how many layers stand on the drum with the mass at the top, and whether they fit under the flange.
func (w *work) fit(drum, rope unit.Length, used []layer, deadKnown bool) {
	win := &w.d.Winding
	last := used[len(used)-1]
	win.Layers = 1 + int(math.Round((last.torque-float64(drum+rope)/2)/float64(rope)))
	win.RadiusFirst, win.RadiusLast = unit.Of(unit.Length(used[0].torque)), unit.Of(unit.Length(last.torque))
	flange, ok := w.h.Drum.Flange.Value()
	switch {
	case !deadKnown:
	case ok && float64(flange)/2 < last.torque+float64(rope)/2:
		win.Fits = unit.No
		w.caution("drum.flange_diameter_m", "The rope does not fit on the drum: it needs flanges of at least %s.", say.Width(unit.Length(2*last.torque)+rope).Up())
	case ok || win.Layers == 1:
		win.Fits = unit.Yes
	default:
		w.lack("drum.flange_diameter_m", "whether the drum holds the rope")
	}
	if win.Layers > 1 {
		w.caution("drum.width_m", "The rope lies in %s layers: torque, current and speed change on the way. One layer is steadier.", win.Layers)
	}
}

// ropeAtHand says how much rope it takes at the least: the dead turns, the lead line, the parts at the mass.
func (w *work) ropeAtHand(drum, rope unit.Length, sizes bool) {
	wound, ok := w.d.Winding.Wound.Value()
	if !ok {
		return
	}
	have, haveLength := w.h.Rope.Length.Value()
	need := wound
	if lead, known := w.leadLine(); known && sizes && w.h.Drum.DeadWraps.Is {
		turns := unit.Length(w.h.Drum.DeadWraps.Val) * math.Pi * (drum + rope)
		need = turns + lead + wound
		w.d.Winding.RopeNeeded = unit.Of(need)
	}
	if haveLength && have < need {
		w.caution("rope.length_m", "The rope is too short: at least %s are needed, there are %s.", say.Distance(need).Up(), say.Distance(have).Down())
	}
}

// leadLine is the rope between drum and head pulley, where the design tells it.
func (w *work) leadLine() (unit.Length, bool) {
	switch {
	case w.k == 0 || w.h.Base.Where == BaseOnBeam:
		return 0, true
	case w.h.Base.Where == BaseOnGround && w.h.Structure.HeadHeight.Is:
		return w.h.Structure.HeadHeight.Val, true
	}
	return 0, false
}
