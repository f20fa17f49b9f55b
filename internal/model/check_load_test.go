package model_test

import (
	"strings"
	"testing"

	"duskweight/internal/catalog"
	"duskweight/internal/model"
	"duskweight/internal/model/load"
	"duskweight/internal/model/unit"
)

// What contradicts itself in the load is refused at its field; what only just fits is not.
func TestRefusedLoads(t *testing.T) {
	power := func(w float64) unit.Known[unit.Power] { return unit.Of(unit.Power(w)) }
	ratio := func(x float64) unit.Known[unit.Ratio] { return unit.Of(unit.Ratio(x)) }
	volts := func(v float64) unit.Known[unit.Voltage] { return unit.Of(unit.Voltage(v)) }
	for _, tc := range []struct {
		path, say string
		refused   bool
		change    func(*load.Load)
	}{
		{"appliances[0].surge_w", "less power than", true, func(l *load.Load) { l.Appliances[0].Power, l.Appliances[0].Surge = power(50), power(49) }},
		{"appliances[0].surge_w", "", false, func(l *load.Load) { l.Appliances[0].Power, l.Appliances[0].Surge = power(50), power(50) }},
		{"inverter.surge_w", "at least its rated", true, func(l *load.Load) { l.Inverter = load.Inverter{Rated: power(300), Surge: power(299)} }},
		{"inverter.cut_v", "below its nominal", true, func(l *load.Load) { l.Inverter = load.Inverter{Input: volts(12), Cut: volts(12.1)} }},
		{"inverter.cut_v", "", false, func(l *load.Load) { l.Inverter = load.Inverter{Input: volts(12), Cut: volts(11)} }},
		{"inverter.efficiency_full", "These efficiencies do not fit together.", true, func(l *load.Load) {
			l.Inverter = load.Inverter{Rated: power(1000), Idle: power(5), Tenth: ratio(.9), Full: ratio(.99)}
		}},
		{"inverter.efficiency_full", "", false, func(l *load.Load) {
			l.Inverter = load.Inverter{Rated: power(1000), Idle: power(5), Tenth: ratio(.9), Full: ratio(.87)}
		}},
		// 50 W all year give 50 · 31,536,000 = 1,576,800,000 J, all day 4,320,000 J
		{"appliances[0].label_j_year", "more than its power gives", true, func(l *load.Load) {
			l.Appliances[0].Power, l.Appliances[0].Label = power(50), unit.Of(unit.Energy(1576800001))
		}},
		{"appliances[0].label_j_year", "", false, func(l *load.Load) {
			l.Appliances[0].Power, l.Appliances[0].Label = power(50), unit.Of(unit.Energy(1576800000))
		}},
		{"appliances[0].measured_j_day", "more than its power gives", true, func(l *load.Load) {
			l.Appliances[0].Power, l.Appliances[0].Measured = power(50), unit.Of(unit.Energy(4320001))
		}},
		{"appliances[0].measured_j_day", "", false, func(l *load.Load) {
			l.Appliances[0].Power, l.Appliances[0].Measured = power(50), unit.Of(unit.Energy(4320000))
		}},
		{"appliances[0].purpose", "harmed", true, func(l *load.Load) { l.Appliances[0].StopsHarm = "yes" }},
	} {
		p := catalog.Sample().Project
		p.Load.Appliances = append([]load.Appliance(nil), p.Load.Appliances...)
		tc.change(&p.Load)
		found := false
		for _, q := range model.CheckProject(p) {
			found = found || q.Path == "load."+tc.path && strings.Contains(q.Say.String(), tc.say)
		}
		if found != tc.refused {
			t.Errorf("%s: refused %v, wanted %v: %v", tc.path, found, tc.refused, model.CheckProject(p))
		}
	}
}
