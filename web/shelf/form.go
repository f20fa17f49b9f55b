package shelf

import (
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/cell"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// ShelfForm is every part on the shelf: the inputs of a part are those of the pages of a variant that belong to the part
// itself.
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
			form.Number("diameter_m", "Diameter", unit.Widths, func(o *model.SparePulley) *unit.Known[unit.Length] { return &o.Diameter }),
			form.Number("working_load_n", "Load on its label", unit.Loads, func(o *model.SparePulley) *unit.Known[unit.Force] { return &o.Rating }),
			form.Word("rating_of", "Meaning of the label", func(o *model.SparePulley) *lift.RatingOf { return &o.RatingOf })),
		form.Rows("panels", "Panels", "kind of panel", model.MostSpares, func(s *s) *[]model.SparePanel { return &s.Panels }, model.SparePanel{},
			form.Text("name", "Name", func(o *model.SparePanel) *string { return &o.Name }),
			form.Number("count", "How many", unit.Counts, func(o *model.SparePanel) *unit.Known[unit.Count] { return &o.Count }),
			form.Number("panel_w", "Power of one", unit.Powers, func(o *model.SparePanel) *unit.Known[unit.Power] { return &o.Power }, form.Hint[model.SparePanel]("on its label")),
			form.Number("gamma_per_k", "Change with temperature", unit.PerKelvins, func(o *model.SparePanel) *unit.Known[unit.PerKelvin] { return &o.Gamma }, form.Hint[model.SparePanel]("if empty: −0.4 % for each K")),
			form.Folded("From the panel's data sheet", "", form.Within("sheet", func(o *model.SparePanel) *panel.Sheet { return &o.Sheet }, without(page.PanelSheetForm(), "panels_in_series")...)...)),
		form.Rows("batteries", "Batteries", "kind of battery", model.MostSpares, func(s *s) *[]model.SpareCells { return &s.Cells }, model.SpareCells{},
			form.Text("name", "Name", func(o *model.SpareCells) *string { return &o.Name }),
			form.Number("count", "How many", unit.Counts, func(o *model.SpareCells) *unit.Known[unit.Count] { return &o.Count }),
			form.Word("kind", "Kind", func(o *model.SpareCells) *cell.Chemistry { return &o.Kind }),
			form.Number("block_capacity_c", "Capacity on the label", unit.Charges, func(o *model.SpareCells) *unit.Known[unit.Charge] { return &o.Capacity }, form.Hint[model.SpareCells]("of one")),
			form.Number("block_voltage_v", "Voltage on the label", unit.Voltages, func(o *model.SpareCells) *unit.Known[unit.Voltage] { return &o.Voltage }),
			form.Number("rated_time_s", "The label’s Ah are for a discharge in", unit.Hours, func(o *model.SpareCells) *unit.Known[unit.Duration] { return &o.RatedHours }, form.Hint[model.SpareCells]("20 h on most lead batteries")),
			form.Word("cells_are", "State of the cells", func(o *model.SpareCells) *cell.Origin { return &o.Origin }),
			form.Number("internal_ohm", "Internal resistance of one", unit.Resistances, func(o *model.SpareCells) *unit.Known[unit.Resistance] { return &o.Internal }),
			form.Word("management_board", "Board that stops charging in the cold", func(o *model.SpareCells) *unit.Answer { return &o.Board }),
			form.Number("board_max_a", "Most current of the board", unit.Currents, func(o *model.SpareCells) *unit.Known[unit.Current] { return &o.BoardMost })),
	}
}

// without leaves out some inputs at the top of a form.
func without[T any](parts []form.Part[T], paths ...string) []form.Part[T] {
	return slices.DeleteFunc(parts, func(p form.Part[T]) bool { return p.Input != nil && slices.Contains(paths, p.Input.Path) })
}
