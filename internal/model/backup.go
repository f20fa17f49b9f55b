package model

import (
	"math"

	"duskweight/internal/model/unit"
	"duskweight/internal/model/year"
)

// BackupKind is what a backup is.
type BackupKind string

// The words of BackupKind.
const (
	BackupPetrol BackupKind = "petrol"
	BackupDiesel BackupKind = "diesel"
	BackupGrid   BackupKind = "grid"
	BackupCar    BackupKind = "car"
)

// Backup is what helps out when the stores hold little. Without a kind there is none.
type Backup struct {
	Kind        BackupKind                `json:"kind" say:"What helps out when the stores are nearly empty; empty means nothing" enum:"|petrol|diesel|grid|car"`
	Rated       unit.Known[unit.Power]    `json:"rated_w" say:"Rated power" range:"(0,1e6]"`
	Charge      unit.Known[unit.Power]    `json:"charge_w" say:"Power of it that may go into the stores; not known counts as all of it" range:"[0,1e6]"`
	Efficiency  unit.Known[unit.Ratio]    `json:"charge_efficiency" say:"Efficiency of its charger; not known counts as 0.85" range:"(0,1]"`
	Start       unit.Known[unit.Ratio]    `json:"start_below" say:"It starts while the stores are less full than this" range:"[0,1]"`
	Stop        unit.Known[unit.Ratio]    `json:"stop_above" say:"It stops when the stores are so full" range:"[0,1]"`
	From        unit.Known[unit.Duration] `json:"from_s" say:"It may run from, whole hours in seconds after midnight; not known counts as all day" range:"[0,86400]"`
	To          unit.Known[unit.Duration] `json:"to_s" say:"It may run until; the same as from means all day" range:"[0,86400]"`
	Most        unit.Known[unit.Count]    `json:"max_hours_day" say:"Most hours a day; not known counts as 24" range:"(0,24]"`
	Standing    unit.Known[unit.Ratio]    `json:"fuel_standing_l_kwh" say:"Litres an hour for each kW of its rated power while it runs, whatever it gives; not known counts as usual for its kind" range:"[0,10]"`
	PerKWh      unit.Known[unit.Ratio]    `json:"fuel_l_kwh" say:"Litres for each kWh it gives, besides; not known counts as usual for its kind" range:"[0,10]"`
	PricePerL   unit.Known[unit.Money]    `json:"price_per_l" say:"Price of a litre of its fuel" range:"[0,1e6]"`
	PricePerKWh unit.Known[unit.Money]    `json:"price_per_kwh" say:"Price of a kWh from the grid" range:"[0,1e6]"`
}

// usualCharger is the efficiency of a charger that is not known (our own judgement).
const usualCharger = 0.85

// Fuel by kind, litres an hour for each kW of rating and litres for each kWh given. Petrol: source.PetrolSets. Diesel: source.SkarsteinUhlen.
var usualFuel = map[BackupKind][2]float64{BackupPetrol: {0.12, 0.50}, BackupDiesel: {0.08415, 0.246}}

// idlingCar is what a car burns standing with its engine on, litres an hour. Source: source.IdlingCar.
const idlingCar = 0.8

// Burns reports whether it burns fuel where people may be.
func (b Backup) Burns() bool { return b.Kind != "" && b.Kind != BackupGrid }

// Runs reports whether there is one, and all is known that it needs to run.
func (b Backup) Runs() bool { return b.Kind != "" && b.Rated.Is && b.Start.Is && b.Stop.Is }

// managed is the backup as the year knows it; nil where it does not run.
func (b Backup) managed() *year.Backup {
	if !b.Runs() {
		return nil
	}
	rated := float64(b.Rated.Val)
	idle, per := b.fuel(rated / 1000)
	return &year.Backup{Rated: rated, Charge: float64(b.Charge.Or(b.Rated.Val)), Gain: float64(b.Efficiency.Or(usualCharger)), Start: float64(b.Start.Val), Stop: float64(b.Stop.Val),
		From: b.hour(b.From), To: b.hour(b.To), Most: float64(b.Most.Or(24)), Idle: idle, PerKWh: per}
}

