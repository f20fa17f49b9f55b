package parts

import "slices"

// idea are the inputs that are asked for already while the plan is only an idea.
var idea = []string{
	"mass[].mass_kg", "travel_m", "rope.kind", "rope.diameter_m", "reeving.rope_parts", "reeving.lead_sheaves", "structure.hanger_kind",
	"structure.rests_on", "drum.diameter_m", "train.stages[].kind", "train.stages[].ratio", "machine.sheet_voltage_v", "machine.sheet_no_load_speed_rad_s",
}

// Idea reports whether an input is asked for already while the plan is only an idea; of a part that has none of those its
// first input is.
func (p Part) Idea(path string) bool {
	all := everyRow(path)
	if slices.Contains(idea, all) {
		return true
	}
	for _, f := range p.First {
		if slices.Contains(idea, everyRow(f)) {
			return false
		}
	}
	return len(p.First) > 0 && (p.First[0] == path || p.First[0] == all)
}
