package trials

import (
	"strings"

	"duskweight/internal/model"
	"duskweight/internal/model/lift/ready"
	"duskweight/internal/model/unit"
	"duskweight/internal/say"
	"duskweight/web/form"
	"duskweight/web/page"
)

// proofView is a part that nobody rates and what a load test of it must reach.
type proofView struct {
	Part  string
	Tests []string // one for each material
}

// proofViews lists the parts of a hoist that a load test can clear.
func proofViews(h *model.HoistResult, sys unit.System) []proofView {
	var out []proofView
	for _, t := range h.LoadTests() {
		name := form.SentenceCase(form.WordFor(string(t.Part)))
		if len(out) == 0 || out[len(out)-1].Part != name {
			out = append(out, proofView{Part: name})
		}
		last := &out[len(out)-1]
		last.Tests = append(last.Tests, testText(t, sys))
	}
	return out
}

// testText says what a test must reach: "Of metal: 160 N·m at the drum for 15 min, such as 16.3 kg at the end of a lever of 1 m.
// It counts for 12 months or 500 lifts."
func testText(t ready.Test, sys unit.System) string {
	var text strings.Builder
	text.WriteString("Of " + form.WordFor(string(t.MadeOf)) + ": ")
	switch {
	case t.Torque.Is:
		const arm = 1.0 // m
		text.WriteString(say.That("%s at the drum, such as %s at the end of a lever of %s,", say.Torque(t.Torque.Val).Up(),
			say.Mass(unit.Mass(float64(t.Torque.Val)/unit.G/arm)).Up(), say.Taped(arm)).In(sys))
	default:
		text.WriteString(say.That("a pull of %s on it, the weight of %s,", say.Force(t.Force.Val).Up(), say.Mass(unit.Mass(float64(t.Force.Val)/unit.G)).Up()).In(sys))
	}
	text.WriteString(" for " + form.Lasting(t.Held) + ". It counts for " + page.Counted(t.Months, "month") + " or " + unit.Counts.Format(float64(t.Lifts), sys) + " lifts.")
	return text.String()
}
