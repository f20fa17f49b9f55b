package water

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/model/water"
	"duskweight/web/form"
)

// WaterForm is every input of one store of lifted water. An efficiency that is left empty is that of a machine of its size,
// which the results name.
func WaterForm() []form.Part[water.Water] {
	type w = water.Water
	return []form.Part[w]{
		form.Heading("Danger first", "",
			form.Word("covered", "Both waters covered or fenced", func(w *w) *unit.Answer { return &w.Covered }, form.Hint[w]("children drown in open water")),
			form.Word("stands_on", "Support under the tank", func(w *w) *water.Stand { return &w.Stands }),
			form.Number("signed_m3", "Water an engineer signed for", unit.BigVolumes, func(w *w) *unit.Known[unit.Volume] { return &w.Signed }, form.Hint[w]("on a tower or a building"), strength(unit.BigVolumes, "0.1 m³", "100 m³")),
		),
		form.Heading("Tanks", "",
			form.Text("name", "Name", func(w *w) *string { return &w.Name }),
			form.Number("volume_m3", "Water in the tank", unit.BigVolumes, func(w *w) *unit.Known[unit.Volume] { return &w.Volume }, bare(unit.BigVolumes, "0.1 m³", "100 m³")),
			form.Number("head_m", "Height over the turbine", unit.Heights, func(w *w) *unit.Known[unit.Length] { return &w.Head }, form.Hint[w]("up to the middle of the water"), measured(unit.Heights, "2 m", "100 m")),
			form.Number("surface_m2", "Surface of the water", unit.Areas, func(w *w) *unit.Known[unit.Area] { return &w.Surface }, form.Hint[w]("of an open tank, for what dries up"), measured(unit.Areas, "0.2 m²", "500 m²")),
			form.Word("lower_water", "Source of the pumped water", func(w *w) *water.Lower { return &w.Lower }),
		),
		form.Heading("Pipe", "",
			form.Number("pipe.length_m", "Length", unit.Lengths, func(w *w) *unit.Known[unit.Length] { return &w.Pipe.Length }, measured(unit.Lengths, "3 m", "500 m")),
			form.Number("pipe.inner_m", "Inner diameter", unit.SmallLengths, func(w *w) *unit.Known[unit.Length] { return &w.Pipe.Inner }, measured(unit.SmallLengths, "15 mm", "200 mm")),
			form.Number("pipe.rated_pa", "Pressure on its label", unit.Pressures, func(w *w) *unit.Known[unit.Stress] { return &w.Pipe.Rated }, strength(unit.Pressures, "4 bar", "25 bar")),
			form.Number("pipe.wave_m_s", "Speed of a pressure wave", unit.Speeds, func(w *w) *unit.Known[unit.Speed] { return &w.Pipe.Wave }, wave()),
		),
		form.Heading("Pump", "",
			form.Number("pump.rated_w", "Power on its label", unit.Powers, func(w *w) *unit.Known[unit.Power] { return &w.Pump.Rated }, label(unit.Powers, "20 W", "5000 W")),
			form.Number("pump.efficiency", "Efficiency of the pump", unit.Percents, func(w *w) *unit.Known[unit.Ratio] { return &w.Pump.Efficiency }, pumpOfSize()),
			form.Word("pump.step", "Runs at full power or not at all", func(w *w) *unit.Answer { return &w.Pump.Step }),
		),
		form.Heading("Turbine", "",
			form.Number("turbine.flow_m3_s", "Flow, fully open", unit.Flows, func(w *w) *unit.Known[unit.Flow] { return &w.Turbine.Flow }, label(unit.Flows, "5 l/min", "1000 l/min")),
			form.Number("turbine.efficiency", "Efficiency of the turbine", unit.Percents, func(w *w) *unit.Known[unit.Ratio] { return &w.Turbine.Efficiency }, turbineOfSize()),
			form.Word("turbine.kind", "Flow of the turbine", func(w *w) *water.Governor { return &w.Turbine.Kind }, form.Hint[w]("fixed, or a valve follows the load")),
			form.Number("standing_w", "Power of its electronics", unit.Powers, func(w *w) *unit.Known[unit.Power] { return &w.Standby }, bare(unit.Powers, "0 W", "20 W")),
		),
	}
}
