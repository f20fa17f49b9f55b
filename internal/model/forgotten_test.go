package model_test

import (
	"fmt"
	"reflect"
	"regexp"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// leaves calls f for every value that may be not known and every word inside v, with its path.
func leaves(v reflect.Value, path string, f func(path string, v reflect.Value)) {
	switch {
	case v.Kind() == reflect.Struct && model.IsKnown(v.Type()), v.Kind() == reflect.String:
		f(path, v)
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			leaves(v.Field(i), model.Join(path, model.Key(v.Type().Field(i))), f)
		}
	case v.Kind() == reflect.Slice:
		for i := range v.Len() {
			leaves(v.Index(i), fmt.Sprintf("%s[%d]", path, i), f)
		}
	}
}

// mayBeLeftOut are the inputs of a hoist whose absence hides nothing, each with the reason.
var mayBeLeftOut = map[string]string{
	"name": "", "units": "counts as 1", "mass[].name": "", "mass[].weighed": "the list says how sure it is",
	"rope.outdoors":             "the worse of it and the site's answer counts",
	"reeving.sheave_efficiency": "every pulley has its own", "reeving.sheaves[].efficiency": "falls back to the common one",
	"reeving.sheaves[].rating_of": "counts as the load on the hook, the smaller reading",
	"reeving.sheaves[].angle_rad": "counts as side by side, the largest pull; sideways the other angle is read", "reeving.sheaves[].on_base": "counts as not", "reeving.dead_end": "follows from the ropes",
	"drum.grooved": "counts as smooth", "train.stages[].kind": "the numbers decide", "train.stages[].ratio": "follows from the teeth",
	"train.stages[].sun_teeth": "the ratio is given", "train.stages[].planet_teeth": "the ratio is given", "train.stages[].ring_teeth": "follows", "train.stages[].planets": "",
	"train.stages[].tooth.meshes_sharing": "counts as 1", "train.breakaway": "counts as 1.5, marked as typical",
	"machine.name": "", "machine.max_winding_c": "counts as an unmarked winding, 90 °C", "machine.continuous_current_a": "the thermal values decide", "machine.i0_measured_with_gear": "counts as no: the idle torque is added",
	"raise.wire_ohm": "named as missing", "raise.drive_efficiency": "costs energy only", "raise.converter": "judged with the line",
	"lower.loads[].name": "", "lower.loads[].permanent": "counts as not", "lower.loads[].slope_ohm": "of a clamp: none",
	"lower.ambient_c": "counts as 25 °C", "lower.shunt": "the loads say it",
	"structure.beam.load_from_support_m": "the worst place counts", "structure.beam.own_mass_kg": "from its size",
	"structure.posts[].fixing": "counts as a free top", "structure.posts[].load_share": "counts as the whole", "structure.rests_on_confirmed": "own posts are worked out",
	"base.where": "counts as the ground", "base.weights_fixed": "none are loose", "base.loose_mass_kg": "all are fastened", "base.rope_angle_rad": "that of the top pulley", "holds.holds[].on_drum": "the others are on it", "holds.holds[].kind": "two others are left", "holds.holds[].sets": "by hand counts as nothing", "holds.holds[].trips": "the catch trips",
	"holds.holds[].independent": "two others are", "holds.brake_release": "counts as a coil, and its power is given",
	"site.children": "the room is locked", "site.barrier": "nobody comes near", "site.neighbours_told": "asked beside it", "site.lit_at_night": "asked beside it", "site.noise_at_bed": "asked beside it",
	"site.wind_plan": "it stands indoors", "site.insurance_and_rules": "asked beside it", "site.watched_halfway": "asked beside it", "holds.upper_stops[].own_path": "the other one has its own",
}

// Nothing that cannot be known passes: a hoist whose plan is ready is not ready any more when any one of its inputs is
// forgotten, but for those that may be left out for a reason.
func TestForgottenIsNotReady(t *testing.T) {
	longOnly(t)
	mild := model.Ground{Project: model.Project{Place: sun.Place{RecordLow: unit.Of[unit.Celsius](-20)}}}
	design := catalog.Sample().Variants[2].Stores[0].Hoist
	var paths []string
	leaves(reflect.ValueOf(design).Elem(), "", func(p string, v reflect.Value) {
		if !v.IsZero() {
			paths = append(paths, p)
		}
	})
	index := regexp.MustCompile(`\[\d+\]`)
	unused := map[string]bool{}
	for p := range mayBeLeftOut {
		unused[p] = true
	}
	for _, p := range paths {
		v := catalog.Sample().Variants[2]
		leaves(reflect.ValueOf(v.Stores[0].Hoist).Elem(), "", func(q string, x reflect.Value) {
			if p == q {
				x.SetZero()
			}
		})
		if len(model.CheckVariant(v)) > 0 || mild.Evaluate(v).Ready != "yes" {
			continue
		}
		rule := index.ReplaceAllString(p, "[]")
		if _, ok := mayBeLeftOut[rule]; !ok {
			t.Errorf("still ready without %s", p)
		}
		delete(unused, rule)
	}
	for p := range unused {
		t.Errorf("%s need not be on the list", p)
	}
}
