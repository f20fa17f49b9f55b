package hoist

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

// A label whose speed is behind a gearbox of 50 that nobody told, beside a drill test of the bare motor: the ratio is
// told. 12 V, 4 rad/s, stall 5 A, 0.2 A: R = 2.4 Ω, K = (12 − 0.48)/4 = 2.88; the drill says 0.0576, which is 50 times less.
func TestLabelBehindAGearbox(t *testing.T) {
	v := catalog.Sample().Variants[0]
	h := v.Stores[0].Hoist
	h.Machine = lift.Machine{SheetVolts: unit.Of[unit.Voltage](12), SheetSpeed: unit.Of[unit.AngularSpeed](4), SheetStall: unit.Of[unit.Current](5), I0: unit.Of[unit.Current](0.2)}
	view := func() motorView {
		return motorViewOf(model.HoistOf(model.Ground{}.Evaluate(v).Stores[0]), unit.Metric, "stores[0].hoist", "/x")
	}
	alone := view()
	if len(alone.Gear) != 2 || !strings.Contains(alone.Gear[1], "ratio 1") || alone.Open {
		t.Errorf("the label alone: %q", alone.Gear)
	}
	if row := alone.Sets[2]; row[3] != row[4] || row[3] == "–" || row[1] != "–" {
		t.Errorf("K: %q", row)
	}
	h.Machine.BenchK = []lift.Bench{{Voltage: unit.Of[unit.Voltage](5.76), Speed: unit.Of[unit.AngularSpeed](100)}, {Voltage: unit.Of[unit.Voltage](-5.76), Speed: unit.Of[unit.AngularSpeed](-100)}}
	both := view()
	if len(both.Gear) != 1 || !strings.Contains(both.Gear[0], "about 50 : 1") || len(both.Reasons) == 0 {
		t.Errorf("label and bench: %q %q", both.Gear, both.Reasons)
	}
	h.Machine.SheetGear = unit.Of[unit.Ratio](50)
	if mended := view(); len(mended.Gear) > 0 || len(mended.Reasons) > 0 {
		t.Errorf("with its ratio: %q %q", mended.Gear, mended.Reasons)
	}
	h.Machine = lift.Machine{}
	if none := view(); !none.Open || none.Sets[0][4] != "not known" || len(none.Steps) != 3 {
		t.Errorf("nothing known: %+v", none)
	}
}

// Each thing that goes wrong says what it comes to and what limits it; what is not known is said so, and never a zero.
func TestTroubles(t *testing.T) {
	v := catalog.Sample().Variants[2]
	h := model.HoistOf(model.Ground{}.Evaluate(v).Stores[0])
	all := troublesOf(h, unit.Metric)
	if len(all) != 8 {
		t.Fatal(len(all))
	}
	text := func(list []troubleView) string {
		var b strings.Builder
		for _, x := range list {
			if x.What == "" || x.Limits == "" || len(x.Rows) == 0 {
				t.Errorf("%+v", x)
			}
			for _, r := range x.Rows {
				b.WriteString(x.What + ": " + r.Name + " " + r.Value + "\n")
			}
		}
		return b.String()
	}
	said := text(all)
	g := h.Drive.LetGo
	for _, want := range []string{unit.Speeds.Format(float64(g.OpenSpeed), unit.Metric), unit.SlowSpeeds.Format(float64(g.JoinedSpeed.Val), unit.Metric),
		unit.SmallLengths.Format(float64(g.BrakeFall.Val), unit.Metric), page.ForceBoth(g.BurstForce, unit.Metric), page.ForceBoth(h.Drive.StallRopePull, unit.Metric),
		"With the resistor or clamp", ": strong enough", unit.Speeds.Format(float64(h.Hazards.DropSpeed.Val), unit.Metric)} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not in\n%s", want, said)
		}
	}
	// the row that stands for good holds the speed that the drive itself comes to with nothing else on its wires
	only := *v.Stores[0].Hoist
	only.Lower.Loads = only.Lower.Loads[1:]
	if lo := lift.Compute(only).Lowering; !strings.Contains(said, unit.SlowSpeeds.Format(float64(lo.Speed), unit.Metric)) {
		t.Errorf("%v m/s is not in\n%s", lo.Speed, said)
	}
	empty := text(troublesOf(&model.HoistResult{Checks: []path.Check{}}, unit.Metric))
	if strings.Contains(empty, " 0 ") || !strings.Contains(empty, "not known") {
		t.Errorf("of nothing:\n%s", empty)
	}
}
