package variant

import (
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

// VariantForm is a variant without the insides of its stores, and without season and backup: these have pages of their own.
func VariantForm() []form.Part[model.Variant] { return variantForm() }

// variantForm is a variant whose panels have more inputs than those of its own page.
func variantForm(more ...form.Part[panel.Array]) []form.Part[model.Variant] {
	type v = model.Variant
	type a = panel.Array
	return []form.Part[v]{
		form.Text("name", "Name of this variant", func(v *v) *string { return &v.Name }),
		form.Rows("panels", "Panels", "group of panels", 20, func(v *v) *[]a { return &v.Panels }, a{}, append([]form.Part[a]{
			form.Text("name", "Place", func(a *a) *string { return &a.Name }),
			form.Number("count", "Panels", unit.Counts, func(a *a) *unit.Known[unit.Count] { return &a.Count }),
			form.Number("panel_w", "Power of one", unit.Powers, func(a *a) *unit.Known[unit.Power] { return &a.Power }, form.Hint[a]("on its label")),
			form.Number("tilt_rad", "Tilt", unit.Angles, func(a *a) *unit.Known[unit.Angle] { return &a.Tilt }, form.Hint[a]("0 is flat, 90 is upright")),
			form.Number("azimuth_rad", "Direction", unit.Angles, func(a *a) *unit.Known[unit.Angle] { return &a.Azimuth }, form.Hint[a]("0 north, 90 east, 180 south, 270 west")),
			form.Folded("Losses and heat", "",
				form.Number("gamma_per_k", "Change with temperature", unit.PerKelvins, func(a *a) *unit.Known[unit.PerKelvin] { return &a.Gamma }, form.Hint[a]("if empty: −0.4 % for each K")),
				form.Number("soiling", "Lost to dirt", unit.Percents, func(a *a) *unit.Known[unit.Ratio] { return &a.Soiling }, form.Hint[a]("if empty: 3 %")),
				form.Number("mismatch", "Lost to unequal panels", unit.Percents, func(a *a) *unit.Known[unit.Ratio] { return &a.Mismatch }, form.Hint[a]("if empty: 2 %")),
				form.Number("wiring", "Lost in the wires", unit.Percents, func(a *a) *unit.Known[unit.Ratio] { return &a.Wiring }, form.Hint[a]("if empty: 2 %")),
				form.Word("cell_temperature", "Method for the cell temperature", func(a *a) *panel.CellModel { return &a.Cell }),
				form.Number("u0_w_m2k", "Heat loss", unit.HeatLosses, func(a *a) *unit.Known[unit.HeatLoss] { return &a.U0 }, form.Hint[a]("without wind; if empty: 25")),
				form.Number("u1_ws_m3k", "Heat loss by wind", unit.HeatLossesWind, func(a *a) *unit.Known[unit.HeatLossWind] { return &a.U1 }),
				form.Number("wind_m_s", "Mean wind", unit.Speeds, func(a *a) *unit.Known[unit.Speed] { return &a.Wind }, form.Hint[a]("if empty: {1 m/s}")),
				form.Number("nominal_cell_c", "Nominal cell temperature", unit.Temperatures, func(a *a) *unit.Known[unit.Celsius] { return &a.NOCT })),
			form.Folded("Strings and cable", "",
				form.Number("strings", "Strings side by side", unit.Counts, func(a *a) *unit.Known[unit.Count] { return &a.Strings }),
				form.Number("cable_length_m", "Cable to the controller, one way", unit.Lengths, func(a *a) *unit.Known[unit.Length] { return &a.CableLen }),
				form.Number("cable_area_m2", "Copper of that cable", unit.WireAreas, func(a *a) *unit.Known[unit.Area] { return &a.CableArea })),
			shadeInputs(),
			form.Folded("From the panel's data sheet", "Needed where the panel drives the motor straight.", panelSheetInputs()...)}, more...)...),
		form.Heading("Controller", "",
			form.Word("controller.kind", "Kind", func(v *v) *panel.ControllerKind { return &v.Controller.Kind }, form.Hint[v]("Direct: the panels drive the motor")),
			form.Number("controller.rated_w", "Rated power", unit.Powers, func(v *v) *unit.Known[unit.Power] { return &v.Controller.Power }),
			form.Number("controller.standing_w", "Power it uses all the time", unit.Powers, func(v *v) *unit.Known[unit.Power] { return &v.Controller.Night }),
			form.Number("controller.line_voltage_v", "Voltage of the line", unit.Voltages, func(v *v) *unit.Known[unit.Voltage] { return &v.Controller.BusVolts }),
			form.Number("controller.max_input_v", "Highest voltage of the panels", unit.Voltages, func(v *v) *unit.Known[unit.Voltage] { return &v.Controller.MaxInput }, form.Hint[v]("on its label")),
			form.Number("controller.max_input_a", "Highest current of the panels", unit.Currents, func(v *v) *unit.Known[unit.Current] { return &v.Controller.MaxInputA }),
			form.Number("controller.max_charge_a", "Most current to the line", unit.Currents, func(v *v) *unit.Known[unit.Current] { return &v.Controller.MaxCharge }),
			form.Word("controller.string_fuses", "Each string has its own fuse", func(v *v) *unit.Answer { return &v.Controller.StringFuses }),
			form.Word("controller.licensed", "A licensed person wires what is above 60 V", func(v *v) *unit.Answer { return &v.Controller.Licensed }, form.Hint[v](""))),
		form.Rows("controller.efficiency_curve", "Efficiency of a tracking controller", "point", 20, func(v *v) *[]panel.Efficiency { return &v.Controller.Curve }, panel.Efficiency{Load: 1, Efficiency: 0.96},
			form.Plain("load", "Load", unit.Percents, func(e *panel.Efficiency) *float64 { return &e.Load }, form.Hint[panel.Efficiency]("share of rated power")),
			form.Plain("efficiency", "Efficiency", unit.Percents, func(e *panel.Efficiency) *float64 { return &e.Efficiency }, form.Hint[panel.Efficiency]("there"))),
		form.Rows("standing", "What this variant alone uses all the time", "device", 50, func(v *v) *[]load.Standing { return &v.Standing }, load.Standing{}, page.StandingRow()...),
	}
}
