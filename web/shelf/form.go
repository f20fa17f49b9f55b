package shelf

import (
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// ShelfForm is every part on the shelf: the inputs of a part are those of the page Lifted mass.
func ShelfForm() []form.Part[model.Shelf] {
	type s = model.Shelf
	return []form.Part[s]{
		form.Rows("motors", "Motors", "motor", model.MostSpares, func(s *s) *[]lift.Machine { return &s.Motors }, lift.Machine{}, without(page.MachineForm(), "i0_measured_with_gear")...),
		form.Rows("stages", "Gear stages", "kind of stage", model.MostSpares, func(s *s) *[]model.SpareStage { return &s.Stages }, model.SpareStage{},
			append([]form.Part[model.SpareStage]{
				form.Text("name", "Name", func(o *model.SpareStage) *string { return &o.Name }),
				form.Number("count", "How many", unit.Counts, func(o *model.SpareStage) *unit.Known[unit.Count] { return &o.Count }),
			}, form.Within("stage", func(o *model.SpareStage) *lift.Stage { return &o.Stage }, page.StageForm()...)...)...),
		form.Rows("drums", "Drums", "drum", model.MostSpares, func(s *s) *[]model.SpareDrum { return &s.Drums }, model.SpareDrum{},
			append([]form.Part[model.SpareDrum]{form.Text("name", "Name", func(o *model.SpareDrum) *string { return &o.Name })},
				form.Within("drum", func(o *model.SpareDrum) *lift.Drum { return &o.Drum },
					append(without(page.DrumForm(), "dead_wraps", "fleet_angle_rad"), form.Folded("Shaft, hub and coupling", "", page.ShaftForm()...))...)...)...),
		form.Rows("ropes", "Ropes", "rope", model.MostSpares, func(s *s) *[]model.SpareRope { return &s.Ropes }, model.SpareRope{},
			append([]form.Part[model.SpareRope]{form.Text("name", "Name", func(o *model.SpareRope) *string { return &o.Name })},
				form.Within("rope", func(o *model.SpareRope) *lift.Rope { return &o.Rope }, page.RopeForm()...)...)...),
		form.Rows("pulleys", "Pulleys", "kind of pulley", model.MostSpares, func(s *s) *[]model.SparePulley { return &s.Pulleys }, model.SparePulley{},
			form.Text("name", "Name", func(o *model.SparePulley) *string { return &o.Name }),
			form.Number("count", "How many", unit.Counts, func(o *model.SparePulley) *unit.Known[unit.Count] { return &o.Count }),
			form.Number("efficiency", "Efficiency", unit.Percents, func(o *model.SparePulley) *unit.Known[unit.Ratio] { return &o.Efficiency }),
			form.Number("diameter_m", "Diameter", unit.SmallLengths, func(o *model.SparePulley) *unit.Known[unit.Length] { return &o.Diameter }),
			form.Number("working_load_n", "Load on its label", unit.Loads, func(o *model.SparePulley) *unit.Known[unit.Force] { return &o.Rating }),
			form.Word("rating_of", "Meaning of the label", func(o *model.SparePulley) *lift.RatingOf { return &o.RatingOf })),
	}
}

// without leaves out some inputs at the top of a form.
func without[T any](parts []form.Part[T], paths ...string) []form.Part[T] {
	return slices.DeleteFunc(parts, func(p form.Part[T]) bool { return p.Input != nil && slices.Contains(paths, p.Input.Path) })
}
