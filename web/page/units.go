package page

import (
	"context"

	"duskweight/internal/model/unit"
)

const SettingUnits = "units" // "metric" or "imperial"

// Units reads the system of units that the pages speak.
func (s *Site) Units(ctx context.Context) (unit.System, error) {
	set, err := s.Store.Settings(ctx)
	if err != nil {
		return unit.Metric, err
	}
	if set[SettingUnits] == "imperial" {
		return unit.Imperial, nil
	}
	return unit.Metric, nil
}
