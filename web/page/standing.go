package page

import (
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
)

func StandingRow() []form.Part[load.Standing] {
	return []form.Part[load.Standing]{
		form.Text("name", "Name", func(s *load.Standing) *string { return &s.Name }),
		form.Number("power_w", "Power", unit.Powers, func(s *load.Standing) *unit.Known[unit.Power] { return &s.Power }),
	}
}
