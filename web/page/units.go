package page

import (
	"context"

	"duskweight/internal/model/unit"
)

const SettingUnits = "units" // "metric" or "imperial"

// Units reads the system of units that the pages speak.
func (s *Site) Units(ctx context.Context) (unit.System, error) {
	set, err := s.Store.Settings(ctx)
	return UnitsIn(set), err
}

// UnitsIn is the system of units of settings that were read; metric where nothing is set.
func UnitsIn(settings map[string]string) unit.System {
	if settings[SettingUnits] == "imperial" {
		return unit.Imperial
	}
	return unit.Metric
}
