package model_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
)

// A plan that is ready is not ready any more once a value that it hangs on is only typical, and is again when that is
// confirmed; one that only moves energy, or belongs to another store, changes nothing. A plan that gives way stays so.
func TestTypicalValuesAreNotReady(t *testing.T) {
	doc := catalog.Sample()
	ground := model.Prepare(doc.Project)
	v := doc.Variants[2]
	ready := func(origins model.Origins) model.VariantResult {
		v.Origins = origins
		return ground.Evaluate(v)
	}
	if r := ready(nil); r.Ready != "yes" {
		t.Fatalf("without marks it is %q: %v", r.Ready, reasonsSaid(r.Because))
	}
	typical := model.Origin{Kind: "typical", Source: "from memory"}
	for path, want := range map[string]reason.Word{
		"stores[0].hoist.drum.dead_wraps":            "not_known",
		"stores[0].hoist.reeving.rope_parts":         "not_known",
		"stores[0].hoist.machine.max_winding_c":      "not_known",
		"stores[0].hoist.train.stages[0].efficiency": "not_known",
		"stores[0].hoist.raise.drive_efficiency":     "yes",
		"stores[0].hoist.lower.auxiliary_w":          "not_known",
		"stores[1].cells.usable_depth":               "yes",
		"panels[0].tilt_rad":                         "yes",
	} {
		r := ready(model.Origins{path: typical})
		if r.Ready != want || (want == "yes") != (len(reasonsSaid(r.Because)) == 0) {
			t.Errorf("%s typical: %q, want %q; %v", path, r.Ready, want, reasonsSaid(r.Because))
		}
		for _, kind := range []string{"catalog", "measured"} {
			if r := ready(model.Origins{path: {Kind: model.OriginKind(kind)}}); r.Ready != "yes" {
				t.Errorf("%s %s: %q", path, kind, r.Ready)
			}
		}
	}
	r := ready(model.Origins{"stores[0].hoist.drum.dead_wraps": typical, "stores[0].hoist.travel_m": typical})
	if len(reasonsSaid(r.Because)) != 1 || !strings.Contains(reasonsSaid(r.Because)[0], "2 typical values") {
		t.Errorf("%v", reasonsSaid(r.Because))
	}
	v = doc.Variants[0]
	if r := ready(model.Origins{"stores[0].hoist.drum.dead_wraps": typical}); r.Ready != "no" {
		t.Errorf("what gives way is %q with a typical value", r.Ready)
	}
}

// No plan of the test data that is ready stays so when one of the values of its hoist is only typical, but for the values that
// only move energy.
func TestNoReadyOnATypicalValue(t *testing.T) {
	longOnly(t)
	p := readPlans(t)
	tried := 0
	for _, c := range p.Cases {
		if c.Want.Ready != "yes" {
			continue
		}
		doc, err := p.document(t, c)
		if err != nil {
			t.Fatal(err)
		}
		ground := model.Prepare(doc.Project)
		ground.On = on
		for i, s := range doc.Variants[0].Stores {
			if s.Hoist == nil {
				continue
			}
			for _, path := range given(t, s.Hoist) {
				v := doc.Variants[0]
				v.Origins = model.Origins{model.Join(model.HoistPath(i), path): {Kind: model.OriginTypical, Source: "from memory"}}
				tried++
				if h := ground.Hoist(v, i); h.Ready == reason.Yes != (path == "units" || path == "raise.drive_efficiency") {
					t.Errorf("%s: %s typical: %s", c.ID, path, h.Ready)
				}
			}
		}
	}
	if tried < 200 {
		t.Errorf("%d values tried", tried)
	}
}

// given are the paths of all values of a hoist that are given.
func given(t *testing.T, h *lift.Hoist) (paths []string) {
	t.Helper()
	data, err := json.Marshal(h)
	if err != nil {
		t.Fatal(err)
	}
	var tree any
	if err := json.Unmarshal(data, &tree); err != nil {
		t.Fatal(err)
	}
	var walk func(at string, node any)
	walk = func(at string, node any) {
		switch n := node.(type) {
		case map[string]any:
			for key, below := range n {
				walk(model.Join(at, key), below)
			}
		case []any:
			for i, below := range n {
				walk(fmt.Sprintf("%s[%d]", at, i), below)
			}
		case float64:
			paths = append(paths, at)
		}
	}
	walk("", tree)
	return paths
}