// hour is a clock hour in which its window begins or ends; 0 for both where one is not known.
func (b Backup) hour(t unit.Known[unit.Duration]) int {
	if !b.From.Is || !b.To.Is {
		return 0
	}
	return int(math.Round(float64(t.Val)/3600)) % 24
}

// fuel is what one of so many kW burns: litres an hour while it runs, and litres for each kWh that it gives.
func (b Backup) fuel(kW float64) (idle, per float64) {
	usual := usualFuel[b.Kind]
	idle, per = float64(b.Standing.Or(unit.Ratio(usual[0])))*kW, float64(b.PerKWh.Or(unit.Ratio(usual[1])))
	if b.Kind == BackupCar && !b.Standing.Is {
		idle = idlingCar
	}
	return idle, per
}

// Cost is what a year of it costs in fuel or in grid power; not known while its price is not.
func (b Backup) Cost(y year.BackupYear) unit.Known[unit.Money] {
	switch {
	case y.Hours == 0:
		return unit.Of(unit.Money(0))
	case b.Kind == BackupGrid && b.PricePerKWh.Is:
		return unit.Of(unit.Money(float64(b.PricePerKWh.Val) * float64(y.Out) / 3.6e6))
	case b.Kind != BackupGrid && b.PricePerL.Is:
		return unit.Of(unit.Money(float64(b.PricePerL.Val) * float64(y.Fuel) * 1000))
	}
	return unit.Known[unit.Money]{}
}

// Unpriced is the input without which no cost of a backup that runs is known: the price of its fuel or of the grid's energy.
// Where it is known, or nothing runs, it is empty.
func (b Backup) Unpriced() string {
	switch {
	case !b.Runs():
	case b.Kind == BackupGrid && !b.PricePerKWh.Is:
		return "backup.price_per_kwh"
	case b.Kind != BackupGrid && !b.PricePerL.Is:
		return "backup.price_per_l"
	}
	return ""
}

// Managed is who goes first in a year of a variant on this ground; nil where nothing waits, nothing is switched off by a level,
// and no backup runs.
func (g Ground) Managed(v Variant) *year.Managed {
	if !v.Backup.Runs() && !g.Load.Managed() {
		return nil
	}
	m := &year.Managed{Backup: v.Backup.managed()}
	for _, l := range g.Load.Levels {
		m.Levels = append(m.Levels, year.Level{Below: l.Below, Back: l.Back, Essential: l.Essential, Nice: l.Nice})
	}
	for _, w := range g.Load.Waiting {
		m.Waiting = append(m.Waiting, year.Waiting{Power: w.Power, Energy: w.Energy, From: w.From, To: w.To, RunAbove: w.RunAbove, Must: w.Must, Carry: w.Carry, Essential: w.Essential})
	}
	return m
}

// SunShare is the share of what the year used that did not come from a backup, 1 − backup/load; not known where nothing is
// wanted or the year is not known.
func (r VariantResult) SunShare() unit.Known[unit.Ratio] {
	if !r.YearKnown || r.Year.Load <= 0 {
		return unit.Known[unit.Ratio]{}
	}
	return unit.Of(unit.Ratio(1 - float64(r.Year.Backup.Energy/r.Year.Load)))
}

// missingBackup names what keeps a backup from running.
func missingBackup(b Backup) (out []Missing) {
	if b.Kind == "" {
		return nil
	}
	for _, one := range []struct {
		path  string
		known bool
	}{{"backup.rated_w", b.Rated.Is}, {"backup.start_below", b.Start.Is}, {"backup.stop_above", b.Stop.Is}} {
		if !one.known {
			out = append(out, Missing{one.path, backupWants})
		}
	}
	return out
}
