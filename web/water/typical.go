package water

import (
	"duskweight/internal/model/unit"
	"duskweight/internal/model/water"
	"duskweight/web/form"
	"duskweight/web/typical"
)

type input = form.Input[water.Water]

// none is a number without a typical value, and why; what is usual of it is our own judgement.
func none(why string, q unit.Quantity, low, high string) func(*input) {
	h := typical.None(why, low, high)
	return form.UsualBy(q, func(*water.Water) typical.Habit { return h })
}

func bare(q unit.Quantity, low, high string) func(*input) {
	return none(typical.WhyYours, q, low, high)
}

func measured(q unit.Quantity, low, high string) func(*input) {
	return none(typical.WhyMeasure, q, low, high)
}

func label(q unit.Quantity, low, high string) func(*input) {
	return none(typical.WhyLabel, q, low, high)
}

func strength(q unit.Quantity, low, high string) func(*input) {
	return none(typical.WhyStrength, q, low, high)
}

// wave is the speed of a pressure wave. It decides what strikes the pipe, so it is never typical: the reader says of what the
// pipe is made.
func wave() func(*input) {
	return none(typical.WhyStrength, unit.Speeds, "200 m/s", "1400 m/s")
}

// ofSize is what a machine of a size gives of what it uses, which an empty field counts as.
func ofSize(s water.Size) typical.Habit {
	share := func(r unit.Ratio) string { return unit.Percents.FormatFull(float64(r), unit.Metric) }
	return typical.Habit{Take: share(s.Usual), Low: share(s.Least), High: share(s.Most), Of: s.From.Place, From: s.From.Source, Counts: true}
}

func pumpOfSize() func(*input) {
	return form.UsualBy(unit.Percents, func(w *water.Water) typical.Habit {
		if !w.Pump.Rated.Is {
			return typical.None(typical.WhyLabel, "15 %", "75 %")
		}
		return ofSize(water.PumpSize(w.Pump.Rated.Val))
	})
}

func turbineOfSize() func(*input) {
	return form.UsualBy(unit.Percents, func(w *water.Water) typical.Habit {
		bare := *w
		bare.Turbine.Efficiency.Is = false
		if s := bare.Resolve().TurbineSize; s != nil {
			return ofSize(*s)
		}
		return typical.None(typical.WhyLabel, "15 %", "75 %")
	})
}
