package search_test

import (
	"context"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/search"
	"duskweight/internal/model/unit"
)

// boxOfParts is the sample with a shelf: its own parts, a motor half as strong, a weak rope, a worm that locks.
func boxOfParts() (model.Project, model.Variant) {
	doc := catalog.Sample()
	doc.Project.Shelf = model.Shelf{}
	v := doc.Variants[2]
	p, _ := doc.Project.Shelve(v, 0)
	h := v.Stores[0].Hoist
	half := h.Machine
	half.K.Val /= 2
	p.Shelf.Motors = append(p.Shelf.Motors, half)
	weak := h.Rope
	weak.BreakingLoad = unit.Of(unit.Mass(100).Weight())
	p.Shelf.Ropes = append(p.Shelf.Ropes, model.SpareRope{Name: "washing line", Rope: weak})
	worm := lift.Stage{Kind: "worm", Ratio: unit.Of[unit.Ratio](30), Efficiency: unit.Of[unit.Ratio](.4), IdleTorque: unit.Of[unit.Torque](1e-4)}
	p.Shelf.Stages = append(p.Shelf.Stages, model.SpareStage{Name: "worm", Stage: worm})
	return p, v
}

// ofHoist reports whether a reason is about a part of the hoist that no motor, stage, drum, rope or pulley of a shelf replaces.
func ofHoist(b reason.Reason) bool {
	inside := strings.TrimPrefix(b.Path, "stores[0].hoist.")
	for _, part := range []string{"machine.", "train.stages", "drum.", "rope.", "reeving.sheaves"} {
		if strings.HasPrefix(inside, part) {
			return false
		}
	}
	return inside == "raise.feed" || !slices.Contains([]string{"lift_stalls", "never_lifts", "stays_up", "races", "needs_push", "motor_hot"}, b.ID)
}

// addsUp checks that every combination that was tried is counted once.
func addsUp(t *testing.T, f search.Fits) {
	t.Helper()
	sum := f.Stalls + f.Stuck + f.Passed - f.Worked + f.Do
	for _, w := range f.Why {
		sum += w.Count
	}
	for _, u := range f.Unsure {
		sum += u.Count
	}
	if sum != f.Tried || f.Tried > f.Of || f.Tried == 0 {
		t.Errorf("%d are counted, %d were tried, there are %d", sum, f.Tried, f.Of)
	}
}

// rowsOf are all rows of stages, longer and longer, none of them more often than it lies there.
func rowsOf(stages []model.SpareStage, longest int) (rows [][]int) {
	for a := range stages {
		rows = append(rows, []int{a})
	}
	for k := 0; k < len(rows); k++ {
		for a, s := range stages {
			used := 0
			for _, b := range rows[k] {
				if b == a {
					used++
				}
			}
			if len(rows[k]) < longest && used < int(s.Count.Or(1)) {
				rows = append(rows, append(slices.Clone(rows[k]), a))
			}
		}
	}
	return rows
}

// Every combination of a small box is worked out one by one through the whole model: the search finds the same ones that
// do, and counts the rest alike.
func TestFitsFindAll(t *testing.T) {
	p, v := boxOfParts()
	g := model.Prepare(p)
	fits, err := search.FitsOf(t.Context(), g, p, v, 0, 2)
	if err != nil {
		t.Fatal(err)
	}
	want, sets := map[string]bool{}, map[string]bool{}
	stalls, stuck, tried, moving := 0, 0, 0, 0
	may := map[string]model.Combination{}
	against := map[string][]reason.Reason{}
	everywhere := map[string]int{} // reasons about parts of the hoist that the shelf has none of
	for m := range p.Shelf.Motors {
		for r := range p.Shelf.Ropes {
			for _, row := range rowsOf(p.Shelf.Stages, 4) {
				c := model.Combination{Motor: m, Drum: 0, Rope: r, Pulley: 0, Stages: row}
				h := g.Hoist(c.With(p, v, 0), 0)
				d := h.Drive
				tried++
				switch {
				case d.Raising.Known && d.Raising.Stalls:
					stalls++
				case d.Lowering.RunsBack == "no":
					stuck++
				default:
					moving++
					for _, b := range h.Because {
						if ofHoist(b) {
							everywhere[b.ID+b.Path]++
						}
					}
					if d.Lowering.RunsBack == "yes" && d.Lowering.Steady && !d.HeatUp.TooHot && !d.HeatDown.TooHot {
						may[fmt.Sprint(c)], against[fmt.Sprint(c)] = c, h.Because
					}
				}
			}
		}
	}
	for name := range may {
		want[name] = !slices.ContainsFunc(against[name], func(b reason.Reason) bool { return !ofHoist(b) || everywhere[b.ID+b.Path] < moving })
		if !want[name] {
			delete(want, name)
		}
	}
	do := 0
	for _, f := range fits.Found {
		set := f.Combination
		set.Stages = slices.Sorted(slices.Values(set.Stages))
		if !want[fmt.Sprint(f.Combination)] || sets[fmt.Sprint(set)] {
			t.Errorf("%v does not do, or stands there twice", f.Combination)
		}
		sets[fmt.Sprint(set)] = true
		do += 1 + f.Orders
		if f.Rope == 1 {
			t.Error("the washing line holds")
		}
	}
	if do != len(want) || fits.Do != do || len(want) < 1 {
		t.Errorf("%d found, %d do", do, len(want))
	}
	if fits.Tried != tried || fits.Stalls != stalls || fits.Stuck != stuck || fits.Passed != tried-stalls-stuck {
		t.Errorf("tried %d, stalls %d, stuck %d, passed %d; want %d, %d, %d", fits.Tried, fits.Stalls, fits.Stuck, fits.Passed, tried, stalls, stuck)
	}
	if fits.Worked != fits.Passed || fits.Of != tried {
		t.Errorf("%d of %d worked out, %d of %d tried", fits.Worked, fits.Passed, tried, fits.Of)
	}
	addsUp(t, fits)
	t.Logf("%d tried, %d stall, %d stuck, %d do: %v", fits.Tried, fits.Stalls, fits.Stuck, fits.Do, fits.Why)
	if again, err := search.FitsOf(t.Context(), g, p, v, 0, 1); err != nil || !reflect.DeepEqual(fits, again) {
		t.Errorf("one worker finds something else: %v", err)
	}
	stopped, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := search.FitsOf(stopped, g, p, v, 0, 2); err == nil {
		t.Error("a search that was stopped says nothing")
	}
}

