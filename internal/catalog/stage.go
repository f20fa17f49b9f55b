package catalog

import (
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// Stage is a typical gear stage at full load. Strength of its teeth is never typical.
type Stage struct {
	From
	Name       string
	Kind       lift.StageKind // the word of the design: "planetary"
	Efficiency unit.Ratio
	Low, High  unit.Ratio // the range met; the same as Efficiency where none is given
	Idle       unit.Ratio // torque to turn it empty, as a share of its rated input torque
	Breakaway  unit.Ratio // loss torque at rest over loss torque running
}

// Take copies the row into a design. Ratio and rated torque at the output are the user's own; one that is not known
// leaves what stands there. The idle torque is the row's share of the rated torque at the input, T_out/(r·η); without
// ratio and rating it is not known. Another kind of stage drops what the old one had.
func (s Stage) Take(into *lift.Stage, ratio unit.Known[unit.Ratio], rated unit.Known[unit.Torque]) Taken {
	var t Taken
	if into.Kind != s.Kind {
		kept := into.Ratio
		*into = lift.Stage{Ratio: kept}
		t.Gone = append(t.Gone, "rated_torque_nm", "stages_inside", "sun_teeth", "planet_teeth", "ring_teeth", "planets", "pressure_angle_rad", "tooth")
	}
	gone(&t, &into.Backward, "backward_efficiency")
	gone(&t, &into.MeshEff, "mesh_efficiency")
	gone(&t, &into.LeadAngle, "lead_angle_rad")
	gone(&t, &into.Friction, "friction")
	gone(&t, &into.IdleTorque, "idle_torque_nm")
	copied(&t, &into.Kind, s.Kind, "kind")
	copied(&t, &into.Efficiency, unit.Of(s.Efficiency), "efficiency")
	if ratio.Is {
		own(&t, &into.Ratio, ratio, "ratio")
	}
	if rated.Is {
		own(&t, &into.Rated, rated, "rated_torque_nm")
	}
	if into.Rated.Is && into.Ratio.Is && into.Ratio.Val > 0 {
		in := float64(into.Rated.Val) / (float64(into.Ratio.Val) * float64(s.Efficiency))
		copied(&t, &into.IdleTorque, unit.Of(unit.Torque(float64(s.Idle)*in)), "idle_torque_nm")
	}
	return t
}

// usualBreakaway is the first push that the model takes where none is known; a row with a higher one sets it.
const usualBreakaway unit.Ratio = 1.5

func (s Stage) takeHoist(h *lift.Hoist, i int, c Choice) Taken {
	t := s.Take(&h.Train.Stages[i], c.Ratio, c.Rated).within(fmt.Sprintf("train.stages[%d]", i))
	if !h.Train.Breakaway.Is && s.Breakaway > usualBreakaway {
		copied(&t, &h.Train.Breakaway, unit.Of(s.Breakaway), "train.breakaway")
	}
	return t
}

// Stages returns typical stages. Friction wheels and belts never stand between the mass and its brake.
func Stages() []Stage {
	of := func(note string) From { return typicalOf("a stage of this kind", note) }
	never := "Never between the mass and its brake."
	return []Stage{
		{of(""), "Metal spur wheels on ball bearings", lift.StageSpur, 0.97, 0.94, 0.98, 0.01, 1.3},
		{of(""), "Planetary, metal", lift.StagePlanetary, 0.95, 0.95, 0.95, 0.02, 1.3},
		{of(""), "Planetary in a small gear motor", lift.StagePlanetary, 0.90, 0.90, 0.90, 0.05, 1.5},
		{readNote("course notes on a plastic planetary kit: 85 % a stage, varies widely; idle torque and first push from memory", ""), "Planetary, moulded plastic", lift.StagePlanetary, 0.85, 0.85, 0.85, 0.05, 1.6},
		{of(""), "Printed spur wheels, greased", lift.StageSpur, 0.88, 0.80, 0.93, 0.04, 1.6},
		{typicalOf("two printed meshes, with the ring held, 5:1 (VDI 2157)", ""), "Printed planetary, greased", lift.StagePlanetary, 0.82, 0.71, 0.89, 0.05, 1.6},
		{readNote("measured printed strain-wave gears of 20:1: 48 to 58 %; idle torque and first push from memory", "Usually stays stuck."), "Printed strain wave", lift.StageStrainWave, 0.55, 0.48, 0.60, 0.08, 1.8},
		{of("Often stays stuck."), "Printed cycloid", lift.StageCycloid, 0.70, 0.65, 0.75, 0.08, 1.8},
		{of("It does not turn back under load."), "Worm with one start, lead 3 to 5°", lift.StageWorm, 0.50, 0.40, 0.60, 0.04, 1.5},
		{of(""), "Worm with 2 to 4 starts, lead 10 to 20°", lift.StageWorm, 0.76, 0.70, 0.82, 0.04, 1.5},
		{of(never), "Toothed belt", lift.StageBelt, 0.97, 0.93, 0.97, 0.02, 1.2},
		{of(never), "V-belt", lift.StageBelt, 0.92, 0.92, 0.92, 0.04, 1.2},
		{of(never), "Round belt", lift.StageBelt, 0.85, 0.85, 0.85, 0.06, 1.2},
		{of("Without oil its efficiency falls to 0.92."), "Roller or bicycle chain, clean", lift.StageChain, 0.97, 0.92, 0.97, 0.01, 1.2},
		{of(""), "Bevel wheels", lift.StageBevel, 0.95, 0.95, 0.95, 0.02, 1.3},
	}
}
