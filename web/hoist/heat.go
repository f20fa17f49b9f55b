package hoist

import (
	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
	"duskweight/web/page"
)

func heatRows(d lift.Drive, sys unit.System) []page.PairView {
	var rows []page.PairView
	for _, h := range []struct {
		name string
		lift.Heat
	}{{"after one lift", d.HeatUp}, {"after one way down", d.HeatDown}} {
		if !h.Known {
			rows = append(rows, page.PairView{Name: "Winding " + h.name, Value: "not known"})
			continue
		}
		rows = append(rows, page.PairView{Name: "Winding " + h.name, Value: unit.Temperatures.Format(float64(h.Winding), sys)})
		if h.Run.Is {
			rows = append(rows, page.PairView{Name: "May run for, from cold", Value: form.Lasting(h.Run.Val)})
		} else {
			rows = append(rows, page.PairView{Name: "May run for", Value: "as long as you like"})
		}
		if n, ok := h.Row.Value(); ok {
			rows = append(rows, page.PairView{Name: "Times in a row, from cold", Value: page.Itoa(int(n))})
		}
		switch {
		case h.Rest.Is && h.Rest.Val > 0:
			rows = append(rows, page.PairView{Name: "Must rest between", Value: form.Lasting(h.Rest.Val)})
		case h.Rest.Is:
			rows = append(rows, page.PairView{Name: "Must rest between", Value: "needs no rest"})
		}
	}
	return rows
}
