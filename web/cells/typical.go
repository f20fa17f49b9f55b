package cells

import (
	"duskweight/internal/model/cell"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/typical"
)

// ofKind is the typical value of the kind of a battery, which an empty field counts as, in the unit of its field; scale
// brings the kind's number to SI.
func ofKind(q unit.Quantity, scale float64, low, high string, at func(cell.Kind) cell.Typical) func(*form.Input[cell.Bank]) {
	return form.UsualBy(q, func(b *cell.Bank) typical.Habit {
		k, ok := cell.KindOf(b.Kind)
		if !ok {
			return typical.None(typical.WhyLabel, low, high)
		}
		v := at(k)
		take := q.FormatFull(v.Value*scale, unit.Metric)
		return typical.Habit{Take: take, Low: low, High: high, Of: v.Source.Place, From: v.Source.Source, Counts: true}
	})
}
