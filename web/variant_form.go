package web

import (
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
)

// variantForm is a variant without the insides of its stores, which have pages of their own.
func variantForm() []part[model.Variant] {
	type v = model.Variant
	type a = panel.Array
	return []part[v]{
		text("name", "Name of this variant", func(v *v) *string { return &v.Name }),
		rows("panels", "Panels", "group of panels", 20, func(v *v) *[]a { return &v.Panels }, a{},
			text("name", "Where", func(a *a) *string { return &a.Name }),
			number("count", "Panels", unit.Counts, func(a *a) *unit.Known[unit.Count] { return &a.Count }),
			number("panel_w", "Power of one", unit.Powers, func(a *a) *unit.Known[unit.Power] { return &a.Power }, hint[a]("on its label")),
			number("tilt_rad", "Tilt", unit.Angles, func(a *a) *unit.Known[unit.Angle] { return &a.Tilt }, hint[a]("0 lies flat, 90 stands")),
			number("azimuth_rad", "Faces", unit.Angles, func(a *a) *unit.Known[unit.Angle] { return &a.Azimuth }, hint[a]("0 north, 90 east, 180 south, 270 west")),
			folded("Losses and heat", "",
				number("gamma_per_k", "Change with temperature", unit.PerKelvins, func(a *a) *unit.Known[unit.PerKelvin] { return &a.Gamma }, hint[a]("empty counts as −0.4 % for each K")),
				number("soiling", "Lost to dirt", unit.Percents, func(a *a) *unit.Known[unit.Ratio] { return &a.Soiling }, hint[a]("empty counts as 3 %")),
				number("mismatch", "Lost to unequal panels", unit.Percents, func(a *a) *unit.Known[unit.Ratio] { return &a.Mismatch }, hint[a]("empty counts as 2 %")),
				number("wiring", "Lost in the wires", unit.Percents, func(a *a) *unit.Known[unit.Ratio] { return &a.Wiring }, hint[a]("empty counts as 2 %")),
				word("cell_temperature", "Temperature by", func(a *a) *string { return &a.Cell }),
				number("u0_w_m2k", "Heat loss", unit.HeatLosses, func(a *a) *unit.Known[unit.HeatLoss] { return &a.U0 }, hint[a]("without wind; empty counts as 25")),
				number("u1_ws_m3k", "Heat loss by wind", unit.HeatLossesWind, func(a *a) *unit.Known[unit.HeatLossWind] { return &a.U1 }),
				number("wind_m_s", "Mean wind", unit.Speeds, func(a *a) *unit.Known[unit.Speed] { return &a.Wind }, hint[a]("empty counts as 1 m/s")),
				number("nominal_cell_c", "Nominal cell temperature", unit.Temperatures, func(a *a) *unit.Known[unit.Celsius] { return &a.NOCT })),
			shadeInputs(),
			folded("From the panel's data sheet", "Needed where the panel drives the motor straight.", panelSheetInputs()...)),
		heading("Controller", "",
			word("controller.kind", "Kind", func(v *v) *string { return &v.Controller.Kind }),
			number("controller.rated_w", "Rated power", unit.Powers, func(v *v) *unit.Known[unit.Power] { return &v.Controller.Power }),
			number("controller.standing_w", "Takes all the time", unit.Powers, func(v *v) *unit.Known[unit.Power] { return &v.Controller.Night }),
			number("controller.line_voltage_v", "Voltage of the line", unit.Voltages, func(v *v) *unit.Known[unit.Voltage] { return &v.Controller.BusVolts })),
		rows("controller.efficiency_curve", "Efficiency of a tracking controller", "point", 20, func(v *v) *[]panel.Efficiency { return &v.Controller.Curve }, panel.Efficiency{Load: 1, Efficiency: 0.96},
			plain("load", "At", unit.Percents, func(e *panel.Efficiency) *float64 { return &e.Load }, hint[panel.Efficiency]("share of rated power")),
			plain("efficiency", "Efficiency", unit.Percents, func(e *panel.Efficiency) *float64 { return &e.Efficiency }, hint[panel.Efficiency]("there"))),
		rows("standing", "What this variant alone uses all the time", "device", 50, func(v *v) *[]load.Standing { return &v.Standing }, load.Standing{}, standingRow()...),
	}
}
