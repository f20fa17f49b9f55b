package catalog

import (
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Eyebolt is a forged eye bolt with its working loads.
type Eyebolt struct {
	From
	Size     string
	Straight unit.Force // in line with its shank
	At45     unit.Force // the standard's column for two strands at 45°
}

// Take makes the bolt what holds the top pulley.
func (e Eyebolt) Take(into *lift.Structure, wasRead bool) Taken {
	return takeHanger(into, e.From, lift.HangerShoulderEyebolt, e.Straight, wasRead)
}

// takeHanger puts a part in the place of what holds the top pulley.
func takeHanger(into *lift.Structure, f From, kind lift.HangerKind, straight unit.Force, wasRead bool) Taken {
	var t Taken
	copied(&t, &into.HangerKind, kind, "hanger_kind")
	strength(&t, f, wasRead, &into.HangerRating, unit.Of(straight), "hanger_working_load_n")
	return t
}

// takeEye makes a part the eye on the mass.
func takeEye(into *lift.Container, f From, straight unit.Force, wasRead bool) Taken {
	var t Taken
	strength(&t, f, wasRead, &into.EyeRating, unit.Of(straight), "eye_working_load_n")
	return t
}

// Eyebolts returns the lifting eye bolts of DIN 580, factor 6.
func Eyebolts() []Eyebolt {
	var out []Eyebolt
	for _, r := range []struct {
		size     string
		axial, f unit.Mass
	}{{"M8", 140, 100}, {"M10", 230, 170}, {"M12", 340, 240}, {"M16", 700, 500}, {"M20", 1200, 860}, {"M24", 1800, 1290}} {
		out = append(out, Eyebolt{
			From: readNote("DIN 580, Lifting eye bolts, annex A, table A.1", "The value is for a bolt that is screwed into steel, down to its collar. A bolt without a collar may not be pulled from the side at all."),
			Size: r.size, Straight: r.axial.Weight(), At45: r.f.Weight(),
		})
	}
	return out
}

// Shackle is a shackle with its working load, straight.
type Shackle struct {
	From
	Size     string
	Diameter unit.Length // of the bow
	Straight unit.Force
}

// Take makes the shackle what holds the top pulley.
func (s Shackle) Take(into *lift.Structure, wasRead bool) Taken {
	return takeHanger(into, s.From, lift.HangerShackle, s.Straight, wasRead)
}

// Shares of the straight working load that a shackle keeps when it is pulled from the side.
const (
	ShackleAt45 = 0.7
	ShackleAt90 = 0.5
)

// Shackles returns carbon-steel shackles, factor 6.
func Shackles() []Shackle {
	var out []Shackle
	for _, r := range []struct {
		size  string
		d     unit.Length
		tonne unit.Mass
	}{{"1/4 inch", unit.Inch / 4, 0.5}, {"5/16 inch", unit.Inch * 5 / 16, 0.75}, {"3/8 inch", unit.Inch * 3 / 8, 1}, {"1/2 inch", unit.Inch / 2, 2}, {"5/8 inch", unit.Inch * 5 / 8, 3.25}} {
		out = append(out, Shackle{
			From: labelled("rigging makers' tables of carbon-steel shackles, factor 6", "Use only a shackle with its load stamped on it. Pulled from the side at 45° it keeps 70 % of that load, at 90° half."),
			Size: r.size, Diameter: r.d, Straight: (r.tonne * unit.Tonne).Weight(),
		})
	}
	return out
}

// Pulley is a typical efficiency of a pulley; its strength is never typical.
type Pulley struct {
	From
	Name       string
	Efficiency unit.Ratio
	Diameter   unit.Length // 0: not given
}

// Take copies the row into one pulley. A pulley of another size is another pulley: its label goes with the old one.
func (p Pulley) Take(into *lift.Sheave) Taken {
	var t Taken
	if d := unit.Of(p.Diameter); p.Diameter > 0 && into.Diameter != d {
		if into.Diameter.Is {
			gone(&t, &into.Rating, "working_load_n")
			gone(&t, &into.RatingOf, "rating_of")
		}
		copied(&t, &into.Diameter, d, "diameter_m")
	}
	copied(&t, &into.Efficiency, unit.Of(p.Efficiency), "efficiency")
	return t
}

func (p Pulley) takeHoist(h *lift.Hoist, i int) Taken {
	return p.Take(&h.Reeving.Sheaves[i]).within(fmt.Sprintf("reeving.sheaves[%d]", i))
}

// Pulleys returns typical efficiencies of one pulley with its rope.
func Pulleys() []Pulley {
	return []Pulley{
		{typicalOf("fibre rope on small pulleys", "Measured: 0.83 for a pulley of {25 mm} with rope of {9 mm}."), "Fibre rope, pulley of {25 mm}", 0.82, 25 * unit.Millimetre},
		{typicalOf("fibre rope on small pulleys", ""), "Fibre rope, pulley of {50 mm}", 0.87, 50 * unit.Millimetre},
		{typicalOf("fibre rope on a ball bearing", ""), "Fibre rope, pulley of {100 mm} on a ball bearing", 0.92, 100 * unit.Millimetre},
		{readNote("load-cell tests of rescue pulleys", "A carabiner is no pulley: half of the pull is lost and the rope wears."), "Rope over a carabiner", 0.53, 0},
		{readNote("wire-rope maker's handbook: rolling bearing", "With a pulley of at least 18 rope diameters."), "Wire rope, rolling bearing", 0.98, 0},
		{readNote("Wire Rope Technical Board, Wire Rope Users Manual: 1.04 for each pulley on rolling bearings", "With a pulley of at least 18 rope diameters."), "Wire rope, rolling bearing, the careful figure", 0.96, 0},
		{readNote("Wire Rope Technical Board, Wire Rope Users Manual: 1.09 for each pulley on plain bearings", "With a pulley of at least 18 rope diameters."), "Wire rope, plain bush, the careful figure", 0.917, 0},
		{typicalOf("wire rope on a plain bearing", "With a pulley of at least 18 rope diameters."), "Wire rope, plain bush", 0.95, 0},
	}
}
