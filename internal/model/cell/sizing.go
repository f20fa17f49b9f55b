package cell

import (
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/say"
)

// Sizing is the trade's way to size cells: so many days without any sun, then a correction for each limit. The steps
// are those of source.IEEE1013, section 6.3, from memory; EndOfLife and Margin are its usual values.
type Sizing struct {
	// In.
	DailyLoad  unit.Energy // at the line, all of it
	Voltage    unit.Voltage
	Days       float64 // of autonomy
	Depth      float64 // deepest discharge after those days
	DailyDepth float64 // deepest discharge in a single day; 0: not asked
	EndOfLife  float64 // share of capacity left when they are replaced
	Cold       float64 // factor for the coldest time, ≥ 1
	Margin     float64 // design margin, ≥ 1

	// Out, ampere-hours as charge.
	Unadjusted   unit.Charge // load·days/voltage
	ByDepth      unit.Charge
	ByDailyDepth unit.Charge
	ByEndOfLife  unit.Charge
	Taken        unit.Charge // the largest of the three
	AfterCold    unit.Charge
	AfterMargin  unit.Charge
}

// The usual values of the procedure.
const (
	UsualEndOfLife = 0.8
	UsualMargin    = 1.1
)

// Size runs the steps. It wants positive voltage, depth and end of life.
func (s Sizing) Size() Sizing {
	s.Unadjusted = unit.Charge(float64(s.DailyLoad) * s.Days / float64(s.Voltage))
	s.ByDepth = s.Unadjusted / unit.Charge(s.Depth)
	if s.DailyDepth > 0 {
		s.ByDailyDepth = unit.Charge(float64(s.DailyLoad) / float64(s.Voltage) / s.DailyDepth)
	}
	s.ByEndOfLife = s.Unadjusted / unit.Charge(s.EndOfLife)
	s.Taken = max(s.ByDepth, s.ByDailyDepth, s.ByEndOfLife)
	s.AfterCold = s.Taken * unit.Charge(s.Cold)
	s.AfterMargin = s.AfterCold * unit.Charge(s.Margin)
	return s
}

// TradeSizing sizes this bank for a day's load. It is not known without the days of autonomy the user wants.
func (r Resolved) TradeSizing(dailyLoad unit.Energy, t Temperature) (Sizing, bool) {
	days, ok := r.bank.Autonomy.Value()
	if !ok || r.Voltage == 0 {
		return Sizing{}, false
	}
	s := Sizing{
		DailyLoad: dailyLoad, Voltage: r.Voltage, Days: float64(days), Depth: r.Depth,
		EndOfLife: UsualEndOfLife, Cold: r.coldFactor(t), Margin: UsualMargin,
	}
	return s.Size(), true
}

// coldFactor is one over the share of capacity left at the coldest day's mean, at most 5.
func (r Resolved) coldFactor(cells Temperature) float64 {
	f := 1.0
	for _, t := range cells.hours {
		f = math.Min(f, r.Kind.Cold.At(unit.Celsius(t)))
	}
	return 1 / math.Max(f, 0.2)
}

// asLarge is the share of the trade's capacity from which on a bank counts as so large (our own judgement).
const asLarge = 0.95

// Differ says in plain sentences how the trade's answer stands to the bank as designed, and why the two ways differ.
// carries says whether the year run found that it carries the nights, and noFill the hours too cold or too hot to charge.
func (s Sizing) Differ(r Resolved, carries bool, noFill int) []say.Sentence {
	if r.Charge == 0 || s.AfterMargin == 0 {
		return nil
	}
	ratio := float64(r.Charge) / float64(s.AfterMargin)
	out := []say.Sentence{say.That("The rule of the trade asks for %s; this battery has %s, %s times that.", say.Charge(s.AfterMargin), say.Charge(r.Charge), say.Times(unit.Ratio(ratio)).To(2))}
	switch {
	case ratio < asLarge && carries:
		out = append(out, say.That("It still carries the nights of this year, because days without any sun for so long did not come."))
	case ratio >= asLarge && !carries && noFill >= 24:
		out = append(out, say.That("It still does not carry the nights. In %s it is too cold or too hot to charge, and a warmer or cooler place may help. If not, more panel would, not more cells.", hours(noFill)))
	case ratio >= asLarge && !carries:
		out = append(out, say.That("It still does not carry the nights, because the panels do not fill it: more cells would not help, more panel would."))
	}
	return append(out,
		say.That("The rule counts %s days with no sun at all; the year run uses the sun of each hour, cloudy days too.", say.Times(unit.Ratio(s.Days))),
		say.That("The rule adds for old age and a margin; the year run starts with new cells."),
		say.That("The rule uses the coldest day for the whole time; the year run uses the temperature of each day."))
}
