package page

import (
	"context"
	"net/http"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
)

const SettingUnits = "units" // "metric" or "imperial"

// Units reads the system of units that the pages speak.
func (s *Site) Units(ctx context.Context) (unit.System, error) {
	set, err := s.Store.Settings(ctx)
	return UnitsIn(set), err
}

// unitsOr is Units for the page of an error: metric where the settings cannot be read either.
func (s *Site) unitsOr(r *http.Request) unit.System {
	if s.Store == nil {
		return unit.Metric
	}
	sys, err := s.Units(r.Context())
	if err != nil {
		return unit.Metric
	}
	return sys
}

// ProblemsOf prints what is wrong with a document, each by its path in the document.
func ProblemsOf(problems model.Problems, sys unit.System) []form.ProblemView {
	out := make([]form.ProblemView, len(problems))
	for i, p := range problems {
		out[i] = form.ProblemView{Label: p.Path, Say: form.Sentence(p.Say.In(sys))}
	}
	return out
}

// UnitsIn is the system of units of settings that were read; metric where nothing is set.
func UnitsIn(settings map[string]string) unit.System {
	if settings[SettingUnits] == "imperial" {
		return unit.Imperial
	}
	return unit.Metric
}
