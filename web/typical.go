package web

import (
	"reflect"

	"duskweight/internal/model/source"
	"duskweight/internal/model/unit"
)

// usual is a typical value of an input as it is typed in metric units, with what is usual. It is offered where the value
// is not known. Nothing that bears the mass is among them, nor what only the builder's own rig tells.
type usual struct{ take, low, high, of string }

// usuals are the typical values by the type and the path of their row. All are from memory, ± 30 %, but where the words
// name common practice.
var usuals = map[string]usual{
	"lift.Hoist units":                     {"1", "1", "4", "common practice"},
	"lift.Hoist travel_m":                  {"2.5 m", "1 m", "15 m", "a room from floor to ceiling, common practice"},
	"lift.Hoist reeving.rope_parts":        {"1", "1", "4", "common practice"},
	"lift.Hoist reeving.lead_sheaves":      {"1", "1", "3", "one pulley at the top, common practice"},
	"lift.Hoist reeving.sheave_efficiency": {"87 %", "80 %", "92 %", "pulley of 50 mm with fibre rope"},
	"lift.Sheave efficiency":               {"87 %", "80 %", "92 %", "pulley of 50 mm with fibre rope"},
	"lift.Hoist drum.dead_wraps":           {"3", "3", "5", "common practice"},
	"lift.Stage ratio":                     {"5", "3", "10", "one planetary stage"},
	"lift.Stage efficiency":                {"90 %", "80 %", "97 %", "small metal gears; a worm has 40 to 70 %"},
	"lift.Stage planets":                   {"3", "3", "4", "common practice"},
	"lift.Stage friction":                  {"0.08", "0.04", "0.12", "greased bronze on steel"},
	"lift.Hoist train.breakaway":           {"1.5", "1.3", "2", "common practice"},
	"lift.Hoist machine.brush_drop_v":      {"1 V", "0.1 V", "2 V", "carbon brushes, both together"},
	"lift.Hoist machine.max_winding_c":     {"90 °C", "90 °C", "155 °C", "a motor without a mark: the careful value"},
	"lift.Hoist raise.drive_efficiency":    {"92 %", "85 %", "95 %", "step-down converter"},
	"lift.Hoist raise.wire_ohm":            {"0.05 Ω", "0.01 Ω", "0.3 Ω", "a few metres of 2.5 mm²"},
	"lift.Hoist raise.auxiliary_w":         {"5 W", "0 W", "20 W", "brake coil with a saver"},
	"lift.Hoist lower.auxiliary_w":         {"5 W", "0 W", "20 W", "brake coil with a saver"},
	"lift.DCLoad threshold_v":              {"11 V", "8 V", "13 V", "four white lamps in a row"},
	"lift.DCLoad slope_ohm":                {"0.93 Ω", "0.3 Ω", "3 Ω", "four white lamps in a row, three rows"},
	"lift.DCLoad diode_v":                  {"0.4 V", "0.3 V", "1 V", "a diode with a low drop"},
	"panel.Array count":                    {"1", "1", "4", "common practice"},
	"panel.Array panel_w":                  {"100 W", "20 W", "450 W", "a common small panel"},
	"panel.Array nominal_cell_c":           {"45 °C", "42 °C", "48 °C", "a panel behind glass in free air"},
	"panel.Array sheet.alpha_isc_per_k":    {"0.05 %/K", "0.03 %/K", "0.07 %/K", "silicon panels"},
	"panel.Array sheet.beta_voc_per_k":     {"-0.3 %/K", "-0.36 %/K", "-0.24 %/K", "silicon panels"},
	"panel.Array sheet.cells_in_series":    {"36", "32", "72", "a panel for 12 V"},
	"load.Load inverter.idle_w":            {"5 W", "2 W", "25 W", "inverter of 300 W"},
	"load.Appliance power_w":               {"5 W", "0.5 W", "15 W", "a lamp to read by"},
	"load.Appliance count":                 {"2", "1", "20", "our own judgement"},
	"load.Appliance from_dusk_s":           {"4 h", "1 h", "12 h", "an evening, our own judgement"},
	"load.Standing power_w":                {"0.2 W", "0.05 W", "3 W", "a small controller with sensors"},
}

// offerUsual gives an input of a form table its typical value, where it has one and the table gave none.
func offerUsual[T any](in *input[T]) {
	u, ok := usuals[reflect.TypeFor[T]().String()+" "+in.path]
	if !ok || in.offer != nil {
		return
	}
	in.offer = &offer[T]{
		source: source.FromMemory.At(u.of),
		text: func(sys unit.System) string {
			return retell(u.take, sys) + " (usual " + retell(u.low, sys) + " to " + retell(u.high, sys) + ")"
		},
		take: func(t *T) { _ = in.read(t, u.take, unit.Metric) }, // every value of the table is read in a test
	}
}