// A part of which too little is known is left out and named; so many kinds of stages that their rows are too many are tried in
// shorter rows.
func TestFitsLeaveOut(t *testing.T) {
	p, v := boxOfParts()
	p.Shelf.Motors = append(p.Shelf.Motors, lift.Machine{Name: "no numbers"})
	p.Shelf.Ropes = append(p.Shelf.Ropes, model.SpareRope{Name: "no diameter"})
	for k := range 18 {
		p.Shelf.Stages = append(p.Shelf.Stages, model.SpareStage{Stage: lift.Stage{Kind: "spur", Ratio: unit.Of(unit.Ratio(1.5 + float64(k)/10)), Efficiency: unit.Of[unit.Ratio](.9)}})
	}
	p.Shelf.Stages = append(p.Shelf.Stages, model.SpareStage{Name: "no ratio"})
	f, err := search.FitsOf(t.Context(), model.Prepare(p), p, v, 0, 2)
	if err != nil {
		t.Fatal(err)
	}
	m, r, s := len(p.Shelf.Motors)-1, len(p.Shelf.Ropes)-1, len(p.Shelf.Stages)-1
	want := []search.Left{
		{List: "motors", At: m, Wants: []string{fmt.Sprintf("shelf.motors[%d].r_ohm", m), fmt.Sprintf("shelf.motors[%d].i0_a", m), fmt.Sprintf("shelf.motors[%d].k_vs_rad", m)}},
		{List: "stages", At: s, Wants: []string{fmt.Sprintf("shelf.stages[%d].stage.ratio", s), fmt.Sprintf("shelf.stages[%d].stage.efficiency", s)}},
		{List: "ropes", At: r, Wants: []string{fmt.Sprintf("shelf.ropes[%d].rope.diameter_m", r)}},
	}
	if !reflect.DeepEqual(f.Left, want) {
		t.Errorf("left out %+v, want %+v", f.Left, want)
	}
	addsUp(t, f)
	if all := len(rowsOf(p.Shelf.Stages[:len(p.Shelf.Stages)-1], 4)); f.Of != 2*2*all {
		t.Errorf("there are %d, want %d", f.Of, 2*2*all)
	}
	if n := len(rowsOf(p.Shelf.Stages[:len(p.Shelf.Stages)-1], 3)); f.Longest != 3 || f.Tried != 2*2*n {
		t.Errorf("rows of %d, %d tried, want %d", f.Longest, f.Tried, 2*2*n)
	}
}

