package catalog

import (
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// sampleShelf is the workshop's box of parts, invented: the parts of its hoist, and what else lay there.
func sampleShelf(p model.Project, hoist model.Variant) model.Project {
	p, _ = p.Shelve(hoist, 0)
	s := &p.Shelf
	s.Motors = append(s.Motors, lift.Machine{Name: "12 V, 250 rpm, from a wiper", K: unit.Of[unit.MachineConstant](0.4), R: unit.Of[unit.Resistance](0.9), I0: unit.Of[unit.Current](1.1), MaxCurrent: unit.Of[unit.Current](3)})
	s.Stages = append(s.Stages, model.SpareStage{Name: "Worm 30:1, from a gate", Stage: lift.Stage{Kind: lift.StageWorm, Ratio: unit.Of[unit.Ratio](30), Efficiency: unit.Of[unit.Ratio](0.45)}})
	thin := s.Drums[0]
	thin.Name, thin.Drum.Diameter = "Thin drum", unit.Of(60*unit.Millimetre)
	s.Drums = append(s.Drums, thin)
	s.Ropes = append(s.Ropes, model.SpareRope{Name: "Washing line", Rope: lift.Rope{Kind: lift.RopePolypropylene, Diameter: unit.Of(5 * unit.Millimetre), BreakingLoad: unit.Of(unit.Mass(180).Weight()), Length: unit.Of[unit.Length](20), Ending: lift.EndingBowline}})
	return p
}
