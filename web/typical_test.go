package web

import (
	"reflect"
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/load"
	"duskweight/internal/model/panel"
	"duskweight/internal/model/unit"
)

// Every typical value belongs to an input, is read by it as it stands, lies inside of what is called usual, and can be
// taken by the check.
func TestUsuals(t *testing.T) {
	used := map[string]bool{}
	usualsOf(t, used, placeForm(&model.Project{}), &model.Project{})
	usualsOf(t, used, loadForm(), &load.Load{Appliances: make([]load.Appliance, 1), Standing: make([]load.Standing, 1)})
	usualsOf(t, used, variantForm(), &model.Variant{Panels: make([]panel.Array, 1)})
	usualsOf(t, used, hoistForm(), &lift.Hoist{Reeving: lift.Reeving{Sheaves: make([]lift.Sheave, 1)}, Train: lift.Train{Stages: make([]lift.Stage, 1)}, Lower: lift.Lower{Loads: make([]lift.DCLoad, 1)}})
	if len(used) < len(usuals) {
		t.Errorf("%d offers for %d typical values", len(used), len(usuals))
	}
}

func usualsOf[T any](t *testing.T, used map[string]bool, parts []part[T], v *T) {
	t.Helper()
	form[T]{}.walk(parts, v, func(in *input[T]) {
		if in.offer == nil || in.show(v, unit.Metric) != "" {
			return
		}
		used[in.path] = true
		in.offer.take(v)
		if in.show(v, unit.Metric) == "" {
			t.Errorf("%s: the typical value is not taken", in.path)
		}
		if in.offer.text(unit.Metric) == "" || in.offer.source.String() == "" {
			t.Errorf("%s: no words", in.path)
		}
	})
}

// What is usual reads as numbers in the right order.
func TestUsualRanges(t *testing.T) {
	order := func(q unit.Quantity, u usual) bool {
		low, _, e1 := q.Parse(u.low, unit.Metric)
		take, _, e2 := q.Parse(u.take, unit.Metric)
		high, _, e3 := q.Parse(u.high, unit.Metric)
		return e1 == nil && e2 == nil && e3 == nil && low <= take && take <= high
	}
	for name, u := range usuals {
		ok := false
		for _, q := range []unit.Quantity{unit.Ratios, unit.Lengths, unit.Powers, unit.Voltages, unit.Resistances, unit.Temperatures, unit.Durations, unit.PerKelvins} {
			ok = ok || order(q, u)
		}
		if !ok || reflect.ValueOf(u).IsZero() || u.of == "" {
			t.Errorf("%s: %+v", name, u)
		}
	}
}
