package ready

import (
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// toughest is the greatest strength that a material of teeth and hubs has, Pa: hardened steel, bronze, ductile iron, filled
// plastics, a printed part of the best filament along its layers, hard wood along its grain (all from memory, rounded up).
var toughest = map[string]unit.Stress{
	string(lift.ToothSteel): 2500e6, string(lift.ToothBrass): 900e6, string(lift.ToothCastIron): 1600e6,
	string(lift.ToothPOM): 150e6, string(lift.ToothNylon): 250e6, string(lift.ToothPrinted): 120e6,
	string(lift.HubAluminium): 750e6, string(lift.HubWood): 200e6,
}

// strongest is the greatest breaking load over the square of the diameter that a rope of its kind has, N/m²: a polyester
// rope of 12 mm breaks at 30 to 40 kN, one of polyethylene at up to 200, a compacted wire rope at up to 130 (from memory,
// rounded up).
var strongest = map[lift.RopeKind]unit.Stress{
	lift.RopePolyester: 300e6, lift.RopeNylon: 350e6, lift.RopePolypropylene: 220e6,
	lift.RopeHMPE: 1600e6, lift.RopeOtherFibre: 1600e6, lift.RopeWire: 1000e6,
}

// impossible are strengths that no part of its material has: one of the two answers is wrong.
func impossible(h lift.Hoist) []reason.Reason {
	var out []reason.Reason
	add := func(path, beside string, s say.Sentence) {
		out = append(out, reason.Reason{ID: "contradiction", Word: reason.NotKnown, Path: path, Beside: beside, Clears: reason.Answer, Say: s,
			Mend: say.That("Look at the label again, and correct the wrong one."), Source: source.FromMemory.At("greatest strength of materials")})
	}
	if most, ok := strongest[h.Rope.Kind]; ok && h.Rope.BreakingLoad.Is && h.Rope.Diameter.Is {
		d := float64(h.Rope.Diameter.Val)
		if float64(h.Rope.BreakingLoad.Val) > float64(most)*d*d {
			add("rope.breaking_load_n", "rope.diameter_m", say.That("Two answers contradict each other: no rope of this kind and thickness breaks only at %s.", say.Force(h.Rope.BreakingLoad.Val)))
		}
	}
	for i, s := range h.Train.Stages {
		if most, ok := toughest[string(s.Tooth.Material)]; ok && s.Tooth.Strength.Is && s.Tooth.Strength.Val > most {
			add(fmt.Sprintf("train.stages[%d].tooth.strength_pa", i), fmt.Sprintf("train.stages[%d].tooth.material", i), say.That("Two answers contradict each other: the material of the teeth in gear stage %s, and their strength.", i+1))
		}
	}
	if most, ok := toughest[string(h.Drum.HubMaterial)]; ok && h.Drum.HubAllow.Is && h.Drum.HubAllow.Val > most {
		add("drum.hub_strength_pa", "drum.hub_material", say.That("Two answers contradict each other: the material of the drum's hub, and its strength."))
	}
	return out
}
