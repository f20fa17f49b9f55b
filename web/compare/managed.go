package compare

import (
	"slices"

	"duskweight/internal/model"
	"duskweight/internal/model/unit"
)

// managedGroup is what helped out, what went off and what waited; none where no variant has any of it.
func managedGroup(rs []model.VariantResult, sys unit.System) []compareGroup {
	any := func(r model.VariantResult) bool {
		return r.Year.Backup.Hours > 0 || len(r.Year.Shed) > 0 || len(r.Year.Waiting) > 0
	}
	if !slices.ContainsFunc(rs, any) {
		return nil
	}
	of := func(f func(model.VariantResult) float64) func(model.VariantResult) (float64, bool) {
		return func(r model.VariantResult) (float64, bool) { return f(r), r.YearKnown }
	}
	energy := func(v float64) string { return unit.BigEnergies.Format(v, sys) }
	return []compareGroup{{"When the stores run low, average year", []compareRow{
		numberRow("Backup runs, hours", "lowest", rs, of(func(r model.VariantResult) float64 { return float64(r.Year.Backup.Hours) }), func(v float64) string { return unit.Rounded(v, 3) }),
		numberRow("Fuel of the backup", "lowest", rs, of(func(r model.VariantResult) float64 { return float64(r.Year.Backup.Fuel) }), func(v float64) string { return unit.Volumes.Format(v, sys) }),
		numberRow("Share of the energy from the sun", "highest", rs, func(r model.VariantResult) (float64, bool) { s := r.SunShare(); return float64(s.Val), s.Is }, func(v float64) string { return unit.Percents.Format(v, sys) }),
		numberRow("Switched off by charge levels", "lowest", rs, of(shed), energy),
		numberRow("Waited without running", "lowest", rs, of(missed), energy),
	}}}
}

// shed is what all levels of a year kept off, J.
func shed(r model.VariantResult) (sum float64) {
	for _, l := range r.Year.Shed {
		sum += float64(l.Energy)
	}
	return sum
}

// missed is what all devices that wait did not get in a year, J.
func missed(r model.VariantResult) (sum float64) {
	for _, w := range r.Year.Waiting {
		sum += float64(w.Missed)
	}
	return sum
}