// A typical machine constant gives way to the numbers of the motor's label: 24 V, 2750 turns a minute without load, 1.8 A
// through 0.17 Ω. By hand K = (24 − 1.8·0.17)/(2750·2π/60) = 23.694/287.979 = 0.0822768 V·s/rad. One that the builder
// confirmed stays, and so does a typical one beside half a label.
func TestTypicalConstantGivesWayToLabel(t *testing.T) {
	doc := catalog.Sample()
	ground := model.Prepare(doc.Project)
	v := doc.Variants[2]
	h := *v.Stores[0].Hoist
	v.Stores = append([]model.Store{{Hoist: &h}}, v.Stores[1:]...)
	h.Machine.K, h.Machine.R, h.Machine.I0 = unit.Of[unit.MachineConstant](0.068), unit.Of[unit.Resistance](0.17), unit.Of[unit.Current](1.8)
	h.Machine.BrushDrop, h.Machine.BenchK, h.Machine.BenchR, h.Machine.BenchI0 = unit.Known[unit.Voltage]{}, nil, nil, nil
	h.Machine.SheetVolts, h.Machine.SheetSpeed = unit.Of[unit.Voltage](24), unit.Of[unit.AngularSpeed](2750*unit.RevPerMinute)
	h.Machine.SheetStall, h.Machine.SheetGear = unit.Known[unit.Current]{}, unit.Known[unit.Ratio]{}
	k := func(o model.Origins) float64 {
		v.Origins = o
		return float64(model.HoistOf(ground.Evaluate(v).Stores[0]).Drive.Machine.K.Val)
	}
	typical := model.Origins{"stores[0].hoist.machine.k_vs_rad": {Kind: "typical", Source: "from memory"}}
	if got := k(typical); math.Abs(got-0.0822768) > 1e-6 {
		t.Errorf("K is %g", got)
	}
	if got := k(nil); got != 0.068 {
		t.Errorf("confirmed, K is %g", got)
	}
	h.Machine.SheetSpeed = unit.Known[unit.AngularSpeed]{}
	if got := k(typical); got != 0.068 {
		t.Errorf("beside volts alone, K is %g", got)
	}
}

// Typical numbers of another size than the label's count as not known, all of them. A label of 24 V and 10,000 turns a minute
// without load is K = 24/1047.2 = 0.0229 V·s/rad at the most; a typical 0.068 is 2.97 times that, 0.034 is 1.48 times and stays
// until the label's own K replaces it. 24 V through 10 A with the shaft held are 2.4 Ω: a typical 0.17 Ω is another motor.
func TestTypicalOfAnotherSizeIsNotKnown(t *testing.T) {
	doc := catalog.Sample()
	ground := model.Prepare(doc.Project)
	v := doc.Variants[2]
	origins := model.Origins{}
	for _, field := range []string{"k_vs_rad", "r_ohm", "i0_a", "j_kg_m2", "rth_winding_k_w"} {
		origins["stores[0].hoist.machine."+field] = model.Origin{Kind: "typical", Source: "from memory"}
	}
	for _, c := range []struct {
		k, r         float64
		speed, stall float64 // turns a minute, A
		gone         bool
	}{{0.068, 0.17, 10000, 0, true}, {0.034, 0.17, 10000, 0, false}, {0.068, 0.17, 2750, 0, false}, {0.068, 0.17, 2750, 10, true}, {0.068, 1.7, 2750, 10, false}} {
		h := *v.Stores[0].Hoist
		m := lift.Machine{K: unit.Of(unit.MachineConstant(c.k)), R: unit.Of(unit.Resistance(c.r)), I0: unit.Of[unit.Current](0.5), J: h.Machine.J, RthWinding: h.Machine.RthWinding, TauWinding: h.Machine.TauWinding}
		m.SheetVolts, m.SheetSpeed = unit.Of[unit.Voltage](24), unit.Of(unit.AngularSpeed(c.speed)*unit.RevPerMinute)
		if c.stall > 0 {
			m.SheetStall = unit.Of(unit.Current(c.stall))
		}
		h.Machine = m
		w := v.WithHoist(0, h)
		w.Origins = origins
		got := w.Lifted(0).Machine
		if got.J.Is == c.gone || got.I0.Is == c.gone || got.RthWinding.Is == c.gone || !got.TauWinding.Is || !got.SheetVolts.Is {
			t.Errorf("%+v: %+v", c, got)
		}
		told := 0
		for _, f := range model.HoistOf(ground.Evaluate(w).Stores[0]).Drive.Flags {
			if strings.Contains(f.Say.String(), "of another size than the label's") {
				told++
			}
		}
		if want := map[bool]int{true: 5, false: 0}[c.gone]; told != want {
			t.Errorf("%+v: %d fields are told, want %d", c, told, want)
		}
		w.Origins = nil
		if got := w.Lifted(0).Machine; !got.J.Is || !got.K.Is {
			t.Errorf("confirmed, and dropped: %+v", got)
		}
	}
}

// Numbers of two motors are named by both fields: the resistance that was typed, 0.8 Ω, beside 24 V through 11 A, 2.2 Ω.
func TestTwoMotorsAreNamedByBothFields(t *testing.T) {
	doc, err := readPlans(t).document(t, plan{Base: "hoist"})
	if err != nil {
		t.Fatal(err)
	}
	m := &doc.Variants[0].Stores[0].Hoist.Machine
	m.SheetVolts, m.SheetStall = unit.Of[unit.Voltage](24), unit.Of[unit.Current](11)
	for _, r := range model.Evaluate(doc, on).Variants[0].Because {
		if r.ID == "motor_mixed" && r.Word == reason.NotKnown && r.Path == "stores[0].hoist.machine.r_ohm" && r.Beside == "stores[0].hoist.machine.sheet_stall_current_a" {
			return
		}
	}
	t.Error("the two fields are not named")
}