// The sample with its own parts from its own shelf is the sample, but for what belongs to a gear case and to its tests.
func TestShelveAndTake(t *testing.T) {
	doc := catalog.Sample()
	doc.Project.Shelf = model.Shelf{}
	v := doc.Variants[2]
	v.Origins = model.Origins{"stores[0].hoist.machine.k_vs_rad": {Kind: "typical", Source: "a motor of its size"},
		"stores[0].hoist.train.stages[1].efficiency": {Kind: "catalog", Source: "row"}, "stores[0].hoist.travel_m": {Kind: "typical"}}
	p, n := doc.Project.Shelve(v, 0)
	h := v.Stores[0].Hoist
	if again, more := p.Shelve(v, 0); more != 0 || !reflect.DeepEqual(again.Shelf, p.Shelf) {
		t.Errorf("%d parts lie there twice", more)
	}
	if n != len(p.Shelf.Motors)+len(p.Shelf.Stages)+len(p.Shelf.Drums)+len(p.Shelf.Ropes)+len(p.Shelf.Pulleys) || n < 5 {
		t.Errorf("%d parts put there: %+v", n, p.Shelf)
	}
	if o := p.Origins["shelf.motors[0].k_vs_rad"]; o.Kind != "typical" {
		t.Errorf("a typical value became %q on the shelf", o.Kind)
	}
	var stages []int
	for _, s := range h.Train.Stages {
		stages = append(stages, slices.IndexFunc(p.Shelf.Stages, func(o model.SpareStage) bool { return o.Stage == s }))
	}
	w := model.Combination{Stages: stages}.With(p, v, 0)
	got, want := *w.Stores[0].Hoist, *h
	want.Machine.I0WithGear = ""
	want.Train = lift.Train{Stages: h.Train.Stages, Breakaway: h.Train.Breakaway}
	want.Trials = lift.Trials{Failures: h.Trials.Failures}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
	if o := w.Origins["stores[0].hoist.machine.k_vs_rad"]; o.Kind != "typical" {
		t.Errorf("a typical value of the shelf is %q in the hoist", o.Kind)
	}
	if w.Origins["stores[0].hoist.travel_m"].Kind != "typical" {
		t.Error("the origin of the travel is lost")
	}
	own := model.Combination{Motor: model.Own, Drum: model.Own, Rope: model.Own, Pulley: model.Own}.With(p, v, 0)
	if a, b := *own.Stores[0].Hoist, *h; !reflect.DeepEqual(a.Machine, b.Machine) || !reflect.DeepEqual(a.Train, b.Train) || a.Drum != b.Drum || a.Rope != b.Rope {
		t.Error("its own parts are changed")
	}
}

// A current without load that was measured with the gears on belongs to those gears: with another motor or other gears
// that is not known, with its own motor and gears it stays, whatever drum, rope or pulleys there are. A motor on the shelf
// has no gears at all.
func TestCurrentWithGears(t *testing.T) {
	doc := catalog.Sample()
	doc.Project.Shelf = model.Shelf{}
	v := doc.Variants[2]
	h := *v.Stores[0].Hoist
	h.Machine.I0WithGear = "yes"
	v.Stores = slices.Clone(v.Stores)
	v.Stores[0].Hoist = &h
	p, _ := doc.Project.Shelve(v, 0)
	if got := p.Shelf.Motors[0].I0WithGear; got != "" {
		t.Errorf("a motor alone on the shelf: measured with gears %q", got)
	}
	p.Shelf.Motors[0].I0WithGear = "yes" // as a document may say
	for _, c := range []struct {
		what string
		with model.Combination
		want unit.Answer
	}{
		{"all its own", model.Combination{Motor: model.Own, Drum: model.Own, Rope: model.Own, Pulley: model.Own}, "yes"},
		{"another drum, rope and pulley", model.Combination{Motor: model.Own}, "yes"},
		{"another motor", model.Combination{Drum: model.Own, Rope: model.Own, Pulley: model.Own}, ""},
		{"other gears", model.Combination{Motor: model.Own, Drum: model.Own, Rope: model.Own, Pulley: model.Own, Stages: []int{0}}, ""},
	} {
		if got := c.with.With(p, v, 0).Stores[0].Hoist.Machine.I0WithGear; got != c.want {
			t.Errorf("%s: measured with gears %q, want %q", c.what, got, c.want)
		}
	}
}

// A shelf of 8 motors, 4 drums, 4 ropes and 11 kinds of stages.
func BenchmarkFits(b *testing.B) {
	p, v := boxOfParts()
	for k := range 6 {
		m := p.Shelf.Motors[0]
		m.K.Val *= 1 + .1*unit.MachineConstant(k+1)
		p.Shelf.Motors = append(p.Shelf.Motors, m)
	}
	for k := range 3 {
		d, r := p.Shelf.Drums[0], p.Shelf.Ropes[0]
		d.Drum.Diameter.Val *= 1 + .2*unit.Length(k+1)
		r.Rope.Diameter.Val *= 1 + .05*unit.Length(k+1)
		p.Shelf.Drums, p.Shelf.Ropes = append(p.Shelf.Drums, d), append(p.Shelf.Ropes, r)
	}
	for k := range 7 {
		s := p.Shelf.Stages[0]
		s.Stage.Ratio, s.Count = unit.Of(unit.Ratio(2+k)), unit.Of[unit.Count](1)
		p.Shelf.Stages = append(p.Shelf.Stages, s)
	}
	g := model.Prepare(p)
	for b.Loop() {
		f, err := search.FitsOf(b.Context(), g, p, v, 0, 2)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(f.Tried), "combinations")
		b.ReportMetric(float64(f.Worked), "worked-out")
	}
}
