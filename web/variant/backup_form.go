package variant

import (
	"duskweight/internal/model"
	"duskweight/internal/model/unit"
	"duskweight/web/form"
)

// WholeForm is all of a variant but the insides of its stores: its own page, that of its seasons and that of its backup.
func WholeForm() []form.Part[model.Variant] {
	return append(variantForm(seasonInputs()...), backupForm()...)
}

// backupForm is what helps out when the stores hold little; it has a page of its own.
func backupForm() []form.Part[model.Variant] {
	type v = model.Variant
	return []form.Part[v]{
		form.Word("backup.kind", "Kind", func(v *v) *model.BackupKind { return &v.Backup.Kind }, form.Hint[v]("not known: there is none")),
		form.Number("backup.rated_w", "Rated power", unit.Powers, func(v *v) *unit.Known[unit.Power] { return &v.Backup.Rated }, form.Hint[v]("on its label")),
		form.Number("backup.start_below", "Charge below which it starts", unit.Percents, func(v *v) *unit.Known[unit.Ratio] { return &v.Backup.Start }, form.Hint[v]("charge of the stores")),
		form.Number("backup.stop_above", "Charge at which it stops", unit.Percents, func(v *v) *unit.Known[unit.Ratio] { return &v.Backup.Stop }, form.Hint[v]("charge of the stores")),
		form.Number("backup.from_s", "Start of its hours", unit.ClockTimes, func(v *v) *unit.Known[unit.Duration] { return &v.Backup.From }, form.Hint[v]("if empty: all day")),
		form.Number("backup.to_s", "End of its hours", unit.ClockTimes, func(v *v) *unit.Known[unit.Duration] { return &v.Backup.To }, form.Hint[v]("")),
		form.Number("backup.max_hours_day", "Most hours a day", unit.Counts, func(v *v) *unit.Known[unit.Count] { return &v.Backup.Most }, form.Hint[v]("if empty: 24")),
		form.Folded("Charger and fuel", "",
			form.Number("backup.charge_w", "Power of its charger", unit.Powers, func(v *v) *unit.Known[unit.Power] { return &v.Backup.Charge }, form.Hint[v]("if empty: its full power")),
			form.Number("backup.charge_efficiency", "Efficiency of its charger", unit.Percents, func(v *v) *unit.Known[unit.Ratio] { return &v.Backup.Efficiency }, form.Hint[v]("if empty: 85 %")),
			form.Number("backup.fuel_standing_l_kwh", "Litres an hour for each kW of its rating", unit.Ratios, func(v *v) *unit.Known[unit.Ratio] { return &v.Backup.Standing }, form.Hint[v]("if empty: usual for its kind")),
			form.Number("backup.fuel_l_kwh", "Extra litres for each kWh", unit.Ratios, func(v *v) *unit.Known[unit.Ratio] { return &v.Backup.PerKWh }, form.Hint[v]("if empty: usual for its kind")),
			form.Number("backup.price_per_l", "Price of a litre", unit.Prices, func(v *v) *unit.Known[unit.Money] { return &v.Backup.PricePerL }),
			form.Number("backup.price_per_kwh", "Price of a kWh from the grid", unit.Prices, func(v *v) *unit.Known[unit.Money] { return &v.Backup.PricePerKWh })),
	}
}
