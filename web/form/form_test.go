package form

import (
	"testing"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// In the other system a value is shown in that system's unit, in short; by hand: 240/0.45359237 = 529.1, 1 in = 25.4 mm.
func TestShownInTheChosenSystem(t *testing.T) {
	for _, one := range []struct {
		q    unit.Quantity
		si   float64
		sys  unit.System
		want string
	}{
		{unit.Masses, 240, unit.Metric, "240"},
		{unit.Masses, 240, unit.Imperial, "529"},
		{unit.Masses, 529 * 0.45359237, unit.Imperial, "529"},
		{unit.SmallLengths, 0.0254, unit.Imperial, "1"},
		{unit.Angles, float64(30 * unit.Degree), unit.Imperial, "30"},
		{unit.Powers, 100.0 / 3, unit.Metric, "33.3333"},
		{unit.ClockTimes, 18*3600 + 30*60, unit.Metric, "18:30"},
	} {
		if got := TypedForm(one.q, one.si, one.sys); got != one.want {
			t.Errorf("%g is %s, want %s", one.si, got, one.want)
		}
	}
}

func TestTableMistakesStopTheProgram(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a path that does not exist is taken")
		}
	}()
	Text("nmae", "Name", func(v *model.Variant) *string { return &v.Name })
}

// What an empty field counts as is said once and in the unit of the field: a share of 1 as 100 %, and 100 % stays 100 %.
func TestHintIfEmpty(t *testing.T) {
	for _, c := range []struct{ say, want string }{
		{"not known counts as 1", "if empty: 100\u00a0%"},
		{"if empty: 100 %", "if empty: 100 %"},
		{"not known counts as 0.03", "if empty: 3\u00a0%"},
		{"not known counts as 1 (0 for a clamp)", "if empty: 100\u00a0% (0 for a clamp)"},
		{"not known counts as 0.85, or as the usual curve", "if empty: 85\u00a0%, or as the usual curve"},
		{"not known counts as none", "if empty: none"},
		{"not known is computed", "if empty: computed"},
		{"not known means it overhangs", "if empty: it overhangs"},
		{"not known counts as 15 %", "if empty: 15 %"},
	} {
		if got := inPercent(hintFor("Share", c.say)); got != c.want {
			t.Errorf("%q is told as %q, want %q", c.say, got, c.want)
		}
	}
}
