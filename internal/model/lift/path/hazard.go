package path

import (
	"math"
	"slices"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// carMass is the car of the plain comparison, kg.
const carMass = 1500

// Hazards is what the hoist can do to people and things, and what is to be asked and said. A figure whose inputs are
// not known is not known; Missing names them.
type Hazards struct {
	DropEnergy unit.Known[unit.Energy] // m·g·h, also what still hangs there after a power cut
	DropSpeed  unit.Known[unit.Speed]  // √(2·g·h), rope or drum gone
	CarSpeed   unit.Known[unit.Speed]  // a car of 1,500 kg with the same energy
	PadForce   unit.Known[unit.Force]  // m·g·(1 + h/d) on a soft landing of depth d

	DropCircle   unit.Known[unit.Length] // half-diagonal of the load + max(1 m, half the lift)
	ToppleRadius unit.Known[unit.Length] // height of the frame + half the width of the load
	SwingRadius  unit.Known[unit.Length] // swing of the free mass by 20°, or as far as a storm leans it, + half its width
	WindLean     unit.Known[unit.Angle]  // outdoors: how far a storm of 35 m/s leans the hanging mass
	RecoilLine   unit.Known[unit.Length] // how far a breaking rope may whip, in line with it
	KeepOut      unit.Known[unit.Length] // the largest of the circles; nobody inside while the mass is off its stop
	AtLeast      bool                    // KeepOut is a lower bound: a size is missing

	UnderFloor string // what the room or ground below means, in words
	ComesDown  string // how it comes down without power: the user's words, or "not known"

	Questions   []Question
	Round       []Question
	Cautions    []Caution
	SwitchOrder []string
	Missing     []string
}

// HazardsOf works out the hazards of a hoist.
func HazardsOf(h lift.Hoist, d lift.Drive) Hazards {
	z := Hazards{
		Questions: questions(h), Round: round(h), Cautions: cautions(h, d), SwitchOrder: switchOrder(h),
		UnderFloor: underFloor(h.Site), ComesDown: orElse(h.Site.ComesDown, "not known"),
	}
	z.drop(h, d)
	z.circles(h, d)
	return z
}

func (z *Hazards) drop(h lift.Hoist, d lift.Drive) {
	m, okM := d.Mass.Value()
	t, okT := h.Travel.Value()
	if !okT {
		z.Missing = append(z.Missing, "travel_m")
	} else {
		z.DropSpeed = unit.Of(unit.Speed(FallSpeed(float64(t))))
	}
	if !okM {
		z.Missing = append(z.Missing, "mass")
	}
	if !okM || !okT {
		return
	}
	e := float64(m) * unit.G * float64(t)
	z.DropEnergy = unit.Of(unit.Energy(e))
	z.CarSpeed = unit.Of(unit.Speed(math.Sqrt(2 * e / carMass)))
	if p, ok := h.Site.PadDepth.Value(); !ok {
		z.Missing = append(z.Missing, "site.pad_depth_m")
	} else if f := PadForce(float64(m), float64(t), float64(p)); finite(f) {
		z.PadForce = unit.Of(unit.Force(f))
	}
}

// FallSpeed is the speed after a free fall of h metres, √(2·g·h).
func FallSpeed(h float64) float64 { return math.Sqrt(2 * unit.G * max(0, h)) }

// PadForce is the mean force on a pad that gives way by d under m falling from h: m·g·(1 + h/d). +Inf where nothing
// gives way.
func PadForce(m, h, d float64) float64 {
	if d <= 0 {
		return math.Inf(1)
	}
	return m * unit.G * (1 + h/d)
}

// circles are our own judgement; no standard was found for them.
func (z *Hazards) circles(h lift.Hoist, d lift.Drive) {
	t, okT := h.Travel.Value()
	w, okW := h.Site.LoadWidth.Value()
	if !okW {
		z.Missing = append(z.Missing, "site.load_width_m")
		z.AtLeast = true
	}
	if okT {
		z.DropCircle = unit.Of(unit.Length(halfDiagonal(float64(w), float64(h.Site.LoadHeight.Or(0))) + max(1, float64(t)/2)))
		z.lean(h, d)
		swing := math.Max(20*math.Pi/180, float64(z.WindLean.Or(0)))
		z.SwingRadius = unit.Of(unit.Length(float64(t)*math.Sin(swing) + float64(w)/2))
	}
	frame, okF := h.Site.FrameHeight.Value()
	if head, ok := h.Structure.HeadHeight.Value(); ok { // what contradicts counts as the larger
		frame, okF = max(frame, head), true
	}
	switch {
	case okF:
		z.ToppleRadius = unit.Of(frame + w/2)
	case okT: // the frame is at least as high as the lift
		z.Missing = append(z.Missing, "site.frame_height_m")
		z.AtLeast = true
		z.ToppleRadius = unit.Of(t + h.Site.LoadHeight.Or(0) + w/2)
	}
	z.RecoilLine = h.Rope.Length
	for _, r := range []unit.Known[unit.Length]{z.DropCircle, z.ToppleRadius, z.SwingRadius} {
		if r.Is && (!z.KeepOut.Is || r.Val > z.KeepOut.Val) {
			z.KeepOut = r
		}
	}
}

// stormPressure is the push of a wind of 35 m/s on a square metre, Pa: ½·1.225·35²·1.3 (air at 15 °C; drag of a block
// from memory), about 1 kN.
const stormPressure = 0.5 * 1.225 * 35 * 35 * 1.3

// lean is atan(p·A/(m·g)) for a mass that hangs outdoors; not known counts as outdoors.
func (z *Hazards) lean(h lift.Hoist, d lift.Drive) {
	w, okW := h.Site.LoadWidth.Value()
	y, okY := h.Site.LoadHeight.Value()
	m, okM := d.Mass.Value()
	if h.Site.Outdoors == unit.No || !okM || m <= 0 {
		return
	}
	if !okW || !okY {
		z.AtLeast = true
		return
	}
	z.WindLean = unit.Of(unit.Angle(math.Atan(stormPressure * float64(w*y) / (float64(m) * unit.G))))
}

// halfDiagonal is the larger half-diagonal of a load of square plan, seen from above or from the side.
func halfDiagonal(w, h float64) float64 { return max(w*math.Sqrt2, math.Hypot(w, h)) / 2 }

func underFloor(s lift.Site) string {
	switch s.FloorBelow {
	case lift.FloorSolidGround:
		return "Solid ground is under the floor."
	case lift.FloorCellar, lift.FloorRoom:
		return "There is a room under the floor. It belongs to the keep-out: nobody may be in it while the mass is up."
	case lift.FloorPipesOrTank:
		return "There are pipes or a tank under the floor. A falling mass breaks them: spread the blow, or use another place."
	}
	return "What is under the floor is not known. Treat it as a room where somebody may be."
}

// switchOrder is the order for the one changeover switch: break before make.
func switchOrder(h lift.Hoist) []string {
	drop, up := "", ""
	if slices.ContainsFunc(h.Holds.Holds, func(o lift.Hold) bool { return o.Kind == lift.HoldRatchet }) {
		drop, up = ", let the pawl drop", ". Lift the ratchet's pawl and hold it up"
	}
	return []string{
		"One changeover switch, centre off: sun – off – lamps. Sun and lamps are never on the motor together.",
		"To lift: brake set, switch to off, wait until it is at rest, switch to sun, then free the brake.",
		"To stop: set the brake" + drop + ", then switch to off.",
		"To lower: brake set, switch to off, check that the resistor or clamp is there, switch to lamps" + up + ", then free the brake.",
		"At the end: brake set" + drop + ", switch to off, lock the switch.",
	}
}
