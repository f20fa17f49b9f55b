package model_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/model"
)

// countsAs is the closed list of inputs of a plan that count as a named value where nobody gave one: that value in SI, or why no
// one number stands here. The judge takes them for known at that value.
var countsAs = map[string]any{
	"stores[].hoist.units":                               1.0,
	"stores[].hoist.rope.knot_factor":                    "the careful value of the ending",
	"stores[].hoist.rope.age_factor":                     "the careful value of the fibre and the place",
	"stores[].hoist.base.rope_angle_rad":                 "the angle at the top pulley",
	"stores[].hoist.holds.dynamic_factor":                "1.25, or 2 where the rope can go slack",
	"stores[].hoist.holds.holds[].acts_in_s":             "the time until the brake sets",
	"stores[].hoist.holds.holds[].stopping_torque_nm":    "a share of what the hold withstands",
	"stores[].hoist.drum.bearing_torque_nm":              0.0,
	"stores[].hoist.base.friction":                       "the low published value of its two materials",
	"stores[].hoist.machine.brush_drop_v":                "a range, and both ends are judged",
	"stores[].hoist.machine.max_speed_rad_s":             "the label's own speed without load",
	"stores[].hoist.site.rig_m":                          0.2,
	"stores[].hoist.structure.beam.load_from_support_m":  "the middle of the span",
	"stores[].hoist.structure.posts[].load_share":        1.0,
	"stores[].hoist.structure.posts[].lean_rad":          0.0,
	"stores[].hoist.raise.wire_ohm":                      0.0,
	"stores[].hoist.raise.drive_efficiency":              "energy alone",
	"stores[].hoist.lower.ambient_c":                     "25 °C for the figures; the judge tries the warmest air",
	"stores[].hoist.lower.loads[].diode_v":               0.0,
	"stores[].hoist.lower.loads[].efficiency":            "energy alone",
	"stores[].hoist.train.stages[].pressure_angle_rad":   20 * math.Pi / 180,
	"stores[].hoist.train.stages[].tooth.meshes_sharing": 1.0,
	"stores[].cells.rated_time_s":                        "by the kind of cells",
	"stores[].cells.internal_ohm":                        "by the kind of cells",
	"stores[].cells.end_share":                           0.8,
	"stores[].cells.series":                              1.0,
	"stores[].cells.parallel":                            1.0,
	"stores[].cells.breaking_a":                          1000.0,
	"panels[].gamma_per_k":                               -0.004,
	"panels[].soiling":                                   0.03,
	"panels[].dust_per_day":                              "where dust is given",
	"panels[].mismatch":                                  0.02,
	"panels[].wiring":                                    0.02,
	"panels[].u0_w_m2k":                                  25.0,
	"panels[].u1_ws_m3k":                                 6.84,
	"panels[].wind_m_s":                                  1.0,
	"panels[].cable_area_m2":                             "4 mm² for its current alone; the share lost in the wires stays",
	"panels[].sheet.panels_in_series":                    "1 for one panel; of several it leaves the voltage open",
	"panels[].sheet.max_fuse_a":                          15.0,
	"controller.rated_w":                                 "the power of the panels",
	"controller.standing_w":                              "energy alone",
	"controller.line_voltage_v":                          12.8,
	"load.appliances[].share_on":                         1.0,
	"load.appliances[].surge_w":                          "by what it is for",
	"load.appliances[].surge_s":                          9.9,
	"load.appliances[].power_factor":                     1.0,
	"load.inverter.efficiency":                           "energy alone",
	"load.inverter.cut_v":                                "a share of the voltage that it is made for",
	"load.growth_per_year":                               "with its years alone",
	"load.appliances[].run_above":                        "energy alone",
	"load.appliances[].carry_days":                       "energy alone",
	"load.appliances[].back_above":                       "energy alone",
	"backup.charge_w":                                    "energy alone",
	"backup.charge_efficiency":                           "energy alone",
	"backup.from_s":                                      "energy alone",
	"backup.max_hours_day":                               "energy alone",
	"backup.fuel_standing_l_kwh":                         "energy alone",
	"backup.fuel_l_kwh":                                  "energy alone",
	"parts[].count":                                      "money alone",
	"parts[].life_s":                                     "money alone",
	"parts[].price_low":                                  "money alone",
	"parts[].price_high":                                 "money alone",
	"parts[].upkeep_per_year":                            "money alone",
}

// countingFields gathers the inputs below a type that say of themselves what they count as where they are not known.
func countingFields(at reflect.Type, path string, out map[string]bool) {
	switch at.Kind() {
	case reflect.Pointer:
		countingFields(at.Elem(), path, out)
	case reflect.Slice:
		countingFields(at.Elem(), path+"[]", out)
	case reflect.Struct:
		for i := range at.NumField() {
			f := at.Field(i)
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			if name == "" || name == "-" || name == "origins" {
				continue
			}
			if strings.Contains(f.Tag.Get("say"), "not known counts as") {
				out[strings.TrimPrefix(path+"."+name, ".")] = true
			}
			countingFields(f.Type, path+"."+name, out)
		}
	}
}

// Every input that says what it counts as is in the list, and no other; and each plan that is ready is judged the same with the
// field empty as with that value in it: what is asked and how, for each reason.
func TestEmptyCountsAsItSays(t *testing.T) {
	longOnly(t)
	found := map[string]bool{}
	countingFields(reflect.TypeFor[model.Variant](), "", found)
	load, _ := reflect.TypeFor[model.Project]().FieldByName("Load")
	countingFields(load.Type, "load", found)
	for path := range found {
		if _, ok := countsAs[path]; !ok {
			t.Errorf("%s says what it counts as and is not in the list", path)
		}
	}
	for path := range countsAs {
		if !found[path] {
			t.Errorf("%s is in the list and does not say what it counts as", path)
		}
	}
	tried := map[string]bool{}
	for _, h := range readyPlans(t) {
		for _, s := range h.spots {
			group := places.ReplaceAllString(strings.TrimPrefix(s.path, "."), "[]")
			value, ok := countsAs[group].(float64)
			if !ok || !s.known || tried[h.id+group] {
				continue
			}
			tried[h.id+group], tried[group] = true, true
			old := reflect.New(s.at.Type()).Elem()
			old.Set(s.at)
			s.at.SetZero()
			empty := h.judged()
			if s.at.Field(0).CanFloat() {
				s.set(value)
			} else {
				s.at.Field(0).SetInt(int64(value))
				s.at.Field(1).SetBool(true)
			}
			if given := h.judged(); !slices.Equal(empty, given) {
				t.Errorf("%s: %s empty: %v, at %g: %v", h.id, s.path, empty, value, given)
			}
			s.at.Set(old)
		}
	}
	for path, value := range countsAs {
		if _, number := value.(float64); number && !tried[path] {
			t.Errorf("no plan that is ready has %s", path)
		}
	}
}

// judged are id, word, field and sentence of each reason against a plan.
func (h hole) judged() (out []string) {
	for _, b := range model.Prepare(h.doc.Project).At(on).Evaluate(h.doc.Variants[0]).Because {
		out = append(out, b.ID+" "+string(b.Word)+" "+b.Path+" "+b.Text().String())
	}
	return out
}
