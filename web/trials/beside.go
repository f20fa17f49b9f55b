package trials

import (
	"slices"

	"duskweight/internal/draw"
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/page"
)

// besideRow is one measured value beside the planned one.
type besideRow struct {
	What, Planned, Measured string
	Picture                 string
	Off                     string // "16 % more", where it is more than a tenth off
}

// besideRows set the last measured lift and way down beside the plan for the same mass, volts and travel, then what the records
// found of the gears and the motor beside the design.
func besideRows(m model.Measured, sys unit.System) []besideRow {
	var out []besideRow
	for _, way := range []struct {
		down bool
		name string
	}{{false, "Lifting"}, {true, "Coming down"}} {
		for _, r := range slices.Backward(m.Runs) {
			if r.Down != way.down {
				continue
			}
			out = appendBeside(out, way.name+": current", r.PlanCurrent, r.Current, unit.Currents, sys)
			out = appendBeside(out, way.name+": time", r.PlanTime, r.Time, unit.Durations, sys)
			break
		}
	}
	for _, c := range m.Changes {
		out = appendBeside(out, c.What, c.Was, unit.Of(unit.Ratio(c.Is.Val)), quantityAt(c.Path), sys)
	}
	return out
}

// appendBeside adds a row where both values are known and the planned one is not nothing.
func appendBeside[T unit.Number](to []besideRow, what string, planned, is unit.Known[T], q unit.Quantity, sys unit.System) []besideRow {
	if !planned.Is || !is.Is || planned.Val <= 0 {
		return to
	}
	ratio := float64(is.Val) / float64(planned.Val)
	row := besideRow{What: what, Planned: page.Known(planned, q, sys), Measured: page.Known(is, q, sys), Picture: draw.Beside(ratio)}
	switch off := ratio - 1; {
	case off > 0.1:
		row.Off = unit.Rounded(100*off, 2) + unit.Space + "% more"
	case off < -0.1:
		row.Off = unit.Rounded(-100*off, 2) + unit.Space + "% less"
	}
	return append(to, row)
}
