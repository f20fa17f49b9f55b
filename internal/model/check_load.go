package model

import (
	"fmt"

	"duskweight/internal/model/load"
)

// checkLoad returns the numbers of the load that contradict each other; paths are inside it.
func checkLoad(l load.Load) Problems {
	var ps Problems
	for i, a := range l.Appliances {
		if s, p := a.Surge, a.Power; s.Is && p.Is && s.Val < p.Val {
			ps.Add(fmt.Sprintf("appliances[%d].surge_w", i), "its start cannot use less power than it uses while it runs")
		}
		if a.OverLabel() {
			field := "label_j_year"
			if a.Measured.Is {
				field = "measured_j_day"
			}
			ps.Add(fmt.Sprintf("appliances[%d].%s", i, field), "this is more than its power gives when it never stops: check both")
		}
	}
	ps = append(ps, checkManaged(l)...)
	v := l.Inverter
	if v.Surge.Is && v.Rated.Is && v.Surge.Val < v.Rated.Val {
		ps.Add("inverter.surge_w", "it gives at least its rated power for a start")
	}
	if v.Cut.Is && v.Input.Is && v.Cut.Val > v.Input.Val {
		ps.Add("inverter.cut_v", "it must switch off below its nominal battery voltage, or it never runs")
	}
	if _, err := v.Losses(); err != nil {
		ps.Add("inverter.efficiency_full", err.Error())
	}
	return ps
}
