package web

import (
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// shelfForm is every part on the shelf: the inputs of a part are those of the page Lifted mass.
func shelfForm() []part[model.Shelf] {
	type s = model.Shelf
	return []part[s]{
		rows("motors", "Motors", "motor", model.MostSpares, func(s *s) *[]lift.Machine { return &s.Motors }, lift.Machine{}, without(machineForm(), "i0_measured_with_gear")...),
		rows("stages", "Gear stages", "kind of stage", model.MostSpares, func(s *s) *[]model.SpareStage { return &s.Stages }, model.SpareStage{},
			append([]part[model.SpareStage]{
				text("name", "Name", func(o *model.SpareStage) *string { return &o.Name }),
				number("count", "How many", unit.Counts, func(o *model.SpareStage) *unit.Known[unit.Count] { return &o.Count }),
			}, within("stage", func(o *model.SpareStage) *lift.Stage { return &o.Stage }, stageForm()...)...)...),
		rows("drums", "Drums", "drum", model.MostSpares, func(s *s) *[]model.SpareDrum { return &s.Drums }, model.SpareDrum{},
			append([]part[model.SpareDrum]{text("name", "Name", func(o *model.SpareDrum) *string { return &o.Name })},
				within("drum", func(o *model.SpareDrum) *lift.Drum { return &o.Drum },
					append(without(drumForm(), "dead_wraps", "fleet_angle_rad"), folded("Shaft, hub and coupling", "", shaftForm()...))...)...)...),
		rows("ropes", "Ropes", "rope", model.MostSpares, func(s *s) *[]model.SpareRope { return &s.Ropes }, model.SpareRope{},
			append([]part[model.SpareRope]{text("name", "Name", func(o *model.SpareRope) *string { return &o.Name })},
				within("rope", func(o *model.SpareRope) *lift.Rope { return &o.Rope }, ropeForm()...)...)...),
		rows("pulleys", "Pulleys", "kind of pulley", model.MostSpares, func(s *s) *[]model.SparePulley { return &s.Pulleys }, model.SparePulley{},
			text("name", "Name", func(o *model.SparePulley) *string { return &o.Name }),
			number("count", "How many", unit.Counts, func(o *model.SparePulley) *unit.Known[unit.Count] { return &o.Count }),
			number("efficiency", "Efficiency", unit.Percents, func(o *model.SparePulley) *unit.Known[unit.Ratio] { return &o.Efficiency }),
			number("diameter_m", "Diameter", unit.SmallLengths, func(o *model.SparePulley) *unit.Known[unit.Length] { return &o.Diameter }),
			number("working_load_n", "Load on its label", unit.Loads, func(o *model.SparePulley) *unit.Known[unit.Force] { return &o.Rating }),
			word("rating_of", "The label means", func(o *model.SparePulley) *string { return &o.RatingOf })),
	}
}

// without leaves out some inputs at the top of a form.
func without[T any](parts []part[T], paths ...string) []part[T] {
	return slices.DeleteFunc(parts, func(p part[T]) bool { return p.input != nil && slices.Contains(paths, p.input.path) })
}
